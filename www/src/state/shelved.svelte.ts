import { engine } from '../engine/engine';
import { whole } from '../engine/whole';
import type { Job, Seat, Tally } from '../engine/types';
import { unmeasured, without } from './bench';
import { fileOf } from './file';
import { files } from './files.svelte';
import { job } from './job.svelte';
import { photographs } from './photographs.svelte';
import { shaped } from './shape';
import { SHELF, type Shelved, today } from './shelf';
import { freshStamp } from './stamp';
import { fromDisk, keysOnDisk, offDisk, toDisk } from './store';

const FORMAT = 'coilnest-shelf/1';
const LARGEST = 200_000_000;
/** So many are worked out between two frames. */
const AT_ONCE = 8;

/** A job on the shelf, as it stands in the list. */
export interface Row {
	readonly key: string;
	/** When it was put there. */
	readonly at: number;
	readonly demo: boolean;
	readonly job: Job;
	/** The same to the letter. */
	readonly written: Job;
	readonly tally: Tally;
	/** All that is written in it, in small letters, to be searched. */
	readonly letters: string;
}

/** What the file of a whole shelf holds. */
interface ShelfFile {
	readonly format: string;
	readonly jobs: readonly { readonly at?: number; readonly demo?: boolean; readonly job: unknown }[];
}

/** What a list says of a job. */
export function rowOf(key: string, { at, demo }: Omit<Shelved, 'text'>, written: Job): Row {
	const { tally } = whole.assess({ ...written, bench: [] });
	const letters = JSON.stringify(written).toLowerCase();
	return { key, at, demo, job: shaped(written), written, tally, letters };
}

/** What a job is called in a list. */
export function titleOf(one: Job): string {
	return (
		one.title || [one.record?.vehicle, one.record?.number].filter(Boolean).join(' ') || 'Job without a title'
	);
}

/** The job with all but what was measured and done: its drawings, nests, labels and frame. The job itself stands beside it. */
export function begunFrom(written: Job): Job {
	const source = without(written, 'earlier');
	const { vehicle = '', number = '', place = '', manual = '' } = written.record ?? {};
	const all = shaped(written);
	const nests = all.nests?.map((nest) => ({
		...unmeasured(nest),
		seats: (nest.seats ?? []).map(({ coil, label = '', raise = '', pair = '' }): Seat => {
			const kept = Object.entries({ label, raise, pair }).filter(([, text]) => text !== '');
			return { coil: coil ?? '', ...Object.fromEntries(kept), readings: [] };
		}),
	}));
	const rest = without(source, 'bench', 'set_aside');
	const { points, weights } = all.frame ?? {};
	const frame = all.frame && {
		...all.frame,
		...(points && { points: points.map((point) => without(point, 'standing')) }),
		...(weights && { weights: weights.map((weight) => without(weight, 'standing')) }),
	};
	const record = { vehicle, number, place, manual, date: today() };
	return plain({ ...rest, record, ...(nests && { nests }), ...(frame && { frame }), earlier: source });
}

/** A job as a file of it would be read. */
function plain(one: Job): Job {
	return JSON.parse(JSON.stringify(one)) as Job;
}

/** The jobs that lie on the shelf of this device. */
class Shelf {
	#rows = $state.raw<readonly Row[]>([]);
	#unread = $state(0);
	#said = $state.raw<{ readonly text: string; readonly undo?: () => Promise<void> }>();
	#known: Readonly<Record<string, Row>> = {};

	/** All but the one on the bench, the newest first. */
	readonly rows: readonly Row[] = $derived(this.#rows.filter(({ key }) => key !== SHELF + job.moment.id));

	/** How many cannot be read. */
	get unread(): number {
		return this.#unread;
	}

	/** What was last done here, and what takes it back. */
	get said(): { readonly text: string; readonly undo?: () => Promise<void> } | undefined {
		return this.#said;
	}

	/** Reads the shelf, a few jobs at a time. */
	async read(): Promise<void> {
		const keys = await keysOnDisk(SHELF).catch(() => []);
		const known: Record<string, Row> = {};
		let unread = 0;
		for (const [turn, key] of keys.entries()) {
			const row = await this.#rowAt(key);
			if (row) known[key] = row;
			else unread += 1;
			if (turn % AT_ONCE === AT_ONCE - 1) await new Promise(requestAnimationFrame);
		}
		this.#known = known;
		this.#unread = unread;
		this.#rows = Object.values(known).sort((a, b) => b.at - a.at);
	}

	async #rowAt(key: string): Promise<Row | undefined> {
		const shelved = await fromDisk<Shelved>(key).catch(() => undefined);
		if (shelved === undefined) return undefined;
		const known = this.#known[key];
		if (known?.at === shelved.at) return known;
		const opened = engine.open(shelved.text);
		return opened.job && rowOf(key, shelved, opened.job);
	}

