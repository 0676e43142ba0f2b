import {
	button,
	coil,
	DESKTOP,
	expect,
	field,
	line,
	type Locator,
	openCoil,
	openDrawing,
	type Page,
	PHONE,
	test,
} from './page';
import { expectWhole, keysOf, MOST_PRESSES, openJob, pad, READINGS, tally, unread, whole } from './whole';

/** Some hundred taps or keys take their time on a busy machine. */
const LONG_MS = 240_000;
const MOST_SCREENS = 1.2;

/** What is wrong with where the field that is written in and its verdict stand, while the pad is open. */
function covered(page: Page): Promise<string[]> {
	return page.evaluate(() => {
		const top = document.querySelector('[data-pad]')?.getBoundingClientRect().top ?? 0;
		const heads = [...document.querySelectorAll('.app > header, [data-head]')]
			.filter((head) => getComputedStyle(head).position === 'sticky')
			.map((head) => head.getBoundingClientRect().bottom);
		const head = Math.max(0, ...heads);
		const input = document.activeElement;
		const parts = { field: input, verdict: input?.closest('[data-coil]')?.querySelector('[data-says] p') };
		return Object.entries(parts).flatMap(([name, part]) => {
			const box = part?.getBoundingClientRect();
			if (box === undefined) return [`no ${name}`];
			const whole = `${name} ${Math.round(box.top)}–${Math.round(box.bottom)} of ${Math.round(head)}–${Math.round(top)}`;
			return box.top < head - 1 || box.bottom > top + 1 ? [whole] : [];
		});
	});
}

/** Texts of a coil that do not fit their box. */
function cut(page: Page): Promise<string[]> {
	return page.evaluate(() =>
		[...document.querySelectorAll<HTMLInputElement>('main input[type=text]')]
			.filter((input) => input.scrollWidth > input.clientWidth)
			.map((input) => input.value),
	);
}

/** How many readings are written: all of them once, else those of the first coils. */
const SIZES = [
	{ viewport: PHONE, count: READINGS.length },
	{ viewport: { width: 360, height: 640 }, count: 5 },
	{ viewport: { width: 844, height: 390 }, count: 5 },
];

for (const { viewport, count } of SIZES) {
	test.describe(`by touch, ${viewport.width}×${viewport.height}`, () => {
		test.use({ viewport, hasTouch: true, isMobile: true });

		test('a whole truck is written with the pad, which covers neither field nor verdict', async ({
			page,
		}) => {
			test.setTimeout(LONG_MS);
			await openJob(page, unread());
			await expect(tally(page)).toContainText('8 not read');
			let presses = 1;
			await button(tally(page), 'next empty reading').tap();
			const hidden: string[] = [];
			for (const [at, reading] of READINGS.slice(0, count).entries()) {
				const keys = keysOf(reading);
				if (at < READINGS.length - 1) keys.push('Next');
				for (const [turn, key] of keys.entries()) {
					if (turn === keys.length - 1 && key === 'Next') {
						hidden.push(...(await covered(page)).map((what) => `${reading}: ${what}`));
					}
					await button(pad(page), key).tap();
					presses += 1;
				}
			}
			expect(presses).toBeLessThanOrEqual(MOST_PRESSES);
			expect(hidden).toEqual([]);
			expect(await cut(page)).toEqual([]);
			if (count < READINGS.length) return;
			await button(pad(page), 'Next').tap();
			await expect(pad(page)).toBeHidden();
			await expectWhole(page);
			await page.reload();
			await expectWhole(page);
		});
	});
}

/** Seven keys of 48 px in a row, with 6 px round them, take 384 px: a narrower screen has narrower keys, as high. */
const PADS = [
	{ viewport: PHONE, width: 48 },
	{ viewport: { width: 844, height: 390 }, width: 48 },
	{ viewport: { width: 360, height: 640 }, width: 44 },
	{ viewport: { width: 320, height: 568 }, width: 38 },
];

