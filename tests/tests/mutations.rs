//! Kept texts with parts cut out, doubled, swapped and crossed with each other: every one is answered.
//!
//! The same texts at every run: what is drawn comes from a fixed seed, and how many is counted.

use coilnest::bounds::{self, Bound};
use coilnest::job::coil_table::{Piece, coil_rows};
use coilnest::job::{Job, assess, file, judge, level, matching, replace, size};
use coilnest::quantity::{Readable, Refusal, System, read};
use coilnest::reading::Reading;
use coilnest_tables::TABLES;
use coilnest_tests::read_back::is_same;
use coilnest_tests::{corpus, job_path};
use oorandom::Rand32;
use serde::Serialize;
use serde::de::DeserializeOwned;
use serde_json::Value;
use std::ops::Range;

/// What fingers, other programs and damage put into a text.
const ODD: [&str; 24] = [
    "/", "0", "9", ".", ",", "-", "−", "½", "″", "e309", "1e-400", "nan", "inf", "scant", " lb",
    " mm", "\"", "\\", "\n", "\r", ";", "\u{0}", "\u{202f}", "😀",
];

struct Texts {
    seeds: Vec<String>,
    random: Rand32,
}

impl Texts {
    fn of(seeds: Vec<String>, seed: u64) -> Self {
        assert!(seeds.len() > 2);
        Self { seeds, random: Rand32::new(seed) }
    }

    fn below(&mut self, most: usize) -> usize {
        self.random.rand_range(0..u32::try_from(most).unwrap().max(1)) as usize
    }

    fn seed(&mut self) -> String {
        let place = self.below(self.seeds.len());
        self.seeds[place].clone()
    }

    /// A few characters one after the other.
    fn part(&mut self, text: &[char]) -> Range<usize> {
        let start = self.below(text.len() + 1);
        let longest = (text.len() - start).min(12);
        start..start + self.below(longest + 1)
    }

    /// One of the kept texts, changed in up to four places.
    fn changed(&mut self, text: &str) -> String {
        let mut text: Vec<char> = text.chars().collect();
        for _ in 0..=self.below(4) {
            let part = self.part(&text);
            let put: Vec<char> = match self.below(4) {
                0 => Vec::new(),
                1 => text[part.clone()].repeat(2),
                2 => {
                    let other: Vec<char> = self.seed().chars().collect();
                    let part = self.part(&other);
                    other[part].to_vec()
                }
                _ => ODD[self.below(ODD.len())].chars().collect(),
            };
            text.splice(part, put);
        }
        text.into_iter().collect()
    }

    fn next(&mut self) -> String {
        let seed = self.seed();
        self.changed(&seed)
    }
}

fn kept(file: &str) -> String {
    std::fs::read_to_string(corpus::folder("seeds").join(file)).unwrap()
}

fn lines(file: &str) -> Vec<String> {
    kept(file).lines().map(str::to_owned).collect()
}

fn jobs() -> Vec<String> {
    corpus::all().unwrap().into_iter().map(|job| job.text).collect()
}

/// A refusal names a place in the text, and a text that would do.
fn is_told(text: &str, refusal: &Refusal) {
    assert!(refusal.position() <= text.chars().count(), "{text:?}: {refusal}");
    assert!(!refusal.expected().is_empty() && !refusal.example().is_empty(), "{text:?}");
}

fn reads<K: Readable>(text: &str, system: System, bound: &'static Bound<K>) {
    match read(text, system, bound) {
        Ok(value) => assert!(K::si(value).is_finite(), "{text:?}"),
        Err(refusal) => is_told(text, &refusal),
    }
}

#[test]
fn any_reading_is_read_or_refused_at_its_place() {
    let mut texts = Texts::of(lines("readings.txt"), 20_261_128);
    let mut taken = 0;
    for _ in 0..60_000 {
        let text = texts.next();
        for system in [System::Inch, System::Metric] {
            match Reading::parse(&text, system, &bounds::READING) {
                Ok(reading) => {
                    let length = reading.length();
                    assert!(bounds::READING.check(length).is_ok(), "{text:?}: {length:?}");
                    taken += 1;
                }
                Err(refusal) => is_told(&text, &refusal),
            }
        }
    }
    // Enough are sound that the reader is gone through to its end.
    assert!(taken > 5_000, "{taken}");
}

