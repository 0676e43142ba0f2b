import { execFileSync } from 'node:child_process';
import { extname } from 'node:path';
import { AxeBuilder } from '@axe-core/playwright';
import { expect, type Locator, type Page, test as base } from '@playwright/test';

export { expect, type Locator, type Page };

/** A test of the page; an error that it throws or writes to the console, or a warning of Svelte, fails it in whichever tab. */
export const test = base.extend<{ errors: string[] }>({
	errors: [
		async ({ context }, use) => {
			const errors: string[] = [];
			context.on('weberror', (error) => errors.push(String(error.error())));
			context.on('console', (message) => {
				if (message.type() === 'error' || message.text().includes('svelte.dev/e/'))
					errors.push(message.text());
			});
			await use(errors);
			expect(errors, 'errors of the page').toEqual([]);
		},
		{ auto: true },
	],
});

export const PHONE = { width: 390, height: 844 };
export const DESKTOP = { width: 1280, height: 900 };

/** A telephone under a finger. */
export const AS_PHONE = { viewport: PHONE, hasTouch: true, isMobile: true };

const DEVICES = { phone: AS_PHONE, desktop: { viewport: DESKTOP } };

/** The same tests on each device, by day and by night; each look has a name, `phone-dark`. */
export function onEachDevice(tests: (look: string) => void): void {
	for (const [device, options] of Object.entries(DEVICES)) {
		for (const colorScheme of ['light', 'dark'] as const) {
			test.describe(`${device}, ${colorScheme}`, () => {
				test.use({ ...options, colorScheme });
				tests(`${device}-${colorScheme}`);
			});
		}
	}
}

const KINDS: Record<string, string> = {
	'.js': 'text/javascript',
	'.css': 'text/css',
	'.wasm': 'application/wasm',
	'.svg': 'image/svg+xml',
	'.webmanifest': 'application/manifest+json',
};

/** As what a host sends a file. */
export function kindOf(file: string): string {
	return KINDS[extname(file)] ?? 'text/html';
}

export function field(page: Page, name: string): Locator {
	return page.getByRole('textbox', { name, exact: true });
}

export function button(page: Page | Locator, name: string): Locator {
	return page.getByRole('button', { name, exact: true });
}

/** The line of one coil in the list of Measure: `Outer, A left`. */
export function line(page: Page, name: string): Locator {
	const [what = '', nest = ''] = name.split(', ');
	return page
		.getByRole('article', { name: nest, exact: true })
		.getByRole('button', { name: new RegExp(`^${what}\\b`) });
}

/** Opens a coil by its line. */
export async function openCoil(page: Page, name: string): Promise<Locator> {
	const of = line(page, name);
	if ((await of.getAttribute('aria-expanded')) === 'false') await of.click();
	await expect(coil(page, name)).toBeVisible();
	return coil(page, name);
}

/** Opens a drawing at the head of the list, with its book figure and limits. */
export async function openDrawing(page: Page, name: string): Promise<void> {
	await page
		.getByRole('group', { name: `Drawing of ${name}`, exact: true })
		.getByRole('button', { expanded: false })
		.first()
		.click();
}

/** The group of one coil that is open in Measure. */
export function coil(page: Page, name: string): Locator {
	return page.getByRole('group', { name, exact: true });
}

/** Opens the page at a section; on a first visit, it shows the invented demo. */
export async function openPage(
	page: Page,
	section: 'Measure' | 'Nest' | 'Level' | 'Replace' | 'Learn' | 'Record' = 'Measure',
): Promise<void> {
	await page.goto(`./#${section.toLowerCase()}`);
	await expect(page.getByRole('heading', { level: 2, name: section })).toBeAttached();
}

/** Opens the page and starts a job of one's own. */
export async function openBlank(page: Page): Promise<void> {
	await openPage(page);
	await button(page, 'Clear it and start my own').click();
	await expect(field(page, 'Book figure, Outer')).toBeFocused();
}

/** One page without frames: it is looked at where it stands. */
export async function expectNoViolation(page: Page, where: string): Promise<void> {
	const axe = new AxeBuilder({ page }).setLegacyMode().options({ resultTypes: ['violations'] });
	const { violations } = await axe.analyze();
	const told = violations.map(({ id, help, nodes }) => ({ id, help, at: nodes.map(({ html }) => html) }));
	expect.soft(told, where).toEqual([]);
}

/** What is pressed in a section and is smaller than a finger. */
export async function tooSmall(page: Page): Promise<string[]> {
	return page.locator('main :is(button, select, input, summary, [role=slider]):visible').evaluateAll((all) =>
		all
			.map((one) => ({
				of: one.outerHTML.slice(0, 80),
				box: one.getBoundingClientRect(),
				/** A word in a line is as wide as it is long. */
				isWord: one.closest('.term') !== null,
			}))
			.filter(({ box, isWord }) => box.height < 47.5 || (box.width < 44 && !isWord))
			.map(({ of, box }) => `${of} ${box.width} × ${box.height}`),
	);
}

/** The drawings take a new width of the window over with the next frame. */
export async function contentWidth(page: Page): Promise<number> {
	return page.evaluate(async () => {
		for (let frame = 0; frame < 2; frame += 1) await new Promise(requestAnimationFrame);
		return document.documentElement.scrollWidth;
	});
}

/** What lies on the disk, apart from what the page keeps in its memory. */
export function onDisk(page: Page): Promise<Record<string, { text: string }>> {
	return page.evaluate(
		() =>
			new Promise((resolve, reject) => {
				const request = indexedDB.open('coilnest');
				request.onerror = () => reject(request.error);
				request.onsuccess = () => {
					const store = request.result.transaction('kept').objectStore('kept');
					const found: Record<string, { text: string }> = {};
					store.openCursor().onsuccess = ({ target }) => {
						const cursor = (target as IDBRequest<IDBCursorWithValue | null>).result;
						if (cursor === null) return resolve(found);
						found[String(cursor.key)] = cursor.value as { text: string };
						cursor.continue();
					};
				};
			}),
	);
}

/** Letters and numbers alone: lines break elsewhere on paper, and a fraction may be set with another stroke. */
export function bare(text: string): string {
	return text
		.normalize('NFKC')
		.replaceAll('⁄', '/')
		.replace(/[\s\u00ad]/gu, '');
}

/** Presses Print, and gives what a printer would be handed. */
export async function printed(page: Page, path: string, format: 'A4' | 'Letter' = 'A4'): Promise<string> {
	await page.evaluate(() => {
		const asked = new Promise<void>((done) => (window.print = () => done()));
		Object.assign(window, { asked });
	});
	await page.keyboard.press('Control+p');
	await page.evaluate(() => (window as unknown as { asked: Promise<void> }).asked);
	await page.pdf({ path, format, preferCSSPageSize: false });
	return execFileSync('pdftotext', ['-raw', path, '-'], { encoding: 'utf8' });
}

/** Prints the section that is looked at, and gives what a printer would be handed. */
export async function printedAlone(page: Page, path: string): Promise<string> {
	await page.evaluate(() => (window.print = () => undefined));
	await button(page, 'Print this section alone').click();
	await page.pdf({ path, format: 'A4' });
	return execFileSync('pdftotext', ['-raw', path, '-'], { encoding: 'utf8' });
}
