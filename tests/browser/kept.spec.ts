import { readFileSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import {
	button,
	coil,
	DESKTOP,
	expect,
	expectNoViolation,
	field,
	onDisk,
	openCoil,
	openPage,
	type Page,
	test,
} from './page';

const READING = 'Place 1, Outer, A left';

async function openFile(page: Page, text: string): Promise<void> {
	const choice = page.waitForEvent('filechooser');
	await button(page, 'Open').click();
	await (
		await choice
	).setFiles({ name: 'job.json', mimeType: 'application/json', buffer: Buffer.from(text) });
}

/** Has each engine fall at a job of this vehicle, as at a fault of its own, however often it is started anew. */
async function fallAt(page: Page, vehicle: string): Promise<void> {
	await page.addInitScript((vehicle) => {
		type Job = { record?: { vehicle?: unknown } };
		const falling = ({ exports }: WebAssembly.Instance): WebAssembly.Instance => {
			const assess = exports['assess'] as (job: Job) => unknown;
			const instead = (job: Job): unknown => {
				if (job.record?.vehicle === vehicle) throw new WebAssembly.RuntimeError('unreachable');
				return assess(job);
			};
			return { exports: { ...exports, assess: instead } } as unknown as WebAssembly.Instance;
		};
		const { instantiateStreaming, Instance } = WebAssembly;
		WebAssembly.instantiateStreaming = async (source, imports) => {
			const { instance, module } = await instantiateStreaming.call(WebAssembly, source, imports);
			return { instance: falling(instance), module };
		};
		WebAssembly.Instance = function (module: WebAssembly.Module, imports: WebAssembly.Imports) {
			return falling(new Instance(module, imports));
		} as unknown as typeof WebAssembly.Instance;
	}, vehicle);
}

/** What a version of the page before this one had left in the browser. */
async function leftBehind(page: Page, text: string): Promise<void> {
	await page.addInitScript((text) => {
		if (sessionStorage.getItem('seen') === null) localStorage.setItem('coilnest:job', text);
		sessionStorage.setItem('seen', 'yes');
	}, text);
}

test('"saved" means on the disk, and what is not there yet says so', async ({ page }) => {
	await page.addInitScript(() => {
		const open = IDBDatabase.prototype.transaction;
		const asked: unknown[] = [];
		Object.assign(window, { asked });
		IDBDatabase.prototype.transaction = function (names, mode, options) {
			if (mode === 'readwrite') asked.push(options?.durability);
			return open.call(this, names, mode, options);
		};
		const complete = Object.getOwnPropertyDescriptor(IDBTransaction.prototype, 'oncomplete');
		Object.defineProperty(IDBTransaction.prototype, 'oncomplete', {
			set(this: IDBTransaction, by: (event: Event) => void) {
				const slow = this.mode === 'readwrite' ? (event: Event) => setTimeout(() => by(event), 1500) : by;
				complete?.set?.call(this, slow);
			},
		});
	});
	await openPage(page);
	await field(page, READING).fill('13 3/4');
	await expect(page.getByText('saving…')).toBeVisible();
	await expect(page.getByText('saved', { exact: true })).toBeVisible();
	expect(JSON.parse((await onDisk(page))['job']?.text ?? '')).toHaveProperty(
		'nests.0.seats.0.readings.0',
		'13 3/4',
	);
	expect(await page.evaluate(() => (window as unknown as { asked: unknown[] }).asked)).toEqual(['strict']);
});

test('an edit outlives a tab that is closed before it lies on the disk', async ({ page, context }) => {
	await page.addInitScript(() => {
		IDBObjectStore.prototype.put = () => undefined as never;
		Object.defineProperty(IDBTransaction.prototype, 'oncomplete', { set: () => undefined });
	});
	await openPage(page);
	await field(page, READING).fill('13 3/4');
	await page.close();
	const later = await context.newPage();
	await openPage(later);
	await expect(field(later, READING)).toHaveValue('13 3/4');
	await expect(later.getByText('saved', { exact: true })).toBeVisible();
	expect(await later.evaluate(() => Object.keys(localStorage))).toEqual([]);
});

for (const [what, kept] of [
	['as the text of its file', (text: string) => text],
	['as a version', (text: string) => JSON.stringify({ stamp: 'a-1', base: '', at: 9, demo: false, text })],
] as const) {
	test(`a job of earlier versions, kept ${what}, opens and moves to the disk`, async ({ page }) => {
		const job = JSON.stringify({ format: 'coilnest-job/1', title: 'Kept long ago', later: [1] });
		await leftBehind(page, kept(job));
		await openPage(page);
		await expect(field(page, 'Title of the job')).toHaveValue('Kept long ago');
		await expect(page.getByText('saved', { exact: true })).toBeVisible();
		await page.reload();
		await expect(field(page, 'Title of the job')).toHaveValue('Kept long ago');
		expect(JSON.parse((await onDisk(page))['job']?.text ?? '')).toEqual(JSON.parse(job));
		expect(await page.evaluate(() => localStorage.length)).toBe(0);
	});
}

for (const [what, says, full] of [
	['the disk', 'kept, not safe', false],
	['all storage', 'not saved', true],
] as const) {
	test(`where ${what} is full, the page says so and goes on`, async ({ page }) => {
		await page.addInitScript((full) => {
			const refuse = (): never => {
				throw new DOMException('full', 'QuotaExceededError');
			};
			IDBObjectStore.prototype.put = refuse;
			if (full) Storage.prototype.setItem = refuse;
		}, full);
		await openPage(page);
		await field(page, READING).fill('13 3/4');
		await expect(page.getByText(says)).toBeVisible();
		await expect(page.getByText(/storage is full or switched off/)).toBeVisible();
		await expect(button(page, 'Save to a file')).toBeVisible();
	});
}

test('the name of a nest is kept while it is typed, and takes its frame along', async ({ page }) => {
	await openPage(page, 'Level');
	const truck = JSON.parse(readFileSync('../tests/jobs/whole-truck.job.json', 'utf8')) as {
		nests: { id: string }[];
		frame: { supports: { nest: string }[] };
	};
	await openFile(page, JSON.stringify(truck));
	await page.getByRole('link', { name: 'Measure', exact: true }).click();
	const name = field(page, 'Name of the nest').first();
	await name.clear();
	// On the way it has the name of another nest.
	await name.pressSequentially('B right end');
	await expect(page.getByText('saved', { exact: true })).toBeVisible();
	const kept = JSON.parse((await onDisk(page))['job']?.text ?? '') as typeof truck;
	expect(kept.nests.map(({ id }) => id)).toEqual([
		'B right end',
		...truck.nests.slice(1).map(({ id }) => id),
	]);
	expect(kept.frame.supports.map(({ nest }) => nest)).toEqual(
		truck.frame.supports.map(({ nest }) => (nest === truck.nests[0]?.id ? 'B right end' : nest)),
	);
	await button(page, 'Undo').click();
	await expect(name).toHaveValue(truck.nests[0]?.id ?? '');
});

test('a kept job that cannot be read is put aside once, and its text can be had', async ({ page }) => {
	const text = '{"format":"coilnest-job/1","coils":[{"id":"ou';
	await leftBehind(page, text);
	const said = page.getByText(/What was kept here could not be read/);
	for (let visit = 0; visit < 3; visit += 1) {
		await openPage(page);
		await expect(said).toHaveCount(1);
		await expect(page.getByText('saved', { exact: true })).toBeVisible();
		expect(Object.keys(await onDisk(page)).filter((key) => key.startsWith('job-unread:'))).toHaveLength(1);
		await page.reload();
	}
	const download = page.waitForEvent('download');
	await button(page, 'Save its text to a file').click();
	expect(await readFile(await (await download).path(), 'utf8')).toBe(text);
	await button(page, 'Drop it').click();
	await expect(said).toHaveCount(0);
});

test('a file that is too large or cannot be read says so', async ({ page }) => {
	await openPage(page);
	await openFile(page, ' '.repeat(8_000_001));
	await expect(page.getByText(/job\.json is larger than 8 MB/)).toBeVisible();
	await button(page, 'Close').click();
	await page.evaluate(() => {
		File.prototype.text = () => Promise.reject(new DOMException('gone', 'NotReadableError'));
	});
	await openFile(page, '{}');
	await expect(page.getByText(/job\.json could not be read from the device/)).toBeVisible();
});

test('an engine that falls is started anew: nothing old stands as if it held, and nothing is lost', async ({
	page,
}) => {
	await fallAt(page, 'wrecked');
	await page.setViewportSize(DESKTOP);
	await openPage(page);
	const left = coil(page, 'Outer, A left');
	await expect(button(left, 'Good')).toBeVisible();
	await openFile(
		page,
		JSON.stringify({
			...JSON.parse(readFileSync('../web/demo/quarry-tramway.json', 'utf8')),
			record: { vehicle: 'wrecked' },
		}),
	);
	const fell = page.getByRole('alert').filter({ hasText: 'The calculation stopped' });
	await expect(fell).toBeVisible();
	await expect(button(left, 'Good')).toHaveCount(0);
	await expect(left.getByText('Out of date: the calculation stopped.').first()).toBeVisible();
	await expect(left.getByRole('status').filter({ hasText: 'Out of date' })).toBeAttached();
	await field(page, READING).fill('13 3/4');
	await expect(fell).toBeVisible();
	await expect(page.getByText('saved', { exact: true })).toBeVisible();
	expect(JSON.parse((await onDisk(page))['job']?.text ?? '')).toHaveProperty(
		'nests.0.seats.0.readings.0',
		'13 3/4',
	);
	await expectNoViolation(page, 'with an engine that fell');
	await page.screenshot({ path: test.info().outputPath('fell.png') });

	await page.reload();
	await expect(field(page, READING)).toHaveValue('13 3/4');
	await expect(fell).toBeVisible();
	await button(page, 'New').click();
	await expect(fell).toHaveCount(0);
	await openFile(page, readFileSync('../web/demo/quarry-tramway.json', 'utf8'));
	await expect(button(left, 'Good')).toBeVisible();
});

test('a key leaves no timer behind that would fall into a later one', async ({ page }) => {
	await page.addInitScript(() => {
		const left = new Set<number>();
		let last = 0;
		const [begin, end] = [window.setTimeout.bind(window), window.clearTimeout.bind(window)];
		// A second is what a page that is out of sight is given to paint: here it never passes.
		const slow = (act: () => void, ms?: number): number => {
			if (ms !== 1000) return begin(act, ms);
			const id = (last -= 1);
			left.add(id);
			return id;
		};
		const ended = (id?: number): void => {
			if (!left.delete(id ?? 0)) end(id);
		};
		Object.assign(window, { left, setTimeout: slow, clearTimeout: ended });
	});
	await openPage(page);
	await openCoil(page, 'Outer, A left');
	await field(page, 'Place 1, Outer, A left').fill('14');
	await expect(page.getByText('saved', { exact: true })).toBeVisible();
	await expect
		.poll(() => page.evaluate(() => (window as unknown as { left: Set<number> }).left.size))
		.toBe(0);
});
