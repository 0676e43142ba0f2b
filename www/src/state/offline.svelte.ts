const WORKER = './sw.js';

/* The page's policy lets no text name a script: whatever it says, this one is meant. */
window.trustedTypes?.createPolicy('default', { createScriptURL: () => WORKER });

/** The page without the network, and its renewal, which waits for a yes. */
class Offline {
	#waiting = $state.raw<ServiceWorker>();
	#ready = $state(false);

	/** Whether a newer page has been fetched and waits. */
	get newer(): boolean {
		return this.#waiting !== undefined;
	}

	/** Whether this visit has made the page ready for use without the network. */
	get ready(): boolean {
		return this.#ready;
	}

	/** Has the built page kept by the browser; a browser that cannot, or may not, keeps nothing. */
	async begin(): Promise<void> {
		if (!import.meta.env.PROD || !('serviceWorker' in navigator)) return;
		const registration = await navigator.serviceWorker.register(WORKER).catch(() => undefined);
		if (registration === undefined) return;
		if (registration.waiting) this.#installed(registration.waiting);
		registration.addEventListener('updatefound', () => {
			const worker = registration.installing;
			worker?.addEventListener('statechange', () => {
				if (worker.state === 'installed') this.#installed(worker);
			});
		});
	}

	#installed(worker: ServiceWorker): void {
		if (navigator.serviceWorker.controller) this.#waiting = worker;
		else this.#ready = true;
	}

	/** Loads the newer page; in a tab where another tab had it take over already, at once. */
	renew(): void {
		const worker = this.#waiting;
		if (worker?.state !== 'installed') return location.reload();
		worker.addEventListener('statechange', () => location.reload(), { once: true });
		worker.postMessage('take over');
	}

	later(): void {
		this.#waiting = undefined;
	}
}

export const offline = new Offline();
