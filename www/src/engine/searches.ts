import type { MatchReport, SizingReport } from './types';

/** What each search finds. */
export interface Searches {
	matching: MatchReport;
	size: SizingReport;
}

export type SearchName = keyof Searches;

export interface SearchAsked {
	search: SearchName;
	/** As text: a copy of many objects would hold up the page. */
	job: string;
}

export type SearchTold = { part: number } | { report: Searches[SearchName] } | { fell: true };
