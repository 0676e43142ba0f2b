import type { BenchCoil, Edit, Job, MatchedNest, Seat } from '../engine/types';
import { type Path, valueAt, withValue } from './path';
import { belongings, foundIn, isThere } from './placing';

/* What an answer for the whole frame changes, and the bench that it may draw on. */

/** What goes with a coil, with the word that it shares with coils from which it may not part. */
function paired(coil: Seat | BenchCoil): Omit<BenchCoil, 'coil'> {
	return { ...belongings(coil), ...(coil.pair === undefined ? {} : { pair: coil.pair }) };
}

/**
 * Puts each coil where it belongs. A seat keeps its raise and the drawing that it asks for; a coil that
 * has lost its seat goes to the end of the bench, under the drawing that it was made by, or is set aside with the
 * reason that `why` gives. What was found in a seat stays known.
 */
export function placed(
	job: Job,
	matched: readonly MatchedNest[],
	why: (path: Path) => string | undefined,
): Job {
	const nests = job.nests ?? [];
	const seatAt = (path: Path) => valueAt(job, path) as Seat;
	const targets = matched.flatMap((of) => {
		const at = nests.findIndex((nest) => nest.id.trim() === of.nest.trim());
		return of.seats.map(({ from }, seat) => ({ path: `nests[${at}].seats[${seat}]`, from }));
	});
	const moves = targets.filter(({ path }) => valueAt(job, path) !== undefined);
	const taken = new Set<Path>(moves.map(({ from }) => from));
	const left = moves.filter(({ path }) => !taken.has(path) && isThere(seatAt(path)));
	const bad = left.flatMap(({ path }) => {
		const reason = why(path);
		return reason === undefined
			? []
			: [{ ...belongings(seatAt(path)), coil: seatAt(path).coil ?? '', reason }];
	});
	const good = left
		.filter(({ path }) => why(path) === undefined)
		.map(({ path }): BenchCoil => ({ ...paired(seatAt(path)), coil: seatAt(path).coil ?? '' }));
	const after = moves.reduce((now, { path, from }) => {
		const stays = { ...seatAt(path) };
		delete stays.pair;
		delete stays.condition;
		delete stays.confirmed;
		const coil = valueAt(job, from) as Seat | BenchCoil | undefined;
		return coil === undefined || path === from
			? now
			: withValue(now, path, { ...stays, ...foundIn(seatAt(path)), ...paired(coil) });
	}, job);
	const waits = (job.bench ?? []).filter((_, i) => !taken.has(`bench[${i}]`));
	return {
		...after,
		bench: [...waits, ...good],
		...(bad.length === 0 ? {} : { set_aside: [...(job.set_aside ?? []), ...bad] }),
	};
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
