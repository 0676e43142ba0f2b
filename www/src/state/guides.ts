import type { Job } from '../engine/types';

type Guides = NonNullable<NonNullable<Job['nests']>[number]['guides']>;

const ofNest = (before: Job, nest: number, change: (guides: Guides) => Guides): Job => ({
	...before,
	nests: (before.nests ?? []).map((one, at) =>
		at === nest ? { ...one, guides: change(one.guides ?? []) } : one,
	),
});

/** A box more in a nest; the second is the one across. */
export function addGuides(before: Job, nest: number): Job {
	return ofNest(before, nest, (guides) => [...guides, { across: guides.length === 1 ? 'yes' : 'no' }]);
}

/** A nest without one of its boxes. */
export function removeGuides(before: Job, nest: number, at: number): Job {
	return ofNest(before, nest, (guides) => guides.filter((_, place) => place !== at));
}
