/* Written by `npm run types` from `schema/fields.json`. */

export const label = {
	"coil": "Which coil this is",
	"label": "Label",
	"readings": "Place",
	"condition": "Condition",
	"confirmed": "Confirmed",
	"raise": "Raised by",
	"pair": "Pair",
	"found": "Found here"
} as const;

export const words = {
	"condition": [
		{
			"id": "sound",
			"name": "Sound"
		},
		{
			"id": "cracked",
			"name": "Cracked"
		},
		{
			"id": "pitted",
			"name": "Pitted"
		},
		{
			"id": "broken",
			"name": "Broken"
		}
	]
} as const;

export const example = {
	"readings": [
		"13 7/8",
		"352.5"
	],
	"confirmed": [
		"13 7/8",
		"352.5"
	],
	"raise": [
		"3/16",
		"5"
	]
} as const;
