/// <reference lib="dom" />
/* global requestAnimationFrame, InputEvent */
/*
 * How long a keystroke in Measure takes to its painted verdict, on a CPU slowed four times: each key of a few readings,
 * from the event to the end of the frame that shows it. Run it with `npm run typing`, after the page has been built; a
 * folder with another build can be named behind it, to compare the two.
 */
import { fileURLToPath } from 'node:url';
import { chromium } from '@playwright/test';
import { preview } from 'vite';

const SLOWED = 4;
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

const folders =
	process.argv.length > 2 ? process.argv.slice(2) : [fileURLToPath(new URL('../dist', import.meta.url))];
const browser = await chromium.launch({
	executablePath: process.env['CHROMIUM'] ?? '/usr/bin/chromium',
	args: ['--no-sandbox'],
});
try {
	for (const outDir of folders) {
		const server = await preview({
			build: { outDir },
			preview: { port: 0, strictPort: false },
			logLevel: 'silent',
		});
		const page = await browser.newPage({ viewport: { width: 390, height: 844 }, serviceWorkers: 'block' });
		await page.goto(server.resolvedUrls?.local[0] ?? '');
		const field = page.getByRole('textbox', { name: 'Place 1, Outer, A left', exact: true });
		await field.waitFor();
		await page.waitForLoadState('networkidle');
		const session = await page.context().newCDPSession(page);
		await session.send('Emulation.setCPUThrottlingRate', { rate: SLOWED });
		const took = await field.evaluate(async (input, texts) => {
			const box = /** @type {HTMLInputElement} */ (input);
			const painted = () =>
				new Promise((resolve) =>
					requestAnimationFrame(() => {
						const { port1, port2 } = new MessageChannel();
						port1.onmessage = () => resolve(performance.now());
						port2.postMessage(undefined);
					}),
				);
			box.focus();
			const took = [];
			for (const text of ['13', ...texts]) {
				for (let end = 1; end <= text.length; end += 1) {
					// A pause, as between two keys: what is put off is done by then.
					await new Promise((resolve) => setTimeout(resolve, 250));
					await painted();
					const begun = performance.now();
					box.value = text.slice(0, end);
					box.dispatchEvent(new InputEvent('input', { bubbles: true }));
					took.push((await painted()) - begun);
				}
			}
			return took.slice(2).sort((a, b) => a - b);
		}, TEXTS);
		const at = (/** @type {number} */ share) => took[Math.floor(share * (took.length - 1))]?.toFixed(1);
		process.stdout.write(`${outDir}: ${took.length} keys, median ${at(0.5)} ms, p95 ${at(0.95)} ms\n`);
		await page.close();
		await server.close();
	}
} finally {
	await browser.close();
}
