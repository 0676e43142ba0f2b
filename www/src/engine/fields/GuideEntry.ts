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
