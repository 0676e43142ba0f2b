import init, * as replace from '$engine/coilnest_replace.js';
import address from '$engine/coilnest_replace_bg.wasm?url';
import { anew } from './anew';

export const replacements = anew(replace);

/** Loads the engine of replacements and of coils yet to be drawn; until it has ended, no other call of it may be made. */
export async function startReplace(): Promise<void> {
	await init({ module_or_path: address });
}
