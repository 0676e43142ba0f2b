//! What is refused and in what words, and frames whose answer is known by hand or is no single one.

use super::beams::{Axle, Beam, BeamError, Bearing, Seat};
use super::track::{Track, TrackError};
use super::*;
use crate::nest::{Law, Member};
use crate::propagation::RateDoubt;
use crate::quantity::unit::{millimeter, newton, newton_per_millimeter};
use approx::assert_relative_eq;

fn mm(x: f64) -> Length {
    Length::new::<millimeter>(x)
}

fn rate(x: f64) -> SpringRate {
    SpringRate::new::<newton_per_millimeter>(x)
}

fn nest(free: f64, of: f64, solid: Option<f64>) -> Nest {
    let law = Law::linear(rate(of)).unwrap();
    Nest::new(vec![Member { free: mm(free), law, solid: solid.map(mm), raise: mm(0.0) }]).unwrap()
}

fn place(along: f64, across: f64) -> Place {
    Place { along: mm(along), across: mm(across) }
}

/// Invented: 300 N/mm, 350 mm free, 200 mm solid.
fn at(along: f64, across: f64) -> Support {
    Support {
        place: place(along, across),
        nest: nest(350.0, 300.0, Some(200.0)),
        stop: None,
        shim: mm(0.0),
        ground: mm(0.0),
    }
}

fn corners() -> Vec<Support> {
    vec![at(900.0, 500.0), at(900.0, -500.0), at(-900.0, 500.0), at(-900.0, -500.0)]
}

fn weight(load: f64, along: f64, across: f64) -> Weight {
    Weight { load: Force::new::<newton>(load), centre: place(along, across) }
}

fn changed(change: impl FnOnce(&mut Support)) -> Vec<Support> {
    let mut supports = corners();
    change(&mut supports[2]);
    supports
}

#[test]
fn supports_that_make_no_frame_are_refused() {
    for (supports, sentence) in [
        (
            vec![at(0.0, 0.0), at(1.0, 0.0)],
            "2 nests under the frame; a number of nests from 3 to 200 was expected: add or take away nests",
        ),
        (
            (0..201).map(|number| at(f64::from(number), f64::from(number % 2))).collect(),
            "201 nests under the frame; a number of nests from 3 to 200 was expected: add or take away nests",
        ),
        (
            changed(|support| support.place.across = mm(f64::NAN)),
            "nest 3: its position across is not a number; a length was expected: measure it again",
        ),
        (
            changed(|support| support.ground = mm(f64::INFINITY)),
            "nest 3: its ground is not a number; a length was expected: measure it again",
        ),
        (
            changed(|support| support.shim = mm(-3.0)),
            "nest 3 has a shim of −3 mm; zero or more was expected: give a dip as ground, not as a shim",
        ),
        (
            changed(|support| support.stop = Some(rate(0.0))),
            "nest 3 has a stop of 0 N/mm; a rate above zero was expected: leave it out where it is not known",
        ),
        (
            changed(|support| support.place = place(900.0, -500.0)),
            "nest 2 and nest 3 both stand at 900 mm along, −500 mm across; a place of its own for each was expected: measure one of them again, or make one nest of both",
        ),
        (
            vec![at(0.0, 0.1), at(500.0, 50.1), at(1500.0, 150.1)],
            "all 3 nests stand in one line, so that the frame tips; at least one nest beside that line was expected: see whether positions along and across were exchanged or left out",
        ),
    ] {
        assert_eq!(Frame::new(supports, None).unwrap_err().to_string(), sentence);
    }
    assert_eq!(
        Frame::new(corners(), Some(si(-1.0))).unwrap_err().to_string(),
        "a warp stiffness of −1 N·m³; zero or more was expected: leave it out for a rigid frame"
    );
}

