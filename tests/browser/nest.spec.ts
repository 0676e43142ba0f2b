import { button, DESKTOP, expect, field, type Locator, openBlank, openPage, type Page, test } from './page';

const heightSlider = (page: Page): Locator => page.getByRole('slider', { name: 'Height of the nest' });
const section = (page: Page): Locator => page.getByRole('img', { name: /^Section through the nest/ });
const chart = (page: Page): Locator => page.getByRole('img', { name: /^Load of the nest/ });
const states = (page: Page): Locator => page.getByRole('table', { name: 'Figures at this height' });
const stages = (page: Page): Locator => page.getByRole('table', { name: 'How the nest closes up' });

/** The number that a figure's text begins with; "2 497 lb" is 2497, "13 7/16 in" is 13.4375. */
function amount(text: string): number {
	const mixed = /^(\d+) (\d+)\/(\d+)/.exec(text);
	if (mixed) return Number(mixed[1]) + Number(mixed[2]) / Number(mixed[3]);
	return parseFloat(text.replace(/(?<=\d)\s(?=\d)/gu, ''));
}

async function loads(page: Page): Promise<{ coils: number[]; nest: number }> {
	const cells = await states(page).getByRole('row', { name: /^Load/ }).getByRole('button').allTextContents();
	const all = cells.map(amount);
	return { coils: all.slice(0, -1), nest: all.at(-1) ?? NaN };
}

/** Where on its axes the chart shows something, by the numbers at two ticks of each axis. */
async function onTheAxes(page: Page, part: string): Promise<{ height: number; load: number }[]> {
	return chart(page).evaluate((svg, selector) => {
		const centre = (element: Element): { x: number; y: number } => {
			const { x, y, width, height } = element.getBoundingClientRect();
			return { x: x + width / 2, y: y + height / 2 };
		};
		const ticks = [...svg.querySelectorAll('text')]
			.map((text) => ({ ...centre(text), value: Number(text.textContent?.replace(/\s/gu, '') || NaN) }))
			.filter(({ value }) => !Number.isNaN(value));
		const high = Math.max(...ticks.map(({ value }) => value));
		const loadTicks = ticks.filter(({ value }) => value === 0 || value === high);
		const below = Math.max(...ticks.map(({ y }) => y));
		const heightTicks = ticks.filter(({ y }) => y > below - 3);
		const scale = (axis: 'x' | 'y', among: typeof ticks) => {
			const [a, b] = [among[0], among.at(-1)];
			if (a === undefined || b === undefined || a === b) throw new Error('no scale');
			return (at: number) => a.value + ((at - a[axis]) / (b[axis] - a[axis])) * (b.value - a.value);
		};
		const [height, load] = [scale('x', heightTicks), scale('y', loadTicks)];
		return [...svg.querySelectorAll(selector)].map((found) => {
			const { x, y } = centre(found);
			return { height: height(x), load: load(y) };
		});
	}, part);
}

test.beforeEach(async ({ page }) => {
	await page.setViewportSize(DESKTOP);
});

test('the height slider moves by keyboard, and section and loads go with it', async ({ page }) => {
	await openPage(page, 'Nest');
	await expect(section(page)).toHaveAccessibleName(/at 11 1\/2 in/);
	const before = await loads(page);

	await heightSlider(page).focus();
	await page.keyboard.press('ArrowDown');
	await expect(section(page)).toHaveAccessibleName(/at 11 7\/16 in/);
	await expect(page.getByRole('heading', { name: 'At 11 7/16 in' })).toBeVisible();
	const after = await loads(page);
	expect(after.nest).toBeGreaterThan(before.nest);
	await expect(heightSlider(page)).toHaveAttribute('aria-valuetext', /^11 7\/16 in, carries/);

	await page.keyboard.press('Home');
	await expect(heightSlider(page)).toHaveAttribute('aria-valuetext', /^7 7\/16 in/);
	await page.keyboard.press('End');
	await expect(heightSlider(page)).toHaveAttribute('aria-valuetext', /^14 5\/16 in, carries 0\slb/u);
	await expect(section(page)).toHaveAccessibleName(/Outer: stands loose.*Inner: stands loose/);
});

test('the height follows the pointer, on the slider and in the chart', async ({ page }) => {
	await openPage(page, 'Nest');
	for (const target of [heightSlider(page), chart(page)]) {
		await target.scrollIntoViewIfNeeded();
		const box = await target.boundingBox();
		if (box === null) throw new Error('nothing to take hold of');
		const [start, middle] = [box.x + box.width * 0.3, box.y + box.height / 2];
		await page.mouse.move(start, middle);
		await page.mouse.down();
		const held = (await loads(page)).nest;
		await page.mouse.move(start + 80, middle, { steps: 4 });
		await expect.poll(async () => (await loads(page)).nest).toBeGreaterThan(held + 1000);
		await page.mouse.up();
	}
});

test('the buttons jump to free, working and solid', async ({ page }) => {
	await openPage(page, 'Nest');
	await button(page, 'Solid').click();
	await expect(section(page)).toHaveAccessibleName(/at 7 3\/8 in full/);
	await expect(section(page)).toHaveAccessibleName(/Outer: ■ solid/);
	await expect(states(page).getByRole('cell', { name: '■ solid' })).toHaveCount(2);

	await button(page, 'Free').click();
	await expect(section(page)).toHaveAccessibleName(/at 13 7\/8 in/);
	expect(await loads(page)).toEqual({ coils: [0, 0], nest: 0 });

	await button(page, 'Working').click();
	await expect(button(page, 'Working')).toHaveAttribute('aria-pressed', 'true');
	await expect(section(page)).toHaveAccessibleName(/at 11 1\/2 in/);
});

