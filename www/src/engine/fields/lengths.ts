/* Written by `npm run types` from `schema/fields.json`. */

export const lengths = {
	"TapeUsed": [
		"graduation",
		"error",
		"ends_error"
	],
	"CoilDrawing": [
		"bar",
		"outside",
		"mean",
		"inside",
		"solid",
		"free"
	],
	"Limits": [
		"under",
		"over",
		"least",
		"most"
	],
	"LoadEntry": [
		"height"
	],
	"PressPoint": [
		"height"
	],
	"NestInput": [
		"working_height",
		"standing"
	],
	"Seat": [
		"readings",
		"confirmed",
		"raise"
	],
	"FoundCoil": [
		"readings",
		"confirmed"
	],
	"LayerEntry": [
		"thickness",
		"when_new"
	],
	"GuideEntry": [
		"opening",
		"box",
		"liners",
		"least",
		"most",
		"stock",
		"graduation",
		"error"
	],
	"Frame": [
		"shim_stock",
		"largest_stack",
		"wheels_apart"
	],
	"Centre": [
		"along",
		"across"
	],
	"StandingEntry": [
		"height"
	],
	"FramePoint": [
		"along",
		"across",
		"added",
		"least",
		"most",
		"standing"
	],
	"Support": [
		"along",
		"across",
		"shim",
		"ground"
	],
	"Apart": [
		"along",
		"across"
	],
	"Beam": [
		"boxes"
	],
	"BenchCoil": [
		"readings",
		"confirmed"
	],
	"AsideCoil": [
		"readings",
		"confirmed"
	],
	"Asked": [
		"pocket",
		"post",
		"play",
		"gap",
		"free_least",
		"free_most",
		"height",
		"solid",
		"reserve"
	],
	"Need": [
		"height",
		"second_height",
		"pocket",
		"post",
		"clearance",
		"solid",
		"free",
		"bars"
	]
} as const;
