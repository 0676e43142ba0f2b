/** How a seat's coil is told apart on every drawing: by colour, and without it by the slope and the closeness of its hatching. */
export interface SeatStyle {
	line: string;
	tint: string;
	angle: number;
	gap: number;
	weight: number;
}

const styles: [SeatStyle, ...SeatStyle[]] = [
	{ line: 'var(--coil-1)', tint: 'var(--coil-1-tint)', angle: -45, gap: 5, weight: 2.2 },
	{ line: 'var(--coil-2)', tint: 'var(--coil-2-tint)', angle: 45, gap: 3, weight: 1.6 },
	{ line: 'var(--coil-3)', tint: 'var(--coil-3-tint)', angle: 0, gap: 3.5, weight: 1.3 },
];

export function seatStyle(seat: number): SeatStyle {
	return styles[seat % styles.length] ?? styles[0];
}
