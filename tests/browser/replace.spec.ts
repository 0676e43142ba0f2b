import { execFileSync } from 'node:child_process';
import {
	AS_PHONE,
	button,
	contentWidth,
	DESKTOP,
	expect,
	expectNoViolation,
	field,
	type Locator,
	onEachDevice,
	openBlank,
	openPage,
	type Page,
	PHONE,
	printedAlone,
	test,
	tooSmall,
} from './page';

const comparison = (page: Page): Locator =>
	page.getByRole('table', { name: 'What is asked, and what is offered' });
const requirement = (page: Page, name: string): Locator =>
	comparison(page)
		.getByRole('row')
		.filter({ has: page.getByRole('rowheader', { name, exact: true }) });
const designs = (page: Page): Locator => page.getByRole('table', { name: 'Drawings that meet the need' });
const map = (page: Page): Locator => page.getByRole('slider', { name: 'Cell of the map' });
const pick = (page: Page, name: string): Locator => page.getByRole('combobox', { name });

/** Opens Replace on the demo with its invented offer. */
async function openOffer(page: Page): Promise<void> {
	await openPage(page, 'Replace');
	await expect(field(page, 'Name of candidate 1')).toHaveValue(/\(invented\)$/);
	await expect(comparison(page)).toBeVisible();
}

/** Writes a need for which there are drawings. */
async function need(page: Page): Promise<void> {
	for (const [name, text] of [
		['Load', '3000 lb'],
		['at the height', '11'],
		['Rate', '1500 lb/in'],
		['Bore of the pocket', '6 1/2'],
		['Post inside', '1 1/2'],
	] as const) {
		await field(page, `${name}, of the need`).fill(text);
	}
	await pick(page, 'Steel it is made of').selectOption('en-10089');
	await pick(page, 'Ends it is to have').selectOption('tapered-ground');
	await page.getByText(/^More of the need/).click();
	await field(page, 'Stress at load, of the need').fill('80 000 psi');
	await field(page, 'Stress at solid, of the need').fill('130 000 psi');
	await expect(designs(page)).toBeVisible();
}

async function openJob(page: Page, job: object): Promise<void> {
	const choice = page.waitForEvent('filechooser');
	await button(page, 'Open').click();
	const buffer = Buffer.from(JSON.stringify({ format: 'coilnest-job/1', ...job }));
	await (await choice).setFiles({ name: 'job.json', mimeType: 'application/json', buffer });
}

const ORIGINAL = {
	id: 'outer',
	name: 'Outer',
	bar: '1',
	outside: '6',
	turns: '7 1/2',
	ends: 'tapered-ground',
	hand: 'right',
	steel: 'en-10089',
	free: '13',
};
const NEST = {
	id: 'A left',
	working_height: '11',
	seats: [{ coil: 'outer', readings: ['13'] }],
};

