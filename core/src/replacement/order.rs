//! What a spring maker has to know, and what of it nobody has said yet.

use super::Case;
use super::limits::Limits;
use super::requirement::Whose;
use crate::coil::Hand;
use crate::coil::ends::Ends;
use crate::coil::fatigue::Surface;
use crate::drawing::{Drawing, Figure, Range};
use crate::material::Presetting;
use crate::quantity::{Force, Length, SpringRate};
use core::fmt;

/// An item of an order.
#[derive(Clone, Debug, PartialEq)]
pub enum Item<T> {
    /// It is known.
    Known {
        /// What it is.
        value: T,
        /// Whose figure it is, the candidate's where that is known, else the original's; none where
        /// the order itself says so.
        of: Option<Whose>,
    },
    /// Somebody has to say.
    Question(Question),
}

/// A figure of an order, nominal, between limits, or both.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Dimension<Q> {
    /// What it is meant to be.
    pub nominal: Option<Q>,
    /// Between what it may lie; none where nobody said so, which is a question of its own.
    pub limits: Option<Limits<Q>>,
}

/// What has to be said before a spring can be made.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[non_exhaustive]
pub enum Question {
    /// The bar.
    Bar,
    /// The outside diameter.
    Outside,
    /// The inside diameter.
    Inside,
    /// The free height.
    FreeHeight,
    /// The total turns.
    TotalTurns,
    /// The active turns.
    ActiveTurns,
    /// The form of the ends.
    Ends,
    /// The hand.
    Hand,
    /// The rate.
    Rate,
    /// The loads at heights.
    Loads,
    /// The solid height.
    SolidHeight,
    /// The steel.
    Steel,
    /// Whether it is to be shot peened.
    Surface,
    /// Paint or another finish.
    Finish,
    /// Whether its set is to be taken out.
    SetRemoval,
    /// How it is to be inspected.
    Inspection,
    /// How it is to be tested.
    Test,
    /// How many.
    Quantity,
    /// How it is to be marked.
    Marking,
}

impl fmt::Display for Question {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::Bar => "the bar",
            Self::Outside => "the outside diameter",
            Self::Inside => "the inside diameter",
            Self::FreeHeight => "the free height",
            Self::TotalTurns => "the total turns",
            Self::ActiveTurns => "the active turns",
            Self::Ends => "the form of the ends",
            Self::Hand => "the hand",
            Self::Rate => "the rate",
            Self::Loads => "the loads at heights",
            Self::SolidHeight => "the solid height",
            Self::Steel => "the steel",
            Self::Surface => "whether it is to be shot peened",
            Self::Finish => "the finish",
            Self::SetRemoval => "whether its set is to be taken out",
            Self::Inspection => "how it is to be inspected",
            Self::Test => "how it is to be tested",
            Self::Quantity => "how many are wanted",
            Self::Marking => "how it is to be marked",
        })
    }
}

/// A load at a height.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LoadAt {
    /// The height.
    pub height: Length,
    /// The load.
    pub load: Dimension<Force>,
}

/// What no coil tells of itself.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Wishes {
    /// How many.
    pub quantity: Option<u32>,
    /// Paint or another finish.
    pub finish: Option<String>,
    /// How it is to be inspected.
    pub inspection: Option<String>,
    /// How it is to be tested.
    pub test: Option<String>,
    /// How it is to be marked.
    pub marking: Option<String>,
}

