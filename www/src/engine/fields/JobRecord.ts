/* Written by `npm run types` from `schema/fields.json`. */

export const label = {
	"vehicle": "Vehicle",
	"number": "Number",
	"place": "Place",
	"date": "Date",
	"by": "Measured by",
	"checked_by": "Checked by",
	"manual": "Manual, page",
	"tape": "Which tape",
	"notes": "Notes",
	"photographs": "Photographs"
} as const;
