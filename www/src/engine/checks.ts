import init, * as engine from '$engine/coilnest_checks.js';
import address from '$engine/coilnest_checks_bg.wasm?url';
import type { Checks } from './types';

/** Every value of the documents beside the one that is computed here and now, by an engine that is fetched for it. */
export async function checks(): Promise<Checks> {
	await init({ module_or_path: address });
	return engine.checks();
}
