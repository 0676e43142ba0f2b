import { readFileSync } from 'node:fs';
import {
	AS_PHONE,
	bare,
	button,
	contentWidth,
	DESKTOP,
	expect,
	expectNoViolation,
	field,
	type Locator,
	onDisk,
	onEachDevice,
	openPage,
	type Page,
	printed,
	test,
	tooSmall,
} from './page';
import { keysOf, type Loose, openJob, pad } from './whole';

/** An invented truck with boxes both ways, pads, plates, heights light and loaded, and two couplers. */
const again = (): Loose => JSON.parse(readFileSync('../tests/jobs/truck-again.job.json', 'utf8'));

const boxes = (page: Page, nest: string) =>
	page.getByRole('region', { name: `Boxes of ${nest} in their guides` });
const layers = (page: Page, nest: string) =>
	page.locator('details').filter({ has: page.locator('summary', { hasText: new RegExp(`^${nest}\\b`) }) });
const found = (page: Page) =>
	page.locator('.block', { has: page.getByRole('heading', { name: 'Down again' }) }).getByRole('status');
const figures = (page: Page, name: string) => page.getByRole('table', { name, exact: true });

/** The line of a table, with its cells as they are read. */
function row(table: Locator, name: string): Locator {
	return table.getByRole('row').filter({ has: table.page().getByRole('rowheader', { name, exact: true }) });
}

/** Opens the boxes of a nest by its menu. */
async function measureBox(page: Page, nest: string): Promise<void> {
	await button(page, `More for nest ${nest}`).click();
	await button(page, 'Measure a box in its guides').click();
	await expect(boxes(page, nest)).toBeVisible();
}

/** Opens all that can be opened, once it stands, and waits for what is fetched then; of a section that is gone to, once that is there. */
async function openAll(page: Page, section?: 'Level'): Promise<void> {
	if (section) await expect(page.getByRole('region', { name: section })).toBeVisible();
	await page.locator('main summary').first().waitFor();
	await expect(async () => {
		await page.locator('main details').evaluateAll((all: HTMLDetailsElement[]) => {
			for (const one of all) one.open = true;
		});
		const folds = await page.locator('summary', { hasText: 'Box in its guides' }).count();
		await expect(page.getByRole('region', { name: /^Boxes of/ })).toHaveCount(folds, { timeout: 2_000 });
	}).toPass();
}

/** Texts that their box does not hold: a value in its field, a label, a line of a table or of a drawing. */
function cut(page: Page): Promise<string[]> {
	return page.evaluate(() =>
		[
			...document.querySelectorAll<HTMLElement>(
				'main :is(input[type=text], .entry label, td, th, .drawn p, .drawn p span)',
			),
		]
			.filter((one) => one.checkVisibility() && one.scrollWidth > one.clientWidth + 1 && one.clientWidth > 0)
			.map((one) => (one as HTMLInputElement).value || one.textContent || ''),
	);
}

/** Labels of drawings that lie over each other, or beyond their drawing. */
function amiss(page: Page): Promise<string[]> {
	return page.evaluate(() => {
		const found: string[] = [];
		for (const svg of document.querySelectorAll('main svg[role=img]')) {
			const whole = svg.getBoundingClientRect();
			const beside = [...(svg.closest('.drawn')?.querySelectorAll('p') ?? [])];
			const texts = [...svg.querySelectorAll('text'), ...beside]
				.map((text) => ({ of: text.textContent ?? '', box: text.getBoundingClientRect() }))
				.filter(({ of, box }) => of.trim() !== '' && box.width > 0);
			for (const [i, { of, box }] of texts.entries()) {
				if (box.left < whole.left - 1 || box.right > innerWidth + 1) found.push(`${of} is cut`);
				for (const other of texts.slice(i + 1)) {
					const across = Math.min(box.right, other.box.right) - Math.max(box.left, other.box.left);
					const down = Math.min(box.bottom, other.box.bottom) - Math.max(box.top, other.box.top);
					if (across > 1 && down > 1) found.push(`${of} over ${other.of}`);
				}
			}
		}
		return found;
	});
}

