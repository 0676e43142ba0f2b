/*
 * How long the engine takes in Chromium: the median of assessing the demo job and of one state of its first nest; of
 * its frame, of one dip, and of choosing coils for eight nests from 24 and 24.
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

		const number = (/** @type {number} */ at) => ((at * 7919) % 97) / 97 - 0.5;
		const coil = (/** @type {string} */ kind, /** @type {number} */ free, /** @type {number} */ at) => ({
			coil: kind,
			label: `${kind} ${at}`,
			readings: [`${(free + number(at) / 5).toFixed(3)} in`],
		});
		const upTo = (/** @type {number} */ from, /** @type {number} */ to) =>
			Array.from({ length: to - from }, (_, at) => from + at);
		const yard = {
			...job,
			nests: upTo(0, 8).map((at) => ({
				id: `nest ${at}`,
				working_height: '11 1/2',
				seats: [coil('outer', 13.9375, at), coil('inner', 13.625, at + 50)],
			})),
			frame: undefined,
			bench: upTo(8, 24).flatMap((at) => [coil('outer', 13.9375, at), coil('inner', 13.625, at + 50)]),
		};

		/** The clock is too coarse for one call: many make a batch, and the batches give the median. */
		const median = (/** @type {() => unknown} */ call, batches = 41, calls = 25) => {
			for (let warm = 0; warm < 8 * calls; warm += 1) call();
			const each = Array.from({ length: batches }, () => {
				const start = performance.now();
				for (let run = 0; run < calls; run += 1) call();
				return (performance.now() - start) / calls;
			});
			return each.sort((a, b) => a - b)[(batches - 1) / 2] ?? NaN;
		};
		const frame = new engine.HeldFrame(job);
		return {
			'assess, demo job': median(() => engine.assess(job)),
			'nestState, its first nest': median(() => engine.nestState(job, nest.id, nest.working_height)),
			'level, demo job': median(() => engine.level(job)),
			'dip, demo job': median(() => frame.dip('A left', '1/2 in', 'B left')),
			'weighedAt, demo job': median(() => frame.weighedAt('1 in', '-1 in')),
			[`matching, ${engine.matching(yard).nests.length} nests from 24 and 24`]: median(
				() => engine.matching(yard),
				5,
				1,
			),
		};
	}, `${ORIGIN}/coilnest_web.js`);
	for (const [name, milliseconds] of Object.entries(medians)) {
		process.stdout.write(`${name}: ${milliseconds.toFixed(3)} ms (median, Chromium ${browser.version()})\n`);
	}
} finally {
	await browser.close();
}
