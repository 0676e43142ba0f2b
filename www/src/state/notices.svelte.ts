import { autosave } from './autosave.svelte';
import { files } from './files.svelte';
import { offline } from './offline.svelte';
import { paper } from './paper.svelte';

/** When there is something to say over the page; the words of each come later, with `parts/NoticeList.svelte`. */
const WHEN = {
	kept: () => autosave.state === 'failed' || autosave.state === 'loose',
	unread: () => autosave.unread.length > 0,
	elsewhere: () => autosave.changedElsewhere,
	asides: () => autosave.asides.length > 0,
	done: () => files.done,
	unprinted: () => paper.missing,
	problem: () => files.problem,
	newer: () => offline.newer,
};

export type NoticeId = keyof typeof WHEN;

/** What there is to say now. */
export function noticesNow(): NoticeId[] {
	return (Object.keys(WHEN) as NoticeId[]).filter((id) => WHEN[id]());
}
