/** All that this page keeps on the device stands under this prefix, and no other key is touched. */
const PREFIX = 'coilnest:';

/** Keeps `text`; false where the device's storage is full or switched off. */
export function keep(key: string, text: string): boolean {
	try {
		localStorage.setItem(PREFIX + key, text);
		return true;
	} catch {
		return false;
	}
}

/** What was kept under `key`; null where nothing was, or where storage is switched off. */
export function kept(key: string): string | null {
	try {
		return localStorage.getItem(PREFIX + key);
	} catch {
		return null;
	}
}

/** Forgets what was kept under `key`. */
export function forget(key: string): void {
	try {
		localStorage.removeItem(PREFIX + key);
	} catch {
		// Storage that cannot be reached holds nothing to forget.
	}
}

/** The keys that begin with `start`. */
export function keptKeys(start: string): string[] {
	try {
		return Object.keys(localStorage)
			.filter((key) => key.startsWith(PREFIX + start))
			.map((key) => key.slice(PREFIX.length));
	} catch {
		return [];
	}
}

/** Calls `heard` whenever another tab keeps something under `key`. */
export function onKeptElsewhere(key: string, heard: (text: string) => void): void {
	addEventListener('storage', (event) => {
		if (event.key === PREFIX + key && event.newValue !== null) heard(event.newValue);
	});
}

/** One choice out of a few that outlives the visit and follows the other tabs. */
export class Preference<T extends string> {
	readonly #key: string;
	readonly #among: readonly T[];
	#value: T;

	constructor(key: string, among: readonly [T, ...T[]]) {
		this.#key = key;
		this.#among = among;
		this.#value = $state(this.#read(kept(key)) ?? among[0]);
		onKeptElsewhere(key, (text) => {
			this.#value = this.#read(text) ?? this.#value;
		});
	}

	#read(text: string | null): T | undefined {
		return this.#among.find((choice) => choice === text);
	}

	get value(): T {
		return this.#value;
	}

	set value(choice: T) {
		this.#value = choice;
		keep(this.#key, choice);
	}
}
