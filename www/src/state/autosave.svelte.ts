import { engine } from '../engine/engine';
import type { Problem } from '../engine/types';
import { fileOf } from './file';
import { type Arrival, type Moment, type Steps, job } from './job.svelte';
import { forget, keep, kept, keptKeys } from './persisted.svelte';
import { afterPaint } from './painted';
import { freshStamp } from './stamp';
import { changeOnDisk, fromDisk, keysOnDisk, offDisk, toDisk } from './store';

const KEY = 'job';
const ASIDE = 'job-aside:';
const UNREAD = 'job-unread:';
/** What a tab has not brought to the disk yet; it outlives the tab, though not a crash. */
const DRAFT = 'draft:';

/** One version of the job as it is kept; `base` is the version that it grew from, `by` the visit that wrote it. */
interface Version {
	stamp: string;
	base: string;
	by: string;
	at: number;
	demo: boolean;
	text: string;
	/** Which job it is; a version of an earlier page does not say. */
	id?: string;
	/** On the disk: what can be undone and redone from there. */
	steps?: Steps;
}

/** So many steps either way are kept with a version. */
const STEPS = 50;

/** What can be undone from a version: what could be from the one on the disk, and that one where it goes on from it. */
function stepsTo(version: Version, onDisk: Version): Steps | undefined {
	if (version === onDisk) return onDisk.steps;
	const before = engine.open(onDisk.text).job;
	if (before === undefined || version.base !== onDisk.stamp) return undefined;
	return {
		past: [...(onDisk.steps?.past ?? []), { job: before, demo: onDisk.demo, id: onDisk.id ?? '' }],
		future: [],
	};
}

/** A version that stands apart from the one on the bench. */
export interface OtherVersion {
	readonly key: string;
	readonly at: Date;
}

/** A text that was kept as a job, and is none. */
export interface Unread {
	readonly key: string;
	readonly text: string;
	readonly problem: Problem;
}

function versionIn(text: string): Version {
	const bare = { stamp: '', base: '', by: '', at: 0, demo: false };
	try {
		const version = JSON.parse(text) as Partial<Version> | null;
		if (typeof version?.text === 'string' && typeof version.stamp === 'string') {
			return { ...bare, ...version, text: version.text, stamp: version.stamp };
		}
	} catch {
		// A text that is no version is a job itself, or nothing that can be read.
	}
	return { ...bare, text };
}

/**
 * Keeps the job on this device after each edit.
 *
 * Tabs share one kept version. A tab that edits a job which another tab has changed meanwhile keeps its own version
 * apart, and the person chooses; until then both last.
 */
class Autosave {
	#state = $state<'safe' | 'saving' | 'loose' | 'failed'>('safe');
	#elsewhere = $state.raw<Version>();
	#asides = $state.raw<readonly OtherVersion[]>([]);
	#unread = $state.raw<readonly Unread[]>([]);
	/** The stamp of the version on the bench that lies on the disk. */
	#mine = '';
	#waiting: Version | undefined;
	#writes = false;
	readonly #visit = freshStamp();
	readonly #asideKey = ASIDE + this.#visit;
	readonly #tabs = new BroadcastChannel('coilnest job');

	/** How far the last edit is kept: on the disk; not yet; in this browser, but not on the disk; or not at all. */
	get state(): 'safe' | 'saving' | 'loose' | 'failed' {
		return this.#state;
	}

	/** When another tab changed the job, if it did so after this one read it. */
	get changedElsewhere(): Date | undefined {
		return this.#elsewhere && new Date(this.#elsewhere.at);
	}

	/** Versions that tabs kept apart and nobody has chosen from yet. */
	get asides(): readonly OtherVersion[] {
		return this.#asides;
	}

	/** What was kept and could not be read. */
	get unread(): readonly Unread[] {
		return this.#unread;
	}

