//! A job as tables for a spreadsheet: its coils, its nests, its frame.
//!
//! Each length stands as it is read off a tape, and beside it as a decimal of the unit in its column's
//! name. A table begins with a byte order mark and its lines end in CRLF, so that a spreadsheet takes the
//! letters for what they are. Where numbers are written with a decimal comma the columns are parted by
//! semicolons, as spreadsheets there expect.

use super::assess::assess;
use super::coil_table::fields;
use super::entry::{List, Text};
use super::input::Job;
use super::level::level;
use super::report::{Axes, Figure, LevelReport, Report, SeatReport, StateReport};
use crate::quantity::{System, write_fixed};
use crate::tables::Tables;
use serde::Serialize;

/// How decimals are written where the spreadsheet is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Decimals {
    /// `13.875`, columns parted by commas.
    Point,
    /// `13,875`, columns parted by semicolons.
    Comma,
}

/// The tables of a job, each the text of a file.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Spreadsheets {
    /// A line a coil: readings, measured height, verdict.
    pub coils: String,
    /// A line for each height of a nest: load, and what each coil bears.
    pub nests: String,
    /// A line for each nest under the frame; empty where there is no frame.
    pub frame: String,
}

enum Cell {
    Words(String),
    Number { value: f64, decimals: usize },
    Nothing,
}

fn words(text: impl Into<String>) -> Cell {
    Cell::Words(text.into())
}

/// A table that grows line by line.
struct Sheet {
    decimals: Decimals,
    text: String,
}

impl Sheet {
    fn new(decimals: Decimals) -> Self {
        Self { decimals, text: "\u{feff}".to_owned() }
    }

    fn line(&mut self, cells: impl IntoIterator<Item = Cell>) {
        let separator = match self.decimals {
            Decimals::Point => ",",
            Decimals::Comma => ";",
        };
        let cells: Vec<String> = cells.into_iter().map(|cell| self.cell(cell)).collect();
        self.text.push_str(&cells.join(separator));
        self.text.push_str("\r\n");
    }

    fn cell(&self, cell: Cell) -> String {
        match cell {
            Cell::Words(text) => fields::plain(&text.replace(['\u{202f}', '\u{a0}'], " ")),
            Cell::Number { value, decimals } => {
                let number = write_fixed(value, decimals).replace('\u{202f}', "").replace('−', "-");
                match self.decimals {
                    Decimals::Point => number,
                    Decimals::Comma => number.replace('.', ","),
                }
            }
            Cell::Nothing => String::new(),
        }
    }
}

/// Figures as the columns of a job's system have them.
#[derive(Clone, Copy)]
struct Columns<'r> {
    axes: &'r Axes,
    /// Decimals of a length.
    fine: usize,
}

impl Columns<'_> {
    fn length(&self, figure: Option<&Figure>) -> Cell {
        number(figure.map(|figure| figure.si), self.axes.length.scale, self.fine)
    }

    fn doubt(&self, figure: Option<&Figure>) -> Cell {
        number(figure.and_then(|figure| figure.doubt_si), self.axes.length.scale, self.fine)
    }

    fn load(&self, figure: Option<&Figure>) -> Cell {
        number(figure.map(|figure| figure.si), self.axes.force.scale, 1)
    }

    fn load_doubt(&self, figure: Option<&Figure>) -> Cell {
        number(figure.and_then(|figure| figure.doubt_si), self.axes.force.scale, 1)
    }
}

fn number(si: Option<f64>, scale: f64, decimals: usize) -> Cell {
    si.map_or(Cell::Nothing, |si| Cell::Number { value: si / scale, decimals })
}

fn share(figure: Option<&Figure>) -> Cell {
    number(figure.map(|figure| figure.si), 0.01, 1)
}

fn text(figure: Option<&Figure>) -> Cell {
    figure.map_or(Cell::Nothing, |figure| words(figure.text.clone()))
}

/// The tables of a job.
#[must_use]
pub fn spreadsheets(job: &Job, tables: &Tables<'_>, decimals: Decimals) -> Spreadsheets {
    let report = assess(job, tables);
    let fine = match super::file::system_of(job) {
        System::Inch => 4,
        System::Metric => 2,
    };
    let columns = Columns { axes: &report.axes, fine };
    Spreadsheets {
        coils: coils(job, &report, columns, Sheet::new(decimals)),
        nests: nests(&report, columns, Sheet::new(decimals)),
        frame: frame(&level(job, tables), columns, Sheet::new(decimals)),
    }
}

/// The readings of a seat, as written.
fn readings(job: &Job, nest: usize, seat: usize) -> Vec<String> {
    let list = || {
        let nest = job.nests.given()?.0.get(nest)?.given()?;
        nest.seats.given()?.0.get(seat)?.given()?.readings.given()
    };
    let texts = list().map(|List(entries)| entries.iter().filter_map(|entry| entry.given()));
    texts.into_iter().flatten().map(|Text(text)| text.trim().to_owned()).collect()
}

