import { readFileSync } from 'node:fs';
import { expect, line, type Locator, openPage, type Page } from './page';

/** The invented whole truck, and how it is written down. */
export type Loose = Record<string, any>;

/** A truck of eight coils is written with so many, by the pad. */
export const MOST_PRESSES = 70;
export const whole = (): Loose => JSON.parse(readFileSync('../tests/jobs/whole-truck.job.json', 'utf8'));

/** The readings of the invented truck, nest by nest and coil by coil. */
export const READINGS: string[] = whole()['nests'].flatMap((nest: Loose) =>
	nest['seats'].flatMap((seat: Loose) => seat['readings']),
);

/** The truck before anything of it was read, with its drawings. */
export function unread(): Loose {
	const job = whole();
	for (const nest of job['nests']) for (const seat of nest['seats']) seat['readings'] = [];
	return job;
}

export async function openJob(page: Page, job: unknown): Promise<void> {
	await page.addInitScript((text) => {
		if (sessionStorage.getItem('opened')) return;
		localStorage.setItem('coilnest:job', text);
		sessionStorage.setItem('opened', 'yes');
	}, JSON.stringify(job));
	await openPage(page);
}

export const tally = (page: Page): Locator => page.getByRole('group', { name: 'All coils' });
export const pad = (page: Page): Locator => page.getByRole('group', { name: /^Keys for/ });

/** The keys of the pad that write a reading: `13 7/8 scant` takes four. */
export function keysOf(reading: string): string[] {
	return reading.split(' ').flatMap((word) => (/^\d+$/.test(word) ? [...word] : [word]));
}

export async function expectWhole(page: Page): Promise<void> {
	await expect(tally(page).getByRole('listitem')).toHaveText(['5 good', '1 short', '2 to decide']);
	await expect(line(page, 'Inner, A left')).toContainText('Short');
	await expect(line(page, 'Inner, A left')).toContainText(/3\/16\s*in under/);
	await expect(line(page, 'Outer, A right')).toContainText('14 · 14 scant');
	await expect(line(page, 'Inner, B left')).toContainText('on the book figure');
}
