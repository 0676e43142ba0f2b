//! What a spring maker has to know: what is offered, what is asked, and what has to be settled first.

use super::Case;
use super::asked::Asked;
use super::limits::AllowedRange;
use crate::coil::DiameterKind;
use crate::coil::Hand;
use crate::coil::ends::Ends;
use crate::coil::fatigue::Surface;
use crate::drawing::{Contradiction, Drawing, Given, LoadPoint, Range};
use crate::material::Presetting;
use crate::order::InOrder;
use crate::quantity::{Force, Length, SpringRate};
use core::fmt;

/// A line of an order, as each of those has it who has a say. None of the three stands in for another.
#[derive(Clone, Debug, PartialEq)]
pub struct Item<T, A = T> {
    /// What is offered: the candidate's own. None in the order of the original.
    pub offered: Option<T>,
    /// What is asked by whoever orders.
    pub asked: Option<A>,
    /// What the original has. In its own order that is what is asked; in any other it only makes a
    /// [question](Open::Borrowed).
    pub original: Option<T>,
    /// What has to be settled first.
    pub open: Option<Open>,
}

/// Why something has to be settled.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Open {
    /// Nobody has said.
    Missing,
    /// Only the original has it.
    Borrowed,
    /// No tolerance is given, or only one end of it.
    NoTolerance,
    /// Nobody states it; it follows by arithmetic from what is stated.
    Unstated,
    /// It is stated, and what else is stated cannot give it.
    Contradicts(Contradiction),
}

/// A figure of an order.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Dimension<Q> {
    /// What it is meant to be.
    pub nominal: Option<Q>,
    /// Between what it may lie; an end that nobody gave is open.
    pub limits: AllowedRange<Q>,
    /// Whether somebody states it, or it only follows by arithmetic.
    pub stated: bool,
}

impl<Q> Dimension<Q> {
    fn is_complete(&self) -> bool {
        self.limits.least.is_some() && self.limits.most.is_some()
    }
}

impl<Q: Copy> From<Given<Q>> for Dimension<Q> {
    fn from(of: Given<Q>) -> Self {
        let limits = AllowedRange { least: of.least(), most: of.most() };
        Self { nominal: Some(of.nominal()), limits, stated: true }
    }
}

impl<Q: Copy> From<Range<Q>> for Dimension<Q> {
    /// By arithmetic; without limits where it may lie outside the range.
    fn from(of: Range<Q>) -> Self {
        let end = |end| of.is_complete().then_some(end);
        let limits = AllowedRange { least: end(of.least()), most: end(of.most()) };
        Self { nominal: Some(of.nominal()), limits, stated: false }
    }
}

impl<Q> From<AllowedRange<Q>> for Dimension<Q> {
    fn from(limits: AllowedRange<Q>) -> Self {
        Self { nominal: None, limits, stated: true }
    }
}

/// What a line of an order is about.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[non_exhaustive]
pub enum Question {
    /// How many.
    Quantity,
    /// The bar.
    Bar,
    /// The diameter.
    Diameter,
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
    Peening,
    /// Whether its set is to be taken out.
    SetRemoval,
    /// What no drawing says.
    Detail(OrderDetail),
}

impl fmt::Display for Question {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::Quantity => "the quantity",
            Self::Bar => "the bar",
            Self::Diameter => "the diameter",
            Self::FreeHeight => "the free height",
            Self::TotalTurns => "the total turns",
            Self::ActiveTurns => "the active turns",
            Self::Ends => "the form of the ends",
            Self::Hand => "the hand",
            Self::Rate => "the rate",
            Self::Loads => "the load",
            Self::SolidHeight => "the solid height",
            Self::Steel => "the steel",
            Self::Peening => "the shot peening",
            Self::SetRemoval => "the set",
            Self::Detail(detail) => detail.name(),
        })
    }
}

