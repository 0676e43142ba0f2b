import init, {
	__wbg_reset_state,
	assess,
	blank,
	choices,
	demo,
	nestState,
	open,
	press,
	switchSystem,
	tape,
	version,
} from '$engine/coilnest_bench.js';
import address from '$engine/coilnest_bench_bg.wasm?url';
import { anew } from './anew';

const UNREAD = {
	path: '',
	code: 'unread',
	read: '',
	expected: 'a job file',
	message: 'The calculation stopped at this file, so it was not opened.',
	example: '',
};

/** What the page asks of it, and no more, so that no more is sent. */
const bench = {
	__wbg_reset_state,
	assess,
	blank,
	choices,
	demo,
	nestState,
	open,
	press,
	switchSystem,
	tape,
	version,
};

export const engine = anew(bench, {
	nestState: () => ({ workings: {} }),
	tape: () => undefined,
	press: (text) => text,
	switchSystem: (job) => job,
	open: () => ({ problem: UNREAD }),
});

/** Loads the engine; until it has ended, no other call of the engine may be made. */
export async function startEngine(): Promise<void> {
	await init({ module_or_path: address });
	// What it says of a blank job stands for a job at which it falls from the beginning.
	engine.assess(engine.blank());
}
