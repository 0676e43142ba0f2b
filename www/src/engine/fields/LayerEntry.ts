/* Written by `npm run types` from `schema/fields.json`. */

export const label = {
	"name": "Layer",
	"at": "Where",
	"thickness": "Thickness",
	"when_new": "When new",
	"missing": "Missing",
	"squeeze": "Squeeze"
} as const;

export const words = {
	"at": [
		{
			"id": "above",
			"name": "Over the nest"
		},
		{
			"id": "below",
			"name": "Under the nest"
		}
	],
	"missing": [
		{
			"id": "yes",
			"name": "It is missing"
		},
		{
			"id": "no",
			"name": "It is there"
		}
	]
} as const;

export const example = {
	"thickness": [
		"3/8",
		"10"
	],
	"when_new": [
		"3/8",
		"10"
	],
	"squeeze": [
		"1500 lb/in",
		"260 N/mm"
	]
} as const;
