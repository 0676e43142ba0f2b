import { readFileSync } from 'node:fs';
import { preview } from 'vite';
import {
	AS_PHONE,
	button,
	contentWidth,
	DESKTOP,
	expect,
	expectNoViolation,
	field,
	type Locator,
	onDisk,
	onEachDevice,
	openBlank,
	openPage,
	type Page,
	PHONE,
	printedAlone,
	test,
	tooSmall,
} from './page';

const plan = (page: Page): Locator => page.getByRole('img', { name: /^Plan of the frame/ });
const nests = (page: Page): Locator => page.getByRole('table', { name: 'The nests under the frame' });
const centre = (page: Page): Locator => page.getByRole('slider', { name: 'Centre of weight' });
const depth = (page: Page): Locator => page.getByRole('slider', { name: 'How deep' });
const kept = (page: Page): Locator => page.getByRole('table', { name: 'What each wheel keeps', exact: true });

/** The cell of a nest or wheel, by the head of its column. */
async function cell(table: Locator, row: string, column: string): Promise<string> {
	const heads = await table.getByRole('columnheader').allInnerTexts();
	const cells = table.getByRole('row').filter({ has: table.page().getByRole('rowheader', { name: row }) });
	return cells
		.getByRole('cell')
		.nth(heads.indexOf(column) - 1)
		.innerText();
}

/** The pounds of a load, as it is written. */
const pounds = (text: string): number => Number(/^([\d\s]+)\slb/u.exec(text)?.[1]?.replace(/\s/gu, ''));

/** A sentence that is shown; the drawings say it too. */
const said = (page: Page, text: RegExp): Locator => page.getByRole('paragraph').filter({ hasText: text });

/** Opens Level on the invented truck. */
async function openTruck(page: Page): Promise<void> {
	await openPage(page, 'Level');
	await expect(plan(page)).toBeVisible();
}

async function openJob(page: Page, job: object): Promise<void> {
	const choice = page.waitForEvent('filechooser');
	await button(page, 'Open').click();
	const buffer = Buffer.from(JSON.stringify({ format: 'coilnest-job/1', ...job }));
	await (await choice).setFiles({ name: 'job.json', mimeType: 'application/json', buffer });
}

const NAMES = ['A left', 'A right', 'B left', 'B right'];
/** Four nests alike, without a frame. */
const FOUR = {
	coils: [{ id: 'one', name: 'One', free: '14', rate: '1000 lb/in', solid: '9' }],
	nests: NAMES.map((id) => ({
		id,
		seats: [{ coil: 'one', readings: ['14'] }],
	})),
};

