/* Written by `npm run types` from `schema/fields.json`. */

export const label = {
	"name": "Box",
	"across": "Which way it is kept",
	"opening": "Opening",
	"box": "Width of the box",
	"liners": "Liners",
	"least": "Least clearance",
	"most": "Most clearance",
	"stock": "Liner at hand",
	"graduation": "Marks of the gauge",
	"error": "Its error"
} as const;

export const words = {
	"across": [
		{
			"id": "no",
			"name": "Along"
		},
		{
			"id": "yes",
			"name": "Across"
		}
	]
} as const;

export const example = {
	"opening": [
		"8 1/2",
		"216"
	],
	"box": [
		"7 7/8",
		"200"
	],
	"liners": [
		"1/4",
		"6"
	],
	"least": [
		"1/16",
		"1.5"
	],
	"most": [
		"1/16",
		"1.5"
	],
	"stock": [
		"1/4",
		"6"
	],
	"graduation": [
		"1/16",
		"1"
	],
	"error": [
		"1/64",
		"0.5"
	]
} as const;
