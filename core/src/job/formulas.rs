//! What a report works out beyond the library, and the few figures that no expression gives.

use crate::formula::Formula;

/// Loads and heights of a frame, which are found by search.
pub(crate) const AT_REST: &str = "the loads of the nests and the weight in balance";
/// The least dip that lifts a wheel, which is found by search.
pub(crate) const LIFTS: &str = "the least dip at which a wheel carries nothing";
/// The doubt that would settle a verdict, which is found by search.
pub(crate) const SETTLES: &str = "the largest u with which one of the probabilities reaches the level";

pub(crate) const MEASURED: Formula =
    Formula::new("{Lm} = Σ [{r}] / {N};  {u} = √({ur}² + {ut}² + {up}²)");
pub(crate) const TILT: Formula = Formula::new("φ = atan({S} / {De})");
pub(crate) const DEVIATION: Formula = Formula::new("{ΔL} = {Lm} − {L0}");
pub(crate) const LOAD_COST: Formula = Formula::new("{ΔF} = {k} · ({Lm} − {L0})");
pub(crate) const LEAST: Formula = Formula::new("{TL}");
pub(crate) const MOST: Formula = Formula::new("{TU}");
pub(crate) const BETWEEN: Formula =
    Formula::new("short = Φ(({TL} − {Lm}) / {u});  long = Φ(({Lm} − {TU}) / {u})");
pub(crate) const ABOVE: Formula = Formula::new("short = Φ(({TL} − {Lm}) / {u});  long = 0");
pub(crate) const BELOW: Formula = Formula::new("short = 0;  long = Φ(({Lm} − {TU}) / {u})");

pub(crate) const DIP: Formula = Formula::new("{g}");
pub(crate) const HEIGHT: Formula = Formula::new("{h}");
pub(crate) const TWIST: Formula = Formula::new("{uq}");
pub(crate) const KEPT: Formula = Formula::new("kept = {Q} / {Q0}");

pub(crate) const MEAN_LOAD: Formula = Formula::new("{Fm} = {W} / {N}");
pub(crate) const OF_MEAN: Formula = Formula::new("share = {F} / {Fm}");
pub(crate) const RISE_ALONG: Formula = Formula::new("rise = {a} · {X}");
pub(crate) const RISE_ACROSS: Formula = Formula::new("rise = {b} · {Y}");
pub(crate) const WARPED: Formula = Formula::new("rise = {w} · {X} · {Y} / 4");
pub(crate) const DIAGONAL: Formula = Formula::new("{ΔF} = {F1} − {F2}");
pub(crate) const DIAGONAL_HEIGHT: Formula = Formula::new("{Δh} = {h1} − {h2}");
pub(crate) const LOAD_SPREAD: Formula = Formula::new("{ΔF} = {F1} − {F2}");
pub(crate) const BEYOND_BOUND: Formula = Formula::new("gap = {rl} − {rb}");
pub(crate) const DOUBT: Formula = Formula::new("{u}");
pub(crate) const SUM_OF_LOADS: Formula = Formula::new("F = Σ [{F}]");
