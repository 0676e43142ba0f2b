import { whole } from '../engine/whole';
import type { Job, LevelReport, MatchReport } from '../engine/types';
import { job } from './job.svelte';

/** With more coils on the bench than that, they are matched when it is asked for. */
const MANY = 200;

/** Whether two objects have the same fields; a list with nothing in it is the same as another. */
function isSame<T extends object>(one: T, other: T): boolean {
	const names = new Set([...Object.keys(one), ...Object.keys(other)]) as Set<keyof T>;
	const isEmpty = (value: unknown): boolean => Array.isArray(value) && value.length === 0;
	return [...names].every(
		(name) => one[name] === other[name] || (isEmpty(one[name]) && isEmpty(other[name])),
	);
}

/** All that follows for the frame of the job on the bench, and for its coils in other seats. */
class LevelStore {
	/** The job without what bears on no frame. */
	readonly framed: Job = $derived({ ...job.written, bench: [], record: {}, title: '' });
	readonly all: LevelReport = $derived(whole.level(this.framed));
	/** The frame, to be asked again and again while something of it is dragged. */
	readonly held = $derived(new whole.HeldFrame(this.framed));
	#coils: Job = { format: '' };
	/** The job as far as its coils and their places go: the same object as long as only shims and words change. */
	readonly coils: Job = $derived.by(() => {
		const { frame, ...coils } = job.written;
		delete coils.record;
		const places = frame && { ...frame, shim_stock: [], largest_stack: '', shims_for: '' };
		const before = this.#coils.frame;
		const samePlaces = places !== undefined && before !== undefined && isSame(places, before);
		const all = { ...coils, frame: samePlaces ? before : places } as Job;
		if (!isSame(all, this.#coils)) this.#coils = all;
		return this.#coils;
	});
	#asked = $state.raw<Job>();
	/** Whether the answer is looked at; else it is not worked out. */
	open = $state(true);
	readonly waits: boolean = $derived((job.job.bench?.length ?? 0) > MANY && this.#asked !== this.coils);
	/** Which coil belongs in which seat. */
	readonly match: MatchReport | undefined = $derived(
		this.open && !this.waits ? whole.matching(this.coils) : undefined,
	);

	/** Has many coils matched, as they are now. */
	ask(): void {
		this.#asked = this.coils;
	}
}

export const level = new LevelStore();
