import { startSheets } from '../engine/sheets';
import CoilSheet from './CoilSheet.svelte';

/*
 * The sections that a first look does without. Nothing but the call that opens one imports this module, and it does so
 * when it is called.
 */

/** The sections, once their engine stands. */
export async function later(): Promise<{ CoilSheet: typeof CoilSheet }> {
	await startSheets();
	return { CoilSheet };
}
