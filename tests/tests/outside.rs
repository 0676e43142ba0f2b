//! The library against tables that general numerical packages made, each kept in `data/` and made by a
//! script of `outside/`, whose README says with which packages. Nothing here runs them.

mod columns;
mod doubts;
mod matching;
mod nests;
mod rail_coils;
mod ranges;

use coilnest::coil::DiameterKind;
use coilnest::coil::Diameters;
use coilnest::nest::{Law, Member, Nest};
use coilnest::quantity::unit::{megapascal, millimeter, newton, newton_per_millimeter};
use coilnest::quantity::{Force, Length, Pressure, SpringRate};
use serde::Deserialize;

fn mm(x: f64) -> Length {
    Length::new::<millimeter>(x)
}

fn newtons(x: f64) -> Force {
    Force::new::<newton>(x)
}

fn newtons_per_mm(x: f64) -> SpringRate {
    SpringRate::new::<newton_per_millimeter>(x)
}

fn megapascals(x: f64) -> Pressure {
    Pressure::new::<megapascal>(x)
}

#[track_caller]
fn assert_near(found: f64, expected: f64, relative: f64, what: &str) {
    let off = (found / expected - 1.0).abs();
    assert!(off <= relative, "{what}: {found} for {expected}, {off:e} off");
}

/// The diameter that a table gives.
#[derive(Clone, Copy, Debug, Deserialize)]
#[serde(rename_all = "kebab-case")]
enum Drawn {
    Mean,
    Outside,
    Inside,
}

impl From<Drawn> for DiameterKind {
    fn from(drawn: Drawn) -> Self {
        match drawn {
            Drawn::Mean => Self::Mean,
            Drawn::Outside => Self::Outside,
            Drawn::Inside => Self::Inside,
        }
    }
}

/// A coil of a nest.
#[derive(Debug, Deserialize)]
struct Coil {
    rate: f64,
    free: f64,
    solid: Option<f64>,
    raise: f64,
}

fn nest<'a>(coils: impl IntoIterator<Item = &'a Coil>) -> Nest {
    let member = |coil: &Coil| Member {
        free: mm(coil.free),
        law: Law::linear(newtons_per_mm(coil.rate)).unwrap(),
        solid: coil.solid.map(mm),
        raise: mm(coil.raise),
    };
    Nest::new(coils.into_iter().map(member).collect()).unwrap()
}

fn diameters(bar: f64, mean: f64) -> Diameters {
    Diameters::from_mean(mm(bar), mm(mean)).unwrap()
}
