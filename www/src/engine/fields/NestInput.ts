/* Written by `npm run types` from `schema/fields.json`. */

export const label = {
	"id": "Name",
	"working_height": "Working height",
	"working_load": "or working load",
	"seats": "Coils",
	"ask": "Height or load",
	"stack": "Pads, plates and shims",
	"standing": "Standing height",
	"guides": "Boxes in their guides"
} as const;

export const example = {
	"working_height": [
		"11 1/2",
		"292"
	],
	"working_load": [
		"5000 lb",
		"22 000 N"
	],
	"ask": [
		"11 1/2",
		"292"
	],
	"standing": [
		"11 1/2",
		"292"
	]
} as const;
