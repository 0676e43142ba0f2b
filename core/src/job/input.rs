//! A job as it is saved: every quantity is the text that somebody wrote.
//!
//! Nearly every field may be missing, any field may hold something else than expected, and fields
//! that this version does not know are kept. Each field is one row: its name in the file, its kind, and
//! what a person calls it. From the row come its reading, the change of its unit, its place in the
//! schema, the words and the label that a page offers, and the random texts of the tests.

use super::choices::{self, Reach, Use};
use super::entry::{Entry, Expected, Slot};
use super::field::{
    Amount, AmountTolerance, ByName, Condition, Count, Date, DeadTurns, Field, HeightOrLoad, Holds,
    Kind, Length, LengthTolerance, Many, Object, OfSteel, OfTape, Plain, Rows, Taped, Unread,
    Visitor, Whole, Word,
};
use super::problem::Path;
#[cfg(feature = "schema")]
use super::rows::{self, Listed, Row, Shown};
use crate::bounds;
use crate::coil::buckling::Seating;
use crate::coil::ends::Ends;
use crate::coil::fatigue::Surface;
use crate::coil::{EndsTurn, Hand};
use crate::frame::shims::Aim;
use crate::load_test::Way;
use crate::material::{Against, Presetting};
use crate::quantity::{Force, Modulus, Share, SpringRate, Stress, System, Turns, WarpStiffness};
use crate::sizing::Rank;
use serde::ser::{Serialize, SerializeMap, Serializer};
use serde_json::{Map, Value};

/// What the `format` of a job file says.
pub const FORMAT: &str = "coilnest-job/1";

/// The name of a field in a file, also where Rust has the word for itself.
const fn in_file(field: &'static str) -> &'static str {
    match field.as_bytes() {
        [b'r', b'#', ..] => field.split_at(2).1,
        _ => field,
    }
}

/// One object of a job: every field an entry, and whatever else the file holds.
macro_rules! object {
    ($(#[doc = $about:literal])* $name:ident { $(
        $(#[doc = $doc:literal])*
        $field:ident: $kind:ident $(<$of:ty>)? $(($($facts:expr),*))?, $label:literal;
    )* }) => {
        $(#[doc = $about])*
        #[derive(Clone, Debug, Default, PartialEq)]
        pub struct $name {
            $(
                $(#[doc = $doc])*
                pub $field: Entry<<$kind $(<$of>)? as Holds>::Held>,
            )*
            /// Fields that this version does not know.
            pub unknown: Map<String, Value>,
        }

        impl $name {
            $(
                pub(crate) fn $field(&self) -> Field<'_, $kind $(<$of>)?> {
                    let kind = $kind $(::<$of>)? $(($($facts),*))?;
                    Field { name: const { in_file(stringify!($field)) }, kind, entry: &self.$field }
                }
            )*
        }

        impl Rows for $name {
            fn visit(&self, at: &Path, visitor: &mut impl Visitor) {
                $(Kind::visit(self.$field(), at, visitor);)*
            }
        }

        #[cfg(feature = "schema")]
        impl Listed for $name {
            const NAME: &str = stringify!($name);

            fn rows() -> Vec<Row> {
                vec![$(Row {
                    name: in_file(stringify!($field)),
                    label: $label,
                    about: concat!($($doc),*).trim(),
                    takes: ($kind $(::<$of>)? $(($($facts),*))?).takes(),
                }),*]
            }
        }

        #[cfg(feature = "schema")]
        impl schemars::JsonSchema for $name {
            fn schema_name() -> std::borrow::Cow<'static, str> {
                stringify!($name).into()
            }

            fn json_schema(generator: &mut schemars::SchemaGenerator) -> schemars::Schema {
                rows::schema(generator, concat!($($about),*).trim(), &Self::rows())
            }
        }

        impl Expected for $name {
            fn from_value(value: Value) -> Result<Self, Value> {
                let mut read = Self::default();
                read.unknown = filled(const { &[$(in_file(stringify!($field))),*] }, &mut read, value)?;
                Ok(read)
            }
        }

        impl Slots for $name {
            fn slot(&mut self, place: usize) -> Option<&mut dyn Slot> {
                #[expect(non_camel_case_types, reason = "each is called as its field is")]
                enum Place { $($field),* }
                match place {
                    $(place if place == Place::$field as usize => Some(&mut self.$field),)*
                    _ => None,
                }
            }
        }

        impl Serialize for $name {
            fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
                let mut object = serializer.serialize_map(None)?;
                $(
                    if !self.$field.is_absent() {
                        object.serialize_entry(const { in_file(stringify!($field)) }, &self.$field)?;
                    }
                )*
                for (field, value) in &self.unknown {
                    object.serialize_entry(field, value)?;
                }
                object.end()
            }
        }

        /// Takes any object, as a file does.
        #[cfg(feature = "serde")]
        impl<'de> serde::Deserialize<'de> for $name {
            fn deserialize<D: serde::Deserializer<'de>>(from: D) -> Result<Self, D::Error> {
                Self::from_value(Value::deserialize(from)?)
                    .map_err(|_| serde::de::Error::custom("an object was expected"))
            }
        }
    };
}

