//! What would settle a verdict that is too close to call, in the steps of a shop.
//!
//! The steps are tried in the order in which a shop would take them, each on top of those before it: the
//! place opposite, four places, a finer rule, a better tape, a height gauge. The first is named that
//! would settle the verdict if the readings stood as they are.

use super::figures::text;
use super::seat::Instrument;
use crate::measured::{Measured, uniform};
use crate::quantity::{Length, System, unit};
use crate::verdict::{Limits, Word, judge, judge_measured};

/// Places round a coil that show a tilt and a rock.
const ROUND_THE_COIL: usize = 4;
/// Half-width in millimetres of what a height gauge on a flat plate may be wrong by, its reading included
/// (common practice, no source).
const GAUGE: f64 = 0.1;

/// What is left in doubt after some steps, and what they are.
#[derive(Clone, Copy)]
struct Step {
    left: Measured,
    at: &'static str,
    rule: Option<&'static str>,
    tape: Option<&'static str>,
}

/// The sentence that says what to do next of what is too close to call.
pub(crate) fn sentence(measured: &Measured, limits: Limits, instrument: &Instrument) -> String {
    let whole = judge(measured.mean, measured.doubt(), limits, instrument.level);
    if whole.word == Word::TooClose && whole.would_settle.is_none() {
        return "It stands on the limit: no tape settles it.".to_owned();
    }
    let between = match whole.word {
        Word::TooClose => "",
        _ => "It depends on where between two marks the end lies. ",
    };
    let settled =
        |left: &Measured| judge_measured(left, limits, instrument.level).word != Word::TooClose;
    if let Some(step) = steps(*measured, instrument).iter().find(|step| settled(&step.left)) {
        return text!("{between}{}", step.sentence());
    }
    let gauge = Measured {
        places: measured.places.max(ROUND_THE_COIL),
        tape_doubt: uniform(Length::new::<unit::millimeter>(GAUGE)),
        ..read_to(*measured, Length::default())
    };
    if settled(&gauge) {
        "A height gauge on a flat plate, at four places, would settle it.".to_owned()
    } else {
        "It is so near the limit that neither a tape nor a height gauge settles it: set it aside, or go by the manual."
            .to_owned()
    }
}

impl Step {
    fn sentence(&self) -> String {
        let rule = self.rule.map_or_else(String::new, |rule| text!(", with a rule in {rule}"));
        let joint = if self.rule.is_some() { " and" } else { ", with" };
        let tape =
            self.tape.map_or_else(String::new, |tape| text!("{joint} a better tape ({tape})"));
        let stop = if rule.is_empty() && tape.is_empty() { "" } else { "," };
        text!("The same {}{rule}{tape}{stop} would settle it.", self.at)
    }
}

/// The same, read to another graduation.
fn read_to(measured: Measured, graduation: Length) -> Measured {
    let half = graduation / 2.0;
    let (least, most) = (measured.mean - half, measured.mean + half);
    Measured { least, most, reading_doubt: uniform(half), ..measured }
}

fn steps(measured: Measured, instrument: &Instrument) -> Vec<Step> {
    let mut steps = Vec::new();
    let mut step = Step { left: measured, at: "readings", rule: None, tape: None };
    for (places, at) in
        [(2, "reading at the place opposite"), (ROUND_THE_COIL, "at four places round the coil")]
    {
        if measured.places < places {
            step.left.places = places;
            step.at = at;
            steps.push(step);
        }
    }
    let inch = Length::new::<unit::inch>(1.0);
    let rules: &[(Length, &str)] = match instrument.marked {
        System::Inch => &[(inch / 32.0, "thirty-seconds"), (inch / 64.0, "sixty-fourths")],
        System::Metric => &[(Length::new::<unit::millimeter>(0.5), "half millimetres")],
    };
    for (graduation, name) in rules {
        let finer = read_to(step.left, *graduation);
        if finer.reading_doubt < step.left.reading_doubt {
            step.left = finer;
            step.rule = Some(name);
            steps.push(step);
        }
    }
    if let Some((name, error)) = instrument.best_class(measured.mean)
        && uniform(error) < step.left.tape_doubt
    {
        step.left.tape_doubt = uniform(error);
        step.tape = Some(name);
        steps.push(step);
    }
    steps
}