test.describe('by touch', () => {
	test.use(AS_PHONE);

	test('a box is measured with the pad: Next goes to what is empty, and no key is pressed in vain', async ({
		page,
	}) => {
		await openPage(page);
		await button(page, 'More for nest A left').tap();
		await button(page, 'Measure a box in its guides').tap();
		await field(page, 'Opening, top, Box, along').tap();
		let presses = 3;
		for (const reading of ['8 1/2', '1/4', '1/4', '7 7/8']) {
			for (const key of [...keysOf(reading), 'Next']) {
				await button(pad(page), key).tap();
				presses += 1;
			}
		}
		// A reading of the middle follows where it is taken; this box is measured at one height.
		await expect(field(page, 'Opening, middle, Box, along')).toBeFocused();
		await field(page, 'Least clearance, Box, along').tap();
		for (const key of ['1/16', 'Next', '1/4', 'Next', '1/64', 'Done']) {
			await button(pad(page), key === '1/64' ? '1/16' : key).tap();
			presses += 1;
		}
		expect(presses).toBeLessThanOrEqual(20);
		await expect(pad(page)).toBeHidden();
		await expect(boxes(page, 'A left').getByRole('img')).toHaveAccessibleName(/1\/8 in clear all over/);
	});

	test('Next passes by what is written, and Back does not', async ({ page }) => {
		await openPage(page);
		await page.getByText('Box in its guides').tap();
		await field(page, 'Opening, top, Box').tap();
		await button(pad(page), 'Next').tap();
		await expect(field(page, '1st liner, middle, Box')).toBeFocused();
		const covered = await page.evaluate(() => {
			const input = document.activeElement?.getBoundingClientRect();
			const top = document.querySelector('[data-pad]')?.getBoundingClientRect().top;
			return input === undefined || top === undefined || input.bottom > top || input.top < 0;
		});
		expect(covered).toBe(false);
		await button(pad(page), 'Back').tap();
		await expect(field(page, 'Opening, middle, Box')).toBeFocused();
	});

	test('heights are taped one after the other with the pad, and the last ends it', async ({ page }) => {
		const job = again();
		for (const nest of job['nests']) nest.standing = '';
		job['nests'][1].standing = '12 11/16';
		await openJob(page, job);
		await page.getByRole('link', { name: 'Level' }).tap();
		await field(page, 'Standing height, A left').tap();
		let presses = 1;
		for (const reading of ['12 5/8', '12 11/16', '12 3/4']) {
			for (const key of [...keysOf(reading), 'Next']) {
				await button(pad(page), key).tap();
				presses += 1;
			}
		}
		expect(presses).toBe(13);
		await expect(field(page, 'Standing height, Coupler, A end')).toBeFocused();
		await button(pad(page), 'Next').tap();
		await expect(field(page, 'Standing height, Coupler, B end')).toBeFocused();
		await button(pad(page), 'Next').tap();
		await expect(pad(page)).toBeHidden();
		await expect(found(page).first()).toContainText('All 4 heights agree');
	});

	test('the pinched box of the demo is seen with what cures it', async ({ page }, info) => {
		await openPage(page);
		await page.getByText('Box in its guides').tap();
		await expect(page.locator('summary', { hasText: 'Box in its guides' })).toContainText('Tight');
		const of = boxes(page, 'B left');
		await expect(of.getByText(/Its way is pinched/)).toBeVisible();
		await expect(of.getByText(/Two new liners of/)).toBeVisible();
		await expect(of.getByText(/drawn 5 times as wide/)).toBeVisible();
		const clear = row(figures(page, 'Clearance of Box'), 'Middle').getByRole('cell');
		await expect(clear).toContainText('1/16 in');
		await of.screenshot({ path: info.outputPath('box.png') });
	});

	test('the worn pad of the demo is seen in Level', async ({ page }, info) => {
		await openPage(page, 'Level');
		const pads = layers(page, 'B right');
		await pads.locator('summary').first().tap();
		await expect(pads.getByText(/Pad is worn by/)).toBeVisible();
		await expect(pads.getByText(/worn off/)).toBeVisible();
		await pads.screenshot({ path: info.outputPath('pad.png') });
	});
});

