//! Buckling, lateral rate and surge of a coil against what a column of its stiffness does, worked out
//! step by step along it; bar and mass against the helix in space.

use approx::{assert_abs_diff_eq, relative_eq};
use coilnest::coil::buckling::{self, Seating};
use coilnest::coil::ends::{Ends, Turns};
use coilnest::coil::lateral::{self, LateralError};
use coilnest::coil::surge::{self, Kept};
use coilnest::coil::{Diameters, bar, rate};
use coilnest::quantity::unit::{
    hertz, kilogram, kilogram_per_cubic_meter, meter, newton_per_meter, pascal,
};
use coilnest::quantity::{Length, Mass, MassDensity, Pressure, SpringRate};
use proptest::prelude::*;
use std::f64::consts::PI;

const YOUNGS: f64 = 206e9;
const TURNS: f64 = 7.0;

fn metres(x: f64) -> Length {
    Length::new::<meter>(x)
}

/// Haringx's column in the place of a coil: its stiffness against bending and against shear follows
/// from the bending and twisting of the bar, and shrinks with the height in which the turns stand.
struct Column {
    height: f64,
    load: f64,
    bending: f64,
    shear: f64,
}

/// A coil with its free height, and its rate by the library.
#[derive(Clone, Copy, Debug)]
struct Coil {
    bar: f64,
    mean: f64,
    free: f64,
    poisson: f64,
}

impl Coil {
    fn diameters(self) -> Diameters {
        Diameters::from_mean(metres(self.bar), metres(self.mean)).unwrap()
    }

    fn shear_modulus(self) -> f64 {
        YOUNGS / (2.0 * (1.0 + self.poisson))
    }

    fn rate(self) -> SpringRate {
        let modulus = Pressure::new::<pascal>(self.shear_modulus());
        rate::rate(modulus, self.diameters(), Turns::new(TURNS, 0.0).unwrap())
    }

    fn column(self, deflection: f64) -> Column {
        let height = self.free - deflection;
        let second_moment = PI * self.bar.powi(4) / 64.0;
        let (bend, twist) = (YOUNGS * second_moment, self.shear_modulus() * 2.0 * second_moment);
        // One turn under a moment across the axis tilts by M·(πD/2)·(1/EI + 1/GJ), half the bar being
        // bent and half twisted; under a load across the axis it moves by Q·πD³/(8 EI).
        let turns_per_height = TURNS / height;
        Column {
            height,
            load: self.rate().value * deflection,
            bending: 1.0 / (turns_per_height * PI * self.mean / 2.0 * (1.0 / bend + 1.0 / twist)),
            shear: 1.0 / (turns_per_height * PI * self.mean.powi(3) / (8.0 * bend)),
        }
    }

    fn buckles(self, seating: Seating) -> Option<f64> {
        buckling::deflection(self.diameters(), metres(self.free), seating, self.poisson)
            .map(|deflection| deflection.value)
    }
}

/// Sideways movement, tilt and moment at the top of a column.
type Top = [f64; 3];

impl Column {
    /// From what stands at its foot: tilt, moment, and load across the axis.
    ///
    /// ```text
    /// y' = ψ + (H + P ψ)/S      ψ' = M/B      M' = −P y' − H
    /// ```
    /// The shear is that across the tilted section, as Haringx has it.
    fn top(&self, tilt: f64, moment: f64, across: f64) -> Top {
        const STEPS: u32 = 400;
        let slope = |[_, tilt, moment]: Top| {
            let rise = tilt + (across + self.load * tilt) / self.shear;
            [rise, moment / self.bending, -self.load * rise - across]
        };
        let after = |at: Top, slope: Top, step: f64| {
            [at[0] + slope[0] * step, at[1] + slope[1] * step, at[2] + slope[2] * step]
        };
        let step = self.height / f64::from(STEPS);
        let mut at = [0.0, tilt, moment];
        for _ in 0..STEPS {
            let first = slope(at);
            let second = slope(after(at, first, step / 2.0));
            let third = slope(after(at, second, step / 2.0));
            let fourth = slope(after(at, third, step));
            for (place, value) in at.iter_mut().enumerate() {
                *value += step / 6.0
                    * (first[place] + 2.0 * (second[place] + third[place]) + fourth[place]);
            }
        }
        at
    }

