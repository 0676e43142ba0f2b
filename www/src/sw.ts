/*
 * Keeps the files of one build, so that the page starts without the network. A newer build is fetched beside it and
 * takes over only when a page asks for it. Pages of an older build that are still open are served from what was kept for
 * them, so that they can fetch their later parts.
 */

interface BuiltFile {
	url: string;
	revision: string | null;
}

declare const self: ServiceWorkerGlobalScope & { __WB_MANIFEST: BuiltFile[] };

const files = self.__WB_MANIFEST;

/** The document goes by the address of its folder: some hosts answer `index.html` with a redirection. */
const DOCUMENT = 'index.html';
const scope = new URL(self.registration.scope);
const addresses = files.map(({ url }) => new URL(url === DOCUMENT ? './' : url, scope).href);

/** Other pages, and other copies of this one, may keep files on the same origin. */
const ours = `coilnest ${scope.pathname} `;
/** The document names all other files by their content, so it changes with each of them. */
const cacheName = ours + (files.find(({ url }) => url === DOCUMENT)?.revision ?? '');

async function older(): Promise<string[]> {
	const names = await caches.keys();
	return names.filter((name) => name.startsWith(ours) && name !== cacheName);
}

/** A file of an older build that is the same in this one. */
async function keptBefore(address: string): Promise<Response | undefined> {
	for (const name of await older()) {
		const found = await (await caches.open(name)).match(address);
		if (found) return found;
	}
	return undefined;
}

/**
 * Most files are named by their content: whatever the browser or an older build holds under that name is the file, and
 * a first visit has fetched it already. The others are asked for again, and sent only where they differ.
 */
async function keepAll(): Promise<void> {
	const cache = await caches.open(cacheName);
	const keep = async ({ revision }: BuiltFile, address: string): Promise<void> => {
		const isNamed = revision === null;
		const before = isNamed ? await keptBefore(address) : undefined;
		if (before) await cache.put(address, before);
		else await cache.add(new Request(address, { cache: isNamed ? 'force-cache' : 'no-cache' }));
	};
	await Promise.all(files.map((file, at) => keep(file, addresses[at] ?? '')));
}

/** What was kept for older builds, once no page is open that could be of one. */
async function dropOlder(): Promise<void> {
	const open = await self.clients.matchAll({ type: 'window', includeUncontrolled: true });
	if (open.length === 0) await Promise.all((await older()).map((name) => caches.delete(name)));
}

async function takeOver(): Promise<void> {
	await dropOlder();
	await self.clients.claim();
}

async function keptOrFetched(request: Request, address: string): Promise<Response> {
	const found = await (await caches.open(cacheName)).match(address);
	return found ?? (await keptBefore(address)) ?? fetch(request);
}

/** The address under which a request's file is kept. */
function keptAddress(request: Request): string {
	const { origin, pathname } = new URL(request.url);
	return origin + pathname.replace(new RegExp(`/${DOCUMENT}$`), '/');
}

self.addEventListener('install', (event) => event.waitUntil(keepAll()));

self.addEventListener('activate', (event) => event.waitUntil(takeOver()));

self.addEventListener('fetch', (event) => {
	const address = keptAddress(event.request);
	if (event.request.method !== 'GET' || !address.startsWith(scope.href)) return;
	if (event.request.mode === 'navigate') event.waitUntil(dropOlder());
	event.respondWith(keptOrFetched(event.request, address));
});

self.addEventListener('message', (event) => {
	if (event.data === 'take over') void self.skipWaiting();
});

export {};
