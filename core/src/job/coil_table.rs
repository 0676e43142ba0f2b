//! Many readings at once: a table of coils as comma-separated text, to the bench of a job and back.
//!
//! # The table
//! A line is a coil: its label, its role, its readings. The columns are parted by tabs, semicolons or
//! commas, whichever part the first line that is no title, and a field may stand in quotes (RFC 4180).
//! A line end within quotes is not taken: no label or reading holds one, and a quote that was
//! forgotten then costs one line only. Lines end in LF, CRLF or CR; blank ones, and the byte order mark
//! of a file, are passed over. Between commas a decimal comma needs quotes, `"353,6"`.
//!
//! The first line may name the columns, small or capital, in any order:
//!
//! | column | words |
//! | --- | --- |
//! | label, the mark painted on the coil | `label`, `mark` |
//! | role, id or name of one of the job's drawings | `role`, `coil`, `drawing` |
//! | what it looks like, in a word: `sound`, `cracked`, `pitted`, `broken`, another | `condition` |
//! | readings | `reading`, `readings`, `reading 1`, `reading 2` … |
//!
//! It names two of the three at least, and none of its fields is a reading. Another column is left
//! out, and that is said. A column without a name behind one of readings, and what stands behind the
//! last column where that is one of readings, are readings too. Without such a line the order is label,
//! role, readings.
//!
//! A role is looked for among the ids first, then among the names, then among both whatever their
//! capitals. In a job of one drawing it may be left empty.
//!
//! # What is refused
//! A line that cannot be used is handed back whole, with every problem that it has: the codes are those
//! of [`problem`](super::problem). A coil without label could not be found again on the bench; one
//! whose label stands there already with the same role may have been read before. Readings of which
//! one is over twice another are not those of one coil: mostly a decimal comma between commas.
//!
//! # In pieces
//! A long table is read a [`Piece`] at a time, and nothing is kept in between: what the next call needs
//! is in the answer. The job of that call should have the rows of those before it on its bench, so that
//! a label is met that stands twice; there the readings do not matter.

mod columns;
pub(super) mod fields;
mod roles;

use super::answer;
use super::context::Context;
use super::entry::{Entry, List, Text};
use super::field::{Field, Taped};
use super::input::{BenchCoil, Job};
use super::problem::Path;
use super::report::{CoilRows, Problem, RefusedLine};
use crate::bounds;
use crate::quantity::{joined, shorten};
use crate::reading::Reading;
use crate::tables::Tables;
use columns::{Column, Columns};
use fields::BadQuotes;
use roles::Roles;
use std::collections::BTreeSet;
use std::mem;

/// The longest line, in characters.
pub const LONGEST_LINE: usize = 4000;
/// The most readings of one coil.
pub const MOST_READINGS: usize = 50;
/// The most coils on a bench to which lines are added.
pub const MOST_COILS: usize = 20_000;

const COIL: &str = "17,outer,13 7/8";
const HEADER: &str = "label,role,reading 1,reading 2";
const QUOTED: &str = "\"353,6\"";

/// A part of a table's text, and how far those before it got.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Piece<'t> {
    /// The text from the beginning of a line on; it may break off anywhere. Where none of it is
    /// consumed, its first line is not all there: hand over more.
    pub text: &'t str,
    /// Number of its first line: 1, then [`CoilRows::next_line`].
    pub line: usize,
    /// The line that names the columns: none, then [`CoilRows::header`].
    pub header: Option<&'t str>,
    /// Whether the table ends with it; if not, a line without its end is left for the next call.
    pub last: bool,
    /// The most lines to read, blank ones among them; one at the least.
    pub most: usize,
}

impl<'t> Piece<'t> {
    /// A table in one piece.
    #[must_use]
    pub fn whole(text: &'t str) -> Self {
        Self { text, line: 1, header: None, last: true, most: usize::MAX }
    }
}

