/* Written by `npm run types` from `schema/fields.json`. */

export const label = {
	"along": "Its centre, along",
	"across": "Its centre, across"
} as const;

export const example = {
	"along": [
		"36",
		"900"
	],
	"across": [
		"36",
		"900"
	]
} as const;
