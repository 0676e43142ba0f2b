import init from '$engine/coilnest_sheets.js';
import address from '$engine/coilnest_sheets_bg.wasm?url';

export * as sheets from '$engine/coilnest_sheets.js';

/** Loads the engine of what is looked at now and then; until it has ended, no other call of it may be made. */
export async function startSheets(): Promise<void> {
	await init({ module_or_path: address });
}
