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
