import { ticks } from 'd3-array';
import { linear, type Scale } from './scale';

/** A scale with round values along it. */
export interface Ticked extends Scale {
	/** About `count` round values of the domain. */
	ticks: (count: number) => number[];
}

export function ticked(domain: readonly [number, number], places: readonly [number, number]): Ticked {
	return Object.assign(linear(domain, places), { ticks: (count: number) => ticks(...domain, count) });
}
