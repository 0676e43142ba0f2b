import type { Job } from '../engine/types';
import { job } from './job.svelte';
import { kindOf, LIMIT_FIELDS } from './limits';
import { isUnder, type Path } from './path';
import { Preference } from './persisted.svelte';

/** Places round a coil that have a box. */
export const ROUND_THE_COIL = 4;

interface Step {
	readonly path: Path;
	/** `seldom` is passed by unless it is the very next, `spare` always. */
	readonly need: 'always' | 'seldom' | 'spare';
}

/** The fields of Measure in the order in which a truck is written down. */
class Chain {
	/** At how many places round each coil a reading is asked for. */
	readonly places = new Preference('places', ['2', '1', '3', '4']);
	/** Whether the label of each coil is asked for. */
	readonly labels = new Preference('labels', ['no', 'yes']);

	readonly #steps = $derived([...drawn(job.job), ...this.#read(job.job)]);

	#read(of: Job): Step[] {
		return (of.nests ?? []).flatMap((nest, at) =>
			(nest.seats ?? []).flatMap((seat, index): Step[] => {
				const path = `nests[${at}].seats[${index}]`;
				const places = Math.max(ROUND_THE_COIL, seat.readings?.length ?? 0);
				return [
					{ path: `${path}.label`, need: this.labels.value === 'yes' ? 'always' : 'spare' },
					...Array.from({ length: places }, (_, place): Step => {
						const need = place < Number(this.places.value) ? 'always' : 'spare';
						return { path: `${path}.readings[${place}]`, need };
					}),
				];
			}),
		);
	}

	has(path: Path): boolean {
		return this.#steps.some((step) => step.path === path);
	}

	/** The next empty field from `path` on, and then from the beginning. */
	next(path?: Path): Path | undefined {
		const from = this.#steps.findIndex((step) => step.path === path) + 1;
		const isOpen = (step: Step): boolean =>
			step.need === 'always' && step.path !== path && job.text(step.path) === '';
		const near = this.#steps[from];
		if (path !== undefined && near?.need === 'seldom' && job.text(near.path) === '') return near.path;
		return (this.#steps.slice(from).find(isOpen) ?? this.#steps.find(isOpen))?.path;
	}

	/** The field before `path`, filled or not. */
	back(path: Path): Path | undefined {
		const before = this.#steps.slice(
			0,
			Math.max(
				0,
				this.#steps.findIndex((step) => step.path === path),
			),
		);
		return before.findLast((step) => step.need === 'always' || job.text(step.path) !== '')?.path;
	}

	/** The first empty field of a part of the job, or its first. */
	within(root: Path): Path | undefined {
		const inside = this.#steps.filter((step) => step.need === 'always' && isUnder(step.path, root));
		return (inside.find((step) => job.text(step.path) === '') ?? inside[0])?.path;
	}
}

/** The book figures and limits of the drawings that some seat asks for. */
function drawn(of: Job): Step[] {
	const held = new Set((of.nests ?? []).flatMap((nest) => (nest.seats ?? []).map((seat) => seat.coil)));
	return (of.coils ?? []).flatMap((drawing, at): Step[] =>
		!held.has(drawing.id)
			? []
			: [
					{ path: `coils[${at}].free`, need: 'always' },
					...LIMIT_FIELDS[kindOf(drawing.limits) ?? 'one'].map(({ key }): Step => ({
						path: `coils[${at}].limits.${key}`,
						need: 'seldom',
					})),
				],
	);
}

export const chain = new Chain();
