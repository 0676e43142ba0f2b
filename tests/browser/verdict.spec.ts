import {
	button,
	coil,
	expect,
	expectNoViolation,
	field,
	line,
	openCoil,
	openPage,
	PHONE,
	test,
	tooSmall,
} from './page';

test.use({ viewport: PHONE, hasTouch: true, isMobile: true });

test('a slipped reading is named at its place, and counts once it is confirmed', async ({ page }) => {
	await openPage(page);
	const outer = await openCoil(page, 'Outer, A left');
	await field(page, 'Place 2, Outer, A left').fill('15 7/8');
	await expect(button(outer, 'Read again')).toBeVisible();
	await expect(outer.getByText(/It may have been 13\s*7\/8\s*in/).first()).toBeVisible();
	await expectNoViolation(page, 'a questioned reading');
	await outer.getByRole('button', { name: /^Read again: it is/ }).tap();
	await expect(outer.getByText('It may have been')).toHaveCount(0);
	await expect(button(outer, 'Good')).toHaveCount(0);
});

test('a cracked coil is scrap, and is named where its load is used', async ({ page }) => {
	await openPage(page);
	await openCoil(page, 'Inner, A left');
	const inner = page.getByRole('group', { name: 'Condition, Inner, A left', exact: true });
	await button(inner, 'Cracked').tap();
	await expect(coil(page, 'Inner, A left').getByText('Scrap', { exact: true })).toBeVisible();
	await expect(line(page, 'Inner, A left')).toContainText('Scrap');
	await expect(line(page, 'Inner, A left')).toContainText('cracked');
	await button(inner, 'Other').tap();
	await field(page, 'Condition in a word, Inner, A left').fill('bent');
	await expect(coil(page, 'Inner, A left').getByText(/^Bent: scrap, whatever the tape says/)).toBeVisible();
	expect(await tooSmall(page)).toEqual([]);
	await page.getByRole('link', { name: 'Nest' }).tap();
	await expect(page.getByText('though not good: 7a (Inner): scrap, bent')).toBeVisible();
});
