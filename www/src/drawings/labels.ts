import type { Point } from './line';

/** A box on the drawing that a label must keep clear of, or fills. */
export interface Box {
	x1: number;
	y1: number;
	x2: number;
	y2: number;
}

export interface Place {
	x: number;
	y: number;
	anchor: 'start' | 'middle' | 'end';
}

const GLYPH = 0.56;

/** The room a text takes when its baseline is at a place. System fonts differ, so the estimate is generous. */
export function boxOf(text: string, place: Place, size: number): Box {
	const width = text.length * size * GLYPH;
	const x1 =
		place.anchor === 'start' ? place.x : place.anchor === 'end' ? place.x - width : place.x - width / 2;
	return { x1, x2: x1 + width, y1: place.y - size, y2: place.y + size * 0.3 };
}

const overlap = (a: Box, b: Box) =>
	Math.max(0, Math.min(a.x2, b.x2) - Math.max(a.x1, b.x1)) *
	Math.max(0, Math.min(a.y2, b.y2) - Math.max(a.y1, b.y1));

const outside = (a: Box, frame: Box) => (a.x2 - a.x1) * (a.y2 - a.y1) - overlap(a, frame);

/** Which box is the first that is clear of everything and inside the frame, or else which covers least. */
export function clearest(boxes: readonly Box[], taken: readonly Box[], frame: Box): number {
	let best = -1;
	let least = Infinity;
	for (const [i, box] of boxes.entries()) {
		const cost = outside(box, frame) * 4 + taken.reduce((sum, other) => sum + overlap(box, other), 0);
		if (cost < least) [best, least] = [i, cost];
		if (cost === 0) break;
	}
	return best;
}

/** The clearest place for a text. */
export function placeLabel(
	text: string,
	size: number,
	candidates: Place[],
	taken: Box[],
	frame: Box,
): Place | undefined {
	const boxes = candidates.map((place) => boxOf(text, place, size));
	return candidates[clearest(boxes, taken, frame)];
}

/** Narrow boxes that fill the ground under a line down to `floor`, so that a label can be kept above it. */
export function boxesUnder(points: readonly Point[], floor: number, step = 6): Box[] {
	return points.slice(1).flatMap(([x2, y2], i) => {
		const [x1, y1] = points[i] ?? [x2, y2];
		const pieces = Math.max(1, Math.ceil(Math.abs(x2 - x1) / step));
		const x = (k: number) => x1 + ((x2 - x1) * k) / pieces;
		const y = (k: number) => y1 + ((y2 - y1) * k) / pieces;
		return Array.from({ length: pieces }, (_, k) => ({
			x1: x(k),
			x2: x(k + 1),
			y1: Math.min(y(k), y(k + 1)) - 2,
			y2: floor,
		}));
	});
}

/** Moves labels of one column apart to at least `gap`, keeping their order and staying within the ends. */
export function spread(ys: number[], gap: number, top: number, bottom: number): number[] {
	const order = ys.map((y, i) => ({ y, i })).sort((a, b) => a.y - b.y);
	let floor = top;
	for (const item of order) {
		item.y = Math.max(item.y, floor);
		floor = item.y + gap;
	}
	let ceiling = bottom;
	for (const item of order.reverse()) {
		item.y = Math.min(item.y, ceiling);
		ceiling = item.y - gap;
	}
	return order.sort((a, b) => a.i - b.i).map((item) => item.y);
}
