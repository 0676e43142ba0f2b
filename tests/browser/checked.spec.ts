import { readFileSync } from 'node:fs';
import { contentWidth, expect, expectNoViolation, onEachDevice, openPage, type Page, test } from './page';

const TITLE = 'How this was checked';

/** What native code gave for the same documents. */
const NATIVE = readFileSync('../tests/published/recomputed.txt', 'utf8');

async function openChecks(page: Page): Promise<void> {
	await openPage(page);
	await page.getByRole('link', { name: TITLE }).click();
	await expect(page.getByRole('list', { name: 'What the values are worth' })).toBeVisible();
}

/** What stands in the tables of the documents, opened or not. */
async function outcomes(page: Page): Promise<Record<string, number>> {
	const documents = page.getByRole('region', { name: 'Documents' });
	const words = await documents
		.locator('tr.value')
		.evaluateAll((rows) =>
			rows.map((row) => row.querySelector('td:last-child > span:last-child')?.textContent),
		);
	const counts: Record<string, number> = { agrees: 0, deviates: 0, differs: 0 };
	for (const word of words) counts[word ?? ''] = (counts[word ?? ''] ?? 0) + 1;
	return counts;
}

/** The ranks in the order of the page, and their names there. */
const RANKS = [
	['independent', 'printed, independent'],
	['weak', 'printed, weak'],
	['recalled', 'from memory'],
	['program', "a program's output"],
	['derived', 'derived'],
] as const;

function native(text: string): number {
	return NATIVE.split(text).length - 1;
}

test('each rank has its count, and none differs', async ({ page }) => {
	await openChecks(page);
	const { agrees, deviates, ...others } = await outcomes(page);
	expect(others).toEqual({ differs: 0 });
	expect(agrees).toBe(native('"standing":"agrees"'));
	expect(deviates).toBe(native('"standing":"deviates"'));
	const ranks = page.getByRole('list', { name: 'What the values are worth' }).getByRole('listitem');
	await expect(ranks).toHaveCount(RANKS.length);
	for (const [index, [id, name]] of RANKS.entries()) {
		// A value has its rank before what is printed, a case before its worth.
		const values = native(`"rank":"${id}","printed"`);
		await expect(ranks.nth(index)).toHaveText(new RegExp(`^${values}\\s+${name}\\s`));
	}
	await expect(page.getByText('No value differs without a known reason.')).toBeVisible();
	await expect(page.getByText(new RegExp(`^${deviates} known deviations?, with the reason`))).toBeVisible();
	const apart = page.getByRole('region', { name: 'Deviations' });
	await expect(apart.getByRole('row', { name: /deviates$/ })).toHaveCount(deviates ?? 0);
	await expect(apart.getByRole('row', { name: /39\.4 lbf.*38\.4 lbf/ })).toContainText('a slip in the print');
});

test('a document or a subject narrows what is shown', async ({ page }) => {
	await openChecks(page);
	await page.getByLabel('Document', { exact: true }).selectOption('Directive 2014/32/EU');
	const status = page.getByRole('status').filter({ hasText: 'shown' });
	await expect(status).toHaveText(/^\d+ values of 1 document shown$/);
	await expect(page.getByRole('table', { name: 'Directive 2014/32/EU' })).toBeVisible();
	await expect(page.getByRole('region', { name: 'Deviations' })).toHaveCount(0);
	await page.getByLabel('Subject').selectOption('nest');
	await expect(page.getByText('No value is of all these.')).toBeVisible();
	await page.getByLabel('Document', { exact: true }).selectOption('All documents');
	await expect(page.getByRole('button', { name: 'nest of equal free heights' })).toBeVisible();
	// No nest is in print: every one is what a program gives.
	await page.getByLabel('Worth', { exact: true }).selectOption('printed, independent');
	await expect(page.getByText('No value is of all these.')).toBeVisible();
	await page.getByLabel('Subject').selectOption('All subjects');
	const printed = native('"rank":"independent","printed"');
	await expect(status).toHaveText(new RegExp(`^${printed} values of \\d+ documents shown$`));
});

test('the keyboard reaches what was given', async ({ page }) => {
	await openPage(page);
	await page.getByRole('link', { name: TITLE }).focus();
	await page.keyboard.press('Enter');
	await expect(page.getByRole('heading', { name: TITLE })).toBeFocused();
	await expect(page.getByLabel('Document', { exact: true })).toBeVisible();
	await page.keyboard.press('Tab');
	await expect(page.getByLabel('Document', { exact: true })).toBeFocused();
	await page.keyboard.press('Tab');
	await page.keyboard.press('Tab');
	await page.keyboard.press('Tab');
	const opener = page.getByRole('region', { name: 'Deviations' }).getByRole('button').first();
	const given = page.locator(`[id='${await opener.getAttribute('aria-controls')}']`);
	await expect(opener).toBeFocused();
	await expect(opener).toHaveAttribute('aria-expanded', 'false');
	await expect(given).toBeHidden();
	await page.keyboard.press('Enter');
	await expect(opener).toHaveAttribute('aria-expanded', 'true');
	await expect(given).toBeVisible();
	// Documents come after the deviations, each opened by its name.
	const deviations = await page.getByRole('region', { name: 'Deviations' }).getByRole('button').count();
	for (let passed = 0; passed < deviations; passed += 1) await page.keyboard.press('Tab');
	await page.keyboard.press('Enter');
	await expect(page.getByRole('region', { name: 'Documents' }).getByRole('table').first()).toBeVisible();
	await page.goBack();
	await expect(page.getByRole('heading', { level: 2, name: 'Measure' })).toBeAttached();
});

test('it prints whole, and a job does not', async ({ page }) => {
	await openChecks(page);
	await page.emulateMedia({ media: 'print' });
	await expect(page.getByRole('table', { name: 'Directive 2014/32/EU' })).toBeVisible();
	await expect(page.getByRole('navigation', { name: 'Sections' })).toBeHidden();
	await expect(page.getByText('Invented demo job, not a record')).toHaveCount(0);
	await page.emulateMedia({ media: 'screen' });
	await expect(page.getByRole('navigation', { name: 'Sections' })).toBeVisible();
});

test('it has no sideways scroll from 320 px', async ({ page }) => {
	await openChecks(page);
	// A rank opens every document that has a value of it.
	for (const width of [320, 390]) {
		await page.setViewportSize({ width, height: 800 });
		for (const [, name] of RANKS) {
			await page.getByLabel('Worth', { exact: true }).selectOption(name);
			expect.soft(await contentWidth(page), `${name}, ${width} px`).toBeLessThanOrEqual(width);
		}
	}
	await page.getByLabel('Worth', { exact: true }).selectOption('All');
	await page.getByLabel('Subject').selectOption('coil');
	for (const width of [320, 360, 390, 600, 768, 769, 1024, 1280]) {
		await page.setViewportSize({ width, height: 800 });
		expect.soft(await contentWidth(page), `${width} px`).toBeLessThanOrEqual(width);
	}
});

onEachDevice((look) => {
	test('axe finds nothing', async ({ page }) => {
		await openChecks(page);
		await page.getByLabel('Subject').selectOption('nest');
		await page.getByRole('button', { name: 'nest of equal free heights' }).click();
		await expectNoViolation(page, 'the cases of nests, one opened');
		await page.getByLabel('Subject').selectOption('All subjects');
		await expectNoViolation(page, 'the checks');
		await page.screenshot({
			path: `../target/look/checked-${look}.png`,
			fullPage: true,
		});
	});
});
