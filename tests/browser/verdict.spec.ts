import {
	button,
	coil,
	DESKTOP,
	expect,
	expectNoViolation,
	field,
	line,
	openCoil,
	openDrawing,
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

test('what is painted first of a coil is what stands in the end, whatever nest it is in', async ({
	page,
}) => {
	await openPage(page);
	for (const name of ['Outer, A left', 'Outer, B right']) {
		await openCoil(page, name);
		// Coils of two nests have one mark: the note on it stands in each frame.
		await field(page, `Label on the bench, ${name}`).fill('twice');
		const frames = await field(page, `Place 1, ${name}`).evaluate(async (box: HTMLInputElement) => {
			const painted = (): Promise<number> => new Promise(requestAnimationFrame);
			const shown = (part: string): string =>
				box.closest('[data-coil]')?.querySelector(part)?.textContent.trim() ?? '';
			const all = (): string[] => [shown('[data-says]'), shown('[data-coil] > .says')];
			const frames: { text: string; first: string[]; last: string[] }[] = [];
			box.focus();
			for (const text of ['13 3/4', '13 7/8 scant', '12', '13 7/8']) {
				box.value = text;
				box.dispatchEvent(new InputEvent('input', { bubbles: true }));
				await painted();
				const first = all();
				await new Promise((done) => setTimeout(done, 400));
				frames.push({ text, first, last: all() });
			}
			return frames;
		});
		for (const { text, first, last } of frames) {
			const [verdict = '', problems = ''] = first;
			expect(verdict, `${name}, ${text}`).toContain('in');
			// What the drawing adds to the sentence comes behind it.
			expect(last[0]?.startsWith(verdict), `${name}, ${text}: ${verdict}; then ${last[0]}`).toBe(true);
			expect(problems, `${name}, ${text}`).toBe(last[1]);
			if (name === 'Outer, B right') expect(problems, text).toContain('twice');
		}
	}
});

test('beside the list a verdict stands in each frame in which the book figure is written', async ({
	page,
}) => {
	await page.setViewportSize(DESKTOP);
	await openPage(page);
	await openDrawing(page, 'Outer');
	const verdicts = await field(page, 'Book figure, Outer').evaluate(async (box: HTMLInputElement) => {
		const verdicts: string[] = [];
		for (const text of ['13 7/8', '13 15/16', '14']) {
			box.value = text;
			box.dispatchEvent(new InputEvent('input', { bubbles: true }));
			await new Promise(requestAnimationFrame);
			verdicts.push(document.querySelector('[data-says]')?.textContent.trim() ?? '');
			await new Promise((done) => setTimeout(done, 400));
		}
		return verdicts;
	});
	for (const verdict of verdicts) expect(verdict).toContain('the book figure; the limit is');
});
