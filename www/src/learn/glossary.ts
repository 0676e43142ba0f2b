import file from './glossary.json';

/** A word of the trade or of this page. */
export interface WordEntry {
	id: string;
	word: string;
	/** What it means, in one or two sentences. */
	says: string;
	/** The standard that defines it, or how it is known. */
	source: string;
	/** Other words for it, which the page does not use. */
	not?: string[];
	/** What else stands on the page for it. */
	labels?: string[];
	/** Letters of formulas that stand for it. */
	signs?: string[];
	/** Lines of a drawing, 96 wide and 48 high. */
	drawing?: string;
}

export const words: readonly WordEntry[] = file.words;

export function wordOf(id: string): WordEntry | undefined {
	return words.find((entry) => entry.id === id);
}
