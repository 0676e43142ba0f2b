//! A coil of a job, as its drawing is read: once, for all that asks of it.

use super::desk::Desk;
use super::entry::{Entry, List, Text};
use super::figures::text;
use super::input::{Drawing as Entered, LoadEntry, PressPoint};
use super::problem::Path;
use super::report::Problem;
use super::tolerance::{self, Tolerance};
use crate::bounds;
use crate::coil::buckling::Seating;
use crate::coil::ends::{DEAD_TURNS_DOUBT, Ends, Turns};
use crate::coil::fatigue::Surface;
use crate::coil::solid::Solid;
use crate::coil::{Across, Coiling, Diameters, EndsTurn, Hand, stress};
use crate::drawing::{Drawing, Figure, Given, LoadPoint, Point, dead_within, shear_of};
use crate::load_test::{Reading, Way};
use crate::material::{Against, Presetting, Steel};
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

/// The words of a job file for how the ends are kept.
pub(crate) const SEATINGS: [(&str, Seating); 5] = [
    ("guided", Seating::Guided),
    ("one-pivoted", Seating::OnePivoted),
    ("both-pivoted", Seating::BothPivoted),
    ("sliding", Seating::Sliding),
    ("one-free", Seating::OneFree),
];

/// Which stress a stated one is meant for. Where nobody says, the one that is greatest: what is left
/// out never makes a coil look better.
pub(crate) fn stress_factor(desk: &mut Desk<'_>, at: &Path, entry: &Entry<Text>) -> Against {
    let words = [
        ("uncorrected", Against::Plain),
        ("bergstrasser", Against::Curvature),
        ("wahl", Against::Wahl),
    ];
    desk.word(at, "stress_factor", entry, &words).unwrap_or(Against::Wahl)
}

impl Coil {
    /// Reads what a tape is held against: the coil's name, its free height and the limits of its book.
    pub(crate) fn of_book(desk: &mut Desk<'_>, at: &Path, _: usize, entry: &Entered) -> Self {
        let id = desk.text(at, "id", &entry.id).unwrap_or_default().to_owned();
        let name = desk.text(at, "name", &entry.name).unwrap_or(&id).to_owned();
        let free = desk.length(at, "free", &entry.free, &bounds::FREE_HEIGHT);
        let limits = limits(desk, at, entry, free);
        let drawing = Drawing { free: free.map(Given::as_drawn), ..Drawing::default() };
        Self { id, name, drawing, limits, ..Self::default() }
    }

