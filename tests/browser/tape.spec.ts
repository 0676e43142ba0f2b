import { button, coil, expect, field, type Locator, openCoil, openPage, type Page, test } from './page';

const READING = 'Place 1, Outer, A left';

interface Drawn {
	/** Lengths at the drawn mark and in the middle of its band of doubt, by the scale of the strip's ends. */
	mark: number;
	middle: number;
	pixelsAnInch: number;
}

/** What the drawing shows, measured on the screen; the strip's ends are its least and most value. */
async function drawn(tape: Locator): Promise<Drawn> {
	return tape.evaluate((strip) => {
		const box = strip.getBoundingClientRect();
		const least = Number(strip.getAttribute('aria-valuemin'));
		const pixelsAnInch = box.width / (Number(strip.getAttribute('aria-valuemax')) - least);
		const at = (part: string): number => {
			const drawn = strip.querySelector(part)?.getBoundingClientRect();
			return drawn ? least + (drawn.left + drawn.width / 2 - box.left) / pixelsAnInch : NaN;
		};
		return { mark: at('.reading'), middle: at('.doubt'), pixelsAnInch };
	});
}

/** A pixel of the strip is some hundredth of an inch. */
const HALF_A_PIXEL = 0.004;

/** The field, the words and the drawing say one thing. */
async function expectMarkAt(page: Page, tape: Locator, text: string, inches: number): Promise<void> {
	await expect(field(page, READING)).toHaveValue(text);
	await expect(tape).toHaveAttribute('aria-valuetext', text);
	await expect(tape).toContainText(text);
	expect(Number(await tape.getAttribute('aria-valuenow'))).toBeCloseTo(inches, 9);
	await expect
		.poll(async () => {
			const { mark, middle } = await drawn(tape);
			return Math.max(Math.abs(mark - inches), Math.abs(middle - inches));
		})
		.toBeLessThan(HALF_A_PIXEL);
}

test.beforeEach(async ({ page }) => {
	await openPage(page);
	await field(page, READING).focus();
});

test('arrow keys move the mark from stop to stop and write the reading', async ({ page }) => {
	const tape = coil(page, 'Outer, A left').getByRole('slider');
	await expectMarkAt(page, tape, '13 7/8', 13.875);
	await tape.focus();
	const stops: [key: string, text: string, inches: number][] = [
		['ArrowRight', '13 7/8 full', 13 + 57 / 64],
		['ArrowUp', '13 15/16 scant', 13 + 59 / 64],
		['ArrowRight', '13 15/16', 13.9375],
		['ArrowRight', '13 15/16 full', 13 + 61 / 64],
		['ArrowLeft', '13 15/16', 13.9375],
		['ArrowDown', '13 15/16 scant', 13 + 59 / 64],
		['PageUp', '14 15/16 scant', 14 + 59 / 64],
		['PageDown', '13 15/16 scant', 13 + 59 / 64],
	];
	for (const [key, text, inches] of stops) {
		await page.keyboard.press(key);
		await expectMarkAt(page, tape, text, inches);
	}
});

test('a drag moves the mark with the pointer, and is one step back', async ({ page }) => {
	const tape = coil(page, 'Outer, A left').getByRole('slider');
	const { pixelsAnInch } = await drawn(tape);
	const box = await tape.boundingBox();
	const from = Number(await tape.getAttribute('aria-valuemin'));
	if (box === null) throw new Error('the tape is not drawn');
	const x = (inches: number) => box.x + (inches - from) * pixelsAnInch;
	const y = box.y + box.height / 2;

	await page.mouse.move(x(13.875), y);
	await page.mouse.down();
	for (const sixteenths of [14, 12, 10, 7, 4]) await page.mouse.move(x(13 + sixteenths / 16), y);
	await expect(field(page, READING)).toHaveValue('13 1/4');
	await page.mouse.up();
	await expectMarkAt(page, tape, '13 1/4', 13.25);
	await expect(button(coil(page, 'Outer, A left'), 'Good')).toBeHidden();

	await button(page, 'Undo').click();
	await expect(field(page, READING)).toHaveValue('13 7/8');
	await expect(button(page, 'Undo')).toBeDisabled();
});

test('what is typed is what the tape shows', async ({ page }) => {
	const tape = coil(page, 'Outer, A left').getByRole('slider');
	for (const [text, inches] of [
		['14 1/16', 14.0625],
		['13-7/16"', 13.4375],
		["1' 1 3/4", 13.75],
	] as const) {
		await field(page, READING).fill(text);
		await expectMarkAt(page, tape, text, inches);
	}
	await field(page, READING).fill('');
	await expect(tape).toHaveAttribute('aria-valuetext', 'no reading');
});

test('each tape says to a screen reader whose it is', async ({ page }) => {
	await expect(page.getByRole('slider')).toHaveCount(1);
	await expect(page.getByRole('slider', { name: /place 1, Outer, A left/i })).toBeVisible();
	await openCoil(page, 'Inner, A right');
	await field(page, 'Place 2, Inner, A right').focus();
	await expect(page.getByRole('slider', { name: /place 2, Inner, A right/i })).toBeVisible();
});
