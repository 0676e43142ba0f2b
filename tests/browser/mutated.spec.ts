import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { inspect, isDeepStrictEqual } from 'node:util';
import { expect, test } from '@playwright/test';
import { Seeded } from '../../www/tools/seeded.js';
import { ALONE, ASKED, type Engine, started } from './engine';

/*
 * Kept jobs changed in their structure, through every function of the engine in Node. Job number `n` follows from `n`
 * alone, so one that fails comes again with COILNEST_FIRST=n COILNEST_JOBS=1.
 */

const FIRST = Number(process.env['COILNEST_FIRST'] ?? 1);
const JOBS = Number(process.env['COILNEST_JOBS'] ?? 1_000);

type Held = Record<string, unknown>;

const kept = (folder: string, ending: string): string[] =>
	readdirSync(`../tests/${folder}`)
		.filter((name) => name.endsWith(ending))
		.map((name) => readFileSync(join('../tests', folder, name), 'utf8'));

const WHOLE = [...kept('jobs', '.job.json'), readFileSync('../web/demo/quarry-tramway.json', 'utf8')];
const TABLES = kept('seeds', '.csv');
const TEXTS = [
	...kept('seeds', '.txt').flatMap((text) => text.split('\n')),
	...['__proto__', 'constructor', 'toString', '', ' ', 'null', '-0', '1e400', '1e-400 in', '9'.repeat(400)],
	...['\ud800', '😀', '\u202e13', '\0', '½″', '٣', 'x'.repeat(20_000)],
];
/** Names that every object has, and one of each kind in a job. */
const NAMES = ['__proto__', 'constructor', 'toJSON', 'id', 'coil', 'free', 'readings', 'seats', 'nest'];
/** Values of other kinds, made anew each time. */
const OTHER: readonly (() => unknown)[] = [
	() => null,
	() => undefined,
	() => true,
	() => -0,
	() => 13.5,
	() => 1e308,
	() => Number.MIN_VALUE,
	() => NaN,
	() => -Infinity,
	() => 2 ** 53,
	() => [],
	() => [[[]]],
	() => ({}),
	() => ({ id: {} }),
	() => JSON.parse('{ "__proto__": { "id": "a" }, "constructor": 1 }') as unknown,
];

/** As JSON.parse does it, whatever the name. */
function put(held: object, name: string, value: unknown): void {
	Object.defineProperty(held, name, { value, writable: true, enumerable: true, configurable: true });
}

const isHeld = (value: unknown): value is Held => typeof value === 'object' && value !== null;

/** What holds something, and under which name, all through a job. */
function places(job: Held): { held: Held; name: string }[] {
	const seen = new Set<unknown>();
	const walk = (held: Held): { held: Held; name: string }[] => {
		if (seen.has(held)) return [];
		seen.add(held);
		return Object.keys(held).flatMap((name) => {
			const value = held[name];
			return [{ held, name }, ...(isHeld(value) ? walk(value) : [])];
		});
	};
	return walk(job);
}

/** A kept job, changed in up to six places. */
function mutated(random: Seeded): Held {
	const job = JSON.parse(random.pick(WHOLE)) as Held;
	const other = JSON.parse(random.pick(WHOLE)) as Held;
	for (let left = 1 + random.below(6); left > 0; left -= 1) {
		const all = places(job);
		if (all.length === 0) break;
		const { held, name } = random.pick(all);
		const there = random.pick(all);
		const value = held[name];
		const lists = all.filter((place) => Array.isArray(place.held[place.name]));
		const changes: (() => void)[] = [
			() => put(held, name, random.pick(TEXTS)),
			() => put(held, name, random.pick(TEXTS)),
			() => put(held, name, random.pick(OTHER)()),
			() => delete held[name],
			() => {
				put(held, name, there.held[there.name]);
				put(there.held, there.name, value);
			},
			() => put(there.held, there.name, structuredClone(value)),
			// The same object at two places, or within itself.
			() => put(there.held, there.name, value),
			() => put(isHeld(value) ? value : held, random.pick([...NAMES, name]), random.pick(OTHER)()),
			() => {
				const from = random.pick(places(other));
				put(held, name, structuredClone(from.held[from.name]));
			},
			() => {
				const found = lists.length > 0 ? random.pick(lists) : undefined;
				const list = found?.held[found.name] as unknown[] | undefined;
				const at = random.below(list?.length ?? 1);
				// An item twice keeps its id; one goes, or many come.
				const items = structuredClone(list?.slice(at, at + 1) ?? []);
				const times = random.pick([0, 2, 2, 3, 20]);
				list?.splice(at, 1, ...Array.from({ length: times }, () => structuredClone(items)).flat());
			},
			() => {
				const ids = all.filter((place) => ['id', 'coil', 'nest'].includes(place.name));
				if (ids.length > 0) put(random.pick(ids).held, random.pick(ids).name, random.pick(ids).held['id']);
			},
		];
		random.pick(changes)();
	}
	return job;
}

