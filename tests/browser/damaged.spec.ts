import { readdirSync, readFileSync } from 'node:fs';
import { Seeded } from '../../www/tools/seeded.js';
import { button, expect, field, onDisk, openPage, type Page, test } from './page';

/* Kept job files, damaged by a fixed seed and handed to Open: each is opened, or one sentence says why not. */

const EACH = 50;
const SECTIONS = ['Measure', 'Nest', 'Level', 'Replace'] as const;

const WHOLE = readdirSync('../tests/jobs')
	.filter((name) => name.endsWith('.job.json'))
	.map((name) => readFileSync(`../tests/jobs/${name}`));

/** A place in the text of a file that `pattern` fits, with something else there. */
function replaced(
	file: Buffer,
	random: Seeded,
	pattern: RegExp,
	by: string | ((was: string) => string),
): Buffer {
	const text = file.toString();
	const found = [...text.matchAll(pattern)];
	if (found.length === 0) return file;
	const { 0: was, index } = random.pick(found);
	const put = typeof by === 'string' ? by : by(was);
	return Buffer.from(text.slice(0, index) + put + text.slice(index + was.length));
}

const before = (start: readonly number[] | string) => (file: Buffer) =>
	Buffer.concat([Buffer.from(start as string), file]);

/** What happens to files on the way. */
const DAMAGES: readonly ((file: Buffer, random: Seeded) => Buffer)[] = [
	(file, random) => file.subarray(0, random.below(file.length)),
	(file, random) => file.subarray(random.below(file.length)),
	(file, random) => {
		const flipped = Buffer.from(file);
		for (let left = 0; left < 9; left += 1) {
			const at = random.below(flipped.length);
			flipped[at] = (flipped[at] ?? 0) ^ (1 << random.below(8));
		}
		return flipped;
	},
	before([0xef, 0xbb, 0xbf]),
	before([0x50, 0x4b, 0x03, 0x04]),
	before([0x1f, 0x8b, 0x08, 0x00]),
	before('<!doctype html><html><body><pre>'),
	before(' \n'.repeat(900)),
	before('['.repeat(5_000)),
	(file) => Buffer.from(`\ufeff${file.toString()}`, 'utf16le'),
	(file) => Buffer.from(`\ufeff${file.toString()}`, 'utf16le').swap16(),
	(file) => Buffer.concat([file, file]),
	(file) => Buffer.concat([Buffer.from('['), file, Buffer.from(']')]),
	(file) => Buffer.from(JSON.stringify(file.toString())),
	() => Buffer.alloc(0),
	(_, random) => Buffer.alloc(300, random.below(256)),
	(_, random) => Buffer.from(random.pick(['null', '7', '""', 'true', '[]', '{}', '{"format":{}}', '{"a":'])),
	(_, random) =>
		Buffer.from(`{"format":"coilnest-${random.pick(['shelf/1', 'shelf/1",', 'shelf/9","jobs":[7]}'])}`),
	(file, random) =>
		replaced(
			file,
			random,
			/coilnest-job\/1/g,
			random.pick(['coilnest-job/2', 'coilnest-job/', 'other/1', '']),
		),
	(file, random) => replaced(file, random, /"format"/g, '"form"'),
	(file, random) => replaced(file, random, /"[^"]*":/g, (was) => `${was}7,${was}`),
	(file, random) =>
		replaced(file, random, /"[^"]*":/g, random.pick(['"__proto__":', '"constructor":', '"":'])),
	(file, random) =>
		replaced(file, random, /"[^"]*"/g, random.pick(['1e999', '-0', '9'.repeat(400), '0x10', 'NaN'])),
	(file, random) => replaced(file, random, /"[^"]*"/g, `${'['.repeat(2_000)}${']'.repeat(2_000)}`),
	(file, random) => replaced(file, random, /"[^"]*"/g, random.pick(['{}', '[[]]', 'null', 'true', '13.5'])),
	(file, random) =>
		replaced(file, random, /"[^"]*"/g, random.pick(['"\\u0000"', '"\u0000"', '"\\ud800"', '"\\x"'])),
	(file, random) =>
		replaced(file, random, /"[^"]*"/g, JSON.stringify(random.pick(['😀', '<b>x</b>', 'x'.repeat(9_999)]))),
	(file, random) => replaced(file, random, /[[\]{},:]/g, random.pick(['', ',', '}', ']', '//'])),
	(file, random) => replaced(file, random, /\n/g, '\0'),
];

function damaged(seed: number): Buffer {
	const random = new Seeded(seed);
	// Each damage in its turn, and at times a second one on top of it.
	let file = DAMAGES[seed % DAMAGES.length]?.(random.pick(WHOLE), random) ?? Buffer.alloc(0);
	if (random.below(5) === 0) file = random.pick(DAMAGES)(file, random);
	return file;
}

async function hand(page: Page, name: string, buffer: Buffer): Promise<void> {
	const choice = page.waitForEvent('filechooser');
	await button(page, 'Open').click();
	await (await choice).setFiles({ name, mimeType: 'application/json', buffer });
}

for (const [turn, section] of SECTIONS.entries()) {
	test(`files that are damaged open in ${section}, or one sentence says why not`, async ({
		page,
		errors,
	}) => {
		await openPage(page, section);
		const mine = { ...JSON.parse(readFileSync('../tests/jobs/whole-truck.job.json', 'utf8')), title: 'Mine' };
		await hand(page, 'mine.json', Buffer.from(JSON.stringify(mine)));
		const title = field(page, 'Title of the job');
		await expect(title).toHaveValue('Mine');
		const said = page.locator('.notice');
		let opened = 0;
		for (let number = turn * EACH; number < (turn + 1) * EACH; number += 1) {
			const name = `damaged-${number}.json`;
			await test.step(name, async () => {
				await hand(page, name, damaged(number));
				await expect(said).toHaveCount(1);
				const sentence = await said.getByRole('paragraph').innerText();
				if (sentence.startsWith(`Opened: ${name}. Mine is on the shelf.`)) {
					opened += 1;
					await expect(page.getByText(/could not be drawn|calculation stopped/)).toHaveCount(0);
					await button(said, 'Undo that').click();
				} else {
					// What was read, and what was expected.
					expect(sentence).toMatch(
						/job file|names no format|is no job|no format that is known|later version|shelf/,
					);
					await button(said, 'Close').click();
				}
				await expect(said).toHaveCount(0);
				await expect(title).toHaveValue('Mine');
				expect(errors).toEqual([]);
			});
		}
		expect(opened, 'files that could still be opened').toBeGreaterThan(EACH / 10);
		expect(opened, 'files that could still be opened').toBeLessThan((EACH * 9) / 10);
		await expect(page.getByText('saved', { exact: true })).toBeVisible();
		expect(JSON.parse((await onDisk(page))['job']?.text ?? '')).toEqual(mine);
	});
}
