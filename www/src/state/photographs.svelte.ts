import type { Job, Photograph } from '../engine/types';
import { job } from './job.svelte';
import { fromDisk, lastingly, toDisk } from './store';

/** So many belong to a job. */
export const MOST = 6;
const KEY = 'photo:';
/** Longest side in pixels: a pitted turn is seen, and six of them still go into a file that can be sent. */
const SIDE = 1280;
const QUALITY = 0.8;

/*
 * Pictures lie on the disk beside the jobs, and a job holds their names. A job is written anew at each key and kept for
 * each step of undo, and would carry a megabyte along; in a file that leaves the device they go inside it.
 */

function asAddress(blob: Blob): Promise<string> {
	return new Promise((done, failed) => {
		const reader = new FileReader();
		reader.onload = () => done(String(reader.result));
		reader.onerror = () => failed(new Error('the picture could not be read'));
		reader.readAsDataURL(blob);
	});
}

/** A picture scaled down, as a `data:` address. */
async function scaled(file: Blob): Promise<string> {
	const picture = await createImageBitmap(file);
	const scale = Math.min(1, SIDE / Math.max(picture.width, picture.height));
	const canvas = document.createElement('canvas');
	canvas.width = Math.max(1, Math.round(picture.width * scale));
	canvas.height = Math.max(1, Math.round(picture.height * scale));
	canvas.getContext('2d')?.drawImage(picture, 0, 0, canvas.width, canvas.height);
	picture.close();
	const blob = await new Promise<Blob | null>((done) => canvas.toBlob(done, 'image/jpeg', QUALITY));
	if (blob === null) throw new Error('the picture could not be scaled');
	return asAddress(blob);
}

function listIn(written: Job): Photograph[] {
	const list: unknown = written.record?.photographs;
	return Array.isArray(list) ? list.filter((one: unknown) => one !== null && typeof one === 'object') : [];
}

function withList(written: Job, by: (photograph: Photograph) => Photograph): Job {
	if (listIn(written).length === 0) return written;
	return { ...written, record: { ...written.record, photographs: listIn(written).map(by) } };
}

/** Only what a camera makes is shown, and no address that leads elsewhere. */
const isPicture = (text: string | undefined): text is string =>
	typeof text === 'string' && /^data:image\/(jpeg|png|webp);base64,/.test(text);

class Photographs {
	#images = $state.raw<Readonly<Record<string, string>>>({});
	#problem = $state('');

	/** The pictures by their names, as far as they are on this device. */
	get images(): Readonly<Record<string, string>> {
		return this.#images;
	}

	get problem(): string {
		return this.#problem;
	}

	/** Takes the pictures of the job on the bench from the disk. */
	async fetch(): Promise<void> {
		const ids = listIn(job.written).map(({ id }) => id ?? '');
		const missing = ids.filter((id) => id !== '' && this.#images[id] === undefined);
		const found = await Promise.all(
			missing.map(async (id) => [id, await fromDisk<string>(KEY + id).catch(() => undefined)] as const),
		);
		const there = found.filter((one): one is [string, string] => isPicture(one[1]));
		if (there.length) this.#images = { ...this.#images, ...Object.fromEntries(there) };
	}

	async add(files: readonly File[]): Promise<void> {
		this.#problem = '';
		const room = MOST - listIn(job.written).length;
		if (files.length > room) this.#problem = `A job holds ${MOST} photographs: the first ${room} were taken.`;
		for (const file of files.slice(0, room)) {
			const image = await scaled(file).catch(() => undefined);
			if (image === undefined) {
				this.#problem = `${file.name} is no picture that this browser can read.`;
				continue;
			}
			const id = crypto.randomUUID();
			const isKept = await toDisk(KEY + id, image).then(
				() => true,
				() => false,
			);
			if (!isKept) {
				this.#problem = 'The device has no room for the photograph. Save the job to a file, and make room.';
				continue;
			}
			void lastingly();
			this.#images = { ...this.#images, [id]: image };
			job.change((before) => ({
				...before,
				record: {
					...before.record,
					photographs: [...(before.record?.photographs ?? []), { id, about: '' }],
				},
			}));
		}
	}

	/** Takes one out of the job; its picture stays on the disk, so that Undo brings it back. */
	remove(at: number): void {
		job.change((before) => ({
			...before,
			record: {
				...before.record,
				photographs: (before.record?.photographs ?? []).filter((_, place) => place !== at),
			},
		}));
	}

	/** A job with its pictures inside, for a file. */
	async inside(written: Job): Promise<Job> {
		const images = await Promise.all(
			listIn(written).map(({ id }) => fromDisk<string>(KEY + (id ?? '')).catch(() => undefined)),
		);
		let at = 0;
		return withList(written, (photograph) => {
			const image = images[at++];
			return isPicture(image) ? { ...photograph, image } : photograph;
		});
	}

	/** A job out of a file, its pictures laid beside it. */
	async beside(written: Job): Promise<Job> {
		for (const { id, image } of listIn(written)) {
			if (id && isPicture(image)) await toDisk(KEY + id, image).catch(() => undefined);
		}
		return withList(written, ({ image, ...photograph }) =>
			photograph.id && isPicture(image)
				? photograph
				: { ...photograph, ...(image !== undefined && { image }) },
		);
	}
}

export const photographs = new Photographs();
