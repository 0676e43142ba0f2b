/* Written by `npm run types` from the schemas in `schema/`. */

/**
 * The word of a verdict.
 */
export type Word = 'good' | 'short' | 'long' | 'too-close' | 'scrap' | 'none';
/**
 * What happens at a bend of the load curve.
 */
export type EventWord = 'touches' | 'stage' | 'solid';
/**
 * How a requirement is met, or all of them together.
 */
export type Met = 'throughout' | 'at-nominal' | 'as-drawn' | 'not-met' | 'cannot-tell';
/**
 * Where on the page a caution binds.
 */
export type Place = 'measure' | 'nest' | 'level' | 'replace' | 'all';
/**
 * What a value is worth as a check.
 */
export type Rank = 'independent' | 'weak' | 'recalled' | 'program' | 'derived';
/**
 * Whether a value agrees.
 */
export type Standing2 = 'agrees' | 'deviates' | 'differs';
/**
 * How two neighbours are wound.
 */
export type HandsWord = 'opposite' | 'same' | 'unknown';
/**
 * Whether a point of a frame is within its limits.
 */
export type PointWord = 'within' | 'low' | 'high' | 'too-close' | 'none';
/**
 * What taped heights tell of a frame.
 */
export type StandingWord = 'agrees' | 'one-cause' | 'unexplained';
/**
 * Whether a frame stands.
 */
export type FrameState = 'settled' | 'tips';
/**
 * Whether a nest bears.
 */
export type SupportState = 'loose' | 'carrying' | 'bottomed';
/**
 * The word of a box in its guides.
 */
export type GuidesWord = 'free' | 'tight' | 'loose' | 'too-close' | 'seized' | 'none';
/**
 * What lies between frame and lower seat.
 */
export type StackPartKind = 'layer' | 'nest' | 'shim';
/**
 * What two measurements of a coil say of it.
 */
export type SinceWord = 'lost' | 'gained' | 'within-doubt';

/**
 * How far apart the middles of four nests stand: the first two at one end, left and right, the others in the same order behind them.
 */
export interface Apart {
	/**
	 * From the first nest to the second. Takes a distance between nests between 1 in and 2400 in, or a distance between nests between 25.4 mm and 60 960 mm.
	 */
	across?: string;
	/**
	 * From the first nest to the third. Takes a distance between nests between 1 in and 2400 in, or a distance between nests between 25.4 mm and 60 960 mm.
	 */
	along?: string;
}
/**
 * A coil that does not go back.
 */
export interface AsideCoil {
	/**
	 * Which drawing it should be.
	 */
	coil?: string;
	/**
	 * What it looks like: `sound`, `cracked`, `pitted`, `broken`, or another word.
	 */
	condition?: string;
	/**
	 * A reading that was questioned, and is so when read again. Takes a reading between 1/64 in and 120 in, or a reading between 0.3969 mm and 3 048 mm.
	 */
	confirmed?: string;
	/**
	 * The mark painted on it.
	 */
	label?: string;
	/**
	 * What the tape said at each place round the coil. Takes a reading between 1/64 in and 120 in, or a reading between 0.3969 mm and 3 048 mm.
	 */
	readings?: string[];
	/**
	 * Why it was set aside.
	 */
	reason?: string;
}
/**
 * What is asked of a replacement.
 */
export interface Asked {
	/**
	 * By how much a load under the frame may differ from the mean. Takes a tolerance between 0 % and 100 %.
	 */
	deviation?: string;
	/**
	 * The least free height. Takes a free height between 1/64 in and 120 in, or a free height between 0.3969 mm and 3 048 mm.
	 */
	free_least?: string;
	/**
	 * The greatest free height. Takes a free height between 1/64 in and 120 in, or a free height between 0.3969 mm and 3 048 mm.
	 */
	free_most?: string;
	/**
	 * Radial gap to be left to each neighbour. Takes a clearance between 0 in and 12 in, or a clearance between 0 mm and 304.8 mm.
	 */
	gap?: string;
	/**
	 * Height at work; the nest's where none is given. Takes a height between 1/64 in and 120 in, or a height between 0.3969 mm and 3 048 mm.
	 */
	height?: string;
	/**
	 * The least load at that height. Takes a load between 0 lb and 2 248 000 lb, or a load between 0 N and 10 000 000 N.
	 */
	load_least?: string;
	/**
	 * The greatest load at that height. Takes a load between 0 lb and 2 248 000 lb, or a load between 0 N and 10 000 000 N.
	 */
	load_most?: string;
	/**
	 * Room to be left in the pocket and over the post, on the diameter. Takes a clearance between 0 in and 12 in, or a clearance between 0 mm and 304.8 mm.
	 */
	play?: string;
	/**
	 * Bore of the pocket. Takes a bore between 3/64 in and 60 in, or a bore between 1.191 mm and 1 524 mm.
	 */
	pocket?: string;
	/**
	 * Thickness of the post. Takes a post between 3/64 in and 60 in, or a post between 1.191 mm and 1 524 mm.
	 */
	post?: string;
	/**
	 * The least rate. Takes a rate between 0.02 lb/in and 5 710 000 lb/in, or a rate between 0.003503 N/mm and 1 000 000 N/mm.
	 */
	rate_least?: string;
	/**
	 * The greatest rate. Takes a rate between 0.02 lb/in and 5 710 000 lb/in, or a rate between 0.003503 N/mm and 1 000 000 N/mm.
	 */
	rate_most?: string;
	/**
	 * What must be left between the height at work and solid. Takes a reserve between 0 in and 120 in, or a reserve between 0 mm and 3 048 mm.
	 */
	reserve?: string;
	/**
	 * The least factor of safety between two loads. Takes a factor of safety between 0.1 and 100.
	 */
	safety?: string;
	/**
	 * The greatest solid height. Takes a solid height between 1/64 in and 120 in, or a solid height between 0.3969 mm and 3 048 mm.
	 */
	solid?: string;
	/**
	 * The greatest stress at work. Takes a stress between 0 psi and 1 450 000 psi, or a stress between 0 MPa and 10 000 MPa.
	 */
	stress?: string;
	/**
	 * Which stress the two are meant for: `uncorrected`, `bergstrasser` or `wahl`; the last unless said, which is the greatest.
	 */
	stress_factor?: string;
	/**
	 * The greatest stress at solid. Takes a stress between 0 psi and 1 450 000 psi, or a stress between 0 MPa and 10 000 MPa.
	 */
	stress_solid?: string;
}
/**
 * A beam on two boxes, with nests on it.
 */
export interface Beam {
	/**
	 * Where its two boxes are, towards the A end. Takes a position between −1200 in and 1200 in, or a position between −30 480 mm and 30 480 mm.
	 */
	boxes?: string[];
	/**
	 * Its name.
	 */
	name?: string;
	/**
	 * The nests on it.
	 */
	nests?: string[];
}
/**
 * A coil on the bench.
 */
export interface BenchCoil {
	/**
	 * Which drawing it should be.
	 */
	coil?: string;
	/**
	 * What it looks like: `sound`, `cracked`, `pitted`, `broken`, or another word.
	 */
	condition?: string;
	/**
	 * A reading that was questioned, and is so when read again. Takes a reading between 1/64 in and 120 in, or a reading between 0.3969 mm and 3 048 mm.
	 */
	confirmed?: string;
	/**
	 * The mark painted on it.
	 */
	label?: string;
	/**
	 * A word that it shares with the coils from which it may not part.
	 */
	pair?: string;
	/**
	 * What the tape said at each place round the coil. Takes a reading between 1/64 in and 120 in, or a reading between 0.3969 mm and 3 048 mm.
	 */
	readings?: string[];
}
/**
 * Where the weight acts.
 */
export interface Centre {
	/**
	 * To the left, looking from B to A. Takes a position between −1200 in and 1200 in, or a position between −30 480 mm and 30 480 mm.
	 */
	across?: string;
	/**
	 * Towards the A end. Takes a position between −1200 in and 1200 in, or a position between −30 480 mm and 30 480 mm.
	 */
	along?: string;
}
/**
 * What a kind of coil should be.
 */
export interface CoilDrawing {
	/**
	 * Turns that deflect, instead. Takes a number of turns between 0.5 and 200.
	 */
	active_turns?: string;
	/**
	 * Bar (wire) diameter. Takes a bar between 1/64 in and 6 in, or a bar between 0.3969 mm and 152.4 mm.
	 */
	bar?: string;
	/**
	 * Turns that do not deflect, where the form of the ends does not say it well enough. Takes a number of dead turns between 0 and 10, and a doubt of its own behind ± where it has one.
	 */
	dead_turns?: string;
	/**
	 * What it works between.
	 */
	duty?: DutyEntry;
	/**
	 * Form of the ends.
	 */
	ends?: string;
	/**
	 * `held` or `free` about the coil's axis.
	 */
	ends_turn?: string;
	/**
	 * Free height from the book. Takes a free height between 1/64 in and 120 in, or a free height between 0.3969 mm and 3 048 mm.
	 */
	free?: string;
	/**
	 * `left` or `right`.
	 */
	hand?: string;
	/**
	 * The word by which seats name it.
	 */
	id: string;
	/**
	 * Inside diameter, instead. Takes a coil diameter between 3/64 in and 60 in, or a coil diameter between 1.191 mm and 1 524 mm.
	 */
	inside?: string;
	/**
	 * Limits on the free height.
	 */
	limits?: Limits;
	/**
	 * Loads at heights that its drawing or its maker states.
	 */
	loads?: LoadEntry[];
	/**
	 * Mean diameter, instead. Takes a coil diameter between 3/64 in and 60 in, or a coil diameter between 1.191 mm and 1 524 mm.
	 */
	mean?: string;
	/**
	 * Its name for people.
	 */
	name?: string;
	/**
	 * Outside diameter. Takes a coil diameter between 3/64 in and 60 in, or a coil diameter between 1.191 mm and 1 524 mm.
	 */
	outside?: string;
	/**
	 * Heights and loads on a press.
	 */
	press_test?: PressPoint[];
	/**
	 * Rate from the book, over the drawing's. Takes a rate between 0.02 lb/in and 5 710 000 lb/in, or a rate between 0.003503 N/mm and 1 000 000 N/mm.
	 */
	rate?: string;
	/**
	 * How its ends are kept against buckling: `guided`, `one-pivoted`, `both-pivoted`, `sliding` or `one-free`.
	 */
	seating?: string;
	/**
	 * `yes` where it was pressed solid when it was made.
	 */
	set_removed?: string;
	/**
	 * Shear modulus, over the steel's. Takes a modulus between 1 000 000 psi and 145 000 000 psi, or a modulus between 6 895 MPa and 1 000 000 MPa.
	 */
	shear_modulus?: string;
	/**
	 * Solid height from the book, over the drawing's. Takes a solid height between 1/64 in and 120 in, or a solid height between 0.3969 mm and 3 048 mm.
	 */
	solid?: string;
	/**
	 * Steel, by its word in the tables. Takes a word of the steels.
	 */
	steel?: string;
	/**
	 * How far its sizes may be off, or how well those of a sample are known.
	 */
	tolerances?: TolerancesEntry;
	/**
	 * Total turns, tip to tip. Takes a number of turns between 0.5 and 200.
	 */
	turns?: string;
	/**
	 * Of a candidate, requirements that it alone need not meet, by their codes, each with the reason.
	 */
	waived?: {
		[k: string]: string;
	};
	/**
	 * Young's modulus, over the steel's. Takes a modulus between 1 000 000 psi and 145 000 000 psi, or a modulus between 6 895 MPa and 1 000 000 MPa.
	 */
	youngs_modulus?: string;
}
/**
 * The two loads between which a coil works.
 */
export interface DutyEntry {
	/**
	 * The lesser load. Takes a load between 0 lb and 2 248 000 lb, or a load between 0 N and 10 000 000 N.
	 */
	least?: string;
	/**
	 * The greater load. Takes a load between 0 lb and 2 248 000 lb, or a load between 0 N and 10 000 000 N.
	 */
	most?: string;
	/**
	 * `peened` or `unpeened`.
	 */
	surface?: string;
}
/**
 * Limits on a free height: under and over the book figure, or least and most.
 */
