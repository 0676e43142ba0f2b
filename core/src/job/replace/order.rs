//! What to write to a spring maker, and what somebody has to settle first.

use super::spring::Spring;
use super::words;
use crate::coil::fatigue::Surface;
use crate::job::choices::ends_name;
use crate::job::figures::{Pen, text};
use crate::job::input::Job;
use crate::job::report::{OrderItem, OrderReport};
use crate::material::Presetting;
use crate::quantity::{self, Length};
use crate::replacement::{Amount, Case, Dimension, Item, LoadAt, Order, Question, Whose, Wishes};

/// What stands over every order of a job.
pub(super) struct Letter {
    heading: Vec<String>,
}

/// What stands under every one, in its text and beside its items.
const SUBJECT: &str = "Subject to the approval of the vehicle's maker and of whoever answers for the line. Compared by arithmetic only; no drawing of the maker's is replaced by this.";

impl Letter {
    pub(super) fn of(job: &Job) -> Self {
        let record = job.record.given();
        let said = |name: &str, text: &str| (!text.is_empty()).then(|| text!("{name}: {text}"));
        let vehicle = record.and_then(|record| said("Vehicle", record.vehicle.written()));
        let date = record.and_then(|record| said("Date", record.date.written()));
        let heading = vehicle.into_iter().chain(said("Job", job.title.written())).chain(date);
        Self { heading: heading.collect() }
    }

    pub(super) fn order(&self, pen: Pen, of: &Spring, case: &Case, wishes: &Wishes) -> OrderReport {
        let mut order = case.order(wishes);
        if !of.total_told && of.drawing.total_turns.is_some() {
            order.total_turns = Item::Question(Question::TotalTurns);
        }
        let title = text!("Order: {}", of.name);
        let items = items(pen, &order);
        let questions = questions(&order);
        let text = self.text(&title, &items, &questions);
        OrderReport { title, items, questions, subject: SUBJECT, text }
    }

    fn text(&self, title: &str, items: &[OrderItem], questions: &[String]) -> String {
        let known = || items.iter().filter(|item| !item.open);
        let width = known().map(|item| item.name.chars().count()).fold(0, usize::max) + 1;
        let mut lines = vec![title.to_owned()];
        lines.extend(self.heading.iter().cloned());
        lines.push(String::new());
        for item in known() {
            let name = text!("{}:", item.name);
            lines.push(format!("{name:width$} {}", item.text));
        }
        if !questions.is_empty() {
            lines.extend([String::new(), "To be settled:".to_owned()]);
            lines.extend(questions.iter().map(|question| text!("- {question}")));
        }
        lines.extend([String::new(), SUBJECT.to_owned(), String::new()]);
        lines.join("\n")
    }
}

fn items(pen: Pen, order: &Order) -> Vec<OrderItem> {
    let size = |of: &Dimension<Length>| length(pen, of);
    let count = |of: &Dimension<f64>| dimension(pen, of, Amount::Number);
    let plain = |text: &String| text.clone();
    vec![
        item("Quantity", &order.quantity, ToString::to_string),
        item("Bar", &order.bar, size),
        item("Outside diameter", &order.outside, size),
        item("Inside diameter", &order.inside, size),
        item("Free height", &order.free, size),
        item("Total turns", &order.total_turns, count),
        item("Active turns", &order.active_turns, count),
        item("Ends", &order.ends, |ends| ends_name(*ends).to_owned()),
        item("Hand", &order.hand, |hand| words::hand(*hand).to_owned()),
        item("Rate", &order.rate, |rate| dimension(pen, rate, Amount::Rate)),
        item("Load", &order.loads, |loads| {
            quantity::joined(loads.iter().map(|at| load(pen, at)), "; ")
        }),
        item("Solid height", &order.solid, size),
        item("Steel", &order.steel, |steel| (*steel).to_owned()),
        item("Surface", &order.surface, |surface| {
            match surface {
                Surface::Peened => "Shot peened",
                Surface::Unpeened => "Not shot peened",
            }
            .to_owned()
        }),
        item("Set", &order.set_removal, |presetting| {
            match presetting {
                Presetting::SetRemoved => "Taken out when it is made",
                Presetting::AsWound => "Not taken out",
            }
            .to_owned()
        }),
        item("Finish", &order.finish, plain),
        item("Inspection", &order.inspection, plain),
        item("Test", &order.test, plain),
        item("Marking", &order.marking, plain),
    ]
}

fn item<T>(name: &str, item: &Item<T>, say: impl Fn(&T) -> String) -> OrderItem {
    let (text, open) = match item {
        Item::Known { value, of: Some(Whose::Original) } => {
            (text!("{}, as the original", say(value)), false)
        }
        Item::Known { value, .. } => (say(value), false),
        Item::Question(question) => (asks(*question).to_owned(), true),
    };
    OrderItem { name: name.to_owned(), text, open }
}

/// A size as the fraction that it is, its limits as decimals.
fn length(pen: Pen, of: &Dimension<Length>) -> String {
    let nominal = of.nominal.map(|nominal| pen.size(nominal).text);
    joined(pen, nominal, of, Amount::Length)
}

fn dimension<Q: Copy>(pen: Pen, of: &Dimension<Q>, amount: fn(Q) -> Amount) -> String {
    let nominal = of.nominal.map(|nominal| words::amount(pen, amount(nominal)).to_string());
    joined(pen, nominal, of, amount)
}

fn joined<Q: Copy>(
    pen: Pen,
    nominal: Option<String>,
    of: &Dimension<Q>,
    amount: fn(Q) -> Amount,
) -> String {
    let said = |of: Amount| words::amount(pen, of);
    let limits = of.limits.map(|limits| words::limits(said, &limits.map(amount)));
    match (nominal, limits) {
        (Some(nominal), Some(limits)) => text!("{nominal} ({limits})"),
        (Some(only), None) | (None, Some(only)) => only,
        (None, None) => String::new(),
    }
}

fn load(pen: Pen, at: &LoadAt) -> String {
    text!("{} at {}", dimension(pen, &at.load, Amount::Load), pen.height(at.height).text)
}

fn questions(order: &Order) -> Vec<String> {
    let mut all: Vec<String> =
        order.questions().into_iter().map(|question| asks(question).to_owned()).collect();
    let open = order.without_limits();
    if !open.is_empty() {
        let named = quantity::joined(open.iter(), ", ");
        all.push(text!("Between what limits may they lie: {named}?"));
    }
    all
}

/// What somebody has to say.
fn asks(of: Question) -> &'static str {
    match of {
        Question::Bar => "Of what bar is it to be wound?",
        Question::Outside => "What is its outside diameter?",
        Question::Inside => "What is its inside diameter?",
        Question::FreeHeight => "What is its free height?",
        Question::TotalTurns => "How many turns has it in all?",
        Question::ActiveTurns => "How many of its turns deflect?",
        Question::Ends => "What form have its ends?",
        Question::Hand => "Which way is it to be wound?",
        Question::Rate => "What is its rate?",
        Question::Loads => "What is it to carry, and at what height?",
        Question::SolidHeight => "How high may it be when solid?",
        Question::Steel => "Of which steel is it to be made?",
        Question::Surface => "Is it to be shot peened?",
        Question::Finish => "How is it to be finished?",
        Question::SetRemoval => "Is its set to be taken out when it is made?",
        Question::Inspection => "How is it to be inspected?",
        Question::Test => "How is it to be tested?",
        Question::Quantity => "How many are wanted?",
        Question::Marking => "How is it to be marked?",
    }
}
