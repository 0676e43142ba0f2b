import { tick } from 'svelte';
import { MediaQuery } from 'svelte/reactivity';
import { engine } from '../engine/engine';
import { job } from './job.svelte';
import type { Path } from './path';
import { Preference } from './persisted.svelte';

/** A measuring field that the keys write in. */
export interface Held {
	readonly path: Path;
	readonly name: string;
	readonly input: HTMLInputElement;
	readonly write: (text: string) => void;
}

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

	/** What the device's own keyboard should be while a measuring field is held. */
	get inputmode(): 'none' | 'text' {
		return this.isPad && !this.letters ? 'none' : 'text';
	}

	hold(held: Held): void {
		this.#held = held;
		this.#open = true;
		if (this.isPad) void this.#bringIntoSight(held.input);
	}

	/** With the pad open, the whole of a coil from its name to its verdict stands between the bar and the pad. */
	async #bringIntoSight(input: HTMLInputElement): Promise<void> {
		await tick();
		const coil = input.closest('[data-coil]');
		const pad = document.querySelector('[data-pad]')?.getBoundingClientRect();
		if (coil && pad && coil.getBoundingClientRect().bottom > pad.top) coil.scrollIntoView();
	}

	/** The field has lost the focus; the row still writes in it, the pad closes. */
	release(path: Path): void {
		if (this.#held?.path === path) this.#open = false;
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

	/** Goes on to the next measuring field; from an empty reading, to the next coil. */
	next(): void {
		this.#go(1);
	}

	back(): void {
		this.#go(-1);
	}

	#go(by: 1 | -1): void {
		const input = this.#held?.input;
		if (input === undefined) return;
		job.settle();
		const all = [...document.querySelectorAll<HTMLInputElement>('[data-measured] input')];
		const done = by === 1 && input.value === '' && input.closest('[data-measured="reading"]') !== null;
		const onward = all.slice(all.indexOf(input) + 1);
		const to = done
			? onward.find((field) => field.closest('[data-measured="reading"]') === null)
			: all[all.indexOf(input) + by];
		if (to === undefined) input.blur();
		to?.focus();
		to?.select();
	}
}

export const keypad = new Keypad();
