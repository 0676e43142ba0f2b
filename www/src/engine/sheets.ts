import init, * as sheet from '$engine/coilnest_sheets.js';
import address from '$engine/coilnest_sheets_bg.wasm?url';
import { anew } from './anew';

export const sheets = anew(sheet);

/** Loads the engine of what is looked at now and then; until it has ended, no other call of it may be made. */
export async function startSheets(): Promise<void> {
	await init({ module_or_path: address });
}
