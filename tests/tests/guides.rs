//! Boxes in their guides: against whole numbers of sixty-fourths, one by one, and against sampled boxes
//! whose true sizes are known.

use coilnest::guides::{Guides, GuidesError, Part, Renewed, Size, Word};
use coilnest::quantity::Length;
use coilnest::quantity::unit::inch;
use coilnest::verdict::Limits;
use oorandom::Rand64;

/// A length of whole sixty-fourths: what a tape can be read to is rational, and so is all that is made of
/// it by sums.
fn parts(sixty_fourths: i64) -> Length {
    #[expect(clippy::cast_precision_loss, reason = "no opening here has 2⁵³ sixty-fourths")]
    let inches = sixty_fourths as f64 / 64.0;
    Length::new::<inch>(inches)
}

fn exact(sixty_fourths: &[i64]) -> Vec<Size> {
    sixty_fourths.iter().map(|size| Size::exact(parts(*size))).collect()
}

fn limits(least: Option<i64>, most: Option<i64>) -> Limits {
    Limits::new(least.map(parts), most.map(parts)).unwrap()
}

fn is(found: Length, sixty_fourths: i64) -> bool {
    (found - parts(sixty_fourths)).value.abs() < 1e-12
}

/// A box, in whole numbers.
struct Whole {
    opening: Vec<i64>,
    widths: Vec<i64>,
    liners: [Vec<i64>; 2],
}

impl Whole {
    fn measured(&self) -> Guides {
        let liners = self.liners.each_ref().map(|liner| exact(liner));
        Guides::new(exact(&self.opening), exact(&self.widths), liners).unwrap()
    }

    fn heights(&self) -> usize {
        [&self.opening, &self.liners[0], &self.liners[1]].into_iter().map(Vec::len).max().unwrap()
    }

    fn liner(&self, side: usize, height: usize) -> i64 {
        let liner = &self.liners[side];
        *liner.get(height).or(liner.first()).unwrap_or(&0)
    }

    fn opening(&self, height: usize) -> i64 {
        *self.opening.get(height).unwrap_or(&self.opening[0])
    }

    fn clearances(&self) -> Vec<i64> {
        let width = self.widths.iter().max().unwrap();
        (0..self.heights())
            .map(|at| self.opening(at) - self.liner(0, at) - self.liner(1, at) - width)
            .collect()
    }

    fn word(&self, least: Option<i64>, most: Option<i64>) -> Word {
        let at = self.clearances();
        if at.iter().any(|clear| *clear < 0) {
            Word::Seized
        } else if least.is_some_and(|least| at.iter().any(|clear| *clear < least)) {
            Word::Tight
        } else if most.is_some_and(|most| at.iter().any(|clear| *clear > most)) {
            Word::Loose
        } else {
            Word::Free
        }
    }
}

/// Boxes of one to three heights, every way that a few sizes can be put together.
fn boxes() -> Vec<Whole> {
    let openings = [vec![544], vec![544, 540], vec![544, 536, 542], vec![540, 552, 540]];
    let widths = [vec![504], vec![500, 506], vec![498, 500, 499]];
    let one = [vec![], vec![16], vec![20]];
    let more = [vec![16, 14], vec![16, 20, 15]];
    let mut all = Vec::new();
    for opening in &openings {
        for width in &widths {
            for first in one.iter().chain(&more) {
                for second in one.iter().chain(&more) {
                    let counts = [opening, first, second].map(Vec::len);
                    let many: Vec<_> = counts.into_iter().filter(|count| *count > 1).collect();
                    if many.windows(2).all(|pair| pair[0] == pair[1]) {
                        let liners = [first.clone(), second.clone()];
                        let (opening, widths) = (opening.clone(), width.clone());
                        all.push(Whole { opening, widths, liners });
                    }
                }
            }
        }
    }
    assert!(all.len() > 150, "{}", all.len());
    all
}