export interface Limits {
	/**
	 * The least allowed, instead. Takes a free height between 1/64 in and 120 in, or a free height between 0.3969 mm and 3 048 mm.
	 */
	least?: string;
	/**
	 * The most allowed, instead. Takes a free height between 1/64 in and 120 in, or a free height between 0.3969 mm and 3 048 mm.
	 */
	most?: string;
	/**
	 * How far over. Takes a limit between 0 in and 12 in, or a limit between 0 mm and 304.8 mm.
	 */
	over?: string;
	/**
	 * How far under the book figure is allowed. Takes a limit between 0 in and 12 in, or a limit between 0 mm and 304.8 mm.
	 */
	under?: string;
}
/**
 * A load that is stated at a height.
 */
export interface LoadEntry {
	/**
	 * The height. Takes a height between 1/64 in and 120 in, or a height between 0.3969 mm and 3 048 mm.
	 */
	height?: string;
	/**
	 * The load there. Takes a load between 0 lb and 2 248 000 lb, or a load between 0 N and 10 000 000 N.
	 */
	load?: string;
	/**
	 * How far it may be off, as `± 5 %` or `+200 -0 lb`. Takes a tolerance of the load between 0 lb and 224 800 lb, or a tolerance of the load between 0 N and 1 000 000 N, either way or up and down apart.
	 */
	tolerance?: string;
}
/**
 * One reading on a press.
 */
export interface PressPoint {
	/**
	 * Height. Takes a height between 1/64 in and 120 in, or a height between 0.3969 mm and 3 048 mm.
	 */
	height?: string;
	/**
	 * Load. Takes a load between 0 lb and 2 248 000 lb, or a load between 0 N and 10 000 000 N.
	 */
	load?: string;
	/**
	 * `loading` or `unloading`; the first where nothing is said.
	 */
	way?: string;
}
/**
 * How far sizes may be off: either way by so much, or up and down apart, as `+1.5 -0`.
 */
export interface TolerancesEntry {
	/**
	 * Of the bar. Takes a tolerance between 0 in and 2 in, or a tolerance between 0 mm and 50.8 mm, either way or up and down apart.
	 */
	bar?: string;
	/**
	 * Of the outside, mean or inside diameter that is given. Takes a tolerance between 0 in and 2 in, or a tolerance between 0 mm and 50.8 mm, either way or up and down apart.
	 */
	diameter?: string;
	/**
	 * Of the free height. Takes a tolerance between 0 in and 2 in, or a tolerance between 0 mm and 50.8 mm, either way or up and down apart.
	 */
	free?: string;
	/**
	 * Of the rate that is given. Takes a tolerance of the rate between 0 lb/in and 571 000 lb/in, or a tolerance of the rate between 0 N/mm and 100 000 N/mm, either way or up and down apart.
	 */
	rate?: string;
	/**
	 * Of the solid height that is given. Takes a tolerance between 0 in and 2 in, or a tolerance between 0 mm and 50.8 mm, either way or up and down apart.
	 */
	solid?: string;
	/**
	 * Of the turns in all. Takes a tolerance of the turns between 0 and 5, either way or up and down apart.
	 */
	turns?: string;
}
/**
 * The coil that was found in a seat before another was fitted.
 */
export interface FoundCoil {
	/**
	 * What it looks like: `sound`, `cracked`, `pitted`, `broken`, or another word.
	 */
	condition?: string;
	/**
	 * A reading that was questioned, and is so when read again. Takes a reading between 1/64 in and 120 in, or a reading between 0.3969 mm and 3 048 mm.
	 */
	confirmed?: string;
	/**
	 * The mark painted on it.
	 */
	label?: string;
	/**
	 * What the tape said at each place round the coil. Takes a reading between 1/64 in and 120 in, or a reading between 0.3969 mm and 3 048 mm.
	 */
	readings?: string[];
}
/**
 * The frame that stands on the nests.
 */
export interface Frame {
	/**
	 * How far apart four nests stand, instead of a place of each.
	 */
	apart?: Apart;
	/**
	 * Equalizer beams between nests and boxes.
	 */
	beams?: Beam[];
	/**
	 * Where the weight acts.
	 */
	centre?: Centre;
	/**
	 * The most shim that may go under one nest. Takes a shim between 0 in and 12 in, or a shim between 0 mm and 304.8 mm.
	 */
	largest_stack?: string;
	/**
	 * Points of it whose height counts, as couplers and buffers.
	 */
	points?: FramePoint[];
	/**
	 * Thicknesses of shim at hand. Takes a shim between 0 in and 12 in, or a shim between 0 mm and 304.8 mm.
	 */
	shim_stock?: string[];
	/**
	 * What shims are to even out: `loads` or `level`; the first where nothing is said.
	 */
	shims_for?: string;
	/**
	 * Stiffness of a nest that is solid. Takes a rate between 0.02 lb/in and 5 710 000 lb/in, or a rate between 0.003503 N/mm and 1 000 000 N/mm.
	 */
	stop_stiffness?: string;
	/**
	 * Where each nest stands.
	 */
	supports?: Support[];
	/**
	 * Stiffness against twist; rigid when empty. Takes a warp stiffness between 0 lb·in³ and 13 700 000 000 000 lb·in³, or a warp stiffness between 0 N·m³ and 1 000 000 000 N·m³.
	 */
	warp_stiffness?: string;
	/**
	 * Weight on the nests. Takes a load between 0 lb and 2 248 000 lb, or a load between 0 N and 10 000 000 N.
	 */
	weight?: string;
	/**
	 * Several weights, as light and loaded. `weight` and `centre` stand for those of the first where it has none of its own.
	 */
	weights?: LoadCase[];
	/**
	 * Distance between the wheels of an axle, from contact to contact. Takes a position between −1200 in and 1200 in, or a position between −30 480 mm and 30 480 mm.
	 */
	wheels_apart?: string;
}
/**
 * A point of the frame whose height counts.
 */
export interface FramePoint {
	/**
	 * To the left, looking from B to A. Takes a position between −1200 in and 1200 in, or a position between −30 480 mm and 30 480 mm.
	 */
	across?: string;
	/**
	 * From the rail, or wherever its height is taped from, up to the lower seats, and from the frame up to the point. Takes a height to add between −120 in and 120 in, or a height to add between −3 048 mm and 3 048 mm.
	 */
	added?: string;
	/**
	 * Towards the A end. Takes a position between −1200 in and 1200 in, or a position between −30 480 mm and 30 480 mm.
	 */
	along?: string;
	/**
	 * The least height that the manual allows. Takes a height between 1/64 in and 120 in, or a height between 0.3969 mm and 3 048 mm.
	 */
	least?: string;
	/**
	 * The greatest. Takes a height between 1/64 in and 120 in, or a height between 0.3969 mm and 3 048 mm.
	 */
	most?: string;
	/**
	 * What it is.
	 */
	name?: string;
	/**
	 * Its height as taped when the truck stood again. Takes a height between 1/64 in and 120 in, or a height between 0.3969 mm and 3 048 mm.
	 */
	standing?: string;
}
/**
 * Where a nest stands.
 */
export interface Support {
	/**
	 * To the left, looking from B to A. Takes a position between −1200 in and 1200 in, or a position between −30 480 mm and 30 480 mm.
	 */
	across?: string;
	/**
	 * Towards the A end. Takes a position between −1200 in and 1200 in, or a position between −30 480 mm and 30 480 mm.
	 */
	along?: string;
	/**
	 * How far its lower seat is raised. Takes a rise of the ground between −24 in and 24 in, or a rise of the ground between −609.6 mm and 609.6 mm.
	 */
	ground?: string;
	/**
	 * Which nest.
	 */
	nest?: string;
	/**
	 * Shim under it. Takes a shim between 0 in and 12 in, or a shim between 0 mm and 304.8 mm.
	 */
	shim?: string;
	/**
	 * `no` where its shims have to stay as they are.
	 */
	shimmable?: string;
}
/**
 * One of several weights of a frame.
 */
export interface LoadCase {
	/**
	 * Where it acts.
	 */
	centre?: Centre;
	/**
	 * What it is called.
	 */
	name?: string;
	/**
	 * Heights that were taped under it.
	 */
	standing?: StandingEntry[];
	/**
	 * Weight on the nests. Takes a load between 0 lb and 2 248 000 lb, or a load between 0 N and 10 000 000 N.
	 */
	weight?: string;
}
/**
 * A height that was taped under one of several weights.
 */
export interface StandingEntry {
	/**
	 * At which nest, or at which point of the frame.
	 */
	at?: string;
	/**
	 * From the lower seat to the frame, or of the point. Takes a height between 1/64 in and 120 in, or a height between 0.3969 mm and 3 048 mm.
	 */
	height?: string;
}
/**
 * A box in its guides. Each size is measured at one to three heights, top to bottom.
 */
export interface GuideEntry {
	/**
	 * `yes` where the guides keep it across the frame, and not along.
	 */
	across?: string;
	/**
	 * The width of the box. Takes a box between 1/64 in and 120 in, or a box between 0.3969 mm and 3 048 mm.
	 */
	box?: string[];
	/**
	 * Half-width of its error; one mark where only the marks are given. Takes an error between 0 in and 1 in, or an error between 0 mm and 25.4 mm.
	 */
	error?: string;
	/**
	 * Distance between the marks of what it was measured with, where that is not the job's tape. Takes a graduation between 0.001 in and 1 in, or a graduation between 0.0254 mm and 25.4 mm.
	 */
	graduation?: string;
	/**
	 * The least clearance in all that the manual allows. Takes a clearance between 0 in and 12 in, or a clearance between 0 mm and 304.8 mm.
	 */
	least?: string;
	/**
	 * The liners of the one side and of the other.
	 */
	liners?: string[][];
	/**
	 * The greatest. Takes a clearance between 0 in and 12 in, or a clearance between 0 mm and 304.8 mm.
	 */
	most?: string;
	/**
	 * What the box is called.
	 */
	name?: string;
	/**
	 * The opening between the guides, without liners. Takes an opening between 1/64 in and 120 in, or an opening between 0.3969 mm and 3 048 mm.
	 */
	opening?: string[];
	/**
	 * Thicknesses of liner at hand. Takes a liner between 0.001 in and 6 in, or a liner between 0.0254 mm and 152.4 mm.
	 */
	stock?: string[];
}
/**
 * Who measured what, where and when.
 */
export interface JobRecord {
	/**
	 * Who measured.
	 */
	by?: string;
	/**
	 * Who checked it.
	 */
	checked_by?: string;
	/**
	 * Date, as 2026-05-02. Takes a date.
	 */
	date?: string;
	/**
	 * The manual that was gone by, and the page.
	 */
	manual?: string;
	/**
	 * Anything else.
	 */
	notes?: string;
	/**
	 * Its number.
	 */
	number?: string;
	/**
	 * What was photographed.
	 */
	photographs?: Photograph[];
	/**
	 * Place.
	 */
	place?: string;
	/**
	 * Which tape was used.
	 */
	tape?: string;
	/**
	 * Vehicle or machine.
	 */
	vehicle?: string;
}
/**
 * A photograph that belongs to a job.
 */
export interface Photograph {
	/**
	 * What it shows.
	 */
	about?: string;
	/**
	 * The word by which it is kept.
	 */
	id?: string;
	/**
	 * The picture itself as a `data:` address; only in a file that goes elsewhere.
	 */
	image?: string;
}
/**
 * A pad, plate or shim over or under a nest.
 */
export interface LayerEntry {
	/**
	 * `above` or `below` the nest.
	 */
	at?: string;
	/**
	 * `yes` where it is missing.
	 */
	missing?: string;
	/**
	 * What it is.
	 */
	name?: string;
	/**
	 * Load per length by which it is squeezed; none of what does not give. Takes a rate between 0.02 lb/in and 5 710 000 lb/in, or a rate between 0.003503 N/mm and 1 000 000 N/mm.
	 */
	squeeze?: string;
	/**
	 * Its thickness without load. Takes a thickness between 0.001 in and 12 in, or a thickness between 0.0254 mm and 304.8 mm.
	 */
	thickness?: string;
	/**
	 * Its thickness when it was new. Takes a thickness between 0.001 in and 12 in, or a thickness between 0.0254 mm and 304.8 mm.
	 */
	when_new?: string;
}
/**
 * What a coil yet to be drawn is needed for.
 */
