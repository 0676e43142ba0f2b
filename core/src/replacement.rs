//! Whether one spring may stand in for another: requirement by requirement, over all its tolerances.
//!
//! A replacement must go where the original went, carry what it carried and stop no earlier. What is
//! known of either may be little; a line that cannot be told says which figure is missing and, where
//! it is one alone, what it would have to be. What is asked is the user's; where he leaves it open it
//! follows from the original, as each [`Requirement`] says.
//!
//! Every figure is a range over all that varies, the neighbours in the nest and the dead turns among it:
//! see [`drawing`](crate::drawing). A requirement is *met throughout* when every spring within the
//! tolerances meets it, and *met as drawn* where a tolerance that it rests on is not given. Knowing less
//! of the candidate never gives a better answer: a figure that is dropped, or a tolerance that is wider
//! or missing, makes no spring a true replacement that was none.
//!
//! The sums are those of [`coil`](crate::coil), [`nest`](crate::nest) and [`frame`](crate::frame). They
//! say nothing of cracks, corrosion or a steel that is not what its papers say: a replacement is the
//! maker's and the keeper's decision, by the manual of the machine.
//!
//! # Example
//! Would a coil of thicker bar and one turn more do?
//! ```
//! use coilnest::coil::ends::Ends;
//! use coilnest::coil::DiameterKind;
//! use coilnest::quantity::{Length, Pressure, unit::{gigapascal, millimeter}};
//! use coilnest::drawing::{Drawing, Given};
//! use coilnest::replacement::{Asked, Case, Overall, Requirement, Compliance};
//!
//! let mm = Length::new::<millimeter>;
//! let coil = |bar, turns| Drawing {
//!     bar: Some(Given::as_drawn(mm(bar))),
//!     diameter: Some((DiameterKind::Outside, Given::as_drawn(mm(120.0)))),
//!     total_turns: Some(Given::as_drawn(turns)),
//!     ends: Some(Ends::TaperedGround),
//!     free: Some(Given::as_drawn(mm(300.0))),
//!     shear_modulus: Some(Given::exact(Pressure::new::<gigapascal>(78.5))),
//!     ..Drawing::default()
//! };
//! let case = Case::new(coil(20.0, 7.5), coil(20.5, 8.5), Asked::default());
//! let judged = case.judge()?;
//! assert_eq!(judged.overall, Overall::No);
//! let verdict = |of| judged.line(of).map(|line| &line.verdict);
//! // 78500·20.5⁴/(8·99.5³·7) = 251.3 against 78500·20⁴/(8·100³·6) = 261.7 N/mm: within 5 % as drawn,
//! // and nobody said how far off the sizes may be.
//! assert!(matches!(verdict(Requirement::Rate), Some(Compliance::MetAsDrawn { .. })));
//! // 20.5·8.2 = 168.1 against 20·7.2 = 144 mm: it stops earlier.
//! assert_eq!(verdict(Requirement::SolidHeight), Some(&Compliance::NotMet));
//! # Ok::<(), coilnest::replacement::ReplacementError>(())
//! ```

mod asked;
mod check;
mod decision;
mod limits;
mod line;
mod offered;
mod order;
mod required;
mod requirement;
mod swap;
mod together;

pub use asked::{Asked, AskedField, ReplacementError, ReplacementField};
pub use decision::Decision;
pub use limits::{AllowedRange, Amount};
pub use line::{Compliance, Line, Margin, Offered, Wanted, Word};
pub use order::{Dimension, Item, LoadAt, Open, Order, OrderDetail, OrderDetails, Question};
pub use requirement::{Missing, Requirement, Whose};
pub use swap::{
    Around, CoilStanding, FrameSwap, NestStanding, NestSwap, Seated, UnderFrame, WholeSwap,
};
pub use together::{NestCase, NestCoil, NestJudgement, NestLine};

use crate::drawing::{Allowable, Contradiction, Drawing, Endured, Point};
use crate::material::Against;

/// An original, what may replace it, what is asked, and where it stands.
#[derive(Clone, Debug, PartialEq)]
pub struct Case {
    /// The spring that is to be replaced.
    pub original: Drawing,
    /// The one that may replace it.
    pub candidate: Drawing,
    /// What is asked.
    pub asked: Asked,
    /// The nest that it stands in, where there is one.
    pub nest: Option<Around>,
    /// The frame on its nest and others, where that is of interest.
    pub frame: Option<UnderFrame>,
    /// Requirements that need not be met, each with the reason of whoever waives it.
    pub waived: Vec<(Requirement, String)>,
}

