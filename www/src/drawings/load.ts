import type { Axes, Breakpoint, NestReport, State } from '../engine/types';
import { areaPath, linePath, type Point } from './line';
import { on } from './scale';
import { ticked, type Ticked } from './ticked';

/** One corner of the load lines: a height, and the load of each seat there. */
export interface Corner {
	height: number;
	loads: number[];
	total: number;
}

function cornerOf(point: Breakpoint, axes: Axes): Corner {
	return {
		height: on(axes.length, point.height),
		loads: point.stack.map((si) => on(axes.force, { si })),
		total: on(axes.force, point.load),
	};
}

/** The corners from free to the least height of the slider; `end` is the state there, for a nest whose solid height is not known. */
export function corners(nest: NestReport, end: State | undefined, axes: Axes): Corner[] {
	const known = nest.breakpoints.map((point) => cornerOf(point, axes));
	const [first, last] = [known[0], known.at(-1)];
	if (!first || !last) return [];
	const unloaded = { height: nest.slider?.most ?? first.height, loads: first.loads.map(() => 0), total: 0 };
	const least = end && {
		height: on(axes.length, end.height),
		loads: end.seats.map((seat) => on(axes.force, seat.load)),
		total: on(axes.force, end.load),
	};
	return [
		...(unloaded.height > first.height ? [unloaded] : []),
		...known,
		...(least && least.height < last.height ? [least] : []),
	];
}

export interface Scales {
	x: Ticked;
	y: Ticked;
}

/** Scales of the chart: free on the left, solid on the right, so that a squeeze goes with the reading direction. */
export function scales(points: Corner[], left: number, right: number, top: number, bottom: number): Scales {
	const heights = points.map((point) => point.height);
	const most = Math.max(...points.map((point) => point.total));
	return {
		x: ticked([Math.max(...heights), Math.min(...heights)], [left, right]),
		y: ticked([0, most > 0 ? most * 1.12 : 1], [bottom, top]),
	};
}

/** The share of one seat in the stack: its area, its upper edge, and the middle of its end. */
export interface Band {
	face: string;
	edge: string;
	middle: number;
}

export function bands(points: Corner[], seats: number, at: Scales): Band[] {
	const below = (point: Corner, seat: number) =>
		point.loads.slice(0, seat).reduce((sum, load) => sum + load, 0);
	return Array.from({ length: seats }, (_, seat) => {
		const edge = (under: number) =>
			points.map((point): Point => [at.x(point.height), at.y(below(point, under))]);
		const upper = edge(seat + 1);
		const last = points.at(-1);
		return {
			face: areaPath(upper, edge(seat)),
			edge: linePath(upper),
			middle: last ? at.y((below(last, seat) + below(last, seat + 1)) / 2) : 0,
		};
	});
}

/** The text of a tick: thousands parted by a narrow space, as the engine parts them. */
export function tickText(value: number): string {
	return String(value).replace(/\B(?=(\d{3})+$)/g, '\u202f');
}
