import init, * as parts from '$engine/coilnest_web.js';
import address from '$engine/coilnest_web_bg.wasm?url';
import { anew } from './anew';

/** All that can be asked of a job. */
export const whole = anew(parts, {
	nestState: () => ({ workings: {} }),
	switchSystem: (job) => job,
});

/** Loads the whole engine; until it has ended, no call of it may be made. */
export async function startWhole(): Promise<void> {
	await init({ module_or_path: address });
	// What it says of a blank job stands for a job at which it falls from the beginning.
	whole.assess(whole.blank());
}
