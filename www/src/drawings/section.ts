import type { Section, SectionSeat } from '../engine/types';
import type { CutBar } from './bar';
import { linePath, type Point } from './line';
import { linear } from './scale';

/** Straight pieces of a drawn half turn. */
const CHORDS = 12;

/** Where the section stands on the paper. The scale follows the tallest height, so that it stays still while the nest is squeezed. */
export interface Layout {
	x: (across: number) => number;
	y: (height: number) => number;
	scale: number;
}

export interface Room {
	width: number;
	height: number;
	left: number;
	right: number;
	top: number;
	bottom: number;
}

export function layout(section: Section, tallest: number, room: Room): Layout {
	const across = room.width - room.left - room.right;
	const up = room.height - room.top - room.bottom;
	const scale = Math.min(across / (section.width * 1.12), up / Math.max(tallest, section.height));
	const centre = room.left + across / 2;
	const floor = room.height - room.bottom - (up - scale * Math.max(tallest, section.height)) / 2;
	return {
		x: linear([0, 1], [centre, centre + scale]),
		y: linear([0, 1], [floor, floor - scale]),
		scale,
	};
}

/** The bars of one coil where the plane cuts them, left column first. */
export function cutBars(seat: SectionSeat, at: Layout): CutBar[] {
	const limits = seat.ground
		? { top: at.y(seat.top), bottom: at.y(seat.bottom) }
		: { top: -Infinity, bottom: Infinity };
	const r = (seat.bar / 2) * at.scale;
	const column = (heights: number[], side: -1 | 1) =>
		heights.map((height) => ({ x: at.x((side * seat.mean) / 2), y: at.y(height), r, ...limits }));
	return [...column(seat.left, -1), ...column(seat.right, 1)];
}

/** Centre lines of the half turns behind the plane, which rise to the left in a right-hand coil. Not drawn when the hand is not known. */
export function turnsBehind(seat: SectionSeat, at: Layout): string[] {
	if (!seat.hand) return [];
	const [from, to, side] = seat.hand === 'right' ? [seat.right, seat.left, 1] : [seat.left, seat.right, -1];
	return from.flatMap((start) => {
		const end = to.find((height) => height > start);
		if (end === undefined) return [];
		const turn = Array.from({ length: CHORDS + 1 }, (_, i): Point => {
			const t = i / CHORDS;
			return [at.x(((side * seat.mean) / 2) * Math.cos(Math.PI * t)), at.y(start + (end - start) * t)];
		});
		return [linePath(turn)];
	});
}

/** The bar of the left column to which a coil's label points: within its share of the height, and best seen between the bars of wider coils. */
export function labelledBar(seat: SectionSeat, section: Section): number | undefined {
	const order = [...section.seats].sort((a, b) => b.mean - a.mean);
	const rank = order.indexOf(seat);
	const share = (seat.top - seat.bottom) / order.length;
	const [low, high] = [seat.top - share * (rank + 1), seat.top - share * rank];
	const wider = order.slice(0, rank).flatMap((other) => other.left);
	const clear = (height: number) => Math.min(Infinity, ...wider.map((other) => Math.abs(other - height)));
	const within = seat.left.filter((height) => height > low && height < high);
	const middle = (low + high) / 2;
	const better = (a: number, b: number) => clear(b) - clear(a) || Math.abs(a - middle) - Math.abs(b - middle);
	return (within.length ? within : seat.left).toSorted(better)[0];
}
