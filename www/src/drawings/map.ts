import type { SizingMap } from '../engine/types';

/** A count of turns, as it is said. */
export function turnsText(turns: number | undefined): string {
	return turns === undefined ? '' : String(Number(turns.toFixed(2)));
}

/** Neighbouring counts of turns of one bar that all meet the need, or all fail by the same limit. */
export interface Run {
	bar: number;
	from: number;
	/** The first that is no more of it. */
	to: number;
	/** 0 where the need is met, else the limit's place counted from 1. */
	cell: number;
}

export function cellAt({ turns, cells }: SizingMap, bar: number, turn: number): number {
	return cells[bar * turns.length + turn] ?? 0;
}

/** The runs of one bar, from few turns to many. */
export function runsOf(map: SizingMap, bar: number): Run[] {
	return map.turns.reduce<Run[]>((runs, _, turn) => {
		const cell = cellAt(map, bar, turn);
		const last = runs.at(-1);
		if (last?.cell === cell) last.to = turn + 1;
		else runs.push({ bar, from: turn, to: turn + 1, cell });
		return runs;
	}, []);
}

/** What is said of a cell: that the need is met, or by which limit it fails. */
export function cellWord({ limits }: SizingMap, cell: number): string {
	return cell === 0 ? 'meets the need' : (limits[cell - 1] ?? '');
}
