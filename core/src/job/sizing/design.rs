//! A drawing that was found: its figures, and its texts as a job holds them.

use super::words;
use crate::coil::{Hand, bar, rate, solid, stress};
use crate::job::coil::ENDS;
use crate::job::desk::Desk;
use crate::job::drawing::GEOMETRY;
use crate::job::figures::{Pen, text};
use crate::job::input::Drawing as DrawingEntry;
use crate::job::report::{DesignReport, Figure, PairReport};
use crate::material::Steel;
use crate::quantity::{
    self, Force, Length, Mass, MassDensity, Modulus, Pressure, SpringRate, Stress, System, Turns,
    unit,
};
use crate::reading::{self, Step};
use crate::sizing::{Design, HANDS, Need, Pair, Verdict};

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
        let Design { coil, turns, free, rate: found, solid: closed, .. } = *design;
        let chosen = "chosen in the search";
        let mut show = |figure: Figure, formula: &'static str, with: String, source: String| {
            desk.ledger.show(figure, formula, with, &source)
        };
        let given = |figure: &Figure| figure.text.clone();
        let size = pen.size(coil.bar());
        let with = given(&size);
        let size = show(size, "d", with, chosen.to_owned());
        let mean = show(
            pen.size(coil.mean()),
            "D = ∛(G · d⁴ / (8 · n · R)), rounded",
            text!(
                "{}, R = {}",
                self.metal(pen, design),
                pen.say::<SpringRate>(self.need.work.rate())
            ),
            crate::sizing::MEAN_SOURCE.to_string(),
        );
        let with = text!("{} + {}", pen.decimal(coil.mean()), pen.decimal(coil.bar()));
        let outside = show(pen.size(coil.outside()), "De = D + d", with, GEOMETRY.to_owned());
        let with = text!("{} + {}", words::turns(turns.active()), words::turns(turns.dead()));
        let source = self.need.make.ends.source().to_string();
        let count = show(pen.figure::<Turns>(turns.total()), "nt = n + dead turns", with, source);
        let (load, height) = match self.need.work.height {
            Some(height) => (found * (free - height), height),
            None => (design.greatest_load, design.lowest),
        };
        let put =
            text!("h = {}, F = {}", pen.decimal(height), pen.say::<Force>(self.need.work.load));
        let with = text!("{put}, R = {}", pen.say::<SpringRate>(found));
        let height_free =
            show(pen.size(free), "L0 = h + F / R, rounded", with, rate::SOURCE.to_string());
        let with = text!("d = {}, nt = {}", pen.decimal(coil.bar()), words::turns(turns.total()));
        let ends = self.need.make.ends;
        let (least, solid::Stop { rule, .. }) = solid::stops(coil.bar(), turns, ends);
        let closed_figure = show(pen.height(closed), rule.formula, with, rule.source.to_string());
        let with = text!("{}, D = {}", self.metal(pen, design), pen.decimal(coil.mean()));
        let figure = pen.figure::<SpringRate>(found);
        let rate = show(figure, "R = G · d⁴ / (8 · D³ · n)", with, rate::SOURCE.to_string());
        let with = text!(
            "{} · ({} − {})",
            pen.say::<SpringRate>(found),
            pen.decimal(free),
            pen.decimal(height)
        );
        let load =
            show(pen.figure::<Force>(load), "F = R · (L0 − h)", with, rate::SOURCE.to_string());
        let mut stressed = |stress: Pressure, under: Force| {
            let with = text!(
                "F = {}, D = {}, d = {}",
                pen.say::<Force>(under),
                pen.decimal(coil.mean()),
                pen.decimal(coil.bar())
            );
            let formula = "τ = K · 8 · F · D / (π · d³), K as the steel's stress is meant";
            show(pen.figure::<Stress>(stress), formula, with, stress::SOURCE.to_string())
        };
        let stress = stressed(design.stress_at_load, design.greatest_load);
        let stress_solid = stressed(design.stress_at_solid, found * (free - least.height));
        let with = text!(
            "d = {}, D = {}, nt = {}, ρ = {}",
            pen.decimal(coil.bar()),
            pen.decimal(coil.mean()),
            words::turns(turns.total()),
            pen.say::<MassDensity>(self.need.metal.density)
        );
        let figure = pen.figure::<Mass>(design.mass);
        let mass = show(figure, "m = ρ · π/4 · d² · l", with, bar::SOURCE.to_string());
        DesignReport {
            drawing: self.drawing(pen.system, design, hand),
            bar: size,
            mean,
            outside,
            turns: count,
            free: height_free,
            solid: closed_figure,
            rate,
            load,
            stress,
            stress_solid,
            mass,
            nearest: nearest(verdict),
        }
    }

    fn metal(&self, pen: Pen, design: &Design) -> String {
        text!(
            "G = {}, d = {}, n = {}",
            pen.say::<Modulus>(self.need.metal.shear_modulus),
            pen.decimal(design.coil.bar()),
            words::turns(design.turns.active())
        )
    }

    pub(super) fn pair(&self, desk: &mut Desk<'_>, pair: &Pair) -> PairReport {
        let outer = self.report(desk, &pair.outer, &pair.of_outer, Some(HANDS.0));
        let inner = self.report(desk, &pair.inner, &pair.of_inner, Some(HANDS.1));
        let with = text!("{} / ({} + {})", outer.load.text, outer.load.text, inner.load.text);
        let share = outer.load.si / (outer.load.si + inner.load.si);
        let formula = "share = F of the outer / F of both";
        let share = desk.ledger.show(Pen::percent(share, 0), formula, with, &"definition");
        let with = text!("{} + {}", outer.mass.text, inner.mass.text);
        let figure = desk.pen.figure::<Mass>(pair.mass());
        let mass =
            desk.ledger.show(figure, "m = m of the outer + m of the inner", with, &"definition");
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
        let ends = ENDS.iter().find(|(_, ends)| *ends == Some(self.need.make.ends));
        let mut entry = DrawingEntry {
            bar: size(design.coil.bar()),
            mean: size(design.coil.mean()),
            turns: plain(design.turns.total(), 10).as_str().into(),
            free: size(design.free),
            steel: self.steel.id().into(),
            ..DrawingEntry::default()
        };
        if let Some((word, _)) = ends {
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