test.describe('at a keyboard', () => {
	test.use({ viewport: DESKTOP });

	test('the frame is set on its nests with weight and two distances alone', async ({ page }) => {
		await openPage(page, 'Level');
		await openJob(page, FOUR);
		await button(page, 'Set the frame on these nests').focus();
		await page.keyboard.press('Enter');
		await expect(field(page, 'Weight on the nests')).toBeFocused();
		await page.keyboard.type('8000');
		await field(page, 'Nests apart, along').focus();
		await page.keyboard.type('72');
		await page.keyboard.press('Tab');
		await expect(field(page, 'Nests apart, across')).toBeFocused();
		await page.keyboard.type('56');
		await expect(plan(page)).toBeVisible();
		// 8000 lb on four nests that are alike, 2 in under their free height of 14 in.
		for (const name of NAMES) {
			await expect.poll(async () => pounds(await cell(nests(page), name, 'Load'))).toBe(2000);
			expect(await cell(nests(page), name, 'Height')).toContain('12');
		}
		await expect(said(page, /^The frame stands level\./)).toBeVisible();
		await page.getByText('Each nest: its place, its shim, its ground').click();
		await expect(field(page, 'Along, ' + NAMES[0])).toHaveAttribute('placeholder', 'as above');

		await centre(page).focus();
		for (let press = 0; press < 3; press += 1) await page.keyboard.press('Shift+ArrowUp');
		await page.keyboard.press('ArrowRight');
		await expect(field(page, 'Its centre, along')).toHaveValue('3 in');
		await expect(field(page, 'Its centre, across')).toHaveValue('-0.0625 in');
		// 8000 lb / 2 · (1/2 + 3 / 72) on the A end, 8000 lb / 2 on either side but for a hair.
		await expect.poll(async () => pounds(await cell(nests(page), 'A right', 'Load'))).toBeGreaterThan(2160);
		await expect.poll(async () => pounds(await cell(nests(page), 'B left', 'Load'))).toBeLessThan(1840);
		await button(page, 'Undo').click();
		await expect(field(page, 'Its centre, along')).toHaveValue('');
	});

	test('a wheel is dipped with keys, and bars and table follow', async ({ page }) => {
		await openTruck(page);
		const wheels = page.getByRole('group', { name: 'Which wheel' });
		await button(wheels, 'B left').focus();
		await page.keyboard.press('Enter');
		await expect(button(wheels, 'B left')).toHaveAttribute('aria-pressed', 'true');
		await depth(page).focus();
		await page.keyboard.press('End');
		await expect(depth(page)).toHaveAttribute('aria-valuetext', /^12 in\..* B left lifts off the track\.$/);
		await depth(page).fill('6');
		await expect(depth(page)).toHaveAttribute('aria-valuetext', /^6 in\. With a dip of 6 in under B left/);
		const rest = pounds(await cell(kept(page), 'B left', 'At rest'));
		const carries = async () => pounds(await cell(kept(page), 'B left', 'Now'));
		await expect.poll(carries).toBeLessThan(rest / 2);
		const loses = await carries();
		await page.keyboard.press('ArrowLeft');
		await expect.poll(carries).toBeGreaterThan(loses);

		await button(page, 'A right stuck').press('Enter');
		const stuck = page.getByRole('table', {
			name: 'What each wheel keeps with the box of A right stuck',
		});
		const free = await carries();
		await expect.poll(async () => pounds(await cell(stuck, 'B left', 'Now'))).toBeLessThan(free);
		await button(page, 'Rise').press('Enter');
		await expect(said(page, /^With a rise of 5 15\/16 in under B left/)).toBeVisible();
		await expect.poll(carries).toBeGreaterThan(rest);
		await expect(page.getByText(/A screening by statics, no acceptance test/)).toBeVisible();
		await page.locator('.limit').getByRole('button').click();
		await expect(page.getByRole('group', { name: 'Working' })).toContainText('ΔQ/Q0');
	});
});

test.describe('on a phone', () => {
	test.use(AS_PHONE);

	test('the invented truck stands there on a first visit, and is asked by touch', async ({ page }) => {
		await openPage(page);
		await page.getByRole('link', { name: 'Level' }).tap();
		await expect(nests(page).getByRole('rowheader')).toHaveText(NAMES);
		await expect(page.getByText('invented demo', { exact: true })).toBeVisible();
		await button(page.getByRole('group', { name: 'Which wheel' }), 'A right').tap();
		await button(page, 'B left stuck').tap();
		await expect(page.getByText(/^With the box of B left stuck:/)).toBeVisible();
	});

	test('what is pressed is as large as a finger', async ({ page }) => {
		await openTruck(page);
		expect(await tooSmall(page)).toEqual([]);
	});

	test('the centre of weight follows a finger, as one step', async ({ page, context }) => {
		await openTruck(page);
		await centre(page).scrollIntoViewIfNeeded();
		const box = await centre(page).boundingBox();
		if (!box) throw new Error('the mark is not drawn');
		const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
		const before = pounds(await cell(nests(page), 'A left', 'Load'));
		const client = await context.newCDPSession(page);
		const touch = (type: 'touchStart' | 'touchMove' | 'touchEnd', dx: number, dy: number) =>
			client.send('Input.dispatchTouchEvent', {
				type,
				touchPoints: type === 'touchEnd' ? [] : [{ x: x + dx, y: y + dy }],
			});
		await touch('touchStart', 0, 0);
		for (let step = 1; step <= 10; step += 1) await touch('touchMove', -2 * step, -2 * step);
		await touch('touchEnd', 0, 0);
		await expect(field(page, 'Its centre, along')).toHaveValue(/^\d+(\.\d+)? in$/);
		await expect.poll(async () => pounds(await cell(nests(page), 'A left', 'Load'))).toBeGreaterThan(before);
		await button(page, 'Undo').tap();
		await expect(field(page, 'Its centre, along')).toHaveValue('1');
		await expect(field(page, 'Its centre, across')).toHaveValue('0');
	});
});