/// What no drawing says of an order, each in the words of whoever orders.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[non_exhaustive]
pub enum OrderDetail {
    /// The part number.
    PartNumber,
    /// The number of a drawing.
    Drawing,
    /// The revision of that drawing.
    Revision,
    /// The grade of tolerance, for what has no tolerance of its own.
    Grade,
    /// The size that the maker may adjust, so that the others come out.
    Adjustable,
    /// How it is to be shot peened.
    Peening,
    /// How its set is to be taken out.
    SetRemoval,
    /// Paint or another finish.
    Finish,
    /// The hardness.
    Hardness,
    /// The depth to which the steel may have lost its carbon.
    Decarburised,
    /// How it is to be looked over for cracks.
    CrackTest,
    /// How it is to be inspected.
    Inspection,
    /// How it is to be tested.
    Test,
    /// What paper is to come with it.
    Certificate,
    /// How it is to be marked.
    Marking,
    /// How it is to be packed and loaded.
    Packaging,
    /// What it is used for.
    EndUse,
}

impl OrderDetail {
    /// Every detail, in the order of a letter.
    pub const ALL: [Self; 17] = [
        Self::PartNumber,
        Self::Drawing,
        Self::Revision,
        Self::EndUse,
        Self::Grade,
        Self::Adjustable,
        Self::Peening,
        Self::SetRemoval,
        Self::Finish,
        Self::Hardness,
        Self::Decarburised,
        Self::CrackTest,
        Self::Inspection,
        Self::Test,
        Self::Certificate,
        Self::Marking,
        Self::Packaging,
    ];

    const fn name(self) -> &'static str {
        match self {
            Self::PartNumber => "the part number",
            Self::Drawing => "the drawing",
            Self::Revision => "the revision",
            Self::Grade => "the grade of tolerance",
            Self::Adjustable => "the size left to the maker",
            Self::Peening => "the shot peening",
            Self::SetRemoval => "the set",
            Self::Finish => "the finish",
            Self::Hardness => "the hardness",
            Self::Decarburised => "the decarburised depth",
            Self::CrackTest => "the crack test",
            Self::Inspection => "the inspection",
            Self::Test => "the test",
            Self::Certificate => "the certificate",
            Self::Marking => "the marking",
            Self::Packaging => "the packaging",
            Self::EndUse => "the end use",
        }
    }

    /// Whether an order cannot do without it, so that nothing said is a question.
    ///
    /// ASTM A125-96, clause 3.1, has an order state part number, packaging, marking, loading and end
    /// use; by its clause 1.3 supplementary requirements hold only where whoever orders names them. So
    /// hardness, decarburised depth, crack test and certificate are left out where nobody asks for them.
    /// The order is itself the list of sizes and loads that may stand for a drawing. A grade is asked for
    /// where a tolerance is missing. That one size is left to the maker is EN 15800's (from memory).
    /// Finish, inspection and test: common practice, no source.
    #[must_use]
    pub const fn is_needed(self) -> bool {
        matches!(
            self,
            Self::PartNumber
                | Self::EndUse
                | Self::Adjustable
                | Self::Finish
                | Self::Inspection
                | Self::Test
                | Self::Marking
                | Self::Packaging
        )
    }
}

/// What no coil tells of itself.
///
/// ```
/// use coilnest::replacement::{OrderDetail, OrderDetails};
///
/// let details = OrderDetails::of(Some(8), vec![(OrderDetail::Marking, "lot and year".to_owned())]);
/// assert_eq!(details.get(OrderDetail::Marking), Some("lot and year"));
/// assert_eq!(details.get(OrderDetail::Finish), None);
/// ```
#[derive(Clone, Debug, Default, PartialEq)]
pub struct OrderDetails {
    quantity: Option<u32>,
    said: Vec<(OrderDetail, String)>,
}

impl OrderDetails {
    /// So many, and what else was said.
    #[must_use]
    pub fn of(quantity: Option<u32>, said: Vec<(OrderDetail, String)>) -> Self {
        Self { quantity, said }
    }