#[test]
fn weights_that_do_not_rest_are_refused() {
    let frame = Frame::new(corners(), None).unwrap();
    for (weight, sentence) in [
        (
            weight(0.0, 0.0, 0.0),
            "a weight of 0 N; one above zero was expected: give what the nests carry together, without a sign",
        ),
        (
            weight(-5.0, 0.0, 0.0),
            "a weight of −5 N; one above zero was expected: give what the nests carry together, without a sign",
        ),
        (
            weight(40_000.0, f64::NAN, 0.0),
            "the centre of weight is not a number; a place along and across was expected: measure it again",
        ),
        (
            weight(40_000.0, 900.0, 0.0),
            "the weight acts at 900 mm along, 0 mm across, on or beyond the line between nest 1 and nest 2, so that the frame tips; a place within the nests was expected: measure it again, or see whether a nest is missing",
        ),
        (
            weight(40_000.0, -2000.0, 1500.0),
            "the weight acts at −2\u{202f}000 mm along, 1\u{202f}500 mm across, on or beyond the line between nest 1 and nest 4, so that the frame tips; a place within the nests was expected: measure it again, or see whether a nest is missing",
        ),
        (
            weight(9e6, 0.0, 0.0),
            "nest 1 would carry 2\u{202f}250\u{202f}000 N at a height of −167.5 mm; a height above zero was expected: see whether the weight is right, and give the solid heights of its coils",
        ),
    ] {
        assert_eq!(frame.settle(weight).unwrap_err().to_string(), sentence);
    }
    // A nest on which the weight stands leaves the others empty.
    assert!(matches!(frame.settle(weight(1.0, 900.0, 500.0)), Err(FrameError::Tips { .. })));

    let unstopped = changed(|support| support.nest = nest(350.0, 300.0, None));
    let frame = Frame::new(unstopped, None).unwrap();
    let crushed = frame.settle(weight(440_000.0, -300.0, 200.0));
    assert!(matches!(crushed, Err(FrameError::Crushed { support: Nth(3), .. })), "{crushed:?}");
}

/// 90 kN each on 45 kN at solid: 45 000/6000 mm past it.
#[test]
fn past_solid_a_nest_is_twenty_times_as_stiff() {
    let settled = Frame::new(corners(), None).unwrap().settle(weight(360_000.0, 0.0, 0.0)).unwrap();
    for standing in settled.supports {
        assert_eq!(standing.contact, Contact::Bottomed);
        assert_relative_eq!(standing.height.value, 0.192_5, max_relative = 1e-12);
    }
}

/// Two corners 30 mm low hang loose, and the frame rocks on the other two.
#[test]
fn a_frame_that_rocks_has_loads_all_the_same() {
    let mut supports = corners();
    for at in [1, 2] {
        supports[at].ground = mm(-300.0);
    }
    let settled = Frame::new(supports, None).unwrap().settle(weight(10_000.0, 0.0, 0.0)).unwrap();
    assert!(settled.rocks);
    let contacts: Vec<Contact> = settled.supports.iter().map(|at| at.contact).collect();
    assert_eq!(contacts, [Contact::Carrying, Contact::Loose, Contact::Loose, Contact::Carrying]);
    for (standing, share) in settled.supports.iter().zip([2.0, 0.0, 0.0, 2.0]) {
        assert_relative_eq!(standing.share, share, epsilon = 1e-12);
    }
    assert!(!Frame::new(corners(), None).unwrap().settle(weight(1e4, 0.0, 0.0)).unwrap().rocks);
}

/// Three nests have one answer by the lever, whatever their heights.
#[test]
fn three_nests_carry_by_the_lever() {
    let mut supports = vec![at(0.0, 0.0), at(1000.0, 0.0), at(0.0, 2000.0)];
    supports[1].shim = mm(25.0);
    supports[2].nest = nest(300.0, 900.0, None);
    let settled =
        Frame::new(supports, None).unwrap().settle(weight(10_000.0, 300.0, 500.0)).unwrap();
    for (standing, load) in settled.supports.iter().zip([4500.0, 3000.0, 2500.0]) {
        assert_relative_eq!(standing.load.value, load, max_relative = 1e-12);
    }
    assert_eq!(settled.diagonal, None);
}

