//! Several candidates as one nest for the whole nest.

use super::order::Letter;
use super::place::Standing;
use super::spring::Spring;
use super::{Ground, contradicts, decides, line, path, refused, words};
use crate::drawing::Drawing;
use crate::job::desk::Desk;
use crate::job::figures::{Pen, sentence, text};
use crate::job::problem::Path;
use crate::job::report::{CandidateReport, LineReport, Met, OrderReport, TogetherReport};
use crate::nest;
use crate::quantity;
use crate::replacement::{
    Amount, Asked, Case, Line, NestCase, NestCoil, NestLine, Requirement, Seated, Whose,
};

/// A nest and the candidates that are to replace all of it.
pub(super) struct WholeNest<'g> {
    case: NestCase,
    name: &'g str,
    there: Vec<String>,
    /// The candidates, the widest first, each with its place in the job's list.
    offered: Vec<&'g (usize, Spring)>,
    /// Where the drawings of those that are there stand.
    there_at: Vec<Path>,
    cycle_at: &'g Path,
}

/// The nest for the nest, where that is asked and there is one.
pub(super) fn nest<'g>(desk: &mut Desk<'_>, ground: &'g Ground<'_>) -> Option<WholeNest<'g>> {
    if !ground.written.together || ground.written.candidates.is_empty() {
        return None;
    }
    let Some(standing) = &ground.standing else {
        let text = "No nest holds the original: each candidate is judged by itself.";
        desk.note(&path().field("together"), "together-without-nest", text);
        return None;
    };
    let mut offered: Vec<&(usize, Spring)> = ground.written.candidates.iter().collect();
    let mean = |of: &Drawing| of.nominal_coil().map(|coil| coil.mean().value);
    if offered.iter().all(|(_, spring)| mean(&spring.drawing).is_some()) {
        offered.sort_by(|(_, one), (_, other)| {
            let mean = |of: &Spring| mean(&of.drawing).unwrap_or_default();
            mean(other).total_cmp(&mean(one))
        });
    } else {
        let text = "Which of the candidates is the widest is not known: they are taken in the order in which they stand.";
        desk.note(&path().field("candidates"), "order-unknown", text);
    }
    let there = coils(standing, ground.original);
    let raised = there.iter().any(|seated| seated.raise.value != 0.0);
    let like = there.len() == offered.len();
    if raised && !like {
        let text = "There are not as many candidates as coils in the nest. A raised seat belongs to none of them for sure: all are taken to stand level.";
        desk.note(&path().field("candidates"), "raise-unknown", text);
    }
    let coil = |(place, (_, spring)): (usize, &&(usize, Spring))| NestCoil {
        seated: Seated {
            spring: spring.drawing.clone(),
            raise: there.get(place).filter(|_| like).map(|of| of.raise).unwrap_or_default(),
        },
        cycle: spring.loads,
    };
    let case = NestCase {
        offered: offered.iter().enumerate().map(coil).collect(),
        there,
        asked: ground.asked.clone(),
        waived: ground.written.waived.clone(),
    };
    let named = |name: &Option<String>| name.clone().unwrap_or(ground.original.name.clone());
    let at = core::iter::once(&ground.original.at);
    Some(WholeNest {
        case,
        name: &standing.nest,
        there: standing.names.iter().map(named).collect(),
        offered,
        there_at: standing.outer.iter().chain(at).chain(&standing.inner).cloned().collect(),
        cycle_at: &ground.cycle_at,
    })
}

/// The coils that are there, the widest first.
fn coils(standing: &Standing, original: &Spring) -> Vec<Seated> {
    let around = &standing.around;
    let own = Seated { spring: original.drawing.clone(), raise: around.raise };
    around.outer.iter().cloned().chain([own]).chain(around.inner.iter().cloned()).collect()
}