export interface Need {
	/**
	 * Bars to choose from; those of the tables where none are given. Takes a bar between 1/64 in and 6 in, or a bar between 0.3969 mm and 152.4 mm.
	 */
	bars?: string[];
	/**
	 * Radial clearance in the pocket, over the post, and between two coils; half the difference of the bars between two coils where none is given. Takes a clearance between 0 in and 12 in, or a clearance between 0 mm and 304.8 mm.
	 */
	clearance?: string;
	/**
	 * Form of the ends.
	 */
	ends?: string;
	/**
	 * The greatest free height. Takes a free height between 1/64 in and 120 in, or a free height between 0.3969 mm and 3 048 mm.
	 */
	free?: string;
	/**
	 * The height at which it is carried. Takes a height between 1/64 in and 120 in, or a height between 0.3969 mm and 3 048 mm.
	 */
	height?: string;
	/**
	 * A load. Takes a load between 0 lb and 2 248 000 lb, or a load between 0 N and 10 000 000 N.
	 */
	load?: string;
	/**
	 * `yes` for a coil inside another.
	 */
	pair?: string;
	/**
	 * Bore of the pocket. Takes a bore between 3/64 in and 60 in, or a bore between 1.191 mm and 1 524 mm.
	 */
	pocket?: string;
	/**
	 * Thickness of the post. Takes a post between 3/64 in and 60 in, or a post between 1.191 mm and 1 524 mm.
	 */
	post?: string;
	/**
	 * What the best is: `mass` or `stress`; the first where nothing is said.
	 */
	rank?: string;
	/**
	 * The rate. Takes a rate between 0.02 lb/in and 5 710 000 lb/in, or a rate between 0.003503 N/mm and 1 000 000 N/mm.
	 */
	rate?: string;
	/**
	 * The height at which that is carried. Takes a height between 1/64 in and 120 in, or a height between 0.3969 mm and 3 048 mm.
	 */
	second_height?: string;
	/**
	 * A second load, instead. Takes a load between 0 lb and 2 248 000 lb, or a load between 0 N and 10 000 000 N.
	 */
	second_load?: string;
	/**
	 * The greatest solid height. Takes a solid height between 1/64 in and 120 in, or a solid height between 0.3969 mm and 3 048 mm.
	 */
	solid?: string;
	/**
	 * Steel, by its word in the tables. Takes a word of the steels.
	 */
	steel?: string;
	/**
	 * The greatest stress under the load, over the steel's. Takes a stress between 0 psi and 1 450 000 psi, or a stress between 0 MPa and 10 000 MPa.
	 */
	stress?: string;
	/**
	 * Which stress the two are meant for: `uncorrected`, `bergstrasser` or `wahl`; the last unless said, which is the greatest.
	 */
	stress_factor?: string;
	/**
	 * The greatest stress at solid, over the steel's. Takes a stress between 0 psi and 1 450 000 psi, or a stress between 0 MPa and 10 000 MPa.
	 */
	stress_solid?: string;
	/**
	 * By how much loads and rate may be off; 5 % where nothing is said. Takes a tolerance between 0 % and 100 %.
	 */
	within?: string;
}
/**
 * A nest as it stands in its corner.
 */
export interface NestInput {
	/**
	 * Heights or loads to be answered beside the working point; `solid` and `free` are words. Takes a height between 1/64 in and 120 in, or a height between 0.3969 mm and 3 048 mm; or a load between 0 lb and 2 248 000 lb, or a load between 0 N and 10 000 000 N; or `solid` or `free`.
	 */
	ask?: string[];
	/**
	 * Its boxes in their guides.
	 */
	guides?: GuideEntry[];
	/**
	 * Its name.
	 */
	id: string;
	/**
	 * The coils that are there.
	 */
	seats?: Seat[];
	/**
	 * What lies over and under it: pads, plates, shims that stand in no other field.
	 */
	stack?: LayerEntry[];
	/**
	 * Its height from the lower seat to the frame, shims and all, taped when the truck stood again. Takes a height between 1/64 in and 120 in, or a height between 0.3969 mm and 3 048 mm.
	 */
	standing?: string;
	/**
	 * Height under its usual load. Takes a height between 1/64 in and 120 in, or a height between 0.3969 mm and 3 048 mm.
	 */
	working_height?: string;
	/**
	 * Its usual load, instead. Takes a load between 0 lb and 2 248 000 lb, or a load between 0 N and 10 000 000 N.
	 */
	working_load?: string;
}
/**
 * A coil that is there.
 */
export interface Seat {
	/**
	 * Which drawing it should be.
	 */
	coil?: string;
	/**
	 * What it looks like: `sound`, `cracked`, `pitted`, `broken`, or another word.
	 */
	condition?: string;
	/**
	 * A reading that was questioned, and is so when read again. Takes a reading between 1/64 in and 120 in, or a reading between 0.3969 mm and 3 048 mm.
	 */
	confirmed?: string;
	/**
	 * The coil that was found here, where another is fitted now.
	 */
	found?: FoundCoil;
	/**
	 * The mark painted on it.
	 */
	label?: string;
	/**
	 * A word that it shares with the coils from which it may not part.
	 */
	pair?: string;
	/**
	 * How far its seat is raised, or sunk when negative. Takes a raised seat between −24 in and 24 in, or a raised seat between −609.6 mm and 609.6 mm.
	 */
	raise?: string;
	/**
	 * What the tape said at each place round the coil. Takes a reading between 1/64 in and 120 in, or a reading between 0.3969 mm and 3 048 mm.
	 */
	readings?: string[];
}
/**
 * What no drawing says of an order.
 */
export interface OrderTexts {
	/**
	 * The size that the maker may adjust, so that the others come out.
	 */
	adjustable?: string;
	/**
	 * What paper is to come with it.
	 */
	certificate?: string;
	/**
	 * How it is to be looked over for cracks.
	 */
	crack_test?: string;
	/**
	 * The depth to which the steel may have lost its carbon, with its unit.
	 */
	decarburised?: string;
	/**
	 * The number of a drawing.
	 */
	drawing?: string;
	/**
	 * What it is used for; the vehicle where nothing is said.
	 */
	end_use?: string;
	/**
	 * Paint or another finish.
	 */
	finish?: string;
	/**
	 * The grade of tolerance, for what has no tolerance of its own.
	 */
	grade?: string;
	/**
	 * The hardness, with its scale.
	 */
	hardness?: string;
	/**
	 * How it is to be inspected.
	 */
	inspection?: string;
	/**
	 * How it is to be marked.
	 */
	marking?: string;
	/**
	 * How it is to be packed and loaded.
	 */
	packaging?: string;
	/**
	 * The part number.
	 */
	part_number?: string;
	/**
	 * How it is to be shot peened.
	 */
	peening?: string;
	/**
	 * How many. Takes a quantity between 1 and 1 000 000, whole.
	 */
	quantity?: string;
	/**
	 * The revision of that drawing.
	 */
	revision?: string;
	/**
	 * How its set is to be taken out.
	 */
	set_removal?: string;
	/**
	 * How it is to be tested.
	 */
	test?: string;
}
/**
 * A coil to be replaced, and the springs that may replace it.
 */
export interface Replace {
	/**
	 * What is asked of them; what is left out follows from the original.
	 */
	asked?: Asked;
	/**
	 * The springs that may replace it.
	 */
	candidates?: CoilDrawing[];
	/**
	 * In which nest it stands; the first that holds it where none is named.
	 */
	nest?: string;
	/**
	 * What no drawing says and a spring maker has to know.
	 */
	order?: OrderTexts;
	/**
	 * Which drawing is to be replaced.
	 */
	original?: string;
	/**
	 * Which seat of that nest alone is meant, counted from 1; all seats that hold it where none is named. Takes a quantity between 1 and 1 000 000, whole.
	 */
	seat?: string;
	/**
	 * `yes` where the candidates are one nest for the whole nest, each in its place, and so for every nest of the same coils; `this-nest` where only the one that is named is replaced.
	 */
	together?: string;
	/**
	 * Requirements that no candidate need meet, by their codes, each with the reason. What one of them alone need not meet stands in its own `waived`.
	 */
	waived?: {
		[k: string]: string;
	};
}
/**
 * What was measured with.
 */
export interface TapeUsed {
	/**
	 * Class of the tape, which says how far it may be wrong. Takes a word of the tape classes.
	 */
	class?: string;
	/**
	 * Half-width of how far one place round a coil may stand off the coil's own height. Takes an error between 0 in and 1 in, or an error between 0 mm and 25.4 mm.
	 */
	ends_error?: string;
	/**
	 * Half-width of the tape's error, instead of a class. Takes an error between 0 in and 1 in, or an error between 0 mm and 25.4 mm.
	 */
	error?: string;
	/**
	 * Distance between the tape's marks. Takes a graduation between 0.001 in and 1 in, or a graduation between 0.0254 mm and 25.4 mm.
	 */
	graduation?: string;
}
/**
 * A bench record: what somebody wrote while a truck stood apart.
 */
export interface Job {
	/**
	 * Coils on the bench that have no seat yet.
	 */
	bench?: BenchCoil[];
	/**
	 * The drawings: what each kind of coil should be.
	 */
	coils?: CoilDrawing[];
	/**
	 * How sure a verdict has to be, `95 %` by default. Takes a decision level between 50 % and 99.99 %.
	 */
	decision_level?: string;
	/**
	 * An earlier job of the same vehicle, to be compared with this one.
	 */
	earlier?: {};
	/**
	 * `coilnest-job/1`.
	 */
	format: string;
	/**
	 * The frame that stands on the nests.
	 */
	frame?: Frame;
	/**
	 * What a coil yet to be drawn is needed for.
	 */
	need?: Need;
	/**
	 * The nests, each with the coils that are there.
	 */
	nests?: NestInput[];
	/**
	 * Who, where, when.
	 */
	record?: JobRecord;
	/**
	 * What is to be replaced, and what may replace it.
	 */
	replace?: Replace;
	/**
	 * Coils that do not go back, and why.
	 */
	set_aside?: AsideCoil[];
	/**
	 * `inch` or `metric`: how bare numbers are read and figures shown.
	 */
	system?: string;
	/**
	 * What was measured with.
	 */
	tape?: TapeUsed;
	/**
	 * What the job is called.
	 */
	title?: string;
	/**
	 * Whether a coil that is too close to call may be put into a seat: `yes`; without it none is.
	 */
	use_too_close?: string;
}
/**
 * How far a standard lets a new coil be off.
 */
export interface Allowance {
	/**
	 * Half-width, in the middle grade.
	 */
	half_width?: Figure;
	/**
	 * In what.
	 */
	name: string;
	/**
	 * Why there is none, and where to look.
	 */
	sentence?: string;
}
/**
 * A figure: its value, its text, how far to trust it, and where its working stands.
 */
export interface Figure {
	/**
	 * One standard uncertainty, in SI units.
	 */
	doubt_si?: number;
	/**
	 * The same as a person reads it.
	 */
	doubt_text?: string;
	/**
	 * The value in SI units.
	 */
	si: number;
	/**
	 * The value as a person reads it, with its unit.
	 */
	text: string;
	/**
	 * The SI unit, `1` for a plain number.
	 */
	unit: string;
	/**
	 * Key of its working.
	 */
	working?: string;
}
/**
 * A coil that does not go back.
 */
export interface AsideReport {
	/**
	 * The coil.
	 */
	coil: SeatReport;
	/**
	 * Why it was set aside.
	 */
	reason?: string;
}
/**
 * What follows for a coil that is there.
 */
