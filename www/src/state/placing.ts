import type { BenchCoil, Edit, Job, MatchedNest, Seat } from '../engine/types';
import { type Path, valueAt, withValue } from './path';

/* Coils that change their place: each takes a job and gives the job after it. */

/** What goes with a coil, wherever it is put. */
function belongings({ label, readings, pair, condition, confirmed }: Seat | BenchCoil): Seat {
	return {
		label: label ?? '',
		readings: readings ?? [],
		...(pair === undefined ? {} : { pair }),
		...(condition === undefined ? {} : { condition }),
		...(confirmed === undefined ? {} : { confirmed }),
	};
}

/** Whether a coil is there, and not a place alone. */
function isThere({ label, readings, condition }: Seat): boolean {
	return (
		Boolean(label?.trim() || condition?.trim()) || (readings ?? []).some((reading) => reading.trim() !== '')
	);
}

/**
 * Puts each coil where it belongs. A seat keeps its raise and the drawing that it asks for; a coil that
 * has lost its seat goes to the end of the bench, under the drawing that it was made by.
 */
export function placed(job: Job, matched: readonly MatchedNest[]): Job {
	const nests = job.nests ?? [];
	const targets = matched.flatMap((of) => {
		const at = nests.findIndex((nest) => nest.id.trim() === of.nest.trim());
		return of.seats.map(({ from }, seat) => ({ path: `nests[${at}].seats[${seat}]`, from }));
	});
	const moves = targets.filter(({ path }) => valueAt(job, path) !== undefined);
	const taken = new Set<Path>(moves.map(({ from }) => from));
	const left = moves.flatMap(({ path }): BenchCoil[] => {
		const seat = valueAt(job, path) as Seat;
		if (taken.has(path) || !isThere(seat)) return [];
		return [{ ...belongings(seat), ...(seat.coil === undefined ? {} : { coil: seat.coil }) }];
	});
	const after = moves.reduce((now, { path, from }) => {
		const stays = { ...(valueAt(job, path) as Seat) };
		delete stays.pair;
		delete stays.condition;
		delete stays.confirmed;
		const coil = valueAt(job, from) as Seat | BenchCoil | undefined;
		return coil === undefined || path === from
			? now
			: withValue(now, path, { ...stays, ...belongings(coil) });
	}, job);
	const waits = (job.bench ?? []).filter((_, i) => !taken.has(`bench[${i}]`));
	return { ...after, bench: [...waits, ...left] };
}

/** A further coil on the bench, by the same drawing as the last one. */
export function addToBench(job: Job): Job {
	const bench = job.bench ?? [];
	const coil = bench.at(-1)?.coil ?? job.coils?.[0]?.id ?? '';
	return { ...job, bench: [...bench, { label: '', coil, readings: [] }] };
}

export function removeFromBench(job: Job, at: number): Job {
	return { ...job, bench: (job.bench ?? []).filter((_, index) => index !== at) };
}

/** Writes what an answer says is to be written, all at once. */
export function withEdits(job: Job, edits: readonly Edit[]): Job {
	return edits.reduce((now, { path, text }) => withValue(now, path, text), job);
}
