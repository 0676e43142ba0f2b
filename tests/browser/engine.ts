import { cpSync, readFileSync, writeFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { test } from '@playwright/test';

export type Call = (...args: unknown[]) => unknown;
export type Engine = Record<string, Call> & {
	HeldFrame: new (job: unknown) => Record<string, Call>;
};

const folder = process.env['COILNEST_ENGINE'] ?? '../target/engine';

/** The whole engine in Node, as another program starts it. */
export async function started(): Promise<Engine> {
	const own = test.info().outputPath('engine');
	cpSync(folder, own, { recursive: true });
	writeFileSync(resolve(own, 'package.json'), '{ "type": "module" }');
	const module = (await import(pathToFileURL(resolve(own, 'coilnest_web.js')).href)) as Engine;
	module['initSync']?.({ module: readFileSync(resolve(own, 'coilnest_web_bg.wasm')) });
	return module;
}

/** The functions that take something beside a job or instead of one; a job alone; nothing. */
export const ASKED = [
	'assessNest',
	'nestState',
	'coilSheet',
	'tape',
	'bell',
	'press',
	'switchSystem',
	'open',
	'save',
	'coilRows',
	'coilTable',
	'choices',
	'spreadsheets',
];
export const ALONE = ['assess', 'judge', 'since', 'level', 'matching', 'replace', 'size'];
export const NONE = ['demo', 'blank', 'measureChoices', 'version', 'checks'];
