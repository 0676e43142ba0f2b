import { trouble } from '../state/trouble.svelte';

type Call = (...args: never[]) => unknown;

/** What is answered in place of a call at which an engine fell. */
type Instead<E> = { [K in keyof E]?: E[K] extends Call ? E[K] : never };

/**
 * An engine that is started anew when it falls at a question. What it cannot answer is answered by `instead`, else by
 * what it said last of such a job; where there is neither, the call throws, and the section says so.
 */
export function anew<E extends { __wbg_reset_state: () => void }>(engine: E, instead: Instead<E> = {}): E {
	const last = new Map<string, unknown>();

	const guarded = (name: string, call: Call): Call =>
		function (this: unknown, ...args: never[]): unknown {
			try {
				const answer: unknown = new.target ? Reflect.construct(call, args) : Reflect.apply(call, this, args);
				if (args.length === 1) last.set(name, answer);
				return answer;
			} catch (error) {
				engine.__wbg_reset_state();
				trouble.tell();
				const other = instead[name as keyof E];
				if (other) return Reflect.apply(other, undefined, args);
				if (last.has(name) && !new.target) return last.get(name);
				throw error;
			}
		};

	const whole = ([name, part]: [string, unknown]): [string, unknown] => {
		if (typeof part !== 'function') return [name, part];
		const made = guarded(name, part as Call);
		const methods = /^[A-Z]/.test(name) ? (part.prototype as Record<string, Call>) : {};
		for (const method of Object.getOwnPropertyNames(methods)) {
			const call = methods[method];
			if (call && !/^(constructor|free|__.*)$/.test(method))
				methods[method] = guarded(`${name}.${method}`, call);
		}
		return [name, made];
	};
	return Object.fromEntries(Object.entries(engine).map(whole)) as E;
}
