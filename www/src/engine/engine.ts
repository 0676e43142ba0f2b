import init, {
	__wbg_reset_state,
	blank,
	demo,
	judge,
	measureChoices,
	open,
	press,
	tape,
} from '$engine/coilnest_measure.js';
import address from '$engine/coilnest_measure_bg.wasm?url';
import { anew } from './anew';

const UNREAD = {
	path: '',
	code: 'unread',
	read: '',
	expected: 'a job file',
	message: 'The calculation stopped at this file, so it was not opened.',
	example: '',
};

/** What a first look asks. */
const measure = { __wbg_reset_state, blank, demo, judge, measureChoices, open, press, tape };

export const engine = anew(measure, {
	tape: () => undefined,
	press: (text) => text,
	open: () => ({ problem: UNREAD }),
});

/** Loads the engine of a first look; until it has ended, no other call of the engine may be made. */
export async function startEngine(): Promise<void> {
	await init({ module_or_path: address });
	// What it says of a blank job stands for a job at which it falls from the beginning.
	engine.judge(engine.blank());
}
