/* Written by `npm run types` from `schema/fields.json`. */

export const label = {
	"least": "Lesser load",
	"most": "Greater load",
	"surface": "Surface"
} as const;

export const words = {
	"surface": [
		{
			"id": "peened",
			"name": "Shot-peened"
		},
		{
			"id": "unpeened",
			"name": "Not peened"
		}
	]
} as const;

export const example = {
	"least": [
		"5000 lb",
		"22 000 N"
	],
	"most": [
		"5000 lb",
		"22 000 N"
	]
} as const;
