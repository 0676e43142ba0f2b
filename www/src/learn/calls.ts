import { whole } from '../engine/whole';
import type {
	Bell,
	Job,
	LevelReport,
	Report,
	SheetAnswer,
	SizingReport,
	StateAnswer,
	TapeStrip,
} from '../engine/types';

/** What lessons ask of the calculation: its ordinary calls, with a copy of a job. */
export const ask = {
	demo: (): Job => whole.demo(),
	report: (job: Job): Report => whole.assess(job),
	state: (job: Job, nest: string, at: string): StateAnswer => whole.nestState(job, nest, at),
	tape: (job: Job, path: string): TapeStrip | undefined => whole.tape(job, path),
	sheet: (job: Job, coil: string): SheetAnswer => whole.coilSheet(job, coil),
	bell: (job: Job, path: string): Bell | undefined => whole.bell(job, path),
	size: (job: Job): SizingReport => whole.size(job),
	level: (job: Job): LevelReport => whole.level(job),
	held: (job: Job) => new whole.HeldFrame(job),
};
