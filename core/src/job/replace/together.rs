//! Several candidates as one nest for the whole nest.

use super::field::Fields;
use super::order::Letter;
use super::place::{FrameAround, NestAround};
use super::spring::Spring;
use super::swap::{self, Subject};
use super::{Ground, Reach, contradicts, decides, line, path, waived, words};
use crate::drawing::Drawing;
use crate::formula::{Put, Value};
use crate::job::context::Context;
use crate::job::figures::{Format, sentence, text};
use crate::job::formulas::{LOAD_OF_COILS, NEST_FREE, NEST_RATE, NEST_SOLID, NEST_TO_SOLID};
use crate::job::problem::Path;
use crate::job::report::{CandidateReport, LineReport, Met, OrderReport, TogetherReport};
use crate::nest;
use crate::order::InOrder;
use crate::replacement::{
    Asked, Case, Line, NestCase, NestCoil, NestJudgement, NestLine, ReplacementError, Requirement,
    Seated, Whose,
};

/// A nest and the candidates that are to replace all of it.
pub(super) struct WholeNest<'g> {
    case: NestCase,
    standing: &'g NestAround,
    frame_around: Option<&'g FrameAround>,
    /// Whether that nest alone is replaced, or every nest of the same coils.
    this_nest: bool,
    there: Vec<String>,
    /// The candidates, the widest first, each with its place in the job's list.
    offered: Vec<&'g (usize, Spring)>,
    /// Where the drawings of those that are there stand.
    there_at: Vec<Path>,
    cycle_at: &'g Path,
}

/// The nest for the nest, where that is asked and there is one.
pub(super) fn nest<'g>(context: &mut Context<'_>, ground: &'g Ground<'_>) -> Option<WholeNest<'g>> {
    if ground.written.together.is_none() || ground.written.candidates.is_empty() {
        return None;
    }
    let Some(standing) = &ground.standing else {
        let text = "No nest holds the original: each candidate is judged by itself.";
        context.note(&path().field("together"), "together-without-nest", text);
        return None;
    };
    let mut offered: Vec<&(usize, Spring)> = ground.written.candidates.iter().collect();
    let mean = |of: &Drawing| of.nominal_coil().map(|coil| coil.mean().value);
    if offered.iter().all(|(_, spring)| mean(&spring.drawing).is_some()) {
        offered.put_in_order(|(_, one), (_, other)| {
            let mean = |of: &Spring| mean(&of.drawing).unwrap_or_default();
            mean(other).total_cmp(&mean(one))
        });
    } else {
        let text = "Which of the candidates is the widest is not known: they are taken in the order in which they stand.";
        context.note(&path().field("candidates"), "order-unknown", text);
    }
    let there = coils(standing, ground.original);
    let raised = there.iter().any(|seated| seated.raise.value != 0.0);
    let like = there.len() == offered.len();
    if raised && !like {
        let text = "There are not as many candidates as coils in the nest. It is not clear which of them stands on packing: all are taken to stand level.";
        context.note(&path().field("candidates"), "raise-unknown", text);
    }
    let coil = |(place, (_, spring)): (usize, &&(usize, Spring))| NestCoil {
        seated: Seated {
            spring: spring.drawing.clone(),
            raise: there.get(place).filter(|_| like).map(|of| of.raise).unwrap_or_default(),
        },
        cycle: spring.loads,
        waived: spring.waived.clone(),
    };
    let case = NestCase {
        offered: offered.iter().enumerate().map(coil).collect(),
        there,
        asked: ground.asked.clone(),
        load: standing.around.load,
        frame: ground.frame_around.as_ref().and_then(FrameAround::nests),
        waived: ground.written.waived.clone(),
    };
    let named = |name: &Option<String>| name.clone().unwrap_or(ground.original.name.clone());
    let at = core::iter::once(&ground.original.at);
    Some(WholeNest {
        case,
        standing,
        frame_around: ground.frame_around.as_ref(),
        this_nest: ground.written.together == Some(Reach::ThisNest),
        there: standing.names.iter().map(named).collect(),
        offered,
        there_at: standing.outer.iter().chain(at).chain(&standing.inner).cloned().collect(),
        cycle_at: &ground.cycle_at,
    })
}

/// The coils that are there, the widest first.
fn coils(standing: &NestAround, original: &Spring) -> Vec<Seated> {
    let around = &standing.around;
    let own = Seated { spring: original.drawing.clone(), raise: around.raise };
    around.outer.iter().cloned().chain([own]).chain(around.inner.iter().cloned()).collect()
}