test.describe('at a keyboard', () => {
	test.use({ viewport: DESKTOP });

	test('a copy of the original is made worse, and the comparison says so', async ({ page }) => {
		await openPage(page, 'Replace');
		await openJob(page, { coils: [ORIGINAL], nests: [NEST] });
		await button(page, 'Add a copy of the original').focus();
		await page.keyboard.press('Enter');
		await expect(field(page, 'Name of candidate 1')).toBeFocused();
		await page.keyboard.press('ControlOrMeta+A');
		await page.keyboard.type('Quote 7');
		const heading = page.locator('.head').getByRole('heading');
		await expect(heading).toBeVisible();
		await field(page, 'Bore of the pocket').fill('6 1/4');
		await expect(requirement(page, 'Outside at solid')).not.toContainText('▲');
		await field(page, 'Outside, Quote 7').fill('6 1/2');
		await expect(requirement(page, 'Outside at solid')).toContainText('▲');
		await expect(requirement(page, 'Outside at solid')).toContainText('6.5');
		await expect(heading).toContainText('▲');
		await requirement(page, 'Outside at solid')
			.getByRole('button', { name: /Not met/ })
			.press('Enter');
		await expect(page.getByRole('group', { name: 'Working' })).toBeVisible();
		await page.keyboard.press('Escape');
		await button(page, 'Undo').press('Enter');
		await expect(requirement(page, 'Outside at solid')).not.toContainText('▲');
	});

	test('a need leads to a drawing, the map is read with keys, and the drawing is taken', async ({ page }) => {
		await openPage(page, 'Replace');
		await openJob(page, { coils: [ORIGINAL], nests: [NEST] });
		await need(page);
		await map(page).focus();
		await expect(map(page)).toHaveAttribute(
			'aria-valuetext',
			/^Bar .+ active turns: meets the need, drawing 1\.$/,
		);
		const before = await map(page).getAttribute('aria-valuetext');
		await page.keyboard.press('Home');
		await expect(map(page)).not.toHaveAttribute('aria-valuetext', before ?? '');
		await expect(map(page)).not.toHaveAttribute('aria-valuetext', /meets the need/);
		await page.keyboard.press('PageUp');
		const said = await map(page).getAttribute('aria-valuetext');
		await expect(page.locator('[aria-live=polite]').filter({ hasText: said ?? 'nothing' })).toBeVisible();

		const bar = await designs(page).getByRole('row').nth(1).getByRole('cell').first().innerText();
		await button(page, 'Use as candidate drawing 1').press('Enter');
		await expect(field(page, 'Name of candidate 1')).toBeFocused();
		const taken = await page
			.getByRole('textbox', { name: /^Bar, / })
			.first()
			.inputValue();
		expect(taken.replace(/\s/gu, '')).toContain(
			bar
				.normalize('NFKC')
				.replaceAll('⁄', '/')
				.replace(/\s|in|mm/gu, ''),
		);
		await expect(comparison(page)).toBeVisible();
		await button(page, 'Undo').click();
		await expect(comparison(page)).toBeHidden();
		await expect(designs(page)).toBeVisible();
	});
});

test.describe('on a phone', () => {
	test.use(AS_PHONE);

	test('an invented offer is judged on a first visit', async ({ page }) => {
		await openPage(page);
		await page.getByRole('link', { name: 'Replace' }).tap();
		await expect(comparison(page)).toBeVisible();
		await expect(field(page, 'Bore of the pocket')).not.toHaveValue('');
		await expect(page.getByText('invented demo', { exact: true })).toBeVisible();
		await expect(page.getByRole('heading', { name: 'Take care' }).first()).toBeVisible();
	});

	test('what is pressed is as large as a finger', async ({ page }) => {
		await openOffer(page);
		await need(page);
		expect(await tooSmall(page)).toEqual([]);
	});

	test('drawings, pairs and the nest are read without drawing a table aside', async ({ page }) => {
		await openOffer(page);
		await need(page);
		await pick(page, 'One coil or a pair').selectOption('yes');
		await expect(page.getByRole('table', { name: 'Pairs that meet the need' })).toBeVisible();
		await page.getByText('The map in words').tap();
		const aside = await page
			.locator('.scroll:visible')
			.evaluateAll((all) =>
				all
					.filter((one) => one.scrollWidth > one.clientWidth)
					.map((one) => one.querySelector('table')?.ariaLabel),
			);
		expect(aside).toEqual([]);
		await expect(designs(page).getByRole('row').nth(1)).toContainText('Use as candidate');
	});

	test('a finger on the map tells what stands there', async ({ page }) => {
		await openPage(page, 'Replace');
		await need(page);
		await map(page).scrollIntoViewIfNeeded();
		await map(page).tap({ position: { x: 4, y: 4 } });
		await expect(page.getByText(/^Bar .+ active turns: /)).toBeVisible();
	});
});

test('the bar of sections holds its words on a narrow phone', async ({ page }) => {
	await page.setViewportSize({ width: 360, height: 740 });
	await openPage(page, 'Replace');
	const links = page.getByRole('navigation', { name: 'Sections' }).getByRole('link');
	await expect(links).toHaveText(['Measure', 'Nest', 'Level', 'Replace', 'Learn', 'Record']);
	const cut = await links.evaluateAll((all) => all.filter((one) => one.scrollWidth > one.clientWidth).length);
	expect(cut).toBe(0);
});