export interface SeatReport {
	/**
	 * Free height from the book.
	 */
	book?: Figure;
	/**
	 * Its drawing.
	 */
	coil: string;
	/**
	 * What is wrong with it to the eye.
	 */
	condition?: string;
	/**
	 * Measured less book.
	 */
	deviation?: Figure;
	/**
	 * The coil that was found in its place, where it is fitted for another.
	 */
	found?: SeatReport;
	/**
	 * Free height as measured, else the book's.
	 */
	free?: Figure;
	/**
	 * The mark painted on it.
	 */
	label?: string;
	/**
	 * Load lost (negative) or gained at any height where the coil carries.
	 */
	load_cost?: Figure;
	/**
	 * The same as a share of the nest's load at the working point.
	 */
	load_cost_share?: Figure;
	/**
	 * Whether it was measured.
	 */
	measured: boolean;
	/**
	 * The drawing's name.
	 */
	name: string;
	/**
	 * Angle of the ends that the spread amounts to.
	 */
	out_of_square?: Figure;
	/**
	 * Greatest reading less the smallest.
	 */
	spread?: Figure;
	/**
	 * The verdict.
	 */
	verdict?: Verdict;
}
/**
 * A verdict.
 */
export interface Verdict {
	/**
	 * What of it stands in one line of a list: how far off the coil is, or what is to be done first.
	 */
	brief: string;
	/**
	 * Least allowed.
	 */
	least?: Figure;
	/**
	 * Most allowed.
	 */
	most?: Figure;
	/**
	 * Probability of lying within the limits.
	 */
	p_in?: number;
	/**
	 * Probability of being long.
	 */
	p_long?: number;
	/**
	 * Probability of being short.
	 */
	p_short?: number;
	/**
	 * At how many places round the coil it was read, those left out that cannot be used.
	 */
	places: number;
	/**
	 * What it says, how sure, and what would settle it.
	 */
	sentence: string;
	/**
	 * The verdict as a person reads it.
	 */
	title: string;
	/**
	 * The verdict.
	 */
	word: Word;
	/**
	 * Key of its working.
	 */
	working?: string;
	/**
	 * Standard uncertainty that would settle it.
	 */
	would_settle?: Figure;
}
/**
 * The units in which a drawing of a job's figures has its axes.
 */
export interface Axes {
	/**
	 * Of loads.
	 */
	force: Axis;
	/**
	 * Of heights.
	 */
	length: Axis;
}
/**
 * The unit of an axis.
 */
export interface Axis {
	/**
	 * One of it in SI units.
	 */
	scale: number;
	/**
	 * The unit.
	 */
	unit: string;
}
/**
 * How likely each free height of a coil is by its readings.
 */
export interface Bell {
	/**
	 * Least allowed.
	 */
	least?: number;
	/**
	 * The likeliest height.
	 */
	mean: number;
	/**
	 * Most allowed.
	 */
	most?: number;
	/**
	 * Heights from low to high, each with how likely it is, the likeliest as one.
	 */
	points: [number, number][];
	/**
	 * Unit of every height.
	 */
	unit: string;
}
/**
 * A bend of the load curve.
 */
export interface Breakpoint {
	/**
	 * What happens.
	 */
	event: EventWord;
	/**
	 * Height.
	 */
	height: Figure;
	/**
	 * Load there.
	 */
	load: Figure;
	/**
	 * Rate from there on down.
	 */
	rate: Figure;
	/**
	 * To which seat.
	 */
	seat: number;
	/**
	 * Load of each seat there, in newtons.
	 */
	stack: number[];
}
/**
 * A coil as a column.
 */
export interface Buckling {
	/**
	 * The height at which it bends aside.
	 */
	height?: Figure;
	/**
	 * What it amounts to.
	 */
	sentence: string;
	/**
	 * Free height over mean diameter.
	 */
	slenderness: Figure;
	/**
	 * The greatest free height that never bends aside, its ends kept so.
	 */
	stable_free: Figure;
}
/**
 * A spring that may replace another.
 */
export interface CandidateReport {
	/**
	 * What it does to the frame.
	 */
	frame?: FrameSwapReport;
	/**
	 * Its place in the job's list.
	 */
	index: number;
	/**
	 * Requirement by requirement.
	 */
	lines: LineReport[];
	/**
	 * Whether it is a true replacement; none where nothing can be said of it.
	 */
	met?: Met;
	/**
	 * Its name.
	 */
	name: string;
	/**
	 * What it does to its nest.
	 */
	nest?: NestSwapReport;
	/**
	 * What to write to a spring maker.
	 */
	order: OrderReport;
	/**
	 * What it comes to, in a sentence.
	 */
	sentence: string;
	/**
	 * The same as a person reads it.
	 */
	title: string;
}
/**
 * A frame before and after.
 */
export interface FrameSwapReport {
	/**
	 * The same with the candidate.
	 */
	after?: Figure;
	/**
	 * The greatest part of the mean by which a load differs from it, with the original.
	 */
	before: Figure;
	/**
	 * Coils under it that were not found good, and why.
	 */
	not_good: string[];
	/**
	 * What it amounts to.
	 */
	sentence: string;
}
/**
 * A requirement.
 */
export interface LineReport {
	/**
	 * What is asked.
	 */
	asked: string;
	/**
	 * Place of the candidate that it is asked of in the job's list; none where a nest is.
	 */
	candidate?: number;
	/**
	 * What it is about, in a word that stays: `rate`.
	 */
	code: string;
	/**
	 * How it is met.
	 */
	met: Met;
	/**
	 * The same for people.
	 */
	name: string;
	/**
	 * What is offered.
	 */
	offered: string;
	/**
	 * The same as drawn in SI units, where it is a number.
	 */
	offered_si?: number;
	/**
	 * The same as a person reads it.
	 */
	title: string;
	/**
	 * Why it need not be met, where it is waived.
	 */
	waived?: string;
	/**
	 * For whom it is waived: `this candidate alone`.
	 */
	waived_for?: string;
	/**
	 * Why, in a sentence.
	 */
	why: string;
	/**
	 * Key of its working.
	 */
	working?: string;
}
/**
 * A nest before and after.
 */
export interface NestSwapReport {
	/**
	 * Its coils, the widest first.
	 */
	coils: SwappedCoil[];
	/**
	 * The same with the candidate.
	 */
	height_after: Figure;
	/**
	 * Height under its load, with the original.
	 */
	height_before: Figure;
	/**
	 * Which nest.
	 */
	nest: string;
	/**
	 * Its coils that were not found good, and why.
	 */
	not_good: string[];
	/**
	 * What it amounts to.
	 */
	sentence: string;
	/**
	 * The coil that stops it, with the original: its name, and whether it is the original.
	 */
	stopped_by?: string;
	/**
	 * The coils that may stop it, with the candidate: their names, and which is the candidate.
	 */
	stops: string[];
}
/**
 * A coil of a nest before and after.
 */
export interface SwappedCoil {
	/**
	 * Its name, with the original; that of the candidate where no coil stood in its place.
	 */
	name: string;
	/**
	 * Name of the candidate, where it takes the place of this coil.
	 */
	replaced_by?: string;
	/**
	 * The same with the candidate.
	 */
	share_after?: Figure;
	/**
	 * Its share of the nest's load, with the original.
	 */
	share_before?: Figure;
	/**
	 * The same with the candidate.
	 */
	stress_after?: Figure;
	/**
	 * Its stress, with the original.
	 */
	stress_before?: Figure;
}
/**
 * What to write to a spring maker.
 */
export interface OrderReport {
	/**
	 * Item by item.
	 */
	items: OrderItem[];
	/**
	 * What is left out because nobody asks for it.
	 */
	left_out?: string;
	/**
	 * What has to be settled first; what is asked of several items stands together.
	 */
	questions: string[];
	/**
	 * Whose approval it is subject to.
	 */
	subject: string;
	/**
	 * The whole as plain text.
	 */
	text: string;
	/**
	 * What is ordered.
	 */
	title: string;
	/**
	 * The verdict on what is ordered; none of the original as it was.
	 */
	verdict?: OrderVerdict;
}
/**
 * An item of an order.
 */
export interface OrderItem {
	/**
	 * What is asked, with its limits.
	 */
	asked?: string;
	/**
	 * What it is.
	 */
	name: string;
	/**
	 * What is offered, with its tolerance.
	 */
	offered?: string;
	/**
	 * What has to be settled first.
	 */
	question?: string;
}
/**
 * The verdict on a spring that is to be ordered.
 */
export interface OrderVerdict {
	/**
	 * Whether it is a replacement; none where nothing can be said of it.
	 */
	met?: Met;
	/**
	 * Why it is not to be ordered or signed for as it is.
	 */
	refused?: string;
	/**
	 * What it comes to, in a sentence.
	 */
	sentence: string;
	/**
	 * The same as a person reads it.
	 */
	title: string;
	/**
	 * What is waived, each with the reason.
	 */
	waived: string[];
}
/**
 * What can hurt somebody at this work.
 */
export interface Caution {
	/**
	 * Stable code.
	 */
	code: string;
	/**
	 * Where on the page it binds.
	 */
	section: Place;
	/**
	 * Where it comes from.
	 */
	source: string;
	/**
	 * The caution.
	 */
	text: string;
}
/**
 * One example of a document.
 */
export interface CheckedCase {
	/**
	 * What was given.
	 */
	given: Fact[];
	/**
	 * What it is about.
	 */
	name: string;
	/**
	 * Page, table, section, example or equation.
	 */
	place: string;
	/**
	 * What most of its values are worth as checks.
	 */
	rank: Rank;
	/**
	 * The kind of thing that it is about, in a word.
	 */
	subject: string;
	/**
	 * What is printed, and ours.
	 */
	values: CheckedValue[];
	/**
	 * The same in words, and how the digits were taken from there.
	 */
	worth: string;
}
/**
 * A given of an example, as a text.
 */
export interface Fact {
	/**
	 * What it is.
	 */
	name: string;
	/**
	 * Its value, as given.
	 */
	text: string;
}
/**
 * One value of a document, and ours.
 */
export interface CheckedValue {
	/**
	 * Why that much is allowed, or why the value is known to deviate.
	 */
	because?: string;
	/**
	 * Ours less the printed one.
	 */
	difference?: string;
	/**
	 * Why not, where no reason is known.
	 */
	failure?: string;
	/**
	 * What it is.
	 */
	name: string;
	/**
	 * Ours, with the digits of the print.
	 */
	ours?: string;
	/**
	 * As printed.
	 */
	printed: string;
	/**
	 * What it is worth as a check.
	 */
	rank: Rank;
	/**
	 * Whether they agree.
	 */
	standing: Standing2;
	/**
	 * How much of it is allowed.
	 */
	tolerance?: string;
	/**
	 * Ours in the printed unit, not rounded.
	 */
	unrounded?: string;
}
/**
 * One document.
 */
export interface CheckedDocument {
	/**
	 * Its examples.
	 */
	cases: CheckedCase[];
	/**
	 * Title and edition, as cited.
	 */
	title: string;
}
/**
 * Everything that was compared.
 */
export interface Checks {
	/**
	 * How many values agree.
	 */
	agree: number;
	/**
	 * The same apart by rank, best first; a rank without a value is left out.
	 */
	counts: Count[];
	/**
	 * How many are known to deviate, and do.
	 */
	deviate: number;
	/**
	 * How many differ without a reason, or could not be computed.
	 */
	differ: number;
	/**
	 * The documents.
	 */
	documents: CheckedDocument[];
	/**
	 * Why no document could be read.
	 */
	unread?: string;
}
/**
 * How many values of a rank there are.
 */
export interface Count {
	/**
	 * How many of them agree.
	 */
	agree: number;
	/**
	 * In how many documents.
	 */
	documents: number;
	/**
	 * What it says of a value.
	 */
	meaning: string;
	/**
	 * Its name.
	 */
	name: string;
	/**
	 * The rank.
	 */
	rank: Rank;
	/**
	 * How many values.
	 */
	values: number;
}
/**
 * One of several words for a field.
 */
export interface Choice {
	/**
	 * The word.
	 */
	id: string;
	/**
	 * Its name for people.
	 */
	name: string;
	/**
	 * What it stands for, and its source.
	 */
	note?: string;
}
/**
 * The words that some fields take by the tables.
 */
export interface Choices {
	/**
	 * Forms of ends.
	 */
	ends: Choice[];
	/**
	 * Those of which a need has drawings: they say how many turns are dead.
	 */
	need_ends: Choice[];
	/**
	 * Steels.
	 */
	steels: Choice[];
	/**
	 * Tape classes.
	 */
	tape_classes: Choice[];
}
/**
 * Room between a coil and the one inside it.
 */
