import type { Figure } from '../engine/types';

/* The sizes of a box in its guides, as they are asked for and told. */

export const HEIGHTS = ['Top', 'Middle', 'Bottom'] as const;

/** What is measured at each height, in the order in which it is asked for. */
export const SIZES = [
	{ list: 'opening', label: 'Opening' },
	{ list: 'liners[0]', label: '1st liner' },
	{ list: 'liners[1]', label: '2nd liner' },
	{ list: 'box', label: 'Box' },
] as const;

/** Name and clearance of each height: one stands for all, and of two the middle was left out. */
export function heightsOf(at: readonly Figure[]): { name: string; clear: string }[] {
	const [top, middle, bottom] = HEIGHTS;
	const names = at.length === 1 ? ['All over'] : at.length === 2 ? [top, bottom] : [top, middle, bottom];
	return at.map(({ text }, place) => ({ name: names[place] ?? '', clear: text }));
}
