import type { BenchCoil, FoundCoil, Job, Seat } from '../engine/types';
import { valueAt, withValue } from './path';

/* Coils that change their place: each takes a job and gives the job after it. */

/** What goes with a coil, wherever it is put. */
export function belongings({ label, readings, condition, confirmed }: Seat | BenchCoil): FoundCoil {
	return {
		label: label ?? '',
		readings: readings ?? [],
		...(condition === undefined ? {} : { condition }),
		...(confirmed === undefined ? {} : { confirmed }),
	};
}

/** Whether a coil is there, and not a place alone. */
export function isThere(seat: Seat | undefined): boolean {
	const { label, readings, condition } = seat ?? {};
	return (
		Boolean(label?.trim() || condition?.trim()) || (readings ?? []).some((reading) => reading.trim() !== '')
	);
}

/** What was found in a seat stays known, whatever is fitted there later. */
export function foundIn(seat: Seat): Pick<Seat, 'found'> {
	const found = seat.found ?? (isThere(seat) ? belongings(seat) : undefined);
	return found === undefined ? {} : { found };
}

/** Empties a seat for another coil; the one that was there is set aside, and stays known as found. */
export function anotherCoil(job: Job, nest: number, at: number, reason: string): Job {
	const path = `nests[${nest}].seats[${at}]`;
	const seat = valueAt(job, path) as Seat;
	const { raise } = seat;
	const empty: Seat = {
		coil: seat.coil ?? '',
		label: '',
		readings: [],
		...(raise === undefined ? {} : { raise }),
		...foundIn(seat),
	};
	const after = withValue(job, path, empty);
	return {
		...after,
		set_aside: [...(job.set_aside ?? []), { ...belongings(seat), coil: seat.coil ?? '', reason }],
	};
}