export interface Clearance {
	/**
	 * Whether the inner coil stays clear.
	 */
	fits?: boolean;
	/**
	 * Whether they are wound opposite ways.
	 */
	hands: HandsWord;
	/**
	 * Seat of the inner coil.
	 */
	inner: number;
	/**
	 * Seat of the outer coil.
	 */
	outer: number;
	/**
	 * Radial gap, both free.
	 */
	radial_free?: Figure;
	/**
	 * Radial gap with the inner coil grown as at solid.
	 */
	radial_solid?: Figure;
	/**
	 * What it amounts to.
	 */
	sentence: string;
	/**
	 * Radial gap by textbook practice.
	 */
	usual?: Figure;
}
/**
 * What follows from a drawing.
 */
export interface CoilReport {
	/**
	 * Turns that deflect.
	 */
	active_turns?: Figure;
	/**
	 * Bergsträsser's factor.
	 */
	bergstrasser?: Figure;
	/**
	 * The drawing.
	 */
	id: string;
	/**
	 * Spring index.
	 */
	index?: Figure;
	/**
	 * Its name for people.
	 */
	name: string;
	/**
	 * Pitch of the free coil.
	 */
	pitch?: Figure;
	/**
	 * Rate that is used: the book's, else the drawing's.
	 */
	rate?: Figure;
	/**
	 * Rate with the helix's own stiffness taken in.
	 */
	rate_corrected?: Figure;
	/**
	 * Rate by the drawing, where the book's overrides it.
	 */
	rate_drawing?: Figure;
	/**
	 * Solid height that is used.
	 */
	solid?: Figure;
	/**
	 * Solid height by the drawing, where the book's overrides it.
	 */
	solid_drawing?: Figure;
	/**
	 * Uncorrected stress at solid, from the book's free height.
	 */
	stress_solid?: Figure;
	/**
	 * Wahl's factor.
	 */
	wahl?: Figure;
}
/**
 * What a piece of a table of coils came to.
 */
export interface CoilRows {
	/**
	 * How much of the piece was read, in UTF-16 code units, as the length of a string in
	 * JavaScript: the next piece begins there.
	 */
	consumed: number;
	/**
	 * The line that names the columns, as soon as it is known: for the next piece, and to stand
	 * above refused lines when they are mended and read again.
	 */
	header?: string;
	/**
	 * Number of the line that begins there, the first of the table being 1.
	 */
	next_line: number;
	/**
	 * The other lines, in their order.
	 */
	refused: RefusedLine[];
	/**
	 * How the columns were taken, one sentence each.
	 */
	remarks: string[];
	/**
	 * The coils of the good lines, for the bench of the job.
	 */
	rows: BenchCoil[];
	/**
	 * Whether nothing is read from there on: the last refused line says why.
	 */
	stopped: boolean;
}
/**
 * A line that was not taken.
 */
export interface RefusedLine {
	/**
	 * Its number.
	 */
	line: number;
	/**
	 * What is wrong with it, at `line 3` or `line 3, column 2`.
	 */
	problems: Problem[];
	/**
	 * All of it, as it was.
	 */
	text: string;
}
/**
 * Something in the job that cannot be used, and where it stands.
 */
export interface Problem {
	/**
	 * Stable code; the list stands in the docs of `problem`.
	 */
	code: string;
	/**
	 * Text that would be right.
	 */
	example: string;
	/**
	 * What was expected.
	 */
	expected: string;
	/**
	 * A sentence for the person who wrote it.
	 */
	message: string;
	/**
	 * Path of the field.
	 */
	path: string;
	/**
	 * Where in `read` it goes wrong, in characters from 0.
	 */
	position?: number;
	/**
	 * What the field holds.
	 */
	read: string;
}
/**
 * Where a design lies in a map.
 */
export interface DesignPlace {
	/**
	 * Place of its bar in the list of bars.
	 */
	bar: number;
	/**
	 * Place of its count of active turns in the list of turns.
	 */
	turns: number;
}
/**
 * A drawing that meets a need.
 */
export interface DesignReport {
	/**
	 * Bar.
	 */
	bar: Figure;
	/**
	 * The drawing, as a job holds it.
	 */
	drawing: CoilDrawing;
	/**
	 * Free height.
	 */
	free: Figure;
	/**
	 * Load at the height that was asked for.
	 */
	load: Figure;
	/**
	 * Mass.
	 */
	mass: Figure;
	/**
	 * Mean diameter.
	 */
	mean: Figure;
	/**
	 * Which limit it is nearest to, and how near.
	 */
	nearest: string;
	/**
	 * Outside diameter.
	 */
	outside: Figure;
	/**
	 * Rate.
	 */
	rate: Figure;
	/**
	 * Solid height.
	 */
	solid: Figure;
	/**
	 * Stress at the greatest load.
	 */
	stress: Figure;
	/**
	 * Stress at solid.
	 */
	stress_solid: Figure;
	/**
	 * Total turns.
	 */
	turns: Figure;
}
/**
 * A wheel in a dip.
 */
export interface DipReport {
	/**
	 * How deep it is.
	 */
	dip?: Figure;
	/**
	 * The least dip at which a wheel lifts, and which.
	 */
	lifts?: Figure;
	/**
	 * The same in a sentence.
	 */
	lifts_sentence: string;
	/**
	 * What a published test allows to be lost.
	 */
	limit?: Figure;
	/**
	 * Coils under the frame that are not good and why: the loads are theirs.
	 */
	not_good: string[];
	/**
	 * Why there is no answer.
	 */
	problem?: Problem;
	/**
	 * That this is a screening.
	 */
	screening: string;
	/**
	 * The greatest unloading in a sentence.
	 */
	sentence: string;
	/**
	 * The same with one box stuck.
	 */
	stuck?: StuckReport;
	/**
	 * What each wheel keeps.
	 */
	wheels: DippedWheel[];
	/**
	 * How each figure came about.
	 */
	workings: {
		[k: string]: Working;
	};
}
/**
 * A dip with a box stuck at its height.
 */
export interface StuckReport {
	/**
	 * The least dip at which a wheel lifts.
	 */
	lifts?: Figure;
	/**
	 * Which nest's.
	 */
	nest: string;
	/**
	 * The greatest unloading in a sentence.
	 */
	sentence: string;
	/**
	 * What each wheel keeps.
	 */
	wheels: DippedWheel[];
}
/**
 * What a wheel keeps.
 */
export interface DippedWheel {
	/**
	 * What it carries on level track.
	 */
	at_rest: Figure;
	/**
	 * The same as a part of what it carries on level track.
	 */
	kept?: Figure;
	/**
	 * What it carries now.
	 */
	load: Figure;
	/**
	 * Its name.
	 */
	name: string;
	/**
	 * Whether it loses more than the published limit.
	 */
	over: boolean;
}
/**
 * How a figure came about.
 */
export interface Working {
	/**
	 * The formula in symbols.
	 */
	formula: string;
	/**
	 * Each letter of the formula with its number; empty where it has one for each term of a sum.
	 */
	letters?: {
		[k: string]: string;
	};
	/**
	 * The result with its unit.
	 */
	result: string;
	/**
	 * The row of the tables that a number of it was taken from.
	 */
	row?: string;
	/**
	 * Where formula and table values come from.
	 */
	source: string;
	/**
	 * The numbers put in.
	 */
	with: string;
}
/**
 * How deep a dip can be tried.
 */
export interface Dips {
	/**
	 * The deepest, in the unit.
	 */
	most: number;
	/**
	 * Step.
	 */
	step: number;
	/**
	 * Unit.
	 */
	unit: string;
}
/**
 * What one number has to do with the doubt of a rate.
 */
export interface Doubt {
	/**
	 * The doubt that the rate would have from it alone.
	 */
	doubt: Figure;
	/**
	 * The number.
	 */
	name: string;
	/**
	 * Its own doubt.
	 */
	own: string;
	/**
	 * By how many per cent the rate changes where the number changes by one.
	 */
	sensitivity: Figure;
	/**
	 * Its share of the variance.
	 */
	share: Figure;
}
/**
 * A coil under one of its two loads.
 */
export interface DutyState {
	/**
	 * Room between two turns.
	 */
	gap?: Figure;
	/**
	 * Growth of the outside diameter, the larger of held and free ends.
	 */
	growth?: Figure;
	/**
	 * The height there.
	 */
	height: Figure;
	/**
	 * The load.
	 */
	load: Figure;
	/**
	 * Uncorrected stress.
	 */
	stress: Figure;
	/**
	 * Stress at the inside of the coil, by Bergsträsser's factor.
	 */
	stress_corrected: Figure;
}
/**
 * A text to write at a path of a job.
 */
export interface Edit {
	/**
	 * Path of the field.
	 */
	path: string;
	/**
	 * What to write there.
	 */
	text: string;
}
/**
 * What the ends do between plates: how the dead turns grow with the load.
 */
export interface EndsReport {
	/**
	 * Where that leaves the count and its ±, and what settles it.
	 */
	sentence: string;
	/**
	 * From light to near solid.
	 */
	stages: EndsStage[];
}
/**
 * A part of the travel.
 */
export interface EndsStage {
	/**
	 * Dead turns, from the least to the most of the computed springs.
	 */
	dead: Figure;
	/**
	 * The rate with the least of them.
	 */
	least: Figure;
	/**
	 * The rate with the most of them.
	 */
	most: Figure;
	/**
	 * Which.
	 */
	name: string;
}
/**
 * A coil between two loads.
 */
export interface Fatigue {
	/**
	 * Half the range of stress, with Bergsträsser's factor.
	 */
	amplitude?: Figure;
	/**
	 * Its middle, with Bergsträsser's factor.
	 */
	mean?: Figure;
	/**
	 * The factor of safety by each criterion.
	 */
	safety: Safety[];
	/**
	 * What it amounts to, or why it cannot be told.
	 */
	sentence: string;
}
/**
 * A factor of safety.
 */
export interface Safety {
	/**
	 * The factor.
	 */
	factor: Figure;
	/**
	 * Whose criterion.
	 */
	name: string;
}
/**
 * What the four sides of a frame are called, after the nests there: `A left and A right`.
 */
export interface FrameEnds {
	/**
	 * Where along counts up.
	 */
	ahead: string;
	/**
	 * Where along counts down.
	 */
	behind: string;
	/**
	 * Where across counts up.
	 */
	left: string;
	/**
	 * Where across counts down.
	 */
	right: string;
}
/**
 * A frame on its nests.
 */
export interface FrameReport {
	/**
	 * Load of the nests on that diagonal less that of the others.
	 */
	diagonal?: Figure;
	/**
	 * Mean height of the nests of that diagonal less that of the others'.
	 */
	diagonal_height?: Figure;
	/**
	 * What its sides are called.
	 */
	ends?: FrameEnds;
	/**
	 * How much higher it stands at the nest farthest left than at the farthest right.
	 */
	lean_across?: Figure;
	/**
	 * How much higher it stands at the nest nearest the A end than at the farthest.
	 */
	lean_along?: Figure;
	/**
	 * Mean load of all nests.
	 */
	mean?: Figure;
	/**
	 * What its weight is called; empty of the one that is written for the frame.
	 */
	name: string;
	/**
	 * Coils under it that are not good and why, `A left, 7 (Outer): short`: what follows holds with them.
	 */
	not_good: string[];
	/**
	 * Its points whose height counts.
	 */
	points: PointReport[];
	/**
	 * Whether the nests that carry leave it free to rock: heights are then one of many.
	 */
	rocks: boolean;
	/**
	 * How it stands, in a sentence.
	 */
	sentence: string;
	/**
	 * The two leans, then load and height of one diagonal, each in words, where they are known.
	 */
	sides: Sided[];
	/**
	 * What the heights tell that were taped when the truck stood again.
	 */
	standing?: FrameStanding;
	/**
	 * Whether it stands.
	 */
	state: FrameState;
	/**
	 * The nests, in the order of the job; none where it does not stand.
	 */
	supports: SupportReport[];
	/**
	 * How far warping lifts the corners of that diagonal; none of a rigid frame.
	 */
	warp?: Figure;
	/**
	 * The weight that they tell, where every nest was taped.
	 */
	weighed?: Weighed;
	/**
	 * Its weight.
	 */
	weight: Figure;
	/**
	 * The same under each weight of the list; those have no such list.
	 */
	weights: FrameReport[];
}
/**
 * A point of a frame whose height counts.
 */
