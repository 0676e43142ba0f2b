/* Written by `npm run types` from `schema/fields.json`. */

export const label = {
	"at": "Nest or point",
	"height": "Standing height"
} as const;

export const example = {
	"height": [
		"11 1/2",
		"292"
	]
} as const;
