import type { CoilDrawing, Job, LoadCase, NestInput, Seat } from '../engine/types';

/* What can be done with nests, seats and drawings as a whole: each takes a job and gives the job after it. */

function freshName(stem: string, taken: readonly string[]): string {
	let number = taken.length + 1;
	while (taken.includes(`${stem}${number}`)) number += 1;
	return `${stem}${number}`;
}

export function withNest(job: Job, at: number, by: (nest: NestInput) => NestInput): Job {
	return { ...job, nests: (job.nests ?? []).map((nest, index) => (index === at ? by(nest) : nest)) };
}

export function newDrawing(job: Job): CoilDrawing {
	const taken = (job.coils ?? []).map((coil) => coil.id);
	const id = freshName('coil-', taken);
	return { id, name: id.replace('coil-', 'Coil '), free: '', limits: { under: '', over: '' } };
}

/** A further nest, with the same coils as the last one and nothing measured. */
export function addNest(job: Job): Job {
	const nests = job.nests ?? [];
	const last = nests.at(-1);
	const id = freshName(
		'Nest ',
		nests.map((nest) => nest.id),
	);
	if (last === undefined) return addCoil({ ...job, nests: [{ id, seats: [] }] }, 0);
	const seats = (last.seats ?? []).map((seat) =>
		without({ ...seat, label: '', readings: [] }, 'condition', 'found', 'confirmed'),
	);
	return { ...job, nests: [...nests, { ...unmeasured(last), id, seats }] };
}

/** What an object holds, but for some of its fields. */
export function without<T extends object>(of: T, ...names: (keyof T & string)[]): T {
	const kept = Object.entries(of).filter(([name]) => !names.some((out) => out === name));
	return Object.fromEntries(kept) as T;
}

/** A nest with nothing taped over its seats: of its boxes and layers stays what a drawing says. */
export const unmeasured = (nest: NestInput): NestInput => ({
	...without(nest, 'standing'),
	...(nest.guides && {
		guides: nest.guides.map((box) => without(box, 'opening', 'box', 'liners')),
	}),
	...(nest.stack && { stack: nest.stack.map((layer) => without(layer, 'thickness', 'missing')) }),
});

/** The weights of a frame, what was taped at a place under its new name. */
export const weightsWith = (weights: LoadCase[], old: string, name: string): LoadCase[] =>
	weights.map(({ standing, ...weight }) => ({
		...weight,
		...(standing && {
			standing: standing.map((taped) => (taped.at === old ? { ...taped, at: name } : taped)),
		}),
	}));

/** Gives a nest another name, and keeps the frame's supports, beams and taped heights with it. */
export function renameNest(job: Job, at: number, name: string): Job {
	const old = job.nests?.[at]?.id;
	const renamed = withNest(job, at, (nest) => ({ ...nest, id: name }));
	const alone = (job.nests ?? []).filter((nest) => nest.id === old).length === 1;
	if (!alone || job.frame === undefined) return renamed;
	const { supports, beams, weights } = job.frame;
	const now = (nest: string) => (nest === old ? name : nest);
	const called = (nest?: string) => nest || `Nest ${at + 1}`;
	return {
		...renamed,
		frame: {
			...job.frame,
			...(supports && {
				supports: supports.map((support) => (support.nest === old ? { ...support, nest: name } : support)),
			}),
			...(weights && { weights: weightsWith(weights, called(old), called(name)) }),
			...(beams && {
				beams: beams.map((beam) =>
					beam.nests?.some((nest) => nest === old) ? { ...beam, nests: beam.nests.map(now) } : beam,
				),
			}),
		},
	};
}

/** A further coil in a nest: of a drawing that the nest does not hold yet, else of a new one. */
export function addCoil(job: Job, at: number): Job {
	const held = (job.nests?.[at]?.seats ?? []).map((seat) => seat.coil);
	const spare = (job.coils ?? []).find((coil) => !held.includes(coil.id));
	const drawing = spare ?? newDrawing(job);
	const coils = spare ? (job.coils ?? []) : [...(job.coils ?? []), drawing];
	const seat: Seat = { coil: drawing.id, label: '', readings: [] };
	return withNest({ ...job, coils }, at, (nest) => ({ ...nest, seats: [...(nest.seats ?? []), seat] }));
}

/** Puts a coil that was set aside back on the bench. */
export function toBench(job: Job, at: number): Job {
	const aside = job.set_aside ?? [];
	const coil = { ...aside[at] };
	delete coil.reason;
	return {
		...job,
		set_aside: aside.filter((_, index) => index !== at),
		bench: [...(job.bench ?? []), coil],
	};
}
