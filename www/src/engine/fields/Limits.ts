/* Written by `npm run types` from `schema/fields.json`. */

export const label = {
	"under": "Under",
	"over": "Over",
	"least": "Least",
	"most": "Most"
} as const;
