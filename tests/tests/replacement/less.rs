//! Knowing less is never better: of random springs, whatever is left out or made vaguer, no line and no
//! whole gets a better answer.

use super::springs::{gpa, mm, mpa, newtons};
use coilnest::coil::DiameterKind;
use coilnest::coil::ends::Ends;
use coilnest::coil::{Coiling, Hand};
use coilnest::drawing::{Allowable, Drawing, Given, LoadPoint};
use coilnest::material::Against;
use coilnest::quantity::{Length, si};
use coilnest::replacement::{AllowedRange, Around, Asked, Case, Compliance, Overall, Seated};
use oorandom::Rand64;

/// How good an answer is to act on. What is not met and what cannot be told are both no.
pub(super) fn rank(verdict: &Compliance) -> u8 {
    match verdict {
        Compliance::NotMet | Compliance::CannotTell { .. } => 0,
        Compliance::MetAsDrawn { .. } => 1,
        Compliance::MetAtNominal => 2,
        Compliance::MetThroughout => 3,
    }
}

pub(super) fn rank_of_all(overall: Overall) -> u8 {
    match overall {
        Overall::No | Overall::CannotTell => 0,
        Overall::AsDrawn => 1,
        Overall::AtNominal => 2,
        Overall::True => 3,
    }
}

pub(super) struct Dice(pub(super) Rand64);

impl Dice {
    pub(super) fn between(&mut self, least: f64, most: f64) -> f64 {
        least + (most - least) * self.0.rand_float()
    }

    fn one_of<T: Copy>(&mut self, all: &[T]) -> T {
        let place = self.0.rand_range(0..all.len() as u64);
        all[usize::try_from(place).unwrap()]
    }

    pub(super) fn often(&mut self) -> bool {
        self.0.rand_float() < 0.7
    }

    /// Within a tolerance of up to a part of the figure, more or less even, or without one.
    fn given(&mut self, nominal: f64, part: f64) -> Given<f64> {
        let mut end = || self.often().then(|| self.between(0.0, part) * nominal);
        let (less, more) = (end(), end());
        let least = less.map(|less| nominal - less);
        Given::between(nominal, least, more.map(|more| nominal + more)).unwrap()
    }

    fn length(&mut self, nominal: f64, part: f64) -> Given<Length> {
        self.given(nominal, part).map(mm)
    }

    pub(super) fn maybe<T>(&mut self, value: T) -> Option<T> {
        self.often().then_some(value)
    }
}

/// A coil of which nearly all is known.
pub(super) struct Sizes {
    pub(super) bar: f64,
    pub(super) index: f64,
    pub(super) active: f64,
    pub(super) ends: Ends,
    pub(super) free: f64,
    pub(super) hand: Hand,
}

impl Sizes {
    pub(super) fn any(dice: &mut Dice) -> Self {
        let ends = dice.one_of(&Ends::ALL);
        let (bar, index, active) =
            (dice.between(3.0, 40.0), dice.between(3.5, 9.0), dice.between(3.0, 10.0));
        let solid = bar * (active + ends.dead_turns() + 1.0);
        let free = solid * dice.between(1.4, 2.2);
        Self { bar, index, active, ends, free, hand: dice.one_of(&[Hand::Left, Hand::Right]) }
    }

    /// One a little different, as a maker would offer it.
    pub(super) fn near(&self, dice: &mut Dice) -> Self {
        let mut off = |value: f64| value * dice.between(0.985, 1.015);
        Self {
            bar: off(self.bar),
            index: off(self.index),
            active: off(self.active),
            free: off(self.free),
            ..*self
        }
    }

    pub(super) fn scaled(&self, scale: f64) -> Self {
        let hand = if self.hand == Hand::Left { Hand::Right } else { Hand::Left };
        Self { bar: self.bar * scale, hand, ..*self }
    }

    pub(super) fn rate(&self) -> f64 {
        78_500.0 * self.bar / (8.0 * self.index.powi(3) * self.active)
    }

