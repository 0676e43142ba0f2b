import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import jsQR from 'jsqr';
import {
	bare,
	button,
	contentWidth,
	DESKTOP,
	expect,
	expectNoViolation,
	field,
	type Locator,
	onDisk,
	openPage,
	type Page,
	PHONE,
	printed,
	test,
	tooSmall,
} from './page';

const TRUCK = readFileSync('../tests/jobs/whole-truck.job.json', 'utf8');

interface Truck {
	title: string;
	record: Record<string, string>;
	nests: { id: string; seats: { label: string; readings: string[] }[] }[];
}

async function openFile(page: Page, text: string, by = 'Open'): Promise<void> {
	const choice = page.waitForEvent('filechooser');
	await button(page, by).first().click();
	await (
		await choice
	).setFiles({ name: 'truck.json', mimeType: 'application/json', buffer: Buffer.from(text) });
}

/** The truck as a job of one's own, so that nothing counts as the demo. */
function truck(changes: (job: Truck) => void = () => undefined): string {
	const job = JSON.parse(TRUCK) as Truck;
	job.title = 'Hopper 9, autumn';
	job.record = { vehicle: 'Hopper', number: '9', place: 'Upper shed', date: '2026-05-02', by: 'A. N. Other' };
	changes(job);
	return JSON.stringify(job);
}

async function openRecord(page: Page): Promise<void> {
	await page.getByRole('link', { name: 'Record', exact: true }).click();
	await expect(page.getByRole('heading', { name: 'Shelf of jobs' })).toBeVisible();
}

/** What a decoder reads off the first page as a telephone sees it, 200 dots to the inch. */
function scanned(pdf: string): ReturnType<typeof jsQR> {
	const page = execFileSync('pdftoppm', ['-r', '200', '-gray', '-f', '1', '-l', '1', pdf], {
		maxBuffer: 2 ** 26,
	});
	const head = /^P5\s+(\d+)\s+(\d+)\s+255\s/.exec(page.subarray(0, 40).toString('latin1'));
	const [width, height] = [Number(head?.[1]), Number(head?.[2])];
	const pixels = new Uint8ClampedArray(4 * width * height).fill(255);
	page.subarray(head?.[0].length).forEach((grey, at) => pixels.fill(grey, 4 * at, 4 * at + 3));
	return jsQR(pixels, width, height);
}

/** What it reads off a picture of the code on the screen. */
async function scannedOffScreen(code: Locator): Promise<ReturnType<typeof jsQR>> {
	const shot = (await code.screenshot()).toString('base64');
	const { pixels, width, height } = await code.page().evaluate(async (png) => {
		const picture = new Image();
		picture.src = `data:image/png;base64,${png}`;
		await picture.decode();
		const canvas = new OffscreenCanvas(picture.width, picture.height);
		const drawn = canvas.getContext('2d');
		drawn?.drawImage(picture, 0, 0);
		const data = drawn?.getImageData(0, 0, picture.width, picture.height).data ?? [];
		return { pixels: [...data], width: picture.width, height: picture.height };
	}, shot);
	return jsQR(new Uint8ClampedArray(pixels), width, height);
}

for (const format of ['A4', 'Letter'] as const) {
	test(`nothing of the truck is lost on ${format}: readings, labels, verdicts, shims`, async ({
		page,
	}, info) => {
		await page.setViewportSize(DESKTOP);
		await openPage(page);
		await openFile(page, truck());
		await expect(field(page, 'Title of the job')).toHaveValue('Hopper 9, autumn');
		const job = JSON.parse(truck()) as Truck;
		const seats = job.nests.flatMap((nest) => nest.seats);
		const expected = [
			job.title,
			...Object.values(job.record),
			...job.nests.map((nest) => nest.id),
			...seats.flatMap((seat) => [seat.label, ...seat.readings]),
		];
		await page.getByRole('link', { name: 'Level', exact: true }).click();
		const steps = page.getByRole('list', { name: 'What to do, in this order' }).getByRole('listitem');
		await expect(steps.first()).toBeVisible();
		for (const step of await steps.all()) expected.push(await step.locator('b').innerText());
		const text = await printed(page, info.outputPath('truck.pdf'), format);
		const letters = bare(text);
		expect(expected.length).toBeGreaterThan(30);
		expect(expected.filter((one) => bare(one) === '' || !letters.includes(bare(one)))).toEqual([]);
		const pages = Number(
			/Pages:\s+(\d+)/.exec(
				execFileSync('pdfinfo', [info.outputPath('truck.pdf')], { encoding: 'utf8' }),
			)?.[1],
		);
		expect(pages).toBeLessThanOrEqual(4);
		for (let number = 1; number <= pages; number += 1) expect(text).toContain(`${number} of ${pages}`);
		// Each verdict and its sentence, as the screen has them.
		await page.getByRole('link', { name: 'Record', exact: true }).click();
		const tally = await page.locator('.record .tally span').allInnerTexts();
		expect(tally.filter((one) => !letters.includes(bare(one)))).toEqual([]);
	});
}

