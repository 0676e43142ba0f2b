/* Written by `npm run types` from the schemas in `schema/`. */

/**
 * What happens at a bend of the load curve.
 */
export type EventWord = 'touches' | 'stage' | 'solid';
/**
 * Where on the page a caution binds.
 */
export type Place = 'measure' | 'nest' | 'all';
/**
 * How two neighbours are wound.
 */
export type HandsWord = 'opposite' | 'same' | 'unknown';
/**
 * The word of a verdict.
 */
export type Word = 'good' | 'short' | 'long' | 'too-close' | 'none';

/**
 * A coil on the bench.
 */
export interface BenchCoil {
	/**
	 * Which drawing it should be.
	 */
	coil?: string;
	/**
	 * The mark painted on it.
	 */
	label?: string;
	/**
	 * What the tape said.
	 */
	readings?: string[];
}
/**
 * Where the weight acts.
 */
export interface Centre {
	/**
	 * To the left, looking from B to A.
	 */
	across?: string;
	/**
	 * Towards the A end.
	 */
	along?: string;
}
/**
 * What a kind of coil should be.
 */
export interface CoilDrawing {
	/**
	 * Turns that deflect, instead.
	 */
	active_turns?: string;
	/**
	 * Bar (wire) diameter.
	 */
	bar?: string;
	/**
	 * Turns that do not deflect, where the form of the ends does not say it well enough.
	 */
	dead_turns?: string;
	/**
	 * Form of the ends.
	 */
	ends?: string;
	/**
	 * `held` or `free` about the coil's axis.
	 */
	ends_turn?: string;
	/**
	 * Free height from the book.
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
	 * Inside diameter, instead.
	 */
	inside?: string;
	/**
	 * Limits on the free height.
	 */
	limits?: Limits;
	/**
	 * Mean diameter, instead.
	 */
	mean?: string;
	/**
	 * Its name for people.
	 */
	name?: string;
	/**
	 * Outside diameter.
	 */
	outside?: string;
	/**
	 * Heights and loads on a press.
	 */
	press_test?: PressPoint[];
	/**
	 * Rate from the book, over the drawing's.
	 */
	rate?: string;
	/**
	 * Shear modulus, over the steel's.
	 */
	shear_modulus?: string;
	/**
	 * Solid height from the book, over the drawing's.
	 */
	solid?: string;
	/**
	 * Steel, by its word in the tables.
	 */
	steel?: string;
	/**
	 * Total turns, tip to tip.
	 */
	turns?: string;
	/**
	 * Young's modulus, over the steel's.
	 */
	youngs_modulus?: string;
}
/**
 * Limits on a free height: under and over the book figure, or least and most.
 */
export interface Limits {
	/**
	 * The least allowed, instead.
	 */
	least?: string;
	/**
	 * The most allowed, instead.
	 */
	most?: string;
	/**
	 * How far over.
	 */
	over?: string;
	/**
	 * How far under the book figure is allowed.
	 */
	under?: string;
}
/**
 * One reading on a press.
 */
export interface PressPoint {
	/**
	 * Height.
	 */
	height?: string;
	/**
	 * Load.
	 */
	load?: string;
}
/**
 * The frame that stands on the nests.
 */
export interface Frame {
	/**
	 * Where the weight acts.
	 */
	centre?: Centre;
	/**
	 * The most shim that may go under one nest.
	 */
	largest_stack?: string;
	/**
	 * Thicknesses of shim at hand.
	 */
	shim_stock?: string[];
	/**
	 * Stiffness of a nest that is solid.
	 */
	stop_stiffness?: string;
	/**
	 * Where each nest stands.
	 */
	supports?: Support[];
	/**
	 * Stiffness against twist; rigid when empty.
	 */
	warp_stiffness?: string;
	/**
	 * Weight on the nests.
	 */
	weight?: string;
}
/**
 * Where a nest stands.
 */
