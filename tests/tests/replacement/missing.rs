//! Figures that are missing: every line that depends on one says so, and what it would have to be does
//! decide.

use super::springs::{HalfWidths, Spring, middle, mm, mpa, setting};
use approx::abs_diff_eq;
use coilnest::coil::DiameterKind;
use coilnest::coil::Hand;
use coilnest::coil::buckling::Seating;
use coilnest::coil::ends::Ends;
use coilnest::drawing::{Allowable, Drawing, Figure, Given};
use coilnest::material::Against;
use coilnest::quantity::{Length, SpringRate, si};
use coilnest::replacement::{
    AllowedRange, Around, Asked, Case, Compliance, Decision, Line, Missing, Requirement, Whose,
    Word,
};

const FIGURES: [Figure; 10] = [
    Figure::Bar,
    Figure::Diameter,
    Figure::TotalTurns,
    Figure::Ends,
    Figure::Hand,
    Figure::FreeHeight,
    Figure::ShearModulus,
    Figure::YoungsModulus,
    Figure::AllowableStress,
    Figure::TensileStrength,
];

/// All is known and all is asked; the candidate has tolerances, a thinner bar and more height.
fn whole() -> Case {
    let (setting, original) = (setting(), middle(DiameterKind::Outside));
    let candidate = Spring { bar: 7.97, free: 160.5, ..original };
    let half = HalfWidths { bar: 0.02, diameter: 0.2, free: 0.5, ..HalfWidths::default() };
    let asked = Asked {
        working: Some(setting.working),
        cycle: Some(setting.cycle),
        seating: Seating::BothPivoted,
        nest_height: Some(AllowedRange::between(mm(100.0), mm(140.0))),
        ..Asked::default()
    };
    let drawn = |spring: Drawing| Drawing { dead_turns: None, ..spring };
    let nest = Around {
        outer: vec![setting.outer.seated()],
        inner: vec![setting.inner.seated()],
        raise: mm(0.0),
        load: Some(setting.nest_load),
    };
    let case = Case::new(drawn(original.exact()), drawn(candidate.within(half)), asked);
    Case { nest: Some(nest), ..case }
}

fn of(case: &mut Case, whose: Whose) -> &mut Drawing {
    match whose {
        Whose::Original => &mut case.original,
        Whose::Candidate => &mut case.candidate,
        other => panic!("{other}"),
    }
}

fn remove(spring: &mut Drawing, figure: Figure) {
    match figure {
        Figure::Bar => spring.bar = None,
        Figure::Diameter => spring.diameter = None,
        Figure::TotalTurns => spring.total_turns = None,
        Figure::Ends => spring.ends = None,
        Figure::Hand => spring.hand = None,
        Figure::FreeHeight => spring.free = None,
        Figure::ShearModulus => spring.shear_modulus = None,
        Figure::YoungsModulus => spring.youngs_modulus = None,
        Figure::AllowableStress => spring.allowable = None,
        Figure::TensileStrength => spring.tensile = None,
        other => panic!("{other}"),
    }
}

/// The same spring with a figure a little different.
fn nudge(spring: &mut Drawing, figure: Figure) {
    let by = 1.001;
    let length = |range: Given<Length>| Given::exact(range.nominal() * by);
    match figure {
        Figure::Bar => spring.bar = spring.bar.map(length),
        Figure::Diameter => {
            spring.diameter = spring.diameter.map(|(across, range)| (across, length(range)));
        }
        Figure::TotalTurns => {
            spring.total_turns = spring.total_turns.map(|turns| Given::exact(turns.nominal() * by));
        }
        Figure::Ends => spring.ends = Some(Ends::TaperedGround),
        Figure::Hand => spring.hand = Some(Hand::Left),
        Figure::FreeHeight => spring.free = spring.free.map(length),
        Figure::ShearModulus => {
            spring.shear_modulus = spring.shear_modulus.map(|it| Given::exact(it.nominal() * by));
        }
        Figure::YoungsModulus => spring.youngs_modulus = spring.youngs_modulus.map(|it| it * by),
        Figure::AllowableStress => {
            spring.allowable =
                spring.allowable.map(|it| Allowable { stress: it.stress * by, ..it });
        }
        Figure::TensileStrength => spring.tensile = spring.tensile.map(|it| it * by),
        other => panic!("{other}"),
    }
}

fn put(spring: &mut Drawing, figure: Figure, value: f64) {
    let length = Given::exact(si(value));
    let stress = si(value);
    match figure {
        Figure::Bar => spring.bar = Some(length),
        Figure::Diameter => spring.diameter = Some((DiameterKind::Outside, length)),
        Figure::TotalTurns => spring.total_turns = Some(Given::exact(value)),
        Figure::FreeHeight => spring.free = Some(length),
        Figure::SolidHeight => spring.solid = Some(length),
        Figure::Rate => {
            spring.rate = Some(Given::exact(si(value)));
        }
        Figure::ShearModulus => spring.shear_modulus = Some(Given::exact(stress)),
        Figure::YoungsModulus => spring.youngs_modulus = Some(stress),
        Figure::AllowableStress => {
            spring.allowable = Some(Allowable { stress, against: Against::Plain });
        }
        Figure::TensileStrength => spring.tensile = Some(stress),
        other => panic!("{other}"),
    }
}

