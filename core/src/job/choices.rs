//! The words that some fields of a job take, with their names for people.

use super::coil::{ENDS, told_ends};
use super::report::{Choice, Choices};
use crate::coil::ends::Ends;
use crate::coil::solid;
use crate::quantity::{Modulus, System, write, write_number};
use crate::tables::Tables;

/// Every list of words that a page offers.
#[must_use]
pub fn choices(tables: &Tables<'_>) -> Choices {
    Choices {
        ends: ENDS.iter().map(|(word, ends)| ends_choice(word, *ends)).collect(),
        need_ends: told_ends().map(|(word, ends)| ends_choice(word, Some(ends))).collect(),
        steels: tables
            .steels
            .iter()
            .map(|steel| {
                let shear = steel.shear_modulus();
                let modulus = write::<Modulus>(shear.value, System::Metric);
                choice(steel.id(), steel.name(), Some(format!("G = {modulus}; {}", shear.source)))
            })
            .collect(),
        hands: vec![choice("right", "Right hand", None), choice("left", "Left hand", None)],
        ends_turn: vec![
            choice("held", "Held by their seats", None),
            choice("free", "Free to turn", None),
        ],
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
            .map(|class| choice(class.id(), class.name(), Some(class.source().to_string())))
            .collect(),
        conditions: vec![
            choice("sound", "Sound", None),
            choice("cracked", "Cracked", None),
            choice("pitted", "Pitted", None),
            choice("broken", "Broken", None),
        ],
        systems: vec![choice("inch", "Inches", None), choice("metric", "Millimetres", None)],
        ..Choices::default()
    }
}

fn choice(id: &'static str, name: &'static str, note: Option<String>) -> Choice {
    Choice { id, name, note }
}

fn ends_choice(word: &'static str, ends: Option<Ends>) -> Choice {
    let Some(ends) = ends else {
        return choice(word, "Other: dead turns and solid height given", None);
    };
    let name = ends_name(ends);
    let dead = write_number(ends.dead_turns(), 3);
    let note =
        format!("{dead} dead turns ({}); solid height by {}", ends.source(), solid::source(ends));
    choice(word, name, Some(note))
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