export interface Support {
	/**
	 * To the left, looking from B to A.
	 */
	across?: string;
	/**
	 * Towards the A end.
	 */
	along?: string;
	/**
	 * How far its lower seat is raised.
	 */
	ground?: string;
	/**
	 * Which nest.
	 */
	nest?: string;
	/**
	 * Shim under it.
	 */
	shim?: string;
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
	 * Date, as 2026-05-02.
	 */
	date?: string;
	/**
	 * Anything else.
	 */
	notes?: string;
	/**
	 * Place.
	 */
	place?: string;
	/**
	 * Vehicle or machine.
	 */
	vehicle?: string;
}
/**
 * A nest as it stands in its corner.
 */
export interface NestInput {
	/**
	 * Heights or loads to be answered beside the working point; `solid` and `free` are words.
	 */
	ask?: string[];
	/**
	 * Its name.
	 */
	id: string;
	/**
	 * The coils that are there.
	 */
	seats?: Seat[];
	/**
	 * Height under its usual load.
	 */
	working_height?: string;
	/**
	 * Its usual load, instead.
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
	 * The mark painted on it.
	 */
	label?: string;
	/**
	 * How far its seat is raised, or sunk when negative.
	 */
	raise?: string;
	/**
	 * What the tape said, round the coil.
	 */
	readings?: string[];
}
/**
 * What was measured with.
 */
export interface TapeUsed {
	/**
	 * Class of the tape, which says how far it may be wrong.
	 */
	class?: string;
	/**
	 * Half-width of how squarely the ends were met.
	 */
	ends_error?: string;
	/**
	 * Half-width of the tape's error, instead of a class.
	 */
	error?: string;
	/**
	 * Distance between the tape's marks.
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
	 * How sure a verdict has to be, `95 %` by default.
	 */
	decision_level?: string;
	/**
	 * `coilnest-job/1`.
	 */
	format: string;
	/**
	 * The frame that stands on the nests.
	 */
	frame?: Frame;
	/**
	 * The nests, each with the coils that are there.
	 */
	nests?: NestInput[];
	/**
	 * Who, where, when.
	 */
	record?: JobRecord;
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
 * The words that some fields take.
 */
export interface Choices {
	/**
	 * Forms of ends.
	 */
	ends: Choice[];
	/**
	 * Whether ends may turn.
	 */
	ends_turn: Choice[];
	/**
	 * Hands.
	 */
	hands: Choice[];
	/**
	 * Steels.
	 */
	steels: Choice[];
	/**
	 * Systems of units.
	 */
	systems: Choice[];
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
	 * Rate that is reckoned with: the book's, else the drawing's.
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
	 * Solid height that is reckoned with.
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
	 * The nest.
	 */
	id: string;
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
	 * Measured less book.
	 */
	deviation?: Figure;
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
 * What was assumed, or could not be computed and why.
 *
 * | code | what it means |
 * | --- | --- |
 * | `graduation-assumed`, `tape-class-assumed`, `steel-assumed` | the job does not say, the usual is taken |
 * | `height-goes-first` | of a working height and a working load the height is used |
 * | `dead-turns-doubt` | what is not known of the dead turns outweighs all else in the rate |
 * | `limits-without-book` | a limit under or over a book figure that is not given |
 * | `coil-unknown`, `nest-empty`, `not-measured` | a seat without its coil, a nest without seats, a coil without readings |
 * | `load-unknown`, `solid-unknown` | a nest lacks what its load, or its stop, follows from |
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
 * The drawing sheet of a coil: all that follows from its drawing.
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
	 * What nests go by.
	 */
	coil: CoilReport;
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
	 * Mean diameter.
	 */
	mean?: Figure;
	/**
	 * Outside diameter.
	 */
	outside?: Figure;
	/**
	 * Pitch angle of the free coil.
	 */
	pitch_angle?: Figure;
	/**
	 * The free coil in section.
	 */
	section?: Section;
	/**
	 * Free height less solid height.
	 */
	travel?: Figure;
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
 * How a figure came about.
 */
export interface Working {
	/**
	 * The formula in symbols.
	 */
	formula: string;
	/**
	 * The result with its unit.
	 */
	result: string;
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
	 * How each figure came about.
	 */
	workings: {
		[k: string]: Working;
	};
}
