import { engine } from '../engine/engine';
import type { Job } from '../engine/types';
import { fileOf } from './file';
import { type Arrival, job, type Moment } from './job.svelte';
import { isUntouched, putAway, today } from './shelf';
import { view } from './view.svelte';

const LARGEST = 8_000_000;
/** What the file of a whole shelf says of itself. */
const WHOLE_SHELF = /^\s*\{\s*"format":\s*"coilnest-shelf\//;

/** What was done with a job, and what takes it back. */
interface Done {
	readonly text: string;
	readonly undo: () => void;
}

/** Job files: out to a download, in from a choice or a drop; and which job lies on the bench. */
class Files {
	#problem = $state<string>();
	#done = $state.raw<Done>();

	/** Why the last file could not be opened. */
	get problem(): string | undefined {
		return this.#problem;
	}

	/** What was last put on the bench in place of another job. */
	get done(): Done | undefined {
		return this.#done;
	}

	forgetProblem(): void {
		this.#problem = undefined;
	}

	tell(problem: string): void {
		this.#problem = problem;
	}

	forgetDone(): void {
		this.#done = undefined;
	}

	/** A name for a file of this job. */
	nameOf(ending: string): string {
		const stem = (job.job.title ?? '')
			.toLowerCase()
			.replace(/[^\p{L}\p{N}]+/gu, '-')
			.replace(/^-|-$/g, '');
		return `${stem || 'job'}${ending}`;
	}

	async save(): Promise<void> {
		const written = job.written;
		const whole = job.job.record?.photographs?.length
			? await (await import('./photographs.svelte')).photographs.inside(written)
			: written;
		this.offer(this.nameOf('.coilnest.json'), 'application/json', fileOf(whole));
	}

	/** Hands a text out as a download. */
	offer(name: string, type: string, text: string): void {
		const address = URL.createObjectURL(new Blob([text], { type }));
		const link = document.createElement('a');
		link.href = address;
		link.download = name;
		link.click();
		setTimeout(() => URL.revokeObjectURL(address), 60_000);
	}

	/** The text of a file; none, with a sentence that says why, where it is too large or cannot be read. */
	async textOf(file: File, largest = LARGEST): Promise<string | undefined> {
		this.#problem =
			file.size > largest ? `${file.name} is larger than ${largest / 1e6} MB, and was not read.` : undefined;
		if (this.#problem !== undefined) return undefined;
		return file.text().catch((cause: unknown) => {
			this.#problem = `${file.name} could not be read from the device. Choose it again. (${String(cause)})`;
			return undefined;
		});
	}

	/** Puts the job of a file on the bench, and the jobs of a shelf's file on the shelf. */
	async open(file: File): Promise<void> {
		const start = await file
			.slice(0, 200)
			.text()
			.catch(() => '');
		if (WHOLE_SHELF.test(start)) {
			const { shelf } = await import('./shelved.svelte');
			await shelf.bringBack(file);
			return;
		}
		const text = await this.textOf(file);
		if (text !== undefined) await this.openText(text, file.name);
	}

	/** Puts the job of a text on the bench; it came from where `from` says. */
	async openText(text: string, from: string): Promise<void> {
		const { job: opened, problem } = engine.open(text);
		this.#problem = problem?.message;
		if (opened) await this.put({ job: await this.#unpacked(opened), demo: false }, `Opened: ${from}.`);
	}

	async #unpacked(opened: Job): Promise<Job> {
		const list: unknown = opened.record?.photographs;
		if (!Array.isArray(list) || list.length === 0) return opened;
		return (await import('./photographs.svelte')).photographs.beside(opened);
	}

	/**
	 * Puts a job on the bench; the one before it goes to the shelf, and lies one undo back. What is written in that one
	 * while the disk is at it goes to the shelf too.
	 */
	async put(arrival: Arrival, said: string): Promise<void> {
		this.#done = undefined;
		let before: Moment;
		let isAway: boolean;
		do {
			before = job.moment;
			if (isUntouched(before)) return job.replace(arrival);
			isAway = await putAway(before).then(
				() => true,
				() => false,
			);
		} while (isAway && job.moment !== before);
		before = job.moment;
		const name = job.job.title || job.job.record?.vehicle || 'The job without a title';
		const went = isAway
			? `${name} is on the shelf.`
			: `${name} could not be put on the shelf: the storage is full or switched off. It lies one undo back; save it to a file.`;
		job.replace(arrival);
		const { id } = job.moment;
		this.#done = {
			text: `${said} ${went}`,
			undo: () => {
				// What was written since then stays on the shelf.
				const isSame = job.steps.past.at(-1) === before && job.moment.id === id;
				this.#done = undefined;
				if (isSame) job.undo();
				else void this.put(before, 'Back on the bench.');
			},
		};
	}

	/** Asks for a file: a job, unless another kind is wanted. */
	choose(accept = '.json,application/json', taken = (file: File) => this.open(file)): void {
		const input = document.createElement('input');
		input.type = 'file';
		input.accept = accept;
		input.addEventListener('change', () => {
			const [file] = input.files ?? [];
			if (file) void taken(file);
		});
		input.click();
	}

	/** A blank job of today, with the focus where its first figure goes. */
	async blank(): Promise<void> {
		const blank = engine.blank();
		await this.put(
			{ job: { ...blank, record: { ...blank.record, date: today() } }, demo: false },
			'A new job.',
		);
		await view.show('measure');
		view.unfold('nests[0].seats[0]');
		await view.reach('coils[0].free');
	}
}

export const files = new Files();
