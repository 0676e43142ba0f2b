/* Written by `npm run types` from `schema/fields.json`. */

export const label = {
	"pocket": "Bore of the pocket",
	"post": "Post inside",
	"play": "Play on the diameter",
	"gap": "Gap to each neighbour",
	"free_least": "Free height, least",
	"free_most": "Free height, most",
	"rate_least": "Rate, least",
	"rate_most": "Rate, most",
	"height": "Height at work",
	"load_least": "Load at that height, least",
	"load_most": "Load at that height, most",
	"solid": "Solid height, most",
	"stress": "Stress at work, most",
	"stress_solid": "Stress at solid, most",
	"stress_factor": "Both stresses are",
	"reserve": "Left to solid, least",
	"safety": "Factor of safety, least",
	"deviation": "Loads off the mean, most"
} as const;

export const words = {
	"stress_factor": [
		{
			"id": "uncorrected",
			"name": "Uncorrected"
		},
		{
			"id": "bergstrasser",
			"name": "With Bergsträsser’s factor"
		},
		{
			"id": "wahl",
			"name": "With Wahl’s factor"
		}
	]
} as const;
