import type { Component } from 'svelte';
import { job } from './job.svelte';
import { later } from './later.svelte';
import { whenIdle } from './painted';

/** So long after the last change the record is made ready again, and no later than so long after that. */
const AFTER_MS = 1500;

/** What is printed: the record of the job wherever one stands, or the section alone where that is asked for. */
class Paper {
	#sheet = $state.raw<Component>();
	#alone = $state(false);
	/** Whether the record itself was asked for, and not by a browser's own menu. */
	#asked = $state(false);
	/** How many documents of their own are open. */
	#own = $state(0);
	#missing = $state(false);

	/**
	 * The record, once it is fetched, unless a section is to be printed alone. A browser's own menu prints a document of
	 * its own that is open, not the record.
	 */
	get sheet(): Component | undefined {
		return this.#alone || (this.#own > 0 && !this.#asked) ? undefined : this.#sheet;
	}

	/** For as long as a document is open that is one of its own: a drawing sheet, a letter, how this was checked. */
	own(): () => void {
		this.#own += 1;
		return () => (this.#own -= 1);
	}

	/** Whether the record could not be fetched when it was last asked for. */
	get missing(): boolean {
		return this.#missing;
	}

	/** Prints the record; where it cannot be fetched, nothing, and says so. */
	async print(): Promise<void> {
		this.#missing = !(await this.#make());
		if (this.#missing) return;
		this.#alone = false;
		this.#asked = true;
		print();
	}

	/** Has the record ready from now on, since a browser that is asked to print by its own menu waits for nothing. */
	async keepReady(): Promise<void> {
		await this.#make();
		let soon: ReturnType<typeof setTimeout> | undefined;
		job.onChange(() => {
			clearTimeout(soon);
			soon = setTimeout(() => whenIdle(() => void this.#make(), AFTER_MS), AFTER_MS);
		});
	}

	/** Whether the record is there, as the job is now. */
	async #make(): Promise<boolean> {
		const made = await later
			.sheet()
			.then(({ sheet }) => sheet())
			.catch(() => undefined);
		this.#sheet = made ?? this.#sheet;
		return made !== undefined;
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
		this.#asked = false;
	}
}

export const paper = new Paper();
