import { AS_PHONE, button, DESKTOP, expect, expectNoViolation, type Locator, type Page, test } from './page';
import { type Loose, openJob, whole } from './whole';

const SECTIONS = ['Measure', 'Nest', 'Level', 'Replace', 'Learn', 'Record'] as const;
/** The truck beside itself as it was: what each coil has lost can be looked at. */
const withEarlier = (): Loose => ({ ...whole(), earlier: whole() });
/** A section has no more than this to go through by Tab. */
const MOST_TABS = 300;

async function go(page: Page, section: string): Promise<void> {
	await page.getByRole('link', { name: section, exact: true }).click();
	await expect(page.getByRole('heading', { level: 2, name: section })).toBeAttached();
}

test.describe('at a desk', () => {
	test.use({ viewport: DESKTOP });

	test('each section has its title', async ({ page }) => {
		await openJob(page, whole());
		for (const section of SECTIONS) {
			await go(page, section);
			await expect(page).toHaveTitle(`${section}, ${String(whole()['title'])}: coilnest`);
		}
	});

	test('a figure says of what it is, what it comes to, and that its working opens', async ({ page }) => {
		await openJob(page, withEarlier());
		for (const section of ['Nest', 'Level', 'Record']) {
			await go(page, section);
			const figures = page
				.locator('main button[title="Show the working"]:visible')
				.filter({ hasText: /^\s*[−+±]?\d/ });
			await expect(figures).not.toHaveCount(0);
			const names = await figures.evaluateAll((all) =>
				all.map((one) => ({ name: one.getAttribute('aria-label') ?? '', text: one.textContent.trim() })),
			);
			const isNamed = ({ name, text }: (typeof names)[number]) =>
				name.endsWith(`, ${text}, working`) && name.length > `, ${text}, working`.length;
			expect(
				names.filter((one) => !isNamed(one)),
				section,
			).toEqual([]);
		}
		await go(page, 'Nest');
		await expect(page.getByRole('button', { name: /^Load of Outer, \d[\d\s]* lb, working$/u })).toBeVisible();
	});

	test('all of Record is come by with Tab', async ({ page }) => {
		await openJob(page, withEarlier());
		await go(page, 'Record');
		await expect(button(page, 'Take the earlier job away')).toBeVisible();
		const missed = async (): Promise<string[]> =>
			page.locator('main :is(a, button, input, select, textarea, summary):visible').evaluateAll((all) =>
				all
					.filter((one) => !one.closest('details:not([open]) > :not(summary)'))
					.filter((one) => !one.hasAttribute('data-come-by'))
					.map((one) => one.outerHTML.slice(0, 100)),
			);
		expect(await missed()).not.toEqual([]);
		await page.evaluate(() =>
			document.addEventListener('focusin', ({ target }) =>
				(target as Element).setAttribute('data-come-by', ''),
			),
		);
		await page.getByRole('link', { name: 'Record', exact: true }).focus();
		for (let tabs = 0; tabs < MOST_TABS && (await missed()).length > 0; tabs += 1)
			await page.keyboard.press('Tab');
		expect(await missed()).toEqual([]);
	});
});

for (const system of ['Inches', 'Millimetres']) {
	for (const width of [320, 360, 390]) {
		test(`no table of a truck is cut at ${width} px, ${system}`, async ({ page }) => {
			await page.setViewportSize({ width, height: 844 });
			await openJob(page, withEarlier());
			await button(page, 'Job').click();
			await button(page, system).click();
			await page.keyboard.press('Escape');
			await expect(button(page, system)).toBeHidden();
			for (const section of ['Level', 'Nest', 'Record']) {
				await go(page, section);
				if (section === 'Level') {
					await button(page, 'Show the frame with them').click();
					await expect(page.getByRole('table', { name: 'The nests as they would stand' })).toBeVisible();
				}
				const tables = page.locator('main .scroll:visible');
				await expect(tables).not.toHaveCount(0);
				const cut = await tables.evaluateAll((all) =>
					all
						.filter((one) => one.scrollWidth > one.clientWidth)
						.map(
							(one) => `${one.textContent.trim().slice(0, 40)}: ${one.scrollWidth} px in ${one.clientWidth}`,
						),
				);
				expect(cut, section).toEqual([]);
			}
		});
	}
}

test.describe('forced colours', () => {
	test.use({ viewport: DESKTOP });

	/** Two looks of one part, which have to differ. */
	async function looks(part: Locator, change: () => Promise<void>): Promise<[string, string]> {
		const before = (await part.screenshot()).toString('base64');
		await change();
		return [before, (await part.screenshot()).toString('base64')];
	}

	test('the current tab, what is pressed and the thumb of a slider are seen in every section', async ({
		page,
	}) => {
		await page.emulateMedia({ forcedColors: 'active' });
		await openJob(page, whole());
		const borders = (tab: Locator) =>
			tab.evaluate(
				(link) => getComputedStyle(link).borderLeftColor + getComputedStyle(link).borderBottomColor,
			);
		for (const section of SECTIONS) {
			await go(page, section);
			const tabs = page.getByRole('navigation', { name: 'Sections' }).getByRole('link');
			const [now, others] = [
				page.locator('a[aria-current=page]'),
				tabs.and(page.locator(':not([aria-current])')),
			];
			await expect(others).toHaveCount(SECTIONS.length - 1);
			for (const other of await others.all()) expect(await borders(now)).not.toBe(await borders(other));
			const alike = await page.locator('[aria-pressed=true]:visible').evaluateAll((all) => {
				const ground = (one: Element) => getComputedStyle(one).backgroundColor;
				return all.flatMap((one) =>
					[...(one.parentElement?.querySelectorAll('[aria-pressed=false]') ?? [])]
						.filter((other) => ground(other) === ground(one))
						.map((other) => `${one.textContent} and ${other.textContent}`),
				);
			});
			expect(alike, section).toEqual([]);
		}
		for (const [section, name] of [
			['Nest', 'Height of the nest'],
			['Level', 'How deep'],
		] as const) {
			await go(page, section);
			const slider = page.getByRole('slider', { name });
			await slider.press('Home');
			const [least, most] = await looks(slider, () => slider.press('End'));
			expect(least, name).not.toBe(most);
		}
	});
});

for (const [device, options] of Object.entries({ phone: AS_PHONE, desktop: { viewport: DESKTOP } })) {
	for (const colorScheme of ['light', 'dark'] as const) {
		test.describe(`${device}, ${colorScheme}`, () => {
			test.use({ ...options, colorScheme });

			test('axe finds nothing in Record with all that opens open', async ({ page }) => {
				await openJob(page, withEarlier());
				await go(page, 'Record');
				await expect(page.getByRole('img', { name: 'Code that opens this job' })).toBeVisible();
				for (const closed of await page.locator('main details:not([open]) > summary').all())
					await closed.click();
				await page
					.getByRole('button', { name: /^difference of .*, working$/ })
					.first()
					.click();
				await expect(page.getByRole('group', { name: 'Working' })).toBeVisible();
				await expectNoViolation(page, 'Record with a working');
				await page.keyboard.press('Escape');
				await page
					.getByRole('button', { name: /^More for / })
					.first()
					.click();
				await expect(button(page, 'Duplicate')).toBeVisible();
				await expectNoViolation(page, 'Record with a menu');
				await page.keyboard.press('Escape');
				await page.getByRole('textbox', { name: 'Date' }).fill('4 March');
				await page.getByRole('textbox', { name: 'Date' }).blur();
				await expect(page.getByText(/no date of the calendar/)).toBeVisible();
				await expectNoViolation(page, 'Record with an error');
			});
		});
	}
}
