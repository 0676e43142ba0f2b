import {
	AS_PHONE,
	button,
	contentWidth,
	DESKTOP,
	expect,
	expectNoViolation,
	field,
	openPage,
	type Page,
	test,
} from './page';

const boxes = (page: Page, nest: string) =>
	page.getByRole('region', { name: `Boxes of ${nest} in their guides` });

/** Opens the boxes of a nest by its menu. */
async function measureBox(page: Page, nest: string): Promise<void> {
	await button(page, `More for nest ${nest}`).click();
	await button(page, 'Measure a box in its guides').click();
	await expect(boxes(page, nest)).toBeVisible();
}

test.describe('at a keyboard', () => {
	test.use({ viewport: DESKTOP });

	test('a box is measured, judged and drawn, and a bad size is named at its field', async ({ page }) => {
		await openPage(page);
		await measureBox(page, 'A left');
		await field(page, 'Opening, top, Box, along').focus();
		await page.keyboard.type('8 1/2');
		await field(page, 'Box, top, Box, along').focus();
		await page.keyboard.type('8 1/4');
		await field(page, 'Least clearance, Box, along').focus();
		await page.keyboard.type('1/2');
		await field(page, 'Marks of the gauge, Box, along').focus();
		await page.keyboard.type('1/64');
		await page.keyboard.press('Tab');
		const of = boxes(page, 'A left');
		await expect(of.getByRole('status').filter({ hasText: 'Tight.' })).toBeVisible();
		await expect(of.getByRole('img')).toHaveAccessibleName(/1\/4 in clear all over/);
		await field(page, 'Opening, top, Box, along').fill('8 65/64');
		await page.keyboard.press('Tab');
		await expect(field(page, 'Opening, top, Box, along')).toHaveAttribute('aria-invalid', 'true');
		await expect(field(page, 'Box, top, Box, along')).toHaveValue('8 1/4');
	});
});

test.describe('on a telephone', () => {
	test.use(AS_PHONE);

	test('the pinched box of the demo is seen with what cures it, and nothing is cut', async ({
		page,
	}, info) => {
		await openPage(page);
		await page.getByText('Box in its guides').tap();
		const of = boxes(page, 'B left');
		await expect(of.getByText(/Its way is pinched/)).toBeVisible();
		await expect(of.getByText(/Two new liners of/)).toBeVisible();
		await expectNoViolation(page, 'a box in its guides');
		await of.screenshot({ path: info.outputPath('box.png') });
		for (const width of [390, 320]) {
			await page.setViewportSize({ width, height: 844 });
			expect(await contentWidth(page)).toBeLessThanOrEqual(width);
		}
	});

	test('the worn pad of the demo is seen in Level', async ({ page }, info) => {
		await openPage(page, 'Level');
		const pads = page.locator('details').filter({ hasText: /^B right/ });
		await pads.locator('summary').first().tap();
		await expect(pads.getByText(/Pad is worn by/)).toBeVisible();
		await expectNoViolation(page, 'Level with pads');
		await pads.screenshot({ path: info.outputPath('pad.png') });
		expect(await contentWidth(page)).toBeLessThanOrEqual(390);
	});
});
