//! A drawing that was found: its figures, and its texts as a job holds them.

use super::words;
use crate::coil::stress::Factor;
use crate::coil::{Hand, bar, rate, solid};
use crate::formula::{Formula, Value};
use crate::job::choices::NEED_ENDS;
use crate::job::context::Context;
use crate::job::drawing::{GEOMETRY, Pressed, as_given, show_stress, show_stress_at};
use crate::job::figures::{Format, text};
use crate::job::formulas::{MASS_OF_ALL, OF_BOTH, OUTSIDE, TURNS_IN_ALL, letter};
use crate::job::input::Drawing as DrawingEntry;
use crate::job::report::{Cited, DesignReport, Figure, PairReport};
use crate::material::Steel;
use crate::quantity::{
    self, Force, Length, Mass, MassDensity, Modulus, SpringRate, System, Turns, unit,
};
use crate::reading::{self, Step};
use crate::sizing::{Allowed, Design, HANDS, LimitCheck, MEAN, MEAN_SOURCE, Need, Pair};
use crate::source::Source;

/// What all drawings of a search have in common.
pub(super) struct Drawer<'a> {
    pub(super) need: &'a Need,
    pub(super) steel: Steel,
}

impl Drawer<'_> {
    pub(super) fn report(
        &self,
        context: &mut Context<'_>,
        design: &Design,
        verdict: &LimitCheck,
        hand: Option<Hand>,
    ) -> DesignReport {
        let format = context.format;
        let Design { coil, turns, free, rate: found, solid: closed, pitch, .. } = *design;
        let (ends, metal) = (self.need.make.ends, &self.need.metal);
        let [d, mean, l0] = [coil.bar(), coil.mean(), free].map(|size| format.decimal(size));
        let [n, nd, nt] = [turns.active(), turns.dead(), turns.total()].map(words::turns);
        let k = format.say::<SpringRate>(found);
        let (least, solid::Stop { rule, .. }) = solid::stops(coil.bar(), turns, ends);
        let (load, height) = match self.need.work.height {
            Some(height) => (found * (free - height), height),
            None => (design.greatest_load, design.lowest),
        };
        let rounded = |from: Formula, source: &Source| text!("rounded, from {from}; {source}");
        let chosen = "chosen in the search";
        let size = as_given::<Length>(context, format.size(coil.bar()), letter!("d"), chosen);
        let source = rounded(MEAN, &MEAN_SOURCE);
        let mean_figure =
            as_given::<Length>(context, format.size(coil.mean()), letter!("D"), source);
        let source = rounded(rate::FREE, &rate::SOURCE);
        let height_free = as_given::<Length>(context, format.size(free), letter!("L0"), source);
        let values: [Value<'_>; 9] = [
            ("d", &d),
            ("D", &mean),
            ("n", &n),
            ("nd", &nd),
            ("nt", &nt),
            ("L0", &l0),
            ("L", &format.decimal(height)),
            ("k", &k),
            ("G", &format.say::<Modulus>(metal.shear_modulus)),
        ];
        let mut show = |figure: Figure, formula: Formula, source: Cited| {
            context.ledger.work(figure, formula, &values, source)
        };
        let outside = show(format.size(coil.outside()), OUTSIDE, GEOMETRY.into());
        let count =
            show(format.figure::<Turns>(turns.total()), TURNS_IN_ALL, (&ends.source()).into());
        let closed = show(format.height(closed), rule.formula, (&rule.source).into());
        let rate = show(format.figure::<SpringRate>(found), rate::FORMULA, (&rate::SOURCE).into());
        let load = show(format.figure::<Force>(load), rate::LOAD, (&rate::SOURCE).into());
        let factor = |allowed: &Allowed| {
            allowed.of(coil.bar()).map_or(Factor::Uncorrected, |(_, factor)| factor)
        };
        let stress = show_stress(context, coil, design.greatest_load, factor(&metal.at_load));
        let pressed = Pressed { rate: found, free, to: least.height };
        let at_solid = metal.at_solid.as_ref().map_or(Factor::Uncorrected, factor);
        let stress_solid = show_stress_at(context, coil, pressed, at_solid);
        let length = bar::whole(coil, pitch, turns, Some(ends));
        let mass = context.ledger.work(
            format.figure::<Mass>(design.mass),
            bar::MASS,
            &[
                ("ρ", &format.say::<MassDensity>(metal.density)),
                ("d", &d),
                ("l", &format.decimal(length)),
            ],
            &bar::SOURCE,
        );
        DesignReport {
            drawing: self.drawing(format.system, design, hand),
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

    pub(super) fn pair(&self, context: &mut Context<'_>, pair: &Pair) -> PairReport {
        let outer = self.report(context, &pair.outer, &pair.of_outer, Some(HANDS.0));
        let inner = self.report(context, &pair.inner, &pair.of_inner, Some(HANDS.1));
        let share = outer.load.si / (outer.load.si + inner.load.si);
        let loads: [Value<'_>; 2] = [("F1", &outer.load.text), ("F2", &inner.load.text)];
        let share = context.ledger.work(Format::percent(share, 0), OF_BOTH, &loads, "definition");
        let masses = [&outer.mass.text, &inner.mass.text].map(|mass| [("m", mass as _)]);
        let figure = context.format.figure::<Mass>(pair.mass());
        let mass = context.ledger.sum(figure, MASS_OF_ALL, masses.iter(), "definition");
        let apart = |one: f64, other: f64| {
            Format::percent((one - other).abs() / if one > other { one } else { other }, 1).text
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
fn nearest(verdict: &LimitCheck) -> String {
    let hand = Format::percent(verdict.margin.max(0.0), 1).text;
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