export interface PointReport {
	/**
	 * How high it stands.
	 */
	height: Figure;
	/**
	 * The least that is allowed.
	 */
	least?: string;
	/**
	 * The most.
	 */
	most?: string;
	/**
	 * What it is called.
	 */
	name: string;
	/**
	 * Probability that it is within its limits.
	 */
	p_within?: number;
	/**
	 * The word as a person reads it.
	 */
	title: string;
	/**
	 * The word.
	 */
	word: PointWord;
}
/**
 * A signed figure in words, for a reader: `Lower at A left and A right by`, `9/64 in`.
 */
export interface Sided {
	/**
	 * Which side it is of.
	 */
	name: string;
	/**
	 * How much, without a sign.
	 */
	text: string;
}
/**
 * What taped heights tell of a frame.
 */
export interface FrameStanding {
	/**
	 * The one cause that explains them best.
	 */
	cause?: string;
	/**
	 * Each height that was taped.
	 */
	heights: NestStanding[];
	/**
	 * The same in a sentence or two.
	 */
	sentence: string;
	/**
	 * The word.
	 */
	word: StandingWord;
}
/**
 * A taped height beside the one that was worked out.
 */
export interface NestStanding {
	/**
	 * Whether doubt explains the difference.
	 */
	agrees: boolean;
	/**
	 * Taped less worked out.
	 */
	difference: Figure;
	/**
	 * Of which nest or point.
	 */
	of: string;
	/**
	 * As worked out, with its shim.
	 */
	reckoned: Figure;
	/**
	 * As taped.
	 */
	taped: Figure;
}
/**
 * A nest under the settled frame.
 */
export interface SupportReport {
	/**
	 * Height between its seats.
	 */
	height: Figure;
	/**
	 * What it carries.
	 */
	load: Figure;
	/**
	 * Which nest.
	 */
	nest: string;
	/**
	 * Its share in a sentence.
	 */
	sentence: string;
	/**
	 * The same as a part of the mean of all nests.
	 */
	share: Figure;
	/**
	 * Whether it bears.
	 */
	state: SupportState;
	/**
	 * What is left of it until the nest is solid; below zero where it is pressed past that.
	 */
	to_solid?: Figure;
}
/**
 * The weight that taped heights tell.
 */
export interface Weighed {
	/**
	 * Where it acts, to the left.
	 */
	across: Figure;
	/**
	 * Where it acts, towards the A end.
	 */
	along: Figure;
	/**
	 * What each nest carries, in the order of the frame.
	 */
	loads: Figure[];
	/**
	 * The weight beside the one that was written.
	 */
	sentence: string;
	/**
	 * All of it.
	 */
	weight: Figure;
}
/**
 * A box between its guides, in the unit of the job.
 */
export interface GuidesDrawing {
	/**
	 * The height at which the box has least, counted from the top.
	 */
	binds: number;
	/**
	 * The same as a person reads it.
	 */
	drawn: string;
	/**
	 * How many times as wide clearances are drawn.
	 */
	exaggerated: number;
	/**
	 * Of the one side and of the other, how far the face of the liner is from the middle of the
	 * opening, at each height.
	 */
	faces: number[][];
	/**
	 * Of each side the thickness of the liner at each height.
	 */
	liners: number[][];
	/**
	 * Greatest width of the box.
	 */
	width: number;
}
/**
 * What follows for a box in its guides.
 */
export interface GuidesReport {
	/**
	 * Whether the guides keep it across the frame.
	 */
	across: boolean;
	/**
	 * The clearance in all at each height, top to bottom.
	 */
	at: Figure[];
	/**
	 * How it is drawn.
	 */
	drawing?: GuidesDrawing;
	/**
	 * How thick a new liner is to be on the first side alone.
	 */
	first_liner?: Figure;
	/**
	 * What the stock has for it, where it is not free.
	 */
	from_stock?: StockLiners;
	/**
	 * The least of them.
	 */
	least?: Figure;
	/**
	 * How thick two new liners of one thickness are to be.
	 */
	liner?: Figure;
	/**
	 * What the box is called.
	 */
	name: string;
	/**
	 * Probability that the clearance is within the limits at every height.
	 */
	p_within?: number;
	/**
	 * How much narrower the way is in the middle than at its ends.
	 */
	pinch?: Figure;
	/**
	 * The same of the second side.
	 */
	second_liner?: Figure;
	/**
	 * What it amounts to, in a sentence or two.
	 */
	sentence: string;
	/**
	 * The least on the one side and on the other, with the box in the middle of the opening.
	 */
	sides: Figure[];
	/**
	 * How much more there is at the top than at the bottom.
	 */
	taper?: Figure;
	/**
	 * The word as a person reads it.
	 */
	title: string;
	/**
	 * The word; none where the sizes do not say.
	 */
	word?: GuidesWord;
	/**
	 * What a regulation prints beside it, which is no limit.
	 */
	yardstick?: string;
}
/**
 * Liners of the stock that bring a box right.
 */
export interface StockLiners {
	/**
	 * The least clearance with them.
	 */
	clearance?: string;
	/**
	 * The new liner of the first side; none where the old one stays. Where none of the stock does it there is
	 * none on the second side either.
	 */
	first?: string;
	/**
	 * The same of the second side.
	 */
	second?: string;
	/**
	 * What to put where, in a sentence.
	 */
	sentence: string;
	/**
	 * Whether the box would be called free with them.
	 */
	surely: boolean;
}
/**
 * A pad, plate or shim.
 */
export interface LayerReport {
	/**
	 * Whether it lies over the nest.
	 */
	above: boolean;
	/**
	 * What its nest would carry more under the frame with a new one.
	 */
	load?: Figure;
	/**
	 * By how much it is thinner than new.
	 */
	lost?: Figure;
	/**
	 * What it is.
	 */
	name: string;
	/**
	 * What that does, in a sentence or two; empty of one that is as new.
	 */
	sentence: string;
	/**
	 * Its thickness without load.
	 */
	thickness?: Figure;
}
/**
 * Everything about a frame, its shims and its wheels.
 */
export interface LevelReport {
	/**
	 * Units for scales.
	 */
	axes: Axes;
	/**
	 * What can hurt somebody at this work.
	 */
	cautions: Caution[];
	/**
	 * How deep a dip can be tried.
	 */
	dips?: Dips;
	/**
	 * How it stands.
	 */
	frame?: FrameReport;
	/**
	 * What was assumed, or left out and why.
	 */
	notes: Note[];
	/**
	 * Its plan, to be drawn.
	 */
	plan?: Plan;
	/**
	 * The same under each weight of the list.
	 */
	plans: Plan[];
	/**
	 * What of frame and nests cannot be used, and where it stands.
	 */
	problems: Problem[];
	/**
	 * Nests with a box that does not slide.
	 */
	seized: string[];
	/**
	 * The shims that even it out.
	 */
	shims?: ShimReport;
	/**
	 * What lies over and under its nests, of those that have anything.
	 */
	stacks: StackReport[];
	/**
	 * What stands on the track: wheels, or the boxes where no axles are given.
	 */
	wheels: Wheel[];
	/**
	 * How each figure came about.
	 */
	workings: {
		[k: string]: Working;
	};
}
/**
 * What was assumed, or could not be computed and why.
 *
 * | code | what it means |
 * | --- | --- |
 * | `graduation-assumed`, `tape-class-assumed`, `places-assumed`, `steel-assumed` | the job does not say, the usual is taken |
 * | `reading-questioned` | a reading that no doubt explains: no verdict rests on it |
 * | `label-twice` | one label on two coils of a kind |
 * | `too-close-left-out` | coils too close to call are not put into seats unless the job says so |
 * | `height-goes-first` | of a working height and a working load the height is used |
 * | `dead-turns-doubt` | what is not known of the dead turns outweighs all else in the rate |
 * | `limits-without-book` | a limit under or over a book figure that is not given |
 * | `coil-unknown`, `nest-empty`, `not-measured` | a seat without its coil, a nest without seats, a coil without readings |
 * | `load-unknown`, `solid-unknown` | a nest lacks what its load, or its stop, follows from |
 * | `layer-unknown` | a pad, plate or shim without its thickness |
 * | `guides-unknown` | a box without its width, or without the opening between its guides |
 * | `stack-unknown` | how thick a stack of shims may be is not given |
 * | `nests-differ`, `height-unknown` | nests among which no coil can be exchanged, or no height to compare them at |
 * | `original-unknown`, `work-unknown` | a replacement without the drawing that is replaced, or without a height at work |
 * | `swap-unknown` | what a replacement does to its nest or frame cannot be told |
 * | `together-without-nest`, `order-unknown`, `raise-unknown` | a nest for a nest without one, or whose coils' places or seats are not known |
 * | `seat-without-nest`, `waived-without-reason` | one seat is named but no nest; a requirement is waived without a reason |
 * | `need-unknown` | a need lacks its load, its rate or its steel |
 * | `ends-assumed`, `solid-stress-unknown` | a need does not say what ends, or what may be borne at solid |
 * | `strength-unknown` | no stress that the steel may bear is held or given |
 * | `weight-unknown`, `support-unknown`, `place-unknown` | a frame lacks its weight, a support its nest or its place |
 */
export interface Note {
	/**
	 * Stable code; the list stands above.
	 */
	code: string;
	/**
	 * Path of the field or part.
	 */
	path: string;
	/**
	 * A sentence.
	 */
	text: string;
}
/**
 * The plan of a frame, along to the A end, across to the left.
 */
export interface Plan {
	/**
	 * Where the weight acts, across.
	 */
	centre_across: number;
	/**
	 * Where the weight acts, along.
	 */
	centre_along: number;
	/**
	 * The nests.
	 */
	nests: PlanNest[];
	/**
	 * Rise per length across, of the settled frame.
	 */
	slope_across: number;
	/**
	 * Rise per length along, of the settled frame.
	 */
	slope_along: number;
	/**
	 * Unit of every length.
	 */
	unit: string;
}
/**
 * A nest on the plan.
 */
export interface PlanNest {
	/**
	 * Where it stands, across.
	 */
	across: number;
	/**
	 * Where it stands, along.
	 */
	along: number;
	/**
	 * Which nest.
	 */
	nest: string;
	/**
	 * Radius of a circle whose area is as its load, as a part of that of the mean load.
	 */
	radius: number;
	/**
	 * Index of its support in the job.
	 */
	support: number;
}
/**
 * Which shims even a frame out, and how far.
 */
export interface ShimReport {
	/**
	 * Greatest deviation with the plan.
	 */
	after: Figure;
	/**
	 * What was aimed at: `loads` or `level`.
	 */
	aim: string;
	/**
	 * Greatest deviation as the frame stands.
	 */
	before: Figure;
	/**
	 * How far the readings leave a nest's share in doubt.
	 */
	doubt?: Figure;
	/**
	 * What to write into the job once it is done.
	 */
	edits: Edit[];
	/**
	 * Whether no plan with these shims is better.
	 */
	exact: boolean;
	/**
	 * How much better a plan could still be.
	 */
	gap?: Figure;
	/**
	 * How much higher the frame then stands on the left.
	 */
	lean_across: Figure;
	/**
	 * How much higher the frame then stands at the A end.
	 */
	lean_along: Figure;
	/**
	 * Coils under the frame that are not good and why: the plan is made for them.
	 */
	not_good: string[];
	/**
	 * What remains, and why it is no better.
	 */
	remains: string;
	/**
	 * The two leans in words.
	 */
	sides: Sided[];
	/**
	 * What to do, in this order.
	 */
	steps: ShimStep[];
	/**
	 * The nests with the plan.
	 */
	supports: SupportReport[];
	/**
	 * Whether the plan gains more than the readings can tell.
	 */
	told: boolean;
	/**
	 * What the greatest deviation is, in words.
	 */
	what: string;
}
/**
 * One thing to do with shims.
 */
