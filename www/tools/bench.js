/*
 * How long the engine takes in Chromium: the median of assessing the demo job and of one state of its first nest.
 * Run it with `npm run bench`, after the engine has been built.
 */
import { fileURLToPath } from 'node:url';
import { chromium } from '@playwright/test';

const ENGINE = fileURLToPath(new URL('../../target/engine/', import.meta.url));
/** No such host is asked: each request is answered from the engine's folder. */
const ORIGIN = 'http://engine.invalid';

const browser = await chromium.launch({
	executablePath: process.env['CHROMIUM'] ?? '/usr/bin/chromium',
	args: ['--no-sandbox'],
});
try {
	const page = await browser.newPage();
	await page.route(`${ORIGIN}/**`, (route) => {
		const { pathname } = new URL(route.request().url());
		if (pathname === '/') return route.fulfill({ contentType: 'text/html', body: '<!doctype html>' });
		return route.fulfill({ path: ENGINE + pathname.slice(1) });
	});
	await page.goto(ORIGIN);
	const medians = await page.evaluate(async (module) => {
		const engine = await import(module);
		await engine.default({ module_or_path: new URL('coilnest_web_bg.wasm', module).href });
		const job = engine.demo();
		const nest = job.nests[0];

		/** The clock is too coarse for one call: many make a batch, and the batches give the median. */
		const median = (/** @type {() => unknown} */ call) => {
			const [batches, calls] = [41, 25];
			for (let warm = 0; warm < 200; warm += 1) call();
			const each = Array.from({ length: batches }, () => {
				const start = performance.now();
				for (let run = 0; run < calls; run += 1) call();
				return (performance.now() - start) / calls;
			});
			return each.sort((a, b) => a - b)[(batches - 1) / 2] ?? NaN;
		};
		return {
			'assess, demo job': median(() => engine.assess(job)),
			'nestState, its first nest': median(() => engine.nestState(job, nest.id, nest.working_height)),
		};
	}, `${ORIGIN}/coilnest_web.js`);
	for (const [name, milliseconds] of Object.entries(medians)) {
		process.stdout.write(`${name}: ${milliseconds.toFixed(3)} ms (median, Chromium ${browser.version()})\n`);
	}
} finally {
	await browser.close();
}
