import './styles/tokens.css';
import './styles/base.css';
import './styles/print.css';
import { mount } from 'svelte';
import App from './App.svelte';
import { startEngine } from './engine/engine';
import { autosave } from './state/autosave.svelte';
import { offline } from './state/offline.svelte';

const target = document.getElementById('page');
if (target === null) throw new Error('the document has no place for the page');

async function begin(target: HTMLElement): Promise<void> {
	await autosave.begin();
	mount(App, { target });
	void offline.begin();
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