test('what cannot be is told at its field, and the rest stands', async ({ page }) => {
	await page.setViewportSize(DESKTOP);
	await openOffer(page);
	await need(page);
	await page.getByText(/^More limits/).click();
	for (const [name, text, says] of [
		['Bore of the pocket', 'wide', /there is no number in it/],
		['Rate, least', '500 lb', /unit of/],
		['Free height, Thicker bar (invented)', '-13', /below zero/],
		['Load, of the need', '11 in', /unit of/],
		['Bore of the pocket, of the need', '0', /nothing|least|more/],
	] as const) {
		const before = await field(page, name).inputValue();
		await field(page, name).fill(text);
		await page.keyboard.press('Tab');
		await expect(field(page, name)).toHaveAttribute('aria-invalid', 'true');
		await expect(field(page, name)).toHaveAccessibleDescription(says);
		await expect(field(page, name)).toHaveValue(text);
		await expect(page.getByRole('heading', { name: 'Order sheet' })).toBeVisible();
		await field(page, name).fill(before);
		await expect(field(page, name)).not.toHaveAttribute('aria-invalid');
	}
});

const INNER = {
	...ORIGINAL,
	id: 'inner',
	name: 'Inner',
	bar: '5/8',
	outside: '3 3/8',
	turns: '11 1/2',
	hand: 'left',
};
const TWO = [{ coil: 'outer', readings: ['12 7/8'] }, { coil: 'inner' }];
const NESTS = ['A left', 'A right'].map((id) => ({
	id,
	working_height: '11',
	seats: TWO,
}));
const verdict = (page: Page): Locator => page.getByRole('group', { name: 'Verdict' });

test('the verdict stands first, in a word and a shape of its own, and stays in sight', async ({ page }) => {
	await page.setViewportSize(DESKTOP);
	await openPage(page, 'Replace');
	await openJob(page, {
		coils: [ORIGINAL],
		nests: [NEST],
		replace: { original: 'outer', candidates: [{ ...ORIGINAL, id: 'offer 1', name: 'Quote 7' }] },
	});
	for (const size of [DESKTOP, PHONE]) {
		await page.setViewportSize(size);
		await expect(verdict(page).getByRole('heading')).toHaveText('◇ As drawn; tolerances not given');
		const first = page.locator('.judged > *').first();
		await expect(first).toHaveAccessibleName('Verdict');
		// Neither the colour of what is met nor of what is not.
		const colours = await page.evaluate(() => {
			const of = (name: string) => {
				const probe = document.body.appendChild(document.createElement('i'));
				probe.style.color = `var(${name})`;
				const { color } = getComputedStyle(probe);
				probe.remove();
				return color;
			};
			const word = document.querySelector('[aria-label=Verdict] b');
			return {
				word: word ? getComputedStyle(word).color : '',
				good: of('--good'),
				mark: of('--mark'),
			};
		});
		expect([colours.good, colours.mark]).not.toContain(colours.word);
		await requirement(page, 'Solid height').scrollIntoViewIfNeeded();
		await expect(verdict(page)).toBeInViewport();
		await field(page, 'Load, of the need').scrollIntoViewIfNeeded();
		await field(page, 'Load, of the need').evaluate((one) => one.scrollIntoView());
		await expect(verdict(page)).not.toBeInViewport();
	}
});

