import type {
	CoilReport,
	Figure,
	Job,
	NestInput,
	NestReport,
	Report,
	SeatReport,
	Slider,
} from '../engine/types';
import { type Path, withValue } from '../state/path';
import { ask } from './calls';

/** A coil of the nest: where it stands in the copy. */
export interface Part {
	seat: number;
	coil: number;
	name: string;
}

/** What lessons work on: a copy of one nest, each coil at its book figure. */
export interface Ground {
	job: Job;
	/** Whether it is a copy of the person's own nest. */
	own: boolean;
	nest: string;
	outer: Part;
	inner: Part;
	slider: Slider;
	/** The working height, as the engine is asked for it. */
	working: string;
	inch: boolean;
}

/** What is written into the copy, each at its path. */
export type Edits = Record<Path, unknown>;

export function edited(job: Job, edits: Edits): Job {
	return Object.entries(edits).reduce((made, [path, value]) => withValue(made, path, value), job);
}

/** A height, as the engine is asked for it to the last digit. */
export const exactly = ({ si }: Figure): string => `${si} m`;

/** A number of a scale as a text of a job. */
export const withUnit = (value: number, unit: string): string => `${Number(value.toFixed(6))} ${unit}`;

/** What a nest must be known by, so that every lesson has its figures. */
function isWhole(nest: NestReport, coils: readonly CoilReport[]): boolean {
	const known = (seat: SeatReport | undefined): boolean => {
		const coil = coils.find(({ id }) => id === seat?.coil);
		return Boolean(
			seat?.book && seat.verdict?.least && coil?.index && coil.active_turns && coil.rate && coil.solid,
		);
	};
	const [pair] = nest.clearances;
	return Boolean(
		nest.working &&
		!nest.working.solid &&
		nest.slider &&
		nest.solid_first !== undefined &&
		pair &&
		[pair.outer, pair.inner].every((seat) => known(nest.seats[seat])),
	);
}

function copyOf(job: Job, at: number): Job {
	const nest = job.nests?.[at];
	const books = new Map((job.coils ?? []).map(({ id, free }) => [id.trim(), free ?? '']));
	const seats = (nest?.seats ?? []).map(({ coil = '', raise = '' }) => {
		const book = books.get(coil.trim()) ?? '';
		return { coil, raise, readings: [book, book] };
	});
	const copy: NestInput = { ...nest, id: nest?.id ?? '', seats, ask: [] };
	const { format, system = 'inch', tape = {}, decision_level = '', coils = [] } = job;
	return { format, system, tape, decision_level, coils, nests: [copy] };
}

function groundIn(job: Job, report: Report, own: boolean): Ground | undefined {
	for (const [at, nest] of report.nests.entries()) {
		if (!isWhole(nest, report.coils)) continue;
		const copy = copyOf(job, at);
		const stood = ask.report(copy);
		const [found] = stood.nests;
		const [pair] = found?.clearances ?? [];
		if (!found?.slider || !found.working || !pair || !isWhole(found, stood.coils)) continue;
		const part = (seat: number): Part => ({
			seat,
			coil: stood.coils.findIndex(({ id }) => id === found.seats[seat]?.coil),
			name: found.seats[seat]?.name ?? '',
		});
		return {
			job: copy,
			own,
			nest: found.id,
			outer: part(pair.outer),
			inner: part(pair.inner),
			slider: found.slider,
			working: exactly(found.working.height),
			inch: found.slider.unit === 'in',
		};
	}
	return undefined;
}

/** A copy of the first nest of a job that has what lessons need, else of the demo's. */
export function groundOf(job: Job, report: Report): Ground {
	const demo = ask.demo();
	const ground = groundIn(job, report, true) ?? groundIn(demo, ask.report(demo), false);
	if (!ground) throw new Error('the demo lacks what lessons need');
	return ground;
}

/** The copy with something written into it, and what follows. */
export interface Stand {
	job: Job;
	report: Report;
	nest: NestReport;
	outer: { seat: SeatReport; coil: CoilReport };
	inner: { seat: SeatReport; coil: CoilReport };
	/** How a figure is worked out, with its numbers. */
	sum: (figure: Figure | undefined) => string;
}

export function sumIn(workings: Report['workings'], figure: Figure | undefined): string {
	const working = workings[figure?.working ?? ''];
	return figure && working ? `${working.with} = ${figure.text}` : '';
}

export function stand(ground: Ground, edits: Edits = {}): Stand {
	const job = edited(ground.job, edits);
	const report = ask.report(job);
	const [nest] = report.nests;
	const of = ({ seat, coil }: Part) => ({ seat: nest?.seats[seat], coil: report.coils[coil] });
	const [outer, inner] = [of(ground.outer), of(ground.inner)];
	if (!nest || !outer.seat || !outer.coil || !inner.seat || !inner.coil)
		throw new Error('the copy lost a coil of its nest');
	return {
		job,
		report,
		nest,
		outer: { seat: outer.seat, coil: outer.coil },
		inner: { seat: inner.seat, coil: inner.coil },
		sum: (figure) => sumIn(report.workings, figure),
	};
}

/** Readings of one text at so many places round a coil of the copy. */
export function read({ seat }: Part, text: string, places = 2): Edits {
	return { [`nests[0].seats[${seat}].readings`]: Array.from({ length: places }, () => text) };
}