fn lines(case: &Case) -> Vec<Line> {
    case.judge().unwrap().lines
}

/// What depends on a figure is found by nudging it; what is missing then has to be named.
#[test]
fn every_line_that_depends_on_a_figure_says_that_it_is_missing() {
    let whole = whole();
    let before = lines(&whole);
    assert!(before.iter().all(|line| !matches!(line.verdict, Compliance::CannotTell { .. })));
    let mut named = 0;
    for whose in [Whose::Original, Whose::Candidate] {
        for figure in FIGURES {
            let (mut nudged, mut without) = (whole.clone(), whole.clone());
            nudge(of(&mut nudged, whose), figure);
            remove(of(&mut without, whose), figure);
            for ((line, nudged), without) in before.iter().zip(lines(&nudged)).zip(lines(&without))
            {
                let depends = (line.offered, line.wanted) != (nudged.offered, nudged.wanted);
                match &without.verdict {
                    Compliance::CannotTell { missing, .. } => {
                        assert_eq!(missing, &[Missing { whose, figure }], "{without:?}");
                        named += 1;
                    }
                    told => {
                        assert!(!depends, "{figure} of {whose}: {without:?}");
                        assert_eq!(told, &line.verdict);
                    }
                }
            }
        }
    }
    assert!(named > 50, "{named}");
}

#[test]
fn what_a_missing_figure_would_have_to_be_decides_and_a_hair_beyond_does_not() {
    let whole = whole();
    let before = lines(&whole);
    let (mut ends, mut words) = (0, 0);
    for whose in [Whose::Original, Whose::Candidate] {
        for figure in FIGURES {
            let mut without = whole.clone();
            remove(of(&mut without, whose), figure);
            for (line, before) in lines(&without).into_iter().zip(&before) {
                if !matches!(line.verdict, Compliance::CannotTell { .. }) {
                    continue;
                }
                let met = |case: &Case| {
                    let judged = case.judge().ok()?;
                    let found = &judged.line(line.requirement)?.verdict;
                    Some(!matches!(found, Compliance::NotMet | Compliance::CannotTell { .. }))
                };
                let with = |value: f64| {
                    let mut with = without.clone();
                    put(of(&mut with, whose), figure, value);
                    met(&with)
                };
                match &without.decision(&line) {
                    Some(Decision::Within { missing, spans }) => {
                        assert_eq!(*missing, Missing { whose, figure });
                        for span in spans {
                            let (least, most) =
                                (span.least.map(|it| it.si()), span.most.map(|it| it.si()));
                            for (end, beyond) in [(least, 1.0 - 1e-9), (most, 1.0 + 1e-9)] {
                                let Some(end) = end else { continue };
                                let told = (with(end), with(end * beyond));
                                assert_eq!(told.0, Some(true), "{end} {line:?}");
                                assert_ne!(told.1, Some(true), "{end} {line:?}");
                                ends += 1;
                            }
                        }
                        // The figure that was there is in a span, where the line was met with it.
                        let mut exact = without.clone();
                        let own = {
                            let mut whole = whole.clone();
                            let spring = of(&mut whole, whose);
                            match figure {
                                Figure::Bar => spring.bar.map(|it| it.nominal().value),
                                Figure::Diameter => {
                                    spring.diameter.map(|(_, it)| it.nominal().value)
                                }
                                Figure::TotalTurns => spring.total_turns.map(|it| it.nominal()),
                                Figure::FreeHeight => spring.free.map(|it| it.nominal().value),
                                Figure::ShearModulus => {
                                    spring.shear_modulus.map(|it| it.nominal().value)
                                }
                                _ => None,
                            }
                        };
                        if let Some(own) = own {
                            put(of(&mut exact, whose), figure, own);
                            let within = spans.iter().any(|span| {
                                span.least.is_none_or(|least| own >= least.si() * (1.0 - 1e-12))
                                    && span.most.is_none_or(|most| own <= most.si() * (1.0 + 1e-12))
                            });
                            assert_eq!(met(&exact), Some(within), "{own} {line:?}");
                            assert!(within || before.verdict == Compliance::NotMet);
                        }
                    }
                    Some(Decision::Word { missing, word }) => {
                        assert_eq!(*missing, Missing { whose, figure });
                        let mut with = without.clone();
                        match word {
                            Word::Hand(hand) => of(&mut with, whose).hand = Some(*hand),
                            Word::Ends(ends) => of(&mut with, whose).ends = Some(*ends),
                        }
                        assert_eq!(met(&with), Some(true), "{line:?}");
                        words += 1;
                    }
                    None => assert_eq!(figure, Figure::Ends, "{line:?}"),
                }
            }
        }
    }
    assert!(ends > 60 && words >= 6, "{ends} {words}");
}