test('a quote is written as makers write it', async ({ page }) => {
	await page.setViewportSize(DESKTOP);
	await openPage(page, 'Replace');
	await openJob(page, { coils: [ORIGINAL], nests: [NEST] });
	await button(page, 'Add a copy of the original').click();
	for (const [name, text] of [
		['Free height ±, Offer 1', '+1/16 -0'],
		['Turns ±, Offer 1', '2 %'],
		['Bar ±, Offer 1', '0.005'],
		['Diameter ±, Offer 1', '1/32'],
		['Height, stated load 1, Offer 1', '11'],
		['Load there, stated load 1, Offer 1', '3260 lb'],
		['Load ±, stated load 1, Offer 1', '5 %'],
	] as const) {
		await field(page, name).fill(text);
	}
	await page.keyboard.press('Tab');
	await expect(page.locator('[aria-invalid]')).toHaveCount(0);
	// 13 in, a sixteenth more and no less.
	await expect(requirement(page, 'Free height')).toContainText('(13 to 13.063)');
	await field(page, 'Free height ±, Offer 1').fill('+1/16');
	await page.keyboard.press('Tab');
	await expect(field(page, 'Free height ±, Offer 1')).toHaveAccessibleDescription(/only one way/);
	await field(page, 'Rate in the book ±, Offer 1').fill('50 lb/in');
	await page.getByText(/^More sizes/).click();
	await field(page, 'Rate in the book, Offer 1').fill('3000 lb/in');
	await page.keyboard.press('Tab');
	await expect(field(page, 'Rate in the book, Offer 1')).toHaveAccessibleDescription(
		/does not go with the sizes/,
	);
});

test('a requirement is waived with a reason, which prints', async ({ page }, testInfo) => {
	await page.setViewportSize(DESKTOP);
	await openPage(page, 'Replace');
	await openJob(page, { coils: [ORIGINAL], nests: [NEST] });
	await button(page, 'Add a copy of the original').click();
	await page.getByRole('combobox', { name: 'Hand', exact: true }).selectOption('left');
	await expect(verdict(page)).toContainText('No replacement');
	await button(page, 'Waive Hand').press('Enter');
	await expect(field(page, 'Reason to waive: Hand')).toBeFocused();
	await page.keyboard.type('stands alone, either hand does');
	await expect(verdict(page)).not.toContainText('No replacement');
	await expect(page.getByText('Waived: hand (for this candidate alone).').first()).toBeVisible();
	const printed = bare(await printedAlone(page, testInfo.outputPath('replace.pdf')));
	expect(printed).toContain(bare('Waived for this candidate alone: stands alone, either hand does'));
	expect(printed).toContain(bare('◇ As drawn; tolerances not given'));
	expect(printed).not.toContain(bare('Waive Hand'));
	await field(page, 'Reason to waive: Hand').fill('');
	await expect(verdict(page)).toContainText('No replacement');
});

test('one seat alone, or all that hold the coil', async ({ page }) => {
	await page.setViewportSize(DESKTOP);
	await openPage(page, 'Replace');
	await openJob(page, { coils: [ORIGINAL, INNER], nests: NESTS });
	await pick(page, 'Which seats').selectOption('1');
	await expect(pick(page, 'Which seats').getByRole('option', { selected: true })).toHaveText(
		'seat 1 of A left alone',
	);
	await expect(pick(page, 'In which nest')).toHaveValue('A left');
	await button(page, 'Undo').click();
	await expect(pick(page, 'Which seats')).toHaveValue('');
	await expect(pick(page, 'In which nest')).toHaveValue('');
});

test('with which factor a stress is meant is chosen and named', async ({ page }) => {
	await page.setViewportSize(DESKTOP);
	await openPage(page, 'Replace');
	await openJob(page, { coils: [ORIGINAL], nests: [NEST] });
	await button(page, 'Add a copy of the original').click();
	await page.getByText(/^More limits/).click();
	await field(page, 'Stress at work, most').fill('80 000 psi');
	await expect(requirement(page, "Stress at work, with Wahl's factor")).toContainText('uncorrected');
	await pick(page, 'Both stresses are').first().selectOption('uncorrected');
	await expect(requirement(page, 'Stress at work, uncorrected')).toContainText("with Wahl's factor");
});

