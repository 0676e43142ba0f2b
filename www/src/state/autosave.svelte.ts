import { engine } from '../engine/engine';
import type { Problem } from '../engine/types';
import { type Moment, job } from './job.svelte';
import { forget, keep, kept, keptKeys, onKeptElsewhere } from './persisted.svelte';

const KEY = 'job';
const ASIDE = 'job-aside:';

/** One version of the job as it is kept; `base` is the version that it grew from. */
interface Version {
	stamp: string;
	base: string;
	at: number;
	demo: boolean;
	text: string;
}

/** A version that stands apart from the one on the bench. */
export interface OtherVersion {
	readonly key: string;
	readonly at: Date;
}

function freshStamp(): string {
	return `${Date.now().toString(36)}-${Math.random().toString(36).slice(2)}`;
}

function versionIn(text: string | null): Version | undefined {
	if (text === null) return undefined;
	try {
		const version = JSON.parse(text) as Partial<Version> | null;
		return typeof version?.text === 'string' && typeof version.stamp === 'string'
			? { base: '', at: 0, demo: false, ...version, text: version.text, stamp: version.stamp }
			: undefined;
	} catch {
		return undefined;
	}
}

/**
 * Keeps the job on this device after each edit.
 *
 * Tabs share one kept version. A tab that edits a job which another tab has changed meanwhile keeps its own version
 * apart, and the person chooses; until then both last.
 */
class Autosave {
	#failed = $state(false);
	#elsewhere = $state.raw<Version>();
	#asides = $state.raw<readonly OtherVersion[]>([]);
	#unreadable = $state.raw<Problem>();
	/** The stamp of the version on the bench. */
	#mine = '';
	readonly #asideKey = ASIDE + freshStamp();

	/** Whether the last edit could not be kept. */
	get failed(): boolean {
		return this.#failed;
	}

	/** When another tab changed the job, if it did so after this one read it. */
	get changedElsewhere(): Date | undefined {
		return this.#elsewhere && new Date(this.#elsewhere.at);
	}

	/** Versions that tabs kept apart and nobody has chosen from yet. */
	get asides(): readonly OtherVersion[] {
		return this.#asides;
	}

	/** Why the version that was kept could not be read; its text is kept aside as it was. */
	get unreadable(): Problem | undefined {
		return this.#unreadable;
	}

	/** Puts the kept job on the bench, or the demo where nothing was kept, and keeps every change from now on. */
	begin(): void {
		job.begin(this.#firstMoment());
		job.onChange((moment) => this.#save(moment));
		onKeptElsewhere(KEY, (text) => {
			const version = versionIn(text);
			if (version && version.stamp !== this.#mine) this.#elsewhere = version;
		});
		this.#listAsides();
		addEventListener('beforeunload', (event) => {
			if (this.#failed) event.preventDefault();
		});
	}

	/** Puts the other tab's version on the bench; this one lies one undo back. */
	takeElsewhere(): void {
		const version = this.#elsewhere;
		const moment = version && this.#momentOf(version);
		if (version === undefined || moment === undefined) return;
		this.#mine = version.stamp;
		this.#elsewhere = undefined;
		forget(this.#asideKey);
		job.replace(moment);
	}

	/** Keeps this tab's version as the one that counts; the other tab is asked in its turn. */
	keepMine(): void {
		this.#mine = this.#elsewhere?.stamp ?? this.#mine;
		this.#elsewhere = undefined;
		forget(this.#asideKey);
		this.#save(job.moment);
	}

	/** Exchanges the job on the bench with a version that was kept apart. */
	exchange(key: string): void {
		const version = versionIn(kept(key));
		const moment = version && this.#momentOf(version);
		if (moment === undefined) return;
		keep(key, JSON.stringify(this.#versionOf(job.moment)));
		job.replace(moment);
		this.#listAsides();
	}

	/** Drops a version that was kept apart. */
	drop(key: string): void {
		forget(key);
		this.#listAsides();
	}

	#firstMoment(): Moment {
		const text = kept(KEY);
		if (text === null) return { job: engine.demo(), demo: true };
		const version = versionIn(text);
		const moment = this.#momentOf(version ?? { stamp: '', base: '', at: 0, demo: false, text });
		if (moment === undefined) {
			keep(`job-unread:${freshStamp()}`, text);
			return { job: engine.blank(), demo: false };
		}
		this.#mine = version?.stamp ?? '';
		return moment;
	}

	#momentOf(version: Version): Moment | undefined {
		const { job: opened, problem } = engine.open(version.text);
		if (problem) this.#unreadable = problem;
		return opened && { job: opened, demo: version.demo };
	}

	#versionOf(moment: Moment): Version {
		const text = engine.save(moment.job);
		return { stamp: freshStamp(), base: this.#mine, at: Date.now(), demo: moment.demo, text };
	}

	#save(moment: Moment): void {
		const now = versionIn(kept(KEY));
		const version = this.#versionOf(moment);
		if (now && now.stamp !== this.#mine) {
			this.#elsewhere = now;
			this.#failed = !keep(this.#asideKey, JSON.stringify(version));
			return;
		}
		this.#failed = !keep(KEY, JSON.stringify(version));
		if (!this.#failed) this.#mine = version.stamp;
	}

	#listAsides(): void {
		this.#asides = keptKeys(ASIDE)
			.map((key) => ({ key, version: versionIn(kept(key)) }))
			.flatMap(({ key, version }) => (version ? [{ key, at: new Date(version.at) }] : []))
			.sort((a, b) => b.at.getTime() - a.at.getTime());
	}
}

export const autosave = new Autosave();
