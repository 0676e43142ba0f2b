import { tick, untrack } from 'svelte';
import type { Path } from './path';
import { later } from './later.svelte';
import { Preference } from './persisted.svelte';

/** The sections that stand, in the order of the bar. */
export const SECTIONS = [
	{ id: 'measure', name: 'Measure' },
	{ id: 'nest', name: 'Nest' },
	{ id: 'level', name: 'Level' },
	{ id: 'replace', name: 'Replace' },
	{ id: 'learn', name: 'Learn' },
	{ id: 'record', name: 'Record' },
] as const;

/** How the calculation was checked is read seldom, and stands in no bar. */
export type SectionId = (typeof SECTIONS)[number]['id'] | 'checked';

/** Fields of the sections beside Measure, where all others stand, or would stand. */
const OF_A_REPLACEMENT = /^(replace|need)\b/;
const OF_THE_RECORD = /^(record|earlier)\b/;
const OF_THE_FRAME = /^(frame|bench|nests\[\d+\]\.(stack|standing))\b/;
const OF_THE_NEST = /^nests\[\d+\]\.(working_|ask)|\.raise$|^coils\[\d+\]\.(?!id$|name$|free$|limits)/;

function sectionOf(path: Path): SectionId {
	if (OF_A_REPLACEMENT.test(path)) return 'replace';
	if (OF_THE_RECORD.test(path)) return 'record';
	if (OF_THE_FRAME.test(path)) return 'level';
	return OF_THE_NEST.test(path) ? 'nest' : 'measure';
}

const SEAT = /^nests\[\d+\]\.seats\[\d+\]/;
const DRAWING = /^coils\[\d+\]/;
/** Fields of a drawing that stand in Measure. */
const DRAWN = /^coils\[\d+\](\.(name|free|limits)\b|$)/;

/** What an address shows: a section, or over it the drawing sheet of a coil. */
interface Place {
	section: SectionId;
	coil: string | undefined;
}

const SHEET = 'coil=';

function placeInAddress(before: SectionId): Place {
	const address = location.hash.slice(1);
	if (address.startsWith(SHEET)) return { section: before, coil: decoded(address.slice(SHEET.length)) };
	const section = address === 'checked' ? address : SECTIONS.find(({ id }) => id === address)?.id;
	return { section: section ?? 'measure', coil: undefined };
}

function decoded(part: string): string {
	try {
		return decodeURIComponent(part);
	} catch {
		return part;
	}
}

/** What of the job is looked at, and where the hands are. */
class ViewStore {
	#place = $state.raw(placeInAddress('nest'));
	#focused = $state<Path>();
	/** The problem of a field that had one when the typing began stays in sight until it is cured. */
	#typing = $state<Path>();
	/** Where the focus goes as soon as the section stands that holds it. */
	#wanted: Path | undefined;
	/** The paths of the fields that stand, one for each field. */
	#shown = $state.raw<readonly Path[]>([]);
	/** In Measure one coil is open at most, and one drawing. */
	#seat = $state<Path>();
	#drawing = $state<Path>();
	readonly theme = new Preference('theme', ['system', 'light', 'dark']);

	constructor() {
		addEventListener('hashchange', () => {
			this.#place = placeInAddress(this.section);
		});
		$effect.root(() => {
			$effect(() => {
				const theme = this.theme.value;
				if (theme === 'system') delete document.documentElement.dataset['theme'];
				else document.documentElement.dataset['theme'] = theme;
			});
		});
	}

	get section(): SectionId {
		return this.#place.section;
	}

	/** The coil whose drawing sheet is open. */
	get coil(): string | undefined {
		return this.#place.coil;
	}

	/** Whether something is looked at that is fetched when it is asked for, and prints as it stands. */
	get later(): boolean {
		return this.coil !== undefined || !['measure', 'nest'].includes(this.section);
	}

	get seat(): Path | undefined {
		return this.#seat;
	}

	get drawing(): Path | undefined {
		return this.#drawing;
	}

	/** Opens the coil or the drawing in which the field at `path` stands. */
	unfold(path: Path): void {
		this.#seat = SEAT.exec(path)?.[0] ?? this.#seat;
		this.#drawing = DRAWN.test(path) ? DRAWING.exec(path)?.[0] : this.#drawing;
	}

	/** Closes what is open at `path`. */
	fold(path: Path): void {
		if (this.#seat === path) this.#seat = undefined;
		if (this.#drawing === path) this.#drawing = undefined;
	}

	/** The path of the field that has the focus. */
	get focused(): Path | undefined {
		return this.#focused;
	}

	/** Whether the words at `path` are still being written, so that it is too early to call them wrong. */
	isTypingAt(path: Path): boolean {
		return this.#typing === path;
	}

	enter(path: Path): void {
		this.#focused = path;
		this.unfold(path);
	}

	types(path: Path): void {
		this.#typing = path;
	}

	leave(path: Path): void {
		if (this.#focused === path) this.#focused = undefined;
		if (this.#typing === path) this.#typing = undefined;
	}

	/** Says that a field for `path` stands on the page; gives the call that ends it. */
	shows(path: Path): () => void {
		untrack(() => (this.#shown = [...this.#shown, path]));
		return () => untrack(() => (this.#shown = this.#shown.toSpliced(this.#shown.indexOf(path), 1)));
	}

	isShown(path: Path): boolean {
		return this.#shown.includes(path);
	}

	/** Goes to a section; the promise is kept once it stands. */
	async show(section: SectionId): Promise<void> {
		this.#place = { section, coil: undefined };
		location.hash = section;
		await tick();
	}

	/** Opens the drawing sheet of a coil. */
	async open(coil: string): Promise<void> {
		this.#place = { section: this.section, coil };
		location.hash = SHEET + encodeURIComponent(coil);
		await tick();
	}

	/** Opens the coil or the drawing in which the field at `path` stands; the promise is kept once it stands. */
	async opens(path: Path): Promise<void> {
		this.unfold(path);
		// What says that it could not be fetched stands in its place.
		if (SEAT.test(path) && !later.coilOpen) await later.coil().catch(() => undefined);
		await tick();
	}

	/** Goes to a field of Measure, where it may have to be opened first. */
	async reach(path: Path): Promise<void> {
		if (this.section !== 'measure' || this.later) await this.show('measure');
		await this.opens(path);
		const at = `[data-path="${CSS.escape(path)}"]`;
		document.querySelector<HTMLInputElement>(`${at} input, input${at}`)?.focus();
	}

	/** Goes to the section that holds `path`, and puts the focus on its field or on the nearest that stands. */
	async go(path: Path): Promise<void> {
		await this.opens(path);
		if (!this.isShown(path)) await this.show(sectionOf(path));
		this.#wanted = path;
		this.arrive();
	}

	/** Puts the focus where it was sent to; a section that is fetched calls it once it stands. */
	arrive(): void {
		for (let at = this.#wanted ?? ''; at !== ''; at = at.replace(/(\.[^.[]+|\[\d+\]|^[^.[]+)$/, '')) {
			const place = document.querySelector(`[data-path="${CSS.escape(at)}"]`);
			if (place === null) continue;
			for (let box = place.closest('details'); box; box = box.parentElement?.closest('details') ?? null) {
				box.open = true;
			}
			// A button before a field explains its label.
			const first =
				place.querySelector<HTMLElement>('input, select') ?? place.querySelector<HTMLElement>('button');
			const target = place instanceof HTMLElement && place.matches('[tabindex], input') ? place : first;
			// What was opened just now may have its fields still to come.
			if (target === null) return;
			target.focus();
			this.#wanted = undefined;
			return;
		}
	}
}

export const view = new ViewStore();