test('a pair that was found is one nest for the nest, not refused coil by coil', async ({ page }) => {
	await page.setViewportSize(DESKTOP);
	await openPage(page, 'Replace');
	await openJob(page, { coils: [ORIGINAL, INNER], nests: NESTS });
	await need(page);
	await pick(page, 'One coil or a pair').selectOption('yes');
	await expect(page.getByText(/^The map shows what one coil does alone/)).toBeVisible();
	await button(page, 'Use as candidates pair 1').click();
	await expect(pick(page, 'They are judged')).toHaveValue('yes');
	await expect(verdict(page)).toContainText('Outer, Inner → ');
	await expect(
		comparison(page).getByRole('rowheader', {
			name: /^Hand beside the coil within it: /,
		}),
	).toHaveCount(1);
	await expect(
		comparison(page).getByRole('rowheader', {
			name: /^Load at work: the nest/,
		}),
	).toBeVisible();
	await expect(page.getByText(/are meant of every coil of it\./)).toBeVisible();
	await expect(page.getByRole('row', { name: /^Outer → .+, share of the load/ })).toBeVisible();
	await expectNoViolation(page, 'a nest for a nest');
	await pick(page, 'They are judged').selectOption('');
	await expect(verdict(page).getByRole('heading')).toHaveCount(2);
	await button(page, 'Undo').click();
	await button(page, 'Undo').click();
	await expect(pick(page, 'They are judged')).toBeHidden();
});

test('a pair takes the place of what was offered before, in one step that is said', async ({ page }) => {
	await page.setViewportSize(DESKTOP);
	await openPage(page, 'Replace');
	await openJob(page, { coils: [ORIGINAL, INNER], nests: NESTS });
	await button(page, 'Add a copy of the original').click();
	await need(page);
	await pick(page, 'One coil or a pair').selectOption('yes');
	await button(page, 'Use as candidates pair 1').click();
	await expect(pick(page, 'They are judged')).toHaveValue('yes');
	await expect(page.getByText('What was offered before is taken out; Undo brings it back.')).toBeVisible();
	const which = page.getByRole('group', { name: 'Which candidate' });
	await expect(which.getByRole('button')).toHaveCount(2);
	await button(page, 'Undo').click();
	await expect(field(page, 'Name of candidate 1')).toHaveValue('Offer 1');
	await expect(page.getByText(/Undo brings it back/)).toBeHidden();
	// And one drawing takes the place of a nest.
	await button(page, 'Use as candidates pair 1').click();
	await button(page, 'Use as candidate drawing 1').click();
	await expect(page.getByText(/^The drawing is judged by itself\. The nest/)).toBeVisible();
	await expect(which).toBeHidden();
});

test('it is said for which of several candidates a requirement is waived', async ({ page }) => {
	await page.setViewportSize(DESKTOP);
	await openPage(page, 'Replace');
	await openJob(page, { coils: [ORIGINAL], nests: [NEST] });
	for (const copy of [1, 2]) {
		await button(page, 'Add a copy of the original').click();
		await page.getByRole('combobox', { name: 'Hand', exact: true }).selectOption('left');
		await expect(field(page, `Name of candidate ${copy}`)).toBeVisible();
	}
	await expect(verdict(page).getByText('No replacement')).toHaveCount(2);
	await button(page, 'Waive for this one Hand').last().press('Enter');
	await page.keyboard.type('stands alone');
	await expect(verdict(page).getByText('No replacement')).toHaveCount(1);
	await expect(page.getByText('Waived for this candidate alone:')).toHaveCount(1);
	await button(page, 'Waive for all Hand').first().press('Enter');
	await page.keyboard.type('old stock');
	await expect(verdict(page).getByText('No replacement')).toHaveCount(0);
	await expect(page.getByText('Waived for all candidates:')).toHaveCount(1);
	await expectNoViolation(page, 'waived for one and for all');
});

test('a candidate has a drawing sheet', async ({ page }) => {
	await page.setViewportSize(DESKTOP);
	await openPage(page, 'Replace');
	await openJob(page, { coils: [ORIGINAL], nests: [NEST] });
	await button(page, 'Add a copy of the original').click();
	await field(page, 'Outside, Offer 1').fill('6 1/8');
	await button(page, 'Drawing sheet of Offer 1').press('Enter');
	await expect(page.getByRole('heading', { name: 'Drawing sheet: Offer 1' })).toBeFocused();
	await expect(field(page, 'Outside, Offer 1')).toHaveValue('6 1/8');
	await field(page, 'Outside, Offer 1').fill('6 1/4');
	await button(page, '← Back to Replace').click();
	await expect(field(page, 'Outside, Offer 1')).toHaveValue('6 1/4');
});

