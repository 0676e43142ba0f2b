import type { Figure, SupportReport, SupportState } from '../engine/types';

/* The nests under a frame as rows of a table. */

const STATES: Record<SupportState, string> = {
	loose: '○ loose',
	carrying: '● carrying',
	bottomed: '■ solid',
};

export const NEST_HEADS = ['Nest', 'Load', 'Share', 'Height', 'State'];

/** Words of the glossary, by the heads that they explain. */
export const NEST_TERMS = { Share: 'share', State: 'touch' };

export function rowsOf(supports: readonly SupportReport[]): (string | Figure)[][] {
	return supports.map(({ nest, load, share, height, state }) => [nest, load, share, height, STATES[state]]);
}
