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
	"reserve": "Left before solid, least",
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

export const example = {
	"pocket": [
		"8 1/4",
		"210"
	],
	"post": [
		"3 1/2",
		"90"
	],
	"play": [
		"1/16",
		"1.5"
	],
	"gap": [
		"1/16",
		"1.5"
	],
	"free_least": [
		"13 15/16",
		"354"
	],
	"free_most": [
		"13 15/16",
		"354"
	],
	"rate_least": [
		"1500 lb/in",
		"260 N/mm"
	],
	"rate_most": [
		"1500 lb/in",
		"260 N/mm"
	],
	"height": [
		"11 1/2",
		"292"
	],
	"load_least": [
		"5000 lb",
		"22 000 N"
	],
	"load_most": [
		"5000 lb",
		"22 000 N"
	],
	"solid": [
		"7 1/8",
		"181"
	],
	"stress": [
		"95 000 psi",
		"650 MPa"
	],
	"stress_solid": [
		"95 000 psi",
		"650 MPa"
	],
	"reserve": [
		"1",
		"25"
	],
	"safety": [
		"1.3",
		"1.3"
	],
	"deviation": [
		"5 %",
		"5 %"
	]
} as const;