impl WholeNest<'_> {
    /// The candidates, none of which is judged by itself, each with its order.
    pub(super) fn offers(
        &self,
        pen: Pen,
        letter: &Letter,
        ground: &Ground<'_>,
        judged: &TogetherReport,
    ) -> Vec<CandidateReport> {
        let one = |(place, (index, spring)): (usize, &&(usize, Spring))| {
            let alone = CandidateReport {
                name: spring.name.clone(),
                index: *index,
                met: None,
                title: "Judged with the others, as one nest",
                sentence: String::new(),
                lines: Vec::new(),
                nest: None,
                frame: None,
                order: OrderReport::default(),
            };
            // An order stands under the verdict on the nest.
            let of_nest = CandidateReport {
                met: judged.met,
                title: judged.title,
                sentence: judged.sentence.clone(),
                lines: judged.lines.clone(),
                ..alone.clone()
            };
            let case = self.case.case(place);
            CandidateReport {
                order: letter.of_candidate(pen, ground, spring, &case, &of_nest),
                ..alone
            }
        };
        let mut found: Vec<CandidateReport> = self.offered.iter().enumerate().map(one).collect();
        found.sort_by_key(|one| one.index);
        found
    }

    pub(super) fn report(&self, desk: &mut Desk<'_>) -> TogetherReport {
        let mut report = TogetherReport {
            nest: self.name.to_owned(),
            there: self.there.clone(),
            offered: self.offered.iter().map(|(_, spring)| spring.name.clone()).collect(),
            met: None,
            title: words::overall(Met::CannotTell),
            sentence: String::new(),
            lines: Vec::new(),
        };
        match self.case.judge() {
            Ok(judged) => {
                let met = words::whole(judged.overall);
                report.met = Some(met);
                report.title = words::overall(met);
                report.lines = judged.lines.iter().map(|one| self.line(desk, one)).collect();
                let lines: Vec<Line> = judged.lines.iter().map(|one| one.line.clone()).collect();
                let said = decides(desk.pen, met, &lines, &judged.contradictions, &report.lines);
                report.sentence = self.by_name(&said);
                for (whose, contradiction) in &judged.contradictions {
                    if let Some(at) = self.at(*whose) {
                        contradicts(desk, &at, contradiction);
                    }
                }
            }
            Err(error) => {
                let offered: Vec<Path> =
                    self.offered.iter().map(|(_, spring)| spring.at.clone()).collect();
                let whole = path();
                let at = refused::Where {
                    nest: (&self.there_at, &offered),
                    ..refused::Where::alone(&whole, self.cycle_at)
                };
                let problem = refused::problem(desk.pen, &error, &at);
                report.sentence =
                    sentence(&text!("Nothing can be said of it: {}", problem.message));
                if !desk.problems.contains(&problem) {
                    desk.problem(problem);
                }
            }
        }
        report
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

    fn line(&self, desk: &mut Desk<'_>, of: &NestLine) -> LineReport {
        let pen = desk.pen;
        let requirement = of.line.requirement;
        let (whose, report) = match of.place {
            Some(place) => {
                let name = self.offered.get(place).map_or("", |(_, spring)| &spring.name);
                (name, line::report(desk, &self.case.case(place), &of.line))
            }
            None if matches!(requirement, Requirement::Pocket | Requirement::Post) => {
                let widest = requirement == Requirement::Pocket;
                let place = if widest { 0 } else { self.offered.len().saturating_sub(1) };
                ("the nest", line::report(desk, &self.case.case(place), &of.line))
            }
            None => {
                let asked = Asked { ..self.case.asked.clone() };
                let case = Case::new(Drawing::default(), Drawing::default(), asked);
                let (formula, with) = self.put_in(pen, requirement);
                let rule = (formula, nest::SOURCE.to_string());
                ("the nest", line::of_nest(desk, &case, &of.line, rule, with))
            }
        };
        LineReport {
            name: text!("{}: {whose}", report.name),
            why: self.by_name(&report.why),
            ..report
        }
    }

    /// The formula of a figure of the nest, and what each coil puts in.
    fn put_in(&self, pen: Pen, requirement: Requirement) -> (&'static str, String) {
        let working = self.case.asked.working.unwrap_or_default();
        let formula = match requirement {
            Requirement::Load => "F = Σ k · (L0 + o − h)",
            Requirement::Rate => "k = Σ k of those that carry",
            Requirement::FreeHeight => "h = max(L0 + o)",
            Requirement::Reserve => "h − max(Lc + o)",
            _ => "hs = max(Lc + o)",
        };
        let one = |coil: &NestCoil| {
            let (spring, raise) = (&coil.seated.spring, coil.seated.raise);
            let raised = |of| Amount::Length(of + raise);
            let range = match requirement {
                Requirement::Load => spring.load(working - raise).ok()?.map(Amount::Load),
                Requirement::Rate => spring.rate().ok()?.map(Amount::Rate),
                Requirement::FreeHeight => spring.free().ok()?.map(raised),
                _ => spring.solid().ok()?.map(raised),
            };
            Some(words::range(|amount| words::amount(pen, amount), &range))
        };
        (formula, quantity::joined(self.case.offered.iter().filter_map(one), "; "))
    }
}