/// What holds a slot for each of some names, by their places. A list of the slots themselves would be
/// written out for each object, field by field.
trait Slots {
    fn slot(&mut self, place: usize) -> Option<&mut dyn Slot>;
}

/// Puts what an object holds into the slots of these names; gives what is left over, or the value back
/// where it is no object.
fn filled(
    names: &[&str],
    slots: &mut dyn Slots,
    value: Value,
) -> Result<Map<String, Value>, Value> {
    let Value::Object(object) = value else { return Err(value) };
    let mut unknown = Map::new();
    for (name, value) in object {
        let place = names.iter().position(|known| *known == name);
        match place.and_then(|place| slots.slot(place)) {
            Some(slot) => slot.put(value),
            None => {
                unknown.insert(name, value);
            }
        }
    }
    Ok(unknown)
}

object! {
    /// A bench record: what somebody wrote while a truck stood apart.
    Job {
        /// `coilnest-job/1`.
        format: Plain, "Format";
        /// What the job is called.
        title: Plain, "Title";
        /// `inch` or `metric`: how bare numbers are read and figures shown.
        system: Word<System>(choices::SYSTEMS), "Units";
        /// Who, where, when.
        record: Object<Record>, "Who, where, when";
        /// What was measured with.
        tape: Object<TapeUsed>, "Tape";
        /// How sure a verdict has to be, `95 %` by default.
        decision_level: Amount<Share>(&bounds::LEVEL), "Sure means at least";
        /// The drawings: what each kind of coil should be.
        coils: Many<Object<Drawing>>(Object), "Drawings";
        /// The nests, each with the coils that are there.
        nests: Many<Object<NestEntry>>(Object), "Nests";
        /// The frame that stands on the nests.
        frame: Object<Frame>, "Frame";
        /// Coils on the bench that have no seat yet.
        bench: Many<Object<BenchCoil>>(Object), "Coils on the bench";
        /// Coils that do not go back, and why.
        set_aside: Many<Object<AsideCoil>>(Object), "Set aside";
        /// Whether a coil that is too close to call may be put into a seat: `yes`; without it none is.
        use_too_close: Word<Use>(choices::USES), "Coils that are too close to call";
        /// What is to be replaced, and what may replace it.
        replace: Object<Replace>, "Replacement";
        /// What a coil yet to be drawn is needed for.
        need: Object<Need>, "Need";
        /// An earlier job of the same vehicle, to be compared with this one.
        earlier: Whole, "Earlier job";
    }
}

object! {
    /// Who measured what, where and when.
    Record {
        /// Vehicle or machine.
        vehicle: Plain, "Vehicle";
        /// Its number.
        number: Plain, "Number";
        /// Place.
        place: Plain, "Place";
        /// Date, as 2026-05-02.
        date: Date, "Date";
        /// Who measured.
        by: Plain, "Measured by";
        /// Who checked it.
        checked_by: Plain, "Checked by";
        /// The manual that was gone by, and the page.
        manual: Plain, "Manual, page";
        /// Which tape was used.
        tape: Plain, "Which tape";
        /// Anything else.
        notes: Plain, "Notes";
        /// What was photographed.
        photographs: Many<Object<Photograph>>(Object), "Photographs";
    }
}

