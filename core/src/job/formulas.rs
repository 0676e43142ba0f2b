//! What a report works out beyond the library, and the few figures that no expression gives.

use crate::formula::Formula;

/// Loads and heights of a frame, which are found by search.
pub(crate) const AT_REST: &str = "the loads of the nests and the weight in balance";
/// The least dip that lifts a wheel, which is found by search.
pub(crate) const LIFTS: &str = "the least dip at which a wheel carries nothing";
/// The doubt that would settle a verdict, which is found by search.
pub(crate) const SETTLES: &str =
    "the largest u with which one of the probabilities reaches the level";
/// What a press's readings give, by least squares.
pub(crate) const BEST_LINE: &str =
    "the straight line with the least sum of squares, or two that meet";

/// A letter that stands for what is given.
macro_rules! letter {
    ($sign:literal) => {
        (const { $crate::formula::Formula::new(concat!("{", $sign, "}")) }, $sign)
    };
}
pub(crate) use letter;

/// A letter, as a formula and as it is put in.
pub(crate) type Letter = (Formula, &'static str);

pub(crate) const INDEX: Formula = Formula::new("{C} = {D} / {d}");
pub(crate) const ACTIVE_TURNS: Formula = Formula::new("{n} = {nt} − {nd}");
pub(crate) const RATE_AND_DOUBT: Formula =
    Formula::new("{k} = {G} · {d}⁴ / (8 · {D}³ · ({nt} − {nd}));  {u} = √(Σ [{ui}²])");
pub(crate) const PART_OF_DOUBT: Formula = Formula::new("{ui} = {sx} · {ux} · {k}");
pub(crate) const SHARE_OF_VARIANCE: Formula = Formula::new("share = ({ui} / {u})²");

pub(crate) const TURNS_IN_ALL: Formula = Formula::new("{nt} = {n} + {nd}");
pub(crate) const OF_BOTH: Formula = Formula::new("share = {F1} / ({F1} + {F2})");
pub(crate) const MASS_OF_ALL: Formula = Formula::new("{m} = Σ [{m}]");

pub(crate) const NEST_FREE: Formula = Formula::new("{h} = max([{L0} + {o}])");
pub(crate) const NEST_SOLID: Formula = Formula::new("{h} = max([{Lc} + {o}])");
pub(crate) const TOUCHES: Formula = Formula::new("{h} = {L0} + {o}");
pub(crate) const STOPS: Formula = Formula::new("{h} = {Lc} + {o}");
pub(crate) const NEST_LOAD: Formula = Formula::new("{F} = Σ [{F}]");
pub(crate) const NEST_RATE: Formula = Formula::new("{k} = Σ [{k}]");
pub(crate) const NEST_HEIGHT: Formula =
    Formula::new("{h} = (Σ [{k} · ({L0} + {o})] − {F}) / Σ [{k}]");
pub(crate) const STOP_LOAD: Formula = Formula::new("{F} = {F2} − {F1}");
pub(crate) const COIL_LOAD: Formula = Formula::new("{F} = {k} · max(0, {L0} + {o} − {h})");
pub(crate) const OF_NEST: Formula = Formula::new("share = {Fc} / {FN}");
pub(crate) const TO_SOLID: Formula = Formula::new("left = {L} − {Lc}");
pub(crate) const ENERGY: Formula = Formula::new("{U} = Σ [{F} · {s} / 2]");
pub(crate) const GAP: Formula = Formula::new("gap = ({Di} − {De}) / 2");
pub(crate) const GAP_GROWN: Formula = Formula::new("gap = {e} − {ΔD} / 2");
pub(crate) const GAP_USUAL: Formula = Formula::new("gap = ({d1} − {d2}) / 2");

pub(crate) const MEAN_OF_INSIDE: Formula = Formula::new("{D} = {Di} + {d}");
pub(crate) const MEAN_OF_OUTSIDE: Formula = Formula::new("{D} = {De} − {d}");
pub(crate) const OUTSIDE: Formula = Formula::new("{De} = {D} + {d}");
pub(crate) const INSIDE: Formula = Formula::new("{Di} = {D} − {d}");
pub(crate) const TRAVEL: Formula = Formula::new("travel = {L0} − {Lc}");
pub(crate) const GAP_OF_TURNS: Formula = Formula::new("gap = {p1} − {d}");
pub(crate) const DEAD_TURNS: Formula = Formula::new("{nd}");
pub(crate) const TENSILE: Formula = Formula::new("{Rm}");
pub(crate) const ALLOWABLE: Formula = Formula::new("{τz} = {j} · {Rm}");
pub(crate) const RESERVE: Formula = Formula::new("reserve = 1 − {τc} / {τz}");

pub(crate) const FREE_HEIGHT: Formula = Formula::new("{AL} = {aF} · {kF} · {q} / {k}");
pub(crate) const LOAD: Formula = Formula::new("{AF} = ({aF} · {kF} + 1.5 · {F} / 100) · {q}");
pub(crate) const SQUARENESS: Formula = Formula::new("{e1} = 0.05 · {L0}");
pub(crate) const PARALLELISM: Formula = Formula::new("{e2} = 0.03 · {De}");
pub(crate) const DIAMETER: Formula = Formula::new("{AD}");

pub(crate) const HYSTERESIS: Formula = Formula::new("{Δh} = Σ [{Δh}] / {N}");
pub(crate) const SCATTER: Formula = Formula::new("{sF} = √(Σ [{ΔF}²] / ({N} − 2))");
pub(crate) const OFF_LINE: Formula = Formula::new("{ΔF} = {F} − {k} · ({L0} − {L})");

pub(crate) const MEASURED: Formula =
    Formula::new("{Lm} = Σ [{r}] / {N};  {u} = √({ur}² + {ut}² + {up}²)");
pub(crate) const SPREAD: Formula = Formula::new("{S} = {r2} − {r1}");
pub(crate) const COST_OF_LOAD: Formula = Formula::new("share = {ΔF} / {F}");
pub(crate) const TILT: Formula = Formula::new("φ = atan({S} / {De})");
pub(crate) const DEVIATION: Formula = Formula::new("{ΔL} = {Lm} − {L0}");
pub(crate) const LOAD_COST: Formula = Formula::new("{ΔF} = {k} · ({Lm} − {L0})");
pub(crate) const LEAST: Formula = Formula::new("{TL}");
pub(crate) const MOST: Formula = Formula::new("{TU}");
pub(crate) const BETWEEN: Formula =
    Formula::new("short = Φ(({TL} − {Lm}) / {u});  long = Φ(({Lm} − {TU}) / {u})");
pub(crate) const ABOVE: Formula = Formula::new("short = Φ(({TL} − {Lm}) / {u});  long = 0");
pub(crate) const BELOW: Formula = Formula::new("short = 0;  long = Φ(({Lm} − {TU}) / {u})");

pub(crate) const CLEARANCE_LEAST: Formula = Formula::new("{cl} = min([{cl}])");
pub(crate) const TAPER: Formula = Formula::new("taper = {c1} − {c3}");
pub(crate) const PINCH: Formula = Formula::new("pinch = min({c1}, {c3}) − {c2}");
pub(crate) const NEW_LINER: Formula = Formula::new("liner = ({lh} + {ll}) / 2");

pub(crate) const LEFT_TO_SOLID: Formula = Formula::new("left = {h} − {hc}");
pub(crate) const POINT: Formula =
    Formula::new("{hp} = {z} + {a} · ({x} − {xm}) + {b} · ({y} − {ym}) + {ha}");
pub(crate) const POINT_WARPED: Formula = Formula::new(
    "{hp} = {z} + {a} · ({x} − {xm}) + {b} · ({y} − {ym}) + {w} · ({x} − {xm}) · ({y} − {ym}) + {ha}",
);

pub(crate) const DIP: Formula = Formula::new("{g}");
pub(crate) const HEIGHT: Formula = Formula::new("{h}");
pub(crate) const TWIST: Formula = Formula::new("{ΔQ/Q0}");
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
pub(crate) const OUTSIDE_AT_SOLID: Formula = Formula::new("{De} = {D} + {d} + {ΔD}");
pub(crate) const GAP_AT_SOLID: Formula = Formula::new("gap = ({Di} − {De} − {ΔD}) / 2");
pub(crate) const LOAD_OF_COILS: Formula = Formula::new("{F} = Σ [{k} · max(0, {L0} + {o} − {h})]");
pub(crate) const NEST_TO_SOLID: Formula = Formula::new("left = {h} − max([{Lc} + {o}])");
pub(crate) const ABOVE_MEAN: Formula = Formula::new("share = {F} / {Fm} − 1");
pub(crate) const BELOW_MEAN: Formula = Formula::new("share = 1 − {F} / {Fm}");

pub(crate) const DOUBT: Formula = Formula::new("{u}");
pub(crate) const SHIMMED_HEIGHT: Formula = Formula::new("{H} = {h} + {T} − {sq} + {t}");
pub(crate) const LOST: Formula = Formula::new("lost = {tn} − {tp}");
pub(crate) const WITH_NEW: Formula = Formula::new("{ΔF} = {F2} − {F1}");
pub(crate) const OFF_TAPED: Formula = Formula::new("{Δh} = {hy} − {hs}");
pub(crate) const CENTRE_ALONG: Formula = Formula::new("{xc} = (Σ [{F} · {x}]) / {W}");
pub(crate) const CENTRE_ACROSS: Formula = Formula::new("{yc} = (Σ [{F} · {y}]) / {W}");
pub(crate) const SUM_OF_LOADS: Formula = Formula::new("F = Σ [{F}]");