    /// Nought when the column can stand bent between its seats; of one sign until it first can.
    fn bent(&self, seating: Seating) -> f64 {
        let unit_moment = self.load * self.height;
        let tilted = self.top(1.0, 0.0, 0.0);
        let turned = self.top(0.0, unit_moment, 0.0);
        let pushed = self.top(0.0, 0.0, self.load);
        let determinant =
            |a: Top, b: Top, (i, j): (usize, usize)| (a[i] * b[j] - a[j] * b[i]) / self.height;
        match seating {
            // A load across would turn it: with both tips in line and pivoted there is none.
            Seating::BothPivoted => tilted[0] / self.height,
            Seating::Sliding => turned[1],
            Seating::OneFree => turned[2] / unit_moment,
            Seating::Guided => determinant(turned, pushed, (0, 1)),
            Seating::OnePivoted => determinant(turned, pushed, (0, 2)) / unit_moment,
        }
    }

    /// Load across over movement across, both seats flat.
    fn lateral_rate(&self) -> f64 {
        let (turned, pushed) = (self.top(0.0, 1.0, 0.0), self.top(0.0, 0.0, 1.0));
        let moment = -pushed[1] / turned[1];
        1.0 / (moment * turned[0] + pushed[0])
    }
}

fn any_coil() -> impl Strategy<Value = Coil> {
    (0.005..0.05, 3.0..14.0, 1.5..14.0, 0.05..0.45).prop_map(|(bar, index, slender, poisson)| {
        let mean: f64 = bar * index;
        Coil { bar, mean, free: mean * slender, poisson }
    })
}

/// Seatings whose coefficient is exact.
const EXACT: [Seating; 4] =
    [Seating::Guided, Seating::BothPivoted, Seating::Sliding, Seating::OneFree];

proptest! {
    /// P (1 + P/S) = π² B/(ν L)², at every coefficient, whatever it was seated on.
    #[test]
    fn the_standards_buckling_is_haringxs(coil in any_coil(), place in 0_usize..5) {
        let seating = Seating::ALL[place];
        let Some(deflection) = coil.buckles(seating) else {
            // No deflection satisfies it: the left side stays below.
            for share in 1..100 {
                let column = coil.column(coil.free * f64::from(share) / 100.0);
                let (held, bends) = sides(&column, seating);
                prop_assert!(held < bends, "{coil:?}");
            }
            return Ok(());
        };
        prop_assert!(deflection > 0.0 && deflection < coil.free);
        let (held, bends) = sides(&coil.column(deflection), seating);
        prop_assert!((held - bends).abs() <= 1e-9 * bends, "{coil:?}: {held} {bends}");
        // It is the first deflection that does.
        let (held, bends) = sides(&coil.column(deflection * 0.99), seating);
        prop_assert!(held < bends);
    }

    /// Bent shapes integrated from foot to top, with no coefficient: they fit between the seats at the
    /// deflection of buckling, and not before.
    #[test]
    fn a_column_bends_at_the_deflection_of_buckling(coil in any_coil(), place in 0_usize..4) {
        let seating = EXACT[place];
        let Some(deflection) = coil.buckles(seating) else { return Ok(()) };
        let stable = buckling::stable_free_height(coil.diameters(), seating, coil.poisson).value;
        // Near the height that never buckles the two roots meet, and the sign does not change.
        prop_assume!(coil.free > 1.05 * stable);
        let before = coil.column(deflection * 0.999).bent(seating);
        let after = coil.column(deflection * 1.001).bent(seating);
        prop_assert!(before * after < 0.0, "{coil:?} {seating:?}: {before} {after}");
        for share in 1..20 {
            let earlier = coil.column(deflection * f64::from(share) / 20.0).bent(seating);
            prop_assert!(earlier * before > 0.0, "{coil:?} {seating:?}: {earlier} {before}");
        }
    }

    #[test]
    fn the_lateral_rate_is_the_columns(coil in any_coil(), share in 0.01..0.95) {
        let limit = coil.buckles(Seating::Sliding).unwrap_or(coil.free);
        let deflection = share * limit;
        let found = lateral::rate(
            coil.rate(), coil.diameters(), metres(coil.free), metres(deflection), coil.poisson,
        ).unwrap();
        let integrated = coil.column(deflection).lateral_rate();
        prop_assert!((found.value / integrated - 1.0).abs() < 1e-6, "{coil:?}: {found:?} {integrated}");
    }

    /// It falls to zero where the coil buckles with a seat that slides, and is refused from there on.
    #[test]
    fn the_lateral_rate_ends_where_the_coil_buckles(coil in any_coil()) {
        let Some(most) = coil.buckles(Seating::Sliding) else { return Ok(()) };
        let at = |share: f64| {
            let (axial, diameters) = (coil.rate(), coil.diameters());
            lateral::rate(axial, diameters, metres(coil.free), metres(share * most), coil.poisson)
        };
        let upright = at(0.0).unwrap();
        prop_assert!(at(1.0 - 1e-7).unwrap() < upright * 1e-3);
        let refused = matches!(at(1.0 + 1e-9), Err(LateralError::FallsAside { .. }));
        prop_assert!(refused);
    }
}