    /// How many.
    #[must_use]
    pub const fn quantity(&self) -> Option<u32> {
        self.quantity
    }

    /// What was said of a detail.
    #[must_use]
    pub fn get(&self, detail: OrderDetail) -> Option<&str> {
        self.said.iter().find(|(of, _)| *of == detail).map(|(_, text)| text.as_str())
    }
}

/// A load at a height.
#[derive(Clone, Debug, PartialEq)]
pub struct LoadAt {
    /// The height.
    pub height: Length,
    /// The load.
    pub load: Item<Dimension<Force>>,
}

/// What a spring maker has to know. Nothing in it is made up or filled in from elsewhere: what only the
/// original has is a question, and limits are those that were given, never those that a replacement is
/// judged by where nobody gave any.
///
/// Knowing less of a candidate takes no question out of its order and makes none of its lines a fact:
/// what is not stated is asked, also where it follows from the rest.
///
/// # Example
/// ```
/// use coilnest::coil::ends::Ends;
/// use coilnest::quantity::{Length, unit::millimeter};
/// use coilnest::drawing::{Crossed, Drawing, Given};
/// use coilnest::replacement::{Asked, Case, Open, Question, OrderDetails};
///
/// let mm = Length::new::<millimeter>;
/// let original = Drawing {
///     bar: Some(Given::around(mm(20.0), mm(0.2), mm(0.2))?),
///     free: Some(Given::as_drawn(mm(300.0))),
///     ..Drawing::default()
/// };
/// let candidate = Drawing { bar: Some(Given::as_drawn(mm(20.0))), ..Drawing::default() };
/// let case = Case::new(original, candidate, Asked::default());
/// let order = case.order(&OrderDetails::default());
/// assert_eq!(order.bar.open, Some(Open::NoTolerance));
/// assert_eq!((order.free.offered, order.free.open), (None, Some(Open::Borrowed)));
/// let as_it_was = case.order_of_original(&OrderDetails::default());
/// assert_eq!((as_it_was.bar.open, as_it_was.free.open), (None, Some(Open::NoTolerance)));
/// assert!(as_it_was.questions().contains(&(Question::Hand, Open::Missing)));
/// # Ok::<(), Crossed<Length>>(())
/// ```
#[derive(Clone, Debug, PartialEq)]
pub struct Order {
    /// Whether it is the order of the original as it was, so that its figures are what is asked.
    pub is_of_original: bool,
    /// How many.
    pub quantity: Item<u32>,
    /// Bar.
    pub bar: Item<Dimension<Length>>,
    /// Which diameter is given.
    pub across: DiameterKind,
    /// That diameter.
    pub diameter: Item<Dimension<Length>>,
    /// The outside diameter, where it follows from another.
    pub outside: Option<Dimension<Length>>,
    /// The inside diameter, where it follows from another.
    pub inside: Option<Dimension<Length>>,
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
    /// Loads at heights, the highest first.
    pub loads: Vec<LoadAt>,
    /// Solid height.
    pub solid: Item<Dimension<Length>>,
    /// Name of the steel.
    pub steel: Item<&'static str>,
    /// Whether it is to be shot peened.
    pub peening: Item<Surface, String>,
    /// Whether its set is to be taken out.
    pub set_removal: Item<Presetting, String>,
    /// What no drawing says.
    pub details: Vec<(OrderDetail, Item<String>)>,
}

impl Case {
    /// What there is to order of the candidate, and what has to be settled first.
    #[must_use]
    pub fn order(&self, details: &OrderDetails) -> Order {
        let sides = Sides {
            offered: Some(Side::of(&self.candidate)),
            original: Side::of(&self.original),
            asked: &self.asked,
            has_grade: false,
        };
        sides.order(details)
    }

    /// What there is to order of the original as it was, and what has to be settled first.
    #[must_use]
    pub fn order_of_original(&self, details: &OrderDetails) -> Order {
        let sides = Sides {
            offered: None,
            original: Side::of(&self.original),
            asked: &self.asked,
            has_grade: details.get(OrderDetail::Grade).is_some(),
        };
        sides.order(details)
    }
}

