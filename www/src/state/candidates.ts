import type { CoilDrawing, Job, PairReport, Replace } from '../engine/types';

/* Springs that may replace a coil: each takes a job and gives the job after it. */

function withReplace(job: Job, by: (replace: Replace) => Replace): Job {
	return { ...job, replace: by(job.replace ?? {}) };
}

/** The drawing that is to be replaced: the one that is named, else the first. */
export function originalOf(job: Job): CoilDrawing | undefined {
	const name = job.replace?.original?.trim();
	const coils = job.coils ?? [];
	return name ? coils.find(({ id }) => id.trim() === name) : coils[0];
}

/** The job with the drawing named that is to be replaced, as it is shown: the first where none is named. */
export function withOriginal(job: Job): Job {
	const first = originalOf(job)?.id;
	if (!first || job.replace?.original?.trim()) return job;
	return withReplace(job, (replace) => ({ ...replace, original: first }));
}

/** The nests in which a drawing stands. */
export function nestsOf(job: Job, coil: string | undefined): string[] {
	return (job.nests ?? [])
		.filter(({ seats }) => (seats ?? []).some((seat) => seat.coil?.trim() === coil?.trim()))
		.map(({ id }) => id);
}

/**
 * The seats of a nest that hold a drawing, counted from 1, where it is held elsewhere too: which of them is meant has to
 * be said only then.
 */
export function seatsOf(job: Job, coil: string | undefined, nest: string): { id: string; name: string }[] {
	const held = (job.nests ?? []).flatMap(({ id, seats }) =>
		(seats ?? []).flatMap((seat, i) =>
			seat.coil?.trim() === coil?.trim() ? [{ nest: id, place: i + 1, label: seat.label }] : [],
		),
	);
	if (held.length < 2) return [];
	const named = ({ place, label }: { place: number; label?: string | undefined }) =>
		`seat ${place} of ${nest} alone${label ? `: ${label}` : ''}`;
	return held
		.filter((seat) => seat.nest === nest)
		.map((seat) => ({ id: String(seat.place), name: named(seat) }));
}

/** Means one seat of a nest alone, or all that hold the original. */
export function withSeat(job: Job, nest: string, seat: string): Job {
	return withReplace(job, (replace) => ({ ...replace, seat, ...(seat === '' ? {} : { nest }) }));
}

/** A name that no drawing and no candidate has yet: `offer 1`. */
function spareId(job: Job, others: readonly CoilDrawing[] = []): string {
	const taken = new Set(
		[...(job.coils ?? []), ...(job.replace?.candidates ?? []), ...others].map(({ id }) => id),
	);
	let count = (job.replace?.candidates?.length ?? 0) + others.length + 1;
	while (taken.has(`offer ${count}`)) count += 1;
	return `offer ${count}`;
}

/** Further candidates, after those that are there. */
export function withCandidates(job: Job, drawings: readonly CoilDrawing[]): Job {
	const named = drawings.reduce<CoilDrawing[]>(
		(before, drawing) => [...before, { ...drawing, id: spareId(job, before) }],
		[],
	);
	return withReplace(withOriginal(job), (replace) => ({
		...replace,
		candidates: [...(replace.candidates ?? []), ...named],
	}));
}

/** Whether the candidates are one nest. */
export function isTogether(job: Job): boolean {
	return !['', 'no'].includes(job.replace?.together?.trim() ?? '');
}

/** Judges the candidates each by itself, or as one nest: for every nest of the same coils, or for one alone. */
export function withReach(job: Job, nest: string, together: string): Job {
	return withReplace(job, (replace) => ({
		...replace,
		together,
		...(together === '' ? {} : { seat: '' }),
		...(together === 'this-nest' ? { nest } : {}),
	}));
}

/**
 * One drawing beside what is offered, or several as one nest. A nest and what is judged each by itself do not go
 * together: the one takes the place of the other.
 */
export function withDrawings(job: Job, drawings: readonly CoilDrawing[]): Job {
	if (drawings.length === 1 && !isTogether(job)) return withCandidates(job, drawings);
	const alone = withReplace(job, (replace) => ({ ...replace, candidates: [] }));
	const together = drawings.length === 1 ? '' : job.replace?.together === 'this-nest' ? 'this-nest' : 'yes';
	return withReach(withCandidates(alone, drawings), job.replace?.nest ?? '', together);
}

/** What a maker could offer first: the original over again, without what was found on a press. */
export function copied(job: Job): Job {
	const drawing = { ...(originalOf(job) ?? { id: '' }) };
	delete drawing.press_test;
	delete drawing.limits;
	const count = (job.replace?.candidates?.length ?? 0) + 1;
	return withCandidates(job, [{ ...drawing, name: `Offer ${count}` }]);
}

export function blank(job: Job): Job {
	const count = (job.replace?.candidates?.length ?? 0) + 1;
	return withCandidates(job, [{ id: '', name: `Offer ${count}` }]);
}

export function withoutCandidate(job: Job, at: number): Job {
	return withReplace(job, (replace) => ({
		...replace,
		candidates: (replace.candidates ?? []).filter((_, index) => index !== at),
	}));
}

/** Both coils of a pair, each a candidate. */
export function drawingsOf({ outer, inner }: PairReport): CoilDrawing[] {
	return [outer.drawing, inner.drawing];
}
