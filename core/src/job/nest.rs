//! What follows for a nest: loads and heights, who touches and who goes solid first, clearances.

use super::coil::{Coil, Rate};
use super::context::Context;
use super::drawing::show_stress;
use super::figures::{Format, text};
use super::formulas::{
    COIL_LOAD, ENERGY, GAP, GAP_GROWN, GAP_USUAL, NEST_FREE, NEST_HEIGHT, NEST_LOAD, NEST_RATE,
    NEST_SOLID, OF_NEST, STOP_LOAD, STOPS, TO_SOLID, TOUCHES, letter,
};
use super::problem::Path;
use super::question::{self, Question};
use super::report::{
    BreakpointReport, ClearanceReport, EventWord, Figure, HandsWord, NestReport, Problem,
    SeatState, Slider, StateReport,
};
use super::seat::CoilState;
use crate::coil::Diameters;
use crate::coil::stress::Factor;
use crate::formula::Value;
use crate::frame::CoilDoubt;
use crate::nest::clearance::{self, Hands};
use crate::nest::{self, Event, Law, Member, MemberState, Nest, NestError, State};
use crate::quantity::{self, Energy, Force, Length, Said, Share, SpringRate, System, si, unit};
use crate::say::Say;
use std::rc::Rc;

/// A seat with everything that is known of its coil.
#[derive(Clone, Debug, Default)]
pub(crate) struct Seated {
    pub(crate) coil: Rc<Coil>,
    pub(crate) standing: CoilState,
    pub(crate) raise: Length,
    pub(crate) label: Option<String>,
}

impl Seated {
    fn diameters(&self) -> Option<Diameters> {
        self.coil.diameters()
    }

    /// Its coil and why that is not good, `7 (Outer): short`.
    pub(crate) fn not_good(&self) -> Option<String> {
        let why = self.standing.not_good.as_deref()?;
        let name = if self.coil.name.is_empty() { "A coil" } else { &self.coil.name };
        Some(text!("{}: {why}", called(self.label.as_deref().unwrap_or_default(), name)))
    }
}

/// `21 (Outer)`.
pub(crate) fn called(label: &str, name: &str) -> String {
    if label.is_empty() { name.to_owned() } else { text!("{label} ({name})") }
}

/// A nest whose every coil is known well enough to work with.
pub(crate) struct ComputedNest {
    pub(crate) nest: Nest,
    pub(crate) seats: Vec<Seated>,
    rates: Vec<Rate>,
    drawings: Vec<Vec<usize>>,
}

impl ComputedNest {
    /// From the seats, or the note that says what is missing.
    pub(crate) fn new(context: &mut Context<'_>, at: &Path, seats: &[Seated]) -> Option<Self> {
        let mut members = Vec::with_capacity(seats.len());
        let mut rates = Vec::with_capacity(seats.len());
        for (index, seat) in seats.iter().enumerate() {
            let here = at.field("seats").item(index);
            let (Some(free), Some(rate)) = (seat.standing.free, seat.coil.rate) else {
                let missing = match (seat.standing.free, seat.coil.rate) {
                    (None, None) => "its free height and its rate",
                    (None, Some(_)) => "its free height",
                    _ => "its rate, or its bar, diameter, turns and ends",
                };
                let name = if seat.coil.name.is_empty() { "A coil" } else { &seat.coil.name };
                context.note(
                    &here,
                    "load-unknown",
                    text!("{name}: the nest's loads are not known without {missing}."),
                );
                return None;
            };
            let Ok(law) = Law::linear(rate.value) else { return None };
            if seat.coil.solid().is_none() {
                let text = text!(
                    "{}: without its solid height the nest may stop sooner than shown.",
                    seat.coil.name
                );
                context.note(&here, "solid-unknown", text);
            }
            members.push(Member {
                free,
                law,
                solid: seat.coil.solid().map(|solid| solid.greatest),
                raise: seat.raise,
            });
            rates.push(rate);
        }
        match Nest::new(members) {
            Ok(nest) => {
                let drawings = by_drawing(&rates);
                Some(Self { nest, seats: seats.to_vec(), rates, drawings })
            }
            Err(error @ NestError::SolidNotBelowFree { index, .. }) => {
                let here = at.field("seats").item(index);
                let message = error.say(context.system());
                context.problem(Problem::said(&here, "solid-not-below-free", &message, ""));
                None
            }
            Err(_) => None,
        }
    }

