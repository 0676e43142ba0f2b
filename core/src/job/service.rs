//! What a drawing says of its tolerances and of the coil at work: read for every report, reckoned
//! with on the coil's sheet.

use super::desk::Desk;
use super::entry::{Entry, List, Text};
use super::input::{Drawing, LoadEntry, PressPoint};
use super::problem::Path;
use super::tolerance::{self, Tolerance};
use crate::bounds;
use crate::coil::buckling::Seating;
use crate::coil::fatigue::Surface;
use crate::drawing::LoadPoint;
use crate::load_test::{Reading, Way};
use crate::material::{Against, Presetting};
use crate::quantity::{Force, Length, SpringRate};

/// How far the figures may be off, as far as that is given.
#[derive(Clone, Copy, Debug, Default)]
pub(crate) struct Tolerances {
    pub(crate) bar: Option<Tolerance<Length>>,
    pub(crate) diameter: Option<Tolerance<Length>>,
    pub(crate) turns: Option<Tolerance<f64>>,
    pub(crate) free: Option<Tolerance<Length>>,
    pub(crate) rate: Option<Tolerance<SpringRate>>,
    pub(crate) solid: Option<Tolerance<Length>>,
}

/// A coil at work, as far as its drawing tells.
#[derive(Clone, Debug)]
pub(crate) struct Service {
    pub(crate) tolerances: Tolerances,
    /// Loads that are stated at heights.
    pub(crate) stated: Vec<LoadPoint>,
    /// The lesser and the greater load.
    pub(crate) loads: Option<(Force, Force)>,
    pub(crate) surface: Surface,
    pub(crate) seating: Seating,
    pub(crate) presetting: Presetting,
    pub(crate) loading: Vec<Reading>,
    pub(crate) unloading: Vec<Reading>,
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

/// Reads what a drawing says beyond its sizes.
pub(crate) fn read(desk: &mut Desk<'_>, at: &Path, drawing: &Drawing) -> Service {
    let seating = desk.word(at, "seating", &drawing.seating, &SEATINGS);
    let presetting = [("yes", Presetting::SetRemoved), ("no", Presetting::AsWound)];
    let presetting = desk.word(at, "set_removed", &drawing.set_removed, &presetting);
    let tolerances = tolerances(desk, &at.field("tolerances"), drawing);
    let stated = stated(desk, &at.field("loads"), &drawing.loads);
    let (loads, surface) = duty(desk, &at.field("duty"), drawing);
    let (loading, unloading) = press_test(desk, &at.field("press_test"), &drawing.press_test);
    Service {
        tolerances,
        stated,
        loads,
        surface: surface.unwrap_or(Surface::Unpeened),
        seating: seating.unwrap_or(Seating::Guided),
        presetting: presetting.unwrap_or(Presetting::AsWound),
        loading,
        unloading,
    }
}

fn tolerances(desk: &mut Desk<'_>, at: &Path, drawing: &Drawing) -> Tolerances {
    let Some(entry) = desk.object(at, &drawing.tolerances) else { return Tolerances::default() };
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
    drawing: &Drawing,
) -> (Option<(Force, Force)>, Option<Surface>) {
    let Some(entry) = desk.object(at, &drawing.duty) else { return (None, None) };
    let least = desk.quantity(at, "least", &entry.least, &bounds::LOAD);
    let most = desk.quantity(at, "most", &entry.most, &bounds::LOAD);
    let words = [("peened", Surface::Peened), ("unpeened", Surface::Unpeened)];
    let surface = desk.word(at, "surface", &entry.surface, &words);
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
