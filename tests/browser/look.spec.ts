import {
	AS_PHONE,
	button,
	contentWidth,
	DESKTOP,
	expect,
	field,
	type Locator,
	onEachDevice,
	openPage,
	type Page,
	test,
} from './page';

const SECTIONS = ['Measure', 'Nest'] as const;
const WIDTHS = [320, 360, 390, 412, 480, 600, 767, 768, 769, 900, 1024, 1151, 1152, 1280, 1440];
/** Screens of all devices and lights, to be looked at; kept out of the repository. */
const SHELF = '../target/look';

for (const section of SECTIONS) {
	test(`${section} has no sideways scroll from 320 to 1440 px`, async ({ page }) => {
		await openPage(page, section);
		const tooWide: string[] = [];
		for (const width of WIDTHS) {
			await page.setViewportSize({ width, height: 800 });
			const content = await contentWidth(page);
			if (content > width) tooWide.push(`${content} px on ${width} px`);
		}
		expect(tooWide).toEqual([]);
	});
}

/** Targets of a finger that are smaller than `least`, each with its size and name. */
async function small(targets: Locator, least: number): Promise<string[]> {
	return targets.evaluateAll(
		(elements, least) =>
			elements
				.filter((element) => element.checkVisibility() && element.getBoundingClientRect().right > 0)
				.map((element) => ({ box: element.getBoundingClientRect(), element }))
				.filter(({ box }) => box.bottom > 0 && Math.min(box.width, box.height) < least)
				.map(({ box, element }) => {
					const name = element.getAttribute('aria-label') ?? element.textContent?.trim() ?? '';
					return `${Math.round(box.width)} × ${Math.round(box.height)}: ${name}`;
				}),
		least,
	);
}

test.describe('under a finger', () => {
	test.use(AS_PHONE);

	for (const section of SECTIONS) {
		test(`what is pressed in ${section} is 44 px at least`, async ({ page }) => {
			await openPage(page, section);
			if (section === 'Measure') await field(page, 'Place 1, Outer, A left').tap();
			for (const role of ['button', 'link', 'textbox', 'combobox', 'slider'] as const) {
				expect.soft(await small(page.getByRole(role), 44), role).toEqual([]);
			}
		});
	}
});

async function shelve(page: Page, name: string): Promise<void> {
	await page.screenshot({ path: `${SHELF}/${name}.png`, fullPage: true, caret: 'initial' });
}

onEachDevice((look) => {
	test('screens to look at', async ({ page }) => {
		for (const section of SECTIONS) {
			await openPage(page, section);
			await shelve(page, `${section.toLowerCase()}-${look}`);
		}
	});
});

test('light or dark follows the device, and the choice on the page goes before it', async ({ page }) => {
	const ground = () => page.evaluate(() => getComputedStyle(document.documentElement).backgroundColor);
	await page.setViewportSize(DESKTOP);
	await page.emulateMedia({ colorScheme: 'light' });
	await openPage(page);
	const light = await ground();
	await page.emulateMedia({ colorScheme: 'dark' });
	const dark = await ground();
	expect(dark).not.toBe(light);
	await button(page, 'Light').click();
	expect(await ground()).toBe(light);
	await page.reload();
	expect(await ground()).toBe(light);
});
