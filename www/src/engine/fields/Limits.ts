/* Written by `npm run types` from `schema/fields.json`. */

export const label = {
	"under": "Under",
	"over": "Over",
	"least": "Least",
	"most": "Most"
} as const;

export const example = {
	"under": [
		"1/8",
		"3"
	],
	"over": [
		"1/8",
		"3"
	],
	"least": [
		"13 15/16",
		"354"
	],
	"most": [
		"13 15/16",
		"354"
	]
} as const;
