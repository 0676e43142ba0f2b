/* Written by `npm run types` from `schema/fields.json`. */

export const label = {
	"id": "Name",
	"working_height": "Working height",
	"working_load": "or working load",
	"seats": "Coils",
	"ask": "Height or load",
	"stack": "Pads, plates and shims",
	"standing": "Standing height",
	"guides": "Boxes in their guides"
} as const;
