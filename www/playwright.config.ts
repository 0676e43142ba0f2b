import { defineConfig } from '@playwright/test';

/** Debian's Chromium, or the one that the environment names; never a downloaded one. */
const executablePath = process.env['CHROMIUM'] ?? '/usr/bin/chromium';
/** Another one where this one is taken, as by the same tests of another checkout. */
const port = Number(process.env['COILNEST_TEST_PORT'] ?? 4173);

export default defineConfig({
	testDir: '../tests/browser',
	outputDir: 'test-results',
	tsconfig: '../tests/browser/tsconfig.json',
	// A page keeps about one core busy; the smallest machine has two.
	workers: 2,
	retries: 0,
	// A machine that has other things to do is slow, and no test is about that.
	timeout: 90_000,
	expect: { timeout: 20_000 },
	forbidOnly: Boolean(process.env['CI']),
	reporter: [['list']],
	use: {
		baseURL: `http://127.0.0.1:${port}/`,
		// One test is about the page without the network; the others need not fetch it twice.
		serviceWorkers: 'block',
		screenshot: 'only-on-failure',
		launchOptions: {
			executablePath,
			args: [
				'--headless',
				'--no-sandbox',
				'--disable-gpu',
				'--disable-dev-shm-usage',
				'--disable-quic',
				'--no-first-run',
				'--disable-background-networking',
				'--disable-component-update',
				'--disable-sync',
			],
		},
	},
	webServer: {
		// Vite itself, not npm: a stopped npm would leave it on the port.
		command: `node node_modules/vite/bin/vite.js preview --port ${port}`,
		url: `http://127.0.0.1:${port}/`,
		reuseExistingServer: false,
	},
});
