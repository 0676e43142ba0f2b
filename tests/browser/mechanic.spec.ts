import {
	AS_PHONE,
	button,
	coil,
	DESKTOP,
	expect,
	field,
	type Locator,
	openCoil,
	openDrawing,
	openPage,
	type Page,
	test,
} from './page';

const MOST_PRESSES = 20;

/** Counts what the hands do. */
class Hands {
	presses = 0;

	constructor(readonly page: Page) {}

	async tap(target: Locator): Promise<void> {
		this.presses += 1;
		await target.tap();
	}

	async press(...keys: string[]): Promise<void> {
		for (const key of keys) {
			this.presses += 1;
			await this.page.keyboard.press(key);
		}
	}
}

/** One place is too close to call; another, nearer the book, settles it. */
async function expectGoodAndKept(page: Page): Promise<void> {
	await expect(button(coil(page, 'Outer, Nest 1'), 'Too close to call')).toBeInViewport();
	await expect(coil(page, 'Outer, Nest 1').getByText('turn the coil and read again').first()).toBeAttached();
	await field(page, 'Place 2, Outer, Nest 1').fill('13 15/16');
	await expect(button(coil(page, 'Outer, Nest 1'), 'Good')).toBeInViewport();
	await page.reload();
	await openDrawing(page, 'Outer');
	await openCoil(page, 'Outer, Nest 1');
	await expect(field(page, 'Book figure, Outer')).toHaveValue('13 15/16');
	await expect(field(page, 'Limit ±, Outer')).toHaveValue('1/8');
	await expect(field(page, 'Place 1, Outer, Nest 1')).toHaveValue('13 7/8');
	await expect(field(page, 'Place 2, Outer, Nest 1')).toHaveValue('13 15/16');
	await expect(button(coil(page, 'Outer, Nest 1'), 'Good')).toBeVisible();
}

test.describe('on a phone', () => {
	test.use(AS_PHONE);

	test('three figures by touch give the verdict', async ({ page }) => {
		await openPage(page);
		const hands = new Hands(page);
		const keys = page.getByRole('group', { name: /^Keys for/ });
		const type = async (...names: string[]) => {
			for (const name of names) await hands.tap(button(keys, name));
		};

		await hands.tap(button(page, 'Clear it and start my own'));
		await expect(field(page, 'Book figure, Outer')).toBeFocused();
		await type('1', '3', '15/16', 'Next');
		await expect(field(page, 'Limit ±, Outer')).toBeFocused();
		await type('1/8', 'Next');
		await expect(field(page, 'Place 1, Outer, Nest 1')).toBeFocused();
		await type('1', '3', '7/8');

		expect(hands.presses).toBeLessThanOrEqual(MOST_PRESSES);
		await expectGoodAndKept(page);
	});
});

test.describe('at a keyboard', () => {
	test.use({ viewport: DESKTOP });

	test('two figures and the mark on the tape give the verdict', async ({ page }) => {
		await openPage(page);
		const hands = new Hands(page);

		await hands.press('Tab');
		await expect(button(page, 'Start my own job')).toBeFocused();
		await hands.press('Enter', ...'13 15/16', 'Enter');
		await expect(field(page, 'Limit ±, Outer')).toBeFocused();
		await hands.press(...'1/8', 'Enter');
		await expect(field(page, 'Place 1, Outer, Nest 1')).toBeFocused();
		await hands.press('ArrowDown', 'ArrowDown', 'ArrowDown');

		expect(hands.presses).toBeLessThanOrEqual(MOST_PRESSES);
		await expectGoodAndKept(page);
	});

	test('the keys write in no field that has left the page', async ({ page }) => {
		await openPage(page);
		await openDrawing(page, 'Outer');
		const book = field(page, 'Book figure, Outer');
		const was = await book.inputValue();
		await book.focus();
		const keys = page.getByRole('group', { name: /^(Keys for|Sixteenth keys)/ });
		await expect(keys).toHaveAccessibleName('Keys for Book figure, Outer');
		const drawing = page.getByRole('group', { name: 'Drawing of Outer', exact: true });
		await button(drawing, 'Close').click();
		await expect(book).toHaveCount(0);
		await button(keys, '5/8').click({ force: true });
		await openDrawing(page, 'Outer');
		await expect(book).toHaveValue(was);
	});
});
