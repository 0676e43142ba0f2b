/* Written by `npm run types` from `schema/fields.json`. */

export const label = {
	"id": "Name",
	"working_height": "Working height",
	"working_load": "or working load",
	"seats": "Coils",
	"ask": "Height or load"
} as const;
