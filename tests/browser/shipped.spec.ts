import { readFileSync } from 'node:fs';
import { expect, test } from '@playwright/test';
import { Ajv, type ValidateFunction } from 'ajv';

/*
 * The lists of what ships, held against the schema that the standard's own project publishes (CycloneDX 1.6).
 */

const LISTS = ['dist/sbom.cdx.json', '../target/package/sbom.cdx.json'];

interface Component {
	'bom-ref': string;
	name: string;
	purl?: string;
}

interface List {
	components: Component[];
}

const read = (file: string): unknown => JSON.parse(readFileSync(file, 'utf8'));

function standard(): ValidateFunction<List> {
	const schema = (name: string) =>
		read(`node_modules/@cyclonedx/cyclonedx-library/res/schema/${name}.SNAPSHOT.schema.json`) as object;
	// It has key words of its own, and formats that the validator does not know.
	const ajv = new Ajv({ strict: false, validateFormats: false });
	for (const name of ['spdx', 'jsf-0.82'])
		ajv.addSchema(schema(name), `http://cyclonedx.org/schema/${name}.SNAPSHOT.schema.json`);
	return ajv.compile<List>(schema('bom-1.6'));
}

for (const file of LISTS)
	test(`${file} keeps the schema of the standard`, () => {
		const isValid = standard();
		const list = read(file);
		const valid = isValid(list);
		expect(isValid.errors).toBeNull();
		if (!valid) return;
		const references = list.components.map((component) => component['bom-ref']);
		expect(new Set(references).size).toBe(references.length);

		const nameless = { ...list, components: [{ type: 'library' }] };
		expect(isValid(nameless)).toBe(false);
	});

test('the page has the npm packages that it uses, and the npm package has crates alone', () => {
	const npm = (file: string): string[] => {
		const { components } = read(file) as List;
		return components.filter(({ purl }) => purl?.startsWith('pkg:npm/')).map(({ name }) => name);
	};
	const [page = [], alone = []] = LISTS.map(npm);
	expect(page).toEqual(expect.arrayContaining(['d3-array', 'idb-keyval', 'lean-qr', 'svelte']));
	for (const other of ['typescript', 'jsqr', 'ajv', 'vite-plugin-pwa']) expect(page).not.toContain(other);
	expect(alone).toEqual([]);
});
