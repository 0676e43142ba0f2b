/* Written by `npm run types` from `schema/fields.json`. */

export const label = {
	"name": "Point",
	"along": "Along",
	"across": "Across",
	"added": "To be added",
	"least": "Least height",
	"most": "Most height",
	"standing": "Standing height"
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
	"added": [
		"14 1/2",
		"370"
	],
	"least": [
		"11 1/2",
		"292"
	],
	"most": [
		"11 1/2",
		"292"
	],
	"standing": [
		"11 1/2",
		"292"
	]
} as const;