test('a mouse drags the centre of weight', async ({ page }) => {
	await page.setViewportSize(DESKTOP);
	await openTruck(page);
	await centre(page).scrollIntoViewIfNeeded();
	const box = await centre(page).boundingBox();
	if (!box) throw new Error('the mark is not drawn');
	await page.mouse.move(box.x + 20, box.y + 20);
	await page.mouse.down();
	await page.mouse.move(box.x + 20, box.y + 60, { steps: 5 });
	await page.mouse.up();
	await expect(field(page, 'Its centre, along')).toHaveValue(/^-\d+(\.\d+)? in$/);
	await expect(said(page, /lower at B left and B right/)).toBeVisible();
});

test('what cannot be is told at its field, and the rest stands', async ({ page }) => {
	await page.setViewportSize(DESKTOP);
	await openTruck(page);
	for (const [name, text, says] of [
		['Weight on the nests', '-17800', /below zero/],
		['Its centre, along', 'front', /there is no number in it/],
		['Shim in stock 1', '1/16 lb', /unit of/],
		['Largest stack', '-1', /below zero/],
	] as const) {
		const before = await field(page, name).inputValue();
		await field(page, name).fill(text);
		await page.keyboard.press('Tab');
		await expect(field(page, name)).toHaveAttribute('aria-invalid', 'true');
		await expect(field(page, name)).toHaveAccessibleDescription(says);
		await expect(field(page, name)).toHaveValue(text);
		await expect(page.getByRole('heading', { name: 'Coils on the bench' })).toBeVisible();
		await field(page, name).fill(before);
		await expect(field(page, name)).not.toHaveAttribute('aria-invalid');
	}
	await expect(plan(page)).toBeVisible();
});

test('a weight beyond the nests tips the frame, and is drawn back', async ({ page }) => {
	await page.setViewportSize(DESKTOP);
	await openTruck(page);
	await field(page, 'Its centre, along').fill('40');
	await expect(page.getByText(/so that the frame tips/).first()).toBeVisible();
	await expect(plan(page)).toBeVisible();
	await expect(nests(page)).toBeHidden();
	await centre(page).focus();
	for (let press = 0; press < 8; press += 1) await page.keyboard.press('Shift+ArrowDown');
	await expect(field(page, 'Its centre, along')).toHaveValue('32 in');
	await expect(nests(page)).toBeVisible();
});

test('nests in one line, or in one place, are told where they stand', async ({ page }) => {
	await page.setViewportSize(DESKTOP);
	await openPage(page, 'Level');
	const supports = NAMES.map((nest, i) => ({
		nest,
		along: String(10 * i),
		across: '0',
	}));
	await openJob(page, { ...FOUR, frame: { weight: '8000', supports } });
	await expect(page.getByText(/all \d+ nests stand in one line/)).toHaveCount(1);
	await expect(page.getByRole('textbox', { name: 'Across, A left' })).toBeVisible();
	await field(page, 'Along, A right').fill('0');
	await page.keyboard.press('Tab');
	await expect(field(page, 'Along, A right')).toHaveAccessibleDescription(/both stand at/);
	await field(page, 'Along, A right').fill('10');
	await field(page, 'Across, A right').fill('28');
	await expect(plan(page)).toBeVisible();
});

