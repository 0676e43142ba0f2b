/** The place of a field in a job, in the grammar of the report: `nests[0].seats[1].readings[2]`. */
export type Path = string;

type Step = string | number;

function steps(path: Path): Step[] {
	const found = path.match(/[^.[\]]+|\[\d+\]/g) ?? [];
	return found.map((step) => (step.startsWith('[') ? Number(step.slice(1, -1)) : step));
}

function child(value: unknown, step: Step): unknown {
	return value !== null && typeof value === 'object' ? (value as Record<Step, unknown>)[step] : undefined;
}

/** What stands at `path`, or undefined. */
export function valueAt(root: unknown, path: Path): unknown {
	return steps(path).reduce(child, root);
}

/** What is written in an entry, whatever a file holds there: a bare number is read as its text, as the engine does. */
export function textIn(entry: unknown): string {
	if (typeof entry === 'string') return entry;
	if (typeof entry === 'boolean') return entry ? 'yes' : 'no';
	return typeof entry === 'number' ? String(entry) : '';
}

/** The text that stands at `path`; empty where nothing stands. */
export function textAt(root: unknown, path: Path): string {
	return textIn(valueAt(root, path));
}

/** Whether `path` is `root`, or lies within it. */
export function isUnder(path: Path, root: Path): boolean {
	return path === root || path.startsWith(`${root}.`) || path.startsWith(`${root}[`);
}

function placed(root: unknown, [step, ...rest]: Step[], value: unknown): unknown {
	if (step === undefined) return value;
	const inner = placed(child(root, step), rest, value);
	if (typeof step === 'number') {
		const list: unknown[] = Array.isArray(root) ? [...root] : [];
		while (list.length < step) list.push('');
		list[step] = inner;
		return list;
	}
	const fields = root !== null && typeof root === 'object' && !Array.isArray(root) ? root : {};
	return { ...fields, [step]: inner };
}

/** A copy of `root` with `value` at `path`; what lies off the path is shared with the original. */
export function withValue<T>(root: T, path: Path, value: unknown): T {
	return placed(root, steps(path), value) as T;
}