/// A drawing, and what of it contradicts itself.
struct Side<'a> {
    drawing: &'a Drawing,
    contradictions: Vec<Contradiction>,
}

/// What a drawing says of a figure.
enum Says<T> {
    Nothing,
    This(T),
    Contradicts(Contradiction),
}

impl<T> Says<T> {
    fn this(self) -> Option<T> {
        match self {
            Self::This(value) => Some(value),
            Self::Nothing | Self::Contradicts(_) => None,
        }
    }
}

impl<T> From<Option<T>> for Says<T> {
    fn from(value: Option<T>) -> Self {
        value.map_or(Self::Nothing, Self::This)
    }
}

/// A figure as it is stated, else as it follows.
fn figure<Q: Copy>(
    stated: Option<Given<Q>>,
    follows: impl FnOnce() -> Option<Range<Q>>,
) -> Says<Dimension<Q>> {
    stated.map(Dimension::from).or_else(|| Some(follows()?.into())).into()
}

impl<'a> Side<'a> {
    fn of(drawing: &'a Drawing) -> Self {
        Self { drawing, contradictions: drawing.contradictions() }
    }

    fn contradiction(&self, is: impl Fn(&Contradiction) -> bool) -> Option<Contradiction> {
        self.contradictions.iter().find(|found| is(found)).copied()
    }

    fn across(&self) -> Option<DiameterKind> {
        self.drawing.diameter.map(|(across, _)| across)
    }

    fn diameter(&self, across: DiameterKind) -> Says<Dimension<Length>> {
        let stated = self.drawing.diameter.filter(|(of, _)| *of == across);
        figure(stated.map(|(_, size)| size), || match across {
            DiameterKind::Outside => self.drawing.outside().ok(),
            DiameterKind::Mean => self.drawing.mean().ok(),
            DiameterKind::Inside => self.drawing.inside().ok(),
        })
    }

    /// A diameter that follows from another.
    fn following(&self, across: DiameterKind) -> Option<Dimension<Length>> {
        self.diameter(across).this().filter(|of| !of.stated)
    }

    fn active_turns(&self) -> Says<Dimension<f64>> {
        let active = self.drawing.active_turns().ok().map(Dimension::from);
        let stated = self.drawing.dead_turns.is_some();
        active.map(|active| Dimension { stated, ..active }).into()
    }

    fn rate(&self) -> Says<Dimension<SpringRate>> {
        match self.contradiction(|of| matches!(of, Contradiction::Rate { .. })) {
            Some(found) => Says::Contradicts(found),
            None => figure(self.drawing.rate, || self.drawing.rate().ok()),
        }
    }

    fn solid(&self) -> Says<Dimension<Length>> {
        match self.contradiction(|of| matches!(of, Contradiction::SolidHeight { .. })) {
            Some(found) => Says::Contradicts(found),
            None => figure(self.drawing.solid, || self.drawing.solid().ok()),
        }
    }

    fn load(&self, at: Length) -> Says<Dimension<Force>> {
        let found = self.contradiction(
            |of| matches!(of, Contradiction::Load { height, .. } if is_same(*height, at)),
        );
        if let Some(found) = found {
            return Says::Contradicts(found);
        }
        let stated = self.drawing.loads.iter().find(|point| is_same(point.height, at));
        // What follows from a rate or a load that may be wrong is no figure to print.
        let doubtful = |of: &Contradiction| !matches!(of, Contradiction::SolidHeight { .. });
        let sure = self.contradiction(doubtful).is_none();
        figure(stated.map(|point| point.load), || self.drawing.load(at).ok().filter(|_| sure))
    }
}

fn is_same(one: Length, other: Length) -> bool {
    (one - other).abs().value < 1e-9
}

