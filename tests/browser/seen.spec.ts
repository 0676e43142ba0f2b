import { readFileSync } from 'node:fs';
import type { Locator } from '@playwright/test';
import { AS_PHONE, button, coil, DESKTOP, expect, field, line, openPage, type Page, test } from './page';
import { type Loose, openJob, pad, tally, whole } from './whole';

/** What is seen at once, and easily missed by whoever made it. */

const SECTIONS = ['Measure', 'Nest', 'Level', 'Replace', 'Learn', 'Record'] as const;
const METRIC = JSON.parse(readFileSync('../tests/jobs/metric-comma.job.json', 'utf8')) as Loose;

async function go(page: Page, section: string): Promise<void> {
	await page.getByRole('link', { name: section, exact: true }).click();
	await expect(page.getByRole('heading', { level: 2, name: section })).toBeAttached();
	await expect(page.locator('main')).not.toContainText('is fetched');
}

/** Numbers of the tape that lie over each other, are cut, or have the mark of the reading run through them. */
function spoilt(page: Page): Promise<string[]> {
	return page.getByRole('slider', { name: /^Place/ }).evaluate((strip) => {
		const box = (part: Element): DOMRect => part.getBoundingClientRect();
		const all = (of: string): Element[] => [...strip.querySelectorAll(of)];
		const meet = (one: DOMRect, other: DOMRect): boolean =>
			Math.min(one.right, other.right) - Math.max(one.left, other.left) > 0.5 &&
			Math.min(one.bottom, other.bottom) - Math.max(one.top, other.top) > 0.5;
		const ends = box(strip);
		const at = strip.getAttribute('aria-valuetext');
		return [all('text'), all('span.read, span.least, span.most')].flatMap((texts) =>
			texts.flatMap((one, i) => [
				...texts
					.slice(i + 1)
					.filter((other) => meet(box(one), box(other)))
					.map((other) => `${at}: ${one.textContent} over ${other.textContent}`),
				...all('.reading')
					.filter((mark) => one.matches('text') && meet(box(mark), box(one)))
					.map(() => `${at}: the mark runs through ${one.textContent}`),
				...(box(one).left < ends.left - 1 || box(one).right > ends.right + 1
					? [`${at}: ${one.textContent} is cut`]
					: []),
			]),
		);
	});
}

const TAPES = [
	{ unit: 'inches', job: whole(), coil: 'Outer, A left' },
	{ unit: 'millimetres', job: METRIC, coil: 'Outer, Tar wagon, A left' },
];
/** So many to either side of the first reading. */
const STOPS = 30;

for (const { unit, job, coil: name } of TAPES) {
	for (const width of [320, 1280]) {
		test(`the numbers of a tape in ${unit} can be read wherever the mark stands, at ${width} px`, async ({
			page,
		}) => {
			await page.setViewportSize({ width, height: 800 });
			await openJob(page, job);
			const [what = '', ...where] = name.split(', ');
			await page
				.getByRole('article', { name: where.join(', '), exact: true })
				.getByRole('button', { name: new RegExp(`^${what}\\b`) })
				.click();
			const tape = coil(page, name).getByRole('slider');
			await tape.focus();
			const found: string[] = [];
			for (const key of ['ArrowRight', 'ArrowLeft']) {
				await field(page, `Place 1, ${name}`).fill(job['nests'][0].seats[0].readings[0]);
				await tape.focus();
				for (let stop = 0; stop < STOPS; stop += 1) {
					const before = await tape.getAttribute('aria-valuetext');
					await page.keyboard.press(key);
					await expect(tape).not.toHaveAttribute('aria-valuetext', before ?? '');
					found.push(...(await spoilt(page)));
				}
			}
			expect(found).toEqual([]);
		});
	}
}

test('a name of a nest is judged as it is typed', async ({ page }) => {
	await openJob(page, whole());
	const name = field(page, 'Name of the nest').nth(1);
	const refused = page.getByRole('article').getByText('of this name stands further up');
	await name.fill('A left');
	await expect(name).toBeFocused();
	await expect(refused).toBeVisible();
	await name.press('End');
	await name.press('x');
	await expect(refused).toBeHidden();
});

test('an inch job says no figure in millimetres or megapascals, and one dead turn is one', async ({
	page,
}) => {
	await page.setViewportSize(DESKTOP);
	await openJob(page, whole());
	const main = page.locator('main');
	const isMetric = /\d\s*(MPa|N\/mm|mm)\b/u;
	for (const section of SECTIONS) {
		await go(page, section);
		await expect(main).not.toContainText(isMetric);
	}
	await page.goto(`./#coil=${String(whole()['coils'][0].id)}`);
	const ends = page.getByRole('combobox', { name: 'Ends' }).first();
	const said: string[] = [];
	for (const end of await ends.getByRole('option').all()) {
		await ends.selectOption(await end.getAttribute('value'));
		await expect(main).toContainText(/G = /);
		await expect(main).not.toContainText(isMetric);
		said.push(await main.innerText());
	}
	const dead = said.flatMap((text) => text.match(/\d+ dead turns?/g) ?? []);
	expect(dead).toContain('1 dead turn');
	expect(dead).not.toContain('1 dead turns');
});

