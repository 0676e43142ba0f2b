import { correction, generate, mode } from 'lean-qr';
import type { Job } from '../engine/types';
import { job } from './job.svelte';
import { CODE, deflated, inCapitals, inLetters, LINK } from './packed';

/** The largest code that a telephone still reads off paper at a size that a sheet has room for: 137 squares a side. */
const LARGEST = 30;
const AFTER_MS = 400;

/** A job in an address, as a link and as a code. */
export interface Coded {
	readonly of: Job;
	readonly link: string;
	/** The dark squares as an outline to be filled, and how many squares a side has; none where the job is too large. */
	readonly squares?: { readonly outline: string; readonly side: number };
}

/** The address of this page, whatever is looked at. */
function here(): string {
	return location.href.replace(/#.*$/, '');
}

function squaresOf(text: string): Coded['squares'] {
	const start = text.indexOf(CODE) + CODE.length;
	try {
		const made = generate(
			mode.multi(mode.ascii(text.slice(0, start)), mode.alphaNumeric(text.slice(start))),
			{
				minCorrectionLevel: correction.L,
				maxVersion: LARGEST,
			},
		);
		let outline = '';
		for (let y = 0; y < made.size; y += 1) {
			for (let x = 0; x < made.size; x += 1) {
				if (!made.get(x, y)) continue;
				let run = 1;
				while (made.get(x + run, y)) run += 1;
				outline += `M${x} ${y}h${run}v1h-${run}z`;
				x += run;
			}
		}
		return { outline, side: made.size };
	} catch {
		return undefined;
	}
}

/** The job on the bench in an address. */
class Code {
	#made = $state.raw<Coded>();
	/** The address of the job as it is now; none while it is still being made. */
	readonly current: Coded | undefined = $derived(this.#made?.of === job.written ? this.#made : undefined);

	/** Whether the page is served from this machine alone, so that no other one can open its addresses. */
	get onlyHere(): boolean {
		return location.protocol === 'file:' || /^(localhost|127\.|\[::1\])/.test(location.hostname);
	}

	async make(): Promise<void> {
		const of = job.written;
		if (this.#made?.of === of) return;
		const bytes = await deflated(of);
		const squares = squaresOf(here() + CODE + inCapitals(bytes));
		this.#made = { of, link: here() + LINK + inLetters(bytes), ...(squares && { squares }) };
	}

	/** Makes it anew a little after each change; gives the call that ends it. */
	follow(): () => void {
		const soon = setTimeout(() => void this.make(), this.#made === undefined ? 0 : AFTER_MS);
		return () => clearTimeout(soon);
	}
}

export const code = new Code();