/// Those who have a say.
struct Sides<'a> {
    offered: Option<Side<'a>>,
    original: Side<'a>,
    asked: &'a Asked,
    /// Whether a grade of tolerance holds where a tolerance is missing.
    has_grade: bool,
}

impl<'a> Sides<'a> {
    fn order(&self, details: &OrderDetails) -> Order {
        let offered = self.offered.as_ref();
        let across = offered.and_then(Side::across).or_else(|| self.original.across());
        let across = across.unwrap_or(DiameterKind::Outside);
        let sizes = offered.unwrap_or(&self.original);
        let asked = self.asked;
        Order {
            is_of_original: offered.is_none(),
            quantity: Item::detailed(details.quantity, true),
            bar: self.sized(|side| side.drawing.bar.map(Dimension::from).into(), None),
            across,
            diameter: self.sized(|side| side.diameter(across), None),
            outside: sizes
                .following(DiameterKind::Outside)
                .filter(|_| across != DiameterKind::Outside),
            inside: sizes
                .following(DiameterKind::Inside)
                .filter(|_| across != DiameterKind::Inside),
            free: self.sized(|side| side.drawing.free.map(Dimension::from).into(), asked.free),
            total_turns: self
                .sized(|side| side.drawing.total_turns.map(Dimension::from).into(), None),
            active_turns: self.sized(Side::active_turns, None),
            ends: self.word(asked.ends, |of| of.ends),
            hand: self.word(asked.hand, |of| of.hand),
            rate: self.sized(Side::rate, asked.rate),
            loads: self.loads(),
            solid: self.sized(Side::solid, asked.solid.map(AllowedRange::at_most)),
            steel: self.word(None, |of| Some(of.steel?.name())),
            peening: self.treated(details.get(OrderDetail::Peening), |of| of.surface),
            set_removal: self.treated(details.get(OrderDetail::SetRemoval), |of| of.presetting),
            details: detailed(details),
        }
    }

