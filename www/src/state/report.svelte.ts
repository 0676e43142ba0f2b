import { engine } from '../engine/engine';
import type { Caution, Job, NestInput, Note, Problem, Report, TapeReport, Working } from '../engine/types';
import { without } from './bench';
import { job } from './job.svelte';
import { later } from './later.svelte';
import { afterPaint } from './painted';
import { isUnder, type Path, valueAt } from './path';
import { view } from './view.svelte';

/** A nest without what was read in it; the marks of its coils stay, which are held against those of the others. */
const unread = ({ id, seats = [] }: NestInput): NestInput => ({
	id,
	seats: seats.map(({ found, ...seat }) => ({
		...without(seat, 'readings', 'confirmed'),
		...(found && { found: without(found, 'readings', 'confirmed') }),
	})),
});

/** All that follows from the job on the bench. */
class ReportStore {
	/** The job without what bears on no coil in a nest, and is answered for where it is looked at. */
	readonly #nests: Job = $derived.by(() => {
		const nests = { ...job.written };
		delete nests.bench;
		delete nests.frame;
		delete nests.replace;
		delete nests.need;
		return nests;
	});
	readonly #whole: Report | undefined = $derived(later.whole?.assess(this.#nests));
	#waits = $state(false);
	#last: TapeReport | undefined;
	/** What the tape says of the coils; once the whole engine is here, with all that their drawings add. */
	readonly all: TapeReport = $derived.by(() => {
		if (!this.#waits || this.#last === undefined) this.#last = this.#whole ?? engine.judge(this.#nests);
		return this.#last;
	});
	/** The job with readings in the nest that is open, and none in the others; in all where none was chosen. */
	readonly #open: Job = $derived.by(() => {
		const { nests } = this.#nests;
		const { seat } = view;
		if (!Array.isArray(nests) || seat === undefined || valueAt(job.job, seat) === undefined)
			return this.#nests;
		const inside = (at: number): boolean => isUnder(seat, `nests[${at}]`);
		return {
			...this.#nests,
			nests: (job.job.nests ?? []).map((nest, at) => (inside(at) ? (nests[at] ?? nest) : unread(nest))),
		};
	});
	/** What the tape says of the open nest as it is now, which is judged first; of the others nothing until that is painted. */
	readonly now: TapeReport = $derived(this.#waits ? engine.judge(this.#open) : this.all);

	constructor() {
		const follow = afterPaint(() => (this.#waits = false));
		job.onChange(() => {
			if (view.section !== 'measure' || view.later) return;
			this.#waits = true;
			follow();
		});
	}

	/** Whether a key in Measure is still to be painted, so that what is not its verdict comes behind it. */
	get waits(): boolean {
		return this.#waits;
	}

	/** All that follows for coils and nests; only what is fetched with the whole engine may ask for it. */
	get whole(): Report {
		if (this.#whole === undefined) throw new Error('the whole engine is not here yet');
		return this.#whole;
	}

	/** What another engine finds wrong with the same job, while its section is shown. */
	#besides = $state.raw<() => readonly Problem[]>(() => []);
	/** The problems of the job, each once, whichever engine found it. */
	readonly problems: readonly Problem[] = $derived([
		...new Map(
			[...this.#besides(), ...this.all.problems].map((problem) => [problem.path + problem.code, problem]),
		).values(),
	]);

	/** Tells what another engine finds wrong too; gives the call that ends it. */
	heed(found: () => readonly Problem[]): () => void {
		this.#besides = found;
		return () => (this.#besides = () => []);
	}

	/** The problem of one field. */
	problemAt(path: Path): Problem | undefined {
		const isThere = (problem: Problem): boolean => problem.path === path;
		return this.now.problems.find(isThere) ?? this.#besides().find(isThere);
	}

	/** What was assumed, or could not be computed, at `path` and below it. */
	notesUnder(path: Path): Note[] {
		return this.now.notes.filter((note) => isUnder(note.path, path));
	}

	/** The cautions that bind in a section. */
	cautionsFor(section: Caution['section']): Caution[] {
		return this.all.cautions.filter((caution) => caution.section === section || caution.section === 'all');
	}

	working(key: string | undefined): Working | undefined {
		return key === undefined ? undefined : this.all.workings[key];
	}
}

export const report = new ReportStore();
