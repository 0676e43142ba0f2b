import type { Searches, SearchName } from '../engine/searches';
import { searching } from '../engine/searching';
import { whole } from '../engine/whole';
import type { Job } from '../engine/types';

/** What has been searched for so long says how far it is, and can be stopped. */
const LONG_MS = 500;

/**
 * The answer to a question that may take long. A quick one is answered at once. A long one is worked out beside the page
 * while a part of the page follows it, and until then what was found last stands, marked as being of before.
 */
export class Search<N extends SearchName> {
	readonly #name: N;
	readonly #asked: () => Job | undefined;
	readonly #isLong: (job: Job) => boolean;

	#found = $state.raw<{ of: Job; report: Searches[N] }>();
	#under: Job | undefined;
	#stopped = $state.raw<Job>();
	#part = $state<number>();

	/** `asked` gives the job that it is about, the same object as long as it is the same question, or none. */
	constructor(name: N, asked: () => Job | undefined, isLong: (job: Job) => boolean) {
		this.#name = name;
		this.#asked = asked;
		this.#isLong = isLong;
	}

	readonly #job = $derived.by(() => this.#asked());
	readonly #quick = $derived.by(
		() => this.#job && (this.#isLong(this.#job) ? undefined : this.#now(this.#job)),
	);

	/** What was found, the last where the newest is still being searched for. */
	readonly report: Searches[N] | undefined = $derived(this.#job && (this.#quick ?? this.#found?.report));
	/** The job that the report is about. */
	readonly of: Job | undefined = $derived(this.#quick ? this.#job : this.#found?.of);
	/** Whether the report is of a job as it was before. */
	readonly isOfBefore: boolean = $derived(this.of !== this.#job);

	/** How far it is, from 0 to 1, of what takes long. */
	get part(): number | undefined {
		return this.#part;
	}

	get isStopped(): boolean {
		return this.#stopped !== undefined && this.#stopped === this.#job;
	}

	/** What is found for the job as it is, and waited for where it is not there yet. */
	get settled(): Searches[N] | undefined {
		return this.isOfBefore && this.#job ? this.#now(this.#job) : this.report;
	}

	/** Searches as the question changes: what an effect of the part of the page does that shows it. */
	follow(): void {
		const job = this.#job;
		if (job === undefined || this.#quick || this.#stopped === job || this.#found?.of === job) return;
		void this.#search(job);
	}

	stop(): void {
		this.#stopped = this.#job;
		searching.stop();
	}

	goOn(): void {
		this.#stopped = undefined;
	}

	#now(job: Job): Searches[N] {
		return whole[this.#name](job) as Searches[N];
	}

	async #search(job: Job): Promise<void> {
		this.#under = job;
		let part = 0;
		let isLong = false;
		const later = setTimeout(() => {
			isLong = true;
			this.#part = part;
		}, LONG_MS);
		const told = (now: number): void => {
			part = now;
			if (isLong) this.#part = part;
		};
		const report = await searching.find(this.#name, job, told).catch(() => this.#now(job));
		clearTimeout(later);
		if (this.#under !== job) return;
		this.#part = undefined;
		if (report) this.#found = { of: job, report };
	}
}
