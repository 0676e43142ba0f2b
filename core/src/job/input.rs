//! A job as it is saved: every quantity is the text that somebody wrote.
//!
//! Nearly every field may be missing, any field may hold something else than expected, and fields
//! that this version does not know are kept.

use super::entry::{Entry, Expected, List, Slot, Text, Texts};
use serde::ser::{Serialize, SerializeMap, Serializer};
use serde_json::{Map, Value};

/// What the `format` of a job file says.
pub const FORMAT: &str = "coilnest-job/1";

/// One struct of a job: every field an entry, and whatever else the file holds.
macro_rules! object {
    ($(#[doc = $about:literal])* $name:ident { $($(#[doc = $doc:literal])* $field:ident: $kind:ty,)* }) => {
        $(#[doc = $about])*
        #[derive(Clone, Debug, Default, PartialEq)]
        #[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
        #[cfg_attr(feature = "schema", schemars(default))]
        pub struct $name {
            $(
                $(#[doc = $doc])*
                #[cfg_attr(feature = "schema", schemars(skip_serializing_if = "Entry::is_absent"))]
                pub $field: $kind,
            )*
            /// Fields that this version does not know.
            #[cfg_attr(feature = "schema", schemars(flatten))]
            pub unknown: Map<String, Value>,
        }

        impl Expected for $name {
            fn from_value(value: Value) -> Result<Self, Value> {
                let mut read = Self::default();
                let unknown = filled(&mut [$((stringify!($field), &mut read.$field)),*], value)?;
                read.unknown = unknown;
                Ok(read)
            }
        }

        impl Serialize for $name {
            fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
                let mut object = serializer.serialize_map(None)?;
                $(
                    if !self.$field.is_absent() {
                        object.serialize_entry(stringify!($field), &self.$field)?;
                    }
                )*
                for (field, value) in &self.unknown {
                    object.serialize_entry(field, value)?;
                }
                object.end()
            }
        }
    };
}

/// Puts what an object holds into the fields of their names; gives what is left over, or the value back
/// where it is no object.
fn filled(fields: &mut [(&str, &mut dyn Slot)], value: Value) -> Result<Map<String, Value>, Value> {
    let Value::Object(object) = value else { return Err(value) };
    let mut unknown = Map::new();
    for (name, value) in object {
        match fields.iter_mut().find(|(field, _)| *field == name) {
            Some((_, slot)) => slot.put(value),
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
        format: Entry<Text>,
        /// What the job is called.
        title: Entry<Text>,
        /// `inch` or `metric`: how bare numbers are read and figures shown.
        system: Entry<Text>,
        /// Who, where, when.
        record: Entry<Record>,
        /// What was measured with.
        tape: Entry<TapeUsed>,
        /// How sure a verdict has to be, `95 %` by default.
        decision_level: Entry<Text>,
        /// The drawings: what each kind of coil should be.
        coils: Entry<List<Drawing>>,
        /// The nests, each with the coils that are there.
        nests: Entry<List<NestEntry>>,
        /// The frame that stands on the nests.
        frame: Entry<Frame>,
        /// Coils on the bench that have no seat yet.
        bench: Entry<List<BenchCoil>>,
        /// Whether a coil that is too close to call may be put into a seat: `yes`; without it none is.
        use_too_close: Entry<Text>,
        /// What is to be replaced, and what may replace it.
        replace: Entry<Replace>,
        /// What a coil yet to be drawn is needed for.
        need: Entry<Need>,
    }
}

object! {
    /// Who measured what, where and when.
    Record {
        /// Vehicle or machine.
        vehicle: Entry<Text>,
        /// Place.
        place: Entry<Text>,
        /// Who measured.
        by: Entry<Text>,
        /// Date, as 2026-05-02.
        date: Entry<Text>,
        /// Anything else.
        notes: Entry<Text>,
    }
}

object! {
    /// What was measured with.
    TapeUsed {
        /// Distance between the tape's marks.
        graduation: Entry<Text>,
        /// Class of the tape, which says how far it may be wrong.
        class: Entry<Text>,
        /// Half-width of the tape's error, instead of a class.
        error: Entry<Text>,
        /// Half-width of how far one place round a coil may stand off the coil's own height.
        ends_error: Entry<Text>,
    }
}

object! {
    /// What a kind of coil should be.
    Drawing {
        /// The word by which seats name it.
        id: Entry<Text>,
        /// Its name for people.
        name: Entry<Text>,
        /// Bar (wire) diameter.
        bar: Entry<Text>,
        /// Outside diameter.
        outside: Entry<Text>,
        /// Mean diameter, instead.
        mean: Entry<Text>,
        /// Inside diameter, instead.
        inside: Entry<Text>,
        /// Total turns, tip to tip.
        turns: Entry<Text>,
        /// Form of the ends.
        ends: Entry<Text>,
        /// Turns that do not deflect, where the form of the ends does not say it well enough.
        dead_turns: Entry<Text>,
        /// Turns that deflect, instead.
        active_turns: Entry<Text>,
        /// `left` or `right`.
        hand: Entry<Text>,
        /// Steel, by its word in the tables.
        steel: Entry<Text>,
        /// Shear modulus, over the steel's.
        shear_modulus: Entry<Text>,
        /// Young's modulus, over the steel's.
        youngs_modulus: Entry<Text>,
        /// `held` or `free` about the coil's axis.
        ends_turn: Entry<Text>,
        /// Rate from the book, over the drawing's.
        rate: Entry<Text>,
        /// Solid height from the book, over the drawing's.
        solid: Entry<Text>,
        /// Free height from the book.
        free: Entry<Text>,
        /// Limits on the free height.
        limits: Entry<LimitsEntry>,
        /// Loads at heights that its drawing or its maker states.
        loads: Entry<List<LoadEntry>>,
        /// Heights and loads on a press.
        press_test: Entry<List<PressPoint>>,
        /// How far its sizes may be off, or how well those of a sample are known.
        tolerances: Entry<TolerancesEntry>,
        /// What it works between.
        duty: Entry<DutyEntry>,
        /// How its ends are kept against buckling: `guided`, `one-pivoted`, `both-pivoted`, `sliding` or
        /// `one-free`.
        seating: Entry<Text>,
        /// `yes` where it was pressed solid when it was made.
        set_removed: Entry<Text>,
        /// Of a candidate, requirements that it alone need not meet, by their codes, each with the reason.
        waived: Entry<Texts>,
    }
}

object! {
    /// A load that is stated at a height.
    LoadEntry {
        /// The height.
        height: Entry<Text>,
        /// The load there.
        load: Entry<Text>,
        /// How far it may be off, as `± 5 %` or `+200 -0 lb`.
        tolerance: Entry<Text>,
    }
}

object! {
    /// How far sizes may be off: either way by so much, or up and down apart, as `+1.5 -0`.
    TolerancesEntry {
        /// Of the bar.
        bar: Entry<Text>,
        /// Of the outside, mean or inside diameter that is given.
        diameter: Entry<Text>,
        /// Of the turns in all.
        turns: Entry<Text>,
        /// Of the free height.
        free: Entry<Text>,
        /// Of the rate that is given.
        rate: Entry<Text>,
        /// Of the solid height that is given.
        solid: Entry<Text>,
    }
}

object! {
    /// The two loads between which a coil works.
    DutyEntry {
        /// The lesser load.
        least: Entry<Text>,
        /// The greater load.
        most: Entry<Text>,
        /// `peened` or `unpeened`.
        surface: Entry<Text>,
    }
}

object! {
    /// Limits on a free height: under and over the book figure, or least and most.
    LimitsEntry {
        /// How far under the book figure is allowed.
        under: Entry<Text>,
        /// How far over.
        over: Entry<Text>,
        /// The least allowed, instead.
        least: Entry<Text>,
        /// The most allowed, instead.
        most: Entry<Text>,
    }
}

object! {
    /// One reading on a press.
    PressPoint {
        /// Height.
        height: Entry<Text>,
        /// Load.
        load: Entry<Text>,
        /// `loading`, unless told, or `unloading`.
        way: Entry<Text>,
    }
}

object! {
    /// A nest as it stands in its corner.
    NestEntry {
        /// Its name.
        id: Entry<Text>,
        /// Height under its usual load.
        working_height: Entry<Text>,
        /// Its usual load, instead.
        working_load: Entry<Text>,
        /// The coils that are there.
        seats: Entry<List<Seat>>,
        /// Heights or loads to be answered beside the working point; `solid` and `free` are words.
        ask: Entry<List<Text>>,
    }
}

object! {
    /// A coil that is there.
    Seat {
        /// Which drawing it should be.
        coil: Entry<Text>,
        /// The mark painted on it.
        label: Entry<Text>,
        /// What the tape said at each place round the coil.
        readings: Entry<List<Text>>,
        /// What it looks like: `sound`, `cracked`, `pitted`, `broken`, or another word.
        condition: Entry<Text>,
        /// A reading that was questioned, and is so when read again.
        confirmed: Entry<Text>,
        /// How far its seat is raised, or sunk when negative.
        raise: Entry<Text>,
        /// A word that it shares with the coils from which it may not part.
        pair: Entry<Text>,
    }
}

object! {
    /// The frame that stands on the nests.
    Frame {
        /// Weight on the nests.
        weight: Entry<Text>,
        /// Where the weight acts.
        centre: Entry<Centre>,
        /// Stiffness against twist; rigid when empty.
        warp_stiffness: Entry<Text>,
        /// Where each nest stands.
        supports: Entry<List<Support>>,
        /// Stiffness of a nest that is solid.
        stop_stiffness: Entry<Text>,
        /// Thicknesses of shim at hand.
        shim_stock: Entry<List<Text>>,
        /// The most shim that may go under one nest.
        largest_stack: Entry<Text>,
        /// What shims are to even out: `loads`, unless told, or `level`.
        shims_for: Entry<Text>,
        /// Equalizer beams between nests and boxes.
        beams: Entry<List<Beam>>,
        /// Distance between the wheels of an axle, from contact to contact.
        wheels_apart: Entry<Text>,
    }
}

object! {
    /// Where the weight acts.
    Centre {
        /// Towards the A end.
        along: Entry<Text>,
        /// To the left, looking from B to A.
        across: Entry<Text>,
    }
}

object! {
    /// Where a nest stands.
    Support {
        /// Which nest.
        nest: Entry<Text>,
        /// Towards the A end.
        along: Entry<Text>,
        /// To the left, looking from B to A.
        across: Entry<Text>,
        /// Shim under it.
        shim: Entry<Text>,
        /// How far its lower seat is raised.
        ground: Entry<Text>,
        /// `no` where its shims have to stay as they are.
        shimmable: Entry<Text>,
    }
}

object! {
    /// A beam on two boxes, with nests on it.
    Beam {
        /// Its name.
        name: Entry<Text>,
        /// The nests on it.
        nests: Entry<List<Text>>,
        /// Where its two boxes are, towards the A end.
        boxes: Entry<List<Text>>,
    }
}

object! {
    /// A coil on the bench.
    BenchCoil {
        /// The mark painted on it.
        label: Entry<Text>,
        /// Which drawing it should be.
        coil: Entry<Text>,
        /// What the tape said at each place round the coil.
        readings: Entry<List<Text>>,
        /// What it looks like: `sound`, `cracked`, `pitted`, `broken`, or another word.
        condition: Entry<Text>,
        /// A reading that was questioned, and is so when read again.
        confirmed: Entry<Text>,
        /// A word that it shares with the coils from which it may not part.
        pair: Entry<Text>,
    }
}

object! {
    /// A coil to be replaced, and the springs that may replace it.
    Replace {
        /// Which drawing is to be replaced.
        original: Entry<Text>,
        /// In which nest it stands; the first that holds it where none is named.
        nest: Entry<Text>,
        /// Which seat of that nest alone is meant, counted from 1; all seats that hold it where none is
        /// named.
        seat: Entry<Text>,
        /// `yes` where the candidates are one nest for the whole nest, each in its place, and so for every
        /// nest of the same coils; `this-nest` where only the one that is named is replaced.
        together: Entry<Text>,
        /// The springs that may replace it.
        candidates: Entry<List<Drawing>>,
        /// Requirements that no candidate need meet, by their codes, each with the reason. What one of
        /// them alone need not meet stands in its own `waived`.
        waived: Entry<Texts>,
        /// What is asked of them; what is left out follows from the original.
        asked: Entry<Asked>,
        /// What no drawing says and a spring maker has to know.
        order: Entry<OrderTexts>,
    }
}

object! {
    /// What is asked of a replacement.
    Asked {
        /// Bore of the pocket.
        pocket: Entry<Text>,
        /// Thickness of the post.
        post: Entry<Text>,
        /// Room to be left in the pocket and over the post, on the diameter.
        play: Entry<Text>,
        /// Radial gap to be left to each neighbour.
        gap: Entry<Text>,
        /// The least free height.
        free_least: Entry<Text>,
        /// The greatest free height.
        free_most: Entry<Text>,
        /// The least rate.
        rate_least: Entry<Text>,
        /// The greatest rate.
        rate_most: Entry<Text>,
        /// Height at work; the nest's where none is given.
        height: Entry<Text>,
        /// The least load at that height.
        load_least: Entry<Text>,
        /// The greatest load at that height.
        load_most: Entry<Text>,
        /// The greatest solid height.
        solid: Entry<Text>,
        /// The greatest stress at work.
        stress: Entry<Text>,
        /// The greatest stress at solid.
        stress_solid: Entry<Text>,
        /// Which stress the two are meant for: `uncorrected`, `bergstrasser` or `wahl`; the last unless
        /// said, which is the greatest.
        stress_factor: Entry<Text>,
        /// What must be left between the height at work and solid.
        reserve: Entry<Text>,
        /// The least factor of safety between two loads.
        safety: Entry<Text>,
        /// By how much a load under the frame may differ from the mean.
        deviation: Entry<Text>,
    }
}

object! {
    /// What a coil yet to be drawn is needed for.
    Need {
        /// A load.
        load: Entry<Text>,
        /// The height at which it is carried.
        height: Entry<Text>,
        /// The rate.
        rate: Entry<Text>,
        /// A second load, instead.
        second_load: Entry<Text>,
        /// The height at which that is carried.
        second_height: Entry<Text>,
        /// By how much loads and rate may be off; 5 % unless told.
        within: Entry<Text>,
        /// Bore of the pocket.
        pocket: Entry<Text>,
        /// Thickness of the post.
        post: Entry<Text>,
        /// Radial clearance in the pocket, over the post, and between two coils; half the difference of
        /// the bars between two coils where none is given.
        clearance: Entry<Text>,
        /// The greatest solid height.
        solid: Entry<Text>,
        /// The greatest free height.
        free: Entry<Text>,
        /// Steel, by its word in the tables.
        steel: Entry<Text>,
        /// Form of the ends.
        ends: Entry<Text>,
        /// The greatest stress under the load, over the steel's.
        stress: Entry<Text>,
        /// The greatest stress at solid, over the steel's.
        stress_solid: Entry<Text>,
        /// Which stress the two are meant for: `uncorrected`, `bergstrasser` or `wahl`; the last unless
        /// said, which is the greatest.
        stress_factor: Entry<Text>,
        /// Bars to choose from; those of the tables where none are given.
        bars: Entry<List<Text>>,
        /// `yes` for a coil inside another.
        pair: Entry<Text>,
        /// What the best is: `mass`, unless told, or `stress`.
        rank: Entry<Text>,
    }
}

/// What no drawing says of an order, each text by the name of its field.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct OrderTexts(pub Texts);

/// The fields of [`OrderTexts`], and what each says.
pub const ORDER: [(&str, &str); 18] = [
    ("quantity", "How many."),
    ("part_number", "The part number."),
    ("drawing", "The number of a drawing."),
    ("revision", "The revision of that drawing."),
    ("end_use", "What it is used for; the vehicle where nothing is said."),
    ("grade", "The grade of tolerance, for what has no tolerance of its own."),
    ("adjustable", "The size that the maker may adjust, so that the others come out."),
    ("peening", "How it is to be shot peened."),
    ("set_removal", "How its set is to be taken out."),
    ("finish", "Paint or another finish."),
    ("hardness", "The hardness, with its scale."),
    ("decarburised", "The depth to which the steel may have lost its carbon, with its unit."),
    ("crack_test", "How it is to be looked over for cracks."),
    ("inspection", "How it is to be inspected."),
    ("test", "How it is to be tested."),
    ("certificate", "What paper is to come with it."),
    ("marking", "How it is to be marked."),
    ("packaging", "How it is to be packed and loaded."),
];

impl Expected for OrderTexts {
    fn from_value(value: Value) -> Result<Self, Value> {
        Texts::from_value(value).map(Self)
    }
}

impl Serialize for OrderTexts {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        self.0.serialize(serializer)
    }
}

#[cfg(feature = "schema")]
impl schemars::JsonSchema for OrderTexts {
    fn schema_name() -> std::borrow::Cow<'static, str> {
        "OrderTexts".into()
    }

    fn json_schema(_: &mut schemars::SchemaGenerator) -> schemars::Schema {
        let fields: Map<String, Value> = ORDER
            .iter()
            .map(|(field, about)| {
                let text = serde_json::json!({ "type": "string", "description": about });
                ((*field).to_owned(), text)
            })
            .collect();
        schemars::json_schema!({
            "description": "What no drawing says of an order.",
            "type": "object",
            "properties": fields,
            "additionalProperties": true,
        })
    }
}
