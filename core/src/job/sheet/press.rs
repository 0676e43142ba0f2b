//! What a press showed of the coil, beside its drawing.

use crate::job::coil::Coil;
use crate::job::desk::Desk;
use crate::job::drawing::as_given;
use crate::job::figures::{Pen, sentence, text};
use crate::job::formulas::{self, letter};
use crate::job::report::{Press, PressRow};
use crate::load_test::{self, Closing, Fit, LoadTest};
use crate::propagation::Doubted;
use crate::quantity::{self, Force, Length, SpringRate, Turns};
use crate::say::Say;

/// None without a reading.
pub(super) fn of(
    desk: &mut Desk<'_>,
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
            report.sentences.push(sentence(&error.say(desk.system()).to_string()));
            return Some(report);
        }
    };
    let fit = test.fit();
    line(desk, &mut report, &fit);
    rows(desk, &mut report, &fit);
    implied_turns(desk, &mut report, &fit, drawn);
    if let Some(closing) = fit.closing {
        closes(desk, &mut report, closing);
    }
    if let Some(hysteresis) = test.hysteresis() {
        let pen = desk.pen;
        let gaps: Vec<_> = hysteresis.gaps.iter().map(|gap| pen.decimal(gap.lower)).collect();
        let put = formulas::HYSTERESIS
            .put_sum(&[("N", &gaps.len())], gaps.iter().map(|gap| [("Δh", gap as _)]));
        report.hysteresis = Some(desk.ledger.put(
            pen.fine(hysteresis.mean),
            formulas::HYSTERESIS,
            put,
            &"definition",
        ));
    }
    with_drawing(desk, &mut report, &fit, drawn);
    if let Some(tape) = tape {
        report.sentences.push(with_tape(desk.pen, &fit, tape));
    }
    Some(report)
}

fn line(desk: &mut Desk<'_>, report: &mut Press, fit: &Fit) {
    let pen = desk.pen;
    let with = text!("{} readings", fit.residuals.len());
    let source = &load_test::SOURCE;
    let doubt = fit.rate_doubt.map_or(0.0, |doubt| doubt.value);
    let figure = pen.doubted::<SpringRate>(fit.rate, doubt);
    report.rate = Some(desk.ledger.show(figure, formulas::BEST_LINE, with.clone(), source));
    let figure = pen.height(fit.free).give_or_take(pen, fit.free_doubt.unwrap_or_default());
    report.free = Some(desk.ledger.show(figure, formulas::BEST_LINE, with, source));
    if let Some(scatter) = fit.scatter {
        let off: Vec<_> =
            fit.residuals.iter().map(|residual| pen.say::<Force>(residual.off)).collect();
        let put = formulas::SCATTER
            .put_sum(&[("N", &fit.residuals.len())], off.iter().map(|off| [("ΔF", off as _)]));
        let figure = pen.figure::<Force>(scatter);
        report.scatter = Some(desk.ledger.put(figure, formulas::SCATTER, put, source));
    }
}

fn rows(desk: &mut Desk<'_>, report: &mut Press, fit: &Fit) {
    let pen = desk.pen;
    for residual in &fit.residuals {
        let height = pen.height(residual.reading.height);
        let load = pen.figure::<Force>(residual.reading.load);
        let off = desk.ledger.work(
            pen.figure::<Force>(residual.off),
            formulas::OFF_LINE,
            &[
                ("F", &pen.say::<Force>(residual.reading.load)),
                ("k", &pen.say::<SpringRate>(fit.rate)),
                ("L0", &pen.decimal(fit.free)),
                ("L", &pen.decimal(residual.reading.height)),
            ],
            &load_test::SOURCE,
        );
        let height = as_given::<Length>(desk, height, letter!("L"), "the reading");
        let load = as_given::<Force>(desk, load, letter!("F"), "the reading");
        report.rows.push(PressRow { height, load, off });
    }
}

fn implied_turns(desk: &mut Desk<'_>, report: &mut Press, fit: &Fit, drawn: &Coil) {
    let (Some(coil), Some(shear)) = (drawn.diameters(), drawn.shear()) else { return };
    let pen = desk.pen;
    let figure = pen.figure::<Turns>(fit.active_turns(coil, shear));
    let source = text!("{}; {}", crate::coil::rate::SOURCE, drawn.modulus.0);
    let figure = desk.ledger.work(
        figure,
        load_test::ACTIVE_TURNS,
        &[
            ("G", &pen.say::<quantity::Modulus>(shear)),
            ("d", &pen.decimal(coil.bar())),
            ("D", &pen.decimal(coil.mean())),
            ("k", &pen.say::<SpringRate>(fit.rate)),
        ],
        &source,
    );
    report.active_turns = Some(desk.ledger.cite(figure, drawn.modulus.1));
}

fn closes(desk: &mut Desk<'_>, report: &mut Press, closing: Closing) {
    let pen = desk.pen;
    let source = &load_test::CLOSING_SOURCE;
    let figure = pen.height(closing.height).give_or_take(pen, closing.height_doubt);
    let with = text!("two lines that cross, by chance in {}", Pen::percent(closing.chance, 2).text);
    report.closing = Some(desk.ledger.show(figure, formulas::BEST_LINE, with, source));
    let figure = pen.figure::<SpringRate>(closing.rate);
    let with = "the readings below".to_owned();
    report.closed_rate = Some(desk.ledger.show(figure, formulas::BEST_LINE, with, source));
    report.sentences.push(text!(
        "Turns begin to close at {}: below it the coil is stiffer.",
        pen.height(closing.height).text
    ));
}

fn with_drawing(desk: &mut Desk<'_>, report: &mut Press, fit: &Fit, drawn: &Coil) {
    let pen = desk.pen;
    if let Some(rate) = drawn.rate {
        let expected = Doubted { value: rate.value, doubt: rate.doubt() };
        let difference = fit.rate_against(expected);
        let share = (difference.by / rate.value).value;
        let within = within(difference.in_doubts);
        let way = if share < 0.0 { "softer" } else { "stiffer" };
        report.sentences.push(text!(
            "On the press it is {} {way} than its drawing{within}.",
            Pen::percent(share.abs(), 1).text
        ));
    }
    if let Some(free) = drawn.free() {
        let by = fit.free_against(Doubted::exact(free)).by;
        report.sentences.push(match off(pen, by) {
            Some(off) => text!("The line comes to a free height {off} the book's."),
            None => "The line comes to the free height of the book.".to_owned(),
        });
    }
}

fn with_tape(pen: Pen, fit: &Fit, tape: Doubted<Length>) -> String {
    let difference = fit.free_against(tape);
    let within = within(difference.in_doubts);
    match off(pen, difference.by) {
        Some(off) => text!("That is {off} what the tape said of it{within}."),
        None => "The tape said the same of it.".to_owned(),
    }
}

/// `1/64 in above`; none where the difference is no more than nought to a sixty-fourth.
fn off(pen: Pen, by: Length) -> Option<String> {
    let away = pen.fine_text(by.abs());
    let way = if by.value < 0.0 { "below" } else { "above" };
    (away != pen.fine_text(Length::default())).then(|| text!("{away} {way}"))
}

fn within(doubts: Option<f64>) -> &'static str {
    match doubts {
        Some(doubts) if doubts.abs() <= 2.0 => ", within the doubt of the two",
        Some(_) => ", by more than the doubt of the two",
        None => "",
    }
}
