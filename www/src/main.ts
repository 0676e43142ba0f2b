import './styles/tokens.css';
import './styles/base.css';
import './styles/ahead.css';
import { mount } from 'svelte';
import App from './App.svelte';
import { startEngine } from './engine/engine';
import { autosave } from './state/autosave.svelte';
import { later } from './state/later.svelte';
import { offline } from './state/offline.svelte';
import { whenIdle } from './state/painted';
import { paper } from './state/paper.svelte';

const LATEST_MS = 1000;

/** Beside the list, on a wide screen, a coil is always open. */
if (matchMedia('(min-width: 64rem)').matches) void later.coil().catch(() => undefined);

const target = document.getElementById('page');
if (target === null) throw new Error('the document has no place for the page');

async function begin(target: HTMLElement): Promise<void> {
	await autosave.begin();
	target.replaceChildren();
	mount(App, { target });
	addEventListener('hashchange', openJob);
	openJob();
	whenIdle(() => void later.all().then(ready), LATEST_MS);
}

/** All that a first look does without is here. */
async function ready(): Promise<void> {
	await paper.keepReady();
	await offline.begin();
}

/** Opens the job of the address, if it holds one; a reload then does not open it again. */
function openJob(): void {
	const { hash } = location;
	if (!/^#(job|code)=/.test(hash)) return;
	history.replaceState(null, '', '#measure');
	void import('./state/address').then(({ openAddress }) => openAddress(hash));
}

function giveUp(target: HTMLElement, cause: unknown): void {
	target.setAttribute('role', 'alert');
	target.textContent =
		'The page could not be started. Load it again; if that does not help, take a newer browser. ' +
		`What you have written stays kept on this device. (${String(cause)})`;
}

// No `await` at the top: the bundler would then part the page into more files.
startEngine()
	.then(() => begin(target))
	.catch((cause: unknown) => giveUp(target, cause));
