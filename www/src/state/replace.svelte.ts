import { MediaQuery } from 'svelte/reactivity';
import { whole } from '../engine/whole';
import type {
	CandidateReport,
	CoilDrawing,
	Job,
	LineReport,
	Met,
	Note,
	OrderReport,
	ReplaceReport,
} from '../engine/types';
import { isTogether, withDrawings, withOriginal } from './candidates';
import { job } from './job.svelte';
import { isUnder, type Path } from './path';
import { Search } from './search.svelte';
import { asWritten } from './shape';

/** The look of a requirement that is met, or not. */
export const LOOK_OF: Record<Met, { shape: string; tone: string }> = {
	throughout: { shape: '●', tone: 'good' },
	'at-nominal': { shape: '◐', tone: 'too-close' },
	'as-drawn': { shape: '◇', tone: 'drawn' },
	'not-met': { shape: '▲', tone: '' },
	'cannot-tell': { shape: '○', tone: 'none' },
};

/** A candidate with its verdict, or several as one nest, and what it takes the place of. */
export interface Judged {
	index: number;
	name: string;
	instead: string;
	met?: Met;
	title: string;
	sentence: string;
	lines: LineReport[];
	nest?: CandidateReport['nest'] | undefined;
	frame?: CandidateReport['frame'] | undefined;
}

/** Of more bars than that a drawing may take longer to find than a key may. */
const MANY_BARS = 60;
/** So many candidates stand abreast where there is room. */
const ABREAST = 3;

/** What may replace a coil of the job on the bench, and which coils would meet a need. */
class ReplaceStore {
	readonly all: ReplaceReport = $derived(whole.replace(asWritten(withOriginal({ ...job.job, bench: [] }))));
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
	/** Whether anything is needed; else nothing is worked out. */
	readonly asks: boolean = $derived(
		Object.values(job.job.need ?? {}).some((text) => typeof text === 'string' && text !== ''),
	);
	/** The drawings that meet it. */
	readonly sizing = new Search(
		'size',
		() => (this.asks ? this.#needed : undefined),
		({ need }) => need?.pair === 'yes' || (need?.bars ?? []).length > MANY_BARS,
	);

	readonly #wide = new MediaQuery('min-width: 64rem', true);
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

	#told = $state.raw<{ job: Job; text: string }>();
	/** What became of the candidates when drawings were taken, until the job changes again. */
	readonly told: string = $derived(this.#told?.job === job.job ? this.#told.text : '');

	/** Takes one drawing, or several as one nest, and looks at the first: its place in the list. */
	take(drawings: readonly CoilDrawing[]): number {
		const before = job.job.replace?.candidates?.length ?? 0;
		const wasTogether = isTogether(job.job);
		job.change((now) => withDrawings(now, drawings));
		const first = (job.job.replace?.candidates?.length ?? 0) - drawings.length;
		const gone = before > 0 && first === 0;
		const are = drawings.length > 1 ? 'The pair is judged as one nest.' : 'The drawing is judged by itself.';
		const went = wasTogether
			? 'The nest that was offered before is taken out; Undo brings it back.'
			: 'What was offered before is taken out; Undo brings it back.';
		this.#told = { job: job.job, text: gone ? `${are} ${went}` : drawings.length > 1 ? are : '' };
		this.look(first);
		return first;
	}

	/** What is judged and shown beside each other, the candidate that is looked at among them; a nest stands alone. */
	abreast(printing: boolean): Judged[] {
		const { candidates, together } = this.all;
		if (together) {
			const { met, title, sentence, lines, swap: nest, frame } = together;
			const [instead, name] = [together.there.join(', '), together.offered.join(', ')];
			return [{ index: 0, name, instead, ...(met && { met }), title, sentence, lines, nest, frame }];
		}
		const most = this.#wide.current || printing ? ABREAST : 1;
		const from = Math.max(0, Math.min(this.looked, candidates.length - most));
		const instead = this.all.original ?? 'The original';
		return candidates.slice(from, from + most).map((candidate) => ({ ...candidate, instead }));
	}

	/** What was assumed at `path` and below it. */
	notesUnder(path: Path): Note[] {
		return this.all.notes.filter((note) => isUnder(note.path, path));
	}
}

export const replacing = new ReplaceStore();
