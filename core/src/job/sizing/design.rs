//! A drawing that was found: its figures, and its texts as a job holds them.

use super::words;
use crate::coil::stress::Factor;
use crate::coil::{Hand, bar, rate, solid};
use crate::formula::{Formula, Value};
use crate::job::choices::NEED_ENDS;
use crate::job::desk::Desk;
use crate::job::drawing::{GEOMETRY, Pressed, as_given, show_stress, show_stress_at};
use crate::job::figures::{Pen, text};
use crate::job::formulas::{MASS_OF_ALL, OF_BOTH, OUTSIDE, TURNS_IN_ALL, letter};
use crate::job::input::Drawing as DrawingEntry;
use crate::job::report::{DesignReport, Figure, PairReport};
use crate::material::Steel;
use crate::quantity::{
    self, Force, Length, Mass, MassDensity, Modulus, SpringRate, System, Turns, unit,
};
use crate::reading::{self, Step};
use crate::sizing::{Allowed, Design, HANDS, MEAN, MEAN_SOURCE, Need, Pair, Verdict};
use crate::source::Source;
use std::fmt::Display;

/// What all drawings of a search have in common.
pub(super) struct Drawer<'a> {
    pub(super) need: &'a Need,
    pub(super) steel: Steel,
}

impl Drawer<'_> {
    pub(super) fn report(
        &self,
        desk: &mut Desk<'_>,
        design: &Design,
        verdict: &Verdict,
        hand: Option<Hand>,
    ) -> DesignReport {
        let pen = desk.pen;
        let Design { coil, turns, free, rate: found, solid: closed, pitch, .. } = *design;
        let (ends, metal) = (self.need.make.ends, &self.need.metal);
        let [d, mean, l0] = [coil.bar(), coil.mean(), free].map(|size| pen.decimal(size));
        let [n, nd, nt] = [turns.active(), turns.dead(), turns.total()].map(words::turns);
        let k = pen.say::<SpringRate>(found);
        let (least, solid::Stop { rule, .. }) = solid::stops(coil.bar(), turns, ends);
        let (load, height) = match self.need.work.height {
            Some(height) => (found * (free - height), height),
            None => (design.greatest_load, design.lowest),
        };
        let rounded = |from: Formula, source: &Source| text!("rounded, from {from}; {source}");
        let chosen = "chosen in the search";
        let size = as_given::<Length>(desk, pen.size(coil.bar()), letter!("d"), chosen);
        let source = rounded(MEAN, &MEAN_SOURCE);
        let mean_figure = as_given::<Length>(desk, pen.size(coil.mean()), letter!("D"), &source);
        let source = rounded(rate::FREE, &rate::SOURCE);
        let height_free = as_given::<Length>(desk, pen.size(free), letter!("L0"), &source);
        let values: [Value<'_>; 9] = [
            ("d", &d),
            ("D", &mean),
            ("n", &n),
            ("nd", &nd),
            ("nt", &nt),
            ("L0", &l0),
            ("L", &pen.decimal(height)),
            ("k", &k),
            ("G", &pen.say::<Modulus>(metal.shear_modulus)),
        ];
        let mut show = |figure: Figure, formula: Formula, source: &dyn Display| {
            desk.ledger.work(figure, formula, &values, source)
        };
        let outside = show(pen.size(coil.outside()), OUTSIDE, &GEOMETRY);
        let count = show(pen.figure::<Turns>(turns.total()), TURNS_IN_ALL, &ends.source());
        let closed = show(pen.height(closed), rule.formula, &rule.source);
        let rate = show(pen.figure::<SpringRate>(found), rate::FORMULA, &rate::SOURCE);
        let load = show(pen.figure::<Force>(load), rate::LOAD, &rate::SOURCE);
        let factor = |allowed: &Allowed| {
            allowed.of(coil.bar()).map_or(Factor::Uncorrected, |(_, factor)| factor)
        };
        let stress = show_stress(desk, coil, design.greatest_load, factor(&metal.at_load));
        let pressed = Pressed { rate: found, free, to: least.height };
        let at_solid = metal.at_solid.as_ref().map_or(Factor::Uncorrected, factor);
        let stress_solid = show_stress_at(desk, coil, pressed, at_solid);
        let length = bar::whole(coil, pitch, turns, Some(ends));
        let mass = desk.ledger.work(
            pen.figure::<Mass>(design.mass),
            bar::MASS,
            &[
                ("ρ", &pen.say::<MassDensity>(metal.density)),
                ("d", &d),
                ("l", &pen.decimal(length)),
            ],
            &bar::SOURCE,
        );
        DesignReport {
            drawing: self.drawing(pen.system, design, hand),
            bar: size,
            mean: mean_figure,
            outside,
            turns: count,
            free: height_free,
            solid: closed,
            rate,
            load,
            stress,
            stress_solid,
            mass,
            nearest: nearest(verdict),
        }
    }

    pub(super) fn pair(&self, desk: &mut Desk<'_>, pair: &Pair) -> PairReport {
        let outer = self.report(desk, &pair.outer, &pair.of_outer, Some(HANDS.0));
        let inner = self.report(desk, &pair.inner, &pair.of_inner, Some(HANDS.1));
        let share = outer.load.si / (outer.load.si + inner.load.si);
        let loads: [Value<'_>; 2] = [("F1", &outer.load.text), ("F2", &inner.load.text)];
        let share = desk.ledger.work(Pen::percent(share, 0), OF_BOTH, &loads, &"definition");
        let masses = [&outer.mass.text, &inner.mass.text].map(|mass| [("m", mass as _)]);
        let figure = desk.pen.figure::<Mass>(pair.mass());
        let mass = desk.ledger.sum(figure, MASS_OF_ALL, masses.iter(), &"definition");
        let apart = |one: f64, other: f64| {
            Pen::percent((one - other).abs() / if one > other { one } else { other }, 1).text
        };
        let sentence = text!(
            "Their stresses under load are {} apart, their solid heights {}; they are wound opposite ways.",
            apart(pair.outer.stress_at_load.value, pair.inner.stress_at_load.value),
            apart(pair.outer.solid.value, pair.inner.solid.value)
        );
        PairReport { outer, inner, share, mass, sentence }
    }

    /// The drawing as a job holds it: texts that read back to the same sizes.
    fn drawing(&self, system: System, design: &Design, hand: Option<Hand>) -> DrawingEntry {
        let size = |length| written(length, system).as_str().into();
        let ends = NEED_ENDS.iter().find(|(_, ends, _)| *ends == self.need.make.ends);
        let mut entry = DrawingEntry {
            bar: size(design.coil.bar()),
            mean: size(design.coil.mean()),
            turns: plain(design.turns.total(), 10).as_str().into(),
            free: size(design.free),
            steel: self.steel.id().into(),
            ..DrawingEntry::default()
        };
        if let Some((word, ..)) = ends {
            entry.ends = (*word).into();
        }
        if let Some(hand) = hand {
            let word = match hand {
                Hand::Left => "left",
                Hand::Right => "right",
            };
            entry.hand = word.into();
        }
        entry
    }
}

/// `reserve to solid: 4 % in hand`.
fn nearest(verdict: &Verdict) -> String {
    let hand = Pen::percent(verdict.margin.max(0.0), 1).text;
    text!("{}: {hand} in hand", words::limit(verdict.nearest))
}

/// A size that reads back as it is: a fraction of an inch where it is one, else decimals.
fn written(length: Length, system: System) -> String {
    match system {
        System::Inch => {
            let inches = length.get::<unit::inch>();
            let parts = inches * 64.0;
            if (parts - libm::round(parts)).abs() <= 1e-9 * parts {
                reading::write_inch(length, Step::SixtyFourth)
            } else {
                text!("{} in", plain(inches, 10))
            }
        }
        System::Metric => text!("{} mm", plain(length.get::<unit::millimeter>(), 10)),
    }
}

/// A number without gaps between its thousands.
fn plain(number: f64, digits: usize) -> String {
    quantity::write_number(number, digits).replace('\u{202f}', "")
}
