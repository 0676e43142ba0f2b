//! Two coils, one inside the other, that carry a load together.

use super::contradiction::{self, NeedField, share};
use super::design::{Bar, Design, Rounded, Sizes, mean_for_rate};
use super::limit::{Limit, LimitCheck, LimitSet};
use super::map::no_hole;
use super::need::{InnerCoil, Need, Room};
use super::search::{Best, Rank, Rounding};
use super::{NeedError, checked};
use crate::coil::solid::{self, Solid};
use crate::coil::{Diameters, Hand, rate};
use crate::drawing::{Drawing, Figures, both};
use crate::order::InOrder;
use crate::progress::{Progress, part};
use crate::quantity::{Force, Length, Mass, SpringRate};

/// The hands of a pair, outer and inner: opposite, so that turns of one do not slip between turns of
/// the other.
pub const HANDS: (Hand, Hand) = (Hand::Right, Hand::Left);

/// How nearly two coils must be alike in what should be equal.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Balance {
    /// Difference of the solid heights, as a share of the greater.
    pub solid: f64,
    /// Difference of the stresses at load, as a share of the greater.
    pub stress: f64,
}

impl Default for Balance {
    /// A twentieth of the solid height and a tenth of the stress. Common practice, no source.
    fn default() -> Self {
        Self { solid: 0.05, stress: 0.1 }
    }
}

/// An outer and an inner coil of equal free height.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Pair {
    /// The outer coil.
    pub outer: Design,
    /// The inner coil.
    pub inner: Design,
    /// How the outer coil stands to its limits, the gap between both among them.
    pub of_outer: LimitCheck,
    /// How the inner coil stands to its own.
    pub of_inner: LimitCheck,
    /// How both together stand to load, rate and balance.
    pub together: LimitCheck,
}

impl Pair {
    /// All three verdicts as one.
    #[must_use]
    pub fn verdict(&self) -> LimitCheck {
        self.together.and(self.of_outer).and(self.of_inner)
    }

    /// Rate of both together.
    #[must_use]
    pub fn rate(&self) -> SpringRate {
        self.outer.rate + self.inner.rate
    }

    /// Load of both at the lowest height at work.
    #[must_use]
    pub fn greatest_load(&self) -> Force {
        self.outer.greatest_load + self.inner.greatest_load
    }

    /// Mass of both.
    #[must_use]
    pub fn mass(&self) -> Mass {
        self.outer.mass + self.inner.mass
    }
}

/// Two bars of which no pair does, and why.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PairWhy {
    /// The bar of the outer coil.
    pub outer: Length,
    /// The bar of the inner coil.
    pub inner: Length,
    /// Every limit that fails whatever the turns.
    pub always: LimitSet,
    /// The best pair that can be had; none where a bar leaves no hole in its coil.
    pub pair: Option<Pair>,
    /// What it fails.
    pub verdict: LimitCheck,
}

/// What came of a search for pairs.
#[derive(Clone, Debug, PartialEq)]
pub struct PairsSized {
    /// The best pair of each two bars that have one, the best of all first.
    pub pairs: Vec<Pair>,
    /// The other pairs of bars.
    pub refused: Vec<PairWhy>,
}

