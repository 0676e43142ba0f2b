import init, * as level from '$engine/coilnest_level.js';
import address from '$engine/coilnest_level_bg.wasm?url';
import { anew } from './anew';

export const levels = anew(level);

/** Loads the engine of a frame on its nests; until it has ended, no other call of it may be made. */
export async function startLevel(): Promise<void> {
	await init({ module_or_path: address });
}