for (const width of [320, 390, 1280]) {
	test(`the line of the demo is 40 px high, on Measure alone, at ${width} px`, async ({ page }) => {
		await page.setViewportSize({ width, height: 800 });
		await openPage(page);
		const invented = page.locator('.demo');
		expect((await invented.boundingBox())?.height).toBe(40);
		expect(await invented.evaluate((one) => one.scrollWidth <= one.clientWidth)).toBe(true);
		for (const section of SECTIONS.slice(1)) {
			await go(page, section);
			await expect(page.getByText('An invented job.')).toHaveCount(0);
		}
	});
}

test('on a wide screen list and open coil stand side by side, and one is always open', async ({ page }) => {
	await page.setViewportSize(DESKTOP);
	await openJob(page, whole());
	for (const name of ['Outer, A left', 'Inner, B right']) {
		if (name !== 'Outer, A left') await line(page, name).click();
		await expect(coil(page, name)).toBeInViewport({ ratio: 0.9 });
		const list = await page.locator('[data-list]').boundingBox();
		const open = await coil(page, name).boundingBox();
		expect(open?.x).toBeGreaterThanOrEqual((list?.x ?? Infinity) + (list?.width ?? 0));
	}
});

for (const { tape, green } of [
	{ tape: '1/16', green: true },
	{ tape: '1', green: false },
]) {
	test(`a plan of shims is ${green ? '' : 'not '}green, the tape having marks of ${tape} in`, async ({
		page,
	}) => {
		await page.setViewportSize(DESKTOP);
		const job = whole();
		job['tape'].graduation = tape;
		await openJob(page, job);
		await go(page, 'Level');
		const after = page.locator('div:has(> dt:text-is("After")) > dd');
		await expect(after).toBeVisible();
		expect(await after.evaluate((one) => one.classList.contains('good'))).toBe(green);
	});
}

test.describe('on a phone', () => {
	test.use(AS_PHONE);

	test('a coil that is tapped opens under the head of the page, not behind it', async ({ page }) => {
		await openJob(page, whole());
		const names = ['A left', 'A right', 'B left', 'B right'].flatMap((nest) =>
			['Outer', 'Inner'].map((what) => `${what}, ${nest}`),
		);
		const behind: string[] = [];
		for (const name of [...names, ...names.toReversed()]) {
			await line(page, name).tap();
			if ((await line(page, name).getAttribute('aria-expanded')) !== 'true') await line(page, name).tap();
			await expect(coil(page, name)).toBeVisible();
			const head = await tally(page).boundingBox();
			const top = (await line(page, name).boundingBox())?.y ?? 0;
			const bottom = (head?.y ?? 0) + (head?.height ?? 0);
			if (top < bottom - 1) behind.push(`${name}: ${top} under ${bottom}`);
		}
		expect(behind).toEqual([]);
	});
});

test('a whole and its fraction stand on one line', async ({ page }) => {
	await page.setViewportSize({ width: 320, height: 844 });
	await openPage(page);
	let seen = 0;
	for (const section of SECTIONS) {
		await go(page, section);
		seen += await page.locator('main .together').count();
		const parted = await page
			.locator('main .together')
			.evaluateAll((all) =>
				all.filter((one) => one.getClientRects().length > 1).map((one) => one.textContent),
			);
		expect(parted, section).toEqual([]);
	}
	expect(seen).toBeGreaterThan(20);
});

test.describe('under a thumb', () => {
	test.use(AS_PHONE);

	test('the keys come up for every length of every section', async ({ page }) => {
		await openPage(page);
		let pressed = 0;
		for (const section of SECTIONS) {
			await go(page, section);
			const lengths = page.locator('main input[data-length]:visible');
			for (let at = 0; at < (await lengths.count()); at += 1) {
				const length = lengths.nth(at);
				await length.tap();
				await expect(length, section).toBeFocused();
				await expect(pad(page), `${section}, ${await length.getAttribute('aria-label')}`).toBeVisible();
				pressed += 1;
			}
			if (await pad(page).isVisible()) await button(pad(page), 'Done').tap();
		}
		expect(pressed).toBeGreaterThan(40);
	});

	test('the steps of the shims come before the cautions, and the frame with them where it was asked for', async ({
		page,
	}) => {
		await openPage(page, 'Level');
		const top = async (of: Locator) => (await of.boundingBox())?.y ?? NaN;
		const steps = page.getByRole('list', { name: 'What to do, in this order' });
		await expect(steps).toContainText('put in one');
		expect(await top(steps)).toBeLessThan(await top(page.getByText('Take care').first()));
		await button(page, 'Show the frame with them').tap();
		await expect(page.getByRole('table', { name: 'The nests as they would stand' })).toBeInViewport();
	});
});
