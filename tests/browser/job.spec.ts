import { readFile } from 'node:fs/promises';
import { button, coil, expect, field, openBlank, openDrawing, openPage, type Page, test } from './page';

const READING = 'Place 1, Outer, A left';

async function openFile(page: Page, text: string): Promise<void> {
	const choice = page.waitForEvent('filechooser');
	await button(page, 'Open').click();
	await (
		await choice
	).setFiles({ name: 'job.json', mimeType: 'application/json', buffer: Buffer.from(text) });
}

async function savedFile(page: Page): Promise<string> {
	const download = page.waitForEvent('download');
	await button(page, 'Save').click();
	return readFile(await (await download).path(), 'utf8');
}

test('the first visit shows the invented demo, and one press clears it', async ({ page }) => {
	await openPage(page);
	await expect(page.getByText('An invented job.')).toBeVisible();
	await expect(page.getByText('Press what is dotted.')).toBeVisible();
	await expect(field(page, READING)).toHaveValue('13 7/8');

	await button(page, 'Clear it and start my own').click();
	await expect(field(page, 'Book figure, Outer')).toBeFocused();
	await expect(field(page, 'Book figure, Outer')).toHaveValue('');
	await expect(page.getByText('An invented job.')).toBeHidden();
	await expect(field(page, READING)).toHaveCount(0);

	await button(page, 'Undo').click();
	await expect(field(page, READING)).toHaveValue('13 7/8');
});

test('each edit is kept, and stands after a reload', async ({ page }) => {
	await openBlank(page);
	await field(page, 'Book figure, Outer').fill('13 15/16');
	await field(page, 'Title of the job').fill('Shunter 2');
	await page.reload();
	await openDrawing(page, 'Outer');
	await expect(field(page, 'Book figure, Outer')).toHaveValue('13 15/16');
	await expect(field(page, 'Title of the job')).toHaveValue('Shunter 2');
	await expect(page).toHaveTitle('Measure, Shunter 2: coilnest');
	await expect(page.getByText('An invented job.')).toBeHidden();
});

test('undo and redo go step by step, a field to a step', async ({ page }) => {
	await openPage(page);
	const [undo, redo] = [button(page, 'Undo'), button(page, 'Redo')];
	await expect(undo).toBeDisabled();
	await field(page, READING).clear();
	await field(page, READING).pressSequentially('13 3/4');
	await field(page, 'Label on the bench, Outer, A left').fill('9');

	await page.keyboard.press('Control+z');
	await expect(field(page, 'Label on the bench, Outer, A left')).toHaveValue('7');
	await expect(field(page, READING)).toHaveValue('13 3/4');
	await undo.click();
	await expect(field(page, READING)).toHaveValue('13 7/8');
	await expect(undo).toBeDisabled();

	await redo.click();
	await expect(field(page, READING)).toHaveValue('13 3/4');
	await page.keyboard.press('Control+Shift+z');
	await expect(field(page, 'Label on the bench, Outer, A left')).toHaveValue('9');
	await expect(redo).toBeDisabled();
});

test('a saved job opens again, and fields that the page does not know last', async ({ page }) => {
	const job = {
		format: 'coilnest-job/1',
		title: 'Shunter 2',
		stamp: { by: 'another tool' },
		coils: [
			{ id: 'outer', name: 'Outer', free: '13 15/16', heat: 'H-204', limits: { under: '1/8', note: 'x' } },
		],
		nests: [{ id: 'A', rack: 3, seats: [{ coil: 'outer', bin: 'red', readings: ['13 7/8'] }] }],
	};
	await openPage(page);
	await openFile(page, JSON.stringify(job));
	await field(page, 'Place 1, Outer, A').fill('13 3/4 full');

	const saved = await savedFile(page);
	const [nest] = job.nests;
	const seats = [{ coil: 'outer', bin: 'red', readings: ['13 3/4 full'] }];
	expect(JSON.parse(saved)).toEqual({ ...job, nests: [{ ...nest, seats }] });

	await button(page, 'New').click();
	await expect(field(page, 'Place 1, Outer, A')).toHaveCount(0);
	await openFile(page, saved);
	await expect(field(page, 'Place 1, Outer, A')).toHaveValue('13 3/4 full');
	expect(await savedFile(page)).toBe(saved);
});

