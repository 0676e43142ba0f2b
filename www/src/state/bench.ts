import type { CoilDrawing, Job, NestInput, Seat } from '../engine/types';

/* What can be done with nests, seats and drawings as a whole: each takes a job and gives the job after it. */

function freshName(stem: string, taken: readonly string[]): string {
	let number = taken.length + 1;
	while (taken.includes(`${stem}${number}`)) number += 1;
	return `${stem}${number}`;
}

function withNest(job: Job, at: number, by: (nest: NestInput) => NestInput): Job {
	return { ...job, nests: (job.nests ?? []).map((nest, index) => (index === at ? by(nest) : nest)) };
}

function moved<T>(list: readonly T[], from: number, to: number): T[] {
	const rest = list.filter((_, index) => index !== from);
	return [...rest.slice(0, to), ...list.slice(from, from + 1), ...rest.slice(to)];
}

function usesOf(job: Job, coil: string): number {
	const seats = (job.nests ?? []).flatMap((nest) => nest.seats ?? []);
	return [...seats, ...(job.bench ?? []), ...(job.set_aside ?? [])].filter((place) => place.coil === coil)
		.length;
}

function newDrawing(job: Job): CoilDrawing {
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
	const seats = (last.seats ?? []).map((seat): Seat => {
		const empty = { ...seat, label: '', readings: [] };
		delete empty.condition;
		delete empty.found;
		delete empty.confirmed;
		return empty;
	});
	return { ...job, nests: [...nests, { ...last, id, seats }] };
}

/** The nests whose working height is that of the one `at`. */
export function sharesHeight(job: Job, at: number): number[] {
	const nests = job.nests ?? [];
	const height = (nest: NestInput | undefined) => nest?.working_height ?? '';
	return nests.flatMap((nest, index) => {
		const alike = height(nest) === height(nests[at]) && !nest.working_load;
		return index === at || alike ? [index] : [];
	});
}

/** Writes a working height, once for all nests that share it. */
export function withWorkingHeight(job: Job, at: readonly number[], text: string): Job {
	return at.reduce(
		(after, index) => withNest(after, index, (nest) => ({ ...nest, working_height: text })),
		job,
	);
}

export function removeNest(job: Job, at: number): Job {
	return { ...job, nests: (job.nests ?? []).filter((_, index) => index !== at) };
}

export function moveNest(job: Job, from: number, to: number): Job {
	return { ...job, nests: moved(job.nests ?? [], from, to) };
}

/** Gives a nest another name, and keeps the frame's supports and beams with it. */
export function renameNest(job: Job, at: number, name: string): Job {
	const old = job.nests?.[at]?.id;
	const renamed = withNest(job, at, (nest) => ({ ...nest, id: name }));
	const alone = (job.nests ?? []).filter((nest) => nest.id === old).length === 1;
	if (!alone || job.frame === undefined) return renamed;
	const { supports, beams } = job.frame;
	const now = (nest: string) => (nest === old ? name : nest);
	return {
		...renamed,
		frame: {
			...job.frame,
			...(supports && {
				supports: supports.map((support) => (support.nest === old ? { ...support, nest: name } : support)),
			}),
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

/** Takes a coil out of a nest; its drawing goes too when no other coil is made by it. */
export function removeCoil(job: Job, at: number, seat: number): Job {
	const id = job.nests?.[at]?.seats?.[seat]?.coil;
	const without = withNest(job, at, (nest) => ({
		...nest,
		seats: (nest.seats ?? []).filter((_, index) => index !== seat),
	}));
	if (id === undefined || usesOf(without, id) > 0) return without;
	return { ...without, coils: (without.coils ?? []).filter((coil) => coil.id !== id) };
}

export function moveCoil(job: Job, at: number, from: number, to: number): Job {
	return withNest(job, at, (nest) => ({ ...nest, seats: moved(nest.seats ?? [], from, to) }));
}

/** Gives a coil a drawing of its own that begins as a copy of the one it had. */
export function ownDrawing(job: Job, at: number, seat: number): Job {
	const id = job.nests?.[at]?.seats?.[seat]?.coil;
	const drawing = job.coils?.find((coil) => coil.id === id);
	const own = { ...drawing, id: newDrawing(job).id };
	return withNest({ ...job, coils: [...(job.coils ?? []), own] }, at, (nest) => ({
		...nest,
		seats: (nest.seats ?? []).map((held, index) => (index === seat ? { ...held, coil: own.id } : held)),
	}));
}