test('the map paints what meets the need as met', async ({ page }) => {
	await page.setViewportSize(DESKTOP);
	await openPage(page, 'Replace');
	await need(page);
	const fills = await page.evaluate(() => {
		const cell = document.querySelector('svg rect.meets');
		const probe = document.body.appendChild(document.createElement('i'));
		probe.style.color = 'var(--good)';
		return {
			cell: cell ? getComputedStyle(cell).fill : '',
			good: getComputedStyle(probe).color,
		};
	});
	expect(fills.cell).toBe(fills.good);
});

test('a need is offered only the ends that it takes', async ({ page }) => {
	await page.setViewportSize(DESKTOP);
	await openPage(page, 'Replace');
	await need(page);
	const options = pick(page, 'Ends it is to have').getByRole('option');
	const ends = await options.evaluateAll((all) => all.map((one) => (one as HTMLOptionElement).value));
	expect(ends.length).toBeGreaterThan(4);
	for (const end of ends) {
		await pick(page, 'Ends it is to have').selectOption(end);
		await expect(pick(page, 'Ends it is to have')).not.toHaveAttribute('aria-invalid');
	}
});

test('the nest before and after names the coil in each place', async ({ page }) => {
	await page.setViewportSize(DESKTOP);
	await openPage(page, 'Replace');
	await openJob(page, { coils: [ORIGINAL], nests: [NEST] });
	await button(page, 'Add a copy of the original').click();
	const nest = page.getByRole('table', {
		name: 'A left before, and after with Offer 1',
	});
	await expect(nest.getByRole('row', { name: /^Outer → Offer 1, share of the load/ })).toContainText('100 %');
	await expect(nest.getByRole('row', { name: /^Stops it first/ }).getByRole('cell')).toHaveText([
		'Outer, the original',
		'Offer 1, the candidate',
	]);
});

test('what contradicts itself is told at its field', async ({ page }) => {
	await page.setViewportSize(DESKTOP);
	await openPage(page, 'Replace');
	await openJob(page, { coils: [ORIGINAL], nests: [NEST] });
	await page.getByText(/^More limits/).click();
	await field(page, 'Rate, least').fill('1600');
	await field(page, 'Rate, most').fill('1500');
	await page.keyboard.press('Tab');
	await expect(
		page.getByRole('textbox', { name: /^Rate, (least|most)$/ }).and(page.locator('[aria-invalid]')),
	).toHaveCount(1);
});

test('several candidates stand abreast, and one of them is taken out', async ({ page }) => {
	await page.setViewportSize({ width: 1440, height: 900 });
	await openPage(page, 'Replace');
	await openJob(page, { coils: [ORIGINAL], nests: [NEST] });
	for (let more = 0; more < 3; more += 1) await button(page, 'Add a copy of the original').click();
	await expect(comparison(page).getByRole('columnheader')).toHaveText([
		'Requirement',
		'Asked',
		'Offer 1',
		'Offer 2',
		'Offer 3',
	]);
	await page.setViewportSize(PHONE);
	await expect(comparison(page).getByRole('columnheader')).toHaveText([
		'Requirement',
		'Asked',
		'Offered',
		'Met',
		'Why',
	]);
	await button(page, 'Take out Offer 3').click();
	await expect(field(page, 'Name of candidate 2')).toBeFocused();
	await button(page, 'Undo').click();
	await expect(button(page.getByRole('group', { name: 'Which candidate' }).first(), 'Offer 3')).toBeVisible();
});

