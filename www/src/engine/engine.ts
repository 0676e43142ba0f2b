import init from '$engine/coilnest_bench.js';
import address from '$engine/coilnest_bench_bg.wasm?url';

export * as engine from '$engine/coilnest_bench.js';

/** Loads the engine; until it has ended, no other call of the engine may be made. */
export async function startEngine(): Promise<void> {
	await init({ module_or_path: address });
}
