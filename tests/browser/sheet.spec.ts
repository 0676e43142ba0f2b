import { execFileSync } from 'node:child_process';
import {
	button,
	contentWidth,
	DESKTOP,
	expect,
	expectNoViolation,
	field,
	type Locator,
	openCoil,
	openPage,
	type Page,
	PHONE,
	test,
} from './page';

const heading = (page: Page, coil: string): Locator =>
	page.getByRole('heading', { level: 2, name: `Drawing sheet: ${coil}` });
const drawing = (page: Page): Locator => page.getByRole('img', { name: /^Section through .*, free:/ });

/** The figure of a name under one of the sheet's headings, as it is written. */
function figure(page: Page, under: string, name: string): Locator {
	const block = page
		.locator('.block')
		.filter({ has: page.getByRole('heading', { name: under, exact: true }) });
	return block
		.locator('dt')
		.filter({ hasText: new RegExp(`^${name}$`) })
		.locator('+ dd');
}

const rate = (page: Page): Locator => figure(page, 'Rate, and how far to trust it', 'Rate');

async function openSheet(page: Page, coil = 'outer', name = 'Outer'): Promise<void> {
	await page.goto(`./#coil=${coil}`);
	await expect(heading(page, name)).toBeVisible();
}

test.describe('at a keyboard', () => {
	test.use({ viewport: DESKTOP });

	test('a coil opens from its menu in Measure, and leads back', async ({ page }) => {
		await openPage(page);
		await button(page, 'More for Outer, A left').focus();
		await page.keyboard.press('Enter');
		await button(page, 'Drawing sheet').focus();
		await page.keyboard.press('Enter');
		await expect(heading(page, 'Outer')).toBeFocused();
		await expect(page).toHaveURL(/#coil=outer$/);

		await button(page, '← Back to Measure').focus();
		await page.keyboard.press('Enter');
		await expect(page).toHaveURL(/#measure$/);
		await expect(field(page, 'Place 1, Outer, A left')).toBeVisible();
	});

	test('a coil opens from Nest, and the browser goes back', async ({ page }) => {
		await openPage(page, 'Nest');
		await button(page, 'Drawing sheet of Inner').focus();
		await page.keyboard.press('Enter');
		await expect(heading(page, 'Inner')).toBeFocused();
		await expect(drawing(page)).toHaveAccessibleName(
			'Section through Inner, free: bar 11/16 in, outside diameter 5 1/8 in, height 13 5/8 in',
		);
		await page.goBack();
		await expect(page.getByRole('heading', { level: 2, name: 'Nest' })).toBeAttached();
		await expect(button(page, 'Drawing sheet of Inner')).toBeVisible();
	});
});

test.describe('on a phone', () => {
	test.use({ viewport: PHONE, hasTouch: true, isMobile: true });

	test('a coil opens by touch, from Measure and from Nest', async ({ page }) => {
		await openPage(page);
		await openCoil(page, 'Inner, A left');
		await button(page, 'More for Inner, A left').tap();
		await button(page, 'Drawing sheet').tap();
		await expect(heading(page, 'Inner')).toBeInViewport();
		await button(page, '← Back to Measure').tap();
		await page.getByRole('link', { name: 'Nest' }).tap();
		await button(page, 'Drawing sheet of Outer').tap();
		await expect(heading(page, 'Outer')).toBeInViewport();
		await button(page, '← Back to Nest').tap();
		await expect(page).toHaveURL(/#nest$/);
	});
});

test('another coil is one press away', async ({ page }) => {
	await openSheet(page);
	const coils = page.getByRole('group', { name: 'Which coil' });
	await expect(button(coils, 'Outer')).toHaveAttribute('aria-pressed', 'true');
	await expect(rate(page)).toContainText(/1\s055\slb\/in/u);
	await button(coils, 'Inner').click();
	await expect(heading(page, 'Inner')).toBeVisible();
	await expect(rate(page)).toContainText(/393\.4\slb\/in/u);
	await expect(button(coils, 'Inner')).toHaveAttribute('aria-pressed', 'true');
});

test('a size edited on the sheet changes its rate and its drawing', async ({ page }) => {
	await openSheet(page);
	await field(page, 'Bar, Outer').fill('1 1/8');
	// (1 1/8 / 1 1/16)⁴ · (6 11/16 / 6 5/8)³ · 1055 lb/in.
	await expect(rate(page)).toContainText(/1\s363\slb\/in/u);
	await expect(drawing(page)).toHaveAccessibleName(/bar 1 1\/8 in/);
	await button(page, 'Undo').click();
	await expect(rate(page)).toContainText(/1\s055\slb\/in/u);
});

test('tolerances name the measurement worth making better', async ({ page }) => {
	await openSheet(page);
	await expect(page.getByText(/^Write below how well each size is known/)).toBeVisible();
	await field(page, 'Bar ±').fill('1/64');
	await field(page, 'Diameter ±').fill('1/32');
	await expect(page.getByText(/the bar is worth measuring better: with half its doubt/)).toBeVisible();
	const table = page.getByRole('table', { name: 'What each number has to do with the doubt of the rate' });
	await expect(table.getByRole('rowheader')).toHaveText(['Bar', 'Diameter', 'Dead turns', 'Shear modulus']);

	await field(page, 'Bar ±').fill('1 1/16');
	await expect(page.getByText(/may be no coil at all: tolerances that leave a bar/)).toBeVisible();
	await expect(table).toBeHidden();
	await expect(rate(page)).toContainText(/1\s055\slb\/in/u);
});

test('two loads give their table, or say why not', async ({ page }) => {
	await openSheet(page);
	const table = page.getByRole('table', { name: 'The coil under its two loads' });
	await expect(page.getByText(/^Give two loads/)).toBeVisible();
	await field(page, 'Lesser load').fill('1000');
	await field(page, 'Greater load').fill('3000');
	await expect(table.getByRole('row')).toHaveCount(3);
	// 13 15/16 in less 1000 / 1054.7 and 3000 / 1054.7.
	await expect(table.getByRole('row').nth(1)).toContainText('13 in');
	await expect(table.getByRole('row').nth(2)).toContainText('11 1/16 in');
	await expect(page.getByText(/no thicker wire was tested; ask the maker/)).toBeVisible();

	await field(page, 'Greater load').fill('9000');
	await expect(page.getByText(/^9\s000\slb is more than the 6\s911\slb that close it solid/u)).toBeVisible();
	await expect(table).toBeHidden();
});

test('a press test that is typed row by row gives its rate', async ({ page }) => {
	await openSheet(page);
	const height = (row: number) => field(page, `Height ${row} on the press, Outer`);
	const load = (row: number) => field(page, `Load ${row} on the press, Outer`);
	for (const [row, [at, read]] of [
		['13', '1000'],
		['12', '2100'],
		['11', '3200'],
	].entries()) {
		await height(row + 1).pressSequentially(at ?? '');
		await expect(height(row + 1)).toBeFocused();
		await page.keyboard.press('Tab');
		await expect(load(row + 1)).toBeFocused();
		await page.keyboard.type(read ?? '');
	}
	await expect(figure(page, 'On the press', 'Rate')).toContainText(/1\s100\slb\/in/u);
	await expect(page.getByText(/^On the press it is 4\.3\s% stiffer than its drawing/u)).toBeVisible();
	await expect(
		page.getByRole('table', { name: 'The readings beside the line' }).getByRole('row'),
	).toHaveCount(4);

	await load(3).fill('1500');
	await expect(page.getByText(/but only 1\s500\slb at 11\sin, which is lower/u)).toBeVisible();
});

test('what is wrong is told at its field, and kept as it was written', async ({ page }) => {
	await openSheet(page);
	for (const [name, text, says] of [
		['Bar ±', '-1/64', /only one way of the two is written/],
		['Lesser load', 'light', /there is no number in it/],
		['Load 1 on the press, Outer', '12 psi', /is a unit of stress/],
	] as const) {
		await field(page, name).fill(text);
		await page.keyboard.press('Tab');
		await expect(field(page, name)).toHaveAttribute('aria-invalid', 'true');
		await expect(field(page, name)).toHaveAccessibleDescription(says);
		await expect(field(page, name)).toHaveValue(text);
	}
	await expect(rate(page)).toContainText(/1\s055\slb\/in/u);
});

test('a working opens and names its source; the steel names its row', async ({ page }) => {
	await openSheet(page);
	await figure(page, 'Sizes', 'Least gaps between the turns').getByRole('button').click();
	const working = page.getByRole('group', { name: 'Working' });
	await expect(working.getByRole('definition').last()).toContainText('EN 13906-1:2013');
	await page.keyboard.press('Escape');
	await expect(working).toBeHidden();

	await figure(page, 'Rate, and how far to trust it', 'Rate').getByRole('button').click();
	await button(working, 'steels/coilnest.toml, row unknown-hot-wound').click();
	const row = page.locator('[id="steels/coilnest.toml, row unknown-hot-wound"]');
	await expect(row).toBeFocused();
	await expect(row).toBeInViewport();
	await expect(working).toBeHidden();

	await page.mouse.wheel(0, -9999);
	await button(page, 'Steel: Hot-wound bar, steel not known').first().click();
	await expect(
		page.getByText(/^Row of the tables: steels\/coilnest\.toml, row unknown-hot-wound/),
	).toBeInViewport();
});

test('another system of units keeps what was written', async ({ page }) => {
	await openSheet(page);
	await field(page, 'Diameter ±').fill('1/32');
	await field(page, 'Greater load').fill('3000');
	await field(page, 'Height 1 on the press, Outer').fill('13');
	await button(page, 'Millimetres').click();
	await expect(field(page, 'Diameter ±')).toHaveValue('1/32 in');
	await expect(field(page, 'Greater load')).toHaveValue('3000 lb');
	await expect(field(page, 'Height 1 on the press, Outer')).toHaveValue('13 in');
	await expect(field(page, 'Free height, Outer')).toHaveValue('13 15/16 in');
	await expect(rate(page)).toContainText(/184\.7\sN\/mm/u);
});

for (const colorScheme of ['light', 'dark'] as const) {
	test.describe(colorScheme, () => {
		test.use({ viewport: PHONE, colorScheme, hasTouch: true, isMobile: true });

		test('axe finds nothing in a full sheet, nor with a working or an error', async ({ page }) => {
			await openSheet(page);
			await expectNoViolation(page, 'a sheet');
			await field(page, 'Bar ±').fill('1/64');
			await field(page, 'Lesser load').fill('1000');
			await field(page, 'Greater load').fill('3000');
			for (const [row, height, load] of [
				[1, '13', '1000'],
				[2, '12', '2100'],
			] as const) {
				await field(page, `Height ${row} on the press, Outer`).fill(height);
				await field(page, `Load ${row} on the press, Outer`).fill(load);
			}
			await expectNoViolation(page, 'a full sheet');
			await rate(page).getByRole('button').first().click();
			await expect(page.getByRole('group', { name: 'Working' })).toBeVisible();
			await expectNoViolation(page, 'a sheet with a working');
			await page.keyboard.press('Escape');
			await field(page, 'Bar ±').fill('-1');
			await page.keyboard.press('Tab');
			await expectNoViolation(page, 'a sheet with an error');
		});
	});
}

test('the sheet has no sideways scroll from 320 px, whatever its steel is called', async ({ page }) => {
	await openSheet(page);
	const steels = page.getByRole('combobox', { name: 'Steel' });
	const names = await steels.getByRole('option').allInnerTexts();
	const longest = names.reduce((long, name) => (name.length > long.length ? name : long));
	await steels.selectOption({ label: longest });
	await expect(button(page, `Steel: ${longest}`).first()).toBeVisible();
	await field(page, 'Bar ±').fill('1/64');
	await field(page, 'Lesser load').fill('1000');
	await field(page, 'Greater load').fill('3000');
	const tooWide: string[] = [];
	for (const width of [320, 360, 390, 480, 600, 768, 900, 1152, 1280, 1440]) {
		await page.setViewportSize({ width, height: 800 });
		const content = await contentWidth(page);
		if (content > width) tooWide.push(`${content} px on ${width} px`);
	}
	expect(tooWide).toEqual([]);
});

test('the sheet prints with its drawing and its figures', async ({ page }, testInfo) => {
	await page.setViewportSize(DESKTOP);
	await openSheet(page);
	const bare = (text: string) => text.normalize('NFKC').replaceAll('⁄', '/').replace(/\s/gu, '');
	const figures = await page.locator('.facts dd').allInnerTexts();
	expect(figures.length).toBeGreaterThan(25);
	const path = testInfo.outputPath('coil.pdf');
	await page.pdf({ path, format: 'A4' });
	const printed = bare(execFileSync('pdftotext', ['-raw', path, '-'], { encoding: 'utf8' }));
	const missing = figures
		.map((text) => text.replace('not known', ''))
		.filter((text) => !printed.includes(bare(text)));
	expect(missing).toEqual([]);
	expect(printed).toContain(bare('Drawing sheet: Outer'));
	expect(printed).not.toContain(bare('Back to'));
	// Once among the sizes, once in the drawing; its field has the number without a unit.
	expect(printed.split(bare('7 3/4 in'))).toHaveLength(3);
});

test('an address of no coil says so, and leads back', async ({ page }) => {
	await page.goto('./#coil=middle');
	await expect(page.getByRole('heading', { level: 2, name: 'No such coil' })).toBeVisible();
	await expect(page.getByRole('alert')).toContainText('this job has none of that name');
	await button(page.getByRole('group', { name: 'Which coil' }), 'Inner').click();
	await expect(heading(page, 'Inner')).toBeVisible();
	await page.goto('./#coil=%E0%A4%A');
	await expect(page.getByRole('heading', { level: 2, name: 'No such coil' })).toBeVisible();
	await button(page, '← Back to Nest').click();
	await expect(page.getByRole('heading', { level: 2, name: 'Nest' })).toBeAttached();
});

/** The report says that a name stands twice; the sheet is of the first, and of a name with blanks round it too. */
test('coils of one name are drawn all the same', async ({ page }) => {
	await openPage(page);
	const coils = ['11', '12'].map((free) => ({ id: ' same ', name: `Free ${free}`, free }));
	const text = JSON.stringify({ format: 'coilnest-job/1', coils, nests: [] });
	const choice = page.waitForEvent('filechooser');
	await button(page, 'Open').click();
	const file = { name: 'job.json', mimeType: 'application/json', buffer: Buffer.from(text) };
	await (await choice).setFiles(file);
	await page.goto('./#coil=same');
	await expect(heading(page, 'Free 11')).toBeVisible();
	await expect(field(page, 'Free height, Free 11')).toHaveValue('11');
	await expect(page.getByRole('group', { name: 'Which coil' }).getByRole('button')).toHaveCount(2);
});