test.describe('at a keyboard', () => {
	test.use({ viewport: DESKTOP });

	test('a box is measured, judged and drawn with keys alone', async ({ page }) => {
		await openPage(page);
		await button(page, 'More for nest A left').focus();
		await page.keyboard.press('Enter');
		await button(page, 'Measure a box in its guides').press('Enter');
		await expect(boxes(page, 'A left')).toBeVisible();
		await field(page, 'Opening, top, Box, along').focus();
		for (const reading of ['8 1/2', '1/8', '1/8', '7 7/8']) {
			await page.keyboard.type(reading);
			await page.keyboard.press('Enter');
		}
		await expect(field(page, 'Opening, middle, Box, along')).toBeFocused();
		await field(page, 'Least clearance, Box, along').focus();
		for (const size of ['1/2', '3/4', '1/64']) {
			await page.keyboard.type(size);
			await page.keyboard.press('Enter');
		}
		const of = boxes(page, 'A left');
		await expect(of.getByRole('status').filter({ hasText: 'Tight.' })).toBeVisible();
		await expect(of.getByRole('img')).toHaveAccessibleName(/3\/8 in clear all over/);
		await button(of, 'Take out Box, along').press('Enter');
		await expect(of).toHaveCount(0);
	});

	test('a pad that gives is thinner under load, a worn and a missing one say what they do', async ({
		page,
	}) => {
		await openPage(page, 'Level');
		const of = layers(page, 'A left');
		await of.locator('summary').focus();
		await page.keyboard.press('Enter');
		await expect(of.getByText('Pad 3/8 in')).toBeVisible();
		await field(page, 'Squeeze, Pad of A left').fill('20 000 lb/in');
		await page.keyboard.press('Tab');
		await expect(of.getByText(/^Pad 7\/32 in$/)).toBeVisible();
		await field(page, 'When new, Pad of A left').fill('1/2');
		await page.keyboard.press('Tab');
		await expect(of.getByText(/Pad is worn by 1\/8 in: the frame stands that much lower/)).toBeVisible();
		await expect(of.getByText(/or a shim of 1\/8 in more, A left would carry/)).toBeVisible();
		await expect(of.getByText('1/8 in worn off')).toBeVisible();
		await of.getByLabel('Missing').selectOption('It is missing');
		await expect(of.getByText(/Pad is missing: the frame stands 1\/2 in lower/)).toBeVisible();
		await expect(of.getByText('▲ missing')).toBeVisible();
		await button(of, 'Add a layer to A left').press('Enter');
		await field(page, 'Layer 2 of A left').fill('Plate');
		await of.getByLabel('Where').last().selectOption('Over the nest');
		await field(page, 'Thickness, Plate of A left').fill('1/4');
		await page.keyboard.press('Tab');
		await expect(of.getByText('Plate 1/4 in')).toBeVisible();
		await expect(of.getByRole('img')).toHaveAccessibleName(/of which 1\/4 in are pads, plates and shims/);
	});

	test('heights that agree, that one cause explains and that nothing explains are told apart', async ({
		page,
	}) => {
		await openJob(page, again());
		await page.getByRole('link', { name: 'Level' }).click();
		await expect(found(page).first()).toContainText('Light: All 4 heights agree');
		await expect(found(page).last()).toContainText(
			'Loaded: The heights do not agree with those worked out. What explains them best: A left stands as if 7/16 in were missing there.',
		);
		const loaded = figures(page, 'Heights as taped and as worked out, Loaded');
		await expect(row(loaded, 'A left')).toContainText('▲ no');
		await expect(row(loaded, 'Coupler, A end')).toContainText('31 3/8 in');
		await expect(row(loaded, 'Coupler, A end')).toContainText('● yes');
		await field(page, 'Standing height, A left').fill('12 1/8');
		await field(page, 'Standing height, B right').fill('12 5/8');
		await page.keyboard.press('Tab');
		await expect(found(page).first()).toContainText('no single cause explains them: read them again.');
	});

	test('the truck is weighed by its heights, and how well they can tell is the answer', async ({ page }) => {
		await openJob(page, again());
		await page.getByRole('link', { name: 'Level' }).click();
		await expect(
			page.getByText(
				/By these heights the nests carry 9\s569 lb; these heights cannot tell it better than ± 5 %/,
			),
		).toBeVisible();
		await expect(row(figures(page, 'Loads by these heights, Light'), 'B left')).toContainText(
			/2\s351 lb\s*± 120 lb\s*2\s397 lb/,
		);
		await expect(page.getByText('It acts, towards A').first()).toBeVisible();
		await field(page, 'Standing height, B left').fill('');
		await page.keyboard.press('Tab');
		await expect(page.getByText(/By these heights the nests carry 9/)).toHaveCount(0);
		await expect(found(page).first()).toContainText('All 3 heights agree');
	});

	test('a truck is written light and loaded with keys alone, its coupler against the limits of its user', async ({
		page,
	}) => {
		await openPage(page, 'Level');
		await button(page, 'Add another weight').press('Enter');
		await expect(field(page, 'Weight 2 is called')).toHaveValue('Loaded');
		await field(page, 'Weight on the nests, Loaded').focus();
		await page.keyboard.type('20 000 lb');
		await button(page, 'Add a point').press('Enter');
		await field(page, 'Point 1 is called').focus();
		for (const text of ['Coupler', '60', '', '20']) {
			await page.keyboard.type(text);
			await page.keyboard.press('Tab');
		}
		await field(page, 'Least height, Coupler').focus();
		await page.keyboard.type('31 1/4');
		await page.keyboard.press('Tab');
		const both = figures(page, 'The nests under each weight');
		await expect(both.getByRole('rowheader')).toHaveText(
			['A left', 'A right', 'B left', 'B right'].flatMap((nest) => [`${nest}, Light`, `${nest}, Loaded`]),
		);
		await expect(row(both, 'A left, Loaded')).toContainText(/\d in/);
		const points = figures(page, 'Heights of the points');
		await expect(row(points, 'Coupler, Light')).toContainText('● Within its limits');
		await expect(row(points, 'Coupler, Loaded')).toContainText('▼ Too low');
		for (const name of ['Plan of the frame, Light', 'Plan of the frame, Loaded'])
			await expect(page.getByRole('img', { name })).toBeVisible();
		await button(page, 'Take out Loaded').press('Enter');
		await expect(page.getByRole('img', { name: 'Plan of the frame, Loaded' })).toHaveCount(0);
	});

	test('a seized box is offered to the dip as the stuck one, until somebody chooses', async ({ page }) => {
		await openPage(page);
		await page.getByText('Box in its guides').click();
		await field(page, 'Opening, middle, Box').fill('8 1/4');
		await page.keyboard.press('Tab');
		await expect(boxes(page, 'B left').getByRole('status').filter({ hasText: 'Seized.' })).toBeVisible();
		await page.getByRole('navigation').getByRole('link', { name: 'Level' }).click();
		await expect(button(page, 'B left stuck')).toHaveAttribute('aria-pressed', 'true');
		await expect(figures(page, 'What each wheel keeps with the box of B left stuck')).toBeVisible();
		await button(page, 'No box stuck').click();
		await expect(figures(page, 'What each wheel keeps with the box of B left stuck')).toHaveCount(0);
	});

	/** What is written, where, and what its field answers; all else of the page stands. */
	const BAD: { section: 'Measure' | 'Level'; at: string; text: string; says: RegExp; besides?: string }[] = [
		{ section: 'Measure', at: 'Opening, top, Box', text: '8 65/64', says: /more than a whole/ },
		{ section: 'Measure', at: 'Least clearance, Box', text: '1/2', says: /above the most|1\/2.*5\/16/ },
		{
			section: 'Level',
			at: 'Thickness, Pad of A left',
			text: '0',
			says: /a thickness is at least 0\.001 in/,
		},
		{
			section: 'Level',
			at: 'Standing height, A left',
			text: '12 5/8',
			says: /at 2 of the nests; one height each of three nests at least/,
			besides: 'Standing height, A right',
		},
	];
	for (const { section, at, text, says, besides } of BAD) {
		test(`${at}: ${text} is answered at its field, and the rest stands`, async ({ page }) => {
			await openPage(page, section);
			await openAll(page);
			if (besides !== undefined) await field(page, besides).fill(text);
			await field(page, at).fill(text);
			await page.keyboard.press('Tab');
			await expect(field(page, at)).toHaveAttribute('aria-invalid', 'true');
			await expect(field(page, at)).toHaveAccessibleDescription(says);
			await expect(field(page, at)).toHaveValue(text);
			if (section === 'Level') await expect(page.getByRole('img', { name: /^Plan/ })).toBeVisible();
			else await expect(field(page, 'Most clearance, Box')).toHaveValue('5/16');
		});
	}

	/** Sizes that do not go together are answered in the box, since no one of them is at fault. */
	const TOGETHER: { change: (box: Loose) => void; says: RegExp }[] = [
		{
			change: (box) => Object.assign(box, { opening: ['7 1/2'] }),
			says: /wider than the opening at every height/,
		},
		{
			change: (box) => Object.assign(box, { liners: [['1/2'], ['1/2']] }),
			says: /liners are thicker than what the box leaves/,
		},
		{
			change: (box) => Object.assign(box, { liners: [['1/4', '1/4'], ['1/4']] }),
			says: /height/,
		},
	];
	for (const { change, says } of TOGETHER) {
		test(`a box that does not go together says ${says.source}`, async ({ page }) => {
			const job = again();
			change(job['nests'][0].guides[0]);
			await openJob(page, job);
			await openAll(page);
			await expect(boxes(page, 'A left').getByText(says).first()).toBeVisible();
			await expect(boxes(page, 'A left').getByText('Free.')).toBeVisible();
			await expect(boxes(page, 'B left').getByText(/Its way is pinched/)).toBeVisible();
		});
	}

	test('what is wrong with a pad or a box is gone to from another section', async ({ page }) => {
		const job = again();
		job['nests'][0].stack[0].thickness = '0';
		job['nests'][1].guides[0].least = '1/65';
		await openJob(page, job);
		await button(page, '2 to put right').click();
		await page.getByRole('button', { name: /a thickness is at least/ }).click();
		await expect(field(page, 'Thickness, Pad of A left')).toBeFocused();
		await button(page, '1 to put right').click();
		await page.getByRole('button', { name: /1\/65/ }).click();
		await expect(field(page, 'Least clearance, Box, along').nth(0)).toBeFocused();
	});

	test('undo takes a height back in one step, and a reload keeps all of it', async ({ page }) => {
		const job = again();
		delete job['frame'].weights[1].standing;
		await openJob(page, job);
		await page.getByRole('link', { name: 'Level' }).click();
		await page.getByText('Taped under Loaded').click();
		const height = field(page, 'Standing height, A right, Loaded');
		await height.pressSequentially('11 5/8');
		await page.keyboard.press('Tab');
		await page.keyboard.press('Control+z');
		await expect(height).toHaveValue('');
		await expect(button(page, 'Undo')).toHaveAttribute('aria-disabled', 'true');
		await page.keyboard.press('Control+Shift+z');
		await expect(height).toHaveValue('11 5/8');
		await page.getByRole('link', { name: 'Measure' }).click();
		await openAll(page);
		await field(page, '2nd liner, bottom, Box, along').first().fill('15/64');
		await page.keyboard.press('Tab');
		await expect(page.getByText('saved').first()).toBeVisible();
		await page.reload();
		await openAll(page);
		await expect(field(page, '2nd liner, bottom, Box, along').first()).toHaveValue('15/64');
		await page.getByRole('link', { name: 'Level' }).click();
		await openAll(page, 'Level');
		await expect(height).toHaveValue('11 5/8');
		await expect(field(page, 'Squeeze, Pad of B right')).toHaveValue('40 000 lb/in');
		await expect(field(page, 'Least height, Coupler, B end')).toHaveValue('31');
	});

	test('the record holds every reading of boxes, stacks, heights and weights', async ({ page }, info) => {
		await openJob(page, again());
		const paper = bare(await printed(page, info.outputPath('again.pdf')));
		const job = again();
		const texts = (part: unknown): string[] =>
			typeof part === 'string'
				? [part]
				: part !== null && typeof part === 'object'
					? Object.values(part).flatMap(texts)
					: [];
		const written = job['nests'].flatMap((nest: Loose) => [
			...texts(nest['guides'].map(({ across: _, ...box }: Loose) => box)),
			...texts(nest['stack'].map(({ at: _, ...layer }: Loose) => layer)),
			nest['standing'],
		]);
		const { weights, points } = job['frame'];
		const wanted = [...written, ...texts(weights), ...texts(points)];
		expect(wanted.length).toBeGreaterThan(120);
		expect(wanted.filter((text) => !paper.includes(bare(text)))).toEqual([]);
		for (const line of [
			'A left 12 5/8 12 5/8 in ± 1/32 in',
			'B left Pad, under the nest 1/4 3/8 40 000 lb/in',
			'Coupler, A end 31 3/8 31 3/8 in ± 1/32 in',
			'Light: 9 600 lb',
			'Loaded: 14 400 lb, centre 2 along, 0 across',
			'cannot tell it better than ± 5 %',
			'A left stands as if 7/16 in were missing there',
		])
			expect(paper).toContain(bare(line));
	});
});

