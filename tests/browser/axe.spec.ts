import {
	AS_PHONE,
	button,
	expect,
	expectNoViolation,
	field,
	onEachDevice,
	openBlank,
	openCoil,
	openPage,
	test,
} from './page';

onEachDevice(() => {
	test('axe finds nothing, nor with a working, an error or the keys open', async ({ page }) => {
		await openPage(page);
		await expectNoViolation(page, 'Measure');

		await openPage(page, 'Nest');
		await expectNoViolation(page, 'Nest');
		const figures = page.getByRole('table', { name: 'Figures at this height' });
		await figures.getByRole('button').first().click();
		await expect(page.getByRole('group', { name: 'Working' })).toBeVisible();
		await expectNoViolation(page, 'Nest with a working');

		await openPage(page);
		await openCoil(page, 'Outer, A left');
		await expectNoViolation(page, 'Measure with a coil open');
		await field(page, 'Place 1, Outer, A left').fill('13 17/16');
		await field(page, 'Place 2, Outer, A left').focus();
		await expect(page.getByText('did you mean 14 1/16?')).toBeVisible();
		await expectNoViolation(page, 'Measure with an error and the keys');
	});
});

test.describe('phone, dark', () => {
	test.use({ ...AS_PHONE, colorScheme: 'dark' });

	test('axe finds nothing in a blank job, nor in a menu', async ({ page }) => {
		await openBlank(page);
		await button(page, 'More for Outer, Nest 1').click();
		await expect(button(page, 'Remove this coil')).toBeVisible();
		await expectNoViolation(page, 'a menu in a blank Measure');
		await page.keyboard.press('Escape');

		await openPage(page, 'Nest');
		await expect(page.getByRole('heading', { name: /are not known yet/ })).toBeVisible();
		await expectNoViolation(page, 'a blank Nest');
	});
});
