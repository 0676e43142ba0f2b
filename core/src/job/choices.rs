//! The words that some fields of a job take: what each means, and its name for people.

use super::report::{Choice, Choices};
use crate::coil::buckling::Seating;
use crate::coil::ends::Ends;
use crate::coil::fatigue::Surface;
use crate::coil::{EndsTurn, Hand, solid};
use crate::frame::shims::Aim;
use crate::load_test::Way;
use crate::material::{Against, Presetting};
use crate::quantity::{Modulus, System, write, write_number};
use crate::sizing::Rank;
use crate::tables::Tables;

/// Whether coils that are too close to call are put into seats.
#[derive(Clone, Copy, PartialEq, Eq)]
pub enum Use {
    OnlyDecided,
    TooClose,
}

/// Which nests are replaced by one nest.
#[derive(Clone, Copy, PartialEq, Eq)]
pub enum Reach {
    /// Every nest of the same coils.
    Alike,
    /// The nest that is named.
    ThisNest,
}

macro_rules! words {
    ($($(#[$doc:meta])* $list:ident: $kind:ty { $($word:literal => $value:expr, $name:expr;)+ })+) => {
        $($(#[$doc])* pub(crate) static $list: &[(&str, $kind, &str)] = &[$(($word, $value, $name)),+];)+
    };
}

words! {
    SYSTEMS: System {
        "inch" => System::Inch, "Inches";
        "metric" => System::Metric, "Millimetres";
    }
    HANDS: Hand {
        "left" => Hand::Left, "Left hand";
        "right" => Hand::Right, "Right hand";
    }
    /// `given` leaves the dead turns to be given.
    ENDS: Option<Ends> {
        "tapered-ground" => Some(Ends::TaperedGround), ends_name(Ends::TaperedGround);
        "closed-ground" => Some(Ends::ClosedGround), ends_name(Ends::ClosedGround);
        "closed" => Some(Ends::Closed), ends_name(Ends::Closed);
        "open-ground" => Some(Ends::OpenGround), ends_name(Ends::OpenGround);
        "open" => Some(Ends::Open), ends_name(Ends::Open);
        "given" => None, "Other: dead turns and solid height given";
    }
    /// Which turns deflect cannot be chosen for ends of which nobody says how they lie.
    NEED_ENDS: Ends {
        "tapered-ground" => Ends::TaperedGround, ends_name(Ends::TaperedGround);
        "closed-ground" => Ends::ClosedGround, ends_name(Ends::ClosedGround);
        "closed" => Ends::Closed, ends_name(Ends::Closed);
        "open-ground" => Ends::OpenGround, ends_name(Ends::OpenGround);
        "open" => Ends::Open, ends_name(Ends::Open);
    }
    ENDS_TURN: EndsTurn {
        "held" => EndsTurn::Held, "Held";
        "free" => EndsTurn::Free, "Free to turn";
    }
    SEATINGS: Seating {
        "guided" => Seating::Guided, "Both squarely on plates that stay parallel";
        "one-pivoted" => Seating::OnePivoted, "One so, the other on a pivot";
        "both-pivoted" => Seating::BothPivoted, "Both on pivots";
        "sliding" => Seating::Sliding, "On parallel plates that may slide sideways";
        "one-free" => Seating::OneFree, "One fixed, the other free";
    }
    PRESETTINGS: Presetting {
        "yes" => Presetting::SetRemoved, "Yes: pressed solid when it was made";
        "no" => Presetting::AsWound, "No";
    }
    SURFACES: Surface {
        "peened" => Surface::Peened, "Shot-peened";
        "unpeened" => Surface::Unpeened, "Not peened";
    }
    WAYS: Way {
        "loading" => Way::Loading, "while it was pressed";
        "unloading" => Way::Unloading, "while it came back";
    }
    STRESS_FACTORS: Against {
        "uncorrected" => Against::Plain, "Uncorrected";
        "bergstrasser" => Against::Curvature, "With Bergsträsser’s factor";
        "wahl" => Against::Wahl, "With Wahl’s factor";
    }
    AIMS: Aim {
        "loads" => Aim::Loads, "Even loads";
        "level" => Aim::Corners, "A level frame";
    }
    WAYS_OF_GUIDES: bool {
        "no" => false, "Along";
        "yes" => true, "Across";
    }
    LAYER_PLACES: bool {
        "above" => true, "Over the nest";
        "below" => false, "Under the nest";
    }
    MISSING: bool {
        "yes" => true, "It is missing";
        "no" => false, "It is there";
    }
    SHIMMABLE: bool {
        "yes" => true, "Yes";
        "no" => false, "No: they stay";
    }
    USES: Use {
        "yes" => Use::TooClose, "may be put into seats";
        "no" => Use::OnlyDecided, "are set aside";
    }
    REACHES: Option<Reach> {
        "yes" => Some(Reach::Alike), "as one nest, in all nests of the same coils";
        "this-nest" => Some(Reach::ThisNest), "as one nest, in this nest alone";
        "no" => None, "each by itself";
    }
    PAIRS: bool {
        "yes" => true, "A coil inside another";
        "no" => false, "One coil";
    }
    RANKS: Rank {
        "mass" => Rank::Mass, "The lightest first";
        "stress" => Rank::Stress, "The least stressed first";
    }
}

/// Every list of words that a page offers and that hangs on the tables, each word with what it stands for, in the units
/// of `system`.
#[must_use]
pub fn choices(tables: &Tables<'_>, system: System) -> Choices {
    let form = |word: &'static str, ends: Option<Ends>, name: &'static str| {
        let note = ends.map(|ends| {
            let dead = write_number(ends.dead_turns(), 3);
            let (turns, solid) = (ends.source().cited(), solid::source(ends).cited());
            let many = if dead == "1" { "turn" } else { "turns" };
            format!("{dead} dead {many} ({turns}); solid height by {solid}")
        });
        Choice { id: word.into(), name: name.into(), note }
    };
    Choices {
        ends: ENDS.iter().map(|(word, ends, name)| form(word, *ends, name)).collect(),
        need_ends: NEED_ENDS
            .iter()
            .map(|(word, ends, name)| form(word, Some(*ends), name))
            .collect(),
        steels: tables
            .steels
            .iter()
            .map(|steel| {
                let shear = steel.shear_modulus();
                let modulus = write::<Modulus>(shear.value, system);
                let note = Some(format!("G = {modulus}; {}", shear.source.cited()));
                Choice { id: steel.id().into(), name: steel.name().into(), note }
            })
            .collect(),
        ..measure_choices(tables)
    }
}

/// Those of them that are offered where coils are measured.
#[must_use]
pub fn measure_choices(tables: &Tables<'_>) -> Choices {
    Choices {
        tape_classes: tables
            .tape_classes
            .iter()
            .map(|class| {
                let note = Some(class.source().cited());
                Choice { id: class.id().into(), name: class.name().into(), note }
            })
            .collect(),
        ..Choices::default()
    }
}

/// A form of ends as people call it.
pub(crate) const fn ends_name(ends: Ends) -> &'static str {
    match ends {
        Ends::Open => "Open",
        Ends::OpenGround => "Open and ground",
        Ends::Closed => "Closed",
        Ends::ClosedGround => "Closed and ground",
        Ends::TaperedGround => "Hot wound, tapered and ground",
    }
}
