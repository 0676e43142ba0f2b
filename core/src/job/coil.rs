//! A coil of a job, as its drawing is read: once, for all that asks of it.

use super::context::Context;
use super::field::{Field, Word};
use super::figures::text;
use super::input::{Drawing as Entered, TolerancesEntry};
use super::problem::Path;
use super::report::Problem;
use super::tolerance::Tolerance;
use crate::coil::buckling::Seating;
use crate::coil::ends::{Ends, Turns};
use crate::coil::fatigue::Surface;
use crate::coil::solid::Solid;
use crate::coil::{Coiling, DiameterKind, Diameters, EndsTurn, stress};
use crate::drawing::{Drawing, Figure, Given, LoadPoint, Point, shear_of};
use crate::load_test::{Reading, Way};
use crate::material::{Against, Steel};
use crate::propagation::{self, RateDoubt};
use crate::quantity::{self, Force, Length, Pressure, SpringRate};
use crate::say::Say;
use crate::verdict::Limits;

/// What a job says of a coil.
#[derive(Clone, Debug, Default)]
pub(crate) struct Coil {
    pub(crate) id: String,
    pub(crate) name: String,
    /// Its figures, tolerances and all.
    pub(crate) drawing: Drawing,
    /// The rate that counts.
    pub(crate) rate: Option<Rate>,
    /// Limits on its free height by its book.
    pub(crate) limits: Option<Limits>,
    /// The steel that is named or assumed.
    pub(crate) steel: Option<Steel>,
    /// Who says the shear modulus, and the row of the tables that it was taken from.
    pub(crate) modulus: (String, Option<&'static str>),
    pub(crate) ends_turn: EndsTurn,
    pub(crate) seating: Option<Seating>,
    /// The lesser and the greater load of its work.
    pub(crate) duty: Option<(Force, Force)>,
    /// What a press showed, going down and coming back.
    pub(crate) pressed: (Vec<Reading>, Vec<Reading>),
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

/// Which stress a stated one is meant for. Where nobody says, the one that is greatest: what is left
/// out never makes a coil look better.
pub(crate) fn stress_factor(
    context: &mut Context<'_>,
    at: &Path,
    field: Field<'_, Word<Against>>,
) -> Against {
    context.read(at, field).unwrap_or(Against::Wahl)
}

impl Coil {
    /// Reads what a tape is held against: the coil's name, its free height and the limits of its book.
    pub(crate) fn of_book(context: &mut Context<'_>, at: &Path, _: usize, entry: &Entered) -> Self {
        let id = context.text(at, entry.id()).unwrap_or_default().to_owned();
        let name = context.text(at, entry.name()).unwrap_or(&id).to_owned();
        let free = context.read(at, entry.free());
        let limits = limits(context, at, entry, free);
        let drawing = Drawing { free: free.map(Given::as_drawn), ..Drawing::default() };
        Self { id, name, drawing, limits, ..Self::default() }
    }

    /// Reads a coil. By its number coils know that they share a drawing.
    pub(crate) fn read(
        context: &mut Context<'_>,
        at: &Path,
        number: usize,
        entry: &Entered,
    ) -> Self {
        let book = Self::of_book(context, at, number, entry);
        let (free, limits) = (book.free(), book.limits);
        let hand = context.read(at, entry.hand());
        let (bar, diameter) = sizes(context, at, entry);
        let ends = context.read(at, entry.ends()).flatten();
        let (total, dead_turns) = turns(context, at, entry, ends);
        let sized = bar.is_some() && diameter.is_some();
        let at_work = sized && total.is_some() && (dead_turns.is_some() || ends.is_some());
        let metal = Metal::read(context, at, entry, at_work);
        let rate = context.read(at, entry.rate());
        let ends_turn = context.read(at, entry.ends_turn());
        let solid = context.read(at, entry.solid());
        let seating = context.read(at, entry.seating());
        let presetting = context.read(at, entry.set_removed());
        let none = (entry.tolerances().path(at), &TolerancesEntry::default());
        let (off_at, off) = context.object(at, entry.tolerances()).unwrap_or(none);
        let (off_bar, off_diameter) =
            (context.read(&off_at, off.bar()), context.read(&off_at, off.diameter()));
        let (off_turns, off_free) =
            (context.read(&off_at, off.turns()), context.read(&off_at, off.free()));
        let (off_rate, off_solid) =
            (context.read(&off_at, off.rate()), context.read(&off_at, off.solid()));
        let loads = stated(context, at, entry);
        let (duty, surface) = duty(context, at, entry);
        let pressed = press_test(context, at, entry);
        let length = |off, size: Option<Length>| Some(Tolerance::given(off, size?));
        let by_book = |free| {
            let limits = limits.filter(|_| off_free.is_none())?;
            Given::between(free, limits.least(), limits.most()).ok()
        };
        let drawing = Drawing {
            bar: length(off_bar, bar),
            diameter: diameter.map(|(across, size)| (across, Tolerance::given(off_diameter, size))),
            total_turns: total.map(|total| Tolerance::given(off_turns, total)),
            dead_turns,
            ends,
            hand,
            coiling: bar.filter(|_| sized).map(|bar| Coiling::of_bar(bar, ends)),
            free: free.and_then(by_book).or(length(off_free, free)),
            solid: length(off_solid, solid),
            rate: rate.map(|rate| Tolerance::given(off_rate, rate)),
            loads,
            shear_modulus: metal.shear,
            youngs_modulus: metal.youngs,
            steel: metal.named,
            presetting,
            surface,
            ..Drawing::default()
        };
        let rate = RateDoubt::of(&drawing, number).ok().and_then(|relative| {
            let value = Point::nominal(&drawing).rate().ok()?;
            Some(Rate { value, relative })
        });
        let coil = Self {
            drawing,
            rate,
            steel: metal.steel,
            modulus: (metal.source, metal.row),
            ends_turn: ends_turn.unwrap_or_default(),
            seating,
            duty,
            pressed,
            ..book
        };
        coil.check_solid(context, at, entry);
        coil.note_dead_turns(context, at);
        coil
    }

    /// The coil as it is meant to be.
    fn nominal(&self) -> Point {
        Point::nominal(&self.drawing)
    }

    pub(crate) fn diameters(&self) -> Option<Diameters> {
        self.nominal().coil().ok()
    }

    pub(crate) fn turns(&self) -> Option<Turns> {
        self.nominal().turns().ok()
    }

    pub(crate) fn free(&self) -> Option<Length> {
        self.drawing.free.map(|free| free.nominal())
    }

    /// The solid heights; none that are not below the free height.
    pub(crate) fn solid(&self) -> Option<Solid> {
        let solid = self.nominal().solids().ok()?;
        self.free().is_none_or(|free| solid.greatest < free).then_some(solid)
    }

    /// The pitch of the free coil, where there are gaps between its turns.
    pub(crate) fn pitch(&self) -> Option<Length> {
        let (coil, pitch) = (self.diameters()?, self.nominal().pitch().ok()?);
        (pitch > coil.bar()).then_some(pitch)
    }

    /// Growth of the outside diameter at solid, the larger of held and free ends.
    pub(crate) fn growth(&self) -> Option<Length> {
        self.pitch().and_then(|_| self.nominal().growth().ok())
    }

    pub(crate) fn stress_at_solid(&self) -> Option<Pressure> {
        let load = self.rate?.value * (self.free()? - self.solid()?.least);
        Some(stress::uncorrected(load, self.diameters()?))
    }

    pub(crate) fn shear(&self) -> Option<Pressure> {
        self.drawing.shear().map(|shear| shear.nominal())
    }

    fn note_dead_turns(&self, context: &mut Context<'_>, at: &Path) {
        let Ok(budget) = propagation::rate(&self.drawing) else { return };
        let largest = budget.largest().filter(|part| part.input == Figure::DeadTurns);
        let Some(of_ends) = largest.map(|part| (part.doubt / budget.value).value) else { return };
        if of_ends > 0.02 {
            let percent =
                context.format.say::<quantity::Share>(libm::round(of_ends * 1000.0) / 1000.0);
            let text = text!(
                "{}: the dead turns are not known exactly. That puts {percent} of doubt into the rate, more than anything else here.",
                self.name
            );
            context.note(&at.field("dead_turns"), "dead-turns-doubt", text);
        }
    }

    fn check_solid(&self, context: &mut Context<'_>, at: &Path, entry: &Entered) {
        let (Some(free), Ok(height)) = (self.free(), self.nominal().solid()) else { return };
        let stated = self.drawing.solid.is_some();
        // A bar that makes no coil has a problem of its own.
        if height < free || !stated && self.diameters().is_none() {
            return;
        }
        let why = text!(
            "the coil would be solid at {}, and its free height is {}",
            context.format.decimal(height),
            context.format.decimal(free)
        );
        let (at, read) = if stated {
            (entry.solid().path(at), entry.solid().written())
        } else {
            (entry.turns().path(at), entry.turns().written())
        };
        let expected = "a solid height below the free height";
        context.problem(Problem::new(&at, "solid-not-below-free", read, expected, &why, ""));
    }
}

fn limits(
    context: &mut Context<'_>,
    at: &Path,
    drawing: &Entered,
    free: Option<Length>,
) -> Option<Limits> {
    let (at, entry) = context.object(at, drawing.limits())?;
    let under = context.read(&at, entry.under());
    let over = context.read(&at, entry.over());
    let least = context.read(&at, entry.least());
    let most = context.read(&at, entry.most());
    let from_book = |by: Option<Length>, sign: f64| Some(free? + by? * sign);
    let least = least.or_else(|| from_book(under, -1.0));
    let most = most.or_else(|| from_book(over, 1.0));
    if least.is_none() && most.is_none() {
        if under.is_some() || over.is_some() {
            let text = "A limit under or over the book figure needs the book figure beside it.";
            context.note(&at, "limits-without-book", text);
        }
        return None;
    }
    let limits = Limits::new(least, most);
    if let Err(error) = limits {
        let example = "least 13 13/16, most 14 1/16";
        context.problem(Problem::said(
            &at,
            "limits-crossed",
            &error.say(context.system()),
            example,
        ));
    }
    limits.ok()
}

/// The bar, and the first diameter that makes a coil of it.
fn sizes(
    context: &mut Context<'_>,
    at: &Path,
    entry: &Entered,
) -> (Option<Length>, Option<(DiameterKind, Length)>) {
    let bar = context.read(at, entry.bar());
    let given = [
        (entry.outside(), DiameterKind::Outside),
        (entry.mean(), DiameterKind::Mean),
        (entry.inside(), DiameterKind::Inside),
    ]
    .map(|(field, across)| (field, across, context.read(at, field)));
    let Some(bar) = bar else {
        return (None, given.into_iter().find_map(|(_, across, size)| Some((across, size?))));
    };
    let mut found: Option<(Diameters, (DiameterKind, Length))> = None;
    for (field, across, size) in given {
        let Some(size) = size else { continue };
        match (across.coil(bar, size), found) {
            (Ok(coil), None) => found = Some((coil, (across, size))),
            (Ok(coil), Some((first, _))) if (coil.mean() - first.mean()).abs().value > 1e-9 => {
                let first = context.format.decimal(first.mean());
                let why = text!(
                    "with this bar it gives another mean diameter than the {first} given before"
                );
                let expected = "one diameter, or several that agree";
                context.problem(Problem::new(
                    &field.path(at),
                    "diameters-disagree",
                    field.written(),
                    expected,
                    &why,
                    "",
                ));
            }
            (Ok(_), Some(_)) => {}
            (Err(error), _) => {
                let example = context.format.decimal(bar * 6.0).to_string();
                let message = error.say(context.system());
                context.problem(Problem::said(&field.path(at), "no-hole", &message, &example));
            }
        }
    }
    (Some(bar), found.map(|(_, diameter)| diameter))
}

/// The turns in all, and those that lie dead where the form of the ends does not say it: active turns
/// as given, else the total less the dead ones.
fn turns(
    context: &mut Context<'_>,
    at: &Path,
    entry: &Entered,
    ends: Option<Ends>,
) -> (Option<f64>, Option<Given<f64>>) {
    let total = context.read(at, entry.turns());
    let dead = context.read(at, entry.dead_turns());
    let active = context.read(at, entry.active_turns());
    let usual = dead.map(|dead| dead.nominal()).or(ends.map(Ends::dead_turns));
    let (field, total, dead) = match (total, active) {
        (Some(total), Some(active)) => ("active_turns", total, Some(Given::exact(total - active))),
        (None, Some(active)) => {
            let dead = usual.unwrap_or(0.0);
            ("active_turns", active + dead, Some(Given::exact(dead)))
        }
        (Some(total), None) => (if dead.is_some() { "dead_turns" } else { "turns" }, total, dead),
        (None, None) => return (None, dead),
    };
    let Some(lying) = dead.map(|dead| dead.nominal()).or(usual) else { return (Some(total), None) };
    let Err(error) = Turns::new(total, lying) else { return (Some(total), dead) };
    let message = error.say(context.system());
    context.problem(Problem::said(&at.field(field), "too-few-turns", &message, "7 1/4"));
    (None, None)
}

/// What a coil is wound of.
struct Metal {
    shear: Option<Given<Pressure>>,
    youngs: Option<Pressure>,
    /// The steel that is named; the row that stands for one that is not known names nothing.
    named: Option<Steel>,
    steel: Option<Steel>,
    source: String,
    row: Option<&'static str>,
}

impl Metal {
    /// Without a steel named, that is only worth a note where the drawing puts one to work.
    fn read(context: &mut Context<'_>, at: &Path, entry: &Entered, at_work: bool) -> Self {
        let shear = context.read(at, entry.shear_modulus());
        let youngs = context.read(at, entry.youngs_modulus());
        let named = context.read(at, entry.steel());
        let unknown = context.tables.steels.first().copied();
        let steel = named.or(unknown);
        if let (None, None, true, Some(steel)) = (named, shear, at_work, &steel) {
            let text = text!("No steel is named: {} is taken.", steel.name());
            context.note(&entry.steel().path(at), "steel-assumed", text);
        }
        let (source, row) = match (shear, &steel) {
            (None, Some(steel)) => {
                (text!("{}: {}", steel.name(), steel.shear_modulus().source), steel.row())
            }
            _ => ("shear modulus as given".to_owned(), None),
        };
        Self {
            shear: shear.map(Given::exact).or(steel.as_ref().map(shear_of)),
            youngs: youngs.or(steel.map(|steel| steel.youngs_modulus().value)),
            named: named.filter(|named| unknown.is_none_or(|unknown| unknown.id() != named.id())),
            steel,
            source,
            row,
        }
    }
}

/// A row that lacks its height or its load says nothing yet.
fn stated(context: &mut Context<'_>, at: &Path, entry: &Entered) -> Vec<LoadPoint> {
    let mut found = Vec::new();
    for (at, item) in context.list(at, entry.loads()) {
        let Some((at, point)) = context.object(&at, item) else { continue };
        let height = context.read(&at, point.height());
        let load = context.read(&at, point.load());
        let off = context.read(&at, point.tolerance());
        let Some((height, load)) = height.zip(load) else { continue };
        found.push(LoadPoint { height, load: Tolerance::given(off, load) });
    }
    found
}

fn duty(
    context: &mut Context<'_>,
    at: &Path,
    entry: &Entered,
) -> (Option<(Force, Force)>, Option<Surface>) {
    let Some((at, duty)) = context.object(at, entry.duty()) else { return (None, None) };
    let least = context.read(&at, duty.least());
    let most = context.read(&at, duty.most());
    (least.zip(most), context.read(&at, duty.surface()))
}

/// Readings that lack a height or a load are left out; a row with neither is no reading yet.
fn press_test(
    context: &mut Context<'_>,
    at: &Path,
    entry: &Entered,
) -> (Vec<Reading>, Vec<Reading>) {
    let (mut loading, mut unloading) = (Vec::new(), Vec::new());
    for (at, item) in context.list(at, entry.press_test()) {
        let Some((at, point)) = context.object(&at, item) else { continue };
        let height = context.read(&at, point.height());
        let load = context.read(&at, point.load());
        let way = context.read(&at, point.way());
        let Some((height, load)) = height.zip(load) else { continue };
        match way {
            Some(Way::Unloading) => unloading.push(Reading { height, load }),
            _ => loading.push(Reading { height, load }),
        }
    }
    (loading, unloading)
}
