/* Written by `npm run types` from `schema/fields.json`. */

export const label = {
	"label": "Label",
	"readings": "Place",
	"condition": "Condition",
	"confirmed": "Confirmed"
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
