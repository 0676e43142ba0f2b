import type { Frame, Job } from '../engine/types';
import { weightsWith } from './bench';

type Nest = NonNullable<Job['nests']>[number];
type Of<T, K extends keyof T> = NonNullable<T[K]> extends (infer I)[] ? I : never;

/** A nest with an item more in one of its lists. */
export function addToNest<K extends 'stack' | 'guides'>(
	job: Job,
	nest: number,
	list: K,
	item: Of<Nest, K>,
): Job {
	return ofNest(job, nest, (of) => ({ ...of, [list]: [...(of[list] ?? []), item] }));
}

export function takeFromNest(job: Job, nest: number, list: 'stack' | 'guides', at: number): Job {
	return ofNest(job, nest, (of) => ({ ...of, [list]: (of[list] ?? []).filter((_, place) => place !== at) }));
}

function ofNest(job: Job, nest: number, by: (of: Nest) => Nest): Job {
	return { ...job, nests: (job.nests ?? []).map((of, at) => (at === nest ? by(of) : of)) };
}

/** A frame with an item more in one of its lists. */
export function addToFrame<K extends 'weights' | 'points'>(job: Job, list: K, item: Of<Frame, K>): Job {
	return { ...job, frame: { ...job.frame, [list]: [...(job.frame?.[list] ?? []), item] } };
}

export function takeFromFrame(job: Job, list: 'weights' | 'points', at: number): Job {
	const left = (job.frame?.[list] ?? []).filter((_, place) => place !== at);
	return { ...job, frame: { ...job.frame, [list]: left } };
}

/** Gives a point of the frame another name, and keeps its taped heights with it. */
export function renamePoint(job: Job, at: number, name: string): Job {
	const { points = [], weights } = job.frame ?? {};
	const called = (of?: string) => of || `Point ${at + 1}`;
	const old = called(points[at]?.name);
	const alone = points.filter((point) => point.name === old).length < 2;
	return {
		...job,
		frame: {
			...job.frame,
			points: points.map((point, place) => (place === at ? { ...point, name } : point)),
			...(weights && alone && { weights: weightsWith(weights, old, called(name)) }),
		},
	};
}