    /// Answers a question, in a sentence of its own where there is no answer.
    pub(crate) fn answer(&self, question: Question) -> Result<State, NestError> {
        match question {
            Question::At(height) => self.nest.at_height(height),
            Question::Under(load) => self.nest.at_load(load),
            Question::Free => self.nest.at_height(self.nest.free_height()),
            Question::Solid => match self.nest.solid() {
                Some(solid) => self.nest.at_height(solid.height),
                None => Err(NestError::Empty),
            },
        }
    }

    /// What is in doubt of each coil.
    pub(crate) fn doubts(&self) -> Vec<CoilDoubt> {
        let coils = self.seats.iter().zip(&self.rates);
        let doubt = |(seat, rate): (&Seated, &Rate)| CoilDoubt {
            free: seat.standing.own_doubt,
            tape: seat.standing.tape_doubt,
            rate: rate.relative,
        };
        coils.map(doubt).collect()
    }

    /// Standard uncertainty of the seats' loads from each independent source, at a fixed height.
    fn load_doubts(&self, state: &State) -> Vec<Shared> {
        let columns = || self.seats.iter().zip(&self.rates).zip(&state.members).enumerate();
        let touching = |member: &MemberState| if member.touching { 1.0 } else { 0.0 };
        let mut sources = Vec::with_capacity(3 * self.seats.len() + 2);
        let mut drawings = self.drawings.iter().peekable();
        for (which, ((seat, rate), member)) in columns() {
            let free = rate.value.value * seat.standing.own_doubt.value * touching(member);
            sources.push(Shared(vec![(which, free)]));
            sources.push(Shared(vec![(which, member.load.value * rate.relative.own)]));
            // The first coil of a drawing speaks for all of it.
            if let Some(seats) = drawings.next_if(|seats| seats.first() == Some(&which)) {
                let load = |seat: &usize| {
                    let (rate, member) = (self.rates.get(*seat)?, state.members.get(*seat)?);
                    Some((*seat, member.load.value * rate.relative.drawing.doubt))
                };
                sources.push(Shared(seats.iter().filter_map(load).collect()));
            }
        }
        let tape = columns().map(|(which, ((seat, rate), member))| {
            (which, rate.value.value * seat.standing.tape_doubt.value * touching(member))
        });
        sources.push(Shared(tape.collect()));
        let steel = columns()
            .map(|(which, ((_, rate), member))| (which, member.load.value * rate.relative.steel));
        sources.push(Shared(steel.collect()));
        sources
    }
}

/// What one source of doubt moves: the seats whose loads it moves, in order, and by how much.
struct Shared(Vec<(usize, f64)>);

impl Shared {
    /// What it moves the nest's load by.
    fn sum(&self) -> f64 {
        self.0.iter().map(|(_, load)| load).sum()
    }

    /// What it moves the load of one seat by.
    fn of(&self, seat: usize) -> f64 {
        let place = self.0.binary_search_by_key(&seat, |(which, _)| *which).ok();
        place.and_then(|place| self.0.get(place)).map_or(0.0, |(_, load)| *load)
    }
}

/// The seats of each drawing, drawings and seats in the order in which they stand.
fn by_drawing(rates: &[Rate]) -> Vec<Vec<usize>> {
    let number = |rate: &Rate| rate.relative.drawing.number;
    let mut drawings: Vec<(usize, Vec<usize>)> = Vec::new();
    for (seat, rate) in rates.iter().enumerate() {
        match drawings.iter_mut().find(|(drawing, _)| *drawing == number(rate)) {
            Some((_, seats)) => seats.push(seat),
            None => drawings.push((number(rate), vec![seat])),
        }
    }
    drawings.into_iter().map(|(_, seats)| seats).collect()
}

/// What is fixed while a nest is asked something: its height, or its load.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Fixed {
    Height,
    Load,
}

