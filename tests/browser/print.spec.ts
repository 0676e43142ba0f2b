import { execFileSync } from 'node:child_process';
import { bare, DESKTOP, expect, openCoil, openPage, type Page, printed, test } from './page';

const COILS = ['Outer, A left', 'Inner, A left', 'Outer, A right', 'Inner, A right'];
const READINGS = [
	'13 7/8',
	'13 7/8 scant',
	'13 7/16',
	'13 7/16 full',
	'13 15/16',
	'13 7/8 full',
	'13 1/2',
	'13 1/2 scant',
];

/** What a reader finds on the screen and expects on the paper. */
async function onTheScreen(page: Page): Promise<string[]> {
	const found: string[] = [];
	const care = page.getByRole('region', { name: 'Take care' }).getByRole('listitem');
	const cautions = () => care.evaluateAll((items) => items.map((item) => item.firstChild?.textContent ?? ''));
	for (const name of COILS) {
		const coil = await openCoil(page, name);
		found.push(await coil.getByRole('button', { name: /^(Good|Short|Long|Too close)/ }).innerText());
		found.push(
			// What is said aloud, too, would be found by its text alone.
			await coil.locator('p:not([role=status])', { hasText: /book figure/ }).innerText(),
		);
	}
	found.push(...(await cautions()));
	await page.getByRole('link', { name: 'Nest' }).click();
	for (const nest of ['A left', 'A right']) {
		await page.getByRole('button', { name: nest, exact: true }).click();
		const row = page
			.getByRole('table', { name: 'Figures at this height' })
			.getByRole('row', { name: /^Load/ });
		found.push(...(await row.getByRole('button').allInnerTexts()));
	}
	found.push(...(await cautions()));
	return found;
}

/** Two nests fill two pages; the truck has four, a frame, a replacement and an earlier job. */
const FORMATS = [
	{ format: 'A4', pages: '4' },
	{ format: 'Letter', pages: '4' },
] as const;
for (const { format, pages } of FORMATS) {
	test(`the demo prints on ${pages} pages of ${format}, with all that counts`, async ({ page }, testInfo) => {
		await page.setViewportSize(DESKTOP);
		await openPage(page);
		const expected = [...READINGS, ...(await onTheScreen(page))];
		expect(expected.length).toBeGreaterThan(READINGS.length + 2 * COILS.length + 6);

		const path = testInfo.outputPath('sheet.pdf');
		const paper = bare(await printed(page, path, format));
		expect(execFileSync('pdfinfo', [path], { encoding: 'utf8' })).toMatch(
			new RegExp(`^Pages:\\s+${pages}$`, 'm'),
		);
		expect(expected.filter((text) => bare(text) === '' || !paper.includes(bare(text)))).toEqual([]);
		expect(paper).toContain(bare('Invented demo job, not a record'));
		expect(paper).not.toContain(bare('Clear it and start my own'));
	});
}
