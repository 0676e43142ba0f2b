/* Written by `npm run types` from `schema/fields.json`. */

export const label = {
	"quantity": "How many",
	"part_number": "Part number",
	"drawing": "Drawing",
	"revision": "Revision",
	"end_use": "End use",
	"grade": "Grade of tolerance",
	"adjustable": "Left to the maker",
	"peening": "Shot peening",
	"set_removal": "Set removal",
	"finish": "Finish",
	"hardness": "Hardness",
	"decarburised": "Decarburised depth",
	"crack_test": "Crack test",
	"inspection": "Inspection",
	"test": "Test",
	"certificate": "Certificate",
	"marking": "Marking",
	"packaging": "Packaging, loading"
} as const;

export const example = {
	"quantity": [
		"8",
		"8"
	]
} as const;