    /// Reads a coil. By its number coils know that they share a drawing.
    pub(crate) fn read(desk: &mut Desk<'_>, at: &Path, number: usize, entry: &Entered) -> Self {
        let book = Self::of_book(desk, at, number, entry);
        let (free, limits) = (book.free(), book.limits);
        let hands = [("left", Hand::Left), ("right", Hand::Right)];
        let hand = desk.word(at, "hand", &entry.hand, &hands);
        let (bar, diameter) = sizes(desk, at, entry);
        let ends = desk.word(at, "ends", &entry.ends, &ENDS).flatten();
        let (total, dead_turns) = turns(desk, at, entry, ends);
        let sized = bar.is_some() && diameter.is_some();
        let at_work = sized && total.is_some() && (dead_turns.is_some() || ends.is_some());
        let metal = Metal::read(desk, at, entry, at_work);
        let rate = desk.quantity(at, "rate", &entry.rate, &bounds::RATE);
        let turn = [("held", EndsTurn::Held), ("free", EndsTurn::Free)];
        let ends_turn = desk.word(at, "ends_turn", &entry.ends_turn, &turn);
        let solid = desk.length(at, "solid", &entry.solid, &bounds::SOLID_HEIGHT);
        let seating = desk.word(at, "seating", &entry.seating, &SEATINGS);
        let presetting = [("yes", Presetting::SetRemoved), ("no", Presetting::AsWound)];
        let presetting = desk.word(at, "set_removed", &entry.set_removed, &presetting);
        let within = tolerances(desk, &at.field("tolerances"), entry);
        let loads = stated(desk, &at.field("loads"), &entry.loads);
        let (duty, surface) = duty(desk, &at.field("duty"), entry);
        let pressed = press_test(desk, &at.field("press_test"), &entry.press_test);
        let length = |off, size: Option<Length>| Some(Tolerance::given(off, size?));
        let by_book = |free| {
            let limits = limits.filter(|_| within.free.is_none())?;
            Given::between(free, limits.least(), limits.most()).ok()
        };
        let drawing = Drawing {
            bar: length(within.bar, bar),
            diameter: diameter
                .map(|(across, size)| (across, Tolerance::given(within.diameter, size))),
            total_turns: total.map(|total| Tolerance::given(within.turns, total)),
            dead_turns,
            ends,
            hand,
            coiling: bar.filter(|_| sized).map(|bar| Coiling::of_bar(bar, ends)),
            free: free.and_then(by_book).or(length(within.free, free)),
            solid: length(within.solid, solid),
            rate: rate.map(|rate| Tolerance::given(within.rate, rate)),
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
        coil.check_solid(desk, at, entry);
        coil.note_dead_turns(desk, at);
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

    fn note_dead_turns(&self, desk: &mut Desk<'_>, at: &Path) {
        let Ok(budget) = propagation::rate(&self.drawing) else { return };
        let largest = budget.largest().filter(|part| part.input == Figure::DeadTurns);
        let Some(of_ends) = largest.map(|part| (part.doubt / budget.value).value) else { return };
        if of_ends > 0.02 {
            let percent = desk.pen.say::<quantity::Share>(libm::round(of_ends * 1000.0) / 1000.0);
            let text = text!(
                "What is not known of the dead turns puts {percent} of doubt into the rate, more than anything else here."
            );
            desk.note(&at.field("dead_turns"), "dead-turns-doubt", text);
        }
    }

    fn check_solid(&self, desk: &mut Desk<'_>, at: &Path, entry: &Entered) {
        let (Some(free), Ok(height)) = (self.free(), self.nominal().solid()) else { return };
        let stated = self.drawing.solid.is_some();
        // A bar that makes no coil has a problem of its own.
        if height < free || !stated && self.diameters().is_none() {
            return;
        }
        let why = text!(
            "the coil would be solid at {}, and its free height is {}",
            desk.pen.decimal(height),
            desk.pen.decimal(free)
        );
        let (field, read) = if stated { ("solid", &entry.solid) } else { ("turns", &entry.turns) };
        let expected = "a solid height below the free height";
        let at = at.field(field);
        desk.problem(Problem::new(&at, "solid-not-below-free", read.written(), expected, &why, ""));
    }
}

fn limits(
    desk: &mut Desk<'_>,
    at: &Path,
    drawing: &Entered,
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
    if let Err(error) = limits {
        let example = "least 13 13/16, most 14 1/16";
        desk.problem(Problem::said(&at, "limits-crossed", &error.say(desk.system()), example));
    }
    limits.ok()
}

/// The bar, and the first diameter that makes a coil of it.
fn sizes(
    desk: &mut Desk<'_>,
    at: &Path,
    entry: &Entered,
) -> (Option<Length>, Option<(Across, Length)>) {
    let bar = desk.length(at, "bar", &entry.bar, &bounds::BAR);
    let mut size = |field, entry| desk.length(at, field, entry, &bounds::COIL_DIAMETER);
    let given = [
        ("outside", &entry.outside, size("outside", &entry.outside), Across::Outside),
        ("mean", &entry.mean, size("mean", &entry.mean), Across::Mean),
        ("inside", &entry.inside, size("inside", &entry.inside), Across::Inside),
    ];
    let Some(bar) = bar else {
        return (None, given.into_iter().find_map(|(_, _, size, across)| Some((across, size?))));
    };
    let mut found: Option<(Diameters, (Across, Length))> = None;
    for (field, entry, size, across) in given {
        let Some(size) = size else { continue };
        match (across.coil(bar, size), found) {
            (Ok(coil), None) => found = Some((coil, (across, size))),
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
            (Err(error), _) => {
                let example = desk.pen.decimal(bar * 6.0).to_string();
                let message = error.say(desk.system());
                desk.problem(Problem::said(&at.field(field), "no-hole", &message, &example));
            }
        }
    }
    (Some(bar), found.map(|(_, diameter)| diameter))
}

/// The turns in all, and those that lie dead where the form of the ends does not say it: active turns
/// as given, else the total less the dead ones.
fn turns(
    desk: &mut Desk<'_>,
    at: &Path,
    entry: &Entered,
    ends: Option<Ends>,
) -> (Option<f64>, Option<Given<f64>>) {
    let total = desk.quantity(at, "turns", &entry.turns, &bounds::TURNS);
    let dead = dead_turns(desk, at, entry);
    let active = desk.quantity(at, "active_turns", &entry.active_turns, &bounds::TURNS);
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
    let message = error.say(desk.system());
    desk.problem(Problem::said(&at.field(field), "too-few-turns", &message, "7 1/4"));
    (None, None)
}

/// Dead turns as written, with a doubt of their own behind `±` where one is.
fn dead_turns(desk: &mut Desk<'_>, at: &Path, entry: &Entered) -> Option<Given<f64>> {
    let text = desk.text(at, "dead_turns", &entry.dead_turns)?;
    let parts = text.split_once('±').or_else(|| plus_minus(text));
    let whole = parts.filter(|(count, half)| !count.trim().is_empty() && !half.trim().is_empty());
    let (count, half_width) = whole.unwrap_or((text, ""));
    let dead = desk.quantity(at, "dead_turns", &count.into(), &bounds::DEAD_TURNS)?;
    if half_width.trim().is_empty() {
        return dead_within(dead, DEAD_TURNS_DOUBT);
    }
    let half_width = desk.quantity(at, "dead_turns", &half_width.into(), &bounds::DEAD_TURNS)?;
    dead_within(dead, half_width)
}

/// Both sides of `+/-`, the sign that every keyboard has.
fn plus_minus(text: &str) -> Option<(&str, &str)> {
    let (before, after) = text.split_once('/')?;
    Some((before.strip_suffix('+')?, after.strip_prefix('-')?))
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
    fn read(desk: &mut Desk<'_>, at: &Path, entry: &Entered, at_work: bool) -> Self {
        let shear = desk.quantity(at, "shear_modulus", &entry.shear_modulus, &bounds::MODULUS);
        let youngs = desk.quantity(at, "youngs_modulus", &entry.youngs_modulus, &bounds::MODULUS);
        let words: Vec<(&'static str, Steel)> =
            desk.tables.steels.iter().map(|steel| (steel.id(), *steel)).collect();
        let named = desk.word(at, "steel", &entry.steel, &words);
        let unknown = desk.tables.steels.first().copied();
        let steel = named.or(unknown);
        if let (None, None, true, Some(steel)) = (named, shear, at_work, &steel) {
            let text = text!("No steel is named; reckoned as: {}.", steel.name());
            desk.note(&at.field("steel"), "steel-assumed", text);
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

/// How far the figures may be off, as far as that is given.
#[derive(Default)]
struct Tolerances {
    bar: Option<Tolerance<Length>>,
    diameter: Option<Tolerance<Length>>,
    turns: Option<Tolerance<f64>>,
    free: Option<Tolerance<Length>>,
    rate: Option<Tolerance<SpringRate>>,
    solid: Option<Tolerance<Length>>,
}

fn tolerances(desk: &mut Desk<'_>, at: &Path, entry: &Entered) -> Tolerances {
    let Some(entry) = desk.object(at, &entry.tolerances) else { return Tolerances::default() };
    Tolerances {
        bar: tolerance::length(desk, at, "bar", &entry.bar),
        diameter: tolerance::length(desk, at, "diameter", &entry.diameter),
        turns: tolerance::quantity(desk, at, "turns", &entry.turns, &bounds::TURNS_TOLERANCE),
        free: tolerance::length(desk, at, "free", &entry.free),
        rate: tolerance::quantity(desk, at, "rate", &entry.rate, &bounds::RATE_TOLERANCE),
        solid: tolerance::length(desk, at, "solid", &entry.solid),
    }
}

/// A row that lacks its height or its load says nothing yet.
fn stated(desk: &mut Desk<'_>, at: &Path, entry: &Entry<List<LoadEntry>>) -> Vec<LoadPoint> {
    let mut found = Vec::new();
    for (index, entry) in desk.list(at, entry).iter().enumerate() {
        let at = at.item(index);
        let Some(point) = desk.object(&at, entry) else { continue };
        let height = desk.length(&at, "height", &point.height, &bounds::HEIGHT);
        let load = desk.quantity(&at, "load", &point.load, &bounds::LOAD);
        let off =
            tolerance::quantity(desk, &at, "tolerance", &point.tolerance, &bounds::LOAD_TOLERANCE);
        let Some((height, load)) = height.zip(load) else { continue };
        found.push(LoadPoint { height, load: Tolerance::given(off, load) });
    }
    found
}

fn duty(
    desk: &mut Desk<'_>,
    at: &Path,
    entry: &Entered,
) -> (Option<(Force, Force)>, Option<Surface>) {
    let Some(duty) = desk.object(at, &entry.duty) else { return (None, None) };
    let least = desk.quantity(at, "least", &duty.least, &bounds::LOAD);
    let most = desk.quantity(at, "most", &duty.most, &bounds::LOAD);
    let words = [("peened", Surface::Peened), ("unpeened", Surface::Unpeened)];
    let surface = desk.word(at, "surface", &duty.surface, &words);
    (least.zip(most), surface)
}

/// Readings that lack a height or a load are left out; a row with neither is no reading yet.
fn press_test(
    desk: &mut Desk<'_>,
    at: &Path,
    entry: &Entry<List<PressPoint>>,
) -> (Vec<Reading>, Vec<Reading>) {
    let (mut loading, mut unloading) = (Vec::new(), Vec::new());
    for (index, entry) in desk.list(at, entry).iter().enumerate() {
        let at = at.item(index);
        let Some(point) = desk.object(&at, entry) else { continue };
        let height = desk.length(&at, "height", &point.height, &bounds::HEIGHT);
        let load = desk.quantity(&at, "load", &point.load, &bounds::LOAD);
        let ways = [("loading", Way::Loading), ("unloading", Way::Unloading)];
        let way = desk.word(&at, "way", &point.way, &ways);
        let Some((height, load)) = height.zip(load) else { continue };
        match way {
            Some(Way::Unloading) => unloading.push(Reading { height, load }),
            _ => loading.push(Reading { height, load }),
        }
    }
    (loading, unloading)
}