/// Both sides of Haringx's equation.
fn sides(column: &Column, seating: Seating) -> (f64, f64) {
    let wave = PI / (seating.coefficient() * column.height);
    (column.load * (1.0 + column.load / column.shear), wave * wave * column.bending)
}

/// One end pivoted: 0.707 is the coefficient of a column that does not shear, 0.699, rounded up. A
/// slender coil stands a little longer than the standard has it, by up to 2 % of the deflection; one
/// shorter than 4.4 of its diameters, which shears more, falls earlier, as the module says of itself.
#[test]
fn one_pivoted_end_buckles_near_the_standard() {
    for (slender, earliest, latest) in [
        (3.75, 0.88, 0.90),
        (4.0, 0.97, 0.98),
        (4.4, 0.998, 1.0),
        (4.5, 1.0, 1.003),
        (6.0, 1.015, 1.017),
        (13.0, 1.0, 1.022),
    ] {
        let coil = Coil { bar: 0.01, mean: 0.06, free: 0.06 * slender, poisson: 0.3 };
        let deflection = coil.buckles(Seating::OnePivoted).unwrap();
        let bent = |share| coil.column(deflection * share).bent(Seating::OnePivoted);
        for share in [0.2, 0.4, 0.6, 0.8, earliest] {
            assert!(bent(share) < 0.0, "{slender}: bent by {share}");
        }
        assert!(bent(latest) > 0.0, "{slender}: not bent by {latest}");
    }
}

/// The first frequency of a chain of point masses and short springs, by halving: the count of
/// negative pivots of `K − ω² M` is the count of frequencies below ω.
fn chain(rate: f64, mass: f64, kept: Kept) -> f64 {
    const LINKS: u32 = 600;
    let (stiff, heavy) = (rate * f64::from(LINKS), mass / f64::from(LINKS));
    let below = |frequency: f64| {
        let omega_squared = (2.0 * PI * frequency).powi(2);
        let mut negative = 0;
        let mut pivot = f64::INFINITY;
        // The last mass is held by one spring, and is half a piece, when its end is free.
        let inner = (1..LINKS).map(|_| (2.0 * stiff, heavy));
        let free = matches!(kept, Kept::One).then_some((stiff, heavy / 2.0));
        for (spring, mass) in inner.chain(free) {
            pivot = spring - omega_squared * mass - stiff * stiff / pivot;
            negative += u32::from(pivot < 0.0);
        }
        negative
    };
    let (mut low, mut high) = (0.0, (rate / mass).sqrt());
    for _ in 0..60 {
        let middle = f64::midpoint(low, high);
        if below(middle) == 0 { low = middle } else { high = middle }
    }
    low
}

#[test]
fn a_coil_surges_as_a_chain_of_masses_does() {
    for (newtons_per_metre, kilograms) in [(250_000.0, 14.0), (3000.0, 0.02)] {
        for kept in [Kept::Both, Kept::One] {
            let rate = SpringRate::new::<newton_per_meter>(newtons_per_metre);
            let mass = Mass::new::<kilogram>(kilograms);
            let found = surge::first(rate, mass, kept).get::<hertz>();
            let chain = chain(newtons_per_metre, kilograms, kept);
            // A chain of 600 is slow by (π/1200)²/6 of it.
            assert!(relative_eq!(found, chain, max_relative = 2e-6), "{kept:?}: {found} {chain}");
        }
    }
}

/// A point of the bar's centre, so many turns along.
fn centre(coil: &Coil, pitch: f64, turn: f64) -> [f64; 3] {
    let angle = 2.0 * PI * turn;
    let radius = coil.mean / 2.0;
    [radius * libm::cos(angle), radius * libm::sin(angle), pitch * turn]
}

/// Chords of the helix, added up.
#[test]
fn the_bar_is_as_long_as_its_helix() {
    const CHORDS_A_TURN: u32 = 2000;
    for (mean, pitch, turns) in [(0.15, 0.05, 6.5_f64), (0.04, 0.006, 11.0), (0.2, 0.1, 3.25)] {
        let coil = Coil { bar: 0.02, mean, free: 1.0, poisson: 0.3 };
        let chords = (turns * f64::from(CHORDS_A_TURN)).round();
        let mut length = 0.0;
        let mut from = centre(&coil, pitch, 0.0);
        let mut at = 0.0;
        while at < chords {
            at += 1.0;
            let to = centre(&coil, pitch, turns * at / chords);
            let step = [to[0] - from[0], to[1] - from[1], to[2] - from[2]];
            length += step.iter().map(|part| part * part).sum::<f64>().sqrt();
            from = to;
        }
        let found = bar::length(coil.diameters(), metres(pitch), turns).value;
        // A chord is shorter than its arc by (π/2000)²/6 of it at most.
        assert!(relative_eq!(found, length, max_relative = 1e-6), "{found} {length}");
        assert!(found > length);
    }
}

