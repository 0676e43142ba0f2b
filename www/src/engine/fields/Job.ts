/* Written by `npm run types` from `schema/fields.json`. */

export const label = {
	"format": "Format",
	"title": "Title",
	"system": "Units",
	"record": "Who, where, when",
	"tape": "Tape",
	"decision_level": "Sure means at least",
	"coils": "Drawings",
	"nests": "Nests",
	"frame": "Frame",
	"bench": "Coils on the bench",
	"set_aside": "Set aside",
	"use_too_close": "Coils that are too close to call",
	"replace": "Replacement",
	"need": "Need",
	"earlier": "Earlier job"
} as const;

export const words = {
	"system": [
		{
			"id": "inch",
			"name": "Inches"
		},
		{
			"id": "metric",
			"name": "Millimetres"
		}
	],
	"use_too_close": [
		{
			"id": "yes",
			"name": "may be put into seats"
		},
		{
			"id": "no",
			"name": "are set aside"
		}
	]
} as const;

export const example = {
	"decision_level": [
		"95 %",
		"95 %"
	]
} as const;