/// A need that two coils meet together, and what they may be wound of.
///
/// Load, rate and tolerances are those of both together, pocket and post those of the nest, and the
/// gap to a neighbour is the one between them.
///
/// Both have one free height, so that they share load and rate alike. Of one steel, with equal stress,
/// equal solid height and so equal index,
///
/// ```text
/// F1/F2 = k1/k2 = d1²/d2²      n1 · d1 = n2 · d2
/// ```
/// which gives each coil its rate. The inner one has those turns of the list with which it is solid within
/// [`Balance::solid`] of the outer one, dead turns counted.
///
/// # Source
/// Khurmi & Gupta, A Textbook of Machine Design, and Bhandari, Design of Machine Elements, example 10.17
/// (quoted in the open textbook companion of that chapter).
///
/// # Example
/// ```
/// use coilnest::coil::ends::Ends;
/// use coilnest::quantity::unit::{
///     gigapascal, kilogram_per_cubic_meter, megapascal, millimeter, newton, newton_per_millimeter,
/// };
/// use coilnest::quantity::{Force, Length, MassDensity, Pressure, SpringRate};
/// use coilnest::sizing::{
///     Allowed, Balance, Factor, Make, Metal, Need, PairSizing, Rank, Reserve, Room, Rounding, Work,
///     steps,
/// };
///
/// let (mm, newtons) = (Length::new::<millimeter>, Force::new::<newton>);
/// let stress = Pressure::new::<megapascal>(620.0);
/// let allowed = Allowed::Stress { stress, factor: Factor::Uncorrected };
/// let need = Need {
///     work: Work::at_height(
///         newtons(30_000.0),
///         mm(220.0),
///         SpringRate::new::<newton_per_millimeter>(500.0),
///     ),
///     room: Room { pocket: Some(mm(220.0)), gap: Some(mm(3.0)), ..Room::default() },
///     reserve: Reserve::default(),
///     make: Make::usual(Ends::TaperedGround),
///     metal: Metal {
///         shear_modulus: Pressure::new::<gigapascal>(78.5),
///         poisson: 0.31,
///         density: MassDensity::new::<kilogram_per_cubic_meter>(7850.0),
///         at_load: allowed,
///         at_solid: None,
///     },
/// };
/// let bars = [14.0, 16.0, 18.0, 20.0, 22.0, 25.0, 28.0, 32.0].map(mm);
/// let sizing = PairSizing::new(need, &bars, &steps(3.0, 12.0, 0.25), Balance::default())?;
/// let sized = sizing.designs(&Rounding::METRIC, Rank::Mass);
/// let best = sized.pairs.first().ok_or("none")?;
/// assert!((best.greatest_load() / newtons(30_000.0)).value > 0.95);
/// assert_eq!(best.outer.free, best.inner.free);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Clone, Debug, PartialEq)]
pub struct PairSizing {
    need: Need,
    bars: Vec<Bar>,
    turns: Vec<f64>,
    balance: Balance,
}

impl PairSizing {
    /// Bars for either coil, and counts of active turns.
    ///
    /// # Errors
    /// As [`Sizing::new`](super::Sizing::new), and [`NeedError::Share`] for a balance that is no share.
    pub fn new(
        need: Need,
        bars: &[Length],
        turns: &[f64],
        balance: Balance,
    ) -> Result<Self, NeedError> {
        share(NeedField::SolidApart, balance.solid, 1.0)?;
        share(NeedField::StressApart, balance.stress, 1.0)?;
        let pairs = bars.len().saturating_mul(bars.len().saturating_sub(1)) / 2;
        let bars = checked(&need, bars, turns, pairs.saturating_mul(turns.len()))?;
        contradiction::strength(&need, &bars, 2.0)?;
        Ok(Self { need, bars, turns: turns.to_vec(), balance })
    }

    /// Puts any two drawings through the analysis, and holds them against all that is asked. Both coils
    /// are taken to bear at every height that is asked for.
    ///
    /// # Errors
    /// What the drawings lack.
    pub fn judge(&self, outer: &Drawing, inner: &Drawing) -> Result<Pair, Figures> {
        let (outer, inner) = both(Sizes::of(outer), Sizes::of(inner))?;
        let bar = |sizes: &Sizes| Bar::of(&self.need, sizes.coil.bar());
        let two = Two { outer: bar(&outer), inner: bar(&inner) };
        Ok(self.judged(&two, outer, inner, Rounded::Yes))
    }

    /// The best pair of each two bars, and why the others have none.
    ///
    /// Each pair that fits exactly is rounded, both mean diameters and the free height to either side
    /// of their steps; the first that still meets everything is offered. [`Rank::Stress`] goes by the
    /// coil whose stress is the greater part of what is allowed.
    #[must_use]
    pub fn designs(&self, rounding: &Rounding, rank: Rank) -> PairsSized {
        self.designs_with_progress(rounding, rank, &mut |_| {})
    }

