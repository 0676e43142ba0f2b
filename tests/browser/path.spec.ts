import {
	AS_PHONE,
	bare,
	button,
	DESKTOP,
	expect,
	field,
	line,
	type Locator,
	onDisk,
	type Page,
	printed,
	test,
} from './page';
import {
	expectWhole,
	keysOf,
	type Loose,
	MOST_PRESSES,
	openJob,
	pad,
	READINGS,
	tally,
	unread,
	whole,
} from './whole';

/** A whole overhaul takes its time on a busy machine. */
const LONG_MS = 600_000;
/** A section has no more than this to go through by Tab. */
const MOST_TABS = 250;

/** How a person presses and writes: with a finger, or with keys alone. */
interface Hands {
	press(target: Locator): Promise<void>;
	write(target: Locator, text: string): Promise<void>;
	/** Writes the readings of the truck, one after the other. */
	readings(): Promise<void>;
}

class Finger implements Hands {
	constructor(readonly page: Page) {}

	async press(target: Locator): Promise<void> {
		await target.tap();
	}

	async write(target: Locator, text: string): Promise<void> {
		await target.tap();
		if ((await target.getAttribute('inputmode')) === 'none') {
			for (const key of keysOf(text)) await button(pad(this.page), key).tap();
			await button(pad(this.page), 'Done').tap();
		} else await target.fill(text);
	}

	async readings(): Promise<void> {
		let presses = 1;
		await button(tally(this.page), 'next empty reading').tap();
		for (const reading of READINGS) {
			for (const key of [...keysOf(reading), 'Next']) {
				await button(pad(this.page), key).tap();
				presses += 1;
			}
		}
		expect(presses).toBeLessThanOrEqual(MOST_PRESSES);
	}
}

class Keyboard implements Hands {
	constructor(readonly page: Page) {}

	/** Goes on by Tab until `target` has the focus. */
	async #reach(target: Locator): Promise<void> {
		await target.waitFor();
		const isThere = () => target.evaluate((one) => one === document.activeElement);
		for (let tabs = 0; !(await isThere()); tabs += 1) {
			expect(tabs, `Tab comes to ${target.toString()}`).toBeLessThan(MOST_TABS);
			await this.page.keyboard.press('Tab');
		}
	}

	async press(target: Locator): Promise<void> {
		await this.#reach(target);
		await this.page.keyboard.press('Enter');
	}

	async write(target: Locator, text: string): Promise<void> {
		await this.#reach(target);
		await this.page.keyboard.type(text);
	}

	async readings(): Promise<void> {
		await this.press(button(tally(this.page), 'next empty reading'));
		for (const reading of READINGS) {
			await this.page.keyboard.type(reading);
			await this.page.keyboard.press('Enter');
		}
	}
}

const HEAD = {
	Vehicle: 'Tipper',
	Number: '9',
	Place: 'Upper shed',
	'Measured by': 'A. N. Other',
	'Checked by': 'N. O. Body',
	'Manual, page': 'B, 14',
	'Which tape': 'shop 2',
};
const NOTES = 'Pins greased, one bolt wants a look';

/** The truck before anything of it is written but its drawings and the coils on the bench. */
function begun(): Loose {
	const { title, system, tape, coils, nests, bench } = unread();
	return { format: 'coilnest-job/1', title, system, tape, coils, nests, bench };
}

/** What stands in the lines of the list: label, readings, verdict. */
async function lines(page: Page): Promise<string[]> {
	await expect(page.locator('[data-list] article')).toHaveCount(4);
	return page.locator('[data-list] article > button').allInnerTexts();
}