onEachDevice((look) => {
	test('axe finds nothing with all of it open', async ({ page }) => {
		await openJob(page, again());
		await openAll(page);
		await expectNoViolation(page, 'Measure with boxes');
		await page.getByRole('link', { name: 'Level' }).click();
		await openAll(page, 'Level');
		await expect(found(page).last()).toContainText('Loaded');
		await expectNoViolation(page, 'Level with pads, weights and heights');
		if (look.startsWith('phone')) expect(await tooSmall(page)).toEqual([]);
	});
});

for (const width of [320, 360, 390, 1280]) {
	test(`nothing is cut, and no label lies over another, at ${width} px`, async ({ page }, info) => {
		await page.setViewportSize({ width, height: 844 });
		const job = again();
		job['nests'][0].guides[0].opening[1] = '8 15/32 scant';
		job['nests'][0].stack.push(
			{ name: 'Rubber', at: 'above', thickness: '1/2', when_new: '3/4' },
			{ name: 'Wear plate', at: 'below', when_new: '1/4', missing: 'yes' },
		);
		job['frame'].supports[0].shim = '1/8';
		await openJob(page, job);
		await openAll(page);
		expect(await contentWidth(page)).toBeLessThanOrEqual(width);
		expect(await cut(page)).toEqual([]);
		expect(await amiss(page)).toEqual([]);
		await page.getByRole('link', { name: 'Level' }).click();
		await openAll(page, 'Level');
		await expect(found(page).last()).toContainText('Loaded');
		expect(await contentWidth(page)).toBeLessThanOrEqual(width);
		expect(await cut(page)).toEqual([]);
		expect(await amiss(page)).toEqual([]);
		await layers(page, 'A left').screenshot({ path: info.outputPath('stack.png') });
	});
}

