import { execFileSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { extname, join, resolve } from 'node:path';
import { expect, test, type Page } from '@playwright/test';
import { build } from 'vite';

/*
 * The npm package as its users have it: the packed file, installed into an empty folder, without a network.
 */

const ROOT = resolve('..');
const PACKAGE = join(ROOT, 'target/package');
const README = readFileSync(join(PACKAGE, 'README.md'), 'utf8');

/** A block of the README, by its language. */
const block = (language: string): string =>
	new RegExp(`^\`\`\`${language}\n(.*?)^\`\`\``, 'ms').exec(README)?.[1] ?? '';

let home = '';

const here = (command: string, ...words: string[]): string =>
	execFileSync(command, words, { cwd: home, encoding: 'utf8' });

test.beforeAll(() => {
	home = mkdtempSync(join(tmpdir(), 'coilnest-package-'));
	writeFileSync(join(home, 'package.json'), JSON.stringify({ private: true, type: 'module' }));
	const packed = here('npm', 'pack', PACKAGE, '--silent').trim();
	here('npm', 'install', '--offline', '--no-audit', '--no-fund', '--silent', join(home, packed));
});

test.afterAll(() => {
	rmSync(home, { recursive: true });
});

test('the example of its README prints in Node what the README says', () => {
	writeFileSync(join(home, 'example.js'), block('js'));
	expect(here('node', 'example.js')).toBe(block('text'));
});

test('its types stand alone', () => {
	const right = `import { assess, demo, HeldFrame, type Report } from 'coilnest';
const report: Report = assess(demo());
export const word: string | undefined = report.nests?.[0]?.seats?.[0]?.verdict?.word;
export const dip = new HeldFrame(demo()).dip('A left', '1/2 in', '');
`;
	const check = (source: string) => {
		writeFileSync(join(home, 'use.ts'), source);
		const tsc = join(ROOT, 'www/node_modules/typescript/bin/tsc');
		const words = ['--strict', '--noEmit', '--target', 'es2022', '--module', 'nodenext'];
		here('node', tsc, ...words, '--lib', 'esnext,dom', 'use.ts');
	};
	check(right);
	expect(() => {
		check(right.replace('string | undefined', 'number'));
	}).toThrow();
});

/** Answers for what a page at `http://package.test/` asks with the files of a folder. */
async function serve(page: Page, folder: string): Promise<void> {
	const kinds: Record<string, string> = { '.js': 'text/javascript', '.wasm': 'application/wasm' };
	await page.route('http://package.test/**', async (route) => {
		const { pathname } = new URL(route.request().url());
		const contentType = kinds[extname(pathname)] ?? 'text/html';
		await route.fulfill({ contentType, path: resolve(folder, `.${pathname}`) });
	});
}

const PRINT = `import { version, assess, demo } from 'coilnest';
document.body.textContent = version() + ' ' + assess(demo()).nests.length;
`;

const printed = (): string => {
	const { version } = JSON.parse(readFileSync(join(PACKAGE, 'package.json'), 'utf8')) as {
		version: string;
	};
	return `${version} 4`;
};

test('a browser takes it as it is', async ({ page }) => {
	const imports = { coilnest: './node_modules/coilnest/browser.js' };
	const html = `<!doctype html><title>Package</title><body>
<script type="importmap">${JSON.stringify({ imports })}</script>
<script type="module">${PRINT}</script>`;
	writeFileSync(join(home, 'plain.html'), html);
	await serve(page, home);
	await page.goto('http://package.test/plain.html');
	await expect(page.locator('body')).toHaveText(printed());
});

test('a bundler takes it without a word of its own', async ({ page }) => {
	const source = join(home, 'bundled');
	mkdirSync(source);
	writeFileSync(join(source, 'main.js'), PRINT);
	writeFileSync(
		join(source, 'index.html'),
		'<!doctype html><title>Package</title><body><script type="module" src="./main.js"></script>',
	);
	await build({ root: source, configFile: false, logLevel: 'silent', base: './' });
	await serve(page, join(source, 'dist'));
	await page.goto('http://package.test/index.html');
	await expect(page.locator('body')).toHaveText(printed());
});