/// Everything about a nest but its seats' verdicts.
pub(crate) fn assess(context: &mut Context<'_>, computed: &ComputedNest, report: &mut NestReport) {
    let format = context.format;
    let nest = &computed.nest;
    report.heights_by = Some(heights_by(report).into());
    let free_height = nest.free_height();
    let figure = format.height(free_height);
    let touch = nest.members().iter().map(|member| (member.free, member.raise));
    report.free_height = Some(context.ledger.sum(
        figure,
        NEST_FREE,
        stands(format, touch).iter().map(|[free, raise]| [("L0", free as _), ("o", raise as _)]),
        &nest::SOURCE,
    ));
    report.touch_order = nest.touch_order();
    if let Some(solid) = nest.solid() {
        report.solid_first = Some(solid.member);
        let known = nest.members().iter().filter_map(|member| Some((member.solid?, member.raise)));
        report.solid_height = Some(
            context.ledger.sum(
                format.height(solid.height),
                NEST_SOLID,
                stands(format, known)
                    .iter()
                    .map(|[solid, raise]| [("Lc", solid as _), ("o", raise as _)]),
                &nest::SOURCE,
            ),
        );
    }
    report.breakpoints = breakpoints(context, computed);
    report.solid_load = report
        .breakpoints
        .last()
        .filter(|last| last.event == EventWord::Solid)
        .map(|last| last.load.clone());
    report.slider = Some(slider(format.system, nest, report));
    report.balance = balance(context, computed);
}

/// Whether the loads are those of the coils that are there, or of the drawings.
fn heights_by(report: &NestReport) -> &'static str {
    let read = report.seats.iter().filter(|seat| seat.measured).count();
    if read == 0 {
        "By the drawings: no coil of it was read."
    } else if read == report.seats.len() {
        "By the readings."
    } else {
        "By the readings, and by the drawing where a coil was not read."
    }
}

/// Heights of coils and what their seats add to them.
fn stands(format: Format, coils: impl Iterator<Item = (Length, Length)>) -> Vec<[Said; 2]> {
    coils.map(|(height, raise)| [format.decimal(height), format.decimal(raise)]).collect()
}

fn breakpoints(context: &mut Context<'_>, computed: &ComputedNest) -> Vec<BreakpointReport> {
    let format = context.format;
    let mut reports = Vec::new();
    for bend in computed.nest.breakpoints() {
        let Ok(state) = computed.nest.at_height(bend.height) else { continue };
        let below = computed.nest.rate_below(bend.height);
        let event = match bend.event {
            Event::Touches => EventWord::Touches,
            Event::Stage => EventWord::Stage,
            Event::Solid => EventWord::Solid,
        };
        let Some(coil) = computed.nest.members().get(bend.member) else { continue };
        let (formula, sign, stands) = match (event, coil.solid) {
            (EventWord::Solid, Some(solid)) => (STOPS, "Lc", solid),
            _ => (TOUCHES, "L0", coil.free),
        };
        let height = context.ledger.work(
            format.height(bend.height),
            formula,
            &[(sign, &format.decimal(stands)), ("o", &format.decimal(coil.raise))],
            &nest::SOURCE,
        );
        let load = load_figure(context, computed, &state, Fixed::Height);
        let rate = rate_figure(context, computed, below, |index| {
            computed
                .nest
                .members()
                .get(index)
                .is_some_and(|member| member.touch_height() >= bend.height)
        });
        reports.push(BreakpointReport {
            height,
            load,
            rate,
            event,
            seat: bend.member,
            stack: state.members.iter().map(|member| member.load.value).collect(),
        });
    }
    reports
}

/// The rate of those that carry.
fn rate_figure(
    context: &mut Context<'_>,
    computed: &ComputedNest,
    rate: SpringRate,
    carries: impl Fn(usize) -> bool,
) -> Figure {
    let format = context.format;
    let rates = computed.rates.iter().enumerate().filter(|(index, _)| carries(*index));
    let rates: Vec<Said> = rates.map(|(_, rate)| format.say::<SpringRate>(rate.value)).collect();
    context.ledger.sum(
        format.figure::<SpringRate>(rate),
        NEST_RATE,
        rates.iter().map(|rate| [("k", rate as _)]),
        &nest::SOURCE,
    )
}

fn load_figure(
    context: &mut Context<'_>,
    computed: &ComputedNest,
    state: &State,
    fixed: Fixed,
) -> Figure {
    let format = context.format;
    let total = state.load + state.stop_load;
    let doubt = match fixed {
        Fixed::Height => root_sum_square(computed.load_doubts(state).iter().map(Shared::sum)),
        Fixed::Load => 0.0,
    };
    let stopped = (state.stop_load.value > 0.0).then_some(state.stop_load);
    let terms = state.members.iter().map(|member| member.load).chain(stopped);
    let loads: Vec<Said> = terms.map(|load| format.say::<Force>(load)).collect();
    context.ledger.sum(
        format.doubted::<Force>(total, doubt),
        NEST_LOAD,
        loads.iter().map(|load| [("F", load as _)]),
        &nest::SOURCE,
    )
}

