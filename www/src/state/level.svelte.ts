import { whole } from '../engine/whole';
import type { Job, LevelReport, SeatReport } from '../engine/types';
import { job } from './job.svelte';
import { Search } from './search.svelte';

/** So many coils are matched in less time than a key may take; of nests of three and more, so few. */
const FEW = 100;
const FEW_OF_THREES = 24;

function isMatchedLong({ nests = [], bench = [] }: Job): boolean {
	const seats = nests.map((nest) => nest.seats?.length ?? 0);
	const coils = seats.reduce((sum, each) => sum + each, bench.length);
	return coils > (Math.max(0, ...seats) > 2 ? FEW_OF_THREES : FEW);
}

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
	/** Whether the answer is looked at; else it is not worked out. */
	open = $state(true);
	/** Which coil belongs in which seat. */
	readonly matching = new Search('matching', () => (this.open ? this.coils : undefined), isMatchedLong);

	/** What was found of a coil on the bench, as long as it is written as it was then. */
	lying(at: number): SeatReport | undefined {
		const { report, of } = this.matching;
		return of?.bench?.[at] === this.coils.bench?.[at] ? report?.bench[at] : undefined;
	}
}

export const level = new LevelStore();