async function overhaul(page: Page, hands: Hands, paper: string): Promise<void> {
	const go = (section: string) => hands.press(page.getByRole('link', { name: section, exact: true }));
	const asked = (name: string) => button(page, name);
	await openJob(page, begun());
	const onPaper: string[] = [];

	// Readings, verdicts, tally.
	await hands.readings();
	await expectWhole(page);

	// What a coil looks like goes before what the tape says.
	await hands.press(line(page, 'Inner, A left'));
	const condition = page.getByRole('group', { name: 'Condition, Inner, A left' });
	await hands.press(button(condition, 'Cracked'));
	await expect(line(page, 'Inner, A left')).toContainText('Scrap');
	await expect(tally(page).getByRole('listitem')).toHaveText(['5 good', '1 scrap', '2 to decide']);
	onPaper.push('Cracked');

	// The frame, and the shims that even it out.
	await go('Level');
	await hands.press(asked('Set the frame on these nests'));
	await hands.write(field(page, 'Weight on the nests'), '9600 lb');
	await hands.write(field(page, 'Nests apart, along'), '72');
	await hands.write(field(page, 'Nests apart, across'), '56');
	for (const [at, shim] of ['1/16', '1/8', '1/4'].entries()) {
		await hands.write(field(page, `Shim in stock ${at + 1}`), shim);
	}
	await expect(page.getByText(/without it no plan is made/)).toBeInViewport();
	await hands.write(field(page, 'Largest stack'), '1/2');
	const steps = page.getByRole('list', { name: 'What to do, in this order' }).getByRole('listitem');
	await expect(steps).not.toHaveCount(0);
	await hands.press(asked('Show the frame with them'));
	await expect(page.getByRole('table', { name: 'The nests as they would stand' })).toBeVisible();

	// Coils of the bench where they belong; the shims that are then wanted are fitted.
	const coilsToMove = page.getByRole('list', { name: 'What to do', exact: true }).getByRole('listitem');
	await expect(coilsToMove).not.toHaveCount(0);
	await hands.press(asked('Place them so'));
	await expect(coilsToMove).toHaveCount(0);
	await expect(steps).not.toHaveCount(0);
	await hands.press(asked('Write these shims into the job'));
	await expect(steps).toHaveCount(0);
	await expect(page.getByText('saved', { exact: true })).toBeVisible();
	const { frame } = JSON.parse((await onDisk(page))['job']?.text ?? '') as Loose;
	const shims = frame['supports'].flatMap((one: Loose) => (one['shim'] ? [one['shim']] : []));
	expect(shims).not.toEqual([]);
	onPaper.push(...shims);

	// Who did it.
	await go('Record');
	for (const [name, text] of Object.entries(HEAD)) await hands.write(field(page, name), text);
	await hands.press(asked('Today'));
	await hands.write(field(page, 'Notes'), NOTES);
	const day = await field(page, 'Date').inputValue();
	expect(day).toMatch(/^\d{4}-\d\d-\d\d$/);
	onPaper.push(...Object.values(HEAD), NOTES, day);

	// Nothing is lost between screen and paper.
	await go('Measure');
	const before = await lines(page);
	expect(before).toHaveLength(8);
	const words = await page.locator('[data-list] article > button .word').allInnerTexts();
	const fitted = await page.locator('[data-list] article > button .who').allInnerTexts();
	onPaper.push(...READINGS, ...words, ...fitted.flatMap((who) => who.split(/\s+/)));
	onPaper.push(...whole()['nests'].flatMap((nest: Loose) => [nest['id'], nest['seats'][0].label]));
	const letters = bare(await printed(page, paper));
	expect(onPaper.filter((one) => bare(one) !== '' && !letters.includes(bare(one)))).toEqual([]);

	// Nor by a reload, nor by another job.
	await page.reload();
	await expect.poll(() => lines(page)).toEqual(before);
	const isPhone = await button(page, 'Job').isVisible();
	if (isPhone) await hands.press(button(page, 'Job'));
	await hands.press(asked('New').first());
	await hands.write(field(page, 'Title of the job'), 'Tender 3');
	await go('Record');
	const shelf = page.getByRole('list', { name: 'Jobs on the shelf' });
	await expect(shelf).toContainText('Upper shed');
	await hands.press(shelf.getByRole('button', { name: /: open$/ }));
	await expect(field(page, 'Vehicle')).toHaveValue('Tipper');
	await expect(field(page, 'Notes')).toHaveValue(NOTES);
	await expect(shelf).toContainText('Tender 3');
	await go('Measure');
	await expect.poll(() => lines(page)).toEqual(before);
	await go('Level');
	await expect(field(page, 'Nests apart, along')).toHaveValue('72');
	await expect(steps).toHaveCount(0);
}

test.describe('by touch', () => {
	test.use(AS_PHONE);

	test('the whole truck, from the first reading to the shelf', async ({ page }, info) => {
		test.setTimeout(LONG_MS);
		await overhaul(page, new Finger(page), info.outputPath('truck.pdf'));
	});
});

test.describe('by keys alone', () => {
	test.use({ viewport: DESKTOP });

	test('the whole truck, from the first reading to the shelf', async ({ page }, info) => {
		test.setTimeout(LONG_MS);
		await overhaul(page, new Keyboard(page), info.outputPath('truck.pdf'));
	});
});
