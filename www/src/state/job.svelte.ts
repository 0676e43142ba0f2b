import type { Job } from '../engine/types';
import { type Path, textAt, withValue } from './path';
import { asWritten, shaped } from './shape';
import { freshStamp } from './stamp';
import { trouble } from './trouble.svelte';

/** A job as it stood at one moment; `demo` where it is the invented one, or grew from it. */
export interface Moment {
	readonly job: Job;
	readonly demo: boolean;
	/** Which job it is, through all its edits: by that it has its place on the shelf. */
	readonly id: string;
}

/** A job that is put on the bench; one without a place of its own yet is given one. */
export type Arrival = Omit<Moment, 'id'> & { readonly id?: string | undefined };

function withPlace(arrival: Arrival): Moment {
	return { ...arrival, id: arrival.id ?? freshStamp() };
}

/** The moments before and after the present one, the nearest last and first. */
export interface Steps {
	readonly past: readonly Moment[];
	readonly future: readonly Moment[];
}

/** The job on the bench, with everything that can be undone. */
class JobStore {
	#present = $state.raw<Moment>({ job: { format: 'coilnest-job/1' }, demo: false, id: '' });
	readonly #drawn = $derived(shaped(this.#present.job));
	#past = $state.raw<readonly Moment[]>([]);
	#future = $state.raw<readonly Moment[]>([]);
	/** The field in which typing goes on: all of it is one step back. */
	#typingAt: Path | undefined;
	#listeners: ((moment: Moment) => void)[] = [];

	/** The job as it is drawn and edited: see `shaped`. */
	get job(): Job {
		return this.#drawn;
	}

	/** The job to the letter, as it was opened and written. */
	get written(): Job {
		return this.#present.job;
	}

	get demo(): boolean {
		return this.#present.demo;
	}

	get moment(): Moment {
		return this.#present;
	}

	get canUndo(): boolean {
		return this.#past.length > 0;
	}

	get canRedo(): boolean {
		return this.#future.length > 0;
	}

	text(path: Path): string {
		return textAt(this.#present.job, path);
	}

	/** What can be undone and redone. */
	get steps(): Steps {
		return { past: this.#past, future: this.#future };
	}

	/** The first job of a visit, with what an earlier visit left to be undone. */
	begin(arrival: Arrival, { past, future }: Steps = { past: [], future: [] }): void {
		this.#present = withPlace(arrival);
		this.#past = past;
		this.#future = future;
	}

	/** Writes `text` at `path`. Until `settle`, further writing at the same path belongs to the same step. */
	write(path: Path, text: string): void {
		if (this.text(path) === text) return;
		const goesOn = this.#typingAt === path;
		this.#step({ ...this.#present, job: withValue(this.written, path, text) }, goesOn);
		this.#typingAt = path;
	}

	/**
	 * Writing at `path` that changes other fields with it. It always goes on from the job as it stood when the typing
	 * began, so that what is passed through on the way, such as another nest's name, leaves no trace.
	 */
	writeBy(path: Path, by: (job: Job) => Job): void {
		const goesOn = this.#typingAt === path;
		const from = goesOn ? (this.#past.at(-1) ?? this.#present) : this.#present;
		this.#step({ ...from, job: asWritten(by(shaped(from.job))) }, goesOn);
		this.#typingAt = path;
	}

	/** Ends a step of typing or dragging. */
	settle(): void {
		this.#typingAt = undefined;
	}

	/** One step that changes more than one field. */
	change(by: (job: Job) => Job): void {
		this.settle();
		this.#step({ ...this.#present, job: asWritten(by(this.job)) }, false);
	}

	/** One step that puts another job on the bench. */
	replace(arrival: Arrival): void {
		this.settle();
		this.#step(withPlace(arrival), false);
	}

	undo(): void {
		const before = this.#past.at(-1);
		if (before === undefined) return;
		this.settle();
		this.#past = this.#past.slice(0, -1);
		this.#future = [this.#present, ...this.#future];
		this.#stand(before);
	}

	redo(): void {
		const [after, ...later] = this.#future;
		if (after === undefined) return;
		this.settle();
		this.#past = [...this.#past, this.#present];
		this.#future = later;
		this.#stand(after);
	}

	/** Calls `heard` with each new moment, whether typed, undone or replaced. */
	onChange(heard: (moment: Moment) => void): void {
		this.#listeners.push(heard);
	}

	#step(next: Moment, goesOn: boolean): void {
		if (!goesOn) this.#past = [...this.#past, this.#present];
		this.#future = [];
		this.#stand(next);
	}

	#stand(moment: Moment): void {
		trouble.end();
		this.#present = moment;
		for (const heard of this.#listeners) heard(moment);
	}
}

export const job = new JobStore();
