/*
 * Writes src/engine/types.ts from the schemas of the engine, and src/engine/fields/ from what it says of the fields of a
 * job: a file for each object, so that a page fetches no label that it does not show. `--check` writes nothing and fails
 * where a file differs.
 */
import { mkdir, readdir, readFile, writeFile } from 'node:fs/promises';
import process from 'node:process';
import { compile } from 'json-schema-to-typescript';

const TARGET = new URL('../src/engine/', import.meta.url);
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

/** @typedef {{ label: string, words?: { id: string, name: string }[], length?: boolean, example?: [string, string], of?: string | [string] }} Field */

/** A file for each object of a job, and one that says what holds what. */
async function fields() {
	const text = await readFile(new URL('../schema/fields.json', import.meta.url), 'utf8');
	/** @type {Record<string, Record<string, Field>>} */
	const objects = JSON.parse(text);
	const banner = '/* Written by `npm run types` from `schema/fields.json`. */\n';
	const written = (/** @type {string} */ name, /** @type {unknown} */ value) =>
		`\nexport const ${name} = ${JSON.stringify(value, undefined, '\t')} as const;\n`;
	/**
	 * @template T
	 * @param {Record<string, Field>} of
	 * @param {(field: Field) => T | undefined} what
	 */
	const each = (of, what) =>
		Object.fromEntries(
			Object.entries(of).flatMap(([name, field]) => (what(field) ? [[name, what(field)]] : [])),
		);
	const files = Object.entries(objects).map(([name, of]) => {
		const said = {
			label: each(of, (field) => field.label),
			words: each(of, (field) => field.words),
			example: each(of, (field) => field.example),
		};
		const filled = Object.entries(said).filter(([, fields]) => Object.keys(fields).length > 0);
		return [`fields/${name}.ts`, banner + filled.map(([name, fields]) => written(name, fields)).join('')];
	});
	const held = Object.entries(objects).map(([name, of]) => [name, each(of, (field) => field.of)]);
	const holds = Object.fromEntries(
		held.filter(([, of]) => Object.keys(/** @type {object} */ (of)).length > 0),
	);
	const lengths = Object.fromEntries(
		Object.entries(objects)
			.map(([name, of]) => [name, Object.keys(of).filter((field) => of[field]?.length)])
			.filter(([, named]) => named?.length),
	);
	return [
		...files,
		['fields/holds.ts', banner + written('holds', holds)],
		['fields/lengths.ts', banner + written('lengths', lengths)],
	];
}

const files = /** @type {[string, string][]} */ ([['types.ts', types], ...(await fields())]);
if (process.argv.includes('--check')) {
	for (const [name, text] of files) {
		const now = await readFile(new URL(name, TARGET), 'utf8').catch(() => '');
		if (now !== text) {
			process.stderr.write(`src/engine/${name} differs from the schemas: run \`npm run types\`\n`);
			process.exitCode = 1;
		}
	}
	const kept = await readdir(new URL('fields/', TARGET));
	for (const name of kept.filter((name) => !files.some(([file]) => file === `fields/${name}`))) {
		process.stderr.write(`src/engine/fields/${name} is of no object of a job\n`);
		process.exitCode = 1;
	}
} else {
	await mkdir(new URL('fields/', TARGET), { recursive: true });
	for (const [name, text] of files) await writeFile(new URL(name, TARGET), text);
}
