import type { Frame, Job } from '../engine/types';

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