test('a nest that is not measured well enough is named, and the way there', async ({ page }) => {
	await page.setViewportSize(DESKTOP);
	await openPage(page, 'Level');
	const supports = NAMES.map((nest, i) => ({
		nest,
		along: i < 2 ? '36' : '-36',
		across: i % 2 ? '-28' : '28',
	}));
	const nest = { id: 'B right', seats: [{ coil: 'two' }] };
	await openJob(page, {
		...FOUR,
		coils: [...FOUR.coils, { id: 'two', name: 'Two' }],
		nests: [...FOUR.nests.slice(0, 3), nest],
		frame: { weight: '8000', supports },
	});
	await expect(page.getByText(/^B right: the loads of this nest are not known/)).toBeVisible();
	await expect(plan(page)).toBeHidden();
	await button(page, 'Go there').click();
	await expect(page).toHaveURL(/#(nest|measure)$/);
});

test('a problem of the frame stands at its field when the page is opened anew', async ({ page }) => {
	await page.setViewportSize(DESKTOP);
	await openTruck(page);
	await field(page, 'Weight on the nests').fill('heavy');
	await page.goto('./#measure');
	await page.reload();
	await page.goto('./#level');
	await expect(field(page, 'Weight on the nests')).toHaveValue('heavy');
	await expect(page.getByText(/^heavy — /)).toBeVisible();
});

test('a job in which words stand for lists is drawn all the same', async ({ page }) => {
	await page.setViewportSize(DESKTOP);
	await openPage(page, 'Level');
	const frame = {
		weight: '8000',
		supports: ['A left', 7],
		shim_stock: 'thin',
		beams: [3],
		centre: 'middle',
	};
	await openJob(page, { ...FOUR, frame, bench: 'none' });
	await expect(page.getByRole('heading', { name: 'Shims', exact: true })).toBeVisible();
	await button(page, 'Add a coil to the bench').click();
	await expect(field(page, 'Label of coil 1 on the bench')).toBeFocused();
});

test('coils on the bench are written, added and taken out; many are shown in part', async ({ page }) => {
	await page.setViewportSize(DESKTOP);
	await openPage(page, 'Level');
	const bench = Array.from({ length: 120 }, (_, i) => ({
		coil: 'one',
		label: `b${i + 1}`,
		readings: ['14'],
	}));
	await openJob(page, { ...FOUR, bench });
	await expect(page.getByRole('textbox', { name: /^Label of coil/ })).toHaveCount(50);
	await button(page, 'Show all 120').click();
	await expect(page.getByRole('textbox', { name: /^Label of coil/ })).toHaveCount(120);
	await button(page, 'Take out b120').click();
	await expect(page.getByRole('textbox', { name: /^Label of coil/ })).toHaveCount(119);
	await field(page, 'Place 2, b1').fill('14 lb');
	await page.keyboard.press('Tab');
	await expect(field(page, 'Place 1, b1')).toHaveValue('14');
});

test('shims in another system of units keep what was written', async ({ page }) => {
	await page.setViewportSize(DESKTOP);
	await openTruck(page);
	await button(page, 'Millimetres').click();
	await expect(field(page, 'Shim in stock 1')).toHaveValue('1/16 in');
	await expect(field(page, 'Nests apart, along')).toHaveValue('72 in');
	await expect(depth(page)).toHaveAttribute('aria-valuetext', / mm\. /);
	await centre(page).focus();
	await page.keyboard.press('ArrowUp');
	await expect(field(page, 'Its centre, along')).toHaveValue('26 mm');
});

test('the keys of undo take back a move of the mark that has just been made', async ({ page }) => {
	await page.setViewportSize(DESKTOP);
	await openTruck(page);
	await centre(page).focus();
	const before = await centre(page).getAttribute('aria-valuetext');
	await page.keyboard.press('ArrowUp');
	await page.keyboard.press('Control+z');
	await expect(button(page, 'Redo')).toBeEnabled();
	await expect(plan(page)).toBeVisible();
	await expect(centre(page)).toHaveAttribute('aria-valuetext', before ?? '');
	await button(page, 'Redo').click();
	await expect(field(page, 'Its centre, along')).toHaveValue('1.0625 in');
});

/** What a frame of a 60 Hz screen lasts. */
const FRAME_MS = 1000 / 60;

/*
 * All that the page's own thread does for a move is bounded: half a frame. A report of the whole job at each move, or
 * the layout of a whole section, would take more. Frames on a slowed processor are told beside it, but not judged:
 * they are as long as whatever else runs on the machine makes them.
 */
for (const { name, mark } of [
	{ name: 'the bars follow a dragged dip', mark: depth },
	{ name: 'the plan follows a dragged centre of weight', mark: centre },
]) {
	test(`${name}, on a slow processor too`, async ({ page, context }) => {
		await page.setViewportSize(PHONE);
		await openTruck(page);
		await button(page, 'A right stuck').click();
		await mark(page).scrollIntoViewIfNeeded();
		const box = await mark(page).boundingBox();
		if (!box) throw new Error('the mark is not drawn');
		const client = await context.newCDPSession(page);
		const MOVES = 60;
		const y = box.y + box.height / 2;
		const [from, to] = mark === depth ? [box.x + 20, box.x + box.width - 20] : [box.x + 24, box.x + 84];
		const drag = async () => {
			await page.mouse.move(from, y);
			await page.mouse.down();
			for (let step = 0; step <= MOVES; step += 1) {
				await page.mouse.move(from + ((to - from) * step) / MOVES, y);
			}
			for (let step = 0; step <= MOVES; step += 1) {
				await page.mouse.move(to + ((from - to) * step) / MOVES, y);
			}
			await page.mouse.up();
		};
		await page.evaluate(() => {
			const frames: number[] = [];
			Object.assign(window, { frames });
			// From the frame that shows a move to the one after it.
			const onmove = ({ buttons }: PointerEvent) =>
				buttons &&
				requestAnimationFrame((shown) => requestAnimationFrame((after) => frames.push(after - shown)));
			addEventListener('pointermove', onmove, { capture: true });
		});
		const framesOf = () =>
			page.evaluate(() => (window as unknown as { frames: number[] }).frames.splice(0).sort((a, b) => a - b));

		await client.send('Performance.enable', { timeDomain: 'threadTicks' });
		const spent = async () => {
			const { metrics } = await client.send('Performance.getMetrics');
			return 1000 * (metrics.find((metric) => metric.name === 'TaskDuration')?.value ?? NaN);
		};
		const before = await spent();
		await drag();
		const moves = (await framesOf()).length;
		const work = ((await spent()) - before) / moves;
		await client.send('Performance.disable');

		await client.send('Emulation.setCPUThrottlingRate', { rate: 4 });
		await drag();
		const frames = await framesOf();
		const [half, most] = [0.5, 0.95].map((part) => frames[Math.floor(part * (frames.length - 1))] ?? NaN);
		const told =
			`${name}: ${moves} moves of ${work.toFixed(1)} ms each; slowed fourfold, half of ${frames.length} ` +
			`frames within ${half?.toFixed(1)} ms, 19 of 20 within ${most?.toFixed(1)} ms`;
		console.log(told);
		expect(moves, told).toBeGreaterThan(40);
		expect(work, told).toBeLessThan(FRAME_MS / 2);
	});
}

test('shims are tried on the plan, and written as one step', async ({ page }) => {
	await page.setViewportSize(DESKTOP);
	await openTruck(page);
	const steps = page.getByRole('list', { name: 'What to do, in this order' });
	await expect(steps.getByRole('listitem')).not.toHaveCount(0);
	const now = await nests(page).innerText();
	await button(page, 'Show the frame with them').press('Enter');
	const tried = page.getByRole('table', { name: 'The nests as they would stand' });
	await expect(tried).toBeVisible();
	await expect(plan(page)).toHaveAccessibleName(/^Plan of the frame, as it would stand/);
	await expect.poll(() => tried.innerText()).not.toBe(now);
	const first = await tried.innerText();
	// With another stock there are other steps, for another aim the frame stands otherwise, and the drawing follows.
	await expect(steps).toContainText('put in one 1/4 in');
	await field(page, 'Largest stack').fill('1/16');
	await expect(steps.getByRole('listitem')).toHaveCount(2);
	await field(page, 'Largest stack').fill('1/2');
	const aim = page.getByRole('combobox', { name: 'Shims are to give' });
	await aim.selectOption({ label: 'A level frame' });
	await expect.poll(() => tried.innerText()).not.toBe(first);
	await aim.selectOption({ label: 'Even loads' });
	await expect.poll(() => tried.innerText()).toBe(first);

	await button(page, 'Write these shims into the job').click();
	await expect(tried).toBeHidden();
	// The figures of the frame with its shims are those that were foretold.
	const loads = (text: string) => text.match(/[\d\s]+\slb/gu);
	await expect.poll(async () => loads(await nests(page).innerText())).toEqual(loads(first));
	await expect(steps).toBeHidden();
	await button(page, 'Undo').click();
	await expect.poll(() => nests(page).innerText()).toBe(now);
	await expect(steps.getByRole('listitem')).not.toHaveCount(0);
});

interface Coil {
	label: string;
	coil: string;
	readings: string[];
}

/** Every coil of the job that is kept. */
async function coilsOf(page: Page): Promise<string[]> {
	await expect(page.getByText('saved', { exact: true })).toBeVisible();
	return coilsIn((await onDisk(page))['job']?.text ?? '');
}

/** Every coil of a job, in a seat, on the bench or set aside, with what goes with it. */
function coilsIn(text: string): string[] {
	const {
		nests,
		bench,
		set_aside: aside = [],
	} = JSON.parse(text) as {
		nests: { seats: Coil[] }[];
		bench: Coil[];
		set_aside?: Coil[];
	};
	return [...nests.flatMap((nest) => nest.seats), ...bench, ...aside]
		.map(({ label, coil, readings }) => `${label} ${coil} ${readings.join(' ')}`)
		.sort();
}

test('coils are placed where they belong, and none is lost', async ({ page }) => {
	await page.setViewportSize(DESKTOP);
	await openTruck(page);
	const seats = page.getByRole('table', { name: 'The coils in their seats' });
	const moves = page.getByRole('list', { name: 'What to do', exact: true }).getByRole('listitem');
	/** Which coil sits where; the loads are told at the height at which the frame then rests. */
	const rows = async () =>
		(await seats.getByRole('row').allInnerTexts()).map((row) =>
			row.replaceAll('→ ', '').split('\t').slice(0, 3),
		);
	const before = coilsIn(readFileSync('../web/demo/quarry-tramway.json', 'utf8'));
	expect(before).toHaveLength(13);
	await expect(moves).not.toHaveCount(0);
	const wanted = await rows();
	await button(page, 'Place them so').click();
	await expect(moves).toHaveCount(0);
	expect(await rows()).toEqual(wanted);
	expect(await coilsOf(page)).toEqual(before);
	await button(page, 'Undo').click();
	await expect(moves).not.toHaveCount(0);
});

test('pasted lines become coils; those that are not taken are mended', async ({ page }) => {
	await page.setViewportSize(DESKTOP);
	await openTruck(page);
	await page.getByText('Many at once', { exact: true }).click();
	const labels = page.getByRole('textbox', { name: /^Label of coil/ });
	await expect(labels).toHaveCount(5);
	await field(page, 'Paste lines: label, role, readings').fill(
		'label,role,reading 1\n31,outer,13 7/8\n32,outer,13 17/16\n33,inner,13 5/8\n',
	);
	await button(page, 'Read these lines').click();
	await expect(page.getByText(/^2 coils put on the bench\. One line was not taken/)).toBeVisible();
	await expect(labels).toHaveCount(7);
	const refused = page.getByRole('group', { name: 'Lines that were not taken' });
	await expect(refused).toContainText('Line 3');
	await expect(refused).toContainText('did you mean 14 1/16?');
	const mend = refused.getByRole('textbox');
	await expect(mend).toHaveValue(/32,outer,13 17\/16/);
	await mend.fill((await mend.inputValue()).replace('17/16', '15/16'));
	await button(refused, 'Read them again').click();
	await expect(labels).toHaveCount(8);
	await expect(refused).toBeHidden();
	await button(page, 'Undo').click();
	await expect(labels).toHaveCount(7);
	await button(page, 'Undo').click();
	await expect(labels).toHaveCount(5);
});

test('a table of thousands is read with its progress, can be stopped, and is saved again', async ({
	page,
}) => {
	test.slow();
	await page.setViewportSize(DESKTOP);
	await openTruck(page);
	await page.getByText('Many at once', { exact: true }).click();
	const lines = Array.from({ length: 6000 }, (_, i) => `c${i},outer,13 ${(i % 15) + 1}/16`);
	const buffer = Buffer.from(['label,role,reading 1', ...lines].join('\n'));
	const open = async () => {
		const choice = page.waitForEvent('filechooser');
		await button(page, 'Open a CSV file').click();
		await (await choice).setFiles({ name: 'coils.csv', mimeType: 'text/csv', buffer });
	};
	// Reading is quick: whoever stops it has to press as soon as there is something to press.
	const stopped = page.evaluate(
		() =>
			new Promise<boolean>((resolve) => {
				new MutationObserver((_, observer) => {
					const stop = [...document.querySelectorAll('button')].find((one) => one.textContent === 'Stop');
					if (!stop) return;
					observer.disconnect();
					resolve(document.querySelector('progress') !== null);
					stop.click();
				}).observe(document.body, { childList: true, subtree: true });
			}),
	);
	await open();
	expect(await stopped).toBe(true);
	await expect(page.getByText(/^\d+ coils put on the bench\. Stopped before line \d+\.$/)).toBeVisible();
	await button(page, 'Undo').click();
	await expect(page.getByRole('textbox', { name: /^Label of coil/ })).toHaveCount(5);

	await open();
	await expect(page.getByText(/^6000 coils put on the bench\./)).toBeVisible({ timeout: 60_000 });
	await expect(page.getByRole('textbox', { name: /^Label of coil/ })).toHaveCount(50);
	await field(page, 'Weight on the nests').fill('17000');
	await expect(nests(page)).toContainText(/4\s2\d\d\slb/u);

	const download = page.waitForEvent('download');
	await button(page, 'Save these as CSV').click();
	const stream = await (await download).createReadStream();
	let saved = '';
	for await (const chunk of stream) saved += String(chunk);
	expect(saved.trim().split('\n')).toHaveLength(6006);

	const large = page.waitForEvent('filechooser');
	await button(page, 'Open a CSV file').click();
	await (
		await large
	).setFiles({ name: 'large.csv', mimeType: 'text/csv', buffer: Buffer.alloc(8_000_001, 44) });
	await expect(page.getByText(/^large\.csv is larger than 8 MB, and was not read/)).toBeVisible();
});

onEachDevice(() => {
	test('axe finds nothing, with a frame or without, nor with errors or all opened', async ({ page }) => {
		await openBlank(page);
		await openPage(page, 'Level');
		await expectNoViolation(page, 'Level without a frame');
		await button(page, 'Undo').click();
		await expect(plan(page)).toBeVisible();
		await button(page, 'A right stuck').click();
		await page.getByText('Each nest: its place, its shim, its ground').click();
		await page.getByText('More', { exact: true }).click();
		await button(page, 'Add a beam').click();
		await expectNoViolation(page, 'Level with all opened');
		await nests(page).getByRole('cell').getByRole('button').first().click();
		await expect(page.getByRole('group', { name: 'Working' })).toBeVisible();
		await expectNoViolation(page, 'Level with a working');
		await page.keyboard.press('Escape');
		await field(page, 'Its centre, along').fill('40');
		await field(page, 'Largest stack').fill('-1');
		await page.keyboard.press('Tab');
		await expectNoViolation(page, 'Level with errors');
	});
});

test('there is no sideways scroll from 320 px', async ({ page }) => {
	await openTruck(page);
	await button(page, 'A right stuck').click();
	await page.getByText('Each nest: its place, its shim, its ground').click();
	const tooWide: string[] = [];
	for (const width of [320, 360, 390, 480, 600, 768, 900, 1024, 1152, 1280, 1440]) {
		await page.setViewportSize({ width, height: 800 });
		const content = await contentWidth(page);
		if (content > width) tooWide.push(`${content} px on ${width} px`);
	}
	expect(tooWide).toEqual([]);
});

test('it prints with its plan, its figures and its cautions, and no control', async ({ page }, testInfo) => {
	await page.setViewportSize(DESKTOP);
	await openTruck(page);
	await button(page, 'A right stuck').click();
	const bare = (text: string) => text.normalize('NFKC').replaceAll('⁄', '/').replace(/\s/gu, '');
	const figures = await page.locator('main td:visible').allInnerTexts();
	const cautions = await page.getByRole('heading', { name: 'Take care' }).locator('+ ul li').allInnerTexts();
	expect(figures.length).toBeGreaterThan(40);
	expect(cautions.length).toBeGreaterThan(2);
	const printed = bare(await printedAlone(page, testInfo.outputPath('level.pdf')));
	expect([...figures, ...cautions].filter((text) => !printed.includes(bare(text)))).toEqual([]);
	expect(printed).toContain(bare('along'));
	expect(printed).toContain(bare('Invented demo job, not a record'));
	for (const control of [
		'Take out',
		'No box stuck',
		'Add a coil',
		'arrow keys',
		'Largest stack1/2In stock',
	]) {
		expect(printed).not.toContain(bare(control));
	}
});

test.describe('without the network', () => {
	test.use({ serviceWorkers: 'allow' });

	test('Level opens, though it was never looked at before', async ({ page }) => {
		const server = await preview({
			preview: { port: 0, strictPort: false },
			logLevel: 'silent',
		});
		await page.goto(server.resolvedUrls?.local[0] ?? '');
		await expect(page.getByText('saved, works offline')).toBeVisible();
		await server.close();
		await page.reload();
		await page.getByRole('link', { name: 'Level' }).click();
		await expect(plan(page)).toBeVisible();
	});
});

for (const width of [320, 360]) {
	test(`each label of the plan stands at its circle at ${width} px, and covers no other`, async ({
		page,
	}) => {
		await page.setViewportSize({ width, height: 700 });
		await page.addInitScript(
			(text) => localStorage.setItem('coilnest:job', text),
			readFileSync('../tests/jobs/whole-truck.job.json', 'utf8'),
		);
		await openPage(page, 'Level');
		const paper = page.locator('.paper').first();
		await expect(paper.locator('.label')).toHaveCount(4);
		const wrong = await paper.evaluate((plan) => {
			const boxOf = (of: Element) => of.getBoundingClientRect();
			const labels = [...plan.querySelectorAll('.label')].map((label) => {
				const lines = [...label.querySelectorAll('p')].map(boxOf);
				return {
					name: label.querySelector('p')?.textContent ?? '',
					left: Math.min(...lines.map((line) => line.left)),
					right: Math.max(...lines.map((line) => line.right)),
					top: Math.min(...lines.map((line) => line.top)),
					bottom: Math.max(...lines.map((line) => line.bottom)),
				};
			});
			const own = boxOf(plan);
			return labels.flatMap((label, at) => {
				const beyond = label.left < own.left - 1 || label.right > own.right + 1;
				const over = labels.some(
					(other, i) =>
						i > at &&
						Math.min(label.right, other.right) - Math.max(label.left, other.left) > 1 &&
						Math.min(label.bottom, other.bottom) - Math.max(label.top, other.top) > 1,
				);
				const isAbove = label.name.startsWith('A');
				const frame = boxOf(plan.querySelector('svg .frame, svg rect:not(.ground)') ?? plan);
				const away = isAbove ? label.bottom > frame.top + 1 : label.top < frame.bottom - 1;
				return beyond || over || away
					? [`${label.name}:${beyond ? ' beyond' : ''}${over ? ' over' : ''}${away ? ' away' : ''}`]
					: [];
			});
		});
		expect(wrong).toEqual([]);
	});
}
