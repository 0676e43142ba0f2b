import type { CoilDrawing, Job, NestInput, Seat } from '../engine/types';

/*
 * A file that was damaged, or written by hand, may hold a word where a list belongs. The report says so; here such a
 * value counts as nothing written, so that the rest can be drawn and edited. Each item keeps its place in its list.
 */

type Fields = Record<string, unknown>;

function fields(value: unknown): Fields {
	return value !== null && typeof value === 'object' && !Array.isArray(value) ? (value as Fields) : {};
}

function list<T>(value: unknown, item: (value: unknown) => T): T[] {
	return Array.isArray(value) ? value.map(item) : [];
}

function text(value: unknown): string {
	return typeof value === 'string' ? value : '';
}

/** The fields of `value`, those that `parts` names brought into shape; what is not there is not added. */
function inShape(value: unknown, parts: Record<string, (part: unknown) => unknown>): Fields {
	const own = fields(value);
	const present = Object.entries(parts).filter(([name]) => own[name] !== undefined);
	return { ...own, ...Object.fromEntries(present.map(([name, part]) => [name, part(own[name])])) };
}

const many =
	<T>(item: (value: unknown) => T) =>
	(value: unknown): T[] =>
		list(value, item);

function seat(value: unknown): Seat {
	const own = inShape(value, { readings: many(text) });
	return { ...own, coil: text(own['coil']) };
}

function nest(value: unknown): NestInput {
	const own = inShape(value, { seats: many(seat), ask: many(text) });
	return { ...own, id: text(own['id']) };
}

function drawing(value: unknown): CoilDrawing {
	const own = inShape(value, { limits: fields, press_test: many(fields) });
	return { ...own, id: text(own['id']) };
}

/** The job with lists where lists belong, whatever was written. */
export function shaped(written: Job): Job {
	const own = inShape(written, {
		tape: fields,
		record: fields,
		coils: many(drawing),
		nests: many(nest),
		bench: many(seat),
		frame: (frame) => inShape(frame, { supports: many(fields) }),
	});
	return { ...own, format: written.format };
}