#[test]
fn any_quantity_is_read_or_refused_at_its_place() {
    let mut texts = Texts::of(lines("quantities.txt"), 20_261_129);
    for _ in 0..40_000 {
        let text = texts.next();
        for system in [System::Inch, System::Metric] {
            reads(&text, system, &bounds::LOAD);
            reads(&text, system, &bounds::RATE);
            reads(&text, system, &bounds::MODULUS);
            reads(&text, system, &bounds::TURNS);
            reads(&text, system, &bounds::LEVEL);
        }
    }
}

/// No line is lost: each is a row, a refusal or a remark, and the same text gives the same again.
#[test]
fn any_table_of_coils_is_read() {
    let files = ["bench-comma.csv", "bench-semicolon.csv", "bench-tab.csv"];
    let mut seeds = files.map(kept).to_vec();
    seeds.push(kept("bench-semicolon.csv").replace('\n', "\r\n"));
    let mut texts = Texts::of(seeds, 20_261_130);
    let job = file::open(&corpus::named("quarry-tramway").unwrap().text).unwrap();
    for _ in 0..8_000 {
        let text = texts.next();
        let read = coil_rows(&job, &Piece::whole(&text));
        assert!(read.stopped || read.consumed == text.encode_utf16().count(), "{text:?}");
        assert_eq!(read, coil_rows(&job, &Piece::whole(&text)));
        for problem in read.refused.iter().flat_map(|line| &line.problems) {
            assert!(!problem.message.is_empty() && !problem.code.is_empty(), "{text:?}");
        }
    }
}

/// What JSON cannot hold as a number it writes as null, and a report leaves out what it has not. So it is read
/// back as it was.
fn is_whole(report: &(impl Serialize + DeserializeOwned + PartialEq), job: &str) {
    is_same(report).unwrap_or_else(|why| panic!("{job}\n{why}"));
    let report = serde_json::to_string(report).unwrap();
    assert!(!report.contains(":null") && !report.contains("null,"), "{job}\n{report}");
}

fn is_answered(job: &Job, text: &str) {
    is_whole(&assess(job, &TABLES), text);
    is_whole(&judge(job, &TABLES), text);
    is_whole(&level(job, &TABLES), text);
    is_whole(&matching(job, &TABLES), text);
    is_whole(&replace(job, &TABLES), text);
    is_whole(&size(job, &TABLES), text);
}

/// A file that is damaged is refused, or is a job: it is answered, and saved as it was opened.
#[test]
fn any_damaged_file_is_refused_or_answered() {
    let mut texts = Texts::of(jobs(), 20_261_131);
    let (mut opened, mut refused) = (0, 0);
    for _ in 0..2_500 {
        let text = texts.next();
        match file::open(&text) {
            Ok(job) => {
                opened += 1;
                let saved = file::save(&job);
                assert_eq!(file::save(&file::open(&saved).unwrap()), saved, "{text}");
                is_answered(&job, &text);
            }
            Err(problem) => {
                refused += 1;
                assert!(!problem.message.is_empty(), "{text}");
            }
        }
    }
    assert!(opened > 50 && refused > 1_000, "{opened} opened, {refused} refused");
}

/// A sound file with texts of fields changed.
#[test]
fn any_text_in_a_field_is_answered() {
    let jobs = jobs();
    let fields = [lines("readings.txt"), lines("quantities.txt")].concat();
    let mut texts = Texts::of(fields, 20_261_132);
    for number in 0..500 {
        let mut job: Value = serde_json::from_str(&jobs[number % jobs.len()]).unwrap();
        let paths = job_path::all(&job);
        for _ in 0..=texts.below(6) {
            let path = &paths[texts.below(paths.len())];
            if path == "format" {
                continue;
            }
            let text = texts.next();
            job_path::put(&mut job, path, Some(text.into()));
        }
        let text = job.to_string();
        is_answered(&file::from_value(job).unwrap(), &text);
    }
}
