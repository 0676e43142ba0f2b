import { engine } from '../engine/engine';
import type { Job } from '../engine/types';
import { fileOf } from './file';
import type { Moment } from './job.svelte';
import { lastingly, toDisk } from './store';

/** Before the keys of the jobs on the shelf; a job has its place there as long as it lies on the bench, too. */
export const SHELF = 'shelf:';

/** A job on the shelf. */
export interface Shelved {
	/** When it was put there. */
	readonly at: number;
	readonly demo: boolean;
	/** The text of its file. */
	readonly text: string;
}

/** A disk that does not answer holds nobody up. */
const PATIENCE_MS = 2000;

/** Puts a job in its place on the shelf; breaks the promise where the disk is full, refused or does not answer. */
export async function putAway(moment: Moment): Promise<void> {
	const shelved: Shelved = { at: Date.now(), demo: moment.demo, text: fileOf(moment.job) };
	const late = new Promise<never>((_, refuse) => setTimeout(refuse, PATIENCE_MS, new Error('no answer')));
	await Promise.race([toDisk(SHELF + moment.id, shelved), late]);
	void lastingly();
}

/** A date of the calendar as a record has it, by this device's clock. */
export function today(): string {
	const now = new Date();
	const two = (number: number): string => String(number).padStart(2, '0');
	return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}

/** Whether nothing was written in a job since it was begun, so that it need not be kept. */
export function isUntouched({ job }: Moment): boolean {
	const undated = (one: Job): string =>
		JSON.stringify({ ...one, record: { ...one.record, date: undefined } });
	return [engine.blank(), engine.demo()].some((begun) => undated(begun) === undated(job));
}
