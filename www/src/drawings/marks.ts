import type { Axes, Breakpoint, NestReport } from '../engine/types';
import { boxesUnder, boxOf, placeLabel, type Box, type Place } from './labels';
import type { Point } from './line';
import type { Scales } from './load';
import { on } from './scale';

/** The place of a mark on the height axis, with the words that stand at it. */
export interface Mark {
	height: number;
	load: number;
	word: string;
	/** The height as the engine writes it. */
	text: string;
	kind: Breakpoint['event'] | 'working';
}

/** Free, pick-up, working and solid, in the order in which a press meets them. */
export function marks(nest: NestReport, axes: Axes): Mark[] {
	const events = nest.breakpoints.map((point, i): Mark => {
		const name = nest.seats[point.seat]?.name ?? '';
		return {
			height: on(axes.length, point.height),
			load: on(axes.force, point.load),
			word:
				i === 0
					? 'free'
					: { touches: `${name} picks up`, stage: `${name} stiffens`, solid: 'solid' }[point.event],
			text: point.height.text,
			kind: point.event,
		};
	});
	if (nest.working) {
		const { height, load } = nest.working;
		events.push({
			height: on(axes.length, height),
			load: on(axes.force, load),
			word: 'working',
			text: height.text,
			kind: 'working',
		});
	}
	return events.sort((a, b) => b.height - a.height);
}

/** A mark on the paper: where it stands, what it says, and where its label found room. */
export interface PlacedMark {
	at: number;
	foot: number;
	said: string;
	place: Place | undefined;
}

export const LABEL = 13;
const LANE = 17;

/** Labels stand in the empty corner above the load line; each takes the first lane that is free. */
export function placeMarks(
	found: Mark[],
	scales: Scales,
	line: readonly Point[],
	frame: Box,
	wide: boolean,
): PlacedMark[] {
	const taken = boxesUnder(line, frame.y2);
	const lanes = Array.from({ length: 10 }, (_, lane) => frame.y1 + 8 + lane * LANE);
	const middle = (frame.x1 + frame.x2) / 2;
	const solidFirst = [...found].sort((a, b) => Number(b.kind === 'solid') - Number(a.kind === 'solid'));
	return solidFirst.map(({ height, load, word, text }) => {
		const [at, foot] = [scales.x(height), scales.y(load)];
		const said = wide ? `${word} ${text}` : word;
		const sides: Place['anchor'][] = at > middle ? ['end', 'start'] : ['start', 'end'];
		const places = lanes.flatMap((y) =>
			sides.map((anchor): Place => ({ x: at + (anchor === 'start' ? 5 : -9), y, anchor })),
		);
		const place = placeLabel(said, LABEL, places, taken, frame);
		if (place) {
			const stem = { x1: at - 2, x2: at + 2, y1: place.y - 4, y2: foot };
			taken.push(boxOf(said, place, LABEL), stem);
		}
		return { at, foot, said, place };
	});
}

/** Where the load stands beside the handle, clear of the line and of the marks' labels. */
export function placeLoad(
	text: string,
	size: number,
	x: number,
	y: number,
	placed: PlacedMark[],
	line: readonly Point[],
	frame: Box,
): Place | undefined {
	const along = boxesUnder(line, frame.y2).map((box) => ({ ...box, y2: box.y1 + 6 }));
	const said = placed.flatMap((mark) => (mark.place ? [boxOf(mark.said, mark.place, LABEL)] : []));
	const places: Place[] = [
		{ x: x - 12, y: y - 8, anchor: 'end' },
		{ x: x + 14, y: y + 30, anchor: 'start' },
		{ x: x + 14, y: y - 14, anchor: 'start' },
		{ x: x + 14, y: y - 34, anchor: 'start' },
		{ x: x - 12, y: y + 80, anchor: 'end' },
	];
	return placeLabel(text, size, places, [...along, ...said], frame);
}