    pub(super) fn drawing(&self, dice: &mut Dice) -> Drawing {
        let mean = self.bar * self.index;
        let across =
            dice.one_of(&[DiameterKind::Mean, DiameterKind::Outside, DiameterKind::Inside]);
        let diameter = match across {
            DiameterKind::Mean => mean,
            DiameterKind::Outside => mean + self.bar,
            DiameterKind::Inside => mean - self.bar,
        };
        let dead = self.ends.dead_turns();
        let shear = Given::around(gpa(78.5), gpa(1.0), gpa(1.0)).unwrap();
        let per_m = |rate: f64| si(rate * 1e3);
        let allowable = Allowable {
            stress: mpa(dice.between(300.0, 1500.0)),
            against: dice.one_of(&[Against::Plain, Against::Curvature, Against::Wahl]),
        };
        let stated = dice.between(0.0, 1.0);
        let at = self.free * dice.between(0.75, 0.95);
        let load = self.rate() * (self.free - at);
        let load = dice.given(load, 0.05).map(newtons);
        let loads = vec![LoadPoint { height: mm(at), load }];
        Drawing {
            bar: Some(dice.length(self.bar, 0.01)),
            diameter: Some((across, dice.length(diameter, 0.01))),
            total_turns: Some(dice.given(self.active + dead, 0.02)),
            dead_turns: (stated < 0.2).then(|| Given::exact(dead)),
            ends: Some(self.ends),
            hand: Some(self.hand),
            coiling: dice.one_of(&[None, Some(Coiling::Cold), Some(Coiling::Hot)]),
            free: Some(dice.length(self.free, 0.01)),
            solid: None,
            rate: (stated > 0.7).then(|| dice.given(self.rate(), 0.05).map(per_m)),
            loads: if stated > 0.9 { loads } else { Vec::new() },
            shear_modulus: Some(shear),
            youngs_modulus: Some(gpa(206.0)),
            allowable: dice.maybe(allowable),
            tensile: dice.maybe(mpa(1500.0)),
            ..Drawing::default()
        }
    }
}

pub(crate) fn any_case(dice: &mut Dice) -> Case {
    let sizes = Sizes::any(dice);
    let near = if dice.often() { sizes.near(dice) } else { Sizes { ..sizes } };
    let (original, mut candidate) = (sizes.drawing(dice), near.drawing(dice));
    // Two of one steel that nobody names are compared as such only where neither has a strength.
    if original.allowable.is_none() {
        candidate.allowable = None;
    }
    let scale = 0.75 * (sizes.index - 1.0) / (sizes.index + 1.0);
    let mut neighbour = |scale: f64| {
        let spring = sizes.scaled(scale).drawing(dice);
        let there = dice.often();
        there.then(|| Seated { spring, raise: mm(0.0) })
    };
    let (outer, inner) = (neighbour(1.0 / scale), neighbour(scale));
    let working = mm(sizes.free * dice.between(0.72, 0.95));
    let around =
        |part: f64, value: f64| AllowedRange::between(value * (1.0 - part), value * (1.0 + part));
    let per_m = |rate: f64| si(rate * 1e3);
    let (rate, part) = (sizes.rate(), dice.between(0.05, 0.3));
    let asked = Asked {
        working: dice.maybe(working),
        rate: dice.maybe(around(part, rate).map(per_m)),
        free: dice.maybe(around(part / 4.0, sizes.free).map(mm)),
        gap: dice.maybe(mm(0.0)),
        nest_height: dice.maybe(AllowedRange::between(mm(sizes.free * 0.5), mm(sizes.free))),
        cycle: dice.maybe((newtons(0.1 * rate * sizes.bar), newtons(rate * sizes.bar))),
        ..Asked::default()
    };
    let nest = Around {
        outer: outer.into_iter().collect(),
        inner: inner.into_iter().collect(),
        raise: mm(0.0),
        load: Some(newtons(rate * (sizes.free - sizes.bar * (sizes.active + 3.0)).max(1.0) * 0.3)),
    };
    Case { nest: Some(nest), ..Case::new(original, candidate, asked) }
}

