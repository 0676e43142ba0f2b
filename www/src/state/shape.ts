import type { CoilDrawing, Job, NestInput, Seat } from '../engine/types';
import { textIn } from './path';

/*
 * A file that was damaged, or written by hand, may hold a word where a list belongs. The report says so; here such a
 * value counts as nothing written, so that the rest can be drawn and edited; what stands beside words is a text, whatever
 * was written there. Each item keeps its place in its list.
 * What was written stays known beside the shape, and comes back after an edit that did not touch it.
 */

type Fields = Record<string, unknown>;

interface Origin {
	readonly written: unknown;
	readonly shaped: Fields;
}

/** On a shaped object, and on each copy made by spreading it. */
const ORIGIN = Symbol('origin');
const writtenLists = new WeakMap<readonly unknown[], unknown>();

function isFields(value: unknown): value is Fields {
	return value !== null && typeof value === 'object' && !Array.isArray(value);
}

function fields(value: unknown): Fields {
	return isFields(value) ? value : {};
}

/** The fields of `value`: those that `parts` names in their shape, the others as texts, `always` there, and none added. */
function inShape(
	value: unknown,
	parts: Record<string, (part: unknown) => unknown>,
	always?: 'id' | 'coil',
): Fields {
	const own = fields(value);
	const shaped: Fields = Object.fromEntries(
		Object.entries(own)
			.filter(([, held]) => held !== undefined)
			.map(([name, held]) => [name, (Object.hasOwn(parts, name) && parts[name]?.(held)) || textIn(held)]),
	);
	if (always !== undefined) shaped[always] = textIn(own[always]);
	const origin: Origin = { written: value, shaped };
	return { ...shaped, [ORIGIN]: origin };
}

/** The job as it is written after an edit of its shape: where the edit left a value alone, what stood there before. */
export function asWritten(job: Job): Job {
	return restored(job) as Job;
}

function restored(value: unknown): unknown {
	if (Array.isArray(value)) return writtenLists.has(value) ? writtenLists.get(value) : value.map(restored);
	if (!isFields(value)) return value;
	const origin = (value as { [ORIGIN]?: Origin })[ORIGIN];
	if (origin === undefined) return value;
	const { written, shaped } = origin;
	const entries = Object.entries(value);
	const isUntouched = ([name, part]: [string, unknown]): boolean => part === shaped[name];
	if (entries.length === Object.keys(shaped).length && entries.every(isUntouched)) return written;
	const before = fields(written);
	return Object.fromEntries(
		entries
			.map((entry): [string, unknown] => [
				entry[0],
				isUntouched(entry) ? before[entry[0]] : restored(entry[1]),
			])
			.filter(([, part]) => part !== undefined),
	);
}

const many =
	<T>(item: (value: unknown) => T) =>
	(value: unknown): T[] => {
		const shaped = Array.isArray(value) ? value.map(item) : [];
		writtenLists.set(shaped, value);
		return shaped;
	};

const kept = (value: unknown): Fields => inShape(value, {});

function seat(value: unknown): Seat {
	return inShape(value, { readings: many(textIn) }, 'coil') as unknown as Seat;
}

function nest(value: unknown): NestInput {
	return inShape(value, { seats: many(seat), ask: many(textIn) }, 'id') as unknown as NestInput;
}

function drawing(value: unknown): CoilDrawing {
	return inShape(
		value,
		{ limits: kept, press_test: many(kept), loads: many(kept), tolerances: kept, duty: kept, waived: kept },
		'id',
	) as unknown as CoilDrawing;
}

const beam = (value: unknown): Fields => inShape(value, { nests: many(textIn), boxes: many(textIn) });

/** The job with lists where lists belong, whatever was written. */
export function shaped(written: Job): Job {
	return inShape(written, {
		tape: kept,
		record: kept,
		coils: many(drawing),
		nests: many(nest),
		bench: many(seat),
		replace: (replace) =>
			inShape(replace, { candidates: many(drawing), asked: kept, order: kept, waived: kept }),
		need: (need) => inShape(need, { bars: many(textIn) }),
		frame: (frame) =>
			inShape(frame, { supports: many(kept), shim_stock: many(textIn), beams: many(beam), centre: kept }),
	}) as unknown as Job;
}
