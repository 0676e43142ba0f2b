import { anew } from './anew';

const fetched = () => import('$engine/coilnest_web.js');

export type Whole = Omit<Awaited<ReturnType<typeof fetched>>, 'default' | 'initSync'>;

/** All that can be asked of a job; there once `startWhole` has ended. */
export let whole: Whole;

/** Fetches the whole engine. */
export async function startWhole(): Promise<Whole> {
	const [{ default: init, ...parts }, { default: address }] = await Promise.all([
		fetched(),
		import('$engine/coilnest_web_bg.wasm?url'),
	]);
	await init({ module_or_path: address });
	whole = anew<Whole>(parts, {
		nestState: () => ({ workings: {} }),
		switchSystem: (job) => job,
	});
	// What it says of a blank job stands for a job at which it falls from the beginning.
	whole.assess(whole.blank());
	return whole;
}