/// Whether what was left out had been stated beside other figures that say as much: then it was what was
/// not met, and without it the others speak. They may not speak better than that.
#[derive(Clone, Copy, PartialEq)]
pub(super) enum Left {
    Figure,
    Statement,
}

fn vaguer<Q>(dice: &mut Dice, given: &mut Given<Q>, more: impl Fn(Q, f64) -> Q)
where
    Q: Copy + core::fmt::Debug + PartialOrd,
{
    let part = dice.between(0.0, 0.03);
    let (least, most) = (given.least(), given.most());
    let vague = match dice.0.rand_range(0..4) {
        0 => Given::as_drawn(given.nominal()),
        1 => Given::between(given.nominal(), None, most).unwrap(),
        2 => Given::between(given.nominal(), least, None).unwrap(),
        _ => {
            let (less, more) =
                (least.map(|it| more(it, 1.0 - part)), most.map(|it| more(it, 1.0 + part)));
            Given::between(given.nominal(), less, more).unwrap()
        }
    };
    *given = vague;
}

/// The same spring, known less well.
pub(super) fn less(dice: &mut Dice, of: &mut Drawing) -> Left {
    let scaled = |length: Length, by: f64| length * by;
    match dice.0.rand_range(0..20) {
        0 => of.bar = None,
        1 => of.diameter = None,
        2 => of.total_turns = None,
        3 => of.ends = None,
        4 => of.hand = None,
        5 => of.free = None,
        6 => of.shear_modulus = None,
        7 => of.youngs_modulus = None,
        8 => of.tensile = None,
        9 => {
            of.rate = None;
            return Left::Statement;
        }
        10 => {
            of.loads.clear();
            return Left::Statement;
        }
        11 => of.dead_turns = None,
        12 | 13 => of.bar.iter_mut().for_each(|it| vaguer(dice, it, scaled)),
        14 | 15 => of.diameter.iter_mut().for_each(|(_, it)| vaguer(dice, it, scaled)),
        16 => of.total_turns.iter_mut().for_each(|it| vaguer(dice, it, |x, by| x * by)),
        17 | 18 => of.free.iter_mut().for_each(|it| vaguer(dice, it, scaled)),
        _ => of.rate.iter_mut().for_each(|it| vaguer(dice, it, |x, by| x * by)),
    }
    Left::Figure
}

#[test]
fn knowing_less_is_never_better() {
    let mut dice = Dice(Rand64::new(0x51ab));
    let (mut judged, mut worse, mut met) = (0_u32, 0_u32, [0_u32; 4]);
    while judged < 100_000 {
        let case = any_case(&mut dice);
        let Ok(before) = case.judge() else { continue };
        let mut known_less = case.clone();
        let neighbours = known_less.nest.as_mut().unwrap();
        let neighbours = neighbours.outer.iter_mut().chain(&mut neighbours.inner);
        let mut springs: Vec<&mut Drawing> = neighbours.map(|seated| &mut seated.spring).collect();
        if springs.is_empty() || dice.often() {
            springs = vec![&mut known_less.candidate];
        }
        let left = less(&mut dice, springs[0]);
        let Ok(after) = known_less.judge() else { continue };
        judged += 1;
        // What contradicts itself is no knowledge.
        if !before.contradictions.is_empty() {
            continue;
        }
        for (before, after) in before.lines.iter().zip(&after.lines) {
            assert_eq!(before.requirement, after.requirement);
            let (was, is) = (rank(&before.verdict), rank(&after.verdict));
            met[usize::from(was)] += 1;
            worse += u32::from(is < was);
            let better = if left == Left::Statement && was == 0 { is == 3 } else { is > was };
            assert!(!better, "{before:#?}\n{after:#?}\n{case:#?}");
        }
        let (was, is) = (rank_of_all(before.overall), rank_of_all(after.overall));
        let better = if left == Left::Statement && was == 0 { is == 3 } else { is > was };
        assert!(!better, "{:?} {:?}", before.overall, after.overall);
    }
    // Every answer was seen often, and much was lost: the property is not empty.
    assert!(met.iter().all(|seen| *seen > 10_000) && worse > 50_000, "{met:?} {worse}");
}