export interface ShimStep {
	/**
	 * Greatest deviation after it.
	 */
	after: Figure;
	/**
	 * What that nest's load gains by it.
	 */
	gains: Figure;
	/**
	 * Which nest.
	 */
	nest: string;
	/**
	 * What to do there: `take out 1/8 in, put in 1/4 in and 1/16 in`.
	 */
	text: string;
	/**
	 * Whether it gains less than the readings can tell.
	 */
	within_doubt: boolean;
}
/**
 * What lies over and under a nest.
 */
export interface StackReport {
	/**
	 * Height from the lower seat to the frame: under the frame, or at the working point of the nest.
	 */
	height?: Figure;
	/**
	 * Its layers, in the order of the job.
	 */
	layers: LayerReport[];
	/**
	 * Of which nest.
	 */
	nest: string;
	/**
	 * All that lies there between frame and lower seat, top to bottom, as thick as it is under load.
	 */
	parts: StackPart[];
	/**
	 * What it amounts to, in a sentence.
	 */
	sentence: string;
	/**
	 * All of it without load.
	 */
	thickness: Figure;
}
/**
 * One of the parts between frame and lower seat.
 */
export interface StackPart {
	/**
	 * Its kind.
	 */
	kind: StackPartKind;
	/**
	 * What it is.
	 */
	name: string;
	/**
	 * The same as a part of all of them, to be drawn.
	 */
	part: number;
	/**
	 * How thick it is.
	 */
	thickness: string;
}
/**
 * A wheel on level track, or a box.
 */
export interface Wheel {
	/**
	 * What it carries.
	 */
	load: Figure;
	/**
	 * Its name.
	 */
	name: string;
}
/**
 * Which coil belongs in which seat.
 */
export interface MatchReport {
	/**
	 * The same as they would be placed.
	 */
	after?: Figure;
	/**
	 * Greatest load less the least at that height, as the coils are placed now.
	 */
	before?: Figure;
	/**
	 * The coils on the bench, in the order of the job.
	 */
	bench: SeatReport[];
	/**
	 * How much better another placing could still be; none where this is the best.
	 */
	gap?: Figure;
	/**
	 * Height at which loads are compared.
	 */
	height?: Figure;
	/**
	 * Marks of the coils left over.
	 */
	left_over: string[];
	/**
	 * What to do, in sentences.
	 */
	moves: string[];
	/**
	 * The nests with their coils.
	 */
	nests: MatchedNest[];
	/**
	 * Coils that are used though they are not good, and why.
	 */
	not_good: string[];
	/**
	 * What was assumed, or left out and why.
	 */
	notes: Note[];
	/**
	 * What of bench and nests cannot be used, and where it stands.
	 */
	problems: Problem[];
	/**
	 * What it comes to, and what one new coil would buy.
	 */
	sentences: string[];
	/**
	 * Coils that are not used, and why: `7 (Outer): short`.
	 */
	set_aside: string[];
	/**
	 * How each figure came about.
	 */
	workings: {
		[k: string]: Working;
	};
}
/**
 * A nest with the coils that belong in it.
 */
export interface MatchedNest {
	/**
	 * What it would carry at the height of comparison.
	 */
	load: Figure;
	/**
	 * Which nest.
	 */
	nest: string;
	/**
	 * The coils, in the order of its seats.
	 */
	seats: MatchedSeat[];
}
/**
 * A coil that belongs in a seat.
 */
export interface MatchedSeat {
	/**
	 * Path of where it is now: `nests[0].seats[1]` or `bench[3]`.
	 */
	from: string;
	/**
	 * The mark painted on it.
	 */
	label: string;
	/**
	 * Its drawing's name.
	 */
	name: string;
	/**
	 * Whether it is there already.
	 */
	stays: boolean;
}
/**
 * What follows for a nest.
 */
export interface NestReport {
	/**
	 * At what was asked.
	 */
	answers: State[];
	/**
	 * How well the coils share the work: index and stress at solid beside each other.
	 */
	balance?: string;
	/**
	 * Bends of the load curve, from free to solid.
	 */
	breakpoints: Breakpoint[];
	/**
	 * Room between neighbours.
	 */
	clearances: Clearance[];
	/**
	 * Height at which it begins to carry.
	 */
	free_height?: Figure;
	/**
	 * Its boxes in their guides.
	 */
	guides?: GuidesReport[];
	/**
	 * By what its loads and heights are: the readings, or the drawings.
	 */
	heights_by?: string;
	/**
	 * The nest.
	 */
	id: string;
	/**
	 * Its coils that are not good and why, `7 (Outer): short`: what follows for the nest holds with them.
	 */
	not_good: string[];
	/**
	 * Its coils.
	 */
	seats: SeatReport[];
	/**
	 * Heights that the nest can take.
	 */
	slider?: Slider;
	/**
	 * Seat that goes solid first.
	 */
	solid_first?: number;
	/**
	 * Height at which the nest is solid.
	 */
	solid_height?: Figure;
	/**
	 * Load of its springs then.
	 */
	solid_load?: Figure;
	/**
	 * What lies over and under it.
	 */
	stack?: StackReport;
	/**
	 * Height from its lower seat to the frame, at its working point.
	 */
	stack_height?: Figure;
	/**
	 * Its height as taped when the truck stood again, beside the one worked out.
	 */
	standing?: NestStanding;
	/**
	 * Energy that the nest holds at the working point.
	 */
	stored_energy?: Figure;
	/**
	 * Seats in the order in which they begin to carry.
	 */
	touch_order: number[];
	/**
	 * At the working height or load.
	 */
	working?: State;
}
/**
 * A nest at a height.
 */
export interface State {
	/**
	 * What was asked, as written.
	 */
	asked?: string;
	/**
	 * Height.
	 */
	height: Figure;
	/**
	 * Load.
	 */
	load: Figure;
	/**
	 * Rate there.
	 */
	rate?: Figure;
	/**
	 * Its coils.
	 */
	seats: SeatState[];
	/**
	 * Whether it is solid.
	 */
	solid: boolean;
	/**
	 * Load beyond what the springs bear, carried turn on turn.
	 */
	stop_load?: Figure;
}
/**
 * A coil of a nest at a height.
 */
export interface SeatState {
	/**
	 * Its load.
	 */
	load: Figure;
	/**
	 * Its share of the nest's load.
	 */
	share?: Figure;
	/**
	 * Uncorrected stress.
	 */
	stress?: Figure;
	/**
	 * Stress at the inside of the coil, by Bergsträsser's factor.
	 */
	stress_corrected?: Figure;
	/**
	 * What is left before it is solid.
	 */
	to_solid?: Figure;
	/**
	 * Whether it carries.
	 */
	touching: boolean;
}
/**
 * Heights that a nest can take, in a unit of the page.
 */
export interface Slider {
	/**
	 * Solid height, or the working height's surroundings where it is not known.
	 */
	least: number;
	/**
	 * A little above the free height.
	 */
	most: number;
	/**
	 * Where to begin.
	 */
	start: number;
	/**
	 * Step.
	 */
	step: number;
	/**
	 * Unit.
	 */
	unit: string;
}
/**
 * A job file that was opened.
 */
export interface Opened {
	/**
	 * The job.
	 */
	job?: Job;
	/**
	 * Why there is none.
	 */
	problem?: Problem;
}
/**
 * A coil inside another that together meet a need.
 */
export interface PairReport {
	/**
	 * The inner one.
	 */
	inner: DesignReport;
	/**
	 * Mass of both.
	 */
	mass: Figure;
	/**
	 * The outer one.
	 */
	outer: DesignReport;
	/**
	 * How near their stresses and solid heights are, in a sentence.
	 */
	sentence: string;
	/**
	 * The outer one's share of the load.
	 */
	share: Figure;
}
/**
 * What a press showed.
 */
export interface Press {
	/**
	 * Active turns that the rate implies.
	 */
	active_turns?: Figure;
	/**
	 * Rate below it.
	 */
	closed_rate?: Figure;
	/**
	 * Height at which turns begin to close.
	 */
	closing?: Figure;
	/**
	 * Free height that the line through the readings comes to.
	 */
	free?: Figure;
	/**
	 * How much lower the coil stood at one load on the way back.
	 */
	hysteresis?: Figure;
	/**
	 * Rate, by least squares.
	 */
	rate?: Figure;
	/**
	 * The readings of the way down, with what each is off the line.
	 */
	rows: PressRow[];
	/**
	 * Scatter of the readings about the line.
	 */
	scatter?: Figure;
	/**
	 * What it amounts to, or why there is no line.
	 */
	sentences: string[];
}
/**
 * A reading on a press beside the line.
 */
export interface PressRow {
	/**
	 * Height.
	 */
	height: Figure;
	/**
	 * Load.
	 */
	load: Figure;
	/**
	 * Load less that of the line.
	 */
	off: Figure;
}
/**
 * A bar of which no coil meets a need.
 */
export interface RefusedBar {
	/**
	 * The bar.
	 */
	bar: string;
	/**
	 * Why.
	 */
	why: string;
}
/**
 * What may replace a coil, and what to write to a spring maker.
 */
export interface ReplaceReport {
	/**
	 * The springs that may replace it, in the order of the job.
	 */
	candidates: CandidateReport[];
	/**
	 * What can hurt somebody at this work.
	 */
	cautions: Caution[];
	/**
	 * What was assumed, or left out and why.
	 */
	notes: Note[];
	/**
	 * The order of the original as it was.
	 */
	order?: OrderReport;
	/**
	 * Name of the drawing that is to be replaced.
	 */
	original?: string;
	/**
	 * What of it cannot be used, and where it stands.
	 */
	problems: Problem[];
	/**
	 * All of them as one nest for the whole nest, where that is asked.
	 */
	together?: TogetherReport;
	/**
	 * How each figure came about.
	 */
	workings: {
		[k: string]: Working;
	};
}
/**
 * Several springs as one nest.
 */
export interface TogetherReport {
	/**
	 * What they do to the frame.
	 */
	frame?: FrameSwapReport;
	/**
	 * Requirement by requirement, first of the nest, then coil by coil.
	 */
	lines: LineReport[];
	/**
	 * Whether they are a true replacement; none where nothing can be said of them.
	 */
	met?: Met;
	/**
	 * Which nest they replace.
	 */
	nest: string;
	/**
	 * Those that are offered, the widest first.
	 */
	offered: string[];
	/**
	 * What it comes to, in a sentence.
	 */
	sentence: string;
	/**
	 * What they do to the nest.
	 */
	swap?: NestSwapReport;
	/**
	 * The coils that are there, the widest first.
	 */
	there: string[];
	/**
	 * The same as a person reads it.
	 */
	title: string;
}
/**
 * A nest in section, heights from the lower seat up.
 */
export interface Section {
	/**
	 * Height between the seats.
	 */
	height: number;
	/**
	 * Its coils.
	 */
	seats: SectionSeat[];
	/**
	 * Unit of every number.
	 */
	unit: string;
	/**
	 * Largest outside diameter.
	 */
	width: number;
}
/**
 * A coil in section.
 */
export interface SectionSeat {
	/**
	 * Bar.
	 */
	bar: number;
	/**
	 * Where it stands.
	 */
	bottom: number;
	/**
	 * Whether the ends are ground, and so cut by the seats.
	 */
	ground: boolean;
	/**
	 * `left` or `right`.
	 */
	hand?: string;
	/**
	 * Heights of the bar's centre on the left.
	 */
	left: number[];
	/**
	 * Mean diameter.
	 */
	mean: number;
	/**
	 * Heights of the bar's centre on the right.
	 */
	right: number[];
	/**
	 * Seat.
	 */
	seat: number;
	/**
	 * Whether it is solid.
	 */
	solid: boolean;
	/**
	 * Where it ends.
	 */
	top: number;
	/**
	 * Whether it carries.
	 */
	touching: boolean;
}
/**
 * All that follows from the drawing of a coil.
 */
