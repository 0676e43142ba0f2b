//! What follows from the drawing of a coil, as far as the drawing goes.

use super::desk::Desk;
use super::entry::{Entry, Text};
use super::figures::{Pen, text};
use super::input::Drawing;
use super::problem::Path;
use super::report::{CoilReport, Figure, Problem};
use crate::bounds;
use crate::coil::ends::{DeadTurnsDoubt, Ends, Turns};
use crate::coil::solid::{Solid, Stop};
use crate::coil::stress::Factor;
use crate::coil::{Diameters, DiametersError, EndsTurn, Hand, growth, rate, solid, stress};
use crate::material::{self, Steel};
use crate::propagation::{Across, DrawingDoubt, RateDoubt};
use crate::quantity::{self, Length, Modulus, Pressure, SpringRate, Stress};
use crate::verdict::Limits;

/// What is known of a coil, each thing as far as the drawing gives it.
#[derive(Clone, Debug, Default)]
pub(crate) struct Facts {
    pub(crate) id: String,
    pub(crate) name: String,
    pub(crate) diameters: Option<Diameters>,
    pub(crate) ends: Option<Ends>,
    pub(crate) turns: Option<Turns>,
    pub(crate) hand: Option<Hand>,
    pub(crate) free: Option<Length>,
    pub(crate) limits: Option<Limits>,
    pub(crate) rate: Option<Rate>,
    pub(crate) solid: Option<Solid>,
    pub(crate) pitch: Option<Length>,
    /// Growth of the outside diameter at solid, the larger of held and free ends.
    pub(crate) growth: Option<Length>,
    pub(crate) stress_at_solid: Option<Pressure>,
}

/// A rate and whose its doubt is.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Rate {
    pub(crate) value: SpringRate,
    pub(crate) relative: RateDoubt,
}

impl Rate {
    pub(crate) fn doubt(self) -> SpringRate {
        self.value * self.relative.total()
    }
}

/// A count of turns and what is not known of it; none of a count of active turns.
#[derive(Clone, Copy, Debug)]
struct Counted {
    turns: Turns,
    doubt: Option<DeadTurnsDoubt>,
}

impl Counted {
    fn doubt_of(self, part: fn(DeadTurnsDoubt) -> f64) -> f64 {
        self.doubt.map_or(0.0, part)
    }
}

/// Shear and Young's modulus as they are used, and who says so.
#[derive(Clone, Debug)]
pub(crate) struct Moduli {
    pub(crate) shear: Pressure,
    pub(crate) youngs: Option<Pressure>,
    /// One standard uncertainty of the shear modulus, relative.
    pub(crate) doubt: f64,
    pub(crate) source: String,
    /// The steel that is named or assumed.
    pub(crate) steel: Option<Steel>,
    /// The row of the tables that the shear modulus was taken from.
    pub(crate) row: Option<&'static str>,
}

impl Moduli {
    /// Poisson's ratio, where the moduli give one that a metal can have.
    pub(crate) fn poisson(&self) -> Option<f64> {
        let poisson = material::poisson(self.shear, self.youngs?);
        (0.0..=0.5).contains(&poisson).then_some(poisson)
    }
}

/// A drawing as it was read: what nests go by, and what that rests on.
#[derive(Clone, Debug)]
pub(crate) struct Drawn {
    pub(crate) facts: Facts,
    pub(crate) report: CoilReport,
    pub(crate) moduli: Option<Moduli>,
    /// What is not known of the dead turns; none where the active turns are given.
    pub(crate) dead_turns: Option<DeadTurnsDoubt>,
    /// Which diameter the others follow from.
    pub(crate) across: Option<Across>,
}

/// The source of what is plain geometry.
pub(crate) const GEOMETRY: &str = "geometry of the coil";

/// The words of a job file for the forms of ends; `given` leaves the dead turns to be given.
pub(crate) const ENDS: [(&str, Option<Ends>); 6] = [
    ("tapered-ground", Some(Ends::TaperedGround)),
    ("closed-ground", Some(Ends::ClosedGround)),
    ("closed", Some(Ends::Closed)),
    ("open-ground", Some(Ends::OpenGround)),
    ("open", Some(Ends::Open)),
    ("given", None),
];

/// Those that say how many turns are dead.
pub(crate) fn told_ends() -> impl Iterator<Item = (&'static str, Ends)> {
    ENDS.iter().filter_map(|(word, ends)| Some((*word, (*ends)?)))
}