test.describe('an order', () => {
	test.use({
		viewport: DESKTOP,
		permissions: ['clipboard-read', 'clipboard-write'],
	});

	test('its text is copied with what was written, its questions stay open', async ({ page }) => {
		await openOffer(page);
		await field(page, 'How many').fill('8');
		await field(page, 'Finish').fill('one coat of primer');
		await button(page, 'Copy as text').click();
		await expect(page.getByText('Copied.')).toBeVisible();
		const text = await page.evaluate(() => navigator.clipboard.readText());
		expect(text).toContain('one coat of primer');
		expect(text).toMatch(/Quantity:\s+asked 8/);
		expect(text).toMatch(/Bar:\s+offered /);
		expect(text).toContain('How is it to be marked?');
		const subject = await page.getByText(/^Subject to the approval/).innerText();
		expect(text.trimEnd().endsWith(subject)).toBe(true);
		await expect(page.getByRole('definition').filter({ hasText: 'How is it to be marked?' })).toContainText(
			'open:',
		);
		await button(page, 'The original as it was').click();
		await expect(page.getByText('Copied.')).toBeHidden();
	});

	test('where the page may not copy, the text is chosen to be copied by hand', async ({ page }) => {
		await openOffer(page);
		await page.evaluate(() => {
			navigator.clipboard.writeText = () => Promise.reject(new Error('not allowed'));
		});
		await button(page, 'Copy as text').click();
		const area = page.getByRole('textbox', { name: /copy it by hand/ });
		await expect(area).toBeFocused();
		await expect(area).toHaveValue(/^Not to be ordered: /);
		const chosen = await area.evaluate(
			(one: HTMLTextAreaElement) => one.value.slice(one.selectionStart, one.selectionEnd) === one.value,
		);
		expect(chosen).toBe(true);
	});

	test('it prints on one page of its own', async ({ page }, testInfo) => {
		await openOffer(page);
		await field(page, 'How many').fill('8');
		const items = await page.locator('dl.items dd').allInnerTexts();
		expect(items.length).toBeGreaterThan(8);
		await button(page, 'Open it as a letter').press('Enter');
		await expect(page.getByRole('heading', { name: 'Order of springs' })).toBeFocused();
		const path = testInfo.outputPath('order.pdf');
		await page.pdf({ path, format: 'A4' });
		expect(execFileSync('pdfinfo', [path], { encoding: 'utf8' })).toMatch(/^Pages:\s+1$/m);
		const printed = bare(execFileSync('pdftotext', ['-raw', path, '-'], { encoding: 'utf8' }));
		expect(items.filter((text) => !printed.includes(bare(text)))).toEqual([]);
		expect(printed).toContain(bare('Invented demo job, not an order'));
		expect(printed).toContain(bare("Subject to the approval of the vehicle's maker"));
		for (const control of ['Copy as text', 'Back to Replace', 'Bore of the pocket']) {
			expect(printed).not.toContain(bare(control));
		}
		// What does not meet what is asked is not signed for; the original as it was is.
		expect(printed).toContain(bare('Not to be ordered as it is.'));
		expect(printed).not.toContain(bare('Accepted by the maker'));
		await button(page, '← Back to Replace').click();
		await expect(field(page, 'How many')).toBeFocused();
		await button(page, 'The original as it was').click();
		await button(page, 'Open it as a letter').click();
		await expect(page.getByText('Accepted by the maker')).toBeVisible();
		await expect(page.getByText('Not to be ordered')).toBeHidden();
	});
});

test('a job in which words stand for lists is drawn all the same', async ({ page }) => {
	await page.setViewportSize(DESKTOP);
	await openPage(page, 'Replace');
	await openJob(page, {
		coils: [ORIGINAL],
		nests: [NEST],
		replace: { candidates: 'two', asked: 7 },
		need: 'light',
	});
	await expect(page.getByRole('heading', { name: 'What may replace it' })).toBeVisible();
	await button(page, 'Add a blank one').click();
	await expect(field(page, 'Name of candidate 1')).toBeFocused();
});