export interface Sheet {
	/**
	 * Units for scales and axes.
	 */
	axes: Axes;
	/**
	 * Bar diameter.
	 */
	bar?: Figure;
	/**
	 * Length of the bar along the helix, dead turns and all.
	 */
	bar_length?: Figure;
	/**
	 * Whether it bends aside as a column.
	 */
	buckling?: Buckling;
	/**
	 * What nests go by.
	 */
	coil: CoilReport;
	/**
	 * The two loads that it works between.
	 */
	duty: DutyState[];
	/**
	 * What its ends do between plates, beside the textbook's count.
	 */
	ends?: EndsReport;
	/**
	 * How long it lasts between them.
	 */
	fatigue?: Fatigue;
	/**
	 * Free height from the book.
	 */
	free?: Figure;
	/**
	 * Growth of the diameter at solid, ends free to turn.
	 */
	growth_free?: Figure;
	/**
	 * Growth of the diameter at solid, ends held.
	 */
	growth_held?: Figure;
	/**
	 * Inside diameter.
	 */
	inside?: Figure;
	/**
	 * Sideways rate at half the travel.
	 */
	lateral_rate?: Figure;
	/**
	 * Sum of the least gaps between the active turns: for a load at rest, and more where two
	 * loads are given.
	 */
	least_gaps?: Figure;
	/**
	 * Solid height and the least gaps: the lowest height to work at.
	 */
	least_height?: Figure;
	/**
	 * Mass of the coil.
	 */
	mass?: Figure;
	/**
	 * Mean diameter.
	 */
	mean?: Figure;
	/**
	 * What standards allow a new coil of this drawing.
	 */
	new_spring: Allowance[];
	/**
	 * Outside diameter.
	 */
	outside?: Figure;
	/**
	 * Pitch angle of the free coil.
	 */
	pitch_angle?: Figure;
	/**
	 * What a press showed.
	 */
	press?: Press;
	/**
	 * What is unusual about its proportions.
	 */
	remarks: string[];
	/**
	 * The free coil in section.
	 */
	section?: Section;
	/**
	 * The least solid height that an authority gives, for the stress at solid, where it is below
	 * the one that the coil is taken to stop at.
	 */
	solid_least?: Figure;
	/**
	 * What its steel bears, and how near to that it comes at solid.
	 */
	standing?: Standing;
	/**
	 * Its steel, as the tables have it.
	 */
	steel?: SteelRow;
	/**
	 * First frequency at which it swings within itself, both ends kept.
	 */
	surge?: Figure;
	/**
	 * Free height less solid height.
	 */
	travel?: Figure;
	/**
	 * How far its rate can be trusted.
	 */
	trust?: Trust;
}
/**
 * A coil at solid beside what its steel bears.
 */
export interface Standing {
	/**
	 * The stress that may be borne at rest.
	 */
	allowable?: Figure;
	/**
	 * That factor by its name; it is behind `allowable` and `stress`.
	 */
	factor?: string;
	/**
	 * What is left of the allowable stress.
	 */
	reserve?: Figure;
	/**
	 * What it amounts to, or why it cannot be told.
	 */
	sentence: string;
	/**
	 * Whether a new coil, of wire that has the least strength, takes a set when it is closed. Of a
	 * coil in service it says nothing.
	 */
	sets?: boolean;
	/**
	 * The stress at solid that it is compared with, by the factor that the allowable one is meant
	 * with; its working names the factor.
	 */
	stress?: Figure;
	/**
	 * Tensile strength of the steel in this size.
	 */
	tensile?: Figure;
}
/**
 * A steel of the tables.
 */
export interface SteelRow {
	/**
	 * Density.
	 */
	density?: Figure;
	/**
	 * Its word in a job file.
	 */
	id: string;
	/**
	 * Its name for people.
	 */
	name: string;
	/**
	 * Where its row stands.
	 */
	row?: string;
	/**
	 * Shear modulus.
	 */
	shear_modulus: Figure;
	/**
	 * Young's modulus.
	 */
	youngs_modulus: Figure;
}
/**
 * How far a rate can be trusted.
 */
export interface Trust {
	/**
	 * The least that it can be within the tolerances.
	 */
	least?: Figure;
	/**
	 * The most.
	 */
	most?: Figure;
	/**
	 * What each number has to do with the doubt.
	 */
	parts: Doubt[];
	/**
	 * The rate with its doubt, by root sum of squares.
	 */
	rate?: Figure;
	/**
	 * Which measurement is worth making better, or which tolerances leave no coil.
	 */
	sentence: string;
}
/**
 * The drawing sheet of a coil that was asked for.
 */
export interface SheetAnswer {
	/**
	 * Why there is none.
	 */
	problem?: Problem;
	/**
	 * The sheet.
	 */
	sheet?: Sheet;
	/**
	 * How each figure came about.
	 */
	workings: {
		[k: string]: Working;
	};
}
/**
 * A coil then and now.
 */
export interface SinceCoil {
	/**
	 * Now less then.
	 */
	change: Figure;
	/**
	 * The mark painted on it.
	 */
	label: string;
	/**
	 * Its drawing's name.
	 */
	name: string;
	/**
	 * The same now.
	 */
	now: Figure;
	/**
	 * What it says, in a sentence.
	 */
	sentence: string;
	/**
	 * Free height as it was measured then.
	 */
	then: Figure;
	/**
	 * The same as a person reads it.
	 */
	title: string;
	/**
	 * What that amounts to.
	 */
	word: SinceWord;
}
/**
 * What the coils have lost since an earlier job.
 */
export interface SinceReport {
	/**
	 * The coils that were measured both times, by their labels.
	 */
	coils: SinceCoil[];
	/**
	 * Coils that cannot be compared, and why: a line for each reason.
	 */
	left_out: string[];
	/**
	 * What it comes to, in a sentence.
	 */
	sentence: string;
	/**
	 * When the earlier job was: its date, else its title.
	 */
	when: string;
	/**
	 * How each figure came about.
	 */
	workings: {
		[k: string]: Working;
	};
}
/**
 * Every bar with every count of turns.
 */
export interface SizingMap {
	/**
	 * The bars, as a person reads them.
	 */
	bars: string[];
	/**
	 * Bar by bar, the turns of each together: 0 where the coil meets the need, else the place of
	 * the limit that it fails worst, counted from 1.
	 */
	cells: number[];
	/**
	 * Where each design lies.
	 */
	designs: DesignPlace[];
	/**
	 * The limits that stand against some of them, each a short name.
	 */
	limits: string[];
	/**
	 * The counts of active turns.
	 */
	turns: number[];
}
/**
 * Drawings for a need.
 */
export interface SizingReport {
	/**
	 * Units for scales.
	 */
	axes: Axes;
	/**
	 * What can hurt somebody at this work.
	 */
	cautions: Caution[];
	/**
	 * Drawings that meet it, the best first.
	 */
	designs: DesignReport[];
	/**
	 * Every bar with every count of turns.
	 */
	map?: SizingMap;
	/**
	 * What was assumed, or left out and why.
	 */
	notes: Note[];
	/**
	 * Pairs of drawings that meet it, one inside the other, the best first.
	 */
	pairs: PairReport[];
	/**
	 * What of the need cannot be used, and where it stands.
	 */
	problems: Problem[];
	/**
	 * Bars of which none meets it, and why.
	 */
	refused: RefusedBar[];
	/**
	 * What it comes to, in a sentence.
	 */
	sentence: string;
	/**
	 * How each figure came about.
	 */
	workings: {
		[k: string]: Working;
	};
}
/**
 * The tables of a job, each the text of a file.
 */
export interface Spreadsheets {
	/**
	 * A line for each box in its guides; empty where there is none.
	 */
	boxes: string;
	/**
	 * A line a coil: readings, measured height, verdict.
	 */
	coils: string;
	/**
	 * A line for each nest under the frame; empty where there is no frame.
	 */
	frame: string;
	/**
	 * A line for each height of a nest: load, and what each coil bears.
	 */
	nests: string;
	/**
	 * A line for each nest and point under each weight: heights worked out and taped; empty where there is
	 * one weight, no point, and nothing was taped.
	 */
	standing: string;
}
/**
 * A nest at a height that was asked for.
 */
export interface StateAnswer {
	/**
	 * Why there is none.
	 */
	problem?: Problem;
	/**
	 * Its half-section.
	 */
	section?: Section;
	/**
	 * The nest there.
	 */
	state?: State;
	/**
	 * How each figure came about.
	 */
	workings: {
		[k: string]: Working;
	};
}
/**
 * How many coils have which verdict.
 */
export interface Tally {
	/**
	 * Within the limits.
	 */
	good: number;
	/**
	 * Above the most allowed.
	 */
	long: number;
	/**
	 * Without a limit.
	 */
	none: number;
	/**
	 * Not sound.
	 */
	scrap: number;
	/**
	 * Below the least allowed.
	 */
	short: number;
	/**
	 * Not sure enough, or to be read again.
	 */
	'too-close': number;
}
/**
 * A graduation.
 */
export interface TapeMark {
	/**
	 * Where.
	 */
	at: number;
	/**
	 * Figure printed beside it.
	 */
	label?: string;
	/**
	 * 0 for the longest.
	 */
	rank: number;
}
/**
 * What a reading says.
 */
export interface TapeReading {
	/**
	 * Its mark.
	 */
	at: number;
	/**
	 * The most it can mean.
	 */
	high: number;
	/**
	 * The least it can mean.
	 */
	low: number;
}
/**
 * What a tape says of the coils of a job.
 */
export interface TapeReport {
	/**
	 * What can hurt somebody.
	 */
	cautions: Caution[];
	/**
	 * What a key row offers.
	 */
	keys: string[];
	/**
	 * The nests.
	 */
	nests: TapedNest[];
	/**
	 * What was assumed, or could not be computed.
	 */
	notes: Note[];
	/**
	 * What cannot be used.
	 */
	problems: Problem[];
	/**
	 * Coils that do not go back, in the order of the job.
	 */
	set_aside: AsideReport[];
	/**
	 * How many coils are what.
	 */
	tally: Tally;
	/**
	 * How each figure came about.
	 */
	workings: {
		[k: string]: Working;
	};
}
/**
 * The coils of a nest as the tape has them.
 */
export interface TapedNest {
	/**
	 * The nest.
	 */
	id: string;
	/**
	 * Its coils.
	 */
	seats: SeatReport[];
}
/**
 * A place at which the mark can stand, and the text for it.
 */
export interface TapeStop {
	/**
	 * Where.
	 */
	at: number;
	/**
	 * What to write.
	 */
	text: string;
}
/**
 * The tape as it stands at a reading.
 */
export interface TapeStrip {
	/**
	 * Book figure.
	 */
	book?: number;
	/**
	 * Index of the stop at which it stands.
	 */
	current?: number;
	/**
	 * Left end.
	 */
	from: number;
	/**
	 * Least allowed.
	 */
	least?: number;
	/**
	 * Graduations.
	 */
	marks: TapeMark[];
	/**
	 * Most allowed.
	 */
	most?: number;
	/**
	 * The strip in words.
	 */
	name: string;
	/**
	 * What was read.
	 */
	reading?: TapeReading;
	/**
	 * Every place at which the mark can stand.
	 */
	stops: TapeStop[];
	/**
	 * Right end.
	 */
	to: number;
	/**
	 * Unit of every number.
	 */
	unit: string;
}
/**
 * Everything that follows from a job.
 */
export interface Report {
	/**
	 * Units for scales and axes.
	 */
	axes: Axes;
	/**
	 * What can hurt somebody at this work.
	 */
	cautions: Caution[];
	/**
	 * The drawings.
	 */
	coils: CoilReport[];
	/**
	 * The frame on them, where the job has one and all that it needs.
	 */
	frame?: FrameReport;
	/**
	 * Keys for the fractions of this job's tape.
	 */
	keys: string[];
	/**
	 * The nests.
	 */
	nests: NestReport[];
	/**
	 * What was assumed, or left out and why.
	 */
	notes: Note[];
	/**
	 * What cannot be used, and where it stands.
	 */
	problems: Problem[];
	/**
	 * Coils that do not go back, in the order of the job.
	 */
	set_aside: AsideReport[];
	/**
	 * How many of their coils have which verdict.
	 */
	tally: Tally;
	/**
	 * How each figure came about.
	 */
	workings: {
		[k: string]: Working;
	};
}
