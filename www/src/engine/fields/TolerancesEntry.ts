/* Written by `npm run types` from `schema/fields.json`. */

export const label = {
	"bar": "Bar ±",
	"diameter": "Diameter ±",
	"turns": "Turns ±",
	"free": "Free height ±",
	"rate": "Rate in the book ±",
	"solid": "Solid in the book ±"
} as const;
