/** A busy page is never idle: what waits for that does so no longer. */
const LATEST_MS = 100;
/** A page that is out of sight paints nothing; one that is slow has painted by then. */
const UNSEEN_MS = 1000;

/** When nothing waits for an answer, such as another key. */
export function whenIdle(act: () => void, timeout: number): void {
	if ('requestIdleCallback' in window) requestIdleCallback(act, { timeout });
	else setTimeout(act, timeout);
}

/** Gives a call that puts `act` off until what has changed is painted; called again meanwhile, it is still done once. */
export function afterPaint(act: () => void): () => void {
	let unseen: ReturnType<typeof setTimeout> | undefined;
	const once = (): void => {
		if (unseen === undefined) return;
		// Left running, it would fall into the midst of a later key.
		clearTimeout(unseen);
		unseen = undefined;
		act();
	};
	return () => {
		if (unseen !== undefined) return;
		unseen = setTimeout(once, UNSEEN_MS);
		requestAnimationFrame(() => whenIdle(once, LATEST_MS));
	};
}
