import type { Job } from '../engine/types';
import { type LimitKind, withLimits } from './limits';

export const LIMIT_KINDS: readonly { id: LimitKind; name: string }[] = [
	{ id: 'one', name: '±' },
	{ id: 'sides', name: 'under, over' },
	{ id: 'lengths', name: 'least, most' },
];

/** Empties the limits that `kind` does not show, so that none of them binds unseen. */
export function withLimitKind(job: Job, coil: number, kind: LimitKind): Job {
	return withLimits(job, coil, (limits) => {
		if (kind === 'lengths') return { ...limits, under: '', over: '' };
		const over = kind === 'one' ? (limits.under ?? '') : (limits.over ?? '');
		return { ...limits, over, least: '', most: '' };
	});
}
