import { tick } from 'svelte';
import { MediaQuery } from 'svelte/reactivity';
import { engine } from '../engine/engine';
import { chain } from './chain.svelte';
import { job } from './job.svelte';
import type { Path } from './path';
import { Preference } from './persisted.svelte';
import { view } from './view.svelte';

/** A field of a length that the keys write in. */
export interface Held {
	readonly path: Path;
	readonly name: string;
	readonly input: HTMLInputElement;
	readonly write: (text: string) => void;
}

/** What is left between a field and what covers the page beside it. */
const ROOM = 8;

/** The keys of the bench: on a touch screen a pad with digits and sixteenths, else the row of sixteenths. */
class Keypad {
	#held = $state.raw<Held>();
	#open = $state(false);
	readonly #small = new MediaQuery('(pointer: coarse), (max-width: 48rem)', false);
	/** Whether the pad stands in for the keyboard of the device. */
	readonly #style = new Preference('keys', ['pad', 'letters']);

	get held(): Held | undefined {
		return this.#held;
	}

	/** Whether the keys lie over the foot of the page, only while a field is held. */
	get isPad(): boolean {
		return this.#small.current;
	}

	get isOpen(): boolean {
		return !this.isPad || this.#open;
	}

	get letters(): boolean {
		return this.#style.value === 'letters';
	}

	/** What the device's own keyboard should be while a length is written. */
	get inputmode(): 'none' | 'text' {
		return this.isPad && !this.letters ? 'none' : 'text';
	}

	hold(held: Held): void {
		this.#held = held;
		this.#open = true;
		if (this.isPad) void this.#bringIntoSight(held.input);
	}

	/** With the pad open, the field and what follows from it stand between the head of the page and the pad. */
	async #bringIntoSight(input: HTMLInputElement): Promise<void> {
		await tick();
		const pad = document.querySelector('[data-pad]')?.getBoundingClientRect();
		const entry = input.closest('.entry') ?? input;
		if (pad === undefined) return;
		const head = parseFloat(getComputedStyle(document.documentElement).scrollPaddingTop) || 0;
		const field = entry.getBoundingClientRect();
		const most = field.top - head - ROOM;
		const covered = Math.max(0, field.bottom + ROOM - pad.top);
		// Under a reading there is always as much room as can be, since the verdict grows there as it is written.
		const by = input.closest('[data-coil]') || most < 0 ? most : Math.min(most, covered);
		scrollBy({ top: by, behavior: 'instant' });
	}

	/** The field has lost the focus; the row still writes in it, the pad closes. */
	release(path: Path): void {
		if (this.#held?.path === path) this.#open = false;
	}

	/** The field that is written by `write` has left the page, and what cannot be seen is not written in. */
	drop(write: Held['write']): void {
		if (this.#held?.write !== write) return;
		this.#held = undefined;
		this.#open = false;
	}

	/** A key of the sixteenth row. */
	press(key: string): void {
		const held = this.#held;
		if (held) void this.#put(engine.press(held.input.value, key));
	}

	/** A key that writes itself where the caret stands. */
	type(text: string): void {
		const input = this.#held?.input;
		if (input === undefined) return;
		const from = input.selectionStart ?? input.value.length;
		const to = input.selectionEnd ?? from;
		void this.#put(input.value.slice(0, from) + text + input.value.slice(to), from + text.length);
	}

	erase(): void {
		const input = this.#held?.input;
		if (input === undefined) return;
		const to = input.selectionEnd ?? input.value.length;
		const from = input.selectionStart === to ? Math.max(0, to - 1) : (input.selectionStart ?? 0);
		void this.#put(input.value.slice(0, from) + input.value.slice(to), from);
	}

	/** Changes between the pad and the device's keyboard, which only a new focus brings up. */
	async switchLetters(): Promise<void> {
		const input = this.#held?.input;
		this.#style.value = this.letters ? 'pad' : 'letters';
		await tick();
		input?.blur();
		input?.focus();
	}

	async #put(text: string, caret = text.length): Promise<void> {
		const held = this.#held;
		if (held === undefined) return;
		held.write(text);
		await tick();
		held.input.setSelectionRange(caret, caret);
	}

	/** Goes on to the next empty field of the chain, or of readings that stand together; elsewhere, to the next length on the page. */
	next(): void {
		this.#go((path) => chain.next(path), 1);
	}

	/** Goes back to the field before. */
	back(): void {
		this.#go((path) => chain.back(path), -1);
	}

	#go(within: (path: Path) => Path | undefined, by: 1 | -1): void {
		const held = this.#held;
		if (held === undefined) return;
		job.settle();
		if (chain.has(held.path)) {
			const to = within(held.path);
			if (to === undefined) held.input.blur();
			else void view.reach(to);
			return;
		}
		const together = held.input.closest('[data-readings]');
		const all = [...(together ?? document).querySelectorAll<HTMLInputElement>('main [data-length]')];
		const at = all.indexOf(held.input);
		const to = by < 0 ? all[at - 1] : all.slice(at + 1).find(({ value }) => !together || value === '');
		if (to === undefined) held.input.blur();
		to?.focus();
	}
}

export const keypad = new Keypad();
