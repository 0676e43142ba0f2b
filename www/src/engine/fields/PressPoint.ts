/* Written by `npm run types` from `schema/fields.json`. */

export const label = {
	"height": "Height",
	"load": "Load",
	"way": "Read"
} as const;

export const words = {
	"way": [
		{
			"id": "loading",
			"name": "while it was pressed"
		},
		{
			"id": "unloading",
			"name": "while it came back"
		}
	]
} as const;

export const example = {
	"height": [
		"11 1/2",
		"292"
	],
	"load": [
		"5000 lb",
		"22 000 N"
	]
} as const;
