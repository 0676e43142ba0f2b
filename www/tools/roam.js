/// <reference lib="dom" />
/* global document, location, window, HTMLElement, indexedDB */
/*
 * Somebody who presses, writes, opens, undoes and looks about at random, in two tabs that know nothing of each other:
 * one is loaded anew now and then, with or without a wait for "saved", and must come back as it was; the other stays,
 * and its memory must stay flat. An error of either ends it. Run it after the page has been built with
 * `npm run roam -- MINUTES SEED FOLDER`, each of which may be left out; it prints the seed, and what was done before
 * something went wrong.
 */
import { readFileSync, readdirSync } from 'node:fs';
import { isDeepStrictEqual } from 'node:util';
import { chromium } from '@playwright/test';
import { preview } from 'vite';
import { Seeded } from './seeded.js';

const SIZES = [
	{ width: 390, height: 844 },
	{ width: 1280, height: 900 },
];
/** An action that cannot be done, as a press of what is covered, is given up. */
const PATIENCE_MS = 800;
/**
 * What one tab may hold at the end beside what it held after a tenth of the time. The steps that can be undone are kept,
 * so the heap grows with what is written. Nodes are printed only: why they grow in a short run is not known yet.
 */
const MOST = /** @type {Record<string, (first: number) => number>} */ ({
	heap: (first) => first * 1.25 + 4_000_000,
	listeners: (first) => first * 1.25,
});
const SAVED = /^saved/;

const read = (/** @type {string} */ file) =>
	readFileSync(new URL(`../../tests/${file}`, import.meta.url), 'utf8');
const jobs = readdirSync(new URL('../../tests/jobs', import.meta.url))
	.filter((name) => name.endsWith('.job.json'))
	.map((name) => read(`jobs/${name}`));
const texts = [
	...read('seeds/readings.txt').split('\n'),
	...read('seeds/quantities.txt').split('\n'),
	...['', '13 7/8', '14 scant', '1000 lb/in', '8', 'A left', '__proto__', '😀', 'x'.repeat(2_000)],
];

/** @typedef {import('@playwright/test').Page} Page */
/** @typedef {import('@playwright/test').ElementHandle<HTMLElement | SVGElement>} Element */

/** The job as it lies on the disk. */
const onDisk = (/** @type {Page} */ page) =>
	page.evaluate(
		() =>
			/** @type {Promise<unknown>} */ (
				new Promise((resolve, reject) => {
					const request = indexedDB.open('coilnest');
					request.onerror = () => reject(request.error);
					request.onsuccess = () => {
						const got = request.result.transaction('kept').objectStore('kept').get('job');
						got.onerror = () => reject(got.error);
						got.onsuccess = () => {
							request.result.close();
							resolve(got.result === undefined ? undefined : JSON.parse(got.result.text));
						};
					};
				})
			),
	);

/** What stands at a path such as `nests[0].id`. */
function at(/** @type {unknown} */ job, /** @type {string} */ path) {
	return (path.match(/[^.[\]]+/g) ?? []).reduce(
		(held, step) => /** @type {Record<string, unknown> | undefined} */ (held)?.[step],
		/** @type {any} */ (job),
	);
}

class Roamer {
	/** What was done, the last of it last. */
	done = /** @type {string[]} */ ([]);
	acts = 0;
	edits = 0;
	loads = 0;

	/**
	 * @param {Page} page
	 * @param {Seeded} random
	 */
	constructor(page, random) {
		this.page = page;
		this.random = random;
		page.setDefaultTimeout(PATIENCE_MS);
		page.setDefaultNavigationTimeout(30_000);
		page.on('filechooser', (chooser) => void this.#choose(chooser).catch(() => undefined));
		page.on('pageerror', (error) => this.#errors.push(String(error.stack ?? error)));
		page.on('console', (message) => {
			if (message.type() === 'error' || message.text().includes('svelte.dev/e/'))
				this.#errors.push(message.text());
		});
	}

	#errors = /** @type {string[]} */ ([]);

	async begin(/** @type {string} */ address) {
		await this.page.addInitScript(() => {
			window.print = () => undefined;
			// A warning says from where it comes.
			const { console: told } = window;
			const { warn } = told;
			told.warn = (...said) => warn(...said, new Error('from').stack);
		});
		await this.page.goto(address);
		await this.#ready();
	}

	async #ready() {
		await this.page
			.getByRole('textbox', { name: 'Title of the job' })
			.waitFor({ state: 'attached', timeout: 20_000 });
	}

	async #saved() {
		await this.page.locator('.saved', { hasText: SAVED }).waitFor({ state: 'attached', timeout: 20_000 });
	}

