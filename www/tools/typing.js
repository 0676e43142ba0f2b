/// <reference lib="dom" />
/* global requestAnimationFrame, InputEvent */
/*
 * How long a keystroke in Measure takes to its painted verdict, on a CPU slowed four times: each key of a few readings
 * of the invented whole truck, from the event to the end of the frame that shows the verdict. A frame whose words
 * do not stand there in the end is counted, and should not be; what the drawing adds behind them may come later. Run it with `npm run typing`, after the page has been
 * built; folders with other builds can be named behind it, to compare: each is asked in its turn, three times.
 */
import { readFileSync } from 'node:fs';
import { loadavg } from 'node:os';
import { fileURLToPath } from 'node:url';
import { chromium } from '@playwright/test';
import { preview } from 'vite';

const SLOWED = 4;
const ROUNDS = 3;
const COIL = 'Outer, A left';
const TEXTS = [
	'13 7/8',
	'13 13/16 scant',
	'14',
	'13 15/16 full',
	'13.9',
	'13 3/4',
	'13 7/8 scant',
	'13 27/32',
];

const truck = readFileSync(new URL('../../tests/jobs/whole-truck.job.json', import.meta.url), 'utf8');
const named = process.argv.slice(2);
const folders = named.length > 0 ? named : [fileURLToPath(new URL('../dist', import.meta.url))];
const browser = await chromium.launch({
	executablePath: process.env['CHROMIUM'] ?? '/usr/bin/chromium',
	args: ['--no-sandbox'],
});

/** What each key of the texts took in the page at `address`, and how many frames came too early. */
async function typed(/** @type {string} */ address) {
	const page = await browser.newPage({ viewport: { width: 390, height: 844 }, serviceWorkers: 'block' });
	await page.addInitScript((text) => localStorage.setItem('coilnest:job', text), truck);
	await page.goto(address);
	await page
		.getByRole('article', { name: 'A left' })
		.getByRole('button', { name: /^Outer/ })
		.click();
	const field = page.getByRole('textbox', { name: `Place 1, ${COIL}`, exact: true });
	await field.waitFor();
	await page.waitForLoadState('networkidle');
	const session = await page.context().newCDPSession(page);
	await session.send('Emulation.setCPUThrottlingRate', { rate: SLOWED });
	const found = await field.evaluate(async (input, texts) => {
		const box = /** @type {HTMLInputElement} */ (input);
		const painted = () =>
			new Promise((resolve) =>
				requestAnimationFrame(() => {
					const { port1, port2 } = new MessageChannel();
					port1.onmessage = () => resolve(performance.now());
					port2.postMessage(undefined);
				}),
			);
		const verdict = () => box.closest('[data-coil]')?.querySelector('[data-says]')?.textContent;
		box.focus();
		const took = [];
		let early = 0;
		for (const text of ['13', ...texts]) {
			for (let end = 1; end <= text.length; end += 1) {
				await painted();
				const begun = performance.now();
				box.value = text.slice(0, end);
				box.dispatchEvent(new InputEvent('input', { bubbles: true }));
				took.push((await painted()) - begun);
				const shown = verdict();
				// A pause, as between two keys: what is put off is done by then.
				await new Promise((resolve) => setTimeout(resolve, 250));
				if (!verdict()?.startsWith(shown ?? ' ')) early += 1;
			}
		}
		return { took: took.slice(2), early };
	}, TEXTS);
	await page.close();
	return found;
}

/** @type {{ outDir: string, address: string, close: () => Promise<void>, took: number[], early: number }[]} */
const builds = [];
try {
	for (const outDir of folders) {
		const server = await preview({
			build: { outDir },
			preview: { port: 0, strictPort: false },
			logLevel: 'silent',
		});
		const address = server.resolvedUrls?.local[0] ?? '';
		builds.push({ outDir, address, close: () => server.close(), took: [], early: 0 });
	}
	for (let round = 0; round < ROUNDS; round += 1) {
		for (const build of builds) {
			const { took, early } = await typed(build.address);
			build.took.push(...took);
			build.early += early;
		}
	}
	const medians = builds.map(({ outDir, took, early }) => {
		took.sort((a, b) => a - b);
		const at = (/** @type {number} */ share) => took[Math.floor(share * (took.length - 1))] ?? NaN;
		const [median, p95] = [at(0.5), at(0.95)];
		const late = early === 0 ? '' : `, ${early} frames without the verdict`;
		process.stdout.write(
			`${outDir}: ${took.length} keys, median ${median.toFixed(1)} ms, p95 ${p95.toFixed(1)} ms${late}\n`,
		);
		return p95;
	});
	const [before, after] = medians;
	if (before !== undefined && after !== undefined) {
		process.stdout.write(`p95 of the second to the first: ${(after / before).toFixed(2)}\n`);
	}
	process.stdout.write(`load of this machine: ${loadavg()[0]?.toFixed(1)}\n`);
} finally {
	for (const { close } of builds) await close();
	await browser.close();
}
