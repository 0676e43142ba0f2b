//! What to write to a spring maker, and what somebody has to settle first.

use super::Ground;
use super::quoted::Quoted;
use super::spring::Spring;
use super::words;
use crate::coil::DiameterKind;
use crate::coil::fatigue::Surface;
use crate::coil::set;
use crate::drawing::Allowable;
use crate::job::choices::ends_name;
use crate::job::figures::{Format, text};
use crate::job::input::Job;
use crate::job::report::{CandidateReport, Met, OrderItem, OrderReport, OrderVerdict};
use crate::material::Presetting;
use crate::quantity::{self, Force, Length, Said, Stress};
use crate::reading::{self, Step};
use crate::replacement::{
    AllowedRange, Amount, Asked, Case, Dimension, Item, Open, Order, OrderDetail, Question,
};

/// What stands over every order of a job.
pub(super) struct Letter {
    heading: Vec<String>,
    vehicle: Option<String>,
}

/// What stands under every one, in its text and beside its items.
const SUBJECT: &str = "Subject to the approval of the vehicle's maker and of whoever answers for the line. Compared by arithmetic only: this replaces no drawing of the maker's.";

const NOT_MET: &str = "It does not meet what is asked. Not to be ordered as it is.";
const UNJUDGED: &str = "Nothing can be said of it. Not to be ordered as it is.";

/// What is left out where nobody asks for it.
const OPTIONAL: [OrderDetail; 4] = [
    OrderDetail::Hardness,
    OrderDetail::Decarburised,
    OrderDetail::CrackTest,
    OrderDetail::Certificate,
];

impl Letter {
    pub(super) fn of(job: &Job) -> Self {
        let record = job.record.given();
        let said = |name: &str, text: &str| (!text.is_empty()).then(|| text!("{name}: {text}"));
        let vehicle = record.map_or("", |record| record.vehicle.written());
        let date = record.and_then(|record| said("Date", record.date.written()));
        let heading = said("Vehicle", vehicle).into_iter();
        let heading = heading.chain(said("Job", job.title.written())).chain(date).collect();
        Self { heading, vehicle: Some(vehicle.to_owned()).filter(|text| !text.is_empty()) }
    }

    /// The order of a candidate, under its verdict.
    pub(super) fn of_candidate(
        &self,
        format: Format,
        ground: &Ground<'_>,
        candidate: &Spring,
        case: &Case,
        judged: &CandidateReport,
    ) -> OrderReport {
        let unsaid = |of: &Spring| !of.total_told;
        let order = case.order(&ground.written.details);
        let order = order.without_total_turns(unsaid(candidate), unsaid(ground.original));
        let verdict = OrderVerdict {
            met: judged.met,
            title: judged.title.clone(),
            sentence: judged.sentence.clone(),
            waived: judged
                .lines
                .iter()
                .filter_map(|line| {
                    let (whom, why) = line.waived_for.as_ref().zip(line.waived.as_ref())?;
                    Some(text!("{}, for {whom}: {why}", line.name))
                })
                .collect(),
            refused: match judged.met {
                Some(Met::NotMet) => Some(NOT_MET.into()),
                None => Some(UNJUDGED.into()),
                _ => None,
            },
        };
        self.report(format, candidate, &order, &case.asked, Some(verdict))
    }

    /// The order of the original as it was.
    pub(super) fn of_original(&self, format: Format, ground: &Ground<'_>) -> OrderReport {
        let original = ground.original;
        let drawing = || original.drawing.clone();
        let asked =
            Asked { free: ground.asked.free.or(original.free_limits), ..ground.asked.clone() };
        let case = Case::new(drawing(), drawing(), asked);
        let order = case.order_of_original(&ground.written.details);
        let order = order.without_total_turns(false, !original.total_told);
        self.report(format, original, &order, &case.asked, None)
    }

    fn report(
        &self,
        format: Format,
        of: &Spring,
        order: &Order,
        asked: &Asked,
        verdict: Option<OrderVerdict>,
    ) -> OrderReport {
        let refused = verdict.as_ref().is_some_and(|verdict| verdict.refused.is_some());
        let title = if refused {
            text!("Not to be ordered: {}", of.name)
        } else {
            text!("Order: {}", of.name)
        };
        let lines = Lines { format, order, quoted: &of.quoted, vehicle: self.vehicle.as_deref() };
        let rows = lines.all(asked);
        let missing = order.details.iter().filter(|(_, item)| item.asked.is_none());
        let missing = missing.filter(|(detail, _)| OPTIONAL.contains(detail));
        let names: Vec<String> =
            missing.map(|(detail, _)| words::within(words::detail(*detail).1)).collect();
        let left_out = (!names.is_empty())
            .then(|| text!("Not asked for: {}.", quantity::joined(names.iter(), ", ")));
        let mut report = OrderReport {
            title,
            verdict,
            questions: lines.questions(&rows),
            items: rows.into_iter().map(|row| row.item).collect(),
            left_out,
            subject: SUBJECT.into(),
            text: String::new(),
        };
        report.text = self.text(&report);
        report
    }