/// A rate within 5 % lets the bar lie within about 1 %: a span with two ends, by hand.
#[test]
fn a_bar_within_a_rate() {
    let mut case = whole();
    case.candidate.dead_turns = Some(Given::exact(2.0));
    case.candidate.bar = None;
    case.candidate.diameter = Some((DiameterKind::Mean, Given::exact(mm(60.0))));
    case.asked.rate = Some(AllowedRange::between(rate_of(7.9), rate_of(8.1)));
    let lines = lines(&case);
    let line = lines.iter().find(|line| line.requirement == Requirement::Rate).unwrap();
    let Some(Decision::Within { spans, .. }) = case.decision(line) else { panic!("{line:?}") };
    let ends: Vec<_> =
        spans.iter().map(|span| (span.least.unwrap().si(), span.most.unwrap().si())).collect();
    assert_eq!(ends.len(), 1);
    assert!((ends[0].0 - 7.9e-3).abs() < 1e-12 && (ends[0].1 - 8.1e-3).abs() < 1e-12, "{ends:?}");
}

/// k = G d⁴/(8 D³ n) of the middle coil.
fn rate_of(bar: f64) -> SpringRate {
    let value = 79.0e9 * (bar * 1e-3).powi(4) / (8.0 * 0.06_f64.powi(3) * 7.0);
    si(value)
}

/// Stress at solid is low for a thin bar and for one that leaves no travel: two spans of the bar.
#[test]
fn a_stress_at_solid_is_met_in_two_spans() {
    let mut case = whole();
    case.candidate.dead_turns = Some(Given::exact(2.0));
    case.candidate.bar = None;
    case.candidate.diameter = Some((DiameterKind::Mean, Given::exact(mm(60.0))));
    case.candidate.free = Some(Given::exact(mm(160.0)));
    let stress = mpa(500.0);
    case.asked.stress_at_solid = Some(Allowable { stress, against: Against::Plain });
    let lines = lines(&case);
    let line = lines.iter().find(|line| line.requirement == Requirement::StressAtSolid).unwrap();
    let Some(Decision::Within { spans, .. }) = case.decision(line) else { panic!("{line:?}") };
    // τ = G d (L0 − 9 d)/(π D² n): 9 d² − 160 d + 500·π·3600·7/79 000 = 0, in mm.
    let constant = 500.0 * core::f64::consts::PI * 3600.0 * 7.0 / 79_000.0;
    let root = (160.0_f64 * 160.0 - 4.0 * 9.0 * constant).sqrt();
    let (thin, thick) = ((160.0 - root) / 18.0, (160.0 + root) / 18.0);
    assert_eq!(spans.len(), 2, "{spans:?}");
    assert!(
        abs_diff_eq!(spans[0].most.unwrap().si(), thin * 1e-3, epsilon = 1e-11),
        "{spans:?} {thin}"
    );
    assert!(
        abs_diff_eq!(spans[1].least.unwrap().si(), thick * 1e-3, epsilon = 1e-11),
        "{spans:?} {thick}"
    );
}

/// Of a coil of which the book gives free height, rate and solid height alone, those can be told.
#[test]
fn book_figures_alone_tell_what_they_can() {
    let spring = middle(DiameterKind::Outside);
    let book = Drawing {
        free: Some(Given::exact(mm(spring.free))),
        rate: Some(Given::exact(spring.rate())),
        solid: Some(Given::exact(spring.solid())),
        ..Drawing::default()
    };
    let asked = Asked { working: Some(mm(125.0)), ..Asked::default() };
    let judged = Case::new(book.clone(), book, asked).judge().unwrap();
    let told: Vec<_> = judged
        .lines
        .iter()
        .filter(|line| line.verdict == Compliance::MetThroughout)
        .map(|line| line.requirement)
        .collect();
    assert_eq!(
        told,
        [
            Requirement::FreeHeight,
            Requirement::Rate,
            Requirement::Load,
            Requirement::SolidHeight,
            Requirement::Reserve
        ]
    );
    let lacks = |requirement| match &judged.line(requirement).unwrap().verdict {
        Compliance::CannotTell { missing } => missing.clone(),
        other => panic!("{other:?}"),
    };
    let both = |figures: &[Figure]| {
        let of = |whose| figures.iter().map(move |figure| Missing { whose, figure: *figure });
        of(Whose::Original).chain(of(Whose::Candidate)).collect::<Vec<_>>()
    };
    assert_eq!(lacks(Requirement::Post), both(&[Figure::Bar, Figure::Diameter]));
    assert_eq!(lacks(Requirement::Hand), both(&[Figure::Hand]));
}