#[test]
fn clearance_taper_and_pinch_are_those_of_whole_numbers() {
    for whole in boxes() {
        let (guides, at) = (whole.measured(), whole.clearances());
        let found = guides.clearances();
        assert_eq!(found.len(), at.len());
        assert!(found.iter().zip(&at).all(|(found, at)| is(found.value, *at)));
        assert!(is(guides.least().value, *at.iter().min().unwrap()));
        // On one side, doubled so that it stays whole.
        let width = whole.widths.iter().max().unwrap();
        for (side, found) in guides.sides().into_iter().enumerate() {
            let twice = (0..at.len()).map(|h| whole.opening(h) - width - 2 * whole.liner(side, h));
            assert!(is(found.value * 2.0, twice.min().unwrap()));
        }
        let (top, bottom) = (at[0], at[at.len() - 1]);
        assert_eq!(guides.taper().is_some(), at.len() > 1);
        assert!(guides.taper().is_none_or(|taper| is(taper.value, top - bottom)));
        assert_eq!(guides.pinch().is_some(), at.len() == 3);
        assert!(guides.pinch().is_none_or(|pinch| is(pinch.value, top.min(bottom) - at[1])));
    }
}

#[test]
fn without_doubt_the_word_is_that_of_whole_numbers() {
    let mut words = std::collections::HashMap::new();
    for whole in boxes() {
        let guides = whole.measured();
        for least in [None, Some(0), Some(4), Some(8)] {
            for most in [None, Some(8), Some(16), Some(40)] {
                let expected = match (least, most) {
                    (None, None) if whole.word(None, None) == Word::Free => Word::NoLimit,
                    _ => whole.word(least, most),
                };
                let given = (least, most) != (None, None);
                let verdict = guides.judge(given.then(|| limits(least, most)), 0.95);
                assert_eq!(verdict.word, expected);
                *words.entry(format!("{expected:?}")).or_insert(0) += 1;
            }
        }
    }
    assert!(words.len() == 5 && words.values().all(|count| *count > 20), "{words:?}");
}

/// Every thickness in sixty-fourths is tried: the range that is wanted is that of those that do.
#[test]
fn the_liner_that_is_wanted_is_the_one_that_does() {
    let (least, most) = (Some(4), Some(14));
    let mut found_some = 0;
    for whole in boxes() {
        let guides = whole.measured();
        for renewed in [Renewed::One(0), Renewed::One(1), Renewed::Both] {
            let does = |thick: i64| {
                let mut liners = whole.liners.clone();
                match renewed {
                    Renewed::One(side) => liners[side] = vec![thick],
                    Renewed::Both => liners = [vec![thick], vec![thick]],
                }
                let (opening, widths) = (whole.opening.clone(), whole.widths.clone());
                Whole { opening, widths, liners }.word(least, most) == Word::Free
            };
            let which: Vec<i64> = (1..=80).filter(|thick| does(*thick)).collect();
            let wanted = guides.wanted(renewed, limits(least, most));
            let whole_parts = |length: Length| length.get::<inch>() * 64.0;
            let within = |thick: i64| {
                #[expect(clippy::cast_precision_loss, reason = "at most 80")]
                let thick = thick as f64;
                wanted.is_some_and(|wanted| {
                    wanted.least.is_none_or(|least| whole_parts(least) <= thick + 1e-9)
                        && wanted.most.is_none_or(|most| whole_parts(most) >= thick - 1e-9)
                })
            };
            let by_range: Vec<i64> = (1..=80).filter(|thick| within(*thick)).collect();
            assert_eq!(by_range, which);
            found_some += usize::from(!which.is_empty());
        }
    }
    assert!(found_some > 100, "{found_some}");
}

#[test]
fn of_a_stock_none_does_with_fewer_or_more_alike() {
    let stock = [12, 14, 16, 20, 24];
    let (least, most) = (Some(4), Some(14));
    let (mut ones, mut pairs, mut nothing) = (0, 0, 0);
    for whole in boxes() {
        let fitted = |choice: [Option<usize>; 2]| {
            let mut liners = whole.liners.clone();
            for (liner, new) in liners.iter_mut().zip(choice) {
                if let Some(new) = new {
                    *liner = vec![stock[new]];
                }
            }
            Whole { opening: whole.opening.clone(), widths: whole.widths.clone(), liners }
        };
        let key = |choice: [Option<usize>; 2]| {
            let fitted = fitted(choice);
            let off = |at| (fitted.liner(0, at) - fitted.liner(1, at)).abs();
            let uneven = (0..fitted.heights()).map(off).max().unwrap();
            (choice.iter().flatten().count(), uneven)
        };
        let each: Vec<Option<usize>> =
            std::iter::once(None).chain((0..stock.len()).map(Some)).collect();
        let does = each
            .iter()
            .flat_map(|one| each.iter().map(|other| [*one, *other]))
            .filter(|choice| *choice != [None, None])
            .filter(|choice| fitted(*choice).word(least, most) == Word::Free);
        let best = does.map(key).min();
        let found = whole.measured().from_stock(&exact(&stock), limits(least, most), 0.95);
        assert_eq!(found.map(|found| key(found.liners)), best);
        assert!(found.is_none_or(|found| found.verdict.word == Word::Free));
        match best {
            Some((1, _)) => ones += 1,
            Some(_) => pairs += 1,
            None => nothing += 1,
        }
    }
    assert!(ones > 10 && pairs > 10 && nothing > 10, "{ones} {pairs} {nothing}");
}