    /// What [`PairSizing::designs`] gives, telling a listener from time to time which part of the pairs of bars has
    /// been tried, from 0 to 1.
    #[must_use]
    pub fn designs_with_progress(
        &self,
        rounding: &Rounding,
        rank: Rank,
        progress: &mut dyn FnMut(f64),
    ) -> PairsSized {
        let mut progress = Progress::new(progress);
        let mut ranked = Vec::new();
        let mut refused = Vec::new();
        for (tried, outer) in self.bars.iter().enumerate() {
            progress.at(part(tried * tried, self.bars.len() * self.bars.len()));
            for inner in self.bars.iter().filter(|inner| inner.size < outer.size) {
                let two = Two { outer: *outer, inner: *inner };
                let best = self.best(&two, rounding, rank);
                if let Some((Some(pair), _, value)) = best.fitting {
                    ranked.push((value, pair));
                } else if let Some((pair, verdict)) = best.nearest {
                    let (outer, inner) = (outer.size, inner.size);
                    refused.push(PairWhy { outer, inner, always: best.always, pair, verdict });
                }
            }
        }
        ranked.put_in_order(|a, b| a.0.total_cmp(&b.0));
        PairsSized { pairs: ranked.into_iter().map(|(_, pair)| pair).collect(), refused }
    }

    fn best(&self, two: &Two, rounding: &Rounding, rank: Rank) -> Best<Option<Pair>> {
        let mut best = Best::default();
        for outer in &self.turns {
            for inner in self.turns_of_inner(two, *outer) {
                let (pair, verdict) = self.tried(two, (*outer, inner), rounding);
                let value = pair.map_or(f64::INFINITY, |pair| {
                    let outer = rank.of(&two.outer, &pair.outer);
                    let inner = rank.of(&two.inner, &pair.inner);
                    match rank {
                        Rank::Mass => outer + inner,
                        Rank::Stress => outer.max(inner),
                    }
                });
                best.take(pair, verdict, value);
            }
        }
        best
    }

    /// The active turns of the inner coil with which both are solid at nearly one height; where the list
    /// has none, the nearest.
    fn turns_of_inner(&self, two: &Two, outer: f64) -> impl Iterator<Item = f64> {
        let make = self.need.make;
        let lying = make.dead_turns + solid::bars_over_turns(make.ends);
        let (of_outer, bar) = (two.outer.size * (outer + lying), two.inner.size);
        let apart = move |inner: f64| {
            let of_inner = bar * (inner + lying);
            ((of_inner - of_outer).abs() / of_inner.max(of_outer)).value
        };
        let nearer = move |a: f64, b: f64| if apart(b) < apart(a) { b } else { a };
        let nearest = self.turns.iter().copied().reduce(nearer);
        let most = self.balance.solid;
        let near = self.turns.iter().copied().filter(move |inner| apart(*inner) <= most);
        near.chain(nearest.filter(move |inner| apart(*inner) > most))
    }

    /// The pair with so many active turns in each: in round figures where it fits.
    fn tried(
        &self,
        two: &Two,
        turns: (f64, f64),
        rounding: &Rounding,
    ) -> (Option<Pair>, LimitCheck) {
        let (outer, inner) = (two.outer.size, two.inner.size);
        let rate = self.need.work.rate();
        let square = |bar: Length| bar.value * bar.value;
        let part = square(outer) / (square(outer) + square(inner));
        let shear_modulus = self.need.metal.shear_modulus;
        let wide = mean_for_rate(shear_modulus, outer, turns.0, part * rate);
        let narrow = mean_for_rate(shear_modulus, inner, turns.1, (1.0 - part) * rate);
        let Some((first, second)) = self.drawn(two, (wide, narrow), turns) else {
            let verdict = no_hole(&self.need, outer, wide);
            return (None, verdict.and(no_hole(&self.need, inner, narrow)));
        };
        let exact = self.judged(two, first, second, Rounded::No);
        if !exact.verdict().fits() {
            return (Some(exact), exact.verdict());
        }
        let mut best = Best::default();
        for wide in rounding.means(wide) {
            for narrow in rounding.means(narrow) {
                let Some((outer, inner)) = self.drawn(two, (wide, narrow), turns) else { continue };
                for free in rounding.frees(outer.free, self.need.work.height.is_none()) {
                    let (outer, inner) = (Sizes { free, ..outer }, Sizes { free, ..inner });
                    let pair = self.judged(two, outer, inner, Rounded::Yes);
                    if pair.verdict().fits() {
                        return (Some(pair), pair.verdict());
                    }
                    best.take(pair, pair.verdict(), 0.0);
                }
            }
        }
        best.nearest.map_or((None, exact.verdict()), |(pair, verdict)| (Some(pair), verdict))
    }