/** The job as it is kept on the device, once it is. */
async function kept(page: Page): Promise<Loose> {
	await expect(page.getByText(/^saved/).first()).toBeVisible();
	return JSON.parse((await onDisk(page))['job']?.text ?? '') as Loose;
}

/** What is taped of boxes, layers and heights, of a job or of a part of it. */
const taped = (of: Loose): string[] =>
	JSON.stringify(of).match(/"(opening|box|liners|thickness|missing|standing)":/g) ?? [];

test('a nest that is added has nothing taped, and a nest or point that is renamed keeps its heights', async ({
	page,
}) => {
	await page.setViewportSize(DESKTOP);
	await openJob(page, again());
	await button(page, 'Add a nest like the last').click();
	await page.getByRole('textbox', { name: 'Name of the nest' }).first().fill('Front left');
	await page.getByRole('link', { name: 'Level' }).click();
	await field(page, 'Point 1 is called').fill('Draw hook');
	await page.keyboard.press('Tab');
	await expect.poll(async () => (await kept(page))['frame'].points[0].name).toBe('Draw hook');
	const { nests, frame } = await kept(page);
	expect(nests).toHaveLength(5);
	expect(taped(nests[4])).toEqual([]);
	expect(nests[4].guides[0].least).toBe('1/32');
	expect(nests[4].stack[0].when_new).toBe('3/8');
	const places = frame.weights[1].standing.map(({ at }: Loose) => at);
	expect(places).toEqual(['Front left', 'A right', 'B left', 'B right', 'Draw hook']);
});

