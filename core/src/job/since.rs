//! This job beside an earlier one of the same vehicle: what each coil has lost, by its label.

use super::answer::format;
use super::context::Context;
use super::drafted::Bench;
use super::figures::text;
use super::file;
use super::input::Job;
use super::pool;
use super::problem::Path;
use super::report::{SinceCoil, SinceReport, SinceWord};
use super::seat::{CoilState, Judged};
use crate::change::{self, Change, Estimate, Word, change};
use crate::formula::Value as Put;
use crate::quantity::si;
use crate::tables::Tables;
use serde_json::Value;

/// A coil with a label, as it was measured.
struct Known {
    label: String,
    name: String,
    estimate: Option<Estimate>,
    /// Whether a reading of it is questioned.
    questioned: bool,
}

/// What each coil of a job has lost since the job that it holds as `earlier`; nothing where it holds none.
#[must_use]
pub fn since(job: &Job, tables: &Tables<'_>) -> SinceReport {
    let Some(whole) = job.earlier.given() else { return SinceReport::default() };
    let Ok(earlier) = file::from_value(Value::Object(whole.clone())) else {
        return SinceReport::default();
    };
    let (before, _) = known(&earlier, tables);
    let (after, level) = known(job, tables);
    let mut context = Context::new(tables, format(job));
    let mut report = SinceReport { when: when(&earlier), ..SinceReport::default() };
    let mut left_out = LeftOut::default();
    for now in &after {
        match pair(now, &before, &after) {
            Ok((then, taped)) => {
                let found = change(then, taped, level);
                report.coils.push(compared(&mut context, now, (then, taped), found));
            }
            Err(why) => left_out.add(why, now),
        }
    }
    for then in &before {
        if !after.iter().any(|now| now.label == then.label) {
            left_out.add("not in this job", then);
        }
    }
    report.left_out = left_out.said();
    report.sentence = comes_to(&report);
    (_, _, report.workings) = context.findings();
    report
}

fn when(earlier: &Job) -> String {
    let date = earlier.record.given().map_or("", |record| record.date().written());
    let title = earlier.title().written();
    match (date, title) {
        ("", "") => "the earlier job".to_owned(),
        ("", title) => title.to_owned(),
        (date, _) => date.to_owned(),
    }
}

