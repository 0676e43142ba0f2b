import { readFileSync } from 'node:fs';
import { expect, test } from '@playwright/test';
import { ALONE, ASKED, type Call, NONE, started } from './engine';

/* The whole engine in Node, as another program calls it: it answers to everything, throws nothing and never traps. */

function odd(): unknown[] {
	const own: Record<string, unknown> = { format: 'coilnest-job/1' };
	own['self'] = [own, { own }];
	let shared: unknown = {};
	for (let i = 0; i < 24; i += 1) {
		const held: unknown = shared;
		shared = { a: held, b: held, toJSON: () => ({ a: held, b: held }) };
	}
	const revoked = Proxy.revocable({}, {});
	revoked.revoke();
	const fail = (): never => {
		throw new Error('no');
	};
	const traps = {
		get: fail,
		ownKeys: fail,
		has: fail,
		getOwnPropertyDescriptor: fail,
		getPrototypeOf: fail,
	};
	return [
		undefined,
		null,
		true,
		12,
		-0,
		NaN,
		Infinity,
		2 ** 53,
		10n ** 4000n,
		Symbol('job'),
		() => 7,
		class {},
		'',
		'__proto__',
		'\ud800',
		'x'.repeat(100_000),
		[],
		{},
		new Array(1e6),
		new Date(NaN),
		new Map([['format', 1]]),
		new Uint8Array(9),
		Object.create(null),
		new String('text'),
		own,
		shared,
		revoked.proxy,
		new Proxy({}, traps),
		new Proxy([], traps),
		Object.defineProperty([], '0', { get: fail, enumerable: true }),
		{
			toJSON: fail,
			toString: fail,
			valueOf: fail,
			[Symbol.toPrimitive]: fail,
			length: 1,
		},
		{
			format: 'coilnest-job/1',
			nests: {
				get 0(): never {
					return fail();
				},
			},
			coils: [{ id: Symbol('x'), bar: 1n }],
		},
	];
}

test('every function answers to any value in any place', async () => {
	test.setTimeout(180_000);
	const engine = await started();
	const offered = Object.keys(engine).filter(
		(name) => /^[a-z]/.test(name) && !['default', 'initSync'].includes(name),
	);
	expect(offered.sort(), 'functions that this test knows').toEqual([...ASKED, ...ALONE, ...NONE].sort());
	const job = engine['demo']?.();
	const fitting: Record<string, unknown[]> = {
		assessNest: [job, 'A left'],
		nestState: [job, 'A left', '11 in'],
		coilSheet: [job, 'outer'],
		tape: [job, 'nests[0].seats[0].readings[0]'],
		bell: [job, 'nests[0].seats[0]'],
		press: ['13 7/8', 'scant'],
		switchSystem: [job, 'metric'],
		open: ['{"format":"coilnest-job/1"}'],
		save: [job],
		coilRows: [job, '1,outer,13', 1, '', true, 10],
		coilTable: [job],
		choices: ['inch'],
		spreadsheets: [job, 'comma'],
	};
	const frame = new engine.HeldFrame(job);
	const methods: [string, Call, unknown[]][] = [
		...[...ASKED, ...ALONE].map((name): [string, Call, unknown[]] => [
			name,
			(...args) => engine[name]?.(...args),
			fitting[name] ?? [job],
		]),
		['dip', (...args) => frame['dip']?.(...args), ['A left', '1/2 in', '']],
		['weighedAt', (...args) => frame['weighedAt']?.(...args), ['1 in', '1 in']],
		['HeldFrame', (of) => new engine.HeldFrame(of)['dip']?.('A left', '1/2 in', ''), [job]],
	];
	for (const [name, call, good] of methods) {
		const without = good.map(() => undefined);
		for (const [at] of good.entries()) {
			for (const [which, value] of odd().entries()) {
				const of = `${name}, argument ${at}, value ${which}`;
				for (const rest of [good, without]) {
					const begun = performance.now();
					expect(() => call(...rest.with(at, value)), of).not.toThrow();
					expect(performance.now() - begun, of).toBeLessThan(4000);
				}
			}
		}
	}
	expect(engine['assess']?.(job), 'after all of it').toHaveProperty('nests.3.id', 'B right');
});

test('what is no text where one is expected is named as a problem at its place', async () => {
	const engine = await started();
	const job = engine['demo']?.();
	const at = (path: string) => ({ problem: { code: 'not-text', path } });
	for (const value of [12, {}, null, undefined, Symbol('x'), 1n]) {
		expect(engine['open']?.(value)).toMatchObject(at('text'));
		expect(engine['coilSheet']?.(job, value)).toMatchObject(at('coil_id'));
		expect(engine['nestState']?.(job, value, '11 in')).toMatchObject(at('nest_id'));
		expect(engine['assessNest']?.(job, value)).toMatchObject({ problems: [at('nest_id').problem] });
		expect(engine['nestState']?.(job, 'A left', value)).toMatchObject(at('height_text'));
		expect(new engine.HeldFrame(job)['dip']?.(value, '1 in', '')).toMatchObject(at('wheel'));
		expect(engine['coilRows']?.(job, value, 1, '', true, 9)).toMatchObject({
			stopped: true,
			refused: [{ problems: [at('text').problem] }],
		});
		expect(engine['switchSystem']?.(job, value)).toBe(job);
	}
});

test('a search tells how far it is, whatever is told', async () => {
	const engine = await started();
	const job = JSON.parse(readFileSync('../tests/jobs/replace.job.json', 'utf8')) as unknown;
	const parts: number[] = [];
	const found = engine['size']?.(job, (part: number) => parts.push(part));
	expect(parts.length).toBeGreaterThan(10);
	expect(parts).toEqual([...new Set(parts)].sort((one, other) => one - other));
	expect(parts.at(-1)).toBeLessThanOrEqual(1);
	const broken = (): never => {
		throw new Error('told');
	};
	for (const listener of [undefined, 12, {}, broken]) {
		expect(engine['size']?.(job, listener)).toEqual(found);
	}
});

test('an engine started anew answers as before', async () => {
	const engine = await started();
	const before = JSON.stringify(engine['assess']?.(engine['demo']?.()));
	engine['__wbg_reset_state']?.();
	expect(JSON.stringify(engine['assess']?.(engine['demo']?.()))).toBe(before);
});
