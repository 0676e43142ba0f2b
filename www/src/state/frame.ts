import type { Beam, Frame, Job, Support } from '../engine/types';
import { withValue } from './path';

/* What can be done with the frame as a whole: each takes a job and gives the job after it. */

function withFrame(job: Job, by: (frame: Frame) => Frame): Job {
	return { ...job, frame: by(job.frame ?? {}) };
}

/** Sets the frame on all nests of the job; where each stands is left to write. */
export function setOnNests(job: Job): Job {
	const supports = (job.nests ?? []).map(({ id }): Support => ({ nest: id, along: '', across: '' }));
	return withFrame(job, (frame) => ({ weight: '', ...frame, supports }));
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

/** Two numbers that are written on either side of the middle, for four nests in the corners. */
export type Half = 'along' | 'across';

/** A corner: whether it is on the side that counts from the middle with a plus, along and across. */
type Corner = Record<Half, boolean>;

function cornerOf(nest: string | undefined): Corner | undefined {
	const words = (nest ?? '').toLowerCase().split(/\s+/);
	const along = words.includes('a') !== words.includes('b');
	const across = words.includes('left') !== words.includes('right');
	return along && across ? { along: words.includes('a'), across: words.includes('left') } : undefined;
}

/** Where the four nests of a frame stand, if their names say that they stand in its four corners. */
export function cornersOf(supports: readonly Support[]): Corner[] | undefined {
	const corners = supports.flatMap((support) => cornerOf(support.nest) ?? []);
	const kinds = new Set(corners.map(({ along, across }) => `${along} ${across}`));
	return supports.length === 4 && kinds.size === 4 ? corners : undefined;
}

/** The same distance to the other side of the middle. */
function mirrored(text: string): string {
	const bare = text.trim();
	if (bare === '') return '';
	return /^[-−]/.test(bare) ? bare.slice(1) : `-${bare}`;
}

/** The number from which the places of all corners are written; none where each has its own. */
export function halfOf(supports: readonly Support[], half: Half): string | undefined {
	const corners = cornersOf(supports);
	const front = corners?.findIndex((corner) => corner[half]) ?? -1;
	const text = supports[front]?.[half] ?? '';
	const alike = corners?.every(
		(corner, i) => (supports[i]?.[half] ?? '') === (corner[half] ? text : mirrored(text)),
	);
	return alike ? text : undefined;
}

/** Where that number is written first. */
export function halfPath(supports: readonly Support[], half: Half): string {
	const front = cornersOf(supports)?.findIndex((corner) => corner[half]) ?? 0;
	return `frame.supports[${front}].${half}`;
}

/** Writes one distance from the middle at all four corners. */
export function withHalf(job: Job, half: Half, text: string): Job {
	const corners = cornersOf(job.frame?.supports ?? []) ?? [];
	return corners.reduce(
		(after, corner, i) =>
			withValue(after, `frame.supports[${i}].${half}`, corner[half] ? text : mirrored(text)),
		job,
	);
}
