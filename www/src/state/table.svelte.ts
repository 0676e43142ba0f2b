import { whole } from '../engine/whole';
import type { BenchCoil, RefusedLine } from '../engine/types';
import { files } from './files.svelte';
import { job } from './job.svelte';

const LINES = 500;
const PIECE = 200_000;

/** How far a table has been read. */
export interface Reading {
	readonly read: number;
	readonly of: number;
	readonly coils: number;
}

/** Lines that were not taken, to be mended and read again. */
export interface Refused {
	readonly lines: readonly RefusedLine[];
	/** The lines as they are mended, under the line that names their columns. */
	text: string;
}

/** Coils for the bench out of the lines of a table, and back. */
class CoilTable {
	#reading = $state.raw<Reading>();
	#refused = $state<Refused[]>([]);
	#remarks = $state.raw<readonly string[]>([]);
	#said = $state('');
	#stop = false;

	get reading(): Reading | undefined {
		return this.#reading;
	}

	get refused(): Refused[] {
		return this.#refused;
	}

	/** How the columns of the last table were taken. */
	get remarks(): readonly string[] {
		return this.#remarks;
	}

	/** What the last reading came to. */
	get said(): string {
		return this.#said;
	}

	stop(): void {
		this.#stop = true;
	}

	drop(at: number): void {
		this.#refused.splice(at, 1);
	}

	/** Reads the mended lines again; those that are taken leave, and the others stay. */
	async again(at: number): Promise<void> {
		const [mended] = this.#refused.splice(at, 1);
		if (!mended) return;
		const rest = await this.read(mended.text);
		if (rest) this.#refused.push({ lines: [], text: rest });
	}

	async open(file: File): Promise<void> {
		const text = await files.textOf(file);
		if (text !== undefined) await this.read(text);
	}

	save(): void {
		files.offer('coils.csv', 'text/csv', whole.coilTable(job.written));
	}

	/** Puts the coils of a table on the bench, in one step; gives what was left unread. */
	async read(text: string): Promise<string> {
		this.#stop = false;
		this.#remarks = [];
		const { format, system, coils, bench } = job.written;
		const names = (bench ?? []).map(({ label, coil }) => ({ label, coil }) as BenchCoil);
		const rows: BenchCoil[] = [];
		const lines: RefusedLine[] = [];
		let remarks: readonly string[] = [];
		let [at, line, most] = [0, 1, PIECE];
		let header = '';
		while (at < text.length && !this.#stop) {
			this.#reading = { read: at, of: text.length, coils: rows.length };
			await new Promise(requestAnimationFrame);
			const known = { format, system, coils, bench: [...names, ...rows] };
			const last = at + most >= text.length;
			const piece = text.slice(at, at + most);
			const found = whole.coilRows(known as typeof job.written, piece, line, header, last, LINES);
			rows.push(...found.rows);
			lines.push(...found.refused);
			remarks = [...remarks, ...found.remarks.filter((remark) => !remarks.includes(remark))];
			header = found.header ?? header;
			at += found.consumed;
			line = found.next_line;
			if (found.stopped || (found.consumed === 0 && last)) break;
			most = found.consumed === 0 ? 2 * most : PIECE;
		}
		this.#reading = undefined;
		this.#remarks = remarks;
		if (lines.length) {
			const text = [...(header === '' ? [] : [header]), ...lines.map((refused) => refused.text)];
			this.#refused.push({ lines, text: text.join('\n') });
		}
		if (rows.length) job.change((before) => ({ ...before, bench: [...(before.bench ?? []), ...rows] }));
		const rest = text.slice(at);
		const refused = lines.length === 1 ? 'One line was' : `${lines.length} lines were`;
		this.#said = [
			rows.length === 1 ? 'One coil put on the bench.' : `${rows.length} coils put on the bench.`,
			...(lines.length ? [`${refused} not taken, and can be mended below.`] : []),
			...(rest ? [`Stopped before line ${line}.`] : []),
		].join(' ');
		return rest && header !== '' ? `${header}\n${rest}` : rest;
	}
}

export const table = new CoilTable();