test('a nest that is taken out takes its heights under further weights along', async ({ page }) => {
	await page.setViewportSize(DESKTOP);
	await openJob(page, again());
	await button(page, 'More for nest A right').click();
	await button(page, 'Remove this nest').click();
	await expect.poll(async () => (await kept(page))['nests'].length).toBe(3);
	const { frame } = await kept(page);
	const places = frame.weights[1].standing.map(({ at }: Loose) => at);
	expect(places.slice(0, 3)).toEqual(['A left', 'B left', 'B right']);
	await button(page, 'Undo').click();
	await expect.poll(async () => (await kept(page))['frame'].weights[1].standing[1].at).toBe('A right');
});

test('a job begun from the drawings of another has nothing taped', async ({ page }) => {
	await page.setViewportSize(DESKTOP);
	await openJob(page, { ...again(), title: 'Down again' });
	await button(page, 'New').click();
	await page.getByRole('link', { name: 'Record' }).click();
	await button(page, 'More for Down again').click();
	await button(page, 'Start a new job from its drawings').click();
	await expect(page.getByText('Beside the job of 2026-05-02.')).toBeVisible();
	await expect.poll(async () => (await kept(page))['nests']?.length).toBe(4);
	const { earlier, ...begun } = await kept(page);
	expect(taped(begun)).toEqual([]);
	expect(taped(earlier).length).toBeGreaterThan(20);
	expect(begun['frame'].points.map(({ name }: Loose) => name)).toEqual(['Coupler, A end', 'Coupler, B end']);
});