/// The coils in a piece of a table.
///
/// # Example
/// ```
/// use coilnest::job::coil_table::{Piece, coil_rows};
/// use coilnest::job::file;
///
/// let job = file::open(r#"{ "format": "coilnest-job/1", "coils": [{ "id": "outer" }] }"#)?;
/// let read = coil_rows(&job, &Piece::whole("Label;Role;Reading 1\n17;Outer;13 7/8\n18;outer;13 7/"));
/// assert_eq!((read.rows.len(), read.refused[0].line), (1, 3));
///
/// let problem = &read.refused[0].problems[0];
/// assert_eq!(problem.path, "line 3, column 3");
/// assert_eq!(problem.message, "13 7/ — a number is missing after “/”");
/// # Ok::<(), Box<coilnest::job::report::Problem>>(())
/// ```
#[must_use]
pub fn coil_rows(job: &Job, piece: &Piece<'_>) -> CoilRows {
    let mut table = Table::new(job, piece);
    let mut rest = piece.text;
    for _ in 0..piece.most.max(1) {
        let Some((line, length)) = fields::first_line(rest, piece.last) else { break };
        table.line(line);
        if table.answer.stopped {
            break;
        }
        let (taken, left) = rest.split_at(length);
        table.answer.consumed += taken.encode_utf16().count();
        table.answer.next_line = table.answer.next_line.saturating_add(1);
        rest = left;
    }
    let header = table.columns.map(|columns| columns.header);
    CoilRows { header, ..table.answer }
}

/// The bench of a job as a table, readings as they are written.
///
/// A column of conditions stands in it where some coil has one. [`coil_rows`] reads it back to the same
/// coils, blanks round a text and empty readings aside; what it
/// would refuse, such as a coil without label, is written all the same. What holds no text is left out.
///
/// # Example
/// ```
/// use coilnest::job::{coil_table::coil_csv, file};
///
/// let job = file::open(r#"{
///     "format": "coilnest-job/1",
///     "bench": [{ "label": "17", "coil": "outer", "readings": ["13 7/8", "13 7/8\" scant"] }]
/// }"#)?;
/// assert_eq!(
///     coil_csv(&job),
///     "label,role,reading 1,reading 2\r\n17,outer,13 7/8,\"13 7/8\"\" scant\"\r\n"
/// );
/// # Ok::<(), Box<coilnest::job::report::Problem>>(())
/// ```
#[must_use]
pub fn coil_csv(job: &Job) -> String {
    let most = bench(job).map(|coil| readings(coil).count()).max().unwrap_or_default().max(1);
    let has_condition = bench(job).any(|coil| !coil.condition.written().is_empty());
    let mut text = "label,role".to_owned();
    if has_condition {
        text += ",condition";
    }
    for number in 1..=most {
        text += ",reading ";
        text += &number.to_string();
    }
    text += "\r\n";
    for coil in bench(job) {
        text += &fields::quoted(coil.label.written());
        let role = coil.coil.written();
        let condition = has_condition.then(|| coil.condition.written());
        for field in [role].into_iter().chain(condition).chain(readings(coil)) {
            text.push(',');
            text += &fields::quoted(field);
        }
        text += "\r\n";
    }
    text
}

fn bench(job: &Job) -> impl Iterator<Item = &BenchCoil> {
    job.bench.given().into_iter().flat_map(|bench| &bench.0).filter_map(Entry::given)
}

fn readings(coil: &BenchCoil) -> impl Iterator<Item = &str> {
    coil.readings.given().into_iter().flat_map(|readings| &readings.0).map(Entry::written)
}

/// A table that is being read.
struct Table<'j> {
    context: Context<'static>,
    roles: Roles<'j>,
    /// Role and label of every coil of the bench.
    standing: BTreeSet<[String; 2]>,
    /// How many more coils the bench takes.
    room: usize,
    columns: Option<Columns>,
    answer: CoilRows,
}

impl<'j> Table<'j> {
    fn new(job: &'j Job, piece: &Piece<'_>) -> Self {
        let tables = &Tables::NONE;
        let known =
            |coil: &BenchCoil| [&coil.coil, &coil.label].map(|text| text.written().to_owned());
        // Collected, it would be sorted first, by a sort that is made for it alone.
        let mut standing = BTreeSet::new();
        standing.extend(bench(job).map(known));
        let columns = piece.header.and_then(Columns::named);
        Self {
            context: Context::new(tables, answer::format(job)),
            roles: Roles::of(job),
            standing,
            room: MOST_COILS.saturating_sub(job.bench.given().map_or(0, |bench| bench.0.len())),
            columns: columns.filter(|columns| columns.lacks().is_none()),
            answer: CoilRows { next_line: piece.line, ..CoilRows::default() },
        }
    }

    fn line(&mut self, line: &str) {
        let is_first = self.answer.next_line == 1;
        let text = line.strip_prefix('\u{feff}').filter(|_| is_first).unwrap_or(line);
        self.read(text);
        let problems = mem::take(&mut self.context.problems);
        if !problems.is_empty() {
            let (line, text) = (self.answer.next_line, text.to_owned());
            self.answer.refused.push(RefusedLine { line, text, problems });
        }
    }

