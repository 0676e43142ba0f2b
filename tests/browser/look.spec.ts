import {
	AS_PHONE,
	button,
	contentWidth,
	DESKTOP,
	expect,
	field,
	type Locator,
	onEachDevice,
	openCoil,
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
			if (section === 'Measure') {
				await openCoil(page, 'Outer, A left');
				await field(page, 'Place 1, Outer, A left').tap();
			}
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

const ALL = ['Measure', 'Nest', 'Level', 'Replace', 'Learn', 'Record'] as const;

/**
 * Texts of what is looked at in another size than the four. A fraction is set as one, its parts smaller than the text that
 * they stand in, as an index of a letter is: they have no size of their own.
 */
function otherSizes(page: Page): Promise<string[]> {
	return page.evaluate(() => {
		const SIZES = [13, 16, 20, 32];
		const found = new Set<string>();
		for (const element of document.querySelectorAll<HTMLElement | SVGElement>('.app *')) {
			const isText = [...element.childNodes].some((node) => node.nodeType === 3 && node.textContent?.trim());
			if (!(isText || element.matches('input, select, textarea')) || !element.checkVisibility()) continue;
			if (element.matches('.over, .under, text > tspan[font-size], sub, sup')) continue;
			const shrunk = element instanceof SVGTextContentElement ? (element.getScreenCTM()?.d ?? 1) : 1;
			const turned = element instanceof SVGTextContentElement ? (element.getScreenCTM()?.b ?? 0) : 0;
			const size = parseFloat(getComputedStyle(element).fontSize) * Math.hypot(shrunk, turned);
			if (!SIZES.some((one) => Math.abs(one - size) < 0.05))
				found.add(`${size} px: ${element.textContent?.trim().slice(0, 40)}`);
		}
		return [...found];
	});
}

/** What has the colour of the accent and is neither short, not met, scrap, wrong nor a care. */
function otherAccents(page: Page): Promise<string[]> {
	return page.evaluate(() => {
		const CARE = /short|scrap|not met|no replacement|not good|included here|take care|open:|\?/i;
		const probe = document.body.appendChild(document.createElement('i'));
		probe.style.color = 'var(--mark)';
		const accent = getComputedStyle(probe).color;
		probe.remove();
		const found = new Set<string>();
		for (const element of document.querySelectorAll('.app *')) {
			if (!element.checkVisibility()) continue;
			const style = getComputedStyle(element);
			const isText = [...element.childNodes].some((node) => node.nodeType === 3 && node.textContent?.trim());
			const isDrawn = element.matches('svg :not(g, text, defs *)');
			const colours = [
				isText && style.color,
				style.backgroundColor,
				style.outlineStyle !== 'none' && style.outlineColor,
				parseFloat(style.borderLeftWidth) > 0 && style.borderLeftColor,
				parseFloat(style.borderBottomWidth) > 0 && style.borderBottomColor,
				isDrawn && style.stroke,
				isDrawn && style.fill,
			];
			if (!colours.includes(accent)) continue;
			const whole = element.closest('.tone, button, h3, .caution, .sheet, li, p, label, .entry') ?? element;
			const says = `${whole.textContent} ${whole.parentElement?.textContent}`;
			if (!CARE.test(says)) found.add(`${element.outerHTML.slice(0, 60)} in ${says.trim().slice(0, 40)}`);
		}
		return [...found];
	});
}

for (const [device, options] of Object.entries({ phone: AS_PHONE, desktop: { viewport: DESKTOP } })) {
	test.describe(`one look, ${device}`, () => {
		test.use(options);

		test('no section has more than four sizes of type, and the accent says one thing', async ({ page }) => {
			for (const section of ALL) {
				await openPage(page, section);
				if (section === 'Measure') await openCoil(page, 'Inner, A left');
				await page.waitForLoadState('networkidle');
				await expect(page.locator('main')).toContainText(/(\S+\s+){80}/);
				expect.soft(await otherSizes(page), section).toEqual([]);
				expect.soft(await otherAccents(page), section).toEqual([]);
			}
			await openPage(page);
			await page.goto('./#coil=outer');
			await expect(page.getByRole('heading', { name: /Outer/ }).first()).toBeVisible();
			expect.soft(await otherSizes(page), 'the sheet of a coil').toEqual([]);
			expect.soft(await otherAccents(page), 'the sheet of a coil').toEqual([]);
		});
	});
}

test('the accent is no colour of tab, focus or step', async ({ page }) => {
	await page.setViewportSize(DESKTOP);
	await openPage(page);
	const colours = await page.evaluate(() => {
		const root = getComputedStyle(document.documentElement);
		const probe = document.body.appendChild(document.createElement('i'));
		const of = (name: string): string => {
			probe.style.color = root.getPropertyValue(name);
			return getComputedStyle(probe).color;
		};
		const tab = document.querySelector('a[aria-current]');
		const skip = document.querySelector<HTMLElement>('.skips a');
		skip?.focus();
		return {
			ink: of('--ink'),
			tab: tab && getComputedStyle(tab).borderLeftColor,
			skip: skip && getComputedStyle(skip).color,
			focus: skip && getComputedStyle(skip).outlineColor,
		};
	});
	expect(colours).toEqual({ ink: colours.ink, tab: colours.ink, skip: colours.ink, focus: colours.ink });
});

test('in forced colours a pressed state and the current tab are seen', async ({ page }) => {
	await page.setViewportSize(DESKTOP);
	await page.emulateMedia({ forcedColors: 'active' });
	await openPage(page);
	const ground = (pressed: boolean) =>
		page
			.getByRole('button', { pressed })
			.first()
			.evaluate((button) => getComputedStyle(button).backgroundColor);
	expect(await ground(true)).not.toBe(await ground(false));
	const border = (tab: string) =>
		page
			.getByRole('link', { name: tab, exact: true })
			.evaluate((link) => getComputedStyle(link).borderLeftColor);
	expect(await border('Measure')).not.toBe(await border('Level'));
});
