import { holds } from '../engine/fields/holds';
import type { Job } from '../engine/types';
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

/** What stands in a field of an object: an object by its name, or a list of such, or of lists; else a text. */
export type Held = string | readonly [Held];
const HOLDS: Record<string, Record<string, Held>> = holds;
/** The field by which an object is known: it is always there. */
const ALWAYS: Record<string, string> = {
	CoilDrawing: 'id',
	NestInput: 'id',
	Seat: 'coil',
	BenchCoil: 'coil',
};

/** The fields of an object, each in its shape, and none added but that by which it is known. */
function inShape(value: unknown, name: string): Fields {
	const own = fields(value);
	const inside = HOLDS[name] ?? {};
	const shapedField = ([field, held]: [string, unknown]): [string, unknown] => {
		const of = Object.hasOwn(inside, field) ? inside[field] : undefined;
		return [field, item(held, of)];
	};
	const there = Object.entries(own).filter(([, held]) => held !== undefined);
	const shaped: Fields = Object.fromEntries(there.map(shapedField));
	const always = ALWAYS[name];
	if (always !== undefined) shaped[always] = textIn(own[always]);
	const origin: Origin = { written: value, shaped };
	return { ...shaped, [ORIGIN]: origin };
}

function item(value: unknown, of?: Held): unknown {
	if (typeof of === 'object') return many(value, of[0]);
	// A job within the job is shaped where it is looked at.
	if (of === 'whole') return isFields(value) ? value : {};
	return of === undefined || of === 'text' ? textIn(value) : inShape(value, of);
}

function many(value: unknown, of: Held): unknown[] {
	const shaped = Array.isArray(value) ? value.map((held) => item(held, of)) : [];
	writtenLists.set(shaped, value);
	return shaped;
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

/** The job with lists where lists belong, whatever was written. */
export function shaped(written: Job): Job {
	return inShape(written, 'Job') as unknown as Job;
}