/// What all requirements together come to.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Overall {
    /// A true replacement: each is met throughout.
    True,
    /// Each is met by the nominal spring, not each by every one within the tolerances.
    AtNominal,
    /// Each is met as drawn, but not all tolerances are given.
    AsDrawn,
    /// One is not met.
    No,
    /// None is missed, and one cannot be told, or a drawing contradicts itself.
    CannotTell,
}

/// The verdict on a candidate.
#[derive(Clone, Debug, PartialEq)]
pub struct Judgement {
    /// Every requirement that is asked.
    pub lines: Vec<Line>,
    /// All that are not waived together.
    pub overall: Overall,
    /// What is stated of the original or the candidate and its sizes cannot give.
    pub contradictions: Vec<(Whose, Contradiction)>,
    /// What it does to the nest.
    pub nest: Option<NestSwap>,
    /// What it does to the frame.
    pub frame: Option<FrameSwap>,
}

impl Judgement {
    /// The line of a requirement, where it is asked.
    #[must_use]
    pub fn line(&self, requirement: Requirement) -> Option<&Line> {
        self.lines.iter().find(|line| line.requirement == requirement)
    }
}

impl Case {
    /// A candidate for an original that stands alone.
    #[must_use]
    pub fn new(original: Drawing, candidate: Drawing, asked: Asked) -> Self {
        Self { original, candidate, asked, nest: None, frame: None, waived: Vec::new() }
    }

    /// Judges the candidate.
    ///
    /// # Range
    /// That of the formulas of [`coil`](crate::coil). Indices from 2 on and tolerances as of springs:
    /// narrower coils bend so sharply that their stress may have a turning point along the diameter.
    ///
    /// # Errors
    /// [`ReplacementError`] where something is asked that contradicts itself, or the particulars make
    /// no spring at an end of their tolerances.
    ///
    /// # Example
    /// That of the [module](self).
    pub fn judge(&self) -> Result<Judgement, ReplacementError> {
        check::case(self)?;
        let requirements = Requirement::of(self).into_iter();
        let lines: Vec<Line> = requirements.map(|asked| line::judge(asked, self)).collect();
        let frame = self.frame.as_ref().map(|under| swap::frame(self, under)).transpose()?;
        let contradictions: Vec<(Whose, Contradiction)> =
            [(Whose::Original, &self.original), (Whose::Candidate, &self.candidate)]
                .into_iter()
                .flat_map(|(whose, of)| of.contradictions().into_iter().map(move |it| (whose, it)))
                .collect();
        Ok(Judgement {
            overall: overall(&lines.iter(), !contradictions.is_empty()),
            contradictions,
            lines,
            nest: self.nest.as_ref().map(|nest| swap::nest(self, nest)),
            frame,
        })
    }

    /// Which stress is compared with a given allowable one, or with the candidate's own where none is
    /// given.
    #[must_use]
    pub fn stress_against(&self, given: Option<Allowable>) -> Against {
        required::against(self, given)
    }

    /// What bounds the candidate's life between the two loads, as drawn; none where that cannot be told.
    #[must_use]
    pub fn endured(&self) -> Option<Endured> {
        required::endurance(&self.candidate, self, &Point::nominal(&self.candidate)).ok()
    }

    /// The coil next around it.
    fn outer_neighbour(&self) -> Option<(Whose, &Seated)> {
        let outer = &self.nest.as_ref()?.outer;
        Some((Whose::Outer(outer.len().checked_sub(1)?), outer.last()?))
    }

    /// The coil next within it.
    fn inner_neighbour(&self) -> Option<(Whose, &Seated)> {
        Some((Whose::Inner(0), self.nest.as_ref()?.inner.first()?))
    }
}

fn overall<'l, L>(lines: &L, contradicts_itself: bool) -> Overall
where
    L: Iterator<Item = &'l Line> + Clone,
{
    let any = |is: fn(&Compliance) -> bool| {
        lines.clone().any(|line| line.waived.is_none() && is(&line.verdict))
    };
    if any(|verdict| *verdict == Compliance::NotMet) {
        Overall::No
    } else if contradicts_itself || any(|verdict| matches!(verdict, Compliance::CannotTell { .. }))
    {
        Overall::CannotTell
    } else if any(|verdict| matches!(verdict, Compliance::MetAsDrawn { .. })) {
        Overall::AsDrawn
    } else if any(|verdict| *verdict == Compliance::MetAtNominal) {
        Overall::AtNominal
    } else {
        Overall::True
    }
}
