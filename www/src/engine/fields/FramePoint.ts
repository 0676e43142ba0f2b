/* Written by `npm run types` from `schema/fields.json`. */

export const label = {
	"name": "Point",
	"along": "Along",
	"across": "Across",
	"added": "To be added",
	"least": "Least height",
	"most": "Most height",
	"standing": "Standing height"
} as const;