fn root_sum_square(parts: impl Iterator<Item = f64>) -> f64 {
    libm::sqrt(parts.map(|part| part * part).sum())
}

/// A state of the nest as a report gives it.
pub(crate) fn state_report(
    context: &mut Context<'_>,
    computed: &ComputedNest,
    state: &State,
    question: Question,
    asked: Option<&str>,
) -> StateReport {
    let format = context.format;
    let fixed = if matches!(question, Question::Under(_)) { Fixed::Load } else { Fixed::Height };
    let sources = computed.load_doubts(state);
    let total_doubt = root_sum_square(sources.iter().map(Shared::sum));

    let given = format.decimal(state.height);
    let height = if fixed == Fixed::Load && state.rate.value > 0.0 && !state.solid {
        let doubt = si(total_doubt / state.rate.value);
        height_under_load(
            context,
            computed,
            state,
            format.height(state.height).give_or_take(format, doubt),
        )
    } else {
        let (formula, sign) = letter!("h");
        context.ledger.work(format.height(state.height), formula, &[(sign, &given)], "as asked")
    };
    let load = load_figure(context, computed, state, fixed);
    let rate = rate_figure(context, computed, state.rate, |index| {
        state.members.get(index).is_some_and(|member| member.touching)
    });
    let stop_load = (state.stop_load.value > 0.0).then(|| {
        context.ledger.work(
            format.figure::<Force>(state.stop_load),
            STOP_LOAD,
            &[
                ("F2", &format.say::<Force>(state.load + state.stop_load)),
                ("F1", &format.say::<Force>(state.load)),
            ],
            &nest::SOURCE,
        )
    });
    let seats = state.members.iter().enumerate().filter_map(|(index, member)| {
        let seat = computed.seats.get(index)?;
        let rate = computed.rates.get(index)?;
        let doubt = seat_doubt(&sources, state, index, rate.value, fixed);
        let raise = computed.nest.members().get(index)?.raise;
        let at = Stands { height: state.height, raise, nest_load: state.load };
        Some(seat_state(context, seat, *rate, member, at, doubt))
    });
    let seats = seats.collect();
    StateReport {
        asked: asked.map(str::to_owned),
        height,
        load,
        stop_load,
        rate: Some(rate),
        solid: state.solid,
        seats,
    }
}

/// Doubt of one seat's load; where the nest's load is fixed, what one coil gains the height gives
/// back to all.
fn seat_doubt(
    sources: &[Shared],
    state: &State,
    seat: usize,
    rate: SpringRate,
    fixed: Fixed,
) -> f64 {
    root_sum_square(sources.iter().map(|source| {
        let own = source.of(seat);
        let touching = state.members.get(seat).is_some_and(|member| member.touching);
        match fixed {
            Fixed::Load if touching && state.rate.value > 0.0 => {
                own - rate.value / state.rate.value * source.sum()
            }
            _ => own,
        }
    }))
}

/// The height of a nest under a load, by those that carry.
fn height_under_load(
    context: &mut Context<'_>,
    computed: &ComputedNest,
    state: &State,
    figure: Figure,
) -> Figure {
    let format = context.format;
    let members = computed.nest.members().iter().zip(&computed.rates).zip(&state.members);
    let carrying = members.filter(|(_, state)| state.touching).map(|((member, rate), _)| {
        let [free, raise] = [member.free, member.raise].map(|length| format.decimal(length));
        (format.say::<SpringRate>(rate.value), free, raise)
    });
    let carrying: Vec<_> = carrying.collect();
    let terms = carrying
        .iter()
        .map(|(rate, free, raise)| [("k", rate as _), ("L0", free as _), ("o", raise as _)]);
    let put = NEST_HEIGHT.put_sum(&[("F", &format.say::<Force>(state.load))], terms);
    context.ledger.put(figure, put, &nest::SOURCE)
}

/// Where a coil stands in its nest.
struct Stands {
    height: Length,
    raise: Length,
    nest_load: Force,
}

