/*
 * Makes the pictures of README.md and www/README.md anew, of the invented demo in the built page.
 * Run it with `npm run pictures`, after `cargo page`.
 */
import { fileURLToPath } from 'node:url';
import { chromium } from '@playwright/test';
import { preview } from 'vite';

const PICTURES = fileURLToPath(new URL('../pictures/', import.meta.url));
const SHOWN = [
	{ name: 'measure', at: 'measure', ready: 'Good' },
	{ name: 'nest', at: 'nest', ready: 'From free to' },
	{ name: 'level', at: 'level', ready: 'How the frame sits' },
	{ name: 'sheet', at: 'coil=outer', ready: 'Drawing sheet: Outer' },
];

const server = await preview({ preview: { port: 4180, strictPort: false } });
const browser = await chromium.launch({
	executablePath: process.env['CHROMIUM'] ?? '/usr/bin/chromium',
	args: ['--no-sandbox'],
});
try {
	for (const { name, at, ready } of SHOWN) {
		const page = await browser.newPage({ viewport: { width: 1280, height: 900 }, colorScheme: 'light' });
		await page.goto(`${server.resolvedUrls?.local[0] ?? ''}#${at}`);
		await page.getByText(ready).first().waitFor();
		await page.getByText('works offline').waitFor();
		await page.screenshot({ path: `${PICTURES}${name}.png` });
		await page.close();
	}
} finally {
	await browser.close();
	await server.close();
}