for (const { viewport, width } of PADS) {
	test.describe(`the pad, ${viewport.width}×${viewport.height}`, () => {
		test.use({ viewport, hasTouch: true, isMobile: true });

		test('keys are as large as a finger, with room between them, and none is cut', async ({ page }) => {
			await openJob(page, unread());
			await button(tally(page), 'next empty reading').tap();
			const keys = pad(page).getByRole('button');
			const boxes = await keys.evaluateAll((all) =>
				all.map((key) => key.getBoundingClientRect().toJSON() as DOMRect),
			);
			expect(boxes.filter((box) => box.width < width - 0.5 || box.height < 47.5)).toEqual([]);
			const close = boxes.flatMap((one, i) =>
				boxes.slice(i + 1).filter((other) => {
					const across = Math.max(one.left, other.left) - Math.min(one.right, other.right);
					const down = Math.max(one.top, other.top) - Math.min(one.bottom, other.bottom);
					return Math.max(across, down) < 5.5;
				}),
			);
			expect(close).toEqual([]);
			const cut = await keys.evaluateAll((all) =>
				all.filter((key) => key.scrollWidth > key.clientWidth).map((key) => key.textContent),
			);
			expect(cut).toEqual([]);
		});
	});
}

test.describe('on a phone', () => {
	test.use({ viewport: PHONE, hasTouch: true, isMobile: true });

	test('the whole truck, closed, stands on little more than one screen', async ({ page }) => {
		await openJob(page, whole());
		const box = await line(page, 'Inner, B right').boundingBox();
		expect((box?.y ?? Infinity) + (box?.height ?? 0)).toBeLessThanOrEqual(MOST_SCREENS * PHONE.height);
		await expect(tally(page)).toBeInViewport();
		await line(page, 'Inner, B right').scrollIntoViewIfNeeded();
		await expect(tally(page)).toBeInViewport();
	});

	test('nothing moves when scant is pressed, and a tapped field is selected', async ({ page }) => {
		await openJob(page, whole());
		await openCoil(page, 'Outer, A left');
		const first = field(page, 'Place 1, Outer, A left');
		await first.tap();
		expect(await page.evaluate(() => getSelection()?.toString())).toBe('13 13/16');
		const before = await first.boundingBox();
		await button(pad(page), 'scant').tap();
		await expect(first).toHaveValue('13 13/16 scant');
		expect(await first.boundingBox()).toEqual(before);
		await button(pad(page), 'Back').tap();
		await expect(first).not.toBeFocused();
	});

	test('the pad comes up for a length in any section', async ({ page }) => {
		await openJob(page, whole());
		await page.getByRole('link', { name: 'Level' }).tap();
		await field(page, 'Nests apart, along').tap();
		await expect(pad(page)).toBeVisible();
		await button(pad(page), 'Next').tap();
		await expect(field(page, 'Nests apart, across')).toBeFocused();
		await field(page, 'Weight on the nests').tap();
		await expect(pad(page)).toBeHidden();
	});
});

for (const width of [320, 360]) {
	test(`no name of a section is cut at ${width} px`, async ({ page }) => {
		await page.setViewportSize({ width, height: 700 });
		await openJob(page, whole());
		const links = page.getByRole('navigation', { name: 'Sections' }).getByRole('link');
		await expect(links).toHaveCount(6);
		const cut = await links.evaluateAll((all) =>
			all
				.filter((link) => {
					const words = document.createRange();
					words.selectNodeContents(link);
					const [box, held] = [words.getBoundingClientRect(), link.getBoundingClientRect()];
					return box.left < held.left || box.right > held.right || held.right > innerWidth;
				})
				.map((link) => link.textContent),
		);
		expect(cut).toEqual([]);
	});

	test(`no reading is cut at ${width} px`, async ({ page }) => {
		await page.setViewportSize({ width, height: 700 });
		const job = whole();
		job['nests'][0].seats[0].readings = ['13 13/16 in scant', '13 15/16 full', 'thirteen and seven eighths'];
		await openJob(page, job);
		await openCoil(page, 'Outer, A left');
		expect(await cut(page)).toEqual([]);
		await expect(line(page, 'Outer, A left')).toContainText('13 13/16 in scant · 13 15/16 full');
	});
}

