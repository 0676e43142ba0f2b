import { createStore, del, get, keys, set, update, type UseStore } from 'idb-keyval';

/*
 * What has to outlive a crash: it is kept once it lies on the disk, not in the memory of a browser that may be killed.
 * Each promise is kept when that is so, and broken where the storage is full or refused.
 */

const opened = createStore('coilnest', 'kept');

const onDisk: UseStore = (mode, act) =>
	opened('readonly', ({ transaction, name }) =>
		act(transaction.db.transaction(name, mode, { durability: 'strict' }).objectStore(name)),
	);

/** What was kept under `key`, if anything. */
export function fromDisk<T>(key: string): Promise<T | undefined> {
	return get<T>(key, onDisk);
}

export function toDisk(key: string, value: unknown): Promise<void> {
	return set(key, value, onDisk);
}

/** Puts what `by` makes of the value that is kept, with no other tab in between. */
export function changeOnDisk<T>(key: string, by: (now: T | undefined) => T): Promise<void> {
	return update<T>(key, by, onDisk);
}

export function offDisk(key: string): Promise<void> {
	return del(key, onDisk);
}

/** The keys that begin with `start`. */
export async function keysOnDisk(start: string): Promise<string[]> {
	return (await keys<string>(onDisk)).filter((key) => key.startsWith(start));
}

/** Asks the browser not to clear what is kept here when the device runs short of room; it may say no. */
export async function lastingly(): Promise<void> {
	await navigator.storage?.persist?.().catch(() => false);
}
