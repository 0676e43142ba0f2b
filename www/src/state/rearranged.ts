import type { Job, NestInput } from '../engine/types';
import { newDrawing, withNest } from './bench';

/* What is chosen from a menu, or in a section that is fetched later: each takes a job and gives the job after it. */

function moved<T>(list: readonly T[], from: number, to: number): T[] {
	const rest = list.filter((_, index) => index !== from);
	return [...rest.slice(0, to), ...list.slice(from, from + 1), ...rest.slice(to)];
}

function usesOf(job: Job, coil: string): number {
	const seats = (job.nests ?? []).flatMap((nest) => nest.seats ?? []);
	return [...seats, ...(job.bench ?? []), ...(job.set_aside ?? [])].filter((place) => place.coil === coil)
		.length;
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

/** Takes a nest out, and what was taped of it under further weights, which stands in no other place. */
export function removeNest(job: Job, at: number): Job {
	const called = (nest: NestInput, index: number): string => nest.id || `Nest ${index + 1}`;
	const names = (job.nests ?? []).map(called);
	const nests = (job.nests ?? []).filter((_, index) => index !== at);
	const [gone] = names.splice(at, 1);
	const weights = job.frame?.weights;
	if (weights === undefined || gone === undefined || names.includes(gone)) return { ...job, nests };
	const left = weights.map((weight) => ({
		...weight,
		...(weight.standing && { standing: weight.standing.filter((taped) => taped.at !== gone) }),
	}));
	return { ...job, nests, frame: { ...job.frame, weights: left } };
}

export function moveNest(job: Job, from: number, to: number): Job {
	return { ...job, nests: moved(job.nests ?? [], from, to) };
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