/// Reads a drawing and reports what follows from it. By its number coils know that they share it.
pub(crate) fn assess(desk: &mut Desk<'_>, at: &Path, number: usize, drawing: &Drawing) -> Drawn {
    let id = desk.text(at, "id", &drawing.id).unwrap_or_default().to_owned();
    let name = desk.text(at, "name", &drawing.name).unwrap_or(&id).to_owned();
    let mut facts = Facts { id: id.clone(), name: name.clone(), ..Facts::default() };
    let mut report = CoilReport { id, name, ..CoilReport::default() };

    facts.hand =
        desk.word(at, "hand", &drawing.hand, &[("left", Hand::Left), ("right", Hand::Right)]);
    facts.free = desk.length(at, "free", &drawing.free, &bounds::FREE_HEIGHT);
    facts.limits = limits(desk, at, drawing, facts.free);
    let sized = diameters(desk, at, drawing);
    facts.diameters = sized.map(|(coil, _)| coil);
    let across = sized.map(|(_, across)| across);
    let form = desk.word(at, "ends", &drawing.ends, &ENDS);
    facts.ends = form.flatten();
    let counted = turns(desk, at, drawing, facts.ends);
    facts.turns = counted.map(|counted| counted.turns);
    let at_work = facts.diameters.is_some() && facts.turns.is_some();
    let moduli = moduli(desk, at, drawing, at_work);
    let given_rate = desk.quantity(at, "rate", &drawing.rate, &bounds::RATE);
    let ends_turn = desk
        .word(
            at,
            "ends_turn",
            &drawing.ends_turn,
            &[("held", EndsTurn::Held), ("free", EndsTurn::Free)],
        )
        .unwrap_or_default();

    index_and_factors(desk, &mut report, facts.diameters);
    report_turns(desk, &mut report, counted, facts.ends);
    solid_height(desk, at, drawing, &mut facts, &mut report);
    rates(desk, (at, number), &mut facts, &mut report, counted, moduli.as_ref(), given_rate);
    if let Some(moduli) = &moduli {
        helix(desk, &mut facts, &mut report, moduli, ends_turn);
    }
    stress_at_solid(desk, &mut facts, &mut report);
    let dead_turns = counted.and_then(|counted| counted.doubt);
    Drawn { facts, report, moduli, dead_turns, across }
}

pub(crate) fn as_given(
    desk: &mut Desk<'_>,
    figure: Figure,
    symbol: &'static str,
    whose: &str,
) -> Figure {
    let with = figure.text.clone();
    desk.ledger.show(figure, symbol, with, &whose)
}

fn limits(
    desk: &mut Desk<'_>,
    at: &Path,
    drawing: &Drawing,
    free: Option<Length>,
) -> Option<Limits> {
    let at = at.field("limits");
    let entry = desk.object(&at, &drawing.limits)?;
    let under = desk.length(&at, "under", &entry.under, &bounds::LIMIT);
    let over = desk.length(&at, "over", &entry.over, &bounds::LIMIT);
    let least = desk.length(&at, "least", &entry.least, &bounds::FREE_HEIGHT);
    let most = desk.length(&at, "most", &entry.most, &bounds::FREE_HEIGHT);
    let from_book = |by: Option<Length>, sign: f64| Some(free? + by? * sign);
    let least = least.or_else(|| from_book(under, -1.0));
    let most = most.or_else(|| from_book(over, 1.0));
    if least.is_none() && most.is_none() {
        if under.is_some() || over.is_some() {
            let text = "A limit under or over the book figure says nothing without the book's free height.";
            desk.note(&at, "limits-without-book", text);
        }
        return None;
    }
    let limits = Limits::new(least, most);
    if limits.is_err() {
        let from = |own: &Entry<Text>, sign: &str, by: &Entry<Text>| match own.written() {
            "" => text!("{} {sign} {}", drawing.free.written(), by.written()),
            own => own.to_owned(),
        };
        let least = from(&entry.least, "−", &entry.under);
        let read = text!("{least} to {}", from(&entry.most, "+", &entry.over));
        desk.problem(Problem::new(
            &at,
            "limits-crossed",
            &read,
            "a least that is not above the most",
            "the least allowed is above the most allowed",
            "least 13 13/16, most 14 1/16",
        ));
    }
    limits.ok()
}