	/** Puts the kept job on the bench, or the demo where nothing was kept, and keeps every change from now on. */
	async begin(): Promise<void> {
		const first = await this.#firstVersion().catch(() => undefined);
		job.begin(first?.moment ?? { job: engine.demo(), demo: true }, first?.steps);
		job.onChange((moment) => this.#save(moment));
		if (first?.isDraft) this.#save(job.moment);
		addEventListener('pagehide', () => this.#keep());
		this.#tabs.onmessage = ({ data }: MessageEvent<Version>) => {
			if (data.stamp !== this.#mine) this.#elsewhere = data;
		};
		await this.#list().catch(() => undefined);
		addEventListener('beforeunload', (event) => {
			if (this.#state === 'failed') event.preventDefault();
		});
	}

	/** Puts the other tab's version on the bench; this one lies one undo back. */
	takeElsewhere(): void {
		const version = this.#elsewhere;
		const opened = version && engine.open(version.text);
		if (version === undefined || opened?.job === undefined) return;
		this.#mine = version.stamp;
		this.#elsewhere = undefined;
		void offDisk(this.#asideKey);
		job.replace({ job: opened.job, demo: version.demo, id: version.id });
	}

	/** Keeps this tab's version as the one that counts; the other tab is asked in its turn. */
	keepMine(): void {
		this.#mine = this.#elsewhere?.stamp ?? this.#mine;
		this.#elsewhere = undefined;
		void offDisk(this.#asideKey);
		this.#save(job.moment);
	}

	/** Exchanges the job on the bench with a version that was kept apart. */
	async exchange(key: string): Promise<void> {
		const version = await fromDisk<Version>(key);
		const opened = version && engine.open(version.text);
		if (version === undefined || opened?.job === undefined) return;
		await toDisk(key, this.#versionOf(job.moment));
		job.replace({ job: opened.job, demo: version.demo, id: version.id });
		await this.#list();
	}

	/** Drops a version that was kept apart, or a text that could not be read. */
	async drop(key: string): Promise<void> {
		await offDisk(key);
		await this.#list();
	}

	/** The version to begin with: what a visit left behind that was cut off, else the one on the disk. */
	async #firstVersion(): Promise<{ moment: Arrival; isDraft: boolean; steps?: Steps } | undefined> {
		const onDisk = await fromDisk<Version>(KEY).catch(() => undefined);
		const { goesOn, apart } = this.#drafts(onDisk);
		for (const [key, version] of apart) await this.#moveIn(key, ASIDE, version);
		for (const start of [ASIDE, UNREAD]) {
			for (const key of keptKeys(start)) {
				const text = kept(key) ?? '';
				await this.#moveIn(key, start, start === ASIDE ? versionIn(text) : { text });
			}
		}
		this.#mine = onDisk?.stamp ?? '';
		const version = goesOn?.[1] ?? onDisk;
		if (version === undefined) return undefined;
		const opened = engine.open(version.text);
		if (goesOn) this.#draftKey = goesOn[0];
		if (opened.job) {
			const moment = { job: opened.job, demo: version.demo, id: version.id };
			const steps = onDisk && stepsTo(version, onDisk);
			return { moment, isDraft: goesOn !== undefined, ...(steps && { steps }) };
		}
		const moment = { job: engine.blank(), demo: false };
		await toDisk(`${UNREAD}${freshStamp()}`, { text: version.text });
		return { moment, isDraft: true };
	}

	/** A draft of an earlier visit, which is forgotten once it lies on the disk. */
	#draftKey = '';

	/** Of what lies in the browser only: the version that goes on from the one on the disk, and all others. */
	#drafts(onDisk: Version | undefined): { goesOn?: [string, Version]; apart: [string, Version][] } {
		const found = [...keptKeys(DRAFT), ...(kept(KEY) === null ? [] : [KEY])]
			.map((key): [string, Version] => [key, versionIn(kept(key) ?? '')])
			.filter(([key, version]) => {
				const isKept = onDisk !== undefined && version.stamp !== '' && version.stamp === onDisk.stamp;
				if (isKept) forget(key);
				return !isKept;
			})
			.sort(([, a], [, b]) => b.at - a.at);
		const isNext = ([, version]: [string, Version]): boolean =>
			onDisk === undefined ||
			(version.by !== '' && version.by === onDisk.by) ||
			version.base === onDisk.stamp;
		const goesOn = found.find(isNext);
		return { ...(goesOn && { goesOn }), apart: found.filter((one) => one !== goesOn) };
	}

	/** Brings to the disk what lay in the browser only. */
	async #moveIn(key: string, start: string, value: object): Promise<void> {
		await toDisk(start + freshStamp(), value);
		forget(key);
	}

	#versionOf(moment: Moment): Version {
		const text = fileOf(moment.job);
		return {
			stamp: freshStamp(),
			base: this.#mine,
			by: this.#visit,
			at: Date.now(),
			demo: moment.demo,
			id: moment.id,
			text,
		};
	}

	#save(moment: Moment): void {
		this.#unkept = moment;
		this.#state = 'saving';
		this.#keepsSoon();
	}

	/** The newest edit, until it is painted; a tab that is closed or hidden keeps it at once. */
	#unkept: Moment | undefined;
	readonly #keepsSoon = afterPaint(() => this.#keep());

	#keep(): void {
		if (this.#unkept === undefined) return;
		const version = this.#versionOf(this.#unkept);
		this.#unkept = undefined;
		this.#waiting = version;
		this.#drafted = keep(DRAFT + this.#visit, JSON.stringify(version));
		void this.#bringToDisk();
	}

	/** Whether the newest version lies in the browser, should the tab be killed before it lies on the disk. */
	#drafted = false;

	/** The newest version goes to the disk; those that it overtook on the way do not. */
	async #bringToDisk(): Promise<void> {
		if (this.#writes) return;
		this.#writes = true;
		while (this.#waiting) {
			const version = this.#waiting;
			this.#waiting = undefined;
			const isSafe = await this.#put(version).then(
				() => true,
				() => false,
			);
			if (this.#waiting || this.#unkept) continue;
			if (isSafe) {
				forget(DRAFT + this.#visit);
				if (this.#draftKey) forget(this.#draftKey);
				this.#draftKey = '';
			}
			this.#state = isSafe
				? 'safe'
				: this.#drafted || kept(DRAFT + this.#visit) !== null
					? 'loose'
					: 'failed';
		}
		this.#writes = false;
	}

	async #put(version: Version): Promise<void> {
		let other: Version | undefined;
		await changeOnDisk<Version>(KEY, (now) => {
			other = now && now.stamp !== this.#mine ? now : undefined;
			const { past, future } = job.steps;
			return other ?? { ...version, steps: { past: past.slice(-STEPS), future: future.slice(0, STEPS) } };
		});
		if (other) {
			this.#elsewhere = other;
			await toDisk(this.#asideKey, version);
		} else {
			this.#mine = version.stamp;
			this.#tabs.postMessage(version);
		}
	}

	async #list(): Promise<void> {
		const asides = await Promise.all(
			(await keysOnDisk(ASIDE)).map(async (key) => ({
				key,
				at: new Date((await fromDisk<Version>(key))?.at ?? 0),
			})),
		);
		this.#asides = asides.sort((a, b) => b.at.getTime() - a.at.getTime());
		const unread = await Promise.all(
			(await keysOnDisk(UNREAD)).map(async (key) => {
				const text = (await fromDisk<{ text: string }>(key))?.text ?? '';
				const { problem } = engine.open(text);
				return problem ? [{ key, text, problem }] : [];
			}),
		);
		this.#unread = unread.flat();
	}
}

export const autosave = new Autosave();
