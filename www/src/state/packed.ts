import type { Job } from '../engine/types';

/*
 * A job as a short text in an address: deflated by the browser, then written in letters. Nothing of it is sent
 * anywhere, since what stands behind the # of an address stays in the browser.
 */

/** Before a job in letters of all kinds, for a link. */
export const LINK = '#job=';
/** Before a job in capitals, for a code to be scanned. */
export const CODE = '#code=';

/**
 * The letters that a code packs best, eleven bits for two, without the blank and the per cent sign, which an address
 * does not bear. Three of 43 still hold two bytes.
 */
const CAPITALS = '0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ$*+-./:';

async function through(
	bytes: Uint8Array<ArrayBuffer>,
	by: GenericTransformStream,
): Promise<Uint8Array<ArrayBuffer>> {
	const stream = new Blob([bytes])
		.stream()
		.pipeThrough(by as TransformStream<Uint8Array, Uint8Array<ArrayBuffer>>);
	return new Uint8Array(await new Response(stream).arrayBuffer());
}

/** The job without what is too much for an address: the earlier job beside it. Pictures are no part of a job. */
export function portable(job: Job): Job {
	const alone = { ...job };
	delete alone.earlier;
	return alone;
}

export function deflated(job: Job): Promise<Uint8Array<ArrayBuffer>> {
	const bytes = new TextEncoder().encode(JSON.stringify(portable(job)));
	return through(bytes, new CompressionStream('deflate-raw'));
}

export function inLetters(bytes: Uint8Array): string {
	const text = Array.from(bytes, (byte) => String.fromCharCode(byte)).join('');
	return btoa(text).replaceAll('+', '-').replaceAll('/', '_').replace(/=+$/, '');
}

export function inCapitals(bytes: Uint8Array): string {
	const n = CAPITALS.length;
	let text = '';
	for (let at = 0; at < bytes.length; at += 2) {
		const [one = 0, other] = bytes.subarray(at, at + 2);
		let value = other === undefined ? one : one * 256 + other;
		for (let letter = other === undefined ? 2 : 3; letter > 0; letter -= 1) {
			text += CAPITALS.charAt(value % n);
			value = Math.floor(value / n);
		}
	}
	return text;
}

function outOfLetters(text: string): Uint8Array<ArrayBuffer> {
	const bytes = atob(text.replaceAll('-', '+').replaceAll('_', '/'));
	return Uint8Array.from(bytes, (letter) => letter.charCodeAt(0));
}

function outOfCapitals(text: string): Uint8Array<ArrayBuffer> {
	const n = CAPITALS.length;
	const bytes: number[] = [];
	for (let at = 0; at < text.length; at += 3) {
		const letters = Array.from(text.slice(at, at + 3), (letter) => CAPITALS.indexOf(letter));
		const value = letters.reduceRight((sum, letter) => sum * n + letter, 0);
		if (letters.length === 1 || letters.includes(-1) || value > (letters.length === 3 ? 0xffff : 0xff)) {
			throw new Error('these are not the letters of a code');
		}
		if (letters.length === 3) bytes.push(value >> 8);
		bytes.push(value & 0xff);
	}
	return Uint8Array.from(bytes);
}

/** The text of the job behind the # of an address; none where it is no such address or a part is missing. */
export async function jobIn(hash: string): Promise<string | undefined> {
	try {
		const bytes = hash.startsWith(LINK)
			? outOfLetters(hash.slice(LINK.length))
			: outOfCapitals(hash.slice(CODE.length).toUpperCase());
		return new TextDecoder('utf-8', { fatal: true }).decode(
			await through(bytes, new DecompressionStream('deflate-raw')),
		);
	} catch {
		return undefined;
	}
}