    /// The sizes of both, with the free height that both have.
    fn drawn(
        &self,
        two: &Two,
        means: (Length, Length),
        turns: (f64, f64),
    ) -> Option<(Sizes, Sizes)> {
        let need = &self.need;
        let coil = |bar, mean, active| {
            let coil = Diameters::from_mean(bar, mean).ok()?;
            Some((coil, need.turns(active).ok()?))
        };
        let (outer, outer_turns) = coil(two.outer.size, means.0, turns.0)?;
        let (inner, inner_turns) = coil(two.inner.size, means.1, turns.1)?;
        let rate = |coil, turns| rate::rate(need.metal.shear_modulus, coil, turns);
        let deflection = need.work.load / (rate(outer, outer_turns) + rate(inner, inner_turns));
        let height = need.work.height.unwrap_or_else(|| {
            let least = |coil: Diameters, turns| {
                Solid::of(coil.bar(), turns, need.make.ends).greatest
                    + need.least_way(coil, turns, deflection)
            };
            least(outer, outer_turns).max(least(inner, inner_turns))
        });
        let free = height + deflection;
        Some((
            Sizes { coil: outer, turns: outer_turns, free },
            Sizes { coil: inner, turns: inner_turns, free },
        ))
    }

    fn judged(&self, two: &Two, outer: Sizes, inner: Sizes, rounded: Rounded) -> Pair {
        let need = &self.need;
        let rate = |sizes: &Sizes| rate::rate(need.metal.shear_modulus, sizes.coil, sizes.turns);
        let (first, second) = (rate(&outer), rate(&inner));
        let lowest = need.work.lowest().unwrap_or_else(|| {
            (first * outer.free + second * inner.free - need.work.load) / (first + second)
        });
        let outer = need.design_down_to(&two.outer, outer, lowest);
        let inner = need.design_down_to(&two.inner, inner, lowest);
        let within = InnerCoil { coil: inner.coil, growth: inner.growth };
        let of_outer = Room { post: None, inner: Some(within), ..need.room };
        // The outer coil stands around it; the gap between both is judged there.
        let of_inner = Room { pocket: None, outer: None, ..need.room };
        let mut together = match rounded {
            Rounded::No => LimitCheck::none(),
            Rounded::Yes => need.of_work(first + second, |height| {
                first * (outer.free - height) + second * (inner.free - height)
            }),
        };
        let apart = |a: f64, b: f64| (a - b).abs() / a.max(b);
        let solid = apart(outer.solid.value, inner.solid.value);
        together.take(Limit::SolidBalance, self.balance.solid - solid);
        let stress = apart(outer.stress_at_load.value, inner.stress_at_load.value);
        together.take(Limit::StressBalance, self.balance.stress - stress);
        Pair {
            outer,
            inner,
            of_outer: need.of_coil(&two.outer, &outer, &of_outer, rounded),
            of_inner: need.of_coil(&two.inner, &inner, &of_inner, rounded),
            together,
        }
    }
}

/// The bars of an outer and an inner coil.
#[derive(Clone, Copy)]
struct Two {
    outer: Bar,
    inner: Bar,
}