impl WholeNest<'_> {
    /// The candidates, none of which is judged by itself, each with its order.
    pub(super) fn offers(
        &self,
        format: Format,
        letter: &Letter,
        ground: &Ground<'_>,
        judged: &TogetherReport,
    ) -> Vec<CandidateReport> {
        let one = |(place, (index, spring)): (usize, &&(usize, Spring))| {
            let alone = CandidateReport {
                name: spring.name.clone(),
                index: *index,
                met: None,
                title: "Judged with the others, as one nest".into(),
                sentence: String::new(),
                lines: Vec::new(),
                nest: None,
                frame: None,
                order: OrderReport::default(),
            };
            // An order stands under the verdict on the nest.
            let of_nest = CandidateReport {
                met: judged.met,
                title: judged.title.clone(),
                sentence: text!(
                    "{} as one nest for {} in {}: {}",
                    judged.offered.join(", "),
                    judged.there.join(", "),
                    judged.nest,
                    words::within(&judged.sentence)
                ),
                lines: judged.lines.clone(),
                ..alone.clone()
            };
            let case = self.case.case(place);
            CandidateReport {
                order: letter.of_candidate(format, ground, spring, &case, &of_nest),
                ..alone
            }
        };
        let mut found: Vec<CandidateReport> = self.offered.iter().enumerate().map(one).collect();
        found.put_in_order(|one, other| one.index.cmp(&other.index));
        found
    }

    pub(super) fn report(&self, context: &mut Context<'_>) -> TogetherReport {
        let mut report = TogetherReport {
            nest: self.standing.nest.clone(),
            there: self.there.clone(),
            offered: self.offered.iter().map(|(_, spring)| spring.name.clone()).collect(),
            met: None,
            title: words::overall(Met::CannotTell).into(),
            sentence: String::new(),
            lines: Vec::new(),
            swap: None,
            frame: None,
        };
        let found = match (self.case.judge(), self.frame_around) {
            (Err(ReplacementError::Frame(error)), Some(frame_around)) => {
                let why = frame_around.refused(context.format, &error);
                let text = text!("{}: {why}.", report.offered.join(", "));
                context.note(&path().field("together"), "swap-unknown", text);
                NestCase { frame: None, ..self.case.clone() }.judge()
            }
            (found, _) => found,
        };
        match found {
            Ok(judged) => {
                self.swapped(context, &judged, &mut report);
                let met = words::whole(judged.overall);
                report.met = Some(met);
                report.title = words::overall(met).into();
                report.lines =
                    judged.lines.iter().map(|one| self.line(context, one, &judged)).collect();
                let lines: Vec<Line> = judged.lines.iter().map(|one| one.line.clone()).collect();
                let said =
                    decides(context.format, met, &lines, &judged.contradictions, &report.lines);
                report.sentence = self.by_name(&said);
                for (whose, contradiction) in &judged.contradictions {
                    if let Some(at) = self.at(*whose) {
                        contradicts(context, &at, contradiction);
                    }
                }
            }
            Err(error) => {
                let offered: Vec<Path> =
                    self.offered.iter().map(|(_, spring)| spring.at.clone()).collect();
                let whole = path();
                let fields = Fields {
                    nest: (&self.there_at, &offered),
                    ..Fields::alone(&whole, self.cycle_at)
                };
                let problem = fields.problem(context.system(), &error);
                report.sentence =
                    sentence(&text!("Nothing can be said of it: {}", problem.message));
                context.problem_once(problem);
            }
        }
        report
    }

    /// What becomes of the nest, and of the frame on it.
    fn swapped(
        &self,
        context: &mut Context<'_>,
        judged: &NestJudgement,
        report: &mut TogetherReport,
    ) {
        let name = report.offered.join(", ");
        let subject = Subject { name: &name, at: path().field("together") };
        let names = (self.there.as_slice(), report.offered.as_slice());
        report.swap = swap::whole(context, self.standing, &subject, names, &judged.swap);
        if let Some((frame_around, frame)) = self.frame_around.zip(judged.frame.as_ref()) {
            let places = if self.this_nest {
                text!("With them in {} alone", self.standing.nest)
            } else {
                text!("With them in every nest of the same coils as {}", self.standing.nest)
            };
            report.frame = Some(swap::frame(context, &subject, frame_around, &places, frame));
        }
    }

    fn at(&self, whose: Whose) -> Option<Path> {
        match whose {
            Whose::There(place) => self.there_at.get(place).cloned(),
            Whose::Offered(place) => Some(self.offered.get(place)?.1.at.clone()),
            _ => None,
        }
    }

    /// A sentence with the coils by their names instead of their places.
    fn by_name(&self, said: &str) -> String {
        let there = self.there.iter().enumerate().map(|(at, name)| (Whose::There(at), name));
        let offered = self.offered.iter().enumerate();
        let offered = offered.map(|(at, (_, spring))| (Whose::Offered(at), &spring.name));
        there
            .chain(offered)
            .fold(said.to_owned(), |said, (whose, name)| said.replace(&whose.to_string(), name))
    }

    fn line(&self, context: &mut Context<'_>, of: &NestLine, judged: &NestJudgement) -> LineReport {
        let format = context.format;
        let requirement = of.line.requirement;
        let (whose, report) = match of.place {
            Some(place) => {
                let (index, name, own) = match self.offered.get(place) {
                    Some((index, spring)) => (Some(*index), spring.name.as_str(), &*spring.waived),
                    None => (None, "", &[][..]),
                };
                let waived_for = waived::waived_for(requirement, own, waived::FOR_NEST);
                (
                    name,
                    line::report(
                        context,
                        line::Within::nest(&self.case.case(place)),
                        &of.line,
                        (index, waived_for),
                    ),
                )
            }
            None if matches!(requirement, Requirement::Pocket | Requirement::Post) => {
                let widest = requirement == Requirement::Pocket;
                let place = if widest { 0 } else { self.offered.len().saturating_sub(1) };
                let of_nest = (None, waived::FOR_NEST);
                (
                    "the nest",
                    line::report(
                        context,
                        line::Within::nest(&self.case.case(place)),
                        &of.line,
                        of_nest,
                    ),
                )
            }
            None => {
                let asked = Asked { ..self.case.asked.clone() };
                let case = Case::new(Drawing::default(), Drawing::default(), asked);
                let working = self.put_in(format, requirement, judged);
                ("the nest", line::of_nest(context, &case, &of.line, working))
            }
        };
        LineReport {
            name: text!("{}: {whose}", report.name),
            why: self.by_name(&report.why),
            ..report
        }
    }

    /// The formula of a figure of the nest, what each coil puts in, and who says so.
    fn put_in(
        &self,
        format: Format,
        requirement: Requirement,
        judged: &NestJudgement,
    ) -> Option<(Put, String)> {
        let height = match requirement {
            Requirement::LoadAt(at) => self.case.stated_heights().get(usize::from(at)).copied(),
            _ => self.case.asked.working,
        };
        let formula = match requirement {
            Requirement::Load | Requirement::LoadAt(_) => LOAD_OF_COILS,
            Requirement::Rate => NEST_RATE,
            Requirement::FreeHeight => NEST_FREE,
            Requirement::SolidHeight => NEST_SOLID,
            Requirement::Reserve => NEST_TO_SOLID,
            Requirement::Deviation => {
                let after = judged.frame.as_ref()?.after.as_ref().ok()?;
                let (formula, inputs, source) = line::furthest(format, after);
                return Some((line::put(formula, &inputs), source));
            }
            _ => {
                let after = judged.swap.after.as_ref().ok()?;
                let load = after.coils.iter().map(|coil| coil.load).sum();
                return Some((swap::height_put(format, after, load), nest::SOURCE.to_string()));
            }
        };
        let carries = |coil: &&NestCoil| {
            let Seated { spring, raise } = &coil.seated;
            let touches = spring.free().is_ok_and(|free| Some(free.nominal() + *raise) > height);
            requirement != Requirement::Rate || touches
        };
        let one = |coil: &NestCoil| {
            let Seated { spring, raise } = &coil.seated;
            let mut own = vec![("o", format.decimal(*raise).to_string())];
            let own_letters = ["k", "L0", "Lc"].into_iter();
            own.extend(own_letters.filter_map(|sign| {
                Some((sign, line::nominal(&line::value(format, spring, sign)?).to_owned()))
            }));
            own
        };
        let coils: Vec<Vec<line::Input>> =
            self.case.offered.iter().filter(carries).map(one).collect();
        let terms = coils
            .iter()
            .map(|own| own.iter().map(|(sign, of)| (*sign, of as _)).collect::<Vec<Value<'_>>>());
        let height = format.decimal(height.unwrap_or_default());
        Some((formula.put_sum(&[("h", &height)], terms), nest::SOURCE.to_string()))
    }
}
