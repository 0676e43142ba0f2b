/** A round bar cut by the drawing plane, in drawing coordinates (y downwards). A ground end is cut flat at `top` or `bottom`. */
export interface CutBar {
	x: number;
	y: number;
	r: number;
	top: number;
	bottom: number;
}

const clamp = (value: number, least: number, most: number) => Math.min(most, Math.max(least, value));
const p = (value: number) => value.toFixed(2);

/** Path of the outline; empty when the plane has cut the whole bar away. */
export function outline({ x, y, r, top, bottom }: CutBar): string {
	const low = Math.asin(clamp((bottom - y) / r, -1, 1));
	const high = Math.asin(clamp((top - y) / r, -1, 1));
	if (low <= high) return '';
	const at = (angle: number) => `${p(x + r * Math.cos(angle))} ${p(y + r * Math.sin(angle))}`;
	const arc = (to: number) => `A${p(r)} ${p(r)} 0 0 1 ${at(to)}`;
	return `M${at(low)}L${at(Math.PI - low)}${arc(Math.PI - high)}L${at(high)}${arc(low)}Z`;
}

/** Path of the hatching inside the outline: chords at `angle` degrees, `gap` apart. */
export function hatching({ x, y, r, top, bottom }: CutBar, angle: number, gap: number): string {
	const [ux, uy] = [Math.cos((angle * Math.PI) / 180), Math.sin((angle * Math.PI) / 180)];
	const chords: string[] = [];
	for (let offset = gap / 2 - gap * Math.ceil(r / gap); offset < r; offset += gap) {
		if (offset <= -r) continue;
		const [mx, my, half] = [x - uy * offset, y + ux * offset, Math.sqrt(r * r - offset * offset)];
		const ends =
			Math.abs(uy) < 1e-6 ? [-half, half] : [(top - my) / uy, (bottom - my) / uy].sort((a, b) => a - b);
		const [from, to] = [Math.max(-half, ends[0] ?? -half), Math.min(half, ends[1] ?? half)];
		const inside = Math.abs(uy) >= 1e-6 || (my > top && my < bottom);
		if (inside && from < to)
			chords.push(`M${p(mx + ux * from)} ${p(my + uy * from)}L${p(mx + ux * to)} ${p(my + uy * to)}`);
	}
	return chords.join('');
}

/** Path of short strokes on the outer side of a seat plane, from `x1` to `x2`; `side` is -1 above the plane, 1 below. */
export function ground(x1: number, x2: number, y: number, side: -1 | 1, depth = 7): string {
	const strokes: string[] = [];
	for (let x = x1 + depth; x <= x2; x += depth) {
		strokes.push(
			side < 0 ? `M${p(x - depth)} ${p(y)}l${depth} ${-depth}` : `M${p(x)} ${p(y)}l${-depth} ${depth}`,
		);
	}
	return strokes.join('');
}