const refused = [
	{ what: 'of a newer format', text: '{"format":"coilnest-job/2","coils":[]}', says: /later version/ },
	{
		what: 'that is broken off',
		text: '{"format":"coilnest-job/1","coils":[{"id":"ou',
		says: /This is no job file/,
	},
	{ what: 'of something else', text: '[1, 2, 3]', says: /a list — this is no job: .* such as/ },
];
for (const { what, text, says } of refused) {
	test(`a file ${what} is refused with a sentence, and nothing is lost`, async ({ page }) => {
		await openPage(page);
		await field(page, READING).fill('13 3/4');
		await openFile(page, text);
		await expect(page.getByText(says)).toBeVisible();
		await expect(field(page, READING)).toHaveValue('13 3/4');
		await button(page, 'Close').click();
		await expect(page.getByText(says)).toBeHidden();
		await page.reload();
		await expect(field(page, READING)).toHaveValue('13 3/4');
	});
}

test('another system of units keeps what was written', async ({ page }) => {
	await openPage(page);
	const left = coil(page, 'Outer, A left');
	await expect(left).toContainText('13 7/8 in');
	await button(page, 'Millimetres').click();
	await expect(button(page, 'Millimetres')).toHaveAttribute('aria-pressed', 'true');
	await expect(field(page, READING)).toHaveValue('13 7/8 in');
	await expect(field(page, 'Place 2, Outer, A left')).toHaveValue('13 7/8 in scant');
	await expect(left.getByRole('button', { name: /^measured, Outer, 352\.\d mm, working$/ })).toBeVisible();
	await expect(button(left, 'Good')).toBeVisible();

	await button(page, 'Inches').click();
	await expect(field(page, READING)).toHaveValue(/^13 7\/8( in)?$/);
	await expect(button(left, 'measured, Outer, 13 7/8 in, working')).toBeVisible();
	await button(page, 'Undo').click();
	await button(page, 'Undo').click();
	await expect(field(page, READING)).toHaveValue('13 7/8');
});

test('two tabs with one job lose neither side', async ({ page, context }) => {
	await openPage(page);
	const other = await context.newPage();
	await openPage(other);
	const changed = 'This job was changed in another tab';

	await field(page, READING).fill('13 3/4');
	await expect(other.getByText(changed)).toBeVisible();
	await expect(field(other, READING)).toHaveValue('13 7/8');
	await button(other, 'Show that one').click();
	await expect(field(other, READING)).toHaveValue('13 3/4');

	await field(other, READING).fill('13 13/16');
	await expect(page.getByText(changed)).toBeVisible();
	await field(page, READING).fill('14');
	await page.reload();
	await expect(field(page, READING)).toHaveValue('13 13/16');
	await button(page, 'Exchange with this one').click();
	await expect(field(page, READING)).toHaveValue('14');
});

/** A later version may write what this one does not know, and a hand may slip: both outlive every edit. */
test('what is odd in a file outlives edits of its shape', async ({ page }) => {
	await openPage(page);
	const odd = {
		format: 'coilnest-job/1',
		coils: [
			{ id: 'outer', name: 'Outer', free: '13 15/16', paint: 'grey' },
			{ id: 'inner', name: 'Inner', free: ['13 5/8'], limits: 'none' },
		],
		nests: [
			{ id: 'A left', seats: [{ coil: 'outer', readings: ['13 7/8', { by: 'Q' }], raise: true }] },
			'scrap',
		],
		frame: { weight: 3, wheels: [4] },
	};
	await openFile(page, JSON.stringify(odd));
	await button(page, 'Add a nest like the last').click();
	await button(page, 'Undo').click();
	await openDrawing(page, 'Outer');
	await field(page, 'Book figure, Outer').fill('14');
	const kept = JSON.parse(await savedFile(page)) as typeof odd;
	expect(kept.coils).toEqual([{ ...odd.coils[0], free: '14' }, odd.coils[1]]);
	expect(kept.nests[0]).toEqual(odd.nests[0]);
	expect(kept.frame).toEqual(odd.frame);

	await button(page, 'Add a nest like the last').click();
	const grown = JSON.parse(await savedFile(page)) as typeof odd;
	expect(grown.coils).toEqual(kept.coils);
	expect(grown.nests[0]).toEqual(odd.nests[0]);
	expect(grown.nests).toContain('scrap');
});