fn seat_state(
    context: &mut Context<'_>,
    seat: &Seated,
    rate: Rate,
    member: &MemberState,
    Stands { height, raise, nest_load }: Stands,
    doubt: f64,
) -> SeatState {
    let format = context.format;
    let free = seat.standing.free.unwrap_or_default();
    let load = context.ledger.work(
        format.doubted::<Force>(member.load, doubt),
        COIL_LOAD,
        &[
            ("k", &format.say::<SpringRate>(rate.value)),
            ("L0", &format.decimal(free)),
            ("o", &format.decimal(raise)),
            ("h", &format.decimal(height)),
        ],
        &nest::SOURCE,
    );
    let share = (nest_load.value > 0.0).then(|| {
        let share = (member.load / nest_load).value;
        let mut figure = format.figure::<Share>(share);
        figure.text = text!("{} %", quantity::write_fixed(share * 100.0, 1));
        context.ledger.work(
            figure,
            OF_NEST,
            &[("Fc", &format.say::<Force>(member.load)), ("FN", &format.say::<Force>(nest_load))],
            &nest::SOURCE,
        )
    });
    let stress =
        seat.diameters().map(|coil| show_stress(context, coil, member.load, Factor::Uncorrected));
    let stress_corrected =
        seat.diameters().map(|coil| show_stress(context, coil, member.load, Factor::Bergstrasser));
    let to_solid = member.to_solid.map(|left| {
        let stands = free - member.deflection;
        context.ledger.work(
            format.height(left),
            TO_SOLID,
            &[("L", &format.decimal(stands)), ("Lc", &format.decimal(stands - left))],
            "definition",
        )
    });
    SeatState { load, share, stress, stress_corrected, to_solid, touching: member.touching }
}

/// Energy that the springs hold, which they give back at once when they are let go.
pub(crate) fn stored_energy(context: &mut Context<'_>, state: &State) -> Figure {
    let format = context.format;
    let mut energy = Energy::default();
    for member in &state.members {
        energy += member.load * member.deflection / 2.0;
    }
    let pressed = state.members.iter().filter(|member| member.touching);
    let pressed =
        pressed.map(|member| (format.say::<Force>(member.load), format.decimal(member.deflection)));
    let pressed: Vec<_> = pressed.collect();
    context.ledger.sum(
        format.figure::<Energy>(energy),
        ENERGY,
        pressed.iter().map(|(load, deflection)| [("F", load as _), ("s", deflection as _)]),
        "work of a linear spring",
    )
}

/// Neighbours in the nest, widest first.
pub(crate) fn clearances(context: &mut Context<'_>, seats: &[Seated]) -> Vec<ClearanceReport> {
    let mut sized: Vec<(usize, Diameters)> = Vec::new();
    for (index, seat) in seats.iter().enumerate() {
        if let Some(coil) = seat.diameters() {
            let place = sized.partition_point(|(_, wider)| wider.mean() >= coil.mean());
            sized.insert(place, (index, coil));
        }
    }
    let pairs = sized.iter().zip(sized.iter().skip(1));
    let report = |(outer, inner): (&(usize, Diameters), &(usize, Diameters))| {
        let (a, b) = (seats.get(outer.0)?, seats.get(inner.0)?);
        Some(clearance_report(context, (outer.0, a, outer.1), (inner.0, b, inner.1)))
    };
    pairs.filter_map(report).collect()
}

