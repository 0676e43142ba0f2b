import { button, coil, expect, field, line, openPage, test } from './page';

const READING = 'Place 1, Outer, A left';
const SAID = '13 17/16 — the fraction is more than a whole; did you mean 14 1/16?';

test('a fraction above a whole is told at its field, with an example', async ({ page }) => {
	await openPage(page);
	await field(page, READING).fill('13 17/16');
	await page.keyboard.press('Tab');

	await expect(field(page, READING)).toHaveAttribute('aria-invalid', 'true');
	await expect(field(page, READING)).toHaveAccessibleDescription(new RegExp(SAID.replace('?', '\\?')));
	await expect(coil(page, 'Outer, A left').getByText(SAID)).toBeInViewport();
	await expect(field(page, READING)).toHaveValue('13 17/16');
});

test('the focus goes where the person went, and stays while the error is cured', async ({ page }) => {
	await openPage(page);
	const reading = field(page, READING);
	await reading.fill('13 17/16');
	await page.keyboard.press('Tab');
	await expect(page.getByText(SAID)).toBeVisible();
	await expect(field(page, 'Place 2, Outer, A left')).toBeFocused();

	await page.keyboard.press('Shift+Tab');
	await page.keyboard.press('End');
	for (let each = 0; each < 5; each += 1) await page.keyboard.press('Backspace');
	await expect(reading).toBeFocused();
	await page.keyboard.type('7/8');
	await expect(reading).toHaveValue('13 7/8');
	await expect(reading).toBeFocused();
	await expect(reading).not.toHaveAttribute('aria-invalid');
	await expect(page.getByText(SAID)).toBeHidden();
});

test('an error while typing is not called before the typing ends', async ({ page }) => {
	await openPage(page);
	await field(page, READING).fill('13 17/');
	await expect(field(page, READING)).not.toHaveAttribute('aria-invalid');
	await field(page, READING).press('Enter');
	await expect(field(page, READING)).toHaveAttribute('aria-invalid', 'true');
});

test('the rest of the report stands beside an error', async ({ page }) => {
	await openPage(page);
	await field(page, READING).fill('13 17/16');
	await page.keyboard.press('Tab');
	await expect(page.getByText(SAID)).toBeVisible();

	await expect(button(coil(page, 'Outer, A left'), 'Read again')).toBeVisible();
	await expect(line(page, 'Inner, A left')).toContainText('Short');
	await expect(line(page, 'Inner, A right')).toContainText('Too close to call');
	await page.getByRole('link', { name: 'Nest' }).click();
	await expect(page.getByRole('img', { name: /^Section through the nest at 11 1\/2 in/ })).toBeVisible();

	await button(page, '1 to put right').click();
	await page.getByRole('group', { name: '1 to put right' }).getByRole('button').click();
	await expect(field(page, READING)).toBeFocused();
});
