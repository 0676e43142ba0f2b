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
	openPage,
	type Page,
	PHONE,
	test,
	tooSmall,
} from './page';

/** How tall a lesson may be on a phone, before an answer is given. */
const MOST_SCREENS = 1.32;

/** The lessons, and what of each is moved: a slider, or a press; `screens` where one may be taller than most. */
const LESSONS: readonly { title: string; screens?: number; moves: (figure: Locator) => Promise<void> }[] = [
	{ title: 'The words', moves: slide('Height of the nest') },
	{ title: 'Free height and set', moves: press('What the tape says: 1/16 less') },
	{ title: 'What a sixteenth costs', moves: press('Free height of Outer: 1/16 less') },
	{ title: 'Rate', moves: press('Pressed: 1 in more') },
	{ title: 'The fourth power', moves: press('Bar of Outer: 1/16 more') },
	{ title: 'Why two coils', screens: 1.55, moves: press('Stress allowed at solid: 5 000 psi more') },
	{ title: 'Thinner, shorter, the other hand', moves: press('The same hand') },
	{ title: 'Which goes solid first', moves: press('Active turns of Inner: 1/4 more') },
	{ title: 'Why a tape cannot settle a close call', screens: 1.5, moves: press('1/64') },
	{ title: 'Three legs', screens: 1.4, moves: slide('How deep') },
];

function press(name: string): (figure: Locator) => Promise<void> {
	return (figure) => button(figure, name).click();
}

function slide(name: string): (figure: Locator) => Promise<void> {
	return async (figure) => {
		await figure.getByRole('slider', { name }).focus();
		await figure.page().keyboard.press('PageUp');
	};
}

const figure = (page: Page): Locator => page.locator('main .figure');
const answers = (page: Page): Locator => page.locator('main .ask').getByRole('listitem').getByRole('button');
const why = (page: Page): Locator => page.locator('main .ask').getByRole('status');

async function openLesson(page: Page, at: number): Promise<void> {
	const list = page.locator('main summary').filter({ hasText: `of ${LESSONS.length}` });
	await list.click();
	await page.getByRole('list', { name: 'Lessons' }).getByRole('button').nth(at).click();
	await expect(page.getByRole('heading', { level: 3, name: LESSONS[at]?.title ?? '' })).toBeFocused();
	await expect(answers(page).first()).toBeVisible();
}

test.describe('on a desktop', () => {
	test.use({ viewport: DESKTOP });

	test('each lesson moves, asks and answers, and the job stays as it was', async ({ page }) => {
		await openPage(page, 'Measure');
		await field(page, 'Place 1, Outer, A left').fill('13 13/16 full');
		await expect.poll(async () => JSON.stringify(await onDisk(page))).toContain('13 13/16 full');
		const before = JSON.stringify(await onDisk(page));
		await openPage(page, 'Learn');
		for (const [at, { moves }] of LESSONS.entries()) {
			await openLesson(page, at);
			const stood = await figure(page).innerText();
			await moves(figure(page));
			await expect.poll(() => figure(page).innerText()).not.toBe(stood);
			const said = [];
			for (const option of await answers(page).all()) {
				await option.click();
				await expect(why(page)).toHaveText(/^(Right|Not so)\. .*\d/u);
				said.push(await why(page).innerText());
			}
			expect(said.length, LESSONS[at]?.title).toBeGreaterThan(1);
			expect(
				said.filter((text) => text.startsWith('Right.')),
				LESSONS[at]?.title,
			).toHaveLength(1);
			expect(said.join(' '), LESSONS[at]?.title).not.toMatch(/undefined|NaN|\(\)|: \.| {2}|^\W*$/u);
		}
		expect(JSON.stringify(await onDisk(page))).toBe(before);
		await openPage(page, 'Measure');
		await expect(field(page, 'Place 1, Outer, A left')).toHaveValue('13 13/16 full');
	});

	test('the numbers are those of the coils on the bench', async ({ page }) => {
		await openPage(page, 'Learn');
		await openLesson(page, 2);
		// 1055 lb/in by a sixteenth; 393.4 lb/in by an eighth.
		await expect(figure(page)).toContainText('−65.9 lb');
		await button(page, '−49.2 lb').click();
		await expect(why(page)).toContainText('Right. 393.4 lb/in · (13.5 in − 13.625 in) = −49.2 lb');
		await openLesson(page, 4);
		await button(page, '16 times').click();
		await expect(why(page)).toContainText('At a bar of 17/32 in the rate is');
	});

	test('a lesson that is left is found again as it was', async ({ page }) => {
		await openPage(page, 'Learn');
		await openLesson(page, 7);
		await button(page, 'Active turns of Inner: 1/4 more').click();
		await button(page, 'Active turns of Inner: 1/4 more').click();
		const stood = await figure(page).innerText();
		await answers(page).first().click();
		await page.getByRole('link', { name: 'Nest' }).click();
		await page.reload();
		await page.getByRole('link', { name: 'Learn' }).click();
		await expect(page.getByRole('heading', { level: 3, name: 'Which goes solid first' })).toBeVisible();
		await expect.poll(() => figure(page).innerText()).toBe(stood);
		await expect(answers(page).first()).toHaveAttribute('aria-pressed', 'true');
	});

	test('a dip is deepened until a wheel lifts', async ({ page }) => {
		await openPage(page, 'Learn');
		await openLesson(page, 9);
		await figure(page).getByRole('slider', { name: 'How deep' }).focus();
		await page.keyboard.press('End');
		await expect(figure(page).getByRole('status')).toContainText('lifts off the track');
	});

	test('a job that lacks what a lesson needs is stood in for by the demo', async ({ page }) => {
		await openPage(page);
		await button(page, 'Clear it and start my own').click();
		await openPage(page, 'Learn');
		await expect(page.getByText('A copy of the invented demo: no nest of the job has')).toBeVisible();
		await expect(answers(page)).toHaveCount(3);
	});

	test('all of it goes by keyboard', async ({ page }) => {
		await openPage(page, 'Learn');
		await button(page, 'Free height and set →').focus();
		await page.keyboard.press('Enter');
		await expect(page.getByRole('heading', { level: 3, name: 'Free height and set' })).toBeFocused();
		await page.keyboard.press('Tab');
		await expect(page.locator('summary:focus')).toHaveText('2 of 10');
		await button(page, 'What the tape says: 1/16 less').focus();
		await page.keyboard.press('Space');
		await expect(figure(page)).toContainText('1/16 in under the book figure');
		await page.keyboard.press('Tab');
		await answers(page).nth(1).focus();
		await page.keyboard.press('Enter');
		await expect(why(page)).toHaveText(/^Right\./);
		const word = button(page.locator('main .says'), 'set');
		await word.focus();
		await page.keyboard.press('Enter');
		await expect(page.getByRole('group', { name: 'Word' })).toContainText(
			'Height that a coil has lost for good',
		);
		await page.keyboard.press('Escape');
		await expect(word).toBeFocused();
	});

	test('how this was checked is reached from here, and the words stand in a list', async ({ page }) => {
		await openPage(page, 'Learn');
		await button(page, 'Words').click();
		const words = page.getByRole('list', { name: 'Words' }).getByRole('listitem');
		await expect(words.filter({ hasText: 'book figure' }).first()).toContainText(
			'The free height that the book',
		);
		await page.locator('main .head').getByRole('link', { name: 'How this was checked' }).click();
		await expect(page.getByRole('heading', { name: 'How this was checked' })).toBeVisible();
	});

	test('where motion is not wanted, columns step', async ({ page }) => {
		const moving = () =>
			page
				.locator('.columns i')
				.first()
				.evaluate((bar) => getComputedStyle(bar).transitionDuration);
		await openPage(page, 'Learn');
		await openLesson(page, 2);
		expect(await moving()).not.toBe('0s');
		await page.emulateMedia({ reducedMotion: 'reduce' });
		expect(await moving()).toBe('0s');
	});
});

