/** Whether an engine fell at the job as it is written now, so that what is shown follows from an earlier one. */
class Trouble {
	#fell = $state(false);

	get fell(): boolean {
		return this.#fell;
	}

	/** Called while something is worked out, when no state may change yet. */
	tell(): void {
		queueMicrotask(() => (this.#fell = true));
	}

	/** The job is another now: each engine is asked again. */
	end(): void {
		this.#fell = false;
	}
}

export const trouble = new Trouble();
