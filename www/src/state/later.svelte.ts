import { startWhole, type Whole } from '../engine/whole';

type PrintSheet = typeof import('../sections/PrintSheet.svelte').default;

/** What a first look does without: fetched when it is asked for, else once the page has nothing to do. */
class Later {
	#whole = $state.raw<Whole>();
	#sheet = $state.raw<PrintSheet>();
	#coming: Promise<Whole> | undefined;

	/** The whole engine, once it is here. */
	get whole(): Whole | undefined {
		return this.#whole;
	}

	/** The job as it prints, once it is here. */
	get sheet(): PrintSheet | undefined {
		return this.#sheet;
	}

	/** The whole engine: where it could not be fetched, the next call tries again. */
	engine(): Promise<Whole> {
		this.#coming ??= startWhole().then((whole) => (this.#whole = whole));
		this.#coming.catch(() => (this.#coming = undefined));
		return this.#coming;
	}

	nest() {
		return this.#with(import('../sections/Nest.svelte'));
	}

	sections() {
		return this.#with(import('../sections/Later.svelte'));
	}

	/** How a figure came about. */
	working() {
		return import('../parts/Working.svelte');
	}

	async print(): Promise<void> {
		const part = await this.#with(import('../sections/PrintSheet.svelte'));
		this.#sheet = part.default;
	}

	/** Fetches all of it. */
	async all(): Promise<void> {
		await Promise.allSettled([this.sections(), this.nest(), this.print(), this.working()]);
	}

	async #with<T>(part: Promise<T>): Promise<T> {
		const [fetched] = await Promise.all([part, this.engine()]);
		return fetched;
	}
}

export const later = new Later();