/// The coils that cannot be compared, those of one reason together.
#[derive(Default)]
struct LeftOut(Vec<(&'static str, Vec<String>)>);

impl LeftOut {
    fn add(&mut self, why: &'static str, coil: &Known) {
        let name = text!("{} ({})", coil.label, coil.name);
        match self.0.iter_mut().find(|(known, _)| *known == why) {
            Some((_, names)) if names.contains(&name) => {}
            Some((_, names)) => names.push(name),
            None => self.0.push((why, vec![name])),
        }
    }

    fn said(self) -> Vec<String> {
        self.0.into_iter().map(|(why, names)| text!("{}: {why}", names.join(", "))).collect()
    }
}

/// The coils of a job that have a label, in their nests and on the bench, and its decision level.
fn known(job: &Job, tables: &Tables<'_>) -> (Vec<Known>, f64) {
    let mut context = Context::new(tables, format(job));
    let bench = Bench::read(&mut context, job);
    let lying = pool::read(&mut context, job, &bench);
    let mut coils = Vec::new();
    let mut add = |context: &Context<'_>,
                   at: &Path,
                   label: &str,
                   name: &str,
                   standing: Option<CoilState>| {
        if label.is_empty() {
            return;
        }
        let readings = at.field("readings");
        let questioned = context.notes.iter().any(|note| {
            note.code == "reading-questioned" && note.path.starts_with(readings.text())
        });
        let estimate = standing.and_then(|standing| {
            let doubt = libm::hypot(standing.own_doubt.value, standing.tape_doubt.value);
            Some(Estimate { length: standing.free?, doubt: si(doubt) })
        });
        coils.push(Known { label: label.to_owned(), name: name.to_owned(), estimate, questioned });
    };
    for nest in &bench.nests {
        let list = nest.at.field("seats");
        for (index, (seated, report)) in nest.seats.iter().zip(&nest.reports).enumerate() {
            let standing = report.measured.then(|| seated.standing.clone());
            let label = seated.label.as_deref().unwrap_or_default();
            add(&context, &list.item(index), label, &seated.coil.name, standing);
        }
    }
    for coil in &lying {
        let Some(drawn) = coil.coil else { continue };
        let judged = Judged::of(&coil.taped, drawn, &bench.instrument);
        let standing = judged.measured.map(|_| judged.standing(drawn));
        add(&context, &coil.at, &coil.label, &drawn.name, standing);
    }
    (coils, bench.instrument.level)
}

/// What was measured of a coil then and now, or why it cannot be compared.
fn pair(
    now: &Known,
    before: &[Known],
    after: &[Known],
) -> Result<(Estimate, Estimate), &'static str> {
    let same = |all: &[Known]| {
        all.iter().filter(|one| one.label == now.label && one.name == now.name).count()
    };
    if same(after) > 1 {
        return Err("its label stands twice in this job");
    }
    let mut found: Vec<&Known> = before.iter().filter(|then| then.label == now.label).collect();
    if found.len() > 1 {
        found.retain(|then| then.name == now.name);
    }
    let then = match found.as_slice() {
        [] => return Err("not in the earlier job"),
        [then] => *then,
        _ => return Err("its label stands twice in the earlier job"),
    };
    if then.questioned {
        return Err("one of its readings then was never explained");
    }
    if now.questioned {
        return Err("one of its readings is to be read again first");
    }
    match (then.estimate, now.estimate) {
        (Some(then), Some(now)) => Ok((then, now)),
        (None, _) => Err("not measured then"),
        (_, None) => Err("not measured yet"),
    }
}

fn compared(
    context: &mut Context<'_>,
    coil: &Known,
    (then, now): (Estimate, Estimate),
    found: Change,
) -> SinceCoil {
    let format = context.format;
    let values: [Put<'_>; 4] = [
        ("L2", &format.decimal(now.length)),
        ("L1", &format.decimal(then.length)),
        ("u1", &format.decimal(then.doubt)),
        ("u2", &format.decimal(now.doubt)),
    ];
    let put = change::FORMULA.put(&values);
    let result = text!("{}, u = {}", format.decimal(found.by), format.decimal(found.doubt));
    let mut figure = format.fine(found.by).give_or_take(format, found.doubt);
    figure.working = Some(context.ledger.file(put, result, &change::SOURCE));
    let off = format.fine_text(found.by.abs());
    let doubt = figure.doubt_text.as_deref().unwrap_or_default();
    let (word, title, sentence) = match found.word {
        Word::Lost => (SinceWord::Lost, "Lost", text!("{off} {doubt} shorter than it was.")),
        Word::Gained => (
            SinceWord::Gained,
            "Taller",
            text!(
                "{off} {doubt} taller than it was: another coil, or a wrong reading then or now."
            ),
        ),
        Word::WithinDoubt => (
            SinceWord::WithinDoubt,
            "Cannot say",
            text!("{} {doubt}: too small a difference for the tapes to show.", figure.text),
        ),
    };
    SinceCoil {
        label: coil.label.clone(),
        name: coil.name.clone(),
        then: format.height(then.length).give_or_take(format, then.doubt),
        now: format.height(now.length).give_or_take(format, now.doubt),
        change: figure,
        word,
        title: title.into(),
        sentence,
    }
}

fn comes_to(report: &SinceReport) -> String {
    let count = |word| report.coils.iter().filter(|coil| coil.word == word).count();
    let (lost, gained, within_doubt) =
        (count(SinceWord::Lost), count(SinceWord::Gained), count(SinceWord::WithinDoubt));
    if report.coils.is_empty() {
        return text!("No coil was measured both times under the same label.");
    }
    let mut parts = vec![text!("{lost} shorter than then")];
    if gained > 0 {
        parts.push(text!("{gained} taller"));
    }
    parts.push(text!("{within_doubt} with no difference that the tapes can show"));
    text!("{}.", parts.join(", "))
}

/// Says at its field when the earlier job is none.
pub(crate) fn read(context: &mut Context<'_>, job: &Job) {
    let Some(whole) = context.whole(&Path::default(), job.earlier()) else { return };
    if let Ok(earlier) = file::from_value(Value::Object(whole.clone()))
        && let Some(mut problem) = file::format_problem(&earlier)
    {
        "earlier.format".clone_into(&mut problem.path);
        context.problem(problem);
    }
}
