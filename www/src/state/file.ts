import type { Job } from '../engine/types';

/** The text of a job's file, made to be read. It asks no engine: what is written is kept whatever follows from it. */
export function fileOf(written: Job): string {
	return `${JSON.stringify(written, undefined, 2)}\n`;
}