    /// A line of which the maker, or in the order of the original the original, has to say more.
    fn item<T, A>(
        &self,
        says: impl Fn(&Side<'a>) -> Says<T>,
        asked: Option<A>,
        lacks: impl FnOnce(&T) -> Option<Open>,
    ) -> Item<T, A> {
        let original = says(&self.original);
        let Some(side) = &self.offered else {
            let open = match &original {
                Says::Nothing => Some(Open::Missing),
                Says::Contradicts(found) => Some(Open::Contradicts(*found)),
                Says::This(value) => lacks(value),
            };
            return Item { offered: None, open, original: original.this(), asked };
        };
        let original = original.this();
        let offered = says(side);
        let open = match &offered {
            Says::Nothing if original.is_some() => Some(Open::Borrowed),
            Says::Nothing => Some(Open::Missing),
            Says::Contradicts(found) => Some(Open::Contradicts(*found)),
            Says::This(value) => lacks(value),
        };
        Item { offered: offered.this(), open, original, asked }
    }

    fn sized<Q: Copy>(
        &self,
        says: impl Fn(&Side<'a>) -> Says<Dimension<Q>>,
        asked: Option<AllowedRange<Q>>,
    ) -> Item<Dimension<Q>> {
        let asks_by_limits = self.offered.is_none() && (asked.is_some() || self.has_grade);
        let is_asked_for = self.offered.is_none();
        let lacks = |of: &Dimension<Q>| {
            if !of.stated && !is_asked_for {
                Some(Open::Unstated)
            } else if of.is_complete() || asks_by_limits {
                None
            } else {
                Some(Open::NoTolerance)
            }
        };
        self.item(says, asked.map(Dimension::from), lacks)
    }

    fn word<T>(&self, asked: Option<T>, of: impl Fn(&Drawing) -> Option<T>) -> Item<T> {
        self.item(|side| of(side.drawing).into(), asked, |_| None)
    }

    /// What is done to the spring, for which what is asked is enough.
    fn treated<T>(
        &self,
        asked: Option<&str>,
        of: impl Fn(&Drawing) -> Option<T>,
    ) -> Item<T, String> {
        let item = self.item(|side| of(side.drawing).into(), asked.map(str::to_owned), |_| None);
        let open = item.open.filter(|_| asked.is_none());
        Item { open, ..item }
    }

    fn loads(&self) -> Vec<LoadAt> {
        let stated = |side: &Side<'_>| side.drawing.loads.clone();
        let of_original = stated(&self.original);
        let all = self.offered.as_ref().map(stated).into_iter().flatten().chain(of_original);
        let mut heights: Vec<Length> = Vec::new();
        for height in all.map(|LoadPoint { height, .. }| height).chain(self.asked.working) {
            if !heights.iter().any(|there| is_same(*there, height)) {
                heights.push(height);
            }
        }
        heights.put_in_order(|one, other| other.value.total_cmp(&one.value));
        let asked = |height| {
            let at_work = self.asked.working.is_some_and(|working| is_same(working, height));
            self.asked.load.filter(|_| at_work)
        };
        let at =
            |height| LoadAt { height, load: self.sized(|side| side.load(height), asked(height)) };
        heights.into_iter().map(at).collect()
    }
}

fn detailed(details: &OrderDetails) -> Vec<(OrderDetail, Item<String>)> {
    let own_lines = [OrderDetail::Peening, OrderDetail::SetRemoval];
    let rest = OrderDetail::ALL.into_iter().filter(|detail| !own_lines.contains(detail));
    rest.map(|detail| {
        let needed = match detail {
            OrderDetail::Revision => details.get(OrderDetail::Drawing).is_some(),
            _ => detail.is_needed(),
        };
        (detail, Item::detailed(details.get(detail).map(str::to_owned), needed))
    })
    .collect()
}

impl<T> Item<T> {
    fn detailed(asked: Option<T>, needed: bool) -> Self {
        let open = (needed && asked.is_none()).then_some(Open::Missing);
        Self { offered: None, asked, original: None, open }
    }
}

impl Order {
    /// The same where the total turns are not stated, though they are known as far as a sum needs them:
    /// by whoever offers, and by the original.
    #[must_use]
    pub fn without_total_turns(mut self, by_offer: bool, by_original: bool) -> Self {
        let turns = &mut self.total_turns;
        turns.original = turns.original.filter(|_| !by_original);
        turns.offered = turns.offered.filter(|_| !by_offer);
        let own = if self.is_of_original { turns.original } else { turns.offered };
        if own.is_none() {
            let borrowed = !self.is_of_original && turns.original.is_some();
            turns.open = Some(if borrowed { Open::Borrowed } else { Open::Missing });
        }
        self
    }

    /// What has to be settled, in the order of the lines.
    #[must_use]
    pub fn questions(&self) -> Vec<(Question, Open)> {
        let no_load = self.loads.is_empty().then_some(Open::Missing);
        let loads = self.loads.iter().map(|at| at.load.open).chain([no_load]);
        let first = [
            (Question::Quantity, self.quantity.open),
            (Question::Bar, self.bar.open),
            (Question::Diameter, self.diameter.open),
            (Question::FreeHeight, self.free.open),
            (Question::TotalTurns, self.total_turns.open),
            (Question::ActiveTurns, self.active_turns.open),
            (Question::Ends, self.ends.open),
            (Question::Hand, self.hand.open),
            (Question::Rate, self.rate.open),
        ];
        let last = [
            (Question::SolidHeight, self.solid.open),
            (Question::Steel, self.steel.open),
            (Question::Peening, self.peening.open),
            (Question::SetRemoval, self.set_removal.open),
        ];
        let details =
            self.details.iter().map(|(detail, item)| (Question::Detail(*detail), item.open));
        first
            .into_iter()
            .chain(loads.map(|open| (Question::Loads, open)))
            .chain(last)
            .chain(details)
            .filter_map(|(question, open)| Some((question, open?)))
            .collect()
    }
}
