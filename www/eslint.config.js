import js from '@eslint/js';
import svelte from 'eslint-plugin-svelte';
import globals from 'globals';
import typescript from 'typescript-eslint';
import svelteConfig from './svelte.config.js';

/** Lists are keyed by place: what a user wrote may stand twice, and a key that does takes the whole section down. */
const eachByPlace = {
	create: (/** @type {import('eslint').Rule.RuleContext} */ context) => ({
		/** @param {import('svelte-eslint-parser').AST.SvelteEachBlock} node */
		SvelteEachBlock(node) {
			const { index, key } = node;
			const isPlace = key?.type === 'Identifier' && key.name === index?.name;
			if (!isPlace)
				context.report({
					loc: node.loc,
					message: 'Key an each block by its index: {#each list as item, i (i)}.',
				});
		},
	}),
};

export default typescript.config(
	{ ignores: ['dist/', 'test-results/', 'playwright-report/', 'src/engine/types.ts', 'src/engine/fields/'] },
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
		plugins: { house: { rules: { 'each-by-place': eachByPlace } } },
		rules: {
			eqeqeq: 'error',
			'no-console': 'error',
			'house/each-by-place': 'error',
		},
	},
);
