/** A point of the paper. */
export type Point = readonly [x: number, y: number];

const onPaper = ([x, y]: Point) => `${x.toFixed(2)} ${y.toFixed(2)}`;

/** Path of the straight lines from point to point. */
export function linePath(points: readonly Point[]): string {
	return points.length === 0 ? '' : `M${points.map(onPaper).join('L')}`;
}

/** Path of the ground between two lines that run the same way. */
export function areaPath(upper: readonly Point[], lower: readonly Point[]): string {
	return upper.length === 0 ? '' : `${linePath([...upper, ...lower.toReversed()])}Z`;
}
