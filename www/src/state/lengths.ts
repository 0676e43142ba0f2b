import { holds } from '../engine/fields/holds';
import { lengths } from '../engine/fields/lengths';
import type { Path } from './path';

const HOLDS: Record<string, Record<string, string | readonly [string]>> = holds;
const LENGTHS: Record<string, readonly string[]> = lengths;

/** Whether a length is written at `path`. */
export function isLength(path: Path): boolean {
	const names = path.replace(/\[\d+\]/g, '').split('.');
	const field = names.pop() ?? '';
	const inside = names.reduce((of, name) => [HOLDS[of]?.[name] ?? ''].flat()[0] ?? '', 'Job');
	return LENGTHS[inside]?.includes(field) ?? false;
}
