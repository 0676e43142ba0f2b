import type { CoilDrawing, Job, Limits } from '../engine/types';

/** How the book states a coil's limit: one figure both ways, one each way, or the two lengths. */
export type LimitKind = 'one' | 'sides' | 'lengths';

/** The fields of each kind, in order. */
export const LIMIT_FIELDS = {
	one: [{ key: 'under', label: 'Limit ±' }],
	sides: [
		{ key: 'under', label: 'Under' },
		{ key: 'over', label: 'Over' },
	],
	lengths: [
		{ key: 'least', label: 'Least' },
		{ key: 'most', label: 'Most' },
	],
} as const;

/** The kind that the written limits are of; undefined while nothing, or nothing telling, is written. */
export function kindOf(limits: Limits | undefined): LimitKind | undefined {
	const { under = '', over = '', least = '', most = '' } = limits ?? {};
	if (least !== '' || most !== '') return 'lengths';
	return under === over ? undefined : 'sides';
}

/** A job in which the limits of one coil are others. */
export function withLimits(job: Job, coil: number, by: (limits: Limits) => Limits): Job {
	const change = (drawing: CoilDrawing): CoilDrawing => ({ ...drawing, limits: by(drawing.limits ?? {}) });
	return {
		...job,
		coils: (job.coils ?? []).map((drawing, index) => (index === coil ? change(drawing) : drawing)),
	};
}

/** One limit for both ways. */
export function withLimit(job: Job, coil: number, text: string): Job {
	return withLimits(job, coil, (limits) => ({ ...limits, under: text, over: text }));
}
