import script from './search.worker.ts?worker&url';
import type { SearchAsked, Searches, SearchName, SearchTold } from './searches';
import type { Job } from './types';

interface Question extends SearchAsked {
	part: (part: number) => void;
	/** Answered by nothing where a newer question or a stop came before the end. */
	found: (report: Searches[SearchName] | undefined) => void;
	failed: (error: unknown) => void;
}

/** A search that is overtaken by a newer question may go on for so long: to start a thread anew takes time too. */
const OVERTAKEN_MS = 300;

/* The page's policy lets no text name a script but by a rule that it names: this one script is let through here. */
const policy = window.trustedTypes?.createPolicy('search', { createScriptURL: (address) => address });
const address = (policy?.createScriptURL(script) ?? script) as string;

/** Searches in a thread beside the page's: one at a time, of which the newest counts. */
class Searching {
	#thread: Worker | undefined;
	#asked: Question | undefined;
	#since = 0;
	#next: Question | undefined;
	#patience: ReturnType<typeof setTimeout> | undefined;

	/** Finds what is searched for; nothing where something newer is asked, or it is stopped. */
	find<N extends SearchName>(
		search: N,
		job: Job,
		part: (part: number) => void,
	): Promise<Searches[N] | undefined> {
		return new Promise((found, failed) => {
			const question = { search, job: JSON.stringify(job), part, found, failed } as Question;
			if (!this.#asked) return this.#ask(question);
			this.#next?.found(undefined);
			this.#next = question;
			const left = OVERTAKEN_MS - (performance.now() - this.#since);
			this.#patience ??= setTimeout(() => this.#cut(), Math.max(0, left));
		});
	}

	stop(): void {
		this.#next?.found(undefined);
		this.#next = undefined;
		this.#cut();
	}

	#ask(question: Question): void {
		this.#asked = question;
		this.#since = performance.now();
		try {
			this.#thread ??= this.#begun();
			this.#thread.postMessage({ search: question.search, job: question.job } satisfies SearchAsked);
		} catch (error) {
			this.#fail(error);
		}
	}

	#begun(): Worker {
		const thread = new Worker(address, { type: 'module' });
		thread.addEventListener('message', ({ data }: MessageEvent<SearchTold>) => this.#told(data));
		thread.addEventListener('error', (event) => this.#fail(event));
		return thread;
	}

	#told(told: SearchTold): void {
		if ('part' in told) this.#asked?.part(told.part);
		else if ('fell' in told) this.#fail(new Error('The engine fell at a search.'));
		else this.#settle((asked, next) => asked.found(next ? undefined : told.report));
	}

	/** Ends the thread with what it is searching for. */
	#cut(): void {
		this.#close();
		this.#settle((asked) => asked.found(undefined));
	}

	#fail(error: unknown): void {
		this.#close();
		this.#settle((asked) => asked.failed(error));
	}

	#close(): void {
		this.#thread?.terminate();
		this.#thread = undefined;
	}

	#settle(by: (asked: Question, next: Question | undefined) => void): void {
		clearTimeout(this.#patience);
		const [asked, next] = [this.#asked, this.#next];
		this.#patience = this.#asked = this.#next = undefined;
		if (asked) by(asked, next);
		if (next) this.#ask(next);
	}
}

export const searching = new Searching();