object! {
    /// A photograph that belongs to a job.
    Photograph {
        /// The word by which it is kept.
        id: Plain, "Kept as";
        /// What it shows.
        about: Plain, "What it shows";
        /// The picture itself as a `data:` address; only in a file that goes elsewhere.
        image: Plain, "Picture";
    }
}

object! {
    /// What was measured with.
    TapeUsed {
        /// Distance between the tape's marks.
        graduation: Taped(&bounds::GRADUATION), "Graduation";
        /// Class of the tape, which says how far it may be wrong.
        class: OfTape, "Class of the tape";
        /// Half-width of the tape's error, instead of a class.
        error: Length(&bounds::TAPE_ERROR), "Its error, if you know it";
        /// Half-width of how far one place round a coil may stand off the coil's own height.
        ends_error: Length(&bounds::TAPE_ERROR), "One place may be off by";
    }
}

object! {
    /// What a kind of coil should be.
    Drawing {
        /// The word by which seats name it.
        id: Plain, "Word";
        /// Its name for people.
        name: Plain, "Name";
        /// Bar (wire) diameter.
        bar: Length(&bounds::BAR), "Bar";
        /// Outside diameter.
        outside: Length(&bounds::COIL_DIAMETER), "Outside";
        /// Mean diameter, instead.
        mean: Length(&bounds::COIL_DIAMETER), "Mean diameter";
        /// Inside diameter, instead.
        inside: Length(&bounds::COIL_DIAMETER), "Inside";
        /// Total turns, tip to tip.
        turns: Amount<Turns>(&bounds::TURNS), "Turns in all";
        /// Form of the ends.
        ends: Word<Option<Ends>>(choices::ENDS), "Ends";
        /// Turns that do not deflect, where the form of the ends does not say it well enough.
        dead_turns: DeadTurns(&bounds::DEAD_TURNS), "Dead turns";
        /// Turns that deflect, instead.
        active_turns: Amount<Turns>(&bounds::TURNS), "Active turns";
        /// `left` or `right`.
        hand: Word<Hand>(choices::HANDS), "Hand";
        /// Steel, by its word in the tables.
        steel: OfSteel, "Steel";
        /// Shear modulus, over the steel's.
        shear_modulus: Amount<Modulus>(&bounds::MODULUS), "Shear modulus";
        /// Young's modulus, over the steel's.
        youngs_modulus: Amount<Modulus>(&bounds::MODULUS), "Young’s modulus";
        /// `held` or `free` about the coil's axis.
        ends_turn: Word<EndsTurn>(choices::ENDS_TURN), "Ends about the axis";
        /// Rate from the book, over the drawing's.
        rate: Amount<SpringRate>(&bounds::RATE), "Rate in the book";
        /// Solid height from the book, over the drawing's.
        solid: Length(&bounds::SOLID_HEIGHT), "Solid in the book";
        /// Free height from the book.
        free: Length(&bounds::FREE_HEIGHT), "Free height";
        /// Limits on the free height.
        limits: Object<LimitsEntry>, "Limits";
        /// Loads at heights that its drawing or its maker states.
        loads: Many<Object<LoadEntry>>(Object), "Stated loads";
        /// Heights and loads on a press.
        press_test: Many<Object<PressPoint>>(Object), "Press test";
        /// How far its sizes may be off, or how well those of a sample are known.
        tolerances: Object<TolerancesEntry>, "Tolerances";
        /// What it works between.
        duty: Object<DutyEntry>, "Works between";
        /// How its ends are kept against buckling: `guided`, `one-pivoted`, `both-pivoted`, `sliding` or
        /// `one-free`.
        seating: Word<Seating>(choices::SEATINGS), "How its ends are kept";
        /// `yes` where it was pressed solid when it was made.
        set_removed: Word<Presetting>(choices::PRESETTINGS), "Set taken out by its maker";
        /// Of a candidate, requirements that it alone need not meet, by their codes, each with the reason.
        waived: ByName, "Waived";
    }
}