/// A frame that warps freely gives each diagonal of four corners the same load, however high one is;
/// one that resists gives way by so much less as it is stiffer.
#[test]
fn a_slack_frame_does_not_feel_a_twist() {
    let mut supports = corners();
    supports[0].shim = mm(10.0);
    let settled = |warp| {
        Frame::new(supports.clone(), warp).unwrap().settle(weight(40_000.0, 0.0, 0.0)).unwrap()
    };
    let slack = settled(Some(si(0.0)));
    for standing in &slack.supports {
        assert_relative_eq!(standing.load.value, 10_000.0, max_relative = 1e-12);
    }
    assert_relative_eq!(slack.warp.value, 0.002_5, max_relative = 1e-9);
    // Springs resist warping by 4 · 300 000 · (0.9 · 0.5)² = 243 000 N·m³; as much again halves it.
    let even = settled(Some(si(243_000.0)));
    assert_relative_eq!(even.supports[0].load.value, 10_375.0, max_relative = 1e-12);
    assert_relative_eq!(settled(None).supports[0].load.value, 10_750.0, max_relative = 1e-12);

    // Nor do four whose loads would have to pull: without the fourth three are left, and a moment.
    let aside = Frame::new(corners(), Some(si(0.0))).unwrap();
    let slack = aside.settle(weight(40_000.0, 600.0, 350.0));
    assert!(matches!(slack, Err(FrameError::Slack { .. })), "{slack:?}");

    // Three nests hold no frame that warps freely unless the weight does not twist it.
    supports.truncate(3);
    let free = Frame::new(supports, Some(si(0.0))).unwrap();
    let slack = free.settle(weight(40_000.0, 200.0, 100.0));
    assert!(matches!(slack, Err(FrameError::Slack { .. })), "{slack:?}");
}

#[test]
fn doubts_that_fit_no_nest_are_refused() {
    let frame = Frame::new(corners(), None).unwrap();
    let on = weight(40_000.0, 0.0, 0.0);
    let doubted = |doubts: &[Vec<CoilDoubt>]| frame.doubted(on, doubts).unwrap_err().to_string();
    let exact = CoilDoubt::default();
    assert_eq!(
        doubted(&vec![vec![exact]; 3]),
        "doubts of 3 nests; a list for all 4 was expected: give each nest its list"
    );
    assert_eq!(
        doubted(&vec![vec![exact; 2]; 4]),
        "nest 1: doubts of 2 coils; a doubt of all 1 was expected: give each coil its own, 0 where it is exact"
    );
    let percent = CoilDoubt { rate: RateDoubt { own: -3.0, ..RateDoubt::default() }, ..exact };
    assert_eq!(
        doubted(&[vec![exact], vec![percent], vec![exact], vec![exact]]),
        "nest 2, coil 1: a doubt of its rate of −3; zero or more was expected: give one standard uncertainty, of a rate as a part of it"
    );
    let negative = CoilDoubt { tape: mm(-1.0), ..exact };
    assert_eq!(
        doubted(&vec![vec![negative]; 4]),
        "nest 1, coil 1: a doubt of its free height by the tape of −1 mm; zero or more was expected: give one standard uncertainty, without a sign"
    );
    assert_eq!(
        frame.sampled(on, &vec![vec![exact]; 4], 1, 0).unwrap_err().to_string(),
        "1 samples; a number of two or more was expected: a thousand give a doubt to 2 %"
    );
}

