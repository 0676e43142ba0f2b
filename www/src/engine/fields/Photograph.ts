/* Written by `npm run types` from `schema/fields.json`. */

export const label = {
	"id": "Kept as",
	"about": "What it shows",
	"image": "Picture"
} as const;