object! {
    /// A load that is stated at a height.
    LoadEntry {
        /// The height.
        height: Length(&bounds::HEIGHT), "Height";
        /// The load there.
        load: Amount<Force>(&bounds::LOAD), "Load there";
        /// How far it may be off, as `± 5 %` or `+200 -0 lb`.
        tolerance: AmountTolerance<Force>(&bounds::LOAD_TOLERANCE), "Load ±";
    }
}

object! {
    /// How far sizes may be off: either way by so much, or up and down apart, as `+1.5 -0`.
    TolerancesEntry {
        /// Of the bar.
        bar: LengthTolerance(&bounds::TOLERANCE), "Bar ±";
        /// Of the outside, mean or inside diameter that is given.
        diameter: LengthTolerance(&bounds::TOLERANCE), "Diameter ±";
        /// Of the turns in all.
        turns: AmountTolerance<Turns>(&bounds::TURNS_TOLERANCE), "Turns ±";
        /// Of the free height.
        free: LengthTolerance(&bounds::TOLERANCE), "Free height ±";
        /// Of the rate that is given.
        rate: AmountTolerance<SpringRate>(&bounds::RATE_TOLERANCE), "Rate in the book ±";
        /// Of the solid height that is given.
        solid: LengthTolerance(&bounds::TOLERANCE), "Solid in the book ±";
    }
}

object! {
    /// The two loads between which a coil works.
    DutyEntry {
        /// The lesser load.
        least: Amount<Force>(&bounds::LOAD), "Lesser load";
        /// The greater load.
        most: Amount<Force>(&bounds::LOAD), "Greater load";
        /// `peened` or `unpeened`.
        surface: Word<Surface>(choices::SURFACES), "Surface";
    }
}

object! {
    /// Limits on a free height: under and over the book figure, or least and most.
    LimitsEntry {
        /// How far under the book figure is allowed.
        under: Length(&bounds::LIMIT), "Under";
        /// How far over.
        over: Length(&bounds::LIMIT), "Over";
        /// The least allowed, instead.
        least: Length(&bounds::FREE_HEIGHT), "Least";
        /// The most allowed, instead.
        most: Length(&bounds::FREE_HEIGHT), "Most";
    }
}

object! {
    /// One reading on a press.
    PressPoint {
        /// Height.
        height: Length(&bounds::HEIGHT), "Height";
        /// Load.
        load: Amount<Force>(&bounds::LOAD), "Load";
        /// `loading` or `unloading`; the first where nothing is said.
        way: Word<Way>(choices::WAYS), "Read";
    }
}

object! {
    /// A nest as it stands in its corner.
    NestEntry {
        /// Its name.
        id: Plain, "Name";
        /// Height under its usual load.
        working_height: Length(&bounds::HEIGHT), "Working height";
        /// Its usual load, instead.
        working_load: Amount<Force>(&bounds::LOAD), "or working load";
        /// The coils that are there.
        seats: Many<Object<Seat>>(Object), "Coils";
        /// Heights or loads to be answered beside the working point; `solid` and `free` are words.
        ask: Many<HeightOrLoad>(HeightOrLoad), "Height or load";
        /// What lies over and under it: pads, plates, shims that stand in no other field.
        stack: Unread<Object<LayerEntry>>(Object), "Pads, plates and shims";
        /// Its height from the lower seat to the frame, shims and all, taped when the truck stood again.
        standing: Taped(&bounds::HEIGHT), "Standing height";
        /// Its boxes in their guides.
        guides: Unread<Object<GuideEntry>>(Object), "Boxes in their guides";
    }
}

object! {
    /// A pad, plate or shim over or under a nest.
    LayerEntry {
        /// What it is.
        name: Plain, "Layer";
        /// `above` or `below` the nest.
        at: Word<bool>(choices::LAYER_PLACES), "Where";
        /// Its thickness without load.
        thickness: Length(&bounds::LAYER), "Thickness";
        /// Its thickness when it was new.
        when_new: Length(&bounds::LAYER), "When new";
        /// `yes` where it is missing.
        missing: Word<bool>(choices::MISSING), "Missing";
        /// Load per length by which it is squeezed; none of what does not give.
        squeeze: Amount<SpringRate>(&bounds::RATE), "Squeeze";
    }
}