/// What a spring maker has to know. Nothing in it is made up: limits are those that were asked or that
/// the coil came with, never those that a replacement is judged by where nobody gave any.
///
/// # Example
/// ```
/// use coilnest::coil::ends::Ends;
/// use coilnest::quantity::{Length, unit::millimeter};
/// use coilnest::drawing::{Crossed, Drawing, Given};
/// use coilnest::replacement::{Asked, Case, Item, Question, Wishes};
///
/// let mm = Length::new::<millimeter>;
/// let original = Drawing {
///     bar: Some(Given::around(mm(20.0), mm(0.2), mm(0.2))?),
///     free: Some(Given::as_drawn(mm(300.0))),
///     ends: Some(Ends::TaperedGround),
///     ..Drawing::default()
/// };
/// let case = Case::new(original, Drawing::default(), Asked::default());
/// let order = case.order(&Wishes { quantity: Some(8), ..Wishes::default() });
/// assert!(matches!(order.bar, Item::Known { value, .. } if value.limits.is_some()));
/// assert_eq!(order.without_limits(), [Question::FreeHeight]);
/// assert!(order.questions().contains(&Question::Hand));
/// assert!(!order.questions().contains(&Question::Quantity));
/// # Ok::<(), Crossed<Length>>(())
/// ```
#[derive(Clone, Debug, PartialEq)]
pub struct Order {
    /// Bar.
    pub bar: Item<Dimension<Length>>,
    /// Outside diameter.
    pub outside: Item<Dimension<Length>>,
    /// Inside diameter.
    pub inside: Item<Dimension<Length>>,
    /// Free height.
    pub free: Item<Dimension<Length>>,
    /// Total turns.
    pub total_turns: Item<Dimension<f64>>,
    /// Active turns.
    pub active_turns: Item<Dimension<f64>>,
    /// Form of the ends.
    pub ends: Item<Ends>,
    /// Hand.
    pub hand: Item<Hand>,
    /// Rate.
    pub rate: Item<Dimension<SpringRate>>,
    /// Loads at heights.
    pub loads: Item<Vec<LoadAt>>,
    /// Solid height.
    pub solid: Item<Dimension<Length>>,
    /// Name of the steel.
    pub steel: Item<&'static str>,
    /// Whether it is to be shot peened.
    pub surface: Item<Surface>,
    /// Paint or another finish.
    pub finish: Item<String>,
    /// Whether its set is to be taken out.
    pub set_removal: Item<Presetting>,
    /// How it is to be inspected.
    pub inspection: Item<String>,
    /// How it is to be tested.
    pub test: Item<String>,
    /// How many.
    pub quantity: Item<u32>,
    /// How it is to be marked.
    pub marking: Item<String>,
}

impl Case {
    /// What there is to order, and what has to be asked first.
    #[must_use]
    pub fn order(&self, wishes: &Wishes) -> Order {
        let asked = &self.asked;
        let said = |text: &Option<String>, question| Item::said(text.clone(), question);
        let solid = asked.solid.map(Limits::at_most);
        Order {
            bar: self.sized(|coil| Some(coil.bar?.range(Figure::Bar)), None, Question::Bar),
            outside: self.sized(|coil| coil.outside().ok(), None, Question::Outside),
            inside: self.sized(|coil| coil.inside().ok(), None, Question::Inside),
            free: self.sized(|coil| coil.free().ok(), asked.free, Question::FreeHeight),
            total_turns: self.sized(
                |coil| Some(coil.total_turns?.range(Figure::TotalTurns)),
                None,
                Question::TotalTurns,
            ),
            active_turns: self.sized(|coil| coil.active_turns().ok(), None, Question::ActiveTurns),
            ends: self.word(asked.ends, |coil| coil.ends, Question::Ends),
            hand: self.word(asked.hand, |coil| coil.hand, Question::Hand),
            rate: self.sized(|coil| coil.rate().ok(), asked.rate, Question::Rate),
            loads: self.loads(),
            solid: self.sized(|coil| coil.solid().ok(), solid, Question::SolidHeight),
            steel: self.word(None, |coil| Some(coil.steel?.name()), Question::Steel),
            surface: self.word(None, |coil| coil.surface, Question::Surface),
            finish: said(&wishes.finish, Question::Finish),
            set_removal: self.word(None, |coil| coil.presetting, Question::SetRemoval),
            inspection: said(&wishes.inspection, Question::Inspection),
            test: said(&wishes.test, Question::Test),
            quantity: Item::said(wishes.quantity, Question::Quantity),
            marking: said(&wishes.marking, Question::Marking),
        }
    }

