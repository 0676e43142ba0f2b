import type { Axis } from '../engine/types';

/** A straight scale from what is drawn to where it stands on the paper. */
export interface Scale {
	(value: number): number;
	/** What stands at `place`. */
	invert: (place: number) => number;
}

export function linear(
	[from, to]: readonly [number, number],
	[start, end]: readonly [number, number],
): Scale {
	const slope = from === to ? 0 : (end - start) / (to - from);
	return Object.assign((value: number) => start + (value - from) * slope, {
		invert: (place: number) => (slope === 0 ? from : from + (place - start) / slope),
	});
}

/** A quantity in SI units, in the unit of an axis. */
export function on(axis: Axis, { si }: { si: number }): number {
	return si / axis.scale;
}
