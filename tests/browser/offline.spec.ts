import { createHash } from 'node:crypto';
import { once } from 'node:events';
import { readdirSync, readFileSync } from 'node:fs';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { join } from 'node:path';
import { preview } from 'vite';
import { button, coil, expect, field, kindOf, test } from './page';

test.use({ serviceWorkers: 'allow' });

test('after the first visit the page opens with its server gone', async ({ page, context }) => {
	const server = await preview({ preview: { port: 0, strictPort: false }, logLevel: 'silent' });
	const address = server.resolvedUrls?.local[0] ?? '';
	await page.goto(address);
	await expect(page.getByText('saved, works offline')).toBeVisible();
	await field(page, 'Place 1, Outer, A left').fill('13 3/4');

	await server.close();
	await expect(fetch(address)).rejects.toThrow();

	const later = await context.newPage();
	await later.goto(address);
	await expect(field(later, 'Place 1, Outer, A left')).toHaveValue('13 3/4');
	await field(later, 'Place 1, Outer, A left').fill('13 7/8');
	await expect(button(coil(later, 'Outer, A left'), 'Good')).toBeVisible();
	await later.goto(`${address}index.html#nest`);
	await expect(later.getByRole('img', { name: /^Section through the nest/ })).toBeVisible();
	await later.goto(`${address}index.html#replace`);
	await expect(later.getByRole('table', { name: 'What is asked, and what is offered' })).toBeVisible();
	await later.goto(`${address}index.html#learn`);
	await expect(later.getByRole('heading', { level: 3, name: 'The words' })).toBeVisible();
	await button(later, 'solid').click();
	await expect(later.getByRole('group', { name: 'Word' })).toContainText('Turn lies on turn');
	await later.close();
	await page.reload();
	await expect(field(page, 'Place 1, Outer, A left')).toHaveValue('13 7/8');
});

test('a first visit is sent each file once', async ({ page }) => {
	const sent = new Map<string, number>();
	const kept = createServer(({ url, headers }, response) => {
		const path = new URL(url ?? '/', 'http://host').pathname;
		const bytes = readFileSync(join('dist', path.endsWith('/') ? `${path}index.html` : path));
		const tag = `"${createHash('sha1').update(bytes).digest('hex')}"`;
		const about = { etag: tag, 'content-type': kindOf(path), 'cache-control': 'max-age=60' };
		if (headers['if-none-match'] === tag) return response.writeHead(304, about).end();
		sent.set(path, (sent.get(path) ?? 0) + 1);
		return response.writeHead(200, about).end(bytes);
	}).listen(0, '127.0.0.1');
	await once(kept, 'listening');
	await page.goto(`http://127.0.0.1:${(kept.address() as AddressInfo).port}/`);
	await expect(page.getByText('saved, works offline')).toBeVisible();
	kept.close();
	expect([...sent].filter(([, times]) => times > 1)).toEqual([]);
	expect([...sent.keys()].filter((path) => path.endsWith('.wasm'))).toHaveLength(2);
	const files = readdirSync('dist', { recursive: true, withFileTypes: true }).filter((file) => file.isFile());
	// The list of what ships is for those who ask for it.
	expect([...sent.keys()].filter((path) => path.endsWith('sbom.cdx.json'))).toEqual([]);
	expect(sent.size).toBe(files.length - 1);
});

test('no text becomes markup, nor names a script but the worker of the page', async ({ page, errors }) => {
	await page.goto('./');
	await expect(field(page, 'Place 1, Outer, A left')).toBeVisible();
	const [markup, script] = await page.evaluate(() => {
		const made = document.createElement('script');
		made.src = 'elsewhere.js';
		try {
			document.body.insertAdjacentHTML('beforeend', '<i></i>');
			return ['taken', made.src];
		} catch {
			return ['refused', made.src];
		}
	});
	expect(markup).toBe('refused');
	expect(errors.splice(0)).toEqual([expect.stringContaining('TrustedHTML')]);
	expect(script).toMatch(/\/sw\.js$/);
});
