//! What a press showed of the coil, beside its drawing.

use crate::job::coil::Coil;
use crate::job::context::Context;
use crate::job::drawing::as_given;
use crate::job::figures::{Format, sentence, text};
use crate::job::formulas::{self, letter};
use crate::job::report::{Press, PressRow};
use crate::load_test::{self, Closing, Fit, LoadTest};
use crate::propagation::Doubted;
use crate::quantity::{self, Force, Length, SpringRate, Turns};
use crate::say::Say;

/// None without a reading.
pub(super) fn of(
    context: &mut Context<'_>,
    drawn: &Coil,
    tape: Option<Doubted<Length>>,
) -> Option<Press> {
    let (loading, unloading) = drawn.pressed.clone();
    if loading.is_empty() && unloading.is_empty() {
        return None;
    }
    let mut report = Press::default();
    let test = match LoadTest::new(loading, unloading, None) {
        Ok(test) => test,
        Err(error) => {
            report.sentences.push(sentence(&error.say(context.system()).to_string()));
            return Some(report);
        }
    };
    let fit = test.fit();
    line(context, &mut report, &fit);
    rows(context, &mut report, &fit);
    implied_turns(context, &mut report, &fit, drawn);
    if let Some(closing) = fit.closing {
        closes(context, &mut report, closing);
    }
    if let Some(hysteresis) = test.hysteresis() {
        let format = context.format;
        let gaps: Vec<_> = hysteresis.gaps.iter().map(|gap| format.decimal(gap.lower)).collect();
        let put = formulas::HYSTERESIS
            .put_sum(&[("N", &gaps.len())], gaps.iter().map(|gap| [("Δh", gap as _)]));
        report.hysteresis =
            Some(context.ledger.put(format.fine(hysteresis.mean), put, "definition"));
    }
    with_drawing(context, &mut report, &fit, drawn);
    if let Some(tape) = tape {
        report.sentences.push(with_tape(context.format, &fit, tape));
    }
    Some(report)
}

fn line(context: &mut Context<'_>, report: &mut Press, fit: &Fit) {
    let format = context.format;
    let with = text!("{} readings", fit.residuals.len());
    let source = &load_test::SOURCE;
    let doubt = fit.rate_doubt.map_or(0.0, |doubt| doubt.value);
    let figure = format.doubted::<SpringRate>(fit.rate, doubt);
    report.rate = Some(context.ledger.show(figure, formulas::BEST_LINE, with.clone(), source));
    let figure = format.height(fit.free).give_or_take(format, fit.free_doubt.unwrap_or_default());
    report.free = Some(context.ledger.show(figure, formulas::BEST_LINE, with, source));
    if let Some(scatter) = fit.scatter {
        let off: Vec<_> =
            fit.residuals.iter().map(|residual| format.say::<Force>(residual.off)).collect();
        let put = formulas::SCATTER
            .put_sum(&[("N", &fit.residuals.len())], off.iter().map(|off| [("ΔF", off as _)]));
        let figure = format.figure::<Force>(scatter);
        report.scatter = Some(context.ledger.put(figure, put, source));
    }
}

fn rows(context: &mut Context<'_>, report: &mut Press, fit: &Fit) {
    let format = context.format;
    for residual in &fit.residuals {
        let height = format.height(residual.reading.height);
        let load = format.figure::<Force>(residual.reading.load);
        let off = context.ledger.work(
            format.figure::<Force>(residual.off),
            formulas::OFF_LINE,
            &[
                ("F", &format.say::<Force>(residual.reading.load)),
                ("k", &format.say::<SpringRate>(fit.rate)),
                ("L0", &format.decimal(fit.free)),
                ("L", &format.decimal(residual.reading.height)),
            ],
            &load_test::SOURCE,
        );
        let height = as_given::<Length>(context, height, letter!("L"), "the reading");
        let load = as_given::<Force>(context, load, letter!("F"), "the reading");
        report.rows.push(PressRow { height, load, off });
    }
}

fn implied_turns(context: &mut Context<'_>, report: &mut Press, fit: &Fit, drawn: &Coil) {
    let (Some(coil), Some(shear)) = (drawn.diameters(), drawn.shear()) else { return };
    let format = context.format;
    let figure = format.figure::<Turns>(fit.active_turns(coil, shear));
    let source = text!("{}; {}", crate::coil::rate::SOURCE, drawn.modulus.0);
    let figure = context.ledger.work(
        figure,
        load_test::ACTIVE_TURNS,
        &[
            ("G", &format.say::<quantity::Modulus>(shear)),
            ("d", &format.decimal(coil.bar())),
            ("D", &format.decimal(coil.mean())),
            ("k", &format.say::<SpringRate>(fit.rate)),
        ],
        source,
    );
    report.active_turns = Some(context.ledger.cite(figure, drawn.modulus.1));
}

fn closes(context: &mut Context<'_>, report: &mut Press, closing: Closing) {
    let format = context.format;
    let source = &load_test::CLOSING_SOURCE;
    let figure = format.height(closing.height).give_or_take(format, closing.height_doubt);
    let with =
        text!("two lines that cross, by chance in {}", Format::percent(closing.chance, 2).text);
    report.closing = Some(context.ledger.show(figure, formulas::BEST_LINE, with, source));
    let figure = format.figure::<SpringRate>(closing.rate);
    let with = "the readings below".to_owned();
    report.closed_rate = Some(context.ledger.show(figure, formulas::BEST_LINE, with, source));
    report.sentences.push(text!(
        "Turns begin to close at {}: below it the coil is stiffer.",
        format.height(closing.height).text
    ));
}

fn with_drawing(context: &mut Context<'_>, report: &mut Press, fit: &Fit, drawn: &Coil) {
    let format = context.format;
    if let Some(rate) = drawn.rate {
        let expected = Doubted { value: rate.value, doubt: rate.doubt() };
        let difference = fit.rate_against(expected);
        let share = (difference.by / rate.value).value;
        let within = within(difference.in_doubts);
        let way = if share < 0.0 { "softer" } else { "stiffer" };
        report.sentences.push(text!(
            "On the press it is {} {way} than its drawing{within}.",
            Format::percent(share.abs(), 1).text
        ));
    }
    if let Some(free) = drawn.free() {
        let by = fit.free_against(Doubted::exact(free)).by;
        report.sentences.push(match off(format, by) {
            Some(off) => text!("The line comes to a free height {off} the book's."),
            None => "The line comes to the free height of the book.".to_owned(),
        });
    }
}

fn with_tape(format: Format, fit: &Fit, tape: Doubted<Length>) -> String {
    let difference = fit.free_against(tape);
    let within = within(difference.in_doubts);
    match off(format, difference.by) {
        Some(off) => text!("That is {off} what the tape said of it{within}."),
        None => "The tape said the same of it.".to_owned(),
    }
}

/// `1/64 in above`; none where the difference is zero to a sixty-fourth.
fn off(format: Format, by: Length) -> Option<String> {
    let away = format.fine_text(by.abs());
    let way = if by.value < 0.0 { "below" } else { "above" };
    (away != format.fine_text(Length::default())).then(|| text!("{away} {way}"))
}

fn within(doubts: Option<f64>) -> &'static str {
    match doubts {
        Some(doubts) if doubts.abs() <= 2.0 => ", within the doubt of the two",
        Some(_) => ", by more than the doubt of the two",
        None => "",
    }
}
