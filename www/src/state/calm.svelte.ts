import { untrack } from 'svelte';

/** A value that changes again before so many milliseconds is in motion. */
export const STILL_MS = 120;

/**
 * A value that follows another, at once where `atOnce` says so; but while that one is in motion, as under a dragged
 * mark, waits until it is still: for tables and texts, which nobody reads meanwhile, and which would cost the drawing
 * its frames.
 */
export function calm<T>(of: () => T, atOnce = true): { readonly value: T } {
	let value = $state.raw(untrack(of));
	let changed = -Infinity;
	$effect.pre(() => {
		const next = of();
		if (next === untrack(() => value)) return;
		const now = performance.now();
		const moves = now - changed < STILL_MS;
		changed = now;
		if (atOnce && !moves) {
			value = next;
			return;
		}
		const timer = setTimeout(() => (value = next), STILL_MS);
		return () => clearTimeout(timer);
	});
	return {
		get value() {
			return value;
		},
	};
}