	async #choose(/** @type {import('@playwright/test').FileChooser} */ chooser) {
		const text = this.random.pick(jobs);
		const cut = this.random.below(3) === 0 ? this.random.below(text.length) : text.length;
		const buffer = Buffer.from(text.slice(0, cut));
		await chooser.setFiles({ name: 'some.json', mimeType: 'application/json', buffer });
	}

	/**
	 * Does something with one of what can be seen on the page. No handle is left: it would keep what it stands for alive.
	 * @template T
	 * @param {string} what
	 * @param {(one: Element) => Promise<T>} by
	 */
	async #withOne(what, by) {
		const all = await this.page.locator(`:is(${what}):visible`).elementHandles();
		try {
			return all.length > 0 ? await by(/** @type {Element} */ (this.random.pick(all))) : undefined;
		} finally {
			await Promise.all(all.map((one) => one.dispose()));
		}
	}

	async #press() {
		await this.#withOne(
			'button, summary, a[href^="#"], input[type="checkbox"], input[type="radio"]',
			async (one) => {
				const name = await one.evaluate((element) =>
					(element.getAttribute('aria-label') ?? element.textContent ?? '').trim().slice(0, 40),
				);
				this.done.push(`press ${name}`);
				await one.click();
			},
		);
	}

	/** Writes into a field; answers with where it stands in the job, and what stands there now. */
	async #write() {
		const text = this.random.pick(texts);
		this.edits += 1;
		return this.#withOne('input[type="text"], textarea', async (one) => {
			this.done.push(`write ${text.slice(0, 40)}`);
			await one.fill(text);
			return one.evaluate((element) => {
				const path = element.closest('[data-path]')?.getAttribute('data-path') ?? '';
				const isOwn = location.hash !== '#learn' && element.isConnected;
				return { path: isOwn ? path : '', text: /** @type {HTMLInputElement} */ (element).value };
			});
		});
	}

	async #choice() {
		const turn = this.random.below(100);
		this.done.push('choose');
		await this.#withOne('select, input[type="range"]', (one) =>
			one.evaluate((element, turn) => {
				const input = /** @type {HTMLSelectElement & HTMLInputElement} */ (element);
				if (input.options) input.selectedIndex = turn % input.options.length;
				else input.valueAsNumber = Number(input.min) + ((Number(input.max) - Number(input.min)) * turn) / 100;
				for (const kind of ['input', 'change']) input.dispatchEvent(new Event(kind, { bubbles: true }));
			}, turn),
		);
	}

	async #keys() {
		const key = this.random.pick([
			...['Tab', 'Tab', 'Shift+Tab', 'Enter', 'Escape', 'ArrowDown', 'ArrowRight', 'PageDown'],
			...['Control+z', 'Control+Shift+z', 'Backspace'],
		]);
		this.done.push(key);
		await this.page.keyboard.press(key);
	}

	async #step() {
		const name = this.random.pick(['Undo', 'Undo', 'Redo']);
		this.done.push(name);
		await this.page.getByRole('button', { name, exact: true }).click();
	}

	async #look() {
		const size = this.random.pick(SIZES);
		this.done.push(`look at ${size.width}`);
		await this.page.setViewportSize(size);
	}

	async act() {
		const turn = this.random.below(100);
		const by =
			turn < 45
				? this.#press()
				: turn < 70
					? this.#write()
					: turn < 78
						? this.#choice()
						: turn < 88
							? this.#keys()
							: turn < 97
								? this.#step()
								: this.#look();
		// What is covered, or gone by now, cannot be pressed; an error of the page is noticed all the same.
		await by.catch(() => this.done.push('… not done'));
		this.acts += 1;
		this.#expectSound();
	}

	#expectSound() {
		if (this.#errors.length > 0) this.#fail(this.#errors.join('\n'));
	}

	/** @returns {never} */
	#fail(/** @type {string} */ why) {
		throw new Error(`${why}\n\nWhat was done before:\n${this.done.slice(-25).join('\n')}`);
	}

	/** Writes, and loads the page anew; what was written must be there. */
	async reload() {
		const written = await this.#write().catch(() => undefined);
		const waits = this.random.below(2) === 0;
		let before;
		if (waits) {
			await this.#saved();
			before = await onDisk(this.page);
		}
		this.done.push(waits ? 'reload once it is saved' : 'reload at once');
		await this.page.reload();
		await this.#ready();
		await this.#saved();
		this.loads += 1;
		const after = await onDisk(this.page);
		if (waits && !isDeepStrictEqual(before, after)) {
			this.#fail(`What was saved is not there: ${JSON.stringify(before)} became ${JSON.stringify(after)}`);
		}
		if (written?.path) {
			const kept = String(at(after, written.path) ?? '');
			if (kept !== written.text) this.#fail(`Lost at ${written.path}: "${written.text}", there is "${kept}"`);
		}
		this.#expectSound();
	}

	/** What the tab holds once it stands at the same job as ever, and all that is not needed is gone. */
	async memory() {
		await this.page.setViewportSize(SIZES[1] ?? { width: 1280, height: 900 });
		await this.page.keyboard.press('Escape');
		await this.page.evaluate(() => (location.hash = '#measure'));
		await this.page.waitForTimeout(1_500);
		await this.page.locator('body').evaluate((body) => {
			for (const open of body.querySelectorAll('details[open]')) open.removeAttribute('open');
			if (document.activeElement instanceof HTMLElement) document.activeElement.blur();
		});
		await this.page.getByRole('button', { name: 'New', exact: true }).click({ timeout: 10_000 });
		await this.#saved();
		await this.page.waitForTimeout(1_500);
		const session = await this.page.context().newCDPSession(this.page);
		await session.send('Performance.enable');
		for (let turn = 0; turn < 3; turn += 1) await session.send('HeapProfiler.collectGarbage');
		const { metrics } = await session.send('Performance.getMetrics');
		await session.detach();
		const of = (/** @type {string} */ name) => metrics.find((metric) => metric.name === name)?.value ?? NaN;
		const drawn = await this.page.evaluate(() => document.querySelectorAll('*').length);
		return { drawn, heap: of('JSHeapUsedSize'), nodes: of('Nodes'), listeners: of('JSEventListeners') };
	}
}