onEachDevice((look) => {
	test('axe finds nothing in any lesson, and a finger hits all', async ({ page }) => {
		test.slow();
		await openPage(page, 'Learn');
		for (const [at, { title }] of LESSONS.entries()) {
			await openLesson(page, at);
			await answers(page).first().click();
			await expectNoViolation(page, title);
			if (look.startsWith('phone')) expect.soft(await tooSmall(page), title).toEqual([]);
		}
		await button(page, 'Words').click();
		await expectNoViolation(page, 'Words');
	});
});

test.describe('on a phone', () => {
	test.use(AS_PHONE);

	test('a lesson is little more than one screen', async ({ page }) => {
		await openPage(page, 'Learn');
		const tall: string[] = [];
		for (const [at, { title, screens = MOST_SCREENS }] of LESSONS.entries()) {
			await openLesson(page, at);
			const height = await page.evaluate(() => document.documentElement.scrollHeight);
			if (height > screens * PHONE.height) tall.push(`${title}: ${height} px`);
		}
		expect(tall).toEqual([]);
	});
});

test.describe('without the network', () => {
	test.use({ serviceWorkers: 'allow' });

	test('each lesson opens and answers, though none was looked at before', async ({ page }) => {
		const server = await preview({ preview: { port: 0, strictPort: false }, logLevel: 'silent' });
		await page.goto(server.resolvedUrls?.local[0] ?? '');
		await expect(page.getByText('saved, works offline')).toBeVisible();
		await server.close();
		await page.reload();
		await page.getByRole('link', { name: 'Learn' }).click();
		for (const at of LESSONS.keys()) {
			await openLesson(page, at);
			await answers(page).first().click();
			await expect(why(page)).toHaveText(/^(Right|Not so)\. .*\d/u);
		}
	});
});

test('at 320 px no lesson is wider than the window, also with colours forced', async ({ page }) => {
	test.slow();
	await page.setViewportSize({ width: 320, height: 640 });
	await openPage(page, 'Learn');
	for (const [at, { title }] of LESSONS.entries()) {
		await openLesson(page, at);
		expect(await contentWidth(page), title).toBeLessThanOrEqual(320);
	}
	await page.emulateMedia({ forcedColors: 'active' });
	for (const [at, { title }] of LESSONS.entries()) {
		await openLesson(page, at);
		await expectNoViolation(page, `${title}, colours forced`);
	}
	await openLesson(page, 2);
	const edge = await page
		.locator('.columns i')
		.first()
		.evaluate((bar) => getComputedStyle(bar).borderTopWidth);
	expect(edge).toBe('2px');
});
