/* Written by `npm run types` from `schema/fields.json`. */

export const label = {
	"name": "Name",
	"nests": "Nests on it",
	"boxes": "Box, along"
} as const;

export const example = {
	"boxes": [
		"36",
		"900"
	]
} as const;