test('the tables hold the figures that the chart shows', async ({ page }) => {
	await openPage(page, 'Nest');
	await expect(chart(page)).toHaveAccessibleName(/At 11 1\/2 in the nest carries 3 262 lb\./u);
	const { coils, nest } = await loads(page);
	expect(coils.reduce((sum, load) => sum + load, 0) / nest).toBeCloseTo(1, 3);

	// A pixel of the chart is some 0.015 in and 30 lb.
	const [grip] = await onTheAxes(page, '.grip');
	expect(Math.abs((grip?.height ?? NaN) - 11.5)).toBeLessThan(0.03);
	expect(Math.abs((grip?.load ?? NaN) - nest)).toBeLessThan(60);

	const rows = await stages(page).getByRole('row').all();
	const points = await onTheAxes(page, '.point');
	for (const row of rows.slice(1)) {
		const [height = '', load = ''] = await row.getByRole('button').allTextContents();
		await expect(chart(page)).toHaveAccessibleName(new RegExp(height));
		const there = points.filter((point) => Math.abs(point.load - amount(load)) < 60);
		expect(there.map((point) => Math.abs(point.height - amount(height))).some((off) => off < 0.05)).toBe(
			true,
		);
	}
});

test('a press on a figure opens its working; Escape closes it and gives the focus back', async ({ page }) => {
	await openPage(page, 'Nest');
	const figure = states(page).getByRole('row', { name: /^Load/ }).getByRole('button').first();
	const working = page.getByRole('group', { name: 'Working' });
	await expect(working).toBeHidden();
	await figure.focus();
	await page.keyboard.press('Enter');

	const parts = ['What', 'Letters', 'Formula', 'Put in', 'Result', 'Source'];
	await expect(working.getByRole('term')).toHaveText(parts);
	await expect(working.getByRole('definition').first()).toHaveText(/^F\s+load$/);
	await expect(working.getByText('free height of the coil')).toBeVisible();
	const [, , formula, putIn, result, source] = await working.getByRole('definition').allTextContents();
	expect(formula).toMatch(/=/);
	expect(putIn).toMatch(/\d/);
	expect(amount(result?.replace(/^.*= /u, '') ?? '')).toBe(amount((await figure.textContent()) ?? ''));
	expect(source).toMatch(/\p{L}{3}/u);

	await page.keyboard.press('Escape');
	await expect(working).toBeHidden();
	await expect(figure).toBeFocused();
});

test('what is missing is named, and leads to its field', async ({ page }) => {
	await openBlank(page);
	await page.getByRole('link', { name: 'Nest' }).click();
	await expect(page.getByRole('heading', { name: 'The loads of Nest 1 are not known yet' })).toBeVisible();

	await button(page, 'Outer: book figure').click();
	await expect(field(page, 'Book figure, Outer')).toBeFocused();
	await page.keyboard.type('13 15/16');
	await page.getByRole('link', { name: 'Nest' }).click();
	for (const [gap, name, text] of [
		['Outer: bar', 'Bar, Outer', '1 1/16'],
		['Outer: outside diameter', 'Outside, Outer', '7 3/4'],
		['Outer: turns', 'Turns in all, Outer', '7 1/4'],
	] as const) {
		await button(page, gap).click();
		await expect(field(page, name)).toBeFocused();
		await page.keyboard.type(text);
	}
	await button(page, 'Outer: ends').click();
	await expect(page.getByRole('combobox', { name: 'Ends' })).toBeFocused();
	await page.getByRole('combobox', { name: 'Ends' }).selectOption({ label: 'Closed and ground' });
	await expect(chart(page)).toBeVisible();
	await expect(page.getByRole('heading', { name: /are not known yet/ })).toHaveCount(0);
});

test('an empty nest says what will stand there, with an example in each field, in the units of the job', async ({
	page,
}) => {
	await openBlank(page);
	await page.getByRole('link', { name: 'Nest' }).click();
	await expect(page.getByRole('main')).toContainText('What each coil carries at this height stands here');
	await expect(page.getByRole('main')).toContainText('Rate · Solid height · Stress at solid');
	expect(await page.getByRole('main').innerText()).not.toMatch(/^\s*–\s*$/m);
	await expect(field(page, 'Bar, Outer')).toHaveAttribute('placeholder', 'e.g. 1 1/16');
	await expect(field(page, 'Working height')).toHaveAttribute('placeholder', 'e.g. 11 1/2');
	await button(page, 'Millimetres').click();
	await expect(field(page, 'Bar, Outer')).toHaveAttribute('placeholder', 'e.g. 27');
});

test('a working height that is written once counts for all nests, until one has its own', async ({
	page,
}) => {
	await openPage(page, 'Nest');
	const height = field(page, 'Working height');
	const go = (nest: string) => button(page.getByRole('group', { name: 'Which nest' }), nest).click();
	await height.fill('11 1/4');
	await go('A right');
	await expect(height).toHaveValue('11 1/4');
	await button(page, 'This nest alone').click();
	await height.fill('11');
	await go('A left');
	await expect(height).toHaveValue('11 1/4');
	await height.fill('11 3/8');
	await go('A right');
	await expect(height).toHaveValue('11');
});