    fn read(&mut self, line: &str) {
        let Some((separator, fields)) = self.fields(line) else { return };
        let columns = match self.columns.take() {
            Some(columns) => columns,
            None => match self.first(line, separator, &fields) {
                Some(columns) => columns,
                None => return,
            },
        };
        self.coil(&columns, &fields);
        self.columns = Some(columns);
    }

    /// The separator and the fields of a line; none where there is nothing, or nothing usable.
    fn fields(&mut self, line: &str) -> Option<(char, Vec<String>)> {
        if line.chars().nth(LONGEST_LINE).is_some() {
            let expected = format!("a line of at most {LONGEST_LINE} characters");
            self.refuse(None, "line-too-long", line, &expected, "this line is longer", COIL);
            return None;
        }
        let separator = self.columns.as_ref().map(|columns| columns.separator);
        let separator = separator.unwrap_or_else(|| fields::separator(line));
        let fields = match fields::split(line, separator) {
            Ok(fields) => fields,
            Err(BadQuotes { index, open }) => {
                let why = if open {
                    "the quotes that open in this column are not closed on this line"
                } else {
                    "something follows the closing quotes in this column"
                };
                let expected = "quotes round a whole field, and doubled within it";
                self.refuse(Some(index), "bad-quotes", line, expected, why, QUOTED);
                return None;
            }
        };
        let is_bad = |c: char| (c.is_control() && c != '\t') || c == '\u{fffd}';
        let bad =
            |(index, field): (usize, &String)| Some((index, field.chars().find(|c| is_bad(*c))?));
        if let Some((index, bad)) = fields.iter().enumerate().find_map(bad) {
            let read = format!("U+{:04X}", u32::from(bad));
            let expected = "letters, figures and signs, in a text saved as UTF-8";
            let why = "this character cannot be read";
            self.refuse(Some(index), "bad-character", &read, expected, why, COIL);
            return None;
        }
        (!fields.is_empty()).then_some((separator, fields))
    }

    /// Finds the columns, by a line that names them or by the first coil; those of a coil are handed
    /// back, because it is still to be read.
    fn first(&mut self, line: &str, separator: char, fields: &[String]) -> Option<Columns> {
        let system = self.context.system();
        let is_reading = |text: &String| Reading::parse(text, system, &bounds::READING).is_ok();
        if let Some(columns) = Columns::named(line).filter(|_| !fields.iter().any(is_reading)) {
            self.answer.remarks.clone_from(&columns.remarks);
            match columns.lacks() {
                None => self.columns = Some(columns),
                Some(lacks) => {
                    let expected = "columns named label, role and readings";
                    let why = format!("no column is named {lacks}, so nothing is read below");
                    self.refuse(None, "column-missing", line, expected, &why, HEADER);
                    self.answer.stopped = true;
                }
            }
            return None;
        }
        let has_role = fields.get(1).is_some_and(|role| self.roles.meant(role).len() == 1);
        if has_role || fields.iter().skip(2).any(is_reading) {
            let columns = Columns::usual(separator);
            self.answer.remarks.clone_from(&columns.remarks);
            return Some(columns);
        }
        let expected = "a line that names the columns, or a coil: label, role, readings";
        let why = "this names no columns and is no coil";
        self.refuse(None, "header-unknown", line, expected, why, HEADER);
        None
    }

    fn coil(&mut self, columns: &Columns, fields: &[String]) {
        if self.room == 0 {
            let expected = format!("at most {MOST_COILS} coils on a bench");
            let why = "the bench is full; nothing is read from this line on";
            self.refuse(None, "bench-full", "", &expected, why, "");
            self.answer.stopped = true;
            return;
        }
        let in_column = |kind| {
            let index = columns.of(kind);
            (index, index.and_then(|index| fields.get(index)).map_or("", String::as_str))
        };
        let label = self.label(in_column(Column::Label));
        let role = self.role(in_column(Column::Role));
        let named = label.zip(role).map(|(label, role)| [role, label].map(str::to_owned));
        if let (Some(label), Some(named)) = (label, &named)
            && self.standing.contains(named)
        {
            let at = columns.of(Column::Label);
            let expected = "a label of its own among the coils of its role";
            let why = "a coil of this label and role stands further up, or on the bench";
            self.refuse(at, "label-twice", label, expected, why, &format!("{label} b"));
        }
        let readings = self.readings(columns, fields);
        if let (Some(named), Some(readings), []) = (named, readings, &*self.context.problems) {
            let [role, label] = named.clone().map(|text| Entry::Given(Text(text)));
            self.standing.insert(named);
            self.room -= 1;
            let readings = Entry::Given(List(readings));
            let (_, condition) = in_column(Column::Condition);
            let condition = Entry::from(condition);
            self.answer.rows.push(BenchCoil {
                label,
                coil: role,
                readings,
                condition: if condition.written().is_empty() { Entry::Absent } else { condition },
                ..BenchCoil::default()
            });
        }
    }