#[test]
fn beams_and_axles_that_carry_nothing_are_refused() {
    let seat = |support, at| Seat { support, at: mm(at) };
    let beam = |boxes: [f64; 2], seats: &[Seat]| {
        Beam::new(boxes.map(mm), seats.to_vec()).unwrap_err().to_string()
    };
    assert_eq!(
        beam([0.0, 2000.0], &[]),
        "a beam without a nest; one or more was expected: give where each stands on the beam"
    );
    assert_eq!(
        beam([2000.0, 2000.0], &[seat(0, 500.0)]),
        "the boxes of a beam at 2\u{202f}000 mm and 2\u{202f}000 mm; the first before the second was expected: measure both from one end"
    );
    assert_eq!(
        beam([0.0, 2000.0], &[seat(0, 500.0), seat(1, 2100.0)]),
        "nest 2 stands at 2\u{202f}100 mm of the beam; a place between its boxes at 0 mm and 2\u{202f}000 mm was expected: measure it from the same end as the boxes"
    );
    assert_eq!(
        beam([0.0, 2000.0], &[seat(1, 500.0), seat(1, 1500.0)]),
        "nest 2 is on the beam twice; once was expected: take one away"
    );
    assert!(matches!(
        Beam::new([mm(f64::NAN), mm(1.0)], vec![seat(0, 0.5)]),
        Err(BeamError::Boxes { .. })
    ));
    assert_eq!(
        Axle::new(mm(1800.0), mm(0.0)).unwrap_err().to_string(),
        "the wheels of an axle are 0 mm apart; a distance above zero was expected: measure from middle to middle"
    );
}

#[test]
fn track_that_no_wheel_is_on_is_refused() {
    let frame = Frame::new(corners(), None).unwrap();
    let on = weight(40_000.0, 0.0, 0.0);
    let stray = Track::new(&frame, on, vec![Bearing::under(0), Bearing::under(4)]);
    assert_eq!(
        stray.unwrap_err().to_string(),
        "wheel 2 carries nest 5; a nest from 1 to 4 was expected: number the nests as the frame has them"
    );
    let track = Track::new(&frame, on, (0..4).map(Bearing::under).collect()).unwrap();
    assert_eq!(
        track.raised(4, mm(-10.0)).unwrap_err().to_string(),
        "wheel 5 was asked for; one from 1 to 4 was expected: choose one of these"
    );
    assert_eq!(
        track.stuck(4).unwrap_err().to_string(),
        "nest 5 is to be stuck; a nest from 1 to 4 was expected: choose one of these"
    );
    assert!(matches!(track.raised(0, mm(5000.0)), Err(TrackError::Rise(_))));
    assert!(matches!(track.least_dip(9), Err(TrackError::NoSuchWheel { wheel: 10, count: 4 })));
}

/// Three nests give way to any dip without a change of load, so that no wheel ever lifts; a stuck one
/// changes nothing until the track does, and then twists the frame more.
#[test]
fn what_a_dip_does_by_hand() {
    let on = weight(40_000.0, 0.0, 0.0);
    let three =
        Frame::new(vec![at(900.0, 500.0), at(900.0, -500.0), at(-900.0, 0.0)], None).unwrap();
    let track = Track::new(&three, on, (0..3).map(Bearing::under).collect()).unwrap();
    assert_eq!(track.least_dip(0).unwrap(), None);

    let four = Frame::new(corners(), None).unwrap();
    let track = Track::new(&four, on, (0..4).map(Bearing::under).collect()).unwrap();
    let stuck = track.stuck(3).unwrap();
    for (at, of) in stuck.raised(0, mm(0.0)).unwrap().iter().zip(&track.at_rest().supports) {
        assert_relative_eq!(at.load.value, of.load.value, max_relative = 1e-12);
    }
    // In twist springs act one after the other: 1/Σ(1/k), k of the stuck one 6000 N/mm.
    let twist = 1.0 / (3.0 / 300.0 + 1.0 / 6000.0);
    let lost = stuck.raised(0, mm(-40.0)).unwrap();
    for (wheel, sign) in lost.iter().zip([-1.0, 1.0, 1.0, -1.0]) {
        assert_relative_eq!(wheel.load.value, 10_000.0 + sign * 40.0 * twist, max_relative = 1e-12);
    }
    let lift = stuck.least_dip(0).unwrap().unwrap();
    assert_relative_eq!(lift.dip.get::<millimeter>(), 10_000.0 / twist, max_relative = 1e-12);
}
