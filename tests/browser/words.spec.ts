import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { button, DESKTOP, expect, openPage, type Page, test } from './page';

interface Entry {
	id: string;
	word: string;
	labels?: string[];
	signs?: string[];
	not?: string[];
}

/** The tests are run from the page's own folder. */
const www = process.cwd();
const read = (path: string): unknown => JSON.parse(readFileSync(join(www, path), 'utf8'));
const glossary = read('src/learn/glossary.json') as {
	words: Entry[];
	plain: { why: string; signs: string[] }[];
};
const symbols = Object.keys(read('schema/symbols.json') as Record<string, string>);

/** What stands on the page and needs no explanation, by the reason. */
const PLAIN: Record<string, readonly string[]> = {
	'a name of the job, or what names a thing': [
		'A right',
		'B right',
		'Label',
		'Name',
		'Number',
		'Vehicle',
		'Drawing',
	],
	'everyday words': [
		'Across',
		'After',
		'Along',
		'Before',
		'By',
		'Date',
		'How many',
		'No',
		'No: they stay',
		'Not marked',
		'Rank',
		'Something else',
		'Sound',
		'State',
		'Test',
		'The lightest first',
		'Why',
		'Within',
		'all that hold it',
		'not chosen',
		'not known',
		'not known: no',
		'not noted',
		'the lightest first',
		'yes',
	],
	'words of an order, as any buyer uses them': [
		'Certificate',
		'Crack test',
		'Decarburised depth',
		'Finish',
		'Hardness',
		'Inspection',
		'Marking',
		'Packaging and loading',
		'Packaging, loading',
		'Part number',
		'Quantity',
		'Revision',
	],
	'grades of steel, by their numbers': ['Chrome-vanadium A231 and A232 (Shigley)'],
};

const quoted = (text: string): string => text.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');
const known = glossary.words.flatMap(({ word, labels = [] }) => [word, ...labels]);
const patterns = known.map((text) => new RegExp(`(?<!\\p{L})${quoted(text)}(?!\\p{L})`, 'iu'));
const plain = new Set(Object.values(PLAIN).flat());

/** Labels, heads of columns, names of figures and options that stand in a section, all that folds unfolded. */
async function texts(page: Page): Promise<string[]> {
	await page.locator('main details').evaluateAll((all) => {
		for (const one of all) (one as HTMLDetailsElement).open = true;
	});
	const found = await page
		.locator('main :is(label, th[scope=col], dt, option)')
		.evaluateAll((all) => all.map((one) => one.textContent ?? ''));
	return [...new Set(found.map((text) => text.replace(/\s+/gu, ' ').trim()))].filter((text) => text !== '');
}

test.use({ viewport: DESKTOP });

test('each label, head, figure and option is a word of the glossary, or needs none', async ({ page }) => {
	test.slow();
	const seen = new Set<string>();
	const look = async (): Promise<void> => {
		for (const text of await texts(page)) seen.add(text);
	};
	await openPage(page, 'Level');
	await look();
	await openPage(page, 'Measure');
	await look();
	await openPage(page, 'Nest');
	await look();
	await page.goto('./#coil=outer');
	await expect(page.getByRole('heading', { name: 'Drawing sheet: Outer' })).toBeVisible();
	await look();
	await openPage(page, 'Replace');
	await look();
	await openPage(page, 'Learn');
	await look();
	const unexplained = [...seen].filter(
		(text) => !plain.has(text) && !patterns.some((pattern) => pattern.test(text)),
	);
	expect(seen.size).toBeGreaterThan(150);
	expect(unexplained.toSorted()).toEqual([]);
});

test('each letter of a formula belongs to one word, or needs none', () => {
	const placed = [
		...glossary.words.flatMap(({ signs = [] }) => signs),
		...glossary.plain.flatMap(({ signs }) => signs),
	];
	expect(placed.toSorted()).toEqual(symbols.toSorted());
});

test('a word has one name, and no other entry goes by what it is not called', () => {
	const ids = glossary.words.map(({ id }) => id);
	expect(new Set(ids).size).toBe(ids.length);
	const names = glossary.words.map(({ word }) => word);
	expect(new Set(names).size).toBe(names.length);
	const avoided = glossary.words.flatMap(({ not = [] }) => not);
	expect(avoided.filter((other) => names.includes(other))).toEqual([]);
});

test('each pressed word of the page stands in the glossary', () => {
	const ids = new Set(glossary.words.map(({ id }) => id));
	const files = readdirSync(join(www, 'src'), { recursive: true, encoding: 'utf8' });
	const sources = files.filter((name) => name.endsWith('.svelte'));
	const pressed = sources.flatMap((name) => {
		const text = readFileSync(join(www, 'src', name), 'utf8');
		return [...text.matchAll(/<Term id="([^"]+)"|\bterm: '([^']+)'|\bterms=\{\{([^}]*)\}\}/gu)].flatMap(
			([, one, other, many]) =>
				one ?? other ?? [...(many ?? '').matchAll(/: '([^']+)'/gu)].map(([, id]) => id ?? ''),
		);
	});
	expect(pressed.length).toBeGreaterThan(40);
	expect(pressed.filter((id) => !ids.has(id))).toEqual([]);
});

test('a word opens where it stands, and Escape closes it', async ({ page }) => {
	await openPage(page, 'Nest');
	const word = button(page, 'Packing');
	await word.focus();
	await page.keyboard.press('Enter');
	const sheet = page.getByRole('group', { name: 'Word' });
	await expect(sheet).toContainText('laid under one coil of a nest');
	await expect(sheet).toContainText('Elsewhere also: spacer');
	await page.keyboard.press('Escape');
	await expect(sheet).toBeHidden();
	await expect(word).toBeFocused();
});
