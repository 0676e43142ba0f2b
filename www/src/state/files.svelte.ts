import { engine } from '../engine/engine';
import { fileOf } from './autosave.svelte';
import { job } from './job.svelte';
import { view } from './view.svelte';

const LARGEST = 8_000_000;

/** Job files: out to a download, in from a choice or a drop. */
class Files {
	#problem = $state<string>();

	/** Why the last file could not be opened. */
	get problem(): string | undefined {
		return this.#problem;
	}

	forgetProblem(): void {
		this.#problem = undefined;
	}

	save(): void {
		const stem = (job.job.title ?? '')
			.toLowerCase()
			.replace(/[^\p{L}\p{N}]+/gu, '-')
			.replace(/^-|-$/g, '');
		this.offer(`${stem || 'job'}.coilnest.json`, 'application/json', fileOf(job.written));
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
	async textOf(file: File): Promise<string | undefined> {
		this.#problem =
			file.size > LARGEST ? `${file.name} is larger than ${LARGEST / 1e6} MB, and was not read.` : undefined;
		if (this.#problem !== undefined) return undefined;
		return file.text().catch((cause: unknown) => {
			this.#problem = `${file.name} could not be read from the device. Choose it again. (${String(cause)})`;
			return undefined;
		});
	}

	/** Puts the job of a file on the bench; the one before lies one undo back. */
	async open(file: File): Promise<void> {
		const text = await this.textOf(file);
		if (text === undefined) return;
		const { job: opened, problem } = engine.open(text);
		this.#problem = problem?.message;
		if (opened) job.replace({ job: opened, demo: false });
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

	/** A blank job, with the focus where its first figure goes. */
	async blank(): Promise<void> {
		job.replace({ job: engine.blank(), demo: false });
		await view.show('measure');
		view.unfold('nests[0].seats[0]');
		await view.reach('coils[0].free');
	}
}

export const files = new Files();