/// A coil from tip to tip by steps along it, each as steep as the part that it lies in: end turns lie
/// bar on bar, so that a steep short coil has far less bar in them than in its active turns.
#[test]
fn the_whole_bar_is_as_long_as_its_parts() {
    const STEPS: u32 = 60_000;
    for (bar, mean, pitch, total, dead) in
        [(0.03, 0.15, 0.05, 6.5, 1.5), (0.01, 0.04, 0.045, 3.5, 2.0), (0.02, 0.1, 0.03, 9.0, 2.0)]
    {
        let turns = Turns::new(total, dead).unwrap();
        let coil = Coil { bar, mean, free: 1.0, poisson: 0.3 };
        let mut length = 0.0;
        for step in 0..STEPS {
            let turn = total * (f64::from(step) + 0.5) / f64::from(STEPS);
            let lies_dead = turn < dead / 2.0 || turn > total - dead / 2.0;
            let rise = if lies_dead { bar } else { pitch };
            let (across, along) = (PI * mean, rise);
            length += (across * across + along * along).sqrt() * total / f64::from(STEPS);
        }
        let whole = |ends| bar::whole(coil.diameters(), metres(pitch), turns, ends).value;
        for ends in [Some(Ends::TaperedGround), Some(Ends::Closed), None] {
            assert!(
                relative_eq!(whole(ends), length, max_relative = 2e-5),
                "{ends:?}: {} {length}",
                whole(ends)
            );
        }
        // Open and ground, all turns have one pitch.
        let all = bar::length(coil.diameters(), metres(pitch), total).value;
        assert_abs_diff_eq!(whole(Some(Ends::OpenGround)), all, epsilon = 1e-12);
        assert!(all > whole(None));
    }
}

/// The volume inside the bar's surface, by the divergence theorem on a mesh of triangles.
#[test]
fn the_bar_weighs_what_its_surface_holds() {
    const ROUND: u32 = 96;
    const ALONG: u32 = 400;
    const STEEL: f64 = 7850.0;
    let coil = Coil { bar: 0.03, mean: 0.12, free: 1.0, poisson: 0.3 };
    let (pitch, turns) = (0.055, 2.0);
    let angle = bar::pitch_angle(coil.diameters(), metres(pitch)).value;
    let surface = |along: u32, round: u32| {
        let turn = turns * f64::from(along) / f64::from(ALONG);
        let about = 2.0 * PI * f64::from(round % ROUND) / f64::from(ROUND);
        let at = centre(&coil, pitch, turn);
        let (sine, cosine) = (libm::sin(2.0 * PI * turn), libm::cos(2.0 * PI * turn));
        // Normal of the helix outward, binormal across the bar.
        let (out, up) = (coil.bar / 2.0 * libm::cos(about), coil.bar / 2.0 * libm::sin(about));
        [
            at[0] + out * cosine + up * libm::sin(angle) * sine,
            at[1] + out * sine - up * libm::sin(angle) * cosine,
            at[2] + up * libm::cos(angle),
        ]
    };
    let volume = |a: [f64; 3], b: [f64; 3], c: [f64; 3]| {
        let cross =
            [b[1] * c[2] - b[2] * c[1], b[2] * c[0] - b[0] * c[2], b[0] * c[1] - b[1] * c[0]];
        (a[0] * cross[0] + a[1] * cross[1] + a[2] * cross[2]) / 6.0
    };
    let mut total = 0.0;
    for round in 0..ROUND {
        for along in 0..ALONG {
            let (a, b) = (surface(along, round), surface(along + 1, round));
            let (c, d) = (surface(along + 1, round + 1), surface(along, round + 1));
            total += volume(a, b, c) + volume(a, c, d);
        }
        // Both faces of the cut bar.
        for (along, way) in [(0, 1.0), (ALONG, -1.0)] {
            let middle = centre(&coil, pitch, turns * f64::from(along) / f64::from(ALONG));
            total += way * volume(middle, surface(along, round), surface(along, round + 1));
        }
    }
    let density = MassDensity::new::<kilogram_per_cubic_meter>(STEEL);
    let length = bar::length(coil.diameters(), metres(pitch), turns);
    let found = bar::mass(coil.diameters(), length, density).get::<kilogram>();
    // A polygon of 96 sides holds 2π²/3/96² = 0.07 % less than its circle.
    let ratio = total.abs() * STEEL / found;
    assert!((0.999..0.9996).contains(&ratio), "{ratio}");
}
