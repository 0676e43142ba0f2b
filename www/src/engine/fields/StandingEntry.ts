/* Written by `npm run types` from `schema/fields.json`. */

export const label = {
	"at": "Nest or point",
	"height": "Standing height"
} as const;
