import type { Plan } from '../engine/types';
import { type Box, clearest } from './labels';
import { linear, type Scale } from './scale';

/* The plan as it lies on the paper: along upwards, and across to the left. */

/** A nest of the plan: the radius of its circle is a part of that of the mean load. */
export interface Laid {
	along: number;
	across: number;
	radius: number;
	/** How many lines its label has, and how many letters the longest. */
	lines: number;
	letters: number;
}

export interface Layout {
	width: number;
	height: number;
	/** From across, and from along, to the paper. */
	x: Scale;
	y: Scale;
	/** Radius of a circle of the mean load. */
	mean: number;
	frame: Box;
	/** The box of each label; none where there is no room for labels. */
	labels: (Box | undefined)[];
}

export const TEXT = 13;
export const LINE = 18;
const END = 24;
const LARGEST = 28;
const RIM = 12;
const GLYPH = 0.5;

/** How many letters' room a line takes: a fraction is set in that of three. */
export function lettersOf(line: string): number {
	return line.replace(/\d+\/\d+/g, '000').length;
}

function ends(values: readonly number[]): [number, number] {
	return [Math.min(...values), Math.max(...values)];
}

const span = ([least, most]: [number, number]): number => most - least;

/** Half the least distance between two nests, so that circles keep apart. */
function room(places: readonly { x: number; y: number }[]): number {
	let least = Infinity;
	for (const [i, one] of places.entries()) {
		for (const other of places.slice(i + 1)) {
			least = Math.min(least, Math.hypot(one.x - other.x, one.y - other.y));
		}
	}
	return least / 2;
}

export function layOut(plan: Plan, nests: readonly Laid[], width: number): Layout {
	const across = ends(nests.map((nest) => nest.across));
	const along = ends(nests.map((nest) => nest.along));
	const block = Math.max(...nests.map((nest) => nest.lines)) * LINE;
	const wide = Math.max(...nests.map((nest) => nest.letters)) * TEXT * GLYPH;
	const side = Math.max(44, wide / 2 + 6);
	const most = Math.min(width, 640);
	const scale = Math.min((width - 2 * side) / (span(across) || 1), (0.6 * most) / (span(along) || 1));
	const middle = width / 2;
	const x = linear(
		[across[0], across[0] + 1],
		[middle + (span(across) * scale) / 2, middle + (span(across) * scale) / 2 - scale],
	);
	const head = END + block + LARGEST + RIM + 8;
	const y = linear([along[1], along[1] - 1], [head, head + scale]);
	const height = y(along[0]) + head;
	const places = nests.map((nest) => ({ x: x(nest.across), y: y(nest.along) }));
	const mean = Math.max(5, Math.min(LARGEST, 0.8 * room(places)));
	const rim = mean + RIM;
	const frame = {
		x1: x(across[1]) - rim,
		x2: x(across[0]) + rim,
		y1: y(along[1]) - rim,
		y2: y(along[0]) + rim,
	};
	const paper = { x1: 0, x2: width, y1: END, y2: height - END };
	const circles = nests.map(({ radius }, i): Box => {
		const { x: at, y: down } = places[i] ?? { x: 0, y: 0 };
		const reach = mean * Math.max(1, radius) + 3;
		return { x1: at - reach, x2: at + reach, y1: down - reach, y2: down + reach };
	});
	const centre = { x: x(plan.centre_across), y: y(plan.centre_along) };
	const taken: Box[] = [
		...circles,
		{ x1: centre.x - 16, x2: centre.x + 16, y1: centre.y - 16, y2: centre.y + 16 },
	];
	const labels = nests.map((nest, i) => {
		if (mean < 12) return undefined;
		const at = places[i] ?? { x: 0, y: 0 };
		const letters = nest.letters * TEXT * GLYPH;
		const tall = nest.lines * LINE;
		const reach = mean * Math.max(1, nest.radius) + 4;
		const above = { x: at.x, y: at.y - rim - tall - 4 };
		const below = { x: at.x, y: at.y + rim + 4 };
		const upper = at.y < height / 2;
		const choices = [
			...(upper ? [above, below] : [below, above]),
			{ x: at.x - reach - letters / 2, y: at.y - tall / 2 },
			{ x: at.x + reach + letters / 2, y: at.y - tall / 2 },
		];
		const boxes = choices.map((place) => ({
			x1: place.x - letters / 2,
			x2: place.x + letters / 2,
			y1: place.y,
			y2: place.y + tall,
		}));
		const best = clearest(boxes, taken, paper);
		const box = boxes[best];
		if (box) taken.push(box);
		return box;
	});
	return { width, height, x, y, mean, frame, labels };
}

const LARGER = [1000, 500, 200, 100, 50, 20, 10, 5, 2];

/** How many times larger slopes are drawn: the most of round numbers at which the steepest rises no further than that. */
export function exaggeration(slopes: readonly number[], length: number, most: number): number {
	const rise = Math.max(...slopes.map(Math.abs)) * length;
	return LARGER.find((times) => rise * times <= most) ?? 1;
}
