import { cpSync, existsSync, readdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { join } from 'node:path';
import { button, expect, field, kindOf, type Page, test } from './page';

test.use({ serviceWorkers: 'allow' });

/** A static host, which serves one build after the other at one address. */
class Host {
	#server: Server;
	constructor(public folder: string) {
		this.#server = createServer(({ url }, response) => {
			const path = new URL(url ?? '/', 'http://host').pathname;
			const file = join(this.folder, path.endsWith('/') ? `${path}index.html` : path);
			if (!existsSync(file)) return response.writeHead(404).end();
			return response
				.writeHead(200, { 'content-type': kindOf(file), 'cache-control': 'no-store' })
				.end(readFileSync(file));
		}).listen(0, '127.0.0.1');
	}
	get address(): string {
		return `http://127.0.0.1:${(this.#server.address() as AddressInfo).port}/`;
	}
	close(): void {
		this.#server.closeAllConnections();
		this.#server.close();
	}
}

/** The next build: every script has another name and other names in it, as after any change. */
function nextBuild(from: string, to: string): string {
	cpSync(from, to, { recursive: true });
	const assets = join(to, 'assets');
	const scripts = readdirSync(assets).filter((name) => name.endsWith('.js'));
	const renamed = (name: string): string => name.replace(/\.js$/, 'x.js');
	for (const file of ['sw.js', 'index.html', ...scripts.map((name) => `assets/${name}`)]) {
		const path = join(to, file);
		let text = readFileSync(path, 'utf8');
		for (const name of scripts) text = text.replaceAll(name, renamed(name));
		if (file === 'sw.js')
			text = text.replace(/("?url"?:"index\.html","?revision"?:"|"?revision"?:")[0-9a-f]+/g, '$1next');
		writeFileSync(path, text);
	}
	for (const name of scripts) renameSync(join(assets, name), join(assets, renamed(name)));
	return to;
}

async function seeNewer(page: Page): Promise<void> {
	await page.evaluate(async () => (await navigator.serviceWorker.getRegistration())?.update());
	await expect(page.getByText('A newer version of this page is ready.')).toBeVisible();
}

test('a newer page is loaded in every tab, and an older tab keeps its later parts', async ({
	context,
}, info) => {
	const host = new Host('dist');
	const [one, two, three] = await Promise.all([context.newPage(), context.newPage(), context.newPage()]);
	await one.goto(host.address);
	await expect(one.getByText('saved, works offline')).toBeVisible();
	for (const page of [one, two, three]) {
		await page.goto(host.address);
		await expect(field(page, 'Place 1, Outer, A left')).toHaveValue('13 7/8');
	}
	host.folder = nextBuild('dist', info.outputPath('next'));
	await seeNewer(one);
	for (const page of [two, three])
		await expect(page.getByText('A newer version of this page is ready.')).toBeVisible();

	const loads = (page: Page) => page.waitForEvent('load');
	let again = loads(one);
	await button(one, 'Load it').click();
	await again;
	await expect(field(one, 'Place 1, Outer, A left')).toHaveValue('13 7/8');

	// The worker of the newer build is active now; the host has only its files.
	await three.getByRole('link', { name: 'Level' }).click();
	await expect(three.getByRole('heading', { level: 2, name: 'Level' })).toBeAttached();
	again = loads(two);
	await button(two, 'Load it').click();
	await again;
	await two.getByRole('link', { name: 'Level' }).click();
	await expect(two.getByRole('heading', { level: 2, name: 'Level' })).toBeAttached();
	expect(await two.evaluate(() => caches.keys())).toHaveLength(2);

	for (const page of [one, two, three]) await page.close();
	const later = await context.newPage();
	await later.goto(host.address);
	await expect(field(later, 'Place 1, Outer, A left')).toHaveValue('13 7/8');
	await expect.poll(() => later.evaluate(() => caches.keys())).toHaveLength(1);
	host.close();
});
