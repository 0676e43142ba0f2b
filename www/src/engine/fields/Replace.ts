/* Written by `npm run types` from `schema/fields.json`. */

export const label = {
	"original": "Original",
	"nest": "In which nest",
	"seat": "Which seats",
	"together": "They are judged",
	"candidates": "Candidates",
	"waived": "Waived",
	"asked": "What is asked",
	"order": "Order"
} as const;

export const words = {
	"together": [
		{
			"id": "yes",
			"name": "as one nest, in all nests of the same coils"
		},
		{
			"id": "this-nest",
			"name": "as one nest, in this nest alone"
		},
		{
			"id": "no",
			"name": "each by itself"
		}
	]
} as const;

export const example = {
	"seat": [
		"8",
		"8"
	]
} as const;