    fn label<'t>(&mut self, (column, label): (Option<usize>, &'t str)) -> Option<&'t str> {
        if label.is_empty() {
            let why = "without its label the coil cannot be found again on the bench";
            self.refuse(column, "label-missing", "", "the mark painted on the coil", why, "17");
            return None;
        }
        Some(label)
    }

    fn role(&mut self, (column, role): (Option<usize>, &str)) -> Option<&'j str> {
        let meant = self.roles.meant(role);
        if let [id] = meant.as_slice() {
            return Some(id);
        }
        let (code, why, known) = match (role, meant.as_slice()) {
            ("", _) => (
                "coil-missing",
                "the role can only be left empty where the job has one drawing",
                meant,
            ),
            (_, []) => ("no-such-coil", "this job has none of that name", self.roles.meant("")),
            _ => ("coil-ambiguous", "more than one coil of the job is called so", meant),
        };
        let known: Vec<String> = known.into_iter().map(str::to_owned).collect();
        let problem = Problem::not_known(&self.at(column), &shorten(role), &known, code, why);
        self.context.problem(problem);
        None
    }

    /// The readings of a coil, none where there are none, too many, or a field too much.
    fn readings(&mut self, columns: &Columns, fields: &[String]) -> Option<Vec<Entry<Text>>> {
        let written = fields.iter().enumerate().filter(|(_, field)| !field.is_empty());
        let mut found = Vec::new();
        for (index, field) in written {
            match columns.at(index) {
                Some(Column::Reading) => found.push((index, field.as_str())),
                Some(Column::Label | Column::Role | Column::Condition | Column::LeftOut) => {}
                None => {
                    let expected = format!("the {} columns that are named", columns.count());
                    let why = "no column is named for this";
                    self.refuse(Some(index), "too-many-columns", field, &expected, why, COIL);
                    return None;
                }
            }
        }
        let system = self.context.system();
        let (one, example) = (bounds::READING.sentence(system), bounds::READING.example(system));
        if found.is_empty() {
            let why = "no reading stands on this line";
            self.refuse(None, "readings-missing", "", &one, why, example);
            return None;
        }
        if let Some((index, text)) = found.get(MOST_READINGS) {
            let expected = format!("at most {MOST_READINGS} readings of a coil");
            let why = format!("this is reading {}", MOST_READINGS + 1);
            self.refuse(Some(*index), "too-many-readings", text, &expected, &why, COIL);
            return None;
        }
        let mut lengths = Vec::new();
        let mut texts = Vec::new();
        for (index, text) in &found {
            let (at, text) = (self.at(Some(*index)), Entry::from(*text));
            let reading = self.context.read(&at, Field::here(Taped(&bounds::READING), &text));
            lengths.extend(reading.map(|reading| reading.length()));
            texts.push(text);
        }
        let least = lengths.iter().copied().reduce(|a, b| if b < a { b } else { a });
        if least.is_some_and(|least| lengths.iter().any(|length| *length > least * 2.0)) {
            let read = joined(found.iter().map(|(_, text)| text), " and ");
            let expected = "readings of one coil, none of them over twice another";
            let why = if columns.separator == ',' {
                "these are not of one coil; between commas a decimal comma needs quotes"
            } else {
                "these are not of one coil"
            };
            self.refuse(None, "readings-apart", &read, expected, why, QUOTED);
        }
        Some(texts)
    }

    fn at(&self, column: Option<usize>) -> Path {
        let line = self.answer.next_line;
        Path::of(&match column {
            Some(index) => format!("line {line}, column {}", index + 1),
            None => format!("line {line}"),
        })
    }

    fn refuse(
        &mut self,
        column: Option<usize>,
        code: &'static str,
        read: &str,
        expected: &str,
        why: &str,
        example: &str,
    ) {
        let problem = Problem::new(&self.at(column), code, &shorten(read), expected, why, example);
        self.context.problem(problem);
    }
}
