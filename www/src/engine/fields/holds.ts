/* Written by `npm run types` from `schema/fields.json`. */

export const holds = {
	"Job": {
		"record": "JobRecord",
		"tape": "TapeUsed",
		"coils": [
			"CoilDrawing"
		],
		"nests": [
			"NestInput"
		],
		"frame": "Frame",
		"bench": [
			"BenchCoil"
		],
		"set_aside": [
			"AsideCoil"
		],
		"replace": "Replace",
		"need": "Need",
		"earlier": "whole"
	},
	"JobRecord": {
		"photographs": [
			"Photograph"
		]
	},
	"CoilDrawing": {
		"limits": "Limits",
		"loads": [
			"LoadEntry"
		],
		"press_test": [
			"PressPoint"
		],
		"tolerances": "TolerancesEntry",
		"duty": "DutyEntry",
		"waived": "texts"
	},
	"NestInput": {
		"seats": [
			"Seat"
		],
		"ask": [
			"text"
		],
		"stack": [
			"LayerEntry"
		],
		"guides": [
			"GuideEntry"
		]
	},
	"Seat": {
		"readings": [
			"text"
		],
		"found": "FoundCoil"
	},
	"FoundCoil": {
		"readings": [
			"text"
		]
	},
	"GuideEntry": {
		"opening": [
			"text"
		],
		"box": [
			"text"
		],
		"liners": [
			[
				"text"
			]
		],
		"stock": [
			"text"
		]
	},
	"Frame": {
		"centre": "Centre",
		"weights": [
			"LoadCase"
		],
		"points": [
			"FramePoint"
		],
		"supports": [
			"Support"
		],
		"apart": "Apart",
		"shim_stock": [
			"text"
		],
		"beams": [
			"Beam"
		]
	},
	"LoadCase": {
		"centre": "Centre",
		"standing": [
			"StandingEntry"
		]
	},
	"Beam": {
		"nests": [
			"text"
		],
		"boxes": [
			"text"
		]
	},
	"BenchCoil": {
		"readings": [
			"text"
		]
	},
	"AsideCoil": {
		"readings": [
			"text"
		]
	},
	"Replace": {
		"candidates": [
			"CoilDrawing"
		],
		"waived": "texts",
		"asked": "Asked",
		"order": "OrderTexts"
	},
	"Need": {
		"bars": [
			"text"
		]
	}
} as const;