test.describe('at a keyboard', () => {
	test.use({ viewport: DESKTOP });

	test('a whole truck is typed, Enter going from empty reading to empty reading', async ({ page }) => {
		test.setTimeout(LONG_MS);
		const job = unread();
		job['nests'][1].seats[0].readings = ['14'];
		await openJob(page, job);
		await button(tally(page), 'next empty reading').press('Enter');
		for (const [at, reading] of READINGS.entries()) {
			if (at === 4) continue;
			await page.keyboard.type(reading);
			await page.keyboard.press('Enter');
		}
		await expectWhole(page);
		await expect(button(tally(page), 'next empty reading')).toHaveCount(0);
	});

	test('dictated words are read', async ({ page }) => {
		await openJob(page, unread());
		await field(page, 'Place 1, Outer, A left').fill('thirteen and seven eighths scant');
		await field(page, 'Place 2, Outer, A left').fill('13 and 7/8');
		await expect(button(coil(page, 'Outer, A left'), 'Good')).toBeVisible();
		await field(page, 'Place 2, Outer, A left').fill('twenty seven sixteenths');
		await page.keyboard.press('Tab');
		await expect(page.getByText(/two numbers, 20 and 7/)).toBeVisible();
	});

	test('labels are in the chain when they are asked for', async ({ page }) => {
		await openJob(page, unread());
		await page.getByText('The tape, how sure to be').click();
		await button(page.getByRole('group', { name: 'Labels that Next asks for' }), 'asked').click();
		await field(page, 'Label on the bench, Outer, A left').fill('');
		await button(tally(page), 'next empty reading').click();
		await expect(field(page, 'Label on the bench, Outer, A left')).toBeFocused();
		await page.keyboard.type('7');
		await page.keyboard.press('Enter');
		await expect(field(page, 'Place 1, Outer, A left')).toBeFocused();
	});

	test('a book figure that is changed says which coils it moved, and is taken back', async ({ page }) => {
		await openJob(page, whole());
		await openDrawing(page, 'Outer');
		await field(page, 'Book figure, Outer').fill('13 5/8');
		await expect(page.getByText(/^This moved .*A right 8: Good → Long/)).toBeVisible();
		await button(page, 'Take it back').click();
		await expect(field(page, 'Book figure, Outer')).toHaveValue('13 15/16');
		await expectWhole(page);
	});

	test('a new nest begins at its first reading', async ({ page }) => {
		await openJob(page, whole());
		await button(page, 'Add a nest like the last').click();
		await expect(field(page, 'Place 1, Outer, Nest 5')).toBeFocused();
	});

	test('another coil is fitted: what was found stays known, and what is set aside keeps its reason', async ({
		page,
	}) => {
		await openJob(page, whole());
		await openCoil(page, 'Inner, A left');
		await button(page, 'More for Inner, A left').click();
		await button(page, 'Another coil goes in here').click();
		await expect(field(page, 'Place 1, Inner, A left')).toBeFocused();
		await page.keyboard.type('13 5/8');
		await expect(coil(page, 'Inner, A left')).toContainText(/Found here:\s*7a, Short/);
		await expect(line(page, 'Inner, A left')).toContainText('for 7a');
		await page.getByText('Set aside (1)').click();
		await expect(field(page, 'Why Inner 7a is set aside')).toHaveValue('Short');
		await page.reload();
		await openCoil(page, 'Inner, A left');
		await expect(coil(page, 'Inner, A left')).toContainText(/Found here:\s*7a, Short/);
	});

	test('coils that are placed keep what was found, and those that do not go back are set aside', async ({
		page,
	}) => {
		await openJob(page, whole());
		await page.getByRole('link', { name: 'Level' }).click();
		await button(page, 'Place them so').click();
		await page.getByRole('link', { name: 'Measure' }).click();
		await openCoil(page, 'Inner, A left');
		await expect(coil(page, 'Inner, A left')).toContainText(/Found here:\s*7a, Short/);
		await page.getByText(/^Set aside/).click();
		await expect(field(page, 'Why Inner 7a is set aside')).toHaveValue(/^Short, 3\/16 in under$/);
		await button(page, 'Back to the bench Inner 7a').click();
		await expect(page.getByText(/^Set aside/)).toHaveCount(0);
	});
});