	/** Puts a job of the shelf on the bench, and the one on the bench here; its own place is kept for it. */
	async open(key: string): Promise<void> {
		const shelved = await fromDisk<Shelved>(key);
		const opened = shelved && engine.open(shelved.text);
		if (!shelved || !opened?.job) return;
		const id = key.slice(SHELF.length);
		await files.put({ job: opened.job, demo: shelved.demo, id }, `${titleOf(opened.job)} is on the bench.`);
		await this.read();
	}

	/** Lays a second one of it on the shelf. */
	async duplicate(written: Job, demo: boolean): Promise<void> {
		const title = `${titleOf(written)}, second`;
		await this.#lay({ ...written, title }, demo);
		this.#said = { text: `${title} is on the shelf.` };
		await this.read();
	}

	/** A new job on the bench with the drawings of another. */
	async beginFrom(written: Job): Promise<void> {
		await files.put({ job: begunFrom(written), demo: false }, 'A new job from these drawings.');
		await this.read();
	}

	async takeOut(row: Row): Promise<void> {
		const shelved = await fromDisk<Shelved>(row.key);
		await offDisk(row.key);
		this.#said = {
			text: `${titleOf(row.job)} is taken out.`,
			undo: async () => {
				if (shelved) await toDisk(row.key, shelved);
				this.#said = undefined;
				await this.read();
			},
		};
		await this.read();
	}

	forget(): void {
		this.#said = undefined;
	}

	/** All jobs, the one on the bench among them, in one file. */
	async export(): Promise<void> {
		const jobs: ShelfFile['jobs'][number][] = [
			{ at: Date.now(), demo: job.demo, job: await photographs.inside(job.written) },
		];
		for (const key of await keysOnDisk(SHELF)) {
			const shelved = await fromDisk<Shelved>(key);
			const opened = shelved && engine.open(shelved.text);
			if (shelved && opened?.job && key !== SHELF + job.moment.id) {
				jobs.push({ at: shelved.at, demo: shelved.demo, job: await photographs.inside(opened.job) });
			}
		}
		const whole: ShelfFile = { format: FORMAT, jobs };
		files.offer(
			`shelf-${today()}.coilnest.json`,
			'application/json',
			`${JSON.stringify(whole, undefined, 1)}\n`,
		);
	}

	/** Lays the jobs of such a file on the shelf, but for those that are there already. */
	async bringBack(file: File): Promise<void> {
		const text = await files.textOf(file, LARGEST);
		if (text === undefined) return;
		const listed = listIn(text);
		if (listed === undefined) {
			files.tell(`${file.name} is no file of a shelf, or a part of it is missing. Nothing is changed by it.`);
			return;
		}
		const there = [JSON.stringify(job.written)];
		for (const key of await keysOnDisk(SHELF)) {
			const opened = engine.open((await fromDisk<Shelved>(key))?.text ?? '');
			if (opened.job) there.push(JSON.stringify(opened.job));
		}
		const counts = { laid: 0, there: 0, unread: 0 };
		for (const one of listed) {
			const opened = engine.open(JSON.stringify(one.job ?? null));
			const written = opened.job && (await photographs.beside(opened.job));
			if (!written) counts.unread += 1;
			else if (there.includes(JSON.stringify(written))) counts.there += 1;
			else {
				await this.#lay(written, one.demo === true, one.at);
				counts.laid += 1;
			}
		}
		this.#said = {
			text: [
				`${counts.laid} laid on the shelf.`,
				...(counts.there ? [`${counts.there} were here already.`] : []),
				...(counts.unread ? [`${counts.unread} could not be read.`] : []),
			].join(' '),
		};
		await this.read();
	}

	async #lay(written: Job, demo: boolean, at = Date.now()): Promise<void> {
		const shelved: Shelved = { at, demo, text: fileOf(written) };
		await toDisk(SHELF + freshStamp(), shelved);
	}
}

function listIn(text: string): ShelfFile['jobs'] | undefined {
	try {
		const whole = JSON.parse(text) as Partial<ShelfFile> | null;
		if (whole?.format !== FORMAT || !Array.isArray(whole.jobs)) return undefined;
		return whole.jobs.filter((one) => typeof one === 'object' && (one as object | null) !== null);
	} catch {
		return undefined;
	}
}

export const shelf = new Shelf();