fn coils(job: &Job, report: &Report, columns: Columns<'_>, mut sheet: Sheet) -> String {
    let seats = || {
        let nests = report.nests.iter().enumerate();
        nests.flat_map(|(n, nest)| {
            nest.seats.iter().enumerate().map(move |(s, seat)| (n, nest, s, seat))
        })
    };
    let most = seats().map(|(n, _, s, _)| readings(job, n, s).len()).max().unwrap_or_default();
    let (length, force) = (columns.axes.length.unit, columns.axes.force.unit);
    let mut names: Vec<String> = ["nest", "coil", "label", "condition"].map(str::to_owned).to_vec();
    names.extend((1..=most).map(|place| format!("reading {place}")));
    for figure in ["book", "least", "most", "measured", "off the book"] {
        names.extend([figure.to_owned(), format!("{figure}, {length}")]);
    }
    names.extend([
        format!("doubt of the measured height, {length}"),
        format!("load cost, {force}"),
        format!("doubt of the load cost, {force}"),
        "verdict".to_owned(),
        "sure, %".to_owned(),
        "in words".to_owned(),
    ]);
    sheet.line(names.into_iter().map(Cell::Words));
    for (n, nest, s, seat) in seats() {
        let SeatReport {
            name, label, condition, book, free, deviation, verdict, load_cost, ..
        } = seat;
        let measured = free.as_ref().filter(|_| seat.measured);
        let mut cells = vec![
            words(&*nest.id),
            words(&**name),
            words(label.clone().unwrap_or_default()),
            words(condition.clone().unwrap_or_default()),
        ];
        let mut written: Vec<Cell> = readings(job, n, s).into_iter().map(words).collect();
        written.resize_with(most, || Cell::Nothing);
        cells.extend(written);
        let limit = |of: fn(&super::report::VerdictReport) -> Option<&Figure>| {
            verdict.as_ref().and_then(of)
        };
        for figure in [
            book.as_ref(),
            limit(|verdict| verdict.least.as_ref()),
            limit(|verdict| verdict.most.as_ref()),
            measured,
            deviation.as_ref(),
        ] {
            cells.extend([text(figure), columns.length(figure)]);
        }
        let verdict = verdict.as_ref();
        let sure = verdict.and_then(|verdict| {
            [verdict.p_in, verdict.p_short, verdict.p_long].into_iter().flatten().reduce(f64::max)
        });
        cells.extend([
            columns.doubt(measured),
            columns.load(load_cost.as_ref()),
            columns.load_doubt(load_cost.as_ref()),
            words(verdict.map_or("", |verdict| verdict.title)),
            // Rounded down: 99.96 % is not to be read as certain.
            sure.map_or(Cell::Nothing, |sure| Cell::Number {
                value: libm::floor(sure * 1000.0) / 10.0,
                decimals: 1,
            }),
            words(verdict.map_or("", |verdict| verdict.sentence.as_str())),
        ]);
        sheet.line(cells);
    }
    sheet.text
}

fn nests(report: &Report, columns: Columns<'_>, mut sheet: Sheet) -> String {
    let most = report.nests.iter().map(|nest| nest.seats.len()).max().unwrap_or_default();
    let (length, force) = (columns.axes.length.unit, columns.axes.force.unit);
    let mut names: Vec<String> = vec![
        "nest".to_owned(),
        "asked".to_owned(),
        "height".to_owned(),
        format!("height, {length}"),
        format!("load, {force}"),
        format!("doubt of the load, {force}"),
    ];
    for coil in 1..=most {
        names.extend([
            format!("coil {coil}"),
            format!("load of coil {coil}, {force}"),
            format!("share of coil {coil}, %"),
            format!("left before solid of coil {coil}"),
            format!("left before solid of coil {coil}, {length}"),
        ]);
    }
    sheet.line(names.into_iter().map(Cell::Words));
    for nest in &report.nests {
        let working = nest.working.iter().map(|state| ("working", state));
        let asked = nest.answers.iter();
        let asked = asked.map(|state| (state.asked.as_deref().unwrap_or_default(), state));
        for (name, StateReport { height, load, seats, .. }) in working.chain(asked) {
            let mut cells = vec![
                words(&*nest.id),
                words(name),
                words(&*height.text),
                columns.length(Some(height)),
                columns.load(Some(load)),
                columns.load_doubt(Some(load)),
            ];
            for (seat, state) in nest.seats.iter().zip(seats) {
                cells.extend([
                    words(&*seat.name),
                    columns.load(Some(&state.load)),
                    share(state.share.as_ref()),
                    text(state.to_solid.as_ref()),
                    columns.length(state.to_solid.as_ref()),
                ]);
            }
            sheet.line(cells);
        }
    }
    sheet.text
}

fn frame(report: &LevelReport, columns: Columns<'_>, mut sheet: Sheet) -> String {
    let Some(frame) = &report.frame else { return String::new() };
    let planned = report.shims.as_ref();
    let (length, force) = (columns.axes.length.unit, columns.axes.force.unit);
    let now = [
        "height".to_owned(),
        format!("height, {length}"),
        format!("load, {force}"),
        format!("doubt of the load, {force}"),
        "part of the mean load, %".to_owned(),
    ];
    let then = now.clone().map(|name| format!("{name}, with the shims planned"));
    let mut names = vec!["nest".to_owned()];
    names.extend(now);
    if planned.is_some() {
        names.push("shims".to_owned());
        names.extend(then);
    }
    sheet.line(names.into_iter().map(Cell::Words));
    for (index, support) in frame.supports.iter().enumerate() {
        let state = |support: &super::report::SupportReport| {
            [
                words(&*support.height.text),
                columns.length(Some(&support.height)),
                columns.load(Some(&support.load)),
                columns.load_doubt(Some(&support.load)),
                share(Some(&support.share)),
            ]
        };
        let mut cells = vec![words(&*support.nest)];
        cells.extend(state(support));
        if let Some(plan) = planned {
            let steps = plan.steps.iter().filter(|step| step.nest == support.nest);
            let steps: Vec<&str> = steps.map(|step| step.text.as_str()).collect();
            cells.push(words(steps.join("; ")));
            cells.extend(plan.supports.get(index).into_iter().flat_map(state));
        }
        sheet.line(cells);
    }
    sheet.text
}
