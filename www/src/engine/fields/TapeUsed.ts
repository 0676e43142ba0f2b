/* Written by `npm run types` from `schema/fields.json`. */

export const label = {
	"graduation": "Graduation",
	"class": "Class of the tape",
	"error": "Its error, if you know it",
	"ends_error": "One place may be off by"
} as const;

export const example = {
	"graduation": [
		"1/16",
		"1"
	],
	"error": [
		"1/64",
		"0.5"
	],
	"ends_error": [
		"1/64",
		"0.5"
	]
} as const;
