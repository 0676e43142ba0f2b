//! A job as tables for a spreadsheet: its coils, its nests, its boxes, its frame, its heights when it is down again.
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
use super::report::{
    Axes, Figure, FrameReport, GuidesReport, LevelReport, NestReport, PointReport, Report,
    SeatReport, StateReport, SupportReport,
};
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
#[cfg_attr(feature = "serde", derive(serde::Deserialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Spreadsheets {
    /// A line a coil: readings, measured height, verdict.
    pub coils: String,
    /// A line for each height of a nest: load, and what each coil bears.
    pub nests: String,
    /// A line for each box in its guides; empty where there is none.
    pub boxes: String,
    /// A line for each nest under the frame; empty where there is no frame.
    pub frame: String,
    /// A line for each nest and point under each weight: heights worked out and taped; empty where there is
    /// one weight, no point, and nothing was taped.
    pub standing: String,
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
    let level = level(job, tables);
    let frame = level.frame.as_ref();
    Spreadsheets {
        coils: coils(job, &report, columns, Sheet::new(decimals)),
        nests: nests(&report, columns, Sheet::new(decimals)),
        boxes: table(boxes(job, &report, columns), Sheet::new(decimals)),
        frame: of_frame(&level, columns, Sheet::new(decimals)),
        standing: table(
            frame.map_or_else(Vec::new, |frame| standing(frame, columns)),
            Sheet::new(decimals),
        ),
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
    let (length, force) = (&columns.axes.length.unit, &columns.axes.force.unit);
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
            words(verdict.map_or("", |verdict| &*verdict.title)),
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
    let (length, force) = (&columns.axes.length.unit, &columns.axes.force.unit);
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

fn of_frame(report: &LevelReport, columns: Columns<'_>, mut sheet: Sheet) -> String {
    let Some(frame) = &report.frame else { return String::new() };
    let planned = report.shims.as_ref();
    let (length, force) = (&columns.axes.length.unit, &columns.axes.force.unit);
    let now = [
        "height".to_owned(),
        format!("height, {length}"),
        format!("load, {force}"),
        format!("doubt of the load, {force}"),
        "part of the mean load, %".to_owned(),
        "left before solid".to_owned(),
        format!("left before solid, {length}"),
    ];
    let then = now.clone().map(|name| format!("{name}, with the shims planned"));
    let mut names = vec!["nest".to_owned()];
    names.extend(now);
    if planned.is_some() {
        names.push("shims".to_owned());
        names.extend(then);
    }
    let stacked = !report.stacks.is_empty();
    if stacked {
        for name in ["pads, plates and shims", "lower seat to frame"] {
            names.extend([name.to_owned(), format!("{name}, {length}")]);
        }
        names.push("pads in words".to_owned());
    }
    sheet.line(names.into_iter().map(Cell::Words));
    for (index, support) in frame.supports.iter().enumerate() {
        let state = |support: &SupportReport| {
            [
                words(&*support.height.text),
                columns.length(Some(&support.height)),
                columns.load(Some(&support.load)),
                columns.load_doubt(Some(&support.load)),
                share(Some(&support.share)),
                text(support.to_solid.as_ref()),
                columns.length(support.to_solid.as_ref()),
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
        if stacked {
            let stack = report.stacks.iter().find(|stack| stack.nest == support.nest);
            let height = stack.and_then(|stack| stack.height.as_ref());
            for figure in [stack.map(|stack| &stack.thickness), height] {
                cells.extend([text(figure), columns.length(figure)]);
            }
            let layers = stack.into_iter().flat_map(|stack| &stack.layers);
            let worn: Vec<&str> = layers.map(|layer| layer.sentence.as_str()).collect();
            cells.push(words(worn.join(" ").trim()));
        }
        sheet.line(cells);
    }
    sheet.text
}

/// The cells of a line, each with the name of its column.
#[derive(Default)]
struct Line(Vec<(String, Cell)>);

impl Line {
    fn put(&mut self, name: impl Into<String>, cell: Cell) {
        self.0.push((name.into(), cell));
    }

    /// A length as it is read off a tape, and as a decimal.
    fn length(&mut self, columns: Columns<'_>, name: &str, figure: Option<&Figure>) {
        self.put(name, text(figure));
        self.put(format!("{name}, {}", columns.axes.length.unit), columns.length(figure));
    }
}

/// Lines of the same columns; nothing of none.
fn table(lines: Vec<Line>, mut sheet: Sheet) -> String {
    let Some(first) = lines.first() else { return String::new() };
    sheet.line(first.0.iter().map(|(name, _)| words(&**name)));
    for line in lines {
        sheet.line(line.0.into_iter().map(|(_, cell)| cell));
    }
    sheet.text
}

/// The most heights at which a box is measured.
const HEIGHTS: [&str; 3] = ["top", "middle", "bottom"];

fn boxes(job: &Job, report: &Report, columns: Columns<'_>) -> Vec<Line> {
    let line = |n: usize, nest: &NestReport, at: usize, guides: &GuidesReport| {
        let list = || job.nests.given()?.0.get(n)?.given()?.guides.given();
        let limit = |name: &str| {
            let text = list().and_then(|list| list.get(at)?.get(name)?.as_str());
            words(text.unwrap_or_default().trim())
        };
        let mut line = Line::default();
        line.put("nest", words(&*nest.id));
        line.put("box", words(&*guides.name));
        line.put("kept", words(if guides.across { "across" } else { "along" }));
        for (place, name) in HEIGHTS.into_iter().enumerate() {
            let clear = match (guides.at.as_slice(), place) {
                ([top, bottom], _) => [Some(top), None, Some(bottom)].get(place).copied().flatten(),
                (all, _) => all.get(place),
            };
            line.length(columns, &format!("clear, {name}"), clear);
        }
        line.length(columns, "clear at the least", guides.least.as_ref());
        let unit = &columns.axes.length.unit;
        line.put(format!("doubt of the least, {unit}"), columns.doubt(guides.least.as_ref()));
        line.put("least", limit("least"));
        line.put("most", limit("most"));
        line.put("verdict", words(&*guides.title));
        line.put("in words", words(&*guides.sentence));
        let stock = guides.from_stock.as_ref();
        line.put("new liners", words(stock.map_or("", |stock| stock.sentence.as_str())));
        line
    };
    let nests = report.nests.iter().enumerate();
    let each = nests.flat_map(|(n, nest)| {
        nest.guides.iter().enumerate().map(move |(at, guides)| (n, nest, at, guides))
    });
    each.map(|(n, nest, at, guides)| line(n, nest, at, guides)).collect()
}

/// Heights under each weight.
fn standing(frame: &FrameReport, columns: Columns<'_>) -> Vec<Line> {
    let list = || frame.weights.iter();
    let own = !list().any(|under| under.standing == frame.standing);
    let each = core::iter::once(frame).filter(|_| own).chain(list());
    let each: Vec<&FrameReport> = each.collect();
    let has_more = |under: &&FrameReport| under.standing.is_some() || !under.points.is_empty();
    if list().next().is_none() && !each.iter().any(has_more) {
        return Vec::new();
    }
    let lines = each.into_iter().flat_map(|under| {
        let loads = under.weighed.as_ref().map_or(&[][..], |weighed| &weighed.loads);
        let nests = under.supports.iter().enumerate();
        let nests = nests.map(|(at, support)| Spot::Nest(support, loads.get(at)));
        let all = nests.chain(under.points.iter().map(Spot::Point));
        all.map(|spot| standing_at(under, &spot, columns)).collect::<Vec<Line>>()
    });
    lines.collect()
}

/// What is taped when the truck stands again.
enum Spot<'r> {
    /// A nest, and its load by the heights that were taped.
    Nest(&'r SupportReport, Option<&'r Figure>),
    Point(&'r PointReport),
}

fn standing_at(under: &FrameReport, spot: &Spot<'_>, columns: Columns<'_>) -> Line {
    let (of, nest, weighed, point) = match spot {
        Spot::Nest(nest, weighed) => (&nest.nest, Some(nest), *weighed, None),
        Spot::Point(point) => (&point.name, None, None, Some(point)),
    };
    let mut heights = under.standing.iter().flat_map(|standing| &standing.heights);
    let taped = heights.find(|height| height.of == *of);
    let point_height = point.map(|point| &point.height);
    let difference = taped.map(|taped| &taped.difference);
    let agrees = taped.map_or("", |taped| if taped.agrees { "yes" } else { "no" });
    let load = nest.map(|nest| &nest.load);
    let limit = |limit: Option<&String>| words(limit.cloned().unwrap_or_default());
    let (length, force) = (&columns.axes.length.unit, &columns.axes.force.unit);
    let mut line = Line::default();
    line.put("at", words(&**of));
    line.put("under", words(&*under.name));
    line.put(format!("weight, {force}"), columns.load(Some(&under.weight)));
    line.length(columns, "worked out", taped.map(|taped| &taped.computed).or(point_height));
    line.length(columns, "taped", taped.map(|taped| &taped.taped));
    line.length(columns, "difference", difference);
    line.put(format!("doubt of the difference, {length}"), columns.doubt(difference));
    line.put("agrees", words(agrees));
    line.length(columns, "height of the nest", nest.map(|nest| &nest.height));
    line.length(columns, "left before solid", nest.and_then(|nest| nest.to_solid.as_ref()));
    line.put(format!("load, {force}"), columns.load(load));
    line.put(format!("doubt of the load, {force}"), columns.load_doubt(load));
    line.put(format!("load by the heights taped, {force}"), columns.load(weighed));
    line.put(format!("doubt of that load, {force}"), columns.load_doubt(weighed));
    line.put("least", limit(point.and_then(|point| point.least.as_ref())));
    line.put("most", limit(point.and_then(|point| point.most.as_ref())));
    line.put("verdict", words(point.map_or("", |point| &*point.title)));
    line
}
