/** Numbers at random that a seed repeats, alike on every machine (mulberry32). */
export class Seeded {
	#state;

	constructor(/** @type {number} */ seed) {
		this.#state = seed;
	}

	/** A whole number from zero on, below `most`. */
	below(/** @type {number} */ most) {
		this.#state = (this.#state + 0x6d2b79f5) | 0;
		let mixed = Math.imul(this.#state ^ (this.#state >>> 15), 1 | this.#state);
		mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
		return Math.floor((((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32) * most);
	}

	/**
	 * One of a list that is not empty.
	 * @template T
	 * @param {readonly T[]} list
	 * @returns {T}
	 */
	pick(list) {
		return /** @type {T} */ (list[this.below(list.length)]);
	}
}
