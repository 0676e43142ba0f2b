/* Written by `npm run types` from `schema/fields.json`. */

export const label = {
	"height": "Height",
	"load": "Load there",
	"tolerance": "Load ±"
} as const;
