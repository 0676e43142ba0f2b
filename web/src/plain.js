/*
 * What JavaScript hands over may throw wherever it is touched, hold itself, or be walked for ever. What leaves here is a
 * plain copy. Nothing here throws either: a call that does would leave a reference behind in the engine.
 */

/** Deeper than any job is nested; what lies below is dropped. */
const DEEPEST = 32;

/** More than twenty thousand coils come to. */
const MOST = 1_000_000;

/** The value that a text of JSON holds, or undefined. */
export function parsed(text) {
	return tried(() => JSON.parse(text));
}

/** A copy of what JSON can hold of a value, or why and where there is none. */
export function plain(value) {
	const walk = { left: MOST, around: [], why: undefined, path: '' };
	const copy = copied(value, walk);
	return walk.why === undefined ? { copy } : { why: walk.why, path: walk.path };
}

/** Tells a listener which part is done. */
export function told(listener, part) {
	if (typeof listener === 'function') tried(() => listener(part));
}

function tried(by) {
	try {
		return by();
	} catch {
		return undefined;
	}
}

function copied(value, walk) {
	if (['string', 'boolean'].includes(typeof value) || Number.isFinite(value)) return value;
	if (typeof value !== 'object' || value === null || walk.around.length > DEEPEST) return null;
	if (walk.around.includes(value)) {
		walk.why = 'holds-itself';
		return null;
	}
	walk.around.push(value);
	const copy = tried(() => Array.isArray(value)) ? listed(value, walk) : named(value, walk);
	walk.around.pop();
	return copy;
}

function listed(value, walk) {
	const length = tried(() => value.length) ?? 0;
	const copy = [];
	for (let at = 0; at < length && walk.why === undefined; at += 1) {
		copy.push(within(tried(() => value[at]), walk, `[${at}]`));
	}
	return copy;
}

function named(value, walk) {
	const entries = [];
	for (const name of tried(() => Object.keys(value)) ?? []) {
		const held = tried(() => value[name]);
		if (!['undefined', 'function', 'symbol'].includes(typeof held)) {
			entries.push([name, within(held, walk, `.${name}`)]);
		}
		if (walk.why !== undefined) break;
	}
	return Object.fromEntries(entries);
}

function within(value, walk, step) {
	walk.left -= 1;
	if (walk.left < 0) walk.why = 'too-many-values';
	else {
		const copy = copied(value, walk);
		if (walk.why === undefined) return copy;
	}
	walk.path = walk.path === '' ? step : step + walk.path;
	return null;
}