object! {
    /// A box in its guides. Each size is measured at one to three heights, top to bottom.
    GuideEntry {
        /// What the box is called.
        name: Plain, "Box";
        /// `yes` where the guides keep it across the frame, and not along.
        across: Word<bool>(choices::WAYS_OF_GUIDES), "Which way it is kept";
        /// The opening between the guides, without liners.
        opening: Many<Taped>(Taped(&bounds::OPENING)), "Opening";
        /// The width of the box.
        r#box: Many<Taped>(Taped(&bounds::BOX_WIDTH)), "Width of the box";
        /// The liners of the one side and of the other.
        liners: Many<Many<Taped>>(Many(Taped(&bounds::LINER))), "Liners";
        /// The least clearance in all that the manual allows.
        least: Length(&bounds::CLEARANCE), "Least clearance";
        /// The greatest.
        most: Length(&bounds::CLEARANCE), "Most clearance";
        /// Thicknesses of liner at hand.
        stock: Many<Taped>(Taped(&bounds::LINER)), "Liner at hand";
        /// Distance between the marks of what it was measured with, where that is not the job's tape.
        graduation: Length(&bounds::GRADUATION), "Marks of the gauge";
        /// Half-width of its error; one mark where only the marks are given.
        error: Length(&bounds::TAPE_ERROR), "Its error";
    }
}

object! {
    /// A coil that is there.
    Seat {
        /// Which drawing it should be.
        coil: Plain, "Which coil this is";
        /// The mark painted on it.
        label: Plain, "Label";
        /// What the tape said at each place round the coil.
        readings: Many<Taped>(Taped(&bounds::READING)), "Place";
        /// What it looks like: `sound`, `cracked`, `pitted`, `broken`, or another word.
        condition: Condition, "Condition";
        /// A reading that was questioned, and is so when read again.
        confirmed: Length(&bounds::READING), "Confirmed";
        /// How far its seat is raised, or sunk when negative.
        raise: Length(&bounds::RAISE), "Raised by";
        /// A word that it shares with the coils from which it may not part.
        pair: Plain, "Pair";
        /// The coil that was found here, where another is fitted now.
        found: Object<FoundCoil>, "Found here";
    }
}

object! {
    /// The coil that was found in a seat before another was fitted.
    FoundCoil {
        /// The mark painted on it.
        label: Plain, "Label";
        /// What the tape said at each place round the coil.
        readings: Many<Taped>(Taped(&bounds::READING)), "Place";
        /// What it looks like: `sound`, `cracked`, `pitted`, `broken`, or another word.
        condition: Condition, "Condition";
        /// A reading that was questioned, and is so when read again.
        confirmed: Length(&bounds::READING), "Confirmed";
    }
}

object! {
    /// The frame that stands on the nests.
    Frame {
        /// Weight on the nests.
        weight: Amount<Force>(&bounds::LOAD), "Weight on the nests";
        /// Where the weight acts.
        centre: Object<Centre>, "Its centre";
        /// Several weights, as light and loaded. `weight` and `centre` stand for those of the first where
        /// it has none of its own.
        weights: Unread<Object<LoadCase>>(Object), "Weights";
        /// Points of it whose height counts, as couplers and buffers.
        points: Unread<Object<FramePoint>>(Object), "Points of the frame";
        /// Stiffness against twist; rigid when empty.
        warp_stiffness: Amount<WarpStiffness>(&bounds::WARP_STIFFNESS), "Stiffness against twist";
        /// Where each nest stands.
        supports: Many<Object<Support>>(Object), "Where the nests stand";
        /// How far apart four nests stand, instead of a place of each.
        apart: Object<Apart>, "How far apart they stand";
        /// Stiffness of a nest that is solid.
        stop_stiffness: Amount<SpringRate>(&bounds::RATE), "Stiffness of a solid nest";
        /// Thicknesses of shim at hand.
        shim_stock: Many<Length>(Length(&bounds::SHIM)), "In stock";
        /// The most shim that may go under one nest.
        largest_stack: Length(&bounds::SHIM), "Largest stack";
        /// What shims are to even out: `loads` or `level`; the first where nothing is said.
        shims_for: Word<Aim>(choices::AIMS), "Shims are to give";
        /// Equalizer beams between nests and boxes.
        beams: Many<Object<Beam>>(Object), "Beams";
        /// Distance between the wheels of an axle, from contact to contact.
        wheels_apart: Length(&bounds::POSITION), "Wheels of an axle apart";
    }
}