    fn text(&self, of: &OrderReport) -> String {
        let said = || of.items.iter().filter(|item| item.offered.is_some() || item.asked.is_some());
        let width = said().map(|item| item.name.chars().count()).fold(0, usize::max) + 1;
        let mut lines = vec![of.title.clone()];
        lines.extend(self.heading.iter().cloned());
        if let Some(verdict) = &of.verdict {
            lines
                .extend([String::new(), text!("Verdict: {}. {}", verdict.title, verdict.sentence)]);
            lines.extend(verdict.waived.iter().map(|waived| text!("Waived: {waived}")));
            lines.extend(verdict.refused.as_deref().map(str::to_owned));
        }
        lines.push(String::new());
        for item in said() {
            let name = text!("{}:", item.name);
            let said = [("offered", &item.offered), ("asked", &item.asked)];
            let said = said
                .into_iter()
                .filter_map(|(who, text)| text.as_ref().map(|text| text!("{who} {text}")));
            lines.push(format!("{name:width$} {}", quantity::joined(said, "; ")));
        }
        lines.extend(of.left_out.iter().flat_map(|text| [String::new(), text.clone()]));
        if !of.questions.is_empty() {
            lines.extend([String::new(), "To be settled:".to_owned()]);
            lines.extend(of.questions.iter().map(|question| text!("- {question}")));
        }
        lines.extend([String::new(), of.subject.to_string(), String::new()]);
        lines.join("\n")
    }
}

/// A line of an order in words, and why it is open.
struct Row {
    item: OrderItem,
    open: Option<Open>,
}

/// The lines of an order in words.
struct Lines<'a> {
    format: Format,
    order: &'a Order,
    quoted: &'a Quoted,
    vehicle: Option<&'a str>,
}