fn clearance_report(
    context: &mut Context<'_>,
    (outer, outer_seat, outer_coil): (usize, &Seated, Diameters),
    (inner, inner_seat, inner_coil): (usize, &Seated, Diameters),
) -> ClearanceReport {
    let format = context.format;
    let gap = clearance::radial(outer_coil, inner_coil);
    let radial_free = context.ledger.work(
        format.fine(gap),
        GAP,
        &[
            ("Di", &format.decimal(outer_coil.inside())),
            ("De", &format.decimal(inner_coil.outside())),
        ],
        "geometry of the nest",
    );
    let grown = inner_seat
        .coil
        .growth()
        .map(|growth| clearance::radial_grown(outer_coil, inner_coil, growth));
    let radial_solid = grown.zip(inner_seat.coil.growth()).map(|(grown, growth)| {
        let source = "the larger growth of the inner coil, ends held or free to turn";
        let values: [Value<'_>; 2] = [("e", &format.decimal(gap)), ("ΔD", &format.decimal(growth))];
        context.ledger.work(format.fine(grown), GAP_GROWN, &values, source)
    });
    let usual = clearance::usual(outer_coil, inner_coil);
    let usual_figure = context.ledger.work(
        format.fine(usual),
        GAP_USUAL,
        &[("d1", &format.decimal(outer_coil.bar())), ("d2", &format.decimal(inner_coil.bar()))],
        &clearance::USUAL_SOURCE,
    );
    let hands = Hands::of(outer_seat.coil.drawing.hand, inner_seat.coil.drawing.hand);
    let least = grown.unwrap_or(gap);
    let fits = least.value > 0.0;
    let (wide, narrow) = (&outer_seat.coil.name, &inner_seat.coil.name);
    let room = if gap.value <= 0.0 {
        text!("{narrow} does not go into {wide}.")
    } else if !fits {
        text!("{narrow} goes into {wide}, but grows into it before it is solid.")
    } else if (gap - usual).value < -1e-9 {
        text!("{narrow} stays clear of {wide}, with less room than is usual.")
    } else {
        text!("{narrow} stays clear of {wide}.")
    };
    let wound = match hands {
        Hands::Opposite => " They are wound opposite ways, as they should be.",
        Hands::Same => {
            " Both are wound the same way: their turns can slip between each other and lock."
        }
        Hands::Unknown => "",
    };
    ClearanceReport {
        outer,
        inner,
        radial_free: Some(radial_free),
        radial_solid,
        usual: (usual.value > 0.0).then_some(usual_figure),
        hands: match hands {
            Hands::Opposite => HandsWord::Opposite,
            Hands::Same => HandsWord::Same,
            Hands::Unknown => HandsWord::Unknown,
        },
        fits: Some(fits),
        sentence: text!("{room}{wound}"),
    }
}

/// Index and stress at solid of the coils beside each other.
fn balance(context: &Context<'_>, computed: &ComputedNest) -> Option<String> {
    let format = context.format;
    let coils = || computed.seats.iter().map(|seat| &seat.coil);
    let parts: Option<Vec<String>> = coils()
        .map(|drawn| {
            let (coil, stress) = (drawn.diameters()?, drawn.stress_at_solid()?);
            let index = quantity::write_number(coil.index(), 3);
            Some(text!(
                "{}: index {index}, {} at solid, uncorrected",
                drawn.name,
                format.say::<quantity::Stress>(stress)
            ))
        })
        .collect();
    let parts = parts.filter(|parts| parts.len() > 1)?;
    let stresses = || coils().filter_map(|coil| coil.stress_at_solid()).map(|stress| stress.value);
    let (least, most) = (stresses().fold(f64::INFINITY, f64::min), stresses().fold(0.0, f64::max));
    let apart = quantity::write_fixed((most / least - 1.0) * 100.0, 0);
    Some(text!(
        "{}. Coils of one steel share the work best where index and stress at solid are alike; here the stresses lie {apart} % apart.",
        quantity::joined(parts.iter(), "; ")
    ))
}

fn slider(system: System, nest: &Nest, report: &NestReport) -> Slider {
    let number = |length: Length| quantity::shown::<Length>(length, system).0;
    let (step, unit) = match system {
        System::Inch => (1.0 / 16.0, "in"),
        System::Metric => (1.0, "mm"),
    };
    let up = |x: f64| libm::ceil(x / step - 1e-9) * step;
    let free = nest.free_height();
    let floor = nest.solid().map_or(free * 0.5, |solid| solid.height);
    let (least, most) = (up(number(floor)), up(number(free + (free - floor) * 0.06)));
    let middle = number(free + floor) / 2.0;
    let working = report.working.as_ref();
    let start = working.map(|state| number(Length::new::<unit::meter>(state.height.si)));
    let start = up(start.unwrap_or(middle));
    let start = if start < least { least } else { start };
    Slider { least, most, step, start: if start > most { most } else { start }, unit: unit.into() }
}

/// The problem of a question that has no answer.
pub(crate) fn unanswered(
    context: &Context<'_>,
    at: &Path,
    read: &str,
    error: NestError,
) -> Problem {
    if let NestError::BelowSolid { solid, .. } = error {
        let example = context.format.decimal(solid).to_string();
        return Problem::said(at, "below-solid", &error.say(context.system()), &example);
    }
    let why = "the solid height of this nest is not known";
    Problem::new(at, "below-solid", read, "a height from solid up", why, "")
}

/// Reads and answers one question of a job.
pub(crate) fn ask(
    context: &mut Context<'_>,
    at: &Path,
    computed: Option<&ComputedNest>,
    text: &str,
    asked: Option<&str>,
) -> Option<(State, StateReport)> {
    let question = match question::read(text, context.system(), at) {
        Ok(question) => question,
        Err(problem) => {
            context.problem(*problem);
            return None;
        }
    };
    let computed = computed?;
    match computed.answer(question) {
        Ok(state) => {
            let report = state_report(context, computed, &state, question, asked);
            Some((state, report))
        }
        Err(error) => {
            let problem = unanswered(context, at, text, error);
            context.problem(problem);
            None
        }
    }
}
