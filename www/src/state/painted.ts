/** A page that is out of sight paints nothing, and a busy one is never idle: what waits does so no longer. */
const LATEST_MS = 100;

/** When nothing waits for an answer, such as another key. */
export function whenIdle(act: () => void, timeout: number): void {
	if ('requestIdleCallback' in window) requestIdleCallback(act, { timeout });
	else setTimeout(act, timeout);
}

/** Gives a call that puts `act` off until what has changed is painted; called again meanwhile, it is still done once. */
export function afterPaint(act: () => void): () => void {
	let waits = false;
	const once = (): void => {
		if (!waits) return;
		waits = false;
		act();
	};
	return () => {
		if (waits) return;
		waits = true;
		requestAnimationFrame(() => whenIdle(once, LATEST_MS));
		setTimeout(once, LATEST_MS);
	};
}
