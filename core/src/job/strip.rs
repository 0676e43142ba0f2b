//! The tape as it stands at a reading: its graduations, the limits, and where the mark can stand.

use super::assess::{Gauged, gauge};
use super::input::Job;
use super::report::{TapeMark, TapeReading, TapeStop, TapeStrip};
use crate::bounds;
use crate::quantity::{self, Length, System, unit};
use crate::reading::{Lean, Reading, Step, write_length};
use crate::tables::Tables;

/// The tape at one reading of a job, `nests[0].seats[0].readings[1]`; none where neither a reading
/// nor a book figure says where on the tape that is.
#[must_use]
pub fn strip(job: &Job, tables: &Tables<'_>, path: &str) -> Option<TapeStrip> {
    let gauged = gauge(job, tables, path)?;
    let system = gauged.marked;
    let reading = gauged.text.as_deref();
    let reading =
        reading.and_then(|text| Reading::parse(text, gauged.system, &bounds::READING).ok());
    let spot = reading.map(|reading| reading.length()).or(gauged.book)?;
    let (low, high) = window(system, spot, &gauged);
    let shown = |length: Length| quantity::shown::<Length>(length, system);
    let number = |length: Length| shown(length).0;
    let said = reading.map(|reading| reading.interval(gauged.graduation));
    let stops = stops(&gauged, low, high);
    let current =
        reading.and_then(|reading| nearest(&stops, reading, number(gauged.graduation), number));
    Some(TapeStrip {
        unit: shown(spot).1.into(),
        from: number(low),
        to: number(high),
        marks: marks(system, gauged.graduation, low, high),
        book: gauged.book.map(number),
        least: gauged.least.map(number),
        most: gauged.most.map(number),
        reading: said.map(|said| TapeReading {
            at: number(said.estimate()),
            low: number(said.least()),
            high: number(said.most()),
        }),
        name: name(system, &gauged),
        stops: stops.into_iter().map(|(at, text)| TapeStop { at, text }).collect(),
        current,
    })
}

/// What of the tape is shown: the spot, the limits, and a little beyond.
fn window(system: System, spot: Length, gauged: &Gauged) -> (Length, Length) {
    let (half, beyond) = match system {
        System::Inch => (Length::new::<unit::inch>(0.8), Length::new::<unit::inch>(0.1)),
        System::Metric => {
            (Length::new::<unit::millimeter>(20.0), Length::new::<unit::millimeter>(2.5))
        }
    };
    // A limit that is feet away from the mark would make the graduations too fine to see.
    let near = |length: &Length| (*length - spot).abs() < half * 2.0;
    let shown = [gauged.least, gauged.most, gauged.book].into_iter().flatten().filter(near);
    let (mut low, mut high) = (spot - half, spot + half);
    for length in shown {
        low = if length - beyond < low { length - beyond } else { low };
        high = if length + beyond > high { length + beyond } else { high };
    }
    (if low.value < 0.0 { Length::default() } else { low }, high)
}

/// Whole graduations from one length to another, counted from the tape's end.
fn graduations(graduation: Length, low: Length, high: Length) -> impl Iterator<Item = u32> {
    #[expect(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "bounded by the tape's length"
    )]
    let count = |length: f64| if length > 0.0 { length as u32 } else { 0 };
    let first = count(libm::ceil((low / graduation).value - 1e-9));
    let last = count(libm::floor((high / graduation).value + 1e-9));
    first..=last.min(first.saturating_add(400))
}

fn marks(system: System, graduation: Length, low: Length, high: Length) -> Vec<TapeMark> {
    graduations(graduation, low, high)
        .map(|count| {
            let at = quantity::shown::<Length>(graduation * f64::from(count), system).0;
            let (rank, whole) = match system {
                System::Inch => {
                    // Each halving of the inch is a rank.
                    let rank = (0..5u8).find(|rank| is_whole(at * f64::from(1u32 << rank)));
                    (rank.unwrap_or(5), is_whole(at))
                }
                System::Metric => {
                    let ranks = [(0, 10.0), (2, 5.0), (4, 1.0)];
                    let rank =
                        ranks.iter().find(|(_, step)| is_whole(at / step)).map(|(rank, _)| *rank);
                    (rank.unwrap_or(5), is_whole(at / 10.0))
                }
            };
            TapeMark { at, rank, label: whole.then(|| quantity::write_fixed(at, 0)) }
        })
        .collect()
}

fn is_whole(x: f64) -> bool {
    (x - libm::round(x)).abs() < 1e-6
}

/// Just under, on, and just over every graduation, with the text that says so.
fn stops(gauged: &Gauged, low: Length, high: Length) -> Vec<(f64, String)> {
    let (system, graduation) = (gauged.marked, gauged.graduation);
    let step = Step::of(graduation);
    let mut stops = Vec::new();
    for count in graduations(graduation, low, high).filter(|count| *count > 0) {
        let mark = graduation * f64::from(count);
        let text = write_length(mark, system, step);
        // A bare number is read in the job's system, so a tape of the other one has its unit spelt.
        let bare = text.strip_suffix(" in").or_else(|| text.strip_suffix(" mm")).unwrap_or(&text);
        let text = if system == gauged.system { bare } else { &text }.replace('\u{202f}', "");
        for (lean, word) in [(-0.25, " scant"), (0.0, ""), (0.25, " full")] {
            let at = quantity::shown::<Length>(mark + graduation * lean, system).0;
            stops.push((at, format!("{text}{word}")));
        }
    }
    stops
}

fn nearest(
    stops: &[(f64, String)],
    reading: Reading,
    graduation: f64,
    number: impl Fn(Length) -> f64,
) -> Option<usize> {
    let lean = match reading.lean() {
        Lean::Scant => -0.25,
        Lean::Plain => 0.0,
        Lean::Full => 0.25,
    };
    let at = number(reading.length()) + lean * graduation;
    let distance = |stop: &(f64, String)| (stop.0 - at).abs();
    let best =
        stops.iter().enumerate().min_by(|(_, a), (_, b)| distance(a).total_cmp(&distance(b)));
    best.map(|(index, _)| index)
}

/// What the strip is, without what it shows at the moment: that is the slider's own value.
fn name(system: System, gauged: &Gauged) -> String {
    let write = |length: Length| write_length(length, system, Step::SixtyFourth);
    match (gauged.least, gauged.most) {
        (Some(least), Some(most)) => format!("Tape; limits {} to {}", write(least), write(most)),
        (Some(least), None) => format!("Tape; at least {}", write(least)),
        (None, Some(most)) => format!("Tape; at most {}", write(most)),
        (None, None) => "Tape".to_owned(),
    }
}