fn diameters(desk: &mut Desk<'_>, at: &Path, drawing: &Drawing) -> Option<(Diameters, Across)> {
    let bar = desk.length(at, "bar", &drawing.bar, &bounds::BAR);
    let outside = desk.length(at, "outside", &drawing.outside, &bounds::COIL_DIAMETER);
    let mean = desk.length(at, "mean", &drawing.mean, &bounds::COIL_DIAMETER);
    let inside = desk.length(at, "inside", &drawing.inside, &bounds::COIL_DIAMETER);
    let bar = bar?;
    let given = [
        ("outside", &drawing.outside, outside, Across::Outside),
        ("mean", &drawing.mean, mean, Across::Mean),
        ("inside", &drawing.inside, inside, Across::Inside),
    ];
    let mut found: Option<(Diameters, Across)> = None;
    for (field, entry, diameter, across) in given {
        let Some(diameter) = diameter else { continue };
        match (across.coil(bar, diameter), found) {
            (Ok(coil), None) => found = Some((coil, across)),
            (Ok(coil), Some((first, _))) if (coil.mean() - first.mean()).abs().value > 1e-9 => {
                let first = desk.pen.decimal(first.mean());
                let why = text!(
                    "with this bar it gives another mean diameter than the {first} given before"
                );
                let expected = "one diameter, or several that agree";
                desk.problem(Problem::new(
                    &at.field(field),
                    "diameters-disagree",
                    entry.written(),
                    expected,
                    &why,
                    "",
                ));
            }
            (Ok(_), Some(_)) => {}
            (Err(DiametersError::Bar { .. } | DiametersError::NoHole { .. }), _) => {
                let thick = desk.pen.decimal(bar);
                let why =
                    text!("a bar of {thick} leaves no hole in a coil of this {field} diameter");
                let expected = "a diameter that leaves the coil open inside";
                let example = desk.pen.decimal(bar * 6.0).to_string();
                desk.problem(Problem::new(
                    &at.field(field),
                    "no-hole",
                    entry.written(),
                    expected,
                    &why,
                    &example,
                ));
            }
        }
    }
    found
}

/// The turns and their doubt: active turns as given, else the total less the dead ones.
fn turns(desk: &mut Desk<'_>, at: &Path, drawing: &Drawing, ends: Option<Ends>) -> Option<Counted> {
    let total = desk.quantity(at, "turns", &drawing.turns, &bounds::TURNS);
    let dead = dead_turns(desk, at, drawing);
    let active = desk.quantity(at, "active_turns", &drawing.active_turns, &bounds::TURNS);
    let (field, total, dead, doubt) = match (total, active, dead, ends) {
        (Some(total), Some(active), _, _) => ("active_turns", total, total - active, None),
        (None, Some(active), Some((dead, _)), _) => ("active_turns", active + dead, dead, None),
        (None, Some(active), None, ends) => {
            let dead = ends.map_or(0.0, Ends::dead_turns);
            ("active_turns", active + dead, dead, None)
        }
        (Some(total), None, Some((dead, doubt)), _) => ("dead_turns", total, dead, Some(doubt)),
        (Some(total), None, None, Some(ends)) => {
            ("turns", total, ends.dead_turns(), Some(DeadTurnsDoubt::default()))
        }
        _ => return None,
    };
    match Turns::new(total, dead) {
        Ok(turns) => Some(Counted { turns, doubt }),
        Err(error) => {
            let read = quantity::write_number(total, 4);
            let why = error.to_string();
            let expected = "more turns than lie dead at the ends";
            desk.problem(Problem::new(
                &at.field(field),
                "too-few-turns",
                &read,
                expected,
                &why,
                "7 1/4",
            ));
            None
        }
    }
}

/// Dead turns as written, with a doubt of their own behind `±` where one is.
fn dead_turns(desk: &mut Desk<'_>, at: &Path, drawing: &Drawing) -> Option<(f64, DeadTurnsDoubt)> {
    let text = desk.text(at, "dead_turns", &drawing.dead_turns)?;
    let parts = text.split_once('±').or_else(|| plus_minus(text));
    let whole = parts.filter(|(count, half)| !count.trim().is_empty() && !half.trim().is_empty());
    let (count, half_width) = whole.unwrap_or((text, ""));
    let dead = desk.quantity(at, "dead_turns", &count.into(), &bounds::DEAD_TURNS)?;
    if half_width.trim().is_empty() {
        return Some((dead, DeadTurnsDoubt::default()));
    }
    let half_width = desk.quantity(at, "dead_turns", &half_width.into(), &bounds::DEAD_TURNS)?;
    Some((dead, DeadTurnsDoubt::within(half_width)))
}