impl Lines<'_> {
    fn all(&self, asked: &Asked) -> Vec<Row> {
        let quantity = &self.order.quantity;
        let count = quantity.asked.map(|count| count.to_string());
        let first = [OrderDetail::PartNumber, OrderDetail::Drawing, OrderDetail::EndUse];
        let rest = OrderDetail::ALL.into_iter().filter(|detail| !first.contains(detail));
        let mut rows = vec![self.row("Quantity", [None, count], quantity.open, Question::Quantity)];
        rows.extend(first.into_iter().filter_map(|detail| self.detail(detail)));
        rows.extend(self.sizes());
        rows.extend(self.place(asked));
        rows.extend(self.treatments());
        rows.extend(rest.filter_map(|detail| self.detail(detail)));
        rows
    }

    fn sizes(&self) -> Vec<Row> {
        let (order, quoted) = (self.order, self.quoted);
        let length = |name, item, quoted: &Option<String>, question| {
            self.sized(name, item, quoted.as_deref(), question, Amount::Length)
        };
        let count = |name, item, question| self.sized(name, item, None, question, Amount::Number);
        let mut rows = vec![length("Bar", &order.bar, &quoted.bar, Question::Bar)];
        for (across, name, follows) in [
            (DiameterKind::Outside, "Outside diameter", order.outside),
            (DiameterKind::Mean, "Mean diameter", None),
            (DiameterKind::Inside, "Inside diameter", order.inside),
        ] {
            if across == order.across {
                rows.push(length(name, &order.diameter, &quoted.diameter, Question::Diameter));
            } else if let Some(follows) = follows {
                let said = self.in_column(Some(self.said(&follows, None, Amount::Length)));
                rows.push(self.row(name, said, None, Question::Diameter));
            }
        }
        rows.extend([
            length("Free height", &order.free, &quoted.free, Question::FreeHeight),
            count("Total turns", &order.total_turns, Question::TotalTurns),
            count("Active turns", &order.active_turns, Question::ActiveTurns),
            self.word("Ends", &order.ends, Question::Ends, |of| ends_name(*of)),
            self.word("Hand", &order.hand, Question::Hand, |of| words::hand(*of)),
            self.sized("Rate", &order.rate, quoted.rate.as_deref(), Question::Rate, Amount::Rate),
        ]);
        rows.extend(self.loads());
        rows.extend([
            length("Solid height", &order.solid, &quoted.solid, Question::SolidHeight),
            self.word("Steel", &order.steel, Question::Steel, |steel| steel),
        ]);
        rows
    }

    fn loads(&self) -> Vec<Row> {
        if self.order.loads.is_empty() {
            return vec![self.row("Load", [None, None], Some(Open::Missing), Question::Loads)];
        }
        let rows = self.order.loads.iter().map(|at| {
            let name = text!("Load at {}", self.format.height(at.height).text);
            let quoted = self.quoted.load(at.height).map(String::as_str);
            self.sized(&name, &at.load, quoted, Question::Loads, Amount::Load)
        });
        rows.collect()
    }

    /// What is asked by where it stands and works.
    fn place(&self, asked: &Asked) -> Vec<Row> {
        let format = self.format;
        let size = |length: Length| format.size(length).text;
        let play = if asked.play > Length::default() {
            text!(", with {} of play on the diameter", size(asked.play))
        } else {
            String::new()
        };
        let stress = |of: Allowable| {
            text!("{} or less, {}", format.say::<Stress>(of.stress), set::meant(of.against).name())
        };
        let between = |(least, most): (Force, Force)| {
            text!("{} and {}", format.say::<Force>(least), format.say::<Force>(most))
        };
        let all = [
            ("Pocket", asked.pocket.map(|bore| text!("a bore of {}{play}", size(bore)))),
            ("Post", asked.post.map(|post| text!("{} across{play}", size(post)))),
            ("Left before solid at work", asked.reserve.map(|way| text!("{} or more", size(way)))),
            ("Stress at work", asked.stress_at_work.map(stress)),
            ("Stress at solid", asked.stress_at_solid.map(stress)),
            ("Works between", asked.cycle.map(between)),
        ];
        let said = all.into_iter().filter(|(_, said)| said.is_some());
        said.map(|(name, said)| self.row(name, [None, said], None, Question::Loads)).collect()
    }

    fn treatments(&self) -> [Row; 2] {
        let peening = |of: &Surface| match of {
            Surface::Peened => "shot peened",
            Surface::Unpeened => "not shot peened",
        };
        let set = |of: &Presetting| match of {
            Presetting::SetRemoved => "taken out when it is made",
            Presetting::AsWound => "not taken out",
        };
        let order = self.order;
        let (peened, removed) =
            (words::detail(OrderDetail::Peening).1, words::detail(OrderDetail::SetRemoval).1);
        [
            self.treated(peened, &order.peening, Question::Peening, peening),
            self.treated(removed, &order.set_removal, Question::SetRemoval, set),
        ]
    }

    fn treated<T>(
        &self,
        name: &str,
        item: &Item<T, String>,
        question: Question,
        say: impl Fn(&T) -> &'static str,
    ) -> Row {
        let said = |of: Option<&T>| of.map(|of| say(of).to_owned());
        let [offered, own] = self.in_column(said(self.own(item)));
        let asked = item.asked.clone().or(own);
        let row = self.row(name, [offered, asked], item.open, question);
        borrowing(row, question, said(item.original.as_ref()))
    }

    /// Nothing where nobody asks for it and an order can do without it.
    fn detail(&self, detail: OrderDetail) -> Option<Row> {
        let find = |wanted| self.order.details.iter().find(|(detail, _)| *detail == wanted);
        let (_, item) = find(detail).filter(|_| detail != OrderDetail::Revision)?;
        let name = words::detail(detail).1;
        let question = Question::Detail(detail);
        let Some(said) = &item.asked else {
            return match (detail, self.vehicle) {
                (OrderDetail::EndUse, Some(vehicle)) => {
                    Some(self.row(name, [None, Some(vehicle.to_owned())], None, question))
                }
                _ => Some(self.row(name, [None, None], Some(item.open?), question)),
            };
        };
        if detail == OrderDetail::Drawing {
            let (_, revision) = find(OrderDetail::Revision)?;
            let of = revision.asked.as_ref().map(|of| text!(", revision {of}"));
            let said = text!("{said}{}", of.unwrap_or_default());
            let question = Question::Detail(OrderDetail::Revision);
            return Some(self.row(name, [None, Some(said)], revision.open, question));
        }
        let mut row = self.row(name, [None, Some(said.clone())], item.open, question);
        if is_bare(said) {
            row.item.question = match detail {
                OrderDetail::Hardness => Some(text!("On which scale is it {said} hard?")),
                OrderDetail::Decarburised => {
                    Some(text!("In which unit is the carbon lost {said} deep?"))
                }
                _ => None,
            };
        }
        Some(row)
    }

    fn word<T>(
        &self,
        name: &str,
        item: &Item<T>,
        question: Question,
        say: impl Fn(&T) -> &'static str,
    ) -> Row {
        let said = |of: Option<&T>| of.map(|of| say(of).to_owned());
        let [offered, own] = self.in_column(said(self.own(item)));
        let row = self.row(name, [offered, said(item.asked.as_ref()).or(own)], item.open, question);
        borrowing(row, question, said(item.original.as_ref()))
    }

    fn sized<Q: Copy>(
        &self,
        name: &str,
        item: &Item<Dimension<Q>>,
        quoted: Option<&str>,
        question: Question,
        amount: fn(Q) -> Amount,
    ) -> Row {
        let asked = item.asked.map(|asked| asked.limits);
        let limits = asked.map(|limits| self.limits(&limits, amount));
        let (offered, asked) = if self.order.is_of_original {
            let own = item.original.map(|own| match asked {
                Some(limits) => self.within(&own, &limits, amount),
                None => self.said(&own, quoted, amount),
            });
            (None, own.or(limits))
        } else {
            (item.offered.map(|of| self.said(&of, quoted, amount)), limits)
        };
        let original = item.original.and_then(|of| Some(self.size(amount(of.nominal?))));
        let row = self.row(name, [offered, asked], item.open, question);
        borrowing(row, question, original)
    }

    fn row(
        &self,
        name: &str,
        [offered, asked]: [Option<String>; 2],
        open: Option<Open>,
        of: Question,
    ) -> Row {
        let question = open.map(|open| match open {
            Open::Contradicts(found) => {
                let found = words::contradiction(self.format, &found);
                text!("{}: which holds?", words::capital(&found))
            }
            Open::NoTolerance if self.order.is_of_original => {
                "Between what limits may it lie?".to_owned()
            }
            Open::NoTolerance => "Within what limits is it offered?".to_owned(),
            Open::Unstated => "What does the maker state?".to_owned(),
            Open::Missing | Open::Borrowed => asks(of).to_owned(),
        });
        Row { item: OrderItem { name: name.to_owned(), offered, asked, question }, open }
    }

    fn own<'i, T, A>(&self, item: &'i Item<T, A>) -> Option<&'i T> {
        let own = if self.order.is_of_original { &item.original } else { &item.offered };
        own.as_ref()
    }

    /// What is offered, and what is asked: in the order of the original its own figures are asked.
    fn in_column(&self, said: Option<String>) -> [Option<String>; 2] {
        if self.order.is_of_original { [None, said] } else { [said, None] }
    }

    fn size(&self, of: Amount) -> String {
        match of {
            Amount::Length(length) => self.format.size(length).text,
            other => words::amount(self.format, other).to_string(),
        }
    }

    /// `1 in, from 0.997 to 1.003 in`, or `28 mm ± 0.2 mm (1 7/64 in scant, from 1.0945 to 1.1103 in)`.
    fn said<Q: Copy>(
        &self,
        of: &Dimension<Q>,
        quoted: Option<&str>,
        amount: fn(Q) -> Amount,
    ) -> String {
        let Some(nominal) = of.nominal.map(amount) else { return self.limits(&of.limits, amount) };
        let tolerance = self.tolerance(of, amount);
        match (quoted, nominal) {
            (Some(quoted), Amount::Length(length)) => {
                let ours = reading::write_length(length, self.format.system, Step::SixtyFourth);
                text!("{quoted} ({ours}{tolerance})")
            }
            (Some(quoted), other) => text!("{quoted} ({}{tolerance})", self.size(other)),
            (None, _) if of.stated => text!("{}{tolerance}", self.size(nominal)),
            (None, _) => text!("{} by arithmetic{tolerance}", self.size(nominal)),
        }
    }

    /// A figure of the original within the limits of whoever orders; those alone where it lies outside.
    fn within<Q: Copy>(
        &self,
        own: &Dimension<Q>,
        limits: &AllowedRange<Q>,
        amount: fn(Q) -> Amount,
    ) -> String {
        let asked = self.limits(limits, amount);
        let Some(nominal) = own.nominal.map(amount) else { return asked };
        let bounds = limits.map(|limit| amount(limit).si());
        let inside = bounds.least.is_none_or(|least| least <= nominal.si())
            && bounds.most.is_none_or(|most| nominal.si() <= most);
        if inside { text!("{}, {asked}", self.size(nominal)) } else { asked }
    }

    /// The ends of a tolerance, rounded outward.
    fn tolerance<Q: Copy>(&self, of: &Dimension<Q>, amount: fn(Q) -> Amount) -> String {
        let said = |of: Q| words::amount(self.format, amount(of));
        let limits = of.limits.map(|limit| amount(limit).si());
        let least = of.limits.least.map(|least| said(least).digits.down().to_string());
        let most = of.limits.most.map(said);
        let most = most.map(|most| Said { digits: most.digits.up(), ..most });
        match (least, most) {
            (Some(_), Some(_)) if limits.least == limits.most => ", exactly".to_owned(),
            (Some(least), Some(most)) => text!(", from {least} to {most}"),
            (Some(least), None) => text!(", no less than {least}"),
            (None, Some(most)) => text!(", no more than {most}"),
            (None, None) if of.stated => ", no tolerance given".to_owned(),
            (None, None) => String::new(),
        }
    }

    fn limits<Q: Copy>(&self, of: &AllowedRange<Q>, amount: fn(Q) -> Amount) -> String {
        let said = words::limits(|of| words::amount(self.format, of), &of.map(amount));
        if of.least.is_some() && of.most.is_some() { text!("from {said}") } else { said }
    }

    /// What has to be settled; what is asked of several figures stands in one sentence.
    fn questions(&self, rows: &[Row]) -> Vec<String> {
        let named = |wanted: Open| {
            let rows = rows.iter().filter(|row| row.open == Some(wanted));
            let names: Vec<String> =
                rows.map(|row| text!("the {}", words::within(&row.item.name))).collect();
            (!names.is_empty()).then(|| quantity::joined(names.iter(), ", "))
        };
        let together = |row: &&Row| matches!(row.open, Some(Open::NoTolerance | Open::Unstated));
        let alone = rows.iter().filter(|row| !together(row));
        let mut all: Vec<String> = alone.filter_map(|row| row.item.question.clone()).collect();
        let grade = self.order.details.iter().find(|(detail, _)| *detail == OrderDetail::Grade);
        let grade = grade.and_then(|(_, item)| item.asked.as_deref());
        all.extend(named(Open::NoTolerance).map(|named| match grade {
            Some(grade) => {
                text!("Is it offered within {grade} where it has no tolerance of its own: {named}?")
            }
            None if self.order.is_of_original => {
                text!("Between what limits, or in what grade of tolerance, may they lie: {named}?")
            }
            None => text!("Within what limits are they offered: {named}?"),
        }));
        all.extend(named(Open::Unstated).map(|named| {
            text!(
                "What does the maker state, and within what limits: {named}? Here they only follow by arithmetic."
            )
        }));
        all
    }
}

