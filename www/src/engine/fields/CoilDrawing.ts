/* Written by `npm run types` from `schema/fields.json`. */

export const label = {
	"id": "Word",
	"name": "Name",
	"bar": "Bar",
	"outside": "Outside",
	"mean": "Mean diameter",
	"inside": "Inside",
	"turns": "Turns in all",
	"ends": "Ends",
	"dead_turns": "Dead turns",
	"active_turns": "Active turns",
	"hand": "Hand",
	"steel": "Steel",
	"shear_modulus": "Shear modulus",
	"youngs_modulus": "Young’s modulus",
	"ends_turn": "Ends about the axis",
	"rate": "Rate in the book",
	"solid": "Solid in the book",
	"free": "Free height",
	"limits": "Limits",
	"loads": "Stated loads",
	"press_test": "Press test",
	"tolerances": "Tolerances",
	"duty": "Works between",
	"seating": "How its ends are kept",
	"set_removed": "Set taken out by its maker",
	"waived": "Waived"
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
		},
		{
			"id": "given",
			"name": "Other: dead turns and solid height given"
		}
	],
	"hand": [
		{
			"id": "left",
			"name": "Left hand"
		},
		{
			"id": "right",
			"name": "Right hand"
		}
	],
	"ends_turn": [
		{
			"id": "held",
			"name": "Held"
		},
		{
			"id": "free",
			"name": "Free to turn"
		}
	],
	"seating": [
		{
			"id": "guided",
			"name": "Both squarely on plates that stay parallel"
		},
		{
			"id": "one-pivoted",
			"name": "One so, the other on a pivot"
		},
		{
			"id": "both-pivoted",
			"name": "Both on pivots"
		},
		{
			"id": "sliding",
			"name": "On parallel plates that may slide sideways"
		},
		{
			"id": "one-free",
			"name": "One fixed, the other free"
		}
	],
	"set_removed": [
		{
			"id": "yes",
			"name": "Yes: pressed solid when it was made"
		},
		{
			"id": "no",
			"name": "No"
		}
	]
} as const;

export const example = {
	"bar": [
		"1 1/16",
		"27"
	],
	"outside": [
		"7 3/4",
		"197"
	],
	"mean": [
		"7 3/4",
		"197"
	],
	"inside": [
		"7 3/4",
		"197"
	],
	"turns": [
		"7 1/4",
		"7.25"
	],
	"dead_turns": [
		"1 1/2",
		"1.5"
	],
	"active_turns": [
		"7 1/4",
		"7.25"
	],
	"shear_modulus": [
		"11.2e6 psi",
		"78 500 MPa"
	],
	"youngs_modulus": [
		"11.2e6 psi",
		"78 500 MPa"
	],
	"rate": [
		"1500 lb/in",
		"260 N/mm"
	],
	"solid": [
		"7 1/8",
		"181"
	],
	"free": [
		"13 15/16",
		"354"
	]
} as const;
