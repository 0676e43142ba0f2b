/*
 * Writes src/engine/types.ts from the schemas of the engine. `--check` writes nothing and fails where the file differs.
 */
import { readFile, writeFile } from 'node:fs/promises';
import process from 'node:process';
import { compile } from 'json-schema-to-typescript';

const TARGET = new URL('../src/engine/types.ts', import.meta.url);
const SCHEMAS = { Job: 'job.schema.json', Report: 'report.schema.json' };
const BANNER = '/* Written by `npm run types` from the schemas in `schema/`. */';

/** @typedef {import('json-schema-to-typescript').JSONSchema} Schema */

/** One schema that holds the roots and all their definitions under their own names. */
async function joined() {
	/** @type {Record<string, Schema>} */
	const definitions = {};
	for (const [name, file] of Object.entries(SCHEMAS)) {
		const text = await readFile(new URL(`../schema/${file}`, import.meta.url), 'utf8');
		const { $defs = {}, ...root } = /** @type {Schema} */ (JSON.parse(text));
		Object.assign(definitions, $defs, { [name]: { ...root, $schema: undefined, title: name } });
	}
	return /** @type {Schema} */ ({ $defs: definitions, type: 'object', properties: {} });
}

const text = await compile(await joined(), 'Everything', {
	additionalProperties: false,
	bannerComment: BANNER,
	unreachableDefinitions: true,
	style: { useTabs: true, singleQuote: true, printWidth: 110 },
});
const REFERENCE = String.raw` \* This interface was referenced by .*\n \* via the .definition. ".*"\.\n`;
const types = text
	.replace(/export interface Everything \{\}\n*/, '')
	.replace(new RegExp(String.raw`/\*\*\n${REFERENCE} \*/\n`, 'g'), '')
	.replace(new RegExp(String.raw` \*\n${REFERENCE}`, 'g'), '');

if (process.argv.includes('--check')) {
	const now = await readFile(TARGET, 'utf8');
	if (now !== types) {
		process.stderr.write('src/engine/types.ts differs from the schemas: run `npm run types`\n');
		process.exitCode = 1;
	}
} else {
	await writeFile(TARGET, types);
}
