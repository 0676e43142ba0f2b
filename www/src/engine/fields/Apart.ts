/* Written by `npm run types` from `schema/fields.json`. */

export const label = {
	"along": "Nests apart, along",
	"across": "Nests apart, across"
} as const;

export const example = {
	"along": [
		"72",
		"1800"
	],
	"across": [
		"72",
		"1800"
	]
} as const;
