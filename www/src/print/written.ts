import type { Figure } from '../engine/types';

/** A figure on paper, where nobody can press it for its doubt. */
export function withDoubt(figure: Figure | undefined): string {
	return figure ? [figure.text, figure.doubt_text].filter(Boolean).join(' ') : '';
}
