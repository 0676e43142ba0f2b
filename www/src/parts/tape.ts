import type { TapeStop, TapeStrip } from '../engine/types';

/* Where the mark goes on a drawn tape, and on which side of its line a number stands. */

/** The stop nearest to `at`. */
export function nearestStop(tape: TapeStrip, at: number): TapeStop | undefined {
	return tape.stops.reduce<TapeStop | undefined>(
		(best, stop) => (best && Math.abs(best.at - at) <= Math.abs(stop.at - at) ? best : stop),
		undefined,
	);
}

/** Where a key sends the mark: to a stop of this tape, or to a length that may lie beyond it. */
export function keyTarget(tape: TapeStrip, key: string): TapeStop | number | undefined {
	const large = tape.unit === 'in' ? 1 : 10;
	const at = tape.reading?.at ?? tape.book ?? tape.from;
	const here = tape.current;
	const above = here === undefined ? tape.stops.findIndex((stop) => stop.at >= at) : here + 1;
	const below = (here ?? tape.stops.findIndex((stop) => stop.at >= at)) - 1;
	switch (key) {
		case 'ArrowRight':
		case 'ArrowUp':
			return tape.stops[above];
		case 'ArrowLeft':
		case 'ArrowDown':
			return tape.stops[below];
		case 'Home':
			return tape.stops[0];
		case 'End':
			return tape.stops.at(-1);
		case 'PageUp':
			return at + large;
		case 'PageDown':
			return at - large;
		default:
			return undefined;
	}
}

/**
 * On which side of its mark each number stands: none where there is no room for it, and none in another's room. The mark
 * of the reading runs through no number; a limit, over which numbers are written, where there is no other way.
 */
export function labelSides(
	numbers: readonly { readonly x: number; readonly room: number }[],
	{ width, limits, reading }: { width: number; limits: readonly number[]; reading: number | undefined },
): (1 | -1 | undefined)[] {
	let taken = 0;
	return numbers.map(({ x, room }) => {
		const isClear = (side: 1 | -1, line: number): boolean =>
			line <= Math.min(x, x + side * room) || line >= Math.max(x, x + side * room);
		const fits = ([1, -1] as const).filter((side) => {
			const isInside = side === 1 ? x >= taken && x + room <= width : x - room >= taken;
			return isInside && (reading === undefined || isClear(side, reading));
		});
		const side = fits.find((side) => limits.every((line) => isClear(side, line))) ?? fits[0];
		if (side !== undefined) taken = Math.max(x, x + side * room);
		return side;
	});
}
