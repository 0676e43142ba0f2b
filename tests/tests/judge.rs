//! What the tape says by itself, as a first look at the page has it, against the whole report.

use coilnest::job::report::{Figure, SeatReport};
use coilnest::job::{assess, file, judge};
use coilnest_tables::{TABLES, TAPE_TABLES};
use coilnest_tests::corpus;

/// A figure but for the key of its working, which counts in each report by itself.
fn bare(figure: Option<&Figure>) -> Option<Figure> {
    figure.map(|figure| Figure { working: None, ..figure.clone() })
}

#[track_caller]
fn same_by_the_tape(whole: &SeatReport, taped: &SeatReport, of: &str) {
    for (name, figure) in [
        ("book", (&whole.book, &taped.book)),
        ("free", (&whole.free, &taped.free)),
        ("deviation", (&whole.deviation, &taped.deviation)),
        ("spread", (&whole.spread, &taped.spread)),
    ] {
        assert_eq!(bare(figure.0.as_ref()), bare(figure.1.as_ref()), "{of}, {name}");
    }
    assert_eq!(whole.measured, taped.measured, "{of}");
    assert_eq!((&whole.name, &whole.label), (&taped.name, &taped.label), "{of}");
    let ruled = |seat: &SeatReport| {
        let verdict = seat.verdict.as_ref()?;
        let limits = [&verdict.least, &verdict.most].map(|limit| bare(limit.as_ref()));
        let chances = [verdict.p_in, verdict.p_short, verdict.p_long];
        Some((verdict.word, verdict.title.clone(), chances, verdict.places, limits))
    };
    assert_eq!(ruled(whole), ruled(taped), "{of}");
}

/// A verdict needs the book figure, its limits and the tape: what else a drawing says adds what it costs.
#[test]
fn every_job_is_judged_alike_without_its_drawings() {
    let mut verdicts = 0;
    for kept in corpus::all().unwrap() {
        let job = file::open(&kept.text).unwrap();
        let (whole, taped) = (assess(&job, &TABLES), judge(&job, &TAPE_TABLES));
        assert_eq!((whole.tally, &whole.keys), (taped.tally, &taped.keys), "{}", kept.name);
        assert_eq!(whole.nests.len(), taped.nests.len(), "{}", kept.name);
        for (with, without) in whole.nests.iter().zip(&taped.nests) {
            assert_eq!((&with.id, with.seats.len()), (&without.id, without.seats.len()));
            for (whole, taped) in with.seats.iter().zip(&without.seats) {
                verdicts += usize::from(taped.verdict.is_some());
                same_by_the_tape(whole, taped, &format!("{}, {}", kept.name, with.id));
            }
        }
        // Nothing is said in a first look that the whole report takes back.
        for problem in &taped.problems {
            assert!(whole.problems.contains(problem), "{}: {problem:?}", kept.name);
        }
        for note in &taped.notes {
            assert!(whole.notes.contains(note), "{}: {note:?}", kept.name);
        }
    }
    assert!(verdicts > 20, "{verdicts}");
}
