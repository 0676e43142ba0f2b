import type { Component } from 'svelte';
import { later } from './later.svelte';

/** What is printed: the record of the job wherever one stands, or the section alone where that is asked for. */
class Paper {
	#sheet = $state.raw<Component>();
	#alone = $state(false);
	#missing = $state(false);

	/** The record, once it is fetched and for as long as no section is to be printed alone. */
	get sheet(): Component | undefined {
		return this.#alone ? undefined : this.#sheet;
	}

	/** Whether the record could not be fetched when it was last asked for. */
	get missing(): boolean {
		return this.#missing;
	}

	/** Prints the record; where it cannot be fetched, nothing, and says so. */
	async print(): Promise<void> {
		const made = await later
			.sheet()
			.then(({ sheet }) => sheet())
			.catch(() => undefined);
		this.#missing = made === undefined;
		if (made === undefined) return;
		this.#sheet = made;
		this.#alone = false;
		print();
	}

	forgetMissing(): void {
		this.#missing = false;
	}

	/** Prints the section that is looked at, as it stands. */
	printAlone(): void {
		this.#alone = true;
		print();
	}

	/** Called when something has been printed. */
	end(): void {
		this.#alone = false;
	}
}

export const paper = new Paper();
