//! What cannot be asked together, and springs that are none.

use super::springs::{HalfWidths, Spring, middle, mm, newtons, per_mm, setting};
use coilnest::coil::DiameterKind;
use coilnest::coil::Hand;
use coilnest::drawing::Drawing;
use coilnest::frame::{FrameError, Place, Support, Weight};
use coilnest::nest::{Law, Member, Nest, NestError};
use coilnest::quantity::si;
use coilnest::replacement::{AllowedRange, Around, Asked, Case, ReplacementError, UnderFrame};

fn asking(asked: Asked) -> String {
    let spring = middle(DiameterKind::Outside).exact();
    let judged = Case::new(spring.clone(), spring, asked).judge();
    judged.unwrap_err().to_string()
}

#[test]
fn what_contradicts_itself_names_the_pair() {
    let none = Asked::default;
    let working = Some(mm(125.0));
    let metres = |value| Some(si(value));
    for (asked, sentence) in [
        (
            Asked { pocket: metres(f64::NAN), ..none() },
            "a pocket of – mm; a number above zero was expected: measure it again, or leave it out",
        ),
        (
            Asked { pocket: Some(mm(-70.0)), ..none() },
            "a pocket of −70 mm; a number above zero was expected: measure it again, or leave it out",
        ),
        (
            Asked { safety: Some(0.0), ..none() },
            "a factor of safety of 0; a number above zero was expected: measure it again, or leave it out",
        ),
        (
            Asked { play: mm(-1.0), ..none() },
            "a play of −1 mm; zero or more was expected: give it without a sign, or leave it out",
        ),
        (
            Asked { rate: Some(AllowedRange::between(per_mm(28.0), per_mm(27.0))), ..none() },
            "a least rate of 28 N/mm, above the most of 27 N/mm; a least that is not above the most was expected: exchange the two",
        ),
        (
            Asked { load: Some(AllowedRange::between(newtons(900.0), newtons(800.0))), ..none() },
            "a least load of 900 N, above the most of 800 N; a least that is not above the most was expected: exchange the two",
        ),
        (
            Asked { post: Some(mm(70.0)), pocket: Some(mm(52.0)), play: mm(1.0), ..none() },
            "a post of 70 mm in a pocket of 52 mm, with 1 mm of play at each; a post that leaves room for a coil was expected: see whether the two were exchanged",
        ),
        (
            Asked { solid: Some(mm(130.0)), working, ..none() },
            "a solid height of up to 130 mm is asked for, and a working height of 125 mm; a solid height below the working height was expected: measure one of them again",
        ),
        (
            Asked { free: Some(AllowedRange::at_most(mm(120.0))), working, ..none() },
            "a free height of up to 120 mm is asked for, and a working height of 125 mm; a free height above the working height was expected: measure one of them again",
        ),
        (
            Asked { reserve: Some(mm(125.0)), working, ..none() },
            "a reserve of 125 mm is asked for, and a working height of 125 mm; a reserve less than that height was expected: measure one of them again",
        ),
        (
            Asked { cycle: Some((newtons(900.0), newtons(200.0))), ..none() },
            "loads from 900 N to 200 N; a lesser load of 0 or more and a greater one above it was expected: give the two between which the coil works",
        ),
    ] {
        assert_eq!(asking(asked), sentence);
    }
}

#[test]
fn a_hand_that_a_neighbour_has_is_refused() {
    let (spring, setting) = (middle(DiameterKind::Outside).exact(), setting());
    let asked = Asked { hand: Some(Hand::Left), ..Asked::default() };
    let nest = Around { inner: vec![setting.inner.seated()], ..Around::default() };
    let case = Case { nest: Some(nest), ..Case::new(spring.clone(), spring, asked) };
    assert_eq!(
        case.judge().unwrap_err().to_string(),
        "a coil wound to the left is asked for, and the coil within it is wound that way too; one of the opposite hand was expected: ask for the other hand"
    );
}

#[test]
fn what_is_no_spring_within_its_tolerances_is_refused() {
    let spring = middle(DiameterKind::Outside);
    let judge = |candidate: Drawing| {
        Case::new(spring.exact(), candidate, Asked::default()).judge().unwrap_err().to_string()
    };
    let none = HalfWidths::default();
    for (spring, half, sentence) in [
        (
            spring,
            HalfWidths { free: 160.0, ..none },
            "the free height of the candidate may be as little as 0 mm; a number above zero at the end of its tolerance too was expected: measure it again, or give a closer tolerance",
        ),
        (
            Spring { free: 80.0, ..spring },
            HalfWidths { free: 4.0, turns: 0.5, ..none },
            "the candidate may be solid at 76 mm, and free at 76 mm; a solid height below the free one was expected: measure the bar, the turns and the free height again",
        ),
        (
            Spring { turns: 2.75, ..spring },
            HalfWidths { turns: 0.5, ..none },
            "the candidate has no turns that deflect at the end of its tolerance; a count that leaves some to deflect throughout was expected: give a closer tolerance",
        ),
        (
            Spring { diameter: 17.0, ..spring },
            HalfWidths { bar: 0.5, ..none },
            "the candidate has no hole at the end of its tolerances; a hole throughout was expected: give closer tolerances, or measure the bar and the diameter again",
        ),
    ] {
        assert_eq!(judge(spring.within(half)), sentence);
    }
    let mut neighbour = setting().outer.seated();
    neighbour.raise = mm(f64::INFINITY);
    let nest = Around { outer: vec![neighbour], ..Around::default() };
    let case = Case::new(spring.exact(), spring.exact(), Asked::default());
    let refused = Case { nest: Some(nest), ..case }.judge();
    assert_eq!(refused, Err(ReplacementError::Nest(NestError::NotFinite { what: "raise" })));
}

#[test]
fn a_place_that_is_not_under_the_frame_is_refused() {
    let spring = middle(DiameterKind::Outside);
    let law = Law::linear(spring.rate()).unwrap();
    let member = Member { free: mm(160.0), law, solid: None, raise: mm(0.0) };
    let corner = |along, across| Support {
        place: Place { along: mm(along), across: mm(across) },
        nest: Nest::new(vec![member.clone()]).unwrap(),
        stop: None,
        shim: mm(0.0),
        ground: mm(0.0),
    };
    let supports = vec![corner(0.0, 0.0), corner(900.0, 0.0), corner(0.0, 500.0)];
    let weight =
        Weight { load: newtons(900.0), centre: Place { along: mm(300.0), across: mm(160.0) } };
    let under = |replaced, weight| {
        let frame =
            UnderFrame { supports: supports.clone(), warp: None, replaced: vec![replaced], weight };
        let case = Case::new(spring.exact(), spring.exact(), Asked::default());
        Case { frame: Some(frame), ..case }.judge()
    };
    assert!(under((2, 0), weight).is_ok());
    assert_eq!(
        under((2, 1), weight),
        Err(ReplacementError::Place { support: 3, place: 2, count: 1 })
    );
    assert_eq!(
        under((3, 0), weight).unwrap_err().to_string(),
        "nest 4, coil 1 is to be replaced; one of the 3 that are there was expected: count again from 1, the widest first"
    );
    let none = Weight { load: newtons(0.0), ..weight };
    assert_eq!(
        under((0, 0), none),
        Err(ReplacementError::Frame(FrameError::Weight { load: newtons(0.0) }))
    );
}
