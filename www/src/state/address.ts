import { files } from './files.svelte';
import { jobIn } from './packed';

/** Puts the job of an address on the bench. */
export async function openAddress(hash: string): Promise<void> {
	const text = await jobIn(hash);
	if (text === undefined) {
		files.tell('The job in this address cannot be read: a part of it is missing. Ask for its file.');
		return;
	}
	await files.openText(text, 'the job of the address');
}
