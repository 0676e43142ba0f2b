//! Limits and numbers of a search as people say them.

use crate::quantity;
use crate::sizing::{Limit, Rank};

/// A limit in a word or two, for a key beside a map.
pub(super) const fn limit(of: Limit) -> &'static str {
    match of {
        Limit::Strength => "no strength held",
        Limit::LowIndex => "index too low",
        Limit::HighIndex => "index too high",
        Limit::SteepPitch => "pitch too steep",
        Limit::Pocket => "pocket",
        Limit::Post => "post",
        Limit::OuterCoil => "coil around it",
        Limit::InnerCoil => "coil within it",
        Limit::StressAtLoad => "stress at load",
        Limit::StressAtSolid => "stress at solid",
        Limit::SolidHeight => "solid height",
        Limit::Reserve => "left before solid",
        Limit::Gaps => "gaps between turns",
        Limit::FreeHeight => "free height",
        Limit::Buckles => "buckling",
        Limit::Rate => "rate",
        Limit::Load => "load",
        Limit::SecondLoad => "second load",
        Limit::SolidBalance => "solid heights apart",
        Limit::StressBalance => "stresses apart",
    }
}

pub(super) const fn best(by: Rank) -> &'static str {
    match by {
        Rank::Mass => "lightest",
        Rank::Stress => "least stressed",
    }
}

pub(super) fn turns(turns: f64) -> String {
    quantity::write_number(turns, 4)
}