object! {
    /// One of several weights of a frame.
    LoadCase {
        /// What it is called.
        name: Plain, "Called";
        /// Weight on the nests.
        weight: Amount<Force>(&bounds::LOAD), "Weight on the nests";
        /// Where it acts.
        centre: Object<Centre>, "Its centre";
        /// Heights that were taped under it.
        standing: Many<Object<StandingEntry>>(Object), "Standing heights";
    }
}

object! {
    /// A height that was taped under one of several weights.
    StandingEntry {
        /// At which nest, or at which point of the frame.
        at: Plain, "Nest or point";
        /// From the lower seat to the frame, or of the point.
        height: Taped(&bounds::HEIGHT), "Standing height";
    }
}

object! {
    /// A point of the frame whose height counts.
    FramePoint {
        /// What it is.
        name: Plain, "Point";
        /// Towards the A end.
        along: Length(&bounds::POSITION), "Along";
        /// To the left, looking from B to A.
        across: Length(&bounds::POSITION), "Across";
        /// From the rail, or wherever its height is taped from, up to the lower seats, and from the frame up
        /// to the point.
        added: Length(&bounds::ADDED), "To be added";
        /// The least height that the manual allows.
        least: Length(&bounds::HEIGHT), "Least height";
        /// The greatest.
        most: Length(&bounds::HEIGHT), "Most height";
        /// Its height as taped when the truck stood again.
        standing: Taped(&bounds::HEIGHT), "Standing height";
    }
}

object! {
    /// Where the weight acts.
    Centre {
        /// Towards the A end.
        along: Length(&bounds::POSITION), "Its centre, along";
        /// To the left, looking from B to A.
        across: Length(&bounds::POSITION), "Its centre, across";
    }
}

object! {
    /// How far apart the middles of four nests stand: the first two at one end, left and right, the others
    /// in the same order behind them.
    Apart {
        /// From the first nest to the third.
        along: Length(&bounds::APART), "Nests apart, along";
        /// From the first nest to the second.
        across: Length(&bounds::APART), "Nests apart, across";
    }
}

object! {
    /// Where a nest stands.
    Support {
        /// Which nest.
        nest: Plain, "Nest";
        /// Towards the A end.
        along: Length(&bounds::POSITION), "Along";
        /// To the left, looking from B to A.
        across: Length(&bounds::POSITION), "Across";
        /// Shim under it.
        shim: Length(&bounds::SHIM), "Shim";
        /// How far its lower seat is raised.
        ground: Length(&bounds::GROUND), "Ground";
        /// `no` where its shims have to stay as they are.
        shimmable: Word<bool>(choices::SHIMMABLE), "May be shimmed";
    }
}

object! {
    /// A beam on two boxes, with nests on it.
    Beam {
        /// Its name.
        name: Plain, "Name";
        /// The nests on it.
        nests: Many<Plain>(Plain), "Nests on it";
        /// Where its two boxes are, towards the A end.
        boxes: Many<Length>(Length(&bounds::POSITION)), "Box, along";
    }
}

object! {
    /// A coil on the bench.
    BenchCoil {
        /// The mark painted on it.
        label: Plain, "Label";
        /// Which drawing it should be.
        coil: Plain, "Which coil";
        /// What the tape said at each place round the coil.
        readings: Many<Taped>(Taped(&bounds::READING)), "Place";
        /// What it looks like: `sound`, `cracked`, `pitted`, `broken`, or another word.
        condition: Condition, "Condition";
        /// A reading that was questioned, and is so when read again.
        confirmed: Length(&bounds::READING), "Confirmed";
        /// A word that it shares with the coils from which it may not part.
        pair: Plain, "Pair";
    }
}

