/* Written by `npm run types` from `schema/fields.json`. */

export const label = {
	"load": "Load",
	"height": "at the height",
	"rate": "Rate",
	"second_load": "or a second load",
	"second_height": "at its height",
	"within": "Within",
	"pocket": "Bore of the pocket",
	"post": "Post inside",
	"clearance": "Clearance all round",
	"solid": "Solid height, most",
	"free": "Free height, most",
	"steel": "Steel it is made of",
	"ends": "Ends it is to have",
	"stress": "Stress at load",
	"stress_solid": "Stress at solid",
	"stress_factor": "Both stresses are",
	"bars": "Bar",
	"pair": "One coil or a pair",
	"rank": "Rank"
} as const;

export const words = {
	"ends": [
		{
			"id": "tapered-ground",
			"name": "Hot wound, tapered and ground"
		},
		{
			"id": "closed-ground",
			"name": "Closed and ground"
		},
		{
			"id": "closed",
			"name": "Closed"
		},
		{
			"id": "open-ground",
			"name": "Open and ground"
		},
		{
			"id": "open",
			"name": "Open"
		}
	],
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
	],
	"pair": [
		{
			"id": "yes",
			"name": "A coil inside another"
		},
		{
			"id": "no",
			"name": "One coil"
		}
	],
	"rank": [
		{
			"id": "mass",
			"name": "The lightest first"
		},
		{
			"id": "stress",
			"name": "The least stressed first"
		}
	]
} as const;

export const example = {
	"load": [
		"5000 lb",
		"22 000 N"
	],
	"height": [
		"11 1/2",
		"292"
	],
	"rate": [
		"1500 lb/in",
		"260 N/mm"
	],
	"second_load": [
		"5000 lb",
		"22 000 N"
	],
	"second_height": [
		"11 1/2",
		"292"
	],
	"within": [
		"5 %",
		"5 %"
	],
	"pocket": [
		"8 1/4",
		"210"
	],
	"post": [
		"3 1/2",
		"90"
	],
	"clearance": [
		"1/16",
		"1.5"
	],
	"solid": [
		"7 1/8",
		"181"
	],
	"free": [
		"13 15/16",
		"354"
	],
	"stress": [
		"95 000 psi",
		"650 MPa"
	],
	"stress_solid": [
		"95 000 psi",
		"650 MPa"
	],
	"bars": [
		"1 1/16",
		"27"
	]
} as const;
