import { keep, kept } from '../state/persisted.svelte';

const KEY = 'learn';

/** Which lesson is open, and where each was left: the steps of its figure and the answer that was pressed. */
interface Left {
	at: number;
	where: Record<string, string>;
}

function read(): Left {
	try {
		const found: unknown = JSON.parse(kept(KEY) ?? '{}');
		const { at, where } = found as Partial<Left>;
		const texts = Object.entries(where ?? {}).filter(([, text]) => typeof text === 'string');
		return { at: Number.isInteger(at) ? Number(at) : 0, where: Object.fromEntries(texts) };
	} catch {
		return { at: 0, where: {} };
	}
}

/** What was left where in Learn; it stands apart from every job. */
class LearnStore {
	#left = $state.raw<Left>(read());
	/** Whether the list of words is looked at. */
	words = $state(false);

	get at(): number {
		return this.#left.at;
	}

	go(at: number): void {
		this.#keep({ ...this.#left, at });
	}

	/** The text that was left under `key`. */
	text(key: string, usual: string): string {
		return this.#left.where[key] ?? usual;
	}

	/** The number that was left under `key`, within its range. */
	number(key: string, usual: number, [least, most]: readonly [number, number]): number {
		const found = Number(this.#left.where[key] ?? usual);
		return Math.min(most, Math.max(least, Number.isFinite(found) ? found : usual));
	}

	put(key: string, value: string | number): void {
		this.#keep({ ...this.#left, where: { ...this.#left.where, [key]: String(value) } });
	}

	#keep(left: Left): void {
		this.#left = left;
		keep(KEY, JSON.stringify(left));
	}
}

export const learn = new LearnStore();
