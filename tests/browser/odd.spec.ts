import { readFileSync } from 'node:fs';
import { button, expect, field, openPage, type Page, test } from './page';

type Loose = Record<string, any>;

const truck = (): Loose => JSON.parse(readFileSync('../tests/jobs/whole-truck.job.json', 'utf8'));

async function openJob(page: Page, job: unknown): Promise<void> {
	const choice = page.waitForEvent('filechooser');
	await button(page, 'Open').click();
	const buffer = Buffer.from(JSON.stringify(job));
	await (await choice).setFiles({ name: 'job.json', mimeType: 'application/json', buffer });
}

const UNDRAWN = /could not be drawn/;

/** Looks at every section, and at the sheet of the first coil. */
async function expectAllDrawn(page: Page): Promise<void> {
	for (const section of ['Nest', 'Level', 'Replace', 'Measure']) {
		await page.getByRole('link', { name: section, exact: true }).click();
		await expect(page.getByRole('heading', { level: 2, name: section })).toBeAttached();
		await page.waitForTimeout(200);
		await expect(page.getByText(UNDRAWN)).toHaveCount(0);
		await expect(page.locator('main :is(input, button, p)').first()).toBeAttached();
	}
}

const odd: { what: string; change: (job: Loose) => void }[] = [
	{ what: 'nothing odd in the job', change: () => undefined },
	{
		what: 'two nests of one name',
		change: (job) => (job['nests'][1].id = job['nests'][0].id),
	},
	{
		what: 'nests without a name',
		change: (job) => job['nests'].forEach((nest: Loose) => delete nest['id']),
	},
	{
		what: 'two coils of one id',
		change: (job) => (job['coils'][1].id = job['coils'][0].id),
	},
	{
		what: 'coils without an id',
		change: (job) => job['coils'].forEach((coil: Loose) => delete coil['id']),
	},
	{
		what: 'one nest under two supports',
		change: (job) => (job['frame'].supports[1].nest = job['frame'].supports[0].nest),
	},
	{
		what: 'a bare number as weight',
		change: (job) => (job['frame'].weight = 36000),
	},
	{
		what: 'a nest named as what every object has',
		change: (job) => ['__proto__', 'constructor'].forEach((id, i) => (job['nests'][i].id = id)),
	},
	...[7, null, true, [[]], { held: ['x'] }].map((value) => ({
		what: `${JSON.stringify(value)} in every field`,
		change: (job: Loose) => {
			const walk = (part: Loose, name: string): void => {
				if (part[name] !== null && typeof part[name] === 'object') {
					Object.keys(part[name]).forEach((inner) => walk(part[name], inner));
				} else if (part !== job || name !== 'format') part[name] = value;
			};
			job['replace'] = {
				original: 'x',
				asked: { pocket: '8' },
				order: { note: 'x' },
				candidates: [{ id: 'x', free: '9' }],
			};
			job['need'] = { load: '1', bars: ['1'] };
			Object.keys(job).forEach((name) => walk(job, name));
		},
	})),
];

for (const { what, change } of odd) {
	test(`every section stands with ${what}`, async ({ page }) => {
		await openPage(page);
		const job = truck();
		change(job);
		await openJob(page, job);
		await expectAllDrawn(page);
	});
}

test('a bare number in a field is shown as its text, and saved as it was', async ({ page }) => {
	await openPage(page, 'Level');
	const job = truck();
	job['frame'].weight = 36000;
	await openJob(page, job);
	await expect(field(page, 'Weight on the nests')).toHaveValue('36000');
	const download = page.waitForEvent('download');
	await button(page, 'Save').click();
	const saved = JSON.parse(readFileSync(await (await download).path(), 'utf8')) as Loose;
	expect(saved['frame'].weight).toBe(36000);
});

test('a section that cannot be drawn says so, and stands again with another job', async ({
	page,
	errors,
}) => {
	await page.addInitScript(() => {
		const split = String.prototype.split as (...args: unknown[]) => string[];
		String.prototype.split = function (this: string, ...args: unknown[]): string[] {
			if (this.valueOf() === 'fails here') throw new Error('made to fail');
			return split.apply(this, args);
		} as typeof String.prototype.split;
	});
	await openPage(page, 'Level');
	const bad = { ...truck(), record: { vehicle: 'fails here' } };
	await openJob(page, bad);
	await expect(page.getByText(UNDRAWN)).toBeVisible();
	await expect(page.getByRole('button', { name: /step back/ })).toHaveCount(0);
	await expect(button(page, 'Save to a file')).toBeVisible();

	await page.getByRole('link', { name: 'Measure', exact: true }).click();
	await expect(page.getByText(UNDRAWN)).toHaveCount(0);
	await expect(page.getByRole('textbox').first()).toBeVisible();
	await page.getByRole('link', { name: 'Level', exact: true }).click();
	await expect(page.getByText(UNDRAWN)).toBeVisible();
	await openJob(page, truck());
	await expect(page.getByText(UNDRAWN)).toHaveCount(0);
	await expect(field(page, 'Weight on the nests')).toBeVisible();
	errors.length = 0;
});