test("the browser's own print menu prints the record from anywhere, though Print was never pressed", async ({
	page,
}, info) => {
	await openPage(page);
	await openFile(page, truck());
	await page.getByRole('link', { name: 'Nest', exact: true }).click();
	const paper = info.outputPath('menu.pdf');
	await expect(async () => {
		await page.pdf({ path: paper });
		const letters = bare(execFileSync('pdftotext', ['-raw', paper, '-'], { encoding: 'utf8' }));
		expect(letters).toContain(bare('Hopper 9, autumn'));
		expect(letters).toContain(bare('Upper shed'));
	}).toPass();
	await expect(async () => {
		await page.pdf({ path: paper });
		expect(scanned(paper)?.data ?? '').toContain('#code=');
	}).toPass();
});

test('a section is printed alone where that is asked for', async ({ page }, info) => {
	await openPage(page, 'Level');
	await printed(page, info.outputPath('record.pdf'));
	await page.evaluate(() => {
		window.print = () => dispatchEvent(new Event('beforeprint'));
	});
	await button(page, 'Print this section alone').click();
	await expect(page.locator('.print-sheet')).toHaveCount(0);
	await page.evaluate(() => {
		dispatchEvent(new Event('afterprint'));
		dispatchEvent(new Event('beforeprint'));
	});
	await expect(page.locator('.print-sheet')).toHaveCount(1);
});