object! {
    /// A coil that does not go back.
    AsideCoil {
        /// The mark painted on it.
        label: Plain, "Label";
        /// Which drawing it should be.
        coil: Plain, "Which coil";
        /// What the tape said at each place round the coil.
        readings: Many<Taped>(Taped(&bounds::READING)), "Place";
        /// What it looks like: `sound`, `cracked`, `pitted`, `broken`, or another word.
        condition: Condition, "Condition";
        /// A reading that was questioned, and is so when read again.
        confirmed: Length(&bounds::READING), "Confirmed";
        /// Why it was set aside.
        reason: Plain, "Why";
    }
}

object! {
    /// A coil to be replaced, and the springs that may replace it.
    Replace {
        /// Which drawing is to be replaced.
        original: Plain, "Original";
        /// In which nest it stands; the first that holds it where none is named.
        nest: Plain, "In which nest";
        /// Which seat of that nest alone is meant, counted from 1; all seats that hold it where none is
        /// named.
        seat: Count(&bounds::COUNT), "Which seats";
        /// `yes` where the candidates are one nest for the whole nest, each in its place, and so for every
        /// nest of the same coils; `this-nest` where only the one that is named is replaced.
        together: Word<Option<Reach>>(choices::REACHES), "They are judged";
        /// The springs that may replace it.
        candidates: Many<Object<Drawing>>(Object), "Candidates";
        /// Requirements that no candidate need meet, by their codes, each with the reason. What one of
        /// them alone need not meet stands in its own `waived`.
        waived: ByName, "Waived";
        /// What is asked of them; what is left out follows from the original.
        asked: Object<Asked>, "What is asked";
        /// What no drawing says and a spring maker has to know.
        order: Object<OrderTexts>, "Order";
    }
}

object! {
    /// What is asked of a replacement.
    Asked {
        /// Bore of the pocket.
        pocket: Length(&bounds::POCKET), "Bore of the pocket";
        /// Thickness of the post.
        post: Length(&bounds::POST), "Post inside";
        /// Room to be left in the pocket and over the post, on the diameter.
        play: Length(&bounds::CLEARANCE), "Play on the diameter";
        /// Radial gap to be left to each neighbour.
        gap: Length(&bounds::CLEARANCE), "Gap to each neighbour";
        /// The least free height.
        free_least: Length(&bounds::FREE_HEIGHT), "Free height, least";
        /// The greatest free height.
        free_most: Length(&bounds::FREE_HEIGHT), "Free height, most";
        /// The least rate.
        rate_least: Amount<SpringRate>(&bounds::RATE), "Rate, least";
        /// The greatest rate.
        rate_most: Amount<SpringRate>(&bounds::RATE), "Rate, most";
        /// Height at work; the nest's where none is given.
        height: Length(&bounds::HEIGHT), "Height at work";
        /// The least load at that height.
        load_least: Amount<Force>(&bounds::LOAD), "Load at that height, least";
        /// The greatest load at that height.
        load_most: Amount<Force>(&bounds::LOAD), "Load at that height, most";
        /// The greatest solid height.
        solid: Length(&bounds::SOLID_HEIGHT), "Solid height, most";
        /// The greatest stress at work.
        stress: Amount<Stress>(&bounds::STRESS), "Stress at work, most";
        /// The greatest stress at solid.
        stress_solid: Amount<Stress>(&bounds::STRESS), "Stress at solid, most";
        /// Which stress the two are meant for: `uncorrected`, `bergstrasser` or `wahl`; the last unless
        /// said, which is the greatest.
        stress_factor: Word<Against>(choices::STRESS_FACTORS), "Both stresses are";
        /// What must be left between the height at work and solid.
        reserve: Length(&bounds::RESERVE), "Left before solid, least";
        /// The least factor of safety between two loads.
        safety: Amount<Turns>(&bounds::SAFETY), "Factor of safety, least";
        /// By how much a load under the frame may differ from the mean.
        deviation: Amount<Share>(&bounds::WITHIN), "Loads off the mean, most";
    }
}