/// Both sides of `+/-`, the sign that every keyboard has.
fn plus_minus(text: &str) -> Option<(&str, &str)> {
    let (before, after) = text.split_once('/')?;
    Some((before.strip_suffix('+')?, after.strip_prefix('-')?))
}

/// Without a steel named, that is only worth a note where the drawing puts one to work.
fn moduli(desk: &mut Desk<'_>, at: &Path, drawing: &Drawing, at_work: bool) -> Option<Moduli> {
    let shear = desk.quantity(at, "shear_modulus", &drawing.shear_modulus, &bounds::MODULUS);
    let youngs = desk.quantity(at, "youngs_modulus", &drawing.youngs_modulus, &bounds::MODULUS);
    let words: Vec<(&'static str, Steel)> =
        desk.tables.steels.iter().map(|steel| (steel.id(), *steel)).collect();
    let named = desk.word(at, "steel", &drawing.steel, &words);
    let assumed = named.is_none() && shear.is_none();
    let steel = named.or_else(|| desk.tables.steels.first().copied());
    if let (true, Some(steel)) = (assumed && at_work, &steel) {
        let text = text!("No steel is named; reckoned as: {}.", steel.name());
        desk.note(&at.field("steel"), "steel-assumed", text);
    }
    let doubt = |steel: &Steel| {
        let shear = steel.shear_modulus().value;
        steel.shear_doubt().map_or(0.0, |doubt| (doubt.value / shear).value)
    };
    match (shear, steel) {
        (Some(shear), steel) => {
            let youngs = youngs.or_else(|| steel.map(|steel| steel.youngs_modulus().value));
            let source = "shear modulus as given".into();
            Some(Moduli { shear, youngs, doubt: 0.0, source, steel, row: None })
        }
        (None, Some(steel)) => Some(Moduli {
            shear: steel.shear_modulus().value,
            youngs: youngs.or(Some(steel.youngs_modulus().value)),
            doubt: doubt(&steel),
            source: text!("{}: {}", steel.name(), steel.shear_modulus().source),
            steel: Some(steel),
            row: steel.row(),
        }),
        (None, None) => None,
    }
}

fn index_and_factors(desk: &mut Desk<'_>, report: &mut CoilReport, diameters: Option<Diameters>) {
    let Some(coil) = diameters else { return };
    let pen = desk.pen;
    let with = text!("{} / {}", pen.decimal(coil.mean()), pen.decimal(coil.bar()));
    let figure = Pen::number(coil.index(), 3);
    report.index = Some(desk.ledger.show(figure, "C = D / d", with, &GEOMETRY));
    let index = quantity::write_number(coil.index(), 5);
    report.wahl = Some(desk.ledger.show(
        Pen::number(stress::wahl(coil.index()), 4),
        "K = (4 C − 1) / (4 C − 4) + 0.615 / C",
        text!("C = {index}"),
        &stress::WAHL_SOURCE,
    ));
    report.bergstrasser = Some(desk.ledger.show(
        Pen::number(stress::bergstrasser(coil.index()), 4),
        "K = (4 C + 2) / (4 C − 3)",
        text!("C = {index}"),
        &stress::BERGSTRASSER_SOURCE,
    ));
}

fn report_turns(
    desk: &mut Desk<'_>,
    report: &mut CoilReport,
    counted: Option<Counted>,
    ends: Option<Ends>,
) {
    let Some(counted) = counted else { return };
    let Counted { turns, doubt } = counted;
    let doubted = counted.doubt_of(DeadTurnsDoubt::total);
    let figure = desk.pen.doubted::<quantity::Turns>(turns.active(), doubted);
    let number = |turns| quantity::write_number(turns, 4);
    let with = text!("{} − {}", number(turns.total()), number(turns.dead()));
    let source = match (ends, doubt) {
        (Some(ends), Some(doubt)) => text!(
            "{}; a doubt of {} turn as a uniform half-width, from what ends do between plates",
            ends.source(),
            number(doubt.half_width())
        ),
        _ => "turns as given".into(),
    };
    report.active_turns = Some(desk.ledger.show(figure, "n = nt − dead turns", with, &source));
}

fn solid_height(
    desk: &mut Desk<'_>,
    at: &Path,
    drawing: &Drawing,
    facts: &mut Facts,
    report: &mut CoilReport,
) {
    let pen = desk.pen;
    let given = desk.length(at, "solid", &drawing.solid, &bounds::SOLID_HEIGHT);
    let drawn = match (facts.diameters, facts.turns, facts.ends) {
        (Some(coil), Some(turns), Some(ends)) => {
            let (_, greatest) = solid::stops(coil.bar(), turns, ends);
            let figure = show_stop(desk, coil, turns, greatest);
            Some((Solid::of(coil.bar(), turns, ends), figure))
        }
        _ => None,
    };
    match (given, drawn) {
        (Some(given), drawn) => {
            facts.solid = Some(Solid::exactly(given));
            let figure = pen.height(given);
            report.solid = Some(as_given(desk, figure, "Lc", "the book's solid height"));
            report.solid_drawing = drawn.map(|(_, figure)| figure);
        }
        (None, Some((solid, figure))) => {
            facts.solid = Some(solid);
            report.solid = Some(figure);
        }
        (None, None) => {}
    }
    let (Some(free), Some(Solid { greatest: height, .. })) = (facts.free, facts.solid) else {
        return;
    };
    if height >= free {
        let why = text!(
            "the coil would be solid at {}, and its free height is {}",
            pen.decimal(height),
            pen.decimal(free)
        );
        let (field, entry) =
            if given.is_some() { ("solid", &drawing.solid) } else { ("turns", &drawing.turns) };
        let read = entry.written();
        let expected = "a solid height below the free height";
        desk.problem(Problem::new(
            &at.field(field),
            "solid-not-below-free",
            read,
            expected,
            &why,
            "",
        ));
        facts.solid = None;
    }
}

/// A solid height by an authority's rule.
pub(crate) fn show_stop(desk: &mut Desk<'_>, coil: Diameters, turns: Turns, stop: Stop) -> Figure {
    let bars = quantity::write_number(stop.rule.bars(turns), 4);
    let with = text!("{} · {bars}", desk.pen.decimal(coil.bar()));
    let figure = desk.pen.height(stop.height);
    desk.ledger.show(figure, stop.rule.formula, with, &stop.rule.source)
}

fn rates(
    desk: &mut Desk<'_>,
    (at, number): (&Path, usize),
    facts: &mut Facts,
    report: &mut CoilReport,
    counted: Option<Counted>,
    moduli: Option<&Moduli>,
    given: Option<SpringRate>,
) {
    let pen = desk.pen;
    let drawn = match (facts.diameters, counted, moduli) {
        (Some(coil), Some(counted), Some(moduli)) => {
            let turns = counted.turns;
            let of = |part| rate::doubt_from_turns(turns, counted.doubt_of(part));
            let relative = RateDoubt {
                own: of(DeadTurnsDoubt::own),
                drawing: DrawingDoubt { number, doubt: of(DeadTurnsDoubt::of_drawing) },
                steel: moduli.doubt,
            };
            let rate = Rate { value: rate::rate(moduli.shear, coil, turns), relative };
            let with = text!(
                "{} · ({})⁴ / (8 · ({})³ · {})",
                pen.say::<Modulus>(moduli.shear),
                pen.decimal(coil.bar()),
                pen.decimal(coil.mean()),
                quantity::write_number(turns.active(), 4),
            );
            let figure = pen.doubted::<SpringRate>(rate.value, rate.doubt().value);
            let source = text!("{}; {}", rate::SOURCE, moduli.source);
            let figure = desk.ledger.show(figure, "k = G · d⁴ / (8 · D³ · n)", with, &source);
            Some((rate, figure))
        }
        _ => None,
    };
    match (given, drawn) {
        (Some(given), drawn) => {
            facts.rate = Some(Rate { value: given, relative: RateDoubt::default() });
            let figure = pen.figure::<SpringRate>(given);
            report.rate = Some(as_given(desk, figure, "k", "the book's rate"));
            report.rate_drawing = drawn.map(|(_, figure)| figure);
        }
        (None, Some((rate, figure))) => {
            facts.rate = Some(rate);
            report.rate = Some(figure);
            let of_ends = RateDoubt { steel: 0.0, ..rate.relative }.total();
            if of_ends > rate.relative.steel && of_ends > 0.02 {
                let percent = pen.say::<quantity::Share>(libm::round(of_ends * 1000.0) / 1000.0);
                let text = text!(
                    "What is not known of the dead turns puts {percent} of doubt into the rate, more than anything else here."
                );
                desk.note(&at.field("dead_turns"), "dead-turns-doubt", text);
            }
        }
        (None, None) => {}
    }
}

fn helix(
    desk: &mut Desk<'_>,
    facts: &mut Facts,
    report: &mut CoilReport,
    moduli: &Moduli,
    ends_turn: EndsTurn,
) {
    let (Some(coil), Some(turns), Some(free)) = (facts.diameters, facts.turns, facts.free) else {
        return;
    };
    let pen = desk.pen;
    let (pitch, source) = match (facts.ends, facts.solid) {
        (Some(ends), _) => (solid::pitch(free, coil.bar(), turns, ends), solid::pitch_source(ends)),
        (None, Some(solid)) => (
            solid::pitch_from_solid(free, solid.greatest, coil.bar(), turns),
            solid::PITCH_FROM_SOLID_SOURCE,
        ),
        (None, None) => return,
    };
    if pitch <= coil.bar() {
        return;
    }
    let lengths = text!(
        "L0 = {}, d = {}, n = {}",
        pen.decimal(free),
        pen.decimal(coil.bar()),
        quantity::write_number(turns.active(), 4)
    );
    let formula = match facts.ends {
        Some(Ends::Open) => "p = (L0 − d) / n",
        Some(Ends::OpenGround) => "p = L0 / (n + 1)",
        Some(Ends::Closed) => "p = (L0 − 3 d) / n",
        Some(Ends::ClosedGround) => "p = (L0 − 2 d) / n",
        Some(Ends::TaperedGround) | None => "p = (L0 − Lc) / n + d",
    };
    report.pitch = Some(desk.ledger.show(pen.fine(pitch), formula, lengths, &source));
    facts.pitch = Some(pitch);
    facts.growth = Some(growth::at_solid(coil, pitch));

    let Some(poisson) = moduli.poisson() else { return };
    let plain = rate::rate(moduli.shear, coil, turns);
    let tangent = pitch.value / (core::f64::consts::PI * coil.mean().value);
    let corrected = rate::corrected(plain, coil, pitch, poisson, ends_turn);
    let formula = match ends_turn {
        EndsTurn::Held => "k = k0 / (1 − 3/(16 C²) + (1/2 − ν) tan² α)",
        EndsTurn::Free => "k = k0 / (1 − 3/(16 C²) + (1 − ν)/(2 (1 + ν)) tan² α)",
    };
    let with = text!(
        "k0 = {}, C = {}, ν = {}, tan α = {}",
        pen.say::<SpringRate>(plain),
        quantity::write_number(coil.index(), 4),
        quantity::write_number(poisson, 3),
        quantity::write_number(tangent, 4),
    );
    report.rate_corrected = Some(desk.ledger.show(
        pen.figure::<SpringRate>(corrected),
        formula,
        with,
        &rate::CORRECTED_SOURCE,
    ));
}

fn stress_at_solid(desk: &mut Desk<'_>, facts: &mut Facts, report: &mut CoilReport) {
    let (Some(coil), Some(rate), Some(free), Some(solid)) =
        (facts.diameters, facts.rate, facts.free, facts.solid)
    else {
        return;
    };
    let closes = rate.value * (free - solid.least);
    facts.stress_at_solid = Some(stress::uncorrected(closes, coil));
    let from = closing_load(desk.pen, rate.value, free, solid.least);
    report.stress_solid = Some(show_stress(desk, coil, closes, Factor::Uncorrected, &from));
}

/// Where the load at solid comes from, for the working of a stress.
pub(crate) fn closing_load(pen: Pen, rate: SpringRate, free: Length, solid: Length) -> String {
    let rate = pen.say::<SpringRate>(rate);
    text!("; F = k · (L0 − Lc) = {rate} · ({} − {})", pen.decimal(free), pen.decimal(solid))
}

/// A stress at a load, times a factor that its working names and puts in.
pub(crate) fn show_stress(
    desk: &mut Desk<'_>,
    coil: Diameters,
    load: quantity::Force,
    factor: Factor,
    from: &str,
) -> Figure {
    let pen = desk.pen;
    let times = factor.at(coil.index());
    let figure = pen.figure::<Stress>(stress::uncorrected(load, coil) * times);
    let times =
        if times > 1.0 { text!("{} · ", quantity::write_number(times, 4)) } else { String::new() };
    let with = text!(
        "{times}8 · {} · {} / (π · ({})³){from}",
        pen.say::<quantity::Force>(load),
        pen.decimal(coil.mean()),
        pen.decimal(coil.bar())
    );
    desk.ledger.show(figure, factor.formula(), with, &factor.source())
}