    /// Of the candidate, else of the original.
    fn either<T>(&self, of: impl Fn(&Drawing) -> Option<T>) -> Option<(T, Whose)> {
        let candidate = of(&self.candidate).map(|value| (value, Whose::Candidate));
        candidate.or_else(|| of(&self.original).map(|value| (value, Whose::Original)))
    }

    fn word<T>(
        &self,
        asked: Option<T>,
        of: impl Fn(&Drawing) -> Option<T>,
        question: Question,
    ) -> Item<T> {
        match asked {
            Some(value) => Item::Known { value, of: None },
            None => match self.either(of) {
                Some((value, whose)) => Item::Known { value, of: Some(whose) },
                None => Item::Question(question),
            },
        }
    }

    fn sized<Q: Copy + PartialOrd>(
        &self,
        of: impl Fn(&Drawing) -> Option<Range<Q>>,
        asked: Option<Limits<Q>>,
        question: Question,
    ) -> Item<Dimension<Q>> {
        match (self.either(of), asked) {
            (Some((range, whose)), asked) => {
                let own = || {
                    let wide = range.least() < range.most();
                    wide.then(|| Limits::between(range.least(), range.most()))
                };
                let limits = asked.or_else(own);
                let nominal = Some(range.nominal());
                Item::Known { value: Dimension { nominal, limits }, of: Some(whose) }
            }
            (None, Some(limits)) => {
                Item::Known { value: Dimension { nominal: None, limits: Some(limits) }, of: None }
            }
            (None, None) => Item::Question(question),
        }
    }

    fn loads(&self) -> Item<Vec<LoadAt>> {
        let Some(height) = self.asked.working else { return Item::Question(Question::Loads) };
        let load = |coil: &Drawing| coil.load(height).ok();
        match self.sized(load, self.asked.load, Question::Loads) {
            Item::Known { value, of } => {
                Item::Known { value: vec![LoadAt { height, load: value }], of }
            }
            Item::Question(question) => Item::Question(question),
        }
    }
}

impl<T> Item<T> {
    fn said(value: Option<T>, question: Question) -> Self {
        value.map_or(Self::Question(question), |value| Self::Known { value, of: None })
    }

    fn question(&self) -> Option<Question> {
        match self {
            Self::Known { .. } => None,
            Self::Question(question) => Some(*question),
        }
    }
}

impl<Q> Item<Dimension<Q>> {
    fn open(&self, question: Question) -> Option<Question> {
        match self {
            Self::Known { value, .. } if value.limits.is_none() => Some(question),
            _ => None,
        }
    }
}

impl Order {
    /// What somebody has to say, in the order of the items.
    #[must_use]
    pub fn questions(&self) -> Vec<Question> {
        [
            self.bar.question(),
            self.outside.question(),
            self.inside.question(),
            self.free.question(),
            self.total_turns.question(),
            self.active_turns.question(),
            self.ends.question(),
            self.hand.question(),
            self.rate.question(),
            self.loads.question(),
            self.solid.question(),
            self.steel.question(),
            self.surface.question(),
            self.finish.question(),
            self.set_removal.question(),
            self.inspection.question(),
            self.test.question(),
            self.quantity.question(),
            self.marking.question(),
        ]
        .into_iter()
        .flatten()
        .collect()
    }

    /// What is known without its limits, in the order of the items.
    #[must_use]
    pub fn without_limits(&self) -> Vec<Question> {
        let load = match &self.loads {
            Item::Known { value, .. } if value.iter().any(|at| at.load.limits.is_none()) => {
                Some(Question::Loads)
            }
            _ => None,
        };
        [
            self.bar.open(Question::Bar),
            self.outside.open(Question::Outside),
            self.inside.open(Question::Inside),
            self.free.open(Question::FreeHeight),
            self.total_turns.open(Question::TotalTurns),
            self.active_turns.open(Question::ActiveTurns),
            self.rate.open(Question::Rate),
            load,
            self.solid.open(Question::SolidHeight),
        ]
        .into_iter()
        .flatten()
        .collect()
    }
}
