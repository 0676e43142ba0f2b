/* Written by `npm run types` from `schema/fields.json`. */

export const label = {
	"nest": "Nest",
	"along": "Along",
	"across": "Across",
	"shim": "Shim",
	"ground": "Ground",
	"shimmable": "May be shimmed"
} as const;

export const words = {
	"shimmable": [
		{
			"id": "yes",
			"name": "Yes"
		},
		{
			"id": "no",
			"name": "No: they stay"
		}
	]
} as const;

export const example = {
	"along": [
		"36",
		"900"
	],
	"across": [
		"36",
		"900"
	],
	"shim": [
		"1/8",
		"3"
	],
	"ground": [
		"1/2",
		"12"
	]
} as const;
