import type { Tally } from '../engine/types';

const WORDS = [
	{ word: 'good', name: 'good', shape: '●' },
	{ word: 'short', name: 'short', shape: '▼' },
	{ word: 'long', name: 'long', shape: '▲' },
	{ word: 'too-close', name: 'to decide', shape: '◐' },
	{ word: 'scrap', name: 'scrap', shape: '✕' },
	{ word: 'none', name: 'without a limit', shape: '○' },
] as const;

/** What a tally says, without what there is none of. */
export function tallied(tally: Tally): { name: string; shape: string; count: number }[] {
	return WORDS.map(({ word, name, shape }) => ({ name, shape, count: tally[word] })).filter(
		({ count }) => count > 0,
	);
}
