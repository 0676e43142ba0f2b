import type { TapeStop, TapeStrip } from '../engine/types';

/* Where the mark goes on a drawn tape, and on which side of its line a number stands. */

const LABEL_ROOM = 38;

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

/** The sides of several marks: none that turns towards the one before it runs into its number. */
export function labelSides(marks: readonly number[], lines: readonly number[]): (1 | -1)[] {
	return marks.reduce<(1 | -1)[]>((sides, x, i) => {
		const side = labelSide(lines.map((line) => line - x));
		const before = marks[i - 1];
		const meets = before !== undefined && sides[i - 1] === 1 && x - before < 2.5 * LABEL_ROOM;
		return [...sides, meets ? 1 : side];
	}, []);
}

/** The side of its mark on which no line would run through a number; `lines` are measured from the mark. */
function labelSide(lines: readonly number[]): 1 | -1 {
	const clear = (side: 1 | -1): boolean =>
		lines.every((line) => line * side <= 0 || line * side > LABEL_ROOM);
	return !clear(1) && clear(-1) ? -1 : 1;
}
