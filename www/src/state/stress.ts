/** With which factor a stress is meant. */
export const factors = [
	{ id: 'uncorrected', name: 'Uncorrected' },
	{ id: 'bergstrasser', name: 'With Bergsträsser’s factor' },
	{ id: 'wahl', name: 'With Wahl’s factor' },
];

/** How it is taken where nobody says. */
export const FACTOR = 'With Wahl’s factor, the greatest';
