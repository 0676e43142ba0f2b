import type { Component } from 'svelte';
import { job } from './job.svelte';
import { later } from './later.svelte';
import { whenIdle } from './painted';
import { view } from './view.svelte';

/** So long after the last change the record is made ready again, and no later than so long after that. */
const AFTER_MS = 1500;

/** What is printed: the record of the job wherever one stands, or the section alone where that is asked for. */
class Paper {
	#sheet = $state.raw<Component>();
	#alone = $state(false);
	/** Whether the record itself was asked for, and no browser's own menu. */
	#asked = $state(false);
	#missing = $state(false);

	/**
	 * The record, once it is fetched and for as long as no section is to be printed alone. How this was checked is of no
	 * job: a browser's own menu prints it as it stands.
	 */
	get sheet(): Component | undefined {
		const isOfNoJob = view.section === 'checked' && !this.#asked;
		return this.#alone || isOfNoJob ? undefined : this.#sheet;
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
