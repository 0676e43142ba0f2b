/* Written by `npm run types` from `schema/fields.json`. */

export const label = {
	"weight": "Weight on the nests",
	"centre": "Its centre",
	"weights": "Weights",
	"points": "Points of the frame",
	"warp_stiffness": "Stiffness against twist",
	"supports": "Where the nests stand",
	"apart": "How far apart they stand",
	"stop_stiffness": "Stiffness of a solid nest",
	"shim_stock": "In stock",
	"largest_stack": "Largest stack",
	"shims_for": "Shims are to give",
	"beams": "Beams",
	"wheels_apart": "Wheels of an axle apart"
} as const;

export const words = {
	"shims_for": [
		{
			"id": "loads",
			"name": "Even loads"
		},
		{
			"id": "level",
			"name": "A level frame"
		}
	]
} as const;

export const example = {
	"weight": [
		"5000 lb",
		"22 000 N"
	],
	"warp_stiffness": [
		"20 000 000 lb·in³",
		"1500 N·m³"
	],
	"stop_stiffness": [
		"1500 lb/in",
		"260 N/mm"
	],
	"shim_stock": [
		"1/8",
		"3"
	],
	"largest_stack": [
		"1/8",
		"3"
	],
	"wheels_apart": [
		"36",
		"900"
	]
} as const;