object! {
    /// What a coil yet to be drawn is needed for.
    Need {
        /// A load.
        load: Amount<Force>(&bounds::LOAD), "Load";
        /// The height at which it is carried.
        height: Length(&bounds::HEIGHT), "at the height";
        /// The rate.
        rate: Amount<SpringRate>(&bounds::RATE), "Rate";
        /// A second load, instead.
        second_load: Amount<Force>(&bounds::LOAD), "or a second load";
        /// The height at which that is carried.
        second_height: Length(&bounds::HEIGHT), "at its height";
        /// By how much loads and rate may be off; 5 % where nothing is said.
        within: Amount<Share>(&bounds::WITHIN), "Within";
        /// Bore of the pocket.
        pocket: Length(&bounds::POCKET), "Bore of the pocket";
        /// Thickness of the post.
        post: Length(&bounds::POST), "Post inside";
        /// Radial clearance in the pocket, over the post, and between two coils; half the difference of
        /// the bars between two coils where none is given.
        clearance: Length(&bounds::CLEARANCE), "Clearance all round";
        /// The greatest solid height.
        solid: Length(&bounds::SOLID_HEIGHT), "Solid height, most";
        /// The greatest free height.
        free: Length(&bounds::FREE_HEIGHT), "Free height, most";
        /// Steel, by its word in the tables.
        steel: OfSteel, "Steel it is made of";
        /// Form of the ends.
        ends: Word<Ends>(choices::NEED_ENDS), "Ends it is to have";
        /// The greatest stress under the load, over the steel's.
        stress: Amount<Stress>(&bounds::STRESS), "Stress at load";
        /// The greatest stress at solid, over the steel's.
        stress_solid: Amount<Stress>(&bounds::STRESS), "Stress at solid";
        /// Which stress the two are meant for: `uncorrected`, `bergstrasser` or `wahl`; the last unless
        /// said, which is the greatest.
        stress_factor: Word<Against>(choices::STRESS_FACTORS), "Both stresses are";
        /// Bars to choose from; those of the tables where none are given.
        bars: Many<Length>(Length(&bounds::BAR)), "Bar";
        /// `yes` for a coil inside another.
        pair: Word<bool>(choices::PAIRS), "One coil or a pair";
        /// What the best is: `mass` or `stress`; the first where nothing is said.
        rank: Word<Rank>(choices::RANKS), "Rank";
    }
}

object! {
    /// What no drawing says of an order.
    OrderTexts {
        /// How many.
        quantity: Count(&bounds::COUNT), "How many";
        /// The part number.
        part_number: Plain, "Part number";
        /// The number of a drawing.
        drawing: Plain, "Drawing";
        /// The revision of that drawing.
        revision: Plain, "Revision";
        /// What it is used for; the vehicle where nothing is said.
        end_use: Plain, "End use";
        /// The grade of tolerance, for what has no tolerance of its own.
        grade: Plain, "Grade of tolerance";
        /// The size that the maker may adjust, so that the others come out.
        adjustable: Plain, "Left to the maker";
        /// How it is to be shot peened.
        peening: Plain, "Shot peening";
        /// How its set is to be taken out.
        set_removal: Plain, "Set removal";
        /// Paint or another finish.
        finish: Plain, "Finish";
        /// The hardness, with its scale.
        hardness: Plain, "Hardness";
        /// The depth to which the steel may have lost its carbon, with its unit.
        decarburised: Plain, "Decarburised depth";
        /// How it is to be looked over for cracks.
        crack_test: Plain, "Crack test";
        /// How it is to be inspected.
        inspection: Plain, "Inspection";
        /// How it is to be tested.
        test: Plain, "Test";
        /// What paper is to come with it.
        certificate: Plain, "Certificate";
        /// How it is to be marked.
        marking: Plain, "Marking";
        /// How it is to be packed and loaded.
        packaging: Plain, "Packaging, loading";
    }
}
