import type { Beam, Frame, Job, Support } from '../engine/types';
import type { Path } from './path';

/* What can be done with the frame as a whole: each takes a job and gives the job after it. */

function withFrame(job: Job, by: (frame: Frame) => Frame): Job {
	return { ...job, frame: by(job.frame ?? {}) };
}

/** Sets the frame on all nests of the job; where each stands is left to write. */
export function setOnNests(job: Job): Job {
	const supports = (job.nests ?? []).map(({ id }): Support => ({ nest: id, along: '', across: '' }));
	return withFrame(job, (frame) => ({ weight: '', ...frame, supports }));
}

/** Whether two distances say where the nests stand: four of them, none with a place of its own. */
export function isSpread(frame: Frame): boolean {
	const supports = frame.supports ?? [];
	return supports.length === 4 && supports.every(({ along, across }) => !along && !across);
}

/** Whether a field says which shims there are. */
export function isOfShims(path: Path): boolean {
	return /^frame\.(shim_stock|largest_stack)/.test(path);
}

/** A further support, under the first nest that has none. */
export function addSupport(job: Job): Job {
	const supports = job.frame?.supports ?? [];
	const spare = (job.nests ?? []).find(({ id }) => supports.every((support) => support.nest !== id));
	const support = { nest: spare?.id ?? '', along: '', across: '' };
	return withFrame(job, (frame) => ({ ...frame, supports: [...supports, support] }));
}

export function removeSupport(job: Job, at: number): Job {
	const supports = (job.frame?.supports ?? []).filter((_, index) => index !== at);
	return withFrame(job, (frame) => ({ ...frame, supports }));
}

export function addBeam(job: Job): Job {
	const beams = job.frame?.beams ?? [];
	const beam: Beam = { name: `Beam ${beams.length + 1}`, nests: [], boxes: ['', ''] };
	return withFrame(job, (frame) => ({ ...frame, beams: [...beams, beam] }));
}

export function removeBeam(job: Job, at: number): Job {
	const beams = (job.frame?.beams ?? []).filter((_, index) => index !== at);
	return withFrame(job, (frame) => ({ ...frame, beams }));
}

/** Puts a nest on a beam, or takes it off. */
export function shiftOnBeam(job: Job, at: number, nest: string): Job {
	const beams = (job.frame?.beams ?? []).map((beam, index): Beam => {
		if (index !== at) return beam;
		const nests = beam.nests ?? [];
		return {
			...beam,
			nests: nests.includes(nest) ? nests.filter((other) => other !== nest) : [...nests, nest],
		};
	});
	return withFrame(job, (frame) => ({ ...frame, beams }));
}
