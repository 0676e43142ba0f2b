import js from '@eslint/js';
import svelte from 'eslint-plugin-svelte';
import globals from 'globals';
import typescript from 'typescript-eslint';
import svelteConfig from './svelte.config.js';

export default typescript.config(
	{ ignores: ['dist/', 'test-results/', 'playwright-report/', 'src/engine/types.ts'] },
	js.configs.recommended,
	...typescript.configs.strict,
	...svelte.configs.recommended,
	{
		files: ['src/**'],
		languageOptions: { globals: globals.browser },
	},
	{
		files: ['**/*.svelte', '**/*.svelte.ts'],
		languageOptions: { parserOptions: { parser: typescript.parser, svelteConfig } },
	},
	{
		files: ['*.config.*', 'tools/**'],
		languageOptions: { globals: globals.node },
	},
	{
		rules: {
			eqeqeq: 'error',
			'no-console': 'error',
		},
	},
);