test('without a drawing the way to Measure is shown, and a need is answered all the same', async ({
	page,
}) => {
	await page.setViewportSize(DESKTOP);
	await openPage(page, 'Replace');
	await openJob(page, { coils: [], nests: [] });
	await expect(button(page, 'Add a coil in Measure')).toBeVisible();
	await need(page);
	await button(page, 'Add a coil in Measure').click();
	await expect(page).toHaveURL(/#measure$/);
});

onEachDevice(() => {
	test('axe finds nothing, blank or filled, nor with errors, a letter or all opened', async ({ page }) => {
		await openBlank(page);
		await openPage(page, 'Replace');
		await expectNoViolation(page, 'Replace without a candidate');
		await button(page, 'Undo').click();
		await need(page);
		await page.getByText(/^More limits/).click();
		await page.getByText('The map in words').click();
		await map(page).focus();
		await expectNoViolation(page, 'Replace with all opened');
		await field(page, 'Bore of the pocket').fill('wide');
		await field(page, 'Load, of the need').fill('heavy');
		await page.keyboard.press('Tab');
		await expectNoViolation(page, 'Replace with errors');
		await button(page, 'Open it as a letter').click();
		await expectNoViolation(page, 'an order');
	});
});

test('there is no sideways scroll from 320 px', async ({ page }) => {
	await openOffer(page);
	await need(page);
	await button(page, 'Add a copy of the original').click();
	await page.getByText('The map in words').click();
	const tooWide: string[] = [];
	for (const width of [320, 360, 390, 480, 600, 768, 900, 1024, 1152, 1280, 1440]) {
		await page.setViewportSize({ width, height: 800 });
		const content = await contentWidth(page);
		if (content > width) tooWide.push(`${content} px on ${width} px`);
	}
	expect(tooWide).toEqual([]);
});

/** Letters and numbers alone: lines break elsewhere on paper, and a fraction may be set with another stroke. */
function bare(text: string): string {
	return text
		.normalize('NFKC')
		.replaceAll('⁄', '/')
		.replace(/[\s\u00ad]/gu, '');
}

test('it prints with its comparison, its order, its drawings and its cautions, and no control', async ({
	page,
}, testInfo) => {
	await page.setViewportSize(DESKTOP);
	await openOffer(page);
	await need(page);
	const cells = await page.locator('main td:not(.controls):visible').allInnerTexts();
	const cautions = await page
		.getByRole('heading', { name: 'Take care' })
		.first()
		.locator('+ ul li')
		.allInnerTexts();
	expect(cells.length).toBeGreaterThan(40);
	expect(cautions.length).toBeGreaterThan(1);
	const printed = bare(await printedAlone(page, testInfo.outputPath('replace.pdf')));
	const lines = [
		...cells.flatMap((text) => text.split('\n')).filter((text) => text !== 'Waive'),
		...cautions,
	];
	expect(lines.filter((text) => !printed.includes(bare(text)))).toEqual([]);
	expect(printed).toContain(bare('Invented demo job, not a record'));
	for (const control of ['Take out', 'Use as candidate', 'Add a blank', 'Copy as text', 'arrow keys']) {
		expect(printed).not.toContain(bare(control));
	}
});

test('printed, the order keeps together, and a need that nobody wrote is left out', async ({
	page,
}, testInfo) => {
	await page.setViewportSize(DESKTOP);
	await openOffer(page);
	const pages = async (name: string): Promise<string[]> => {
		const printed = await printedAlone(page, testInfo.outputPath(name));
		return printed.split('\f').map(bare);
	};
	const withOrder = (all: string[]): string | undefined =>
		all.find((printed) => printed.includes(bare('Order sheet')));
	const unasked = await pages('unasked.pdf');
	expect(withOrder(unasked)).toContain(bare('How is it to be marked?'));
	expect(withOrder(unasked)).toContain(bare('Subject to the approval'));
	expect(unasked.join('')).not.toContain(bare('From a need to a drawing'));
	await need(page);
	await page.getByText(/^More of the need/).click();
	const asked = await pages('asked.pdf');
	expect(withOrder(asked)).toContain(bare('How is it to be marked?'));
	expect(asked.join('')).toContain(bare('From a need to a drawing'));
	// What was written in the closed box is printed with the rest.
	expect(asked.join('')).toContain(bare('80 000 psi'));
});

test('a box that was closed just before printing is opened for the paper', async ({ page }) => {
	await page.setViewportSize(DESKTOP);
	await openOffer(page);
	await need(page);
	const box = page.locator('details', { hasText: 'More of the need' });
	await expect(box).toHaveAttribute('open');
	const isOpen = await box.evaluate((details: HTMLDetailsElement) => {
		// No browser has told the page of the click when the printing begins.
		details.querySelector('summary')?.click();
		const closed = !details.open;
		dispatchEvent(new Event('beforeprint'));
		return closed && details.open;
	});
	expect(isOpen).toBe(true);
});
