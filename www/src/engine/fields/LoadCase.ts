/* Written by `npm run types` from `schema/fields.json`. */

export const label = {
	"name": "Called",
	"weight": "Weight on the nests",
	"centre": "Its centre",
	"standing": "Standing heights"
} as const;

export const example = {
	"weight": [
		"5000 lb",
		"22 000 N"
	]
} as const;
