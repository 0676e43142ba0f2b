/* Written by `npm run types` from `schema/fields.json`. */

export const label = {
	"along": "Its centre, towards A",
	"across": "Its centre, to the left"
} as const;