const minutes = Number(process.argv[2] ?? 1);
const seed = Number(process.argv[3] ?? Date.now() % 1_000_000_007);
process.stdout.write(`seed ${seed}, ${minutes} minutes\n`);
const folder = process.argv[4];
const server = await preview({
	...(folder !== undefined && { build: { outDir: folder } }),
	preview: { port: 0, strictPort: false },
	logLevel: 'silent',
});
const browser = await chromium.launch({
	executablePath: process.env['CHROMIUM'] ?? '/usr/bin/chromium',
	args: ['--no-sandbox'],
});
try {
	const address = server.resolvedUrls?.local[0] ?? '';
	const tab = async (/** @type {number} */ own) => {
		const context = await browser.newContext({ acceptDownloads: false, serviceWorkers: 'block' });
		const roamer = new Roamer(await context.newPage(), new Seeded(seed + own));
		await roamer.begin(address);
		return roamer;
	};
	const [stays, goes] = [await tab(0), await tab(1)];
	const begun = Date.now();
	const share = () => (Date.now() - begun) / (minutes * 60_000);
	let early;
	while (share() < 1) {
		await stays.act();
		await goes.act();
		if (goes.acts % 20 === 0) await goes.reload();
		if (early === undefined && share() > 0.1) early = await stays.memory();
	}
	const last = await stays.memory();
	process.stdout.write(
		`${stays.acts + goes.acts} actions, ${stays.edits + goes.edits} of them edits, ${goes.loads} loads, nothing lost\n`,
	);
	let isFlat = early !== undefined;
	for (const name of /** @type {const} */ (['heap', 'listeners', 'nodes', 'drawn'])) {
		const [first, then] = [early?.[name] ?? NaN, last[name]];
		const most = MOST[name]?.(first);
		const bound = most === undefined ? '' : `, at most ${Math.round(most)}`;
		isFlat &&= most === undefined || then <= most;
		process.stdout.write(`${name}: ${first} after a tenth, ${then} at the end${bound}\n`);
	}
	if (!isFlat) {
		process.stdout.write('It grows.\n');
		process.exitCode = 1;
	}
} finally {
	await browser.close();
	await server.close();
}
