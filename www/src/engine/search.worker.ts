/*
 * The long searches of the whole engine, in a thread of their own. Nothing stops one from within: whoever asked ends
 * the thread.
 */
import init, { matching, size } from '$engine/coilnest_web.js';
import address from '$engine/coilnest_web_bg.wasm?url';
import type { SearchAsked, SearchTold } from './searches';

const SEARCHES = { matching, size };
/** A part that has grown is told no more often than it can be looked at. */
const TELL_MS = 100;

const ready = init({ module_or_path: address });
const tell = (told: SearchTold): void => self.postMessage(told);

async function answer({ data: { search, job } }: MessageEvent<SearchAsked>): Promise<void> {
	try {
		await ready;
		let told = performance.now();
		const report = SEARCHES[search](job, (part) => {
			if (performance.now() - told < TELL_MS) return;
			told = performance.now();
			tell({ part });
		});
		tell({ report });
	} catch {
		tell({ fell: true });
	}
}

self.addEventListener('message', (asked: MessageEvent<SearchAsked>) => void answer(asked));