/** Where in an answer something stands that JSON does not hold as it is. */
function unsound(value: unknown, path = ''): string | undefined {
	if (typeof value === 'number' && Number.isFinite(value)) return undefined;
	if (value === null || typeof value === 'string' || typeof value === 'boolean') return undefined;
	if (!isHeld(value)) return `${path}: ${String(value)}`;
	for (const [name, inner] of Object.entries(value)) {
		const found = unsound(inner, `${path}.${name}`);
		if (found !== undefined) return found;
	}
	return undefined;
}

/** What is asked of a job: each function, with texts from the job and from elsewhere. */
function questions(engine: Engine, job: Held, random: Seeded): [string, () => unknown][] {
	const own = places(job)
		.map(({ held, name }) => held[name])
		.filter((value) => typeof value === 'string');
	const text = (): unknown => random.pick(random.below(2) === 0 && own.length > 0 ? own : TEXTS);
	const id = (list: unknown): unknown => {
		const all = Array.isArray(list) ? (list as unknown[]) : [];
		const one = all.length > 0 ? random.pick(all) : undefined;
		return isHeld(one) && random.below(4) > 0 ? one['id'] : text();
	};
	const seat = `nests[${random.below(4)}].seats[${random.below(3)}]`;
	const table = random.pick(TABLES);
	const cut = random.below(table.length);
	const args: Record<string, unknown[]> = {
		assessNest: [job, id(job['nests'])],
		nestState: [job, id(job['nests']), text()],
		coilSheet: [job, id(job['coils'])],
		tape: [job, `${seat}.readings[${random.below(3)}]`],
		bell: [job, seat],
		press: [text(), text()],
		switchSystem: [job, random.pick(['inch', 'metric'])],
		open: [random.pick(WHOLE).slice(random.below(40)) + table.slice(cut, cut + 9)],
		save: [job],
		coilRows: [job, table.slice(0, cut) + String(text()) + table.slice(cut), 1, '', true, 200],
		coilTable: [job],
		choices: [text()],
		spreadsheets: [job, random.pick(['point', 'comma'])],
	};
	const dip = [id(job['nests']), text(), id(job['nests'])];
	const weighed = [text(), text()];
	return [
		...[...ASKED, ...ALONE].map((name): [string, () => unknown] => [
			name,
			() => engine[name]?.(...(args[name] ?? [job])),
		]),
		[
			'HeldFrame',
			() => {
				const frame = new engine.HeldFrame(job);
				const told = [frame['dip']?.(...dip), frame['weighedAt']?.(...weighed)];
				frame['free']?.();
				return told;
			},
		],
	];
}

/** Such calls may answer with nothing, or with the very thing that was handed over. */
const MAY_BE_NONE = ['tape', 'bell'];

test('every function answers to jobs that are changed in their structure', async () => {
	test.setTimeout(60_000 + JOBS * 100);
	const engine = await started();
	const longest = { ms: 0, of: '' };
	const told = { figures: 0, problems: 0 };
	const begun = performance.now();
	for (let number = FIRST; number < FIRST + JOBS; number += 1) {
		const random = new Seeded(number);
		const job = mutated(random);
		const before = structuredClone(job);
		for (const [name, ask] of questions(engine, job, random)) {
			const of = (): string =>
				`${name} of job ${number}: ${inspect(before, { depth: null, maxStringLength: 200 })}`;
			const asked = performance.now();
			let answer: unknown;
			try {
				answer = ask();
			} catch (cause) {
				throw new Error(of(), { cause });
			}
			const ms = performance.now() - asked;
			if (ms > longest.ms) Object.assign(longest, { ms, of: `${name} of job ${number}` });
			const isNone = answer === undefined && MAY_BE_NONE.includes(name);
			const found = isNone || answer === job ? undefined : unsound(answer);
			if (found !== undefined) throw new Error(`${found} in ${of()}`);
			if (name === 'assess') {
				const { nests, problems } = answer as { nests: { curve?: unknown }[]; problems: unknown[] };
				if (nests.some((nest) => Object.keys(nest).length > 2)) told.figures += 1;
				if (problems.length > 0) told.problems += 1;
			}
		}
		if (!isDeepStrictEqual(job, before)) {
			throw new Error(`job ${number} was changed: ${inspect(before, { depth: null })}`);
		}
	}
	const took = (performance.now() - begun) / 1000;
	console.log(
		`${JOBS} jobs from ${FIRST} in ${took.toFixed(1)} s; the longest call took ${longest.ms.toFixed(0)} ms, ${longest.of}`,
		told,
	);
	expect(told.figures, 'jobs that are sound enough to be computed').toBeGreaterThan(JOBS / 2);
	expect(told.problems, 'jobs in which something is wrong').toBeGreaterThan(JOBS / 4);
});
