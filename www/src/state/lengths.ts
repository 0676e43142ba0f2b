import { holds } from '../engine/fields/holds';
import { lengths } from '../engine/fields/lengths';
import type { Path } from './path';
import type { Held } from './shape';

const HOLDS: Record<string, Record<string, Held>> = holds;
const LENGTHS: Record<string, readonly string[]> = lengths;

/** What the items of a list hold, of a list of lists the items of those. */
function innermost(of: Held): string {
	return typeof of === 'object' ? innermost(of[0]) : of;
}

/** Whether a length is written at `path`. */
export function isLength(path: Path): boolean {
	const names = path.replace(/\[\d+\]/g, '').split('.');
	const field = names.pop() ?? '';
	const inside = names.reduce((of, name) => innermost(HOLDS[of]?.[name] ?? ''), 'Job');
	return LENGTHS[inside]?.includes(field) ?? false;
}