test('the code is read by another decoder and opens the job, and loses none that lay here', async ({
	page,
}, info) => {
	await page.setViewportSize(DESKTOP);
	await openPage(page);
	await openFile(page, truck());
	await openRecord(page);
	const code = page.getByRole('img', { name: 'Code that opens this job' });
	await expect(code).toBeVisible();
	await expect(page.getByText('both open only here')).toBeVisible();
	await printed(page, info.outputPath('code.pdf'));
	const read = scanned(info.outputPath('code.pdf'));
	expect(read?.data).toMatch(/^http:\/\/127\.0\.0\.1:\d+\/#code=[0-9A-Z$*+\-./:]+$/);
	for (const [viewport, colorScheme] of [
		[DESKTOP, 'dark'],
		[PHONE, 'light'],
	] as const) {
		await page.setViewportSize(viewport);
		await page.emulateMedia({ colorScheme });
		expect((await scannedOffScreen(code))?.data).toBe(read?.data);
	}
	await page.setViewportSize(DESKTOP);

	await button(page, 'New').click();
	await expect(page.getByText('A new job. Hopper 9, autumn is on the shelf.')).toBeVisible();
	await field(page, 'Title of the job').fill('Another');
	await page.goto(read!.data);
	await expect(field(page, 'Title of the job')).toHaveValue('Hopper 9, autumn');
	expect(page.url()).toContain('#measure');
	await expect(page.getByText('Another is on the shelf.')).toBeVisible();
	await openRecord(page);
	const shelf = page.getByRole('list', { name: 'Jobs on the shelf' });
	await expect(shelf.getByText('Another')).toBeVisible();
	const held = JSON.parse((await onDisk(page))['job']?.text ?? '') as unknown;
	expect(held).toEqual(JSON.parse(truck()));
});

test('an address with half a job says so and changes nothing', async ({ page }) => {
	await openPage(page);
	await openFile(page, truck());
	for (const half of ['#job=xx', '#code=AAAAA', '#job=']) {
		await page.evaluate((hash) => (location.hash = hash), half);
		await expect(page.getByText('The job in this address cannot be read')).toBeVisible();
		await button(page, 'Close').click();
		await expect(field(page, 'Title of the job')).toHaveValue('Hopper 9, autumn');
	}
});

test('a job too large for a code says so, and its link still opens', async ({ page, context }) => {
	await context.grantPermissions(['clipboard-read', 'clipboard-write']);
	await openPage(page);
	let seed = 7;
	const noise = Array.from({ length: 6000 }, () =>
		String.fromCharCode(97 + ((seed = (seed * 48271) % 2147483647) % 26)),
	);
	await openFile(
		page,
		truck((job) => (job.record['notes'] = noise.join(''))),
	);
	await openRecord(page);
	await expect(page.getByText('too much for a code')).toBeVisible();
	await button(page, 'Copy the link').click();
	await expect(page.getByText('Copied.')).toBeVisible();
	const link = await page.evaluate(() => navigator.clipboard.readText());
	const other = await context.newPage();
	await other.goto(link);
	await expect(field(other, 'Title of the job')).toHaveValue('Hopper 9, autumn', { timeout: 20_000 });
});

test('the shelf: New and Open lose nothing; search, duplicate, begin from, take out and put back, reload', async ({
	page,
}) => {
	await page.setViewportSize(DESKTOP);
	await openPage(page);
	await openFile(page, truck());
	await button(page, 'New').click();
	await expect(page.getByText('Hopper 9, autumn is on the shelf.')).toBeVisible();
	await button(page, 'Undo that').click();
	await expect(field(page, 'Title of the job')).toHaveValue('Hopper 9, autumn');
	await button(page, 'New').click();
	await button(page, 'Leave it so').click();
	await field(page, 'Title of the job').fill('Tender 3');
	await page.reload();
	await openRecord(page);
	const shelf = page.getByRole('list', { name: 'Jobs on the shelf' });
	await expect(shelf.getByRole('listitem')).toHaveCount(1);
	await expect(shelf).toContainText('Upper shed');
	await expect(shelf).toContainText('good');

	await button(page, 'More for Hopper 9, autumn').click();
	await button(page, 'Duplicate').click();
	await expect(shelf.getByRole('listitem')).toHaveCount(2);
	const search = page.getByRole('searchbox', { name: 'Search all that is written' });
	await search.fill('autumn second');
	await expect(shelf.getByRole('listitem')).toHaveCount(1);
	await button(page, 'More for Hopper 9, autumn, second').click();
	await button(page, 'Take out').click();
	await expect(shelf.getByRole('listitem')).toHaveCount(0);
	await button(page, 'Put it back').click();
	await expect(shelf.getByRole('listitem')).toHaveCount(1);
	await search.fill('');

	await shelf.getByRole('button', { name: /^Hopper 9, autumn Hopper/ }).click();
	await expect(field(page, 'Title of the job')).toHaveValue('Hopper 9, autumn');
	await expect(shelf.getByText('Tender 3')).toBeVisible();
	await expect(shelf.getByRole('listitem')).toHaveCount(2);

	await button(page, 'More for Hopper 9, autumn').first().click();
	await button(page, 'Start a new job from its drawings').click();
	await expect(field(page, 'Vehicle')).toHaveValue('Hopper');
	await expect(field(page, 'Measured by')).toHaveValue('');
	await expect(page.getByText('Beside the job of 2026-05-02.')).toBeVisible();
	await page.getByRole('link', { name: 'Measure', exact: true }).click();
	const begun = JSON.parse((await onDisk(page))['job']?.text ?? '') as Truck;
	const before = JSON.parse(truck()) as Truck;
	expect(begun.nests.map(({ id }) => id)).toEqual(before.nests.map(({ id }) => id));
	expect(begun.nests.flatMap(({ seats }) => seats.flatMap(({ readings }) => readings))).toEqual([]);
	expect(begun.nests[0]?.seats[0]?.label).toBe(before.nests[0]?.seats[0]?.label);
});

test('the whole shelf goes out as one file, and comes back on another device', async ({ page, browser }) => {
	await openPage(page);
	await openFile(page, truck());
	await openFile(
		page,
		truck((job) => (job.title = 'Tender 3')),
	);
	await expect(page.getByText('Hopper 9, autumn is on the shelf.')).toBeVisible();
	await openRecord(page);
	const download = page.waitForEvent('download');
	await button(page, 'All jobs to one file').click();
	const text = await readFile(await (await download).path(), 'utf8');

	const other = await (await browser.newContext({ baseURL: new URL('/', page.url()).href })).newPage();
	await openPage(other);
	await openRecord(other);
	await openFile(other, text, 'Bring a shelf back');
	const shelf = other.getByRole('list', { name: 'Jobs on the shelf' });
	await expect(shelf.getByRole('listitem')).toHaveCount(2);
	await openFile(other, text);
	await expect(other.getByText('0 laid on the shelf. 2 were here already.')).toBeVisible();
	await expect(shelf.getByRole('listitem')).toHaveCount(2);
});

test('a full disk keeps New from losing a job, and says so', async ({ page }) => {
	await openPage(page);
	await openFile(page, truck());
	await page.evaluate(() => {
		IDBObjectStore.prototype.put = () => {
			throw new DOMException('full', 'QuotaExceededError');
		};
	});
	await button(page, 'New').click();
	await expect(page.getByText('Hopper 9, autumn could not be put on the shelf')).toBeVisible();
	await button(page, 'Undo that').click();
	await expect(field(page, 'Title of the job')).toHaveValue('Hopper 9, autumn');
});

test('a notice that comes above another leaves the focus where it was', async ({ page }) => {
	await openPage(page);
	await openFile(page, truck());
	await button(page, 'New').click();
	await button(page, 'Undo that').focus();
	await field(page, 'Title of the job').evaluate((title: HTMLInputElement) => {
		IDBObjectStore.prototype.put = () => {
			throw new DOMException('full', 'QuotaExceededError');
		};
		title.value = 'Tender 3';
		title.dispatchEvent(new Event('input', { bubbles: true }));
	});
	await expect(button(page, 'Save to a file')).toBeVisible();
	await expect(button(page, 'Undo that')).toBeFocused();
});

test('what is typed while a job goes to the shelf goes with it', async ({ page }) => {
	await openPage(page);
	await openFile(page, truck());
	// A disk that is slow: the first write to the shelf is held until the typing is done.
	await page.evaluate(() => {
		const { put } = IDBObjectStore.prototype;
		const disk = Object.assign(window, { isSlow: true });
		IDBObjectStore.prototype.put = function (value: unknown, key?: IDBValidKey) {
			const busy = (): void => {
				if (disk.isSlow) this.get('').onsuccess = busy;
			};
			if (String(key).startsWith('shelf:')) busy();
			return put.call(this, value, key);
		};
	});
	await button(page, 'New').click();
	await field(page, 'Title of the job').fill('Hopper 9, last key');
	await page.evaluate(() => Object.assign(window, { isSlow: false }));
	await expect(page.getByText('A new job. Hopper 9, last key is on the shelf.')).toBeVisible();
	await openRecord(page);
	await expect(page.getByRole('list', { name: 'Jobs on the shelf' })).toContainText('Hopper 9, last key');
	await button(page, 'Undo that').click();
	await expect(field(page, 'Title of the job')).toHaveValue('Hopper 9, last key');
});

test('undo survives a reload', async ({ page }) => {
	await openPage(page);
	await openFile(page, truck());
	await field(page, 'Title of the job').fill('One');
	await field(page, 'Title of the job').blur();
	await field(page, 'Title of the job').fill('Two');
	await field(page, 'Title of the job').blur();
	await expect(page.getByText('saved', { exact: true })).toBeVisible();
	await page.reload();
	await expect(field(page, 'Title of the job')).toHaveValue('Two');
	await button(page, 'Undo').click();
	await expect(field(page, 'Title of the job')).toHaveValue('One');
	await button(page, 'Undo').click();
	await expect(field(page, 'Title of the job')).toHaveValue('Hopper 9, autumn');
	await button(page, 'Redo').click();
	await expect(field(page, 'Title of the job')).toHaveValue('One');
});

test('since last time: an earlier job of the same truck, by label, and on paper', async ({ page }, info) => {
	await page.setViewportSize(DESKTOP);
	await openPage(page);
	await openFile(page, truck());
	await openFile(
		page,
		truck((job) => {
			job.title = 'Hopper 9, two years on';
			job.record['date'] = '2028-05-02';
			const [seat] = job.nests[0]!.seats;
			seat!.readings = seat!.readings.map(() => '13 1/4');
		}),
	);
	await openRecord(page);
	await page.getByRole('combobox', { name: 'From the shelf' }).selectOption('Hopper 9, autumn, 2026-05-02');
	await expect(page.getByText('Beside the job of 2026-05-02.')).toBeVisible();
	const label = (JSON.parse(truck()) as Truck).nests[0]?.seats[0]?.label ?? '';
	const row = page.getByRole('row', { name: new RegExp(`^${label} `) }).first();
	await expect(row).toContainText('Lost');
	const others = page.getByRole('rowheader', { name: 'Cannot say' });
	expect(await others.count()).toBeGreaterThan(5);
	const lost = (await row.getByRole('button').innerText()).replace(/\s/g, '');
	const text = bare(await printed(page, info.outputPath('since.pdf')));
	expect(text).toContain(bare('Since 2026-05-02'));
	expect(text).toContain(bare(lost));
	await page.reload();
	await expect(page.getByText('Beside the job of 2026-05-02.')).toBeVisible();
});

test('tables out: a spreadsheet of the language reads them', async ({ browser, page }) => {
	await openPage(page);
	const baseURL = new URL('/', page.url()).href;
	for (const [locale, separator, decimal] of [
		['en-GB', ',', '.'],
		['de-DE', ';', ','],
	] as const) {
		const other = await (await browser.newContext({ baseURL, locale })).newPage();
		await openPage(other);
		await openFile(other, truck());
		await openRecord(other);
		for (const name of ['Coils', 'Nests', 'Frame']) {
			const download = other.waitForEvent('download');
			await button(other, `${name} as CSV`).click();
			const file = await download;
			expect(file.suggestedFilename()).toBe(`hopper-9-autumn-${name.toLowerCase()}.csv`);
			const text = await readFile(await file.path(), 'utf8');
			expect(text.startsWith('\u{feff}nest')).toBe(true);
			expect(text).toMatch(new RegExp(`${separator}\\d+\\${decimal}\\d+${separator}`));
		}
	}
});

test('photographs are scaled down, named, printed, saved with the file and kept through a reload', async ({
	page,
}, info) => {
	await page.setViewportSize(DESKTOP);
	await openPage(page);
	await openFile(page, truck());
	await openRecord(page);
	const picture = Buffer.from(
		await page.evaluate(async () => {
			const canvas = new OffscreenCanvas(4000, 3000);
			const context = canvas.getContext('2d')!;
			context.fillStyle = '#865';
			context.fillRect(0, 0, 4000, 3000);
			return [...new Uint8Array(await (await canvas.convertToBlob({ type: 'image/jpeg' })).arrayBuffer())];
		}),
	);
	const choice = page.waitForEvent('filechooser');
	await button(page, 'Add a photograph').click();
	await (await choice).setFiles({ name: 'turn.jpg', mimeType: 'image/jpeg', buffer: picture });
	const shown = page.getByRole('img', { name: 'Photograph 1' });
	await expect(shown).toBeVisible();
	expect(await shown.evaluate((image) => (image as HTMLImageElement).naturalWidth)).toBe(1280);
	await field(page, 'What photograph 1 shows').fill('8a, pitted on the second turn');
	await expect(page.getByText('saved', { exact: true })).toBeVisible();
	expect((await onDisk(page))['job']?.text).not.toContain('data:image');
	await page.reload();
	await expect(shown).toBeVisible();
	const text = await printed(page, info.outputPath('photographs.pdf'));
	expect(bare(text)).toContain(bare('1. 8a, pitted on the second turn'));
	expect(
		execFileSync('pdfimages', ['-list', info.outputPath('photographs.pdf')], { encoding: 'utf8' }),
	).toMatch(/image\s+1280\s+960/);

	const download = page.waitForEvent('download');
	await button(page, 'Save').click();
	const saved = await readFile(await (await download).path(), 'utf8');
	expect(saved).toContain('data:image/jpeg;base64,');
	const wrong = page.waitForEvent('filechooser');
	await button(page, 'Add a photograph').click();
	await (
		await wrong
	).setFiles({ name: 'note.jpg', mimeType: 'image/jpeg', buffer: Buffer.from('no picture') });
	await expect(page.getByText('note.jpg is no picture that this browser can read.')).toBeVisible();
	await button(page, 'Take out photograph 1').click();
	await expect(shown).toHaveCount(0);
	await button(page, 'Undo').click();
	await expect(shown).toBeVisible();
});

test("a date that is none says so at its field; a new job has today's", async ({ page }) => {
	await page.clock.setFixedTime(new Date('2027-03-04T23:30:00'));
	await openPage(page);
	await button(page, 'Clear it and start my own').click();
	await openRecord(page);
	await expect(field(page, 'Date')).toHaveValue('2027-03-04');
	await field(page, 'Date').fill('4 March');
	await field(page, 'Date').blur();
	await expect(page.getByText(/no date of the calendar/)).toBeVisible();
});

for (const [device, viewport] of Object.entries({ phone: PHONE, desktop: DESKTOP })) {
	for (const colorScheme of ['light', 'dark'] as const) {
		test.describe(`${device}, ${colorScheme}`, () => {
			test.use({ viewport, colorScheme, hasTouch: device === 'phone', isMobile: device === 'phone' });

			test('Record fits, axe finds nothing, and all can be pressed', async ({ page }, info) => {
				await openPage(page);
				if (device === 'phone') await button(page, 'Job').click();
				await openFile(page, truck());
				await openRecord(page);
				await expect(page.getByRole('img', { name: 'Code that opens this job' })).toBeVisible();
				await expectNoViolation(page, 'Record');
				expect(await contentWidth(page)).toBeLessThanOrEqual(viewport.width);
				if (device === 'phone') expect(await tooSmall(page)).toEqual([]);
				await page.screenshot({ path: info.outputPath('record.png'), fullPage: true });
			});
		});
	}
}
