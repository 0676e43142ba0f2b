import { startWhole, type Whole } from '../engine/whole';

/** Said where a part of the page stays away. */
export const UNFETCHED =
	'This part of the page could not be fetched. Open it again when the network is there; all else works without.';

/** What a first look does without: fetched when it is asked for, else once the page has nothing to do. */
class Later {
	#whole = $state.raw<Whole>();
	#coming: Promise<Whole> | undefined;
	#coilOpen = $state.raw<typeof import('../parts/CoilOpen.svelte').default>();
	#choices = $state.raw<typeof import('../parts/choices')>();

	/** The whole engine, once it is here. */
	get whole(): Whole | undefined {
		return this.#whole;
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

	/** The boxes of a nest in their guides. */
	guides() {
		return this.#with(import('../parts/Guides.svelte'));
	}

	sections() {
		return this.#with(import('../sections/Later.svelte'));
	}

	/** What stands of a coil that is open, once it is here. */
	get coilOpen(): typeof import('../parts/CoilOpen.svelte').default | undefined {
		return this.#coilOpen;
	}

	/** The same: where it could not be fetched, the next call tries again. */
	async coil() {
		return (this.#coilOpen ??= (await import('../parts/CoilOpen.svelte')).default);
	}

	/** How a figure came about. */
	working() {
		return import('../parts/Working.svelte');
	}

	/** What stands over the page until it is answered. */
	notices() {
		return import('../parts/NoticeList.svelte');
	}

	/** What opens in Measure, once it is here. */
	get fetched(): typeof import('../parts/choices') | undefined {
		return this.#choices;
	}

	/** What opens in Measure. */
	async choices() {
		return (this.#choices ??= await import('../parts/choices'));
	}

	/** The record on paper, which is seldom wanted and fetched when it is. */
	sheet() {
		return this.#with(import('../print/sheet.svelte'));
	}

	/** Fetches what is looked at most. */
	async all(): Promise<void> {
		await Promise.allSettled([
			this.coil(),
			this.sections(),
			this.nest(),
			this.notices(),
			this.working(),
			this.choices(),
		]);
	}

	async #with<T>(part: Promise<T>): Promise<T> {
		const [fetched] = await Promise.all([part, this.engine()]);
		return fetched;
	}
}

export const later = new Later();
