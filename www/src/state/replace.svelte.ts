import { replacements } from '../engine/replace';
import type {
	CandidateReport,
	Job,
	Met,
	Note,
	OrderReport,
	ReplaceReport,
	SizingReport,
} from '../engine/types';
import { withOriginal } from './candidates';
import { job } from './job.svelte';
import { isUnder, type Path } from './path';
import { asWritten } from './shape';

/** The look of a requirement that is met, or not. */
export const LOOK_OF: Record<Met, { shape: string; tone: string }> = {
	throughout: { shape: '●', tone: 'good' },
	'at-nominal': { shape: '◐', tone: 'too-close' },
	'as-drawn': { shape: '◇', tone: 'drawn' },
	'not-met': { shape: '▲', tone: '' },
	'cannot-tell': { shape: '○', tone: 'none' },
};

/** What may replace a coil of the job on the bench, and which coils would meet a need. */
class ReplaceStore {
	readonly all: ReplaceReport = $derived(
		replacements.replace(asWritten(withOriginal({ ...job.job, bench: [] }))),
	);
	#need: Job = { format: '' };
	/** The job as far as a need goes: the same object as long as only the rest changes. */
	readonly #needed: Job = $derived.by(() => {
		const { format, system, need } = job.written;
		if (system !== this.#need.system || need !== this.#need.need) {
			this.#need = {
				format,
				...(system === undefined ? {} : { system }),
				...(need === undefined ? {} : { need }),
			};
		}
		return this.#need;
	});
	readonly sizing: SizingReport = $derived(replacements.size(this.#needed));
	/** Whether anything is needed; else nothing is worked out. */
	readonly asks: boolean = $derived(
		Object.values(job.job.need ?? {}).some((text) => typeof text === 'string' && text !== ''),
	);

	#looked = $state(0);
	/** The candidate that is looked at; the last where it is gone. */
	readonly looked: number = $derived(Math.max(0, Math.min(this.#looked, this.all.candidates.length - 1)));
	readonly candidate: CandidateReport | undefined = $derived(this.all.candidates[this.looked]);
	/** Whether the order is of the original as it was. */
	asItWas = $state(false);
	readonly order: OrderReport | undefined = $derived(
		this.asItWas || !this.candidate ? this.all.order : this.candidate.order,
	);
	/** Whether the order lies open as a letter, over the section. */
	letter = $state(false);

	look(at: number): void {
		this.#looked = at;
		this.asItWas = false;
	}

	/** What was assumed at `path` and below it. */
	notesUnder(path: Path): Note[] {
		return this.all.notes.filter((note) => isUnder(note.path, path));
	}
}

export const replacing = new ReplaceStore();
