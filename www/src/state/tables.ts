/** How a spreadsheet writes decimals in the language of this browser. */
export const tables = {
	get decimals(): 'point' | 'comma' {
		const parts = new Intl.NumberFormat(navigator.language).formatToParts(1.5);
		return parts.some(({ type, value }) => type === 'decimal' && value === ',') ? 'comma' : 'point';
	},
};
