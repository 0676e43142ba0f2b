/* The searches that may take long: beside the page's thread, the newest counting, with a stop. */
import { readFileSync } from 'node:fs';
import { AS_PHONE, button, expect, expectNoViolation, field, openPage, type Page, test } from './page';
import { type Loose, whole } from './whole';

const kept = (): Loose => JSON.parse(readFileSync('../tests/jobs/replace.job.json', 'utf8'));
const pairs = (page: Page) => page.getByRole('table', { name: 'Pairs that meet the need' });
const seats = (page: Page) => page.getByRole('table', { name: 'The coils in their seats' });
const stop = (page: Page) => button(page, 'Stop');
const bar = (page: Page, name: string) => page.getByRole('progressbar', { name });

/** Of more bars there are more coils to try than the engine takes on. */
const MOST_BARS = 230;

/** A need for a pair out of so many bars. */
function pairOf(bars: number): Loose {
	const job = kept();
	job['need'].bars = Array.from({ length: bars }, (_, i) => (0.4 + (1.6 * i) / bars).toFixed(4));
	return job;
}

async function open(page: Page, section: 'Level' | 'Measure' | 'Replace', job: object): Promise<void> {
	await page.addInitScript((text) => localStorage.setItem('coilnest:job', text), JSON.stringify(job));
	await openPage(page, section);
}

/** Notes the longest that the page's thread was held up from now on; called again, it tells. */
function heldUp(page: Page): Promise<number> {
	return page.evaluate(() => {
		const kept = window as unknown as { longest?: number };
		if (kept.longest === undefined) {
			kept.longest = 0;
			new PerformanceObserver((list) => {
				for (const { duration } of list.getEntries()) {
					kept.longest = Math.max(kept.longest ?? 0, duration);
				}
			}).observe({ type: 'longtask' });
		}
		return kept.longest;
	});
}

test('a long search leaves the page free, says how far it is, is stopped and goes on', async ({ page }) => {
	await open(page, 'Replace', pairOf(MOST_BARS));
	await expect(pairs(page)).toBeVisible({ timeout: 60_000 });
	const before = await pairs(page).innerText();
	await heldUp(page);
	await field(page, 'Load, of the need').fill('2900 lb');
	await expect(stop(page)).toBeVisible();
	const search = bar(page, 'Drawings are searched for');
	await expect.poll(async () => Number(await search.getAttribute('value'))).toBeGreaterThan(0.05);
	// What was found before stands, and cannot be taken.
	await expect(
		page.locator('[inert]').getByRole('button', { name: 'Use as candidates pair 1', exact: true }),
	).toBeVisible();
	await stop(page).click();
	await expect(page.getByText('Drawings are searched for: stopped. What stands here was found for')).toBeVisible();
	await expect(search).toHaveCount(0);
	expect(await heldUp(page)).toBeLessThan(500);

	await button(page, 'Go on').click();
	await expect(stop(page)).toBeVisible();
	await expect(pairs(page)).toBeVisible({ timeout: 60_000 });
	await expect(stop(page)).toHaveCount(0);
	expect(await pairs(page).innerText()).not.toBe(before);
});

test('of several questions the newest is answered', async ({ page }) => {
	await open(page, 'Replace', pairOf(60));
	await expect(pairs(page)).toBeVisible({ timeout: 60_000 });
	const found: string[] = [];
	for (const load of ['2500 lb', '2600 lb']) {
		await field(page, 'Load, of the need').fill(load);
		await expect(page.locator('[inert]')).toHaveCount(1);
		await expect(page.locator('[inert]')).toHaveCount(0, { timeout: 60_000 });
		found.push(await pairs(page).innerText());
	}
	expect(found[0]).not.toBe(found[1]);
	for (const load of ['2900 lb', '2800 lb', '2700 lb', '2500 lb']) {
		await field(page, 'Load, of the need').fill(load);
	}
	await expect(page.locator('[inert]')).toHaveCount(0, { timeout: 60_000 });
	expect(await pairs(page).innerText()).toBe(found[0]);
	await field(page, 'Load, of the need').fill('2600 lb');
	await expect.poll(() => pairs(page).innerText(), { timeout: 60_000 }).toBe(found[1]);
});

test('thousands of coils are matched while the page goes on', async ({ page }) => {
	const job = whole();
	job['bench'] = Array.from({ length: 4000 }, (_, i) => ({
		label: `b${i}`,
		coil: job['coils'][i % 2].id,
		readings: [job['coils'][i % 2].free],
	}));
	await open(page, 'Level', job);
	await expect(seats(page)).toBeVisible({ timeout: 60_000 });
	await expect(page.locator('[data-path="bench[0]"]').getByText(/^(Good|Short|Too close)/)).toBeVisible();
	await field(page, 'Label of coil 1 on the bench').fill('other');
	await expect(page.locator('[inert]')).toHaveCount(0, { timeout: 60_000 });
	await expect(page.getByRole('list', { name: 'What to do', exact: true })).toContainText(
		'other (Outer) from the bench',
	);
});

test('where no thread can be had the page searches itself', async ({ page, errors }) => {
	await page.route(/search\.worker/, (route) => route.abort());
	await open(page, 'Replace', kept());
	await expect(pairs(page)).toBeVisible({ timeout: 60_000 });
	await expect(page.locator('[inert]')).toHaveCount(0);
	errors.splice(0);
});

test.describe('on a phone', () => {
	test.use(AS_PHONE);

	test('axe finds nothing while a search goes on, nor when it is stopped', async ({ page }) => {
		// A search that never ends, so that there is time to look at it.
		const endless = 'onmessage = () => postMessage({ part: 0.4 });';
		await page.route(/search\.worker/, (route) =>
			route.fulfill({ contentType: 'text/javascript', body: endless }),
		);
		await open(page, 'Replace', kept());
		await expect(stop(page)).toBeVisible();
		await expectNoViolation(page, 'Replace while it searches');
		await expect(bar(page, 'Drawings are searched for')).toHaveAttribute('value', '0.4');
		await stop(page).click();
		await expectNoViolation(page, 'Replace stopped');
	});
});

test.describe('without the network', () => {
	test.use({ serviceWorkers: 'allow' });

	test('a search is made by what the first visit brought', async ({ page, context }) => {
		await open(page, 'Measure', kept());
		await expect(page.getByText('saved, works offline')).toBeVisible();
		await context.setOffline(true);
		await page.reload();
		await page.getByRole('link', { name: 'Replace' }).click();
		await expect(pairs(page)).toBeVisible({ timeout: 60_000 });
		expect(page.workers().some((worker) => worker.url().includes('search.worker'))).toBe(true);
	});
});
