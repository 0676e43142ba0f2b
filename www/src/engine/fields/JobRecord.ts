/* Written by `npm run types` from `schema/fields.json`. */

export const label = {
	"vehicle": "Vehicle",
	"place": "Place",
	"by": "By",
	"date": "Date",
	"notes": "Notes"
} as const;