/// The same, asking whether what the original has is offered.
fn borrowing(row: Row, of: Question, original: Option<String>) -> Row {
    let (Some(Open::Borrowed), Some(original)) = (row.open, original) else { return row };
    let has = match of {
        Question::TotalTurns => text!("The original has {original} turns in all"),
        Question::ActiveTurns => text!("{original} of the original's turns deflect"),
        Question::Hand => text!("The original is wound to the {}", words::within(&original)),
        Question::Ends => text!("The original's ends are {}", words::within(&original)),
        Question::Steel => text!("The original is of this steel: {original}"),
        Question::Peening => text!("The original is {original}"),
        Question::SetRemoval => text!("The original's set is {original}"),
        _ => text!("The original's {} is {original}", words::within(&row.item.name)),
    };
    let question = Some(text!("{has}. Is that what is offered?"));
    Row { item: OrderItem { question, ..row.item }, ..row }
}

/// Whether a text is a number alone, without a unit or a scale.
fn is_bare(text: &str) -> bool {
    text.chars().all(|c| c.is_ascii_digit() || matches!(c, '.' | ',' | '/' | ' ' | '-' | '–'))
}

/// What somebody has to say where nobody has.
const fn asks(of: Question) -> &'static str {
    match of {
        Question::Bar => "Of what bar is it to be wound?",
        Question::Diameter => "What is its diameter, and is that the outside, mean or inside one?",
        Question::FreeHeight => "What is its free height?",
        Question::TotalTurns => "How many turns has it in all?",
        Question::ActiveTurns => "How many of its turns deflect?",
        Question::Ends => "What form have its ends?",
        Question::Hand => "Which way is it to be wound?",
        Question::Rate => "What is its rate?",
        Question::Loads => "What is it to carry, and at what height?",
        Question::SolidHeight => "How high may it be when solid?",
        Question::Steel => "Of which steel is it to be made?",
        Question::Peening => words::detail(OrderDetail::Peening).2,
        Question::SetRemoval => words::detail(OrderDetail::SetRemoval).2,
        Question::Quantity => "How many are wanted?",
        Question::Detail(detail) => words::detail(detail).2,
    }
}