#[test]
fn what_makes_no_guides_is_named() {
    let (o, b) = (exact(&[544, 540, 544]), exact(&[500]));
    let none = || [vec![], vec![]];
    let count = |part, count| Err(GuidesError::Count { part, count });
    assert_eq!(Guides::new(vec![], b.clone(), none()), count(Part::Opening, 0));
    assert_eq!(Guides::new(o.clone(), vec![], none()), count(Part::Box, 0));
    assert_eq!(Guides::new(o.clone(), exact(&[500; 4]), none()), count(Part::Box, 4));
    let two = [exact(&[16, 16]), vec![]];
    let differ = GuidesError::HeightsDiffer { part: Part::Liner(0), count: 2, other: 3 };
    assert_eq!(Guides::new(o.clone(), b, two), Err(differ));
    let size = Guides::new(o, exact(&[0]), none());
    assert!(matches!(size, Err(GuidesError::Size { part: Part::Box, .. })), "{size:?}");
}

/// Boxes whose true least or greatest clearance stands on a limit, every size read to the nearest mark by
/// a gauge that may be off: each wrong word at most as often as the level allows, and one time in a hundred
/// more, since marks are coarse.
#[test]
fn a_word_is_wrong_no_more_often_than_the_level_allows() {
    let mut chance = Rand64::new(20);
    let mut between = |least: f64, most: f64| least + (most - least) * chance.rand_float();
    let trials = 20_000;
    for (graduation, error) in [(1.0 / 64.0, 0.005), (1.0 / 32.0, 0.02), (1.0 / 16.0, 0.03)] {
        for heights in 1..=3 {
            for with_liners in [false, true] {
                let u = libm::hypot(graduation / 2.0, error) / 3f64.sqrt();
                let (least, most) = (3.0 * graduation, 30.0 * graduation);
                let given =
                    Limits::new(Some(Length::new::<inch>(least)), Some(Length::new::<inch>(most)))
                        .unwrap();
                for on in [least, most, 0.0] {
                    let is = |limit: f64| on.total_cmp(&limit).is_eq();
                    let (mut free, mut beyond) = (0, 0);
                    for _ in 0..trials {
                        let liners = [0, 1].map(|_| between(0.2, 0.3));
                        let taken = if with_liners { liners[0] + liners[1] } else { 0.0 };
                        let width = between(7.0, 8.0);
                        // At every height on the limit: the worst for a word that any height can give.
                        let mut read = |size: f64| {
                            let seen = size + between(-error, error);
                            let mark = (seen / graduation).round() * graduation;
                            let inches = Length::new::<inch>;
                            let marks = inches(graduation / 2.0);
                            Size { value: inches(mark), doubt: inches(u), marks }
                        };
                        let opening: Vec<_> =
                            (0..heights).map(|_| read(width + taken + on)).collect();
                        let sides = liners
                            .map(|liner| if with_liners { vec![read(liner)] } else { vec![] });
                        let guides = Guides::new(opening, vec![read(width)], sides).unwrap();
                        let word = guides.judge(Some(given), 0.95).word;
                        free += usize::from(word == Word::Free);
                        beyond += usize::from(match word {
                            Word::Tight => is(least),
                            Word::Loose => is(most),
                            Word::Seized => is(0.0),
                            _ => false,
                        });
                    }
                    let at = format!("1/{} in, {heights} heights, on {on}", 1.0 / graduation);
                    assert!(free * 100 <= trials * 6, "{at}: free {free} of {trials}");
                    assert!(beyond * 100 <= trials * 6, "{at}: beyond {beyond} of {trials}");
                }
            }
        }
    }
}
