//! Random springs: each a true replacement for itself, and no closer limit that turns a refusal into a
//! yes.

use super::springs::{gpa, mm, mpa, newtons};
use coilnest::coil::DiameterKind;
use coilnest::coil::ends::Ends;
use coilnest::coil::{Coiling, Hand};
use coilnest::drawing::{Allowable, Drawing, Figure, Given};
use coilnest::frame::{Place, Support, Weight};
use coilnest::material::Against;
use coilnest::nest::{Law, Member, Nest};
use coilnest::quantity::{Length, si};
use coilnest::replacement::Requirement as R;
use coilnest::replacement::{
    AllowedRange, Around, Asked, Case, Compliance, Judgement, Line, Missing, Offered, Overall,
    Seated, UnderFrame, Whose,
};
use proptest::prelude::*;

/// A coil of some bar and index in some nest, by its drawing, its book figures or both.
#[derive(Clone, Debug)]
struct Sketch {
    bar: f64,
    index: f64,
    across: DiameterKind,
    active: f64,
    ends: Ends,
    free_over_solid: f64,
    work: f64,
    hand: bool,
    coiling: Option<Coiling>,
    allowable: Option<f64>,
    books: u8,
    gone: u8,
    neighbours: (bool, bool),
}

fn any_sketch() -> impl Strategy<Value = Sketch> {
    let ends = prop::sample::select(Ends::ALL.to_vec());
    let across =
        prop::sample::select(vec![DiameterKind::Mean, DiameterKind::Outside, DiameterKind::Inside]);
    let coiling = prop::sample::select(vec![None, Some(Coiling::Cold), Some(Coiling::Hot)]);
    let shape = (1.0..45.0, 3.5..12.0, across, 2.0..15.0, ends, 1.3..3.0);
    let rest = (
        0.05..0.95,
        any::<bool>(),
        coiling,
        prop::option::of(300.0..1200.0),
        0_u8..4,
        prop::option::weighted(0.5, 0_u8..10),
        any::<(bool, bool)>(),
    );
    (shape, rest).prop_map(|(shape, rest)| {
        let (bar, index, across, active, ends, free_over_solid) = shape;
        let (work, hand, coiling, allowable, books, gone, neighbours) = rest;
        Sketch {
            bar,
            index,
            across,
            active,
            ends,
            free_over_solid,
            work,
            hand,
            coiling,
            allowable,
            books,
            gone: gone.unwrap_or(u8::MAX),
            neighbours,
        }
    })
}

impl Sketch {
    fn solid(&self) -> f64 {
        let turns = self.active + self.ends.dead_turns();
        self.bar * (turns + coilnest::coil::solid::bars_over_turns(self.ends))
    }

    fn free(&self) -> f64 {
        self.solid() * self.free_over_solid
    }

    fn hand(&self) -> Hand {
        if self.hand { Hand::Left } else { Hand::Right }
    }

    /// Some figure may be gone, and the rate and the solid height be the book's. `part` is the half-width
    /// of each tolerance as a part of the figure.
    fn particulars(&self, part: f64) -> Drawing {
        let around = |x: f64| Given::around(mm(x), mm(part * x), mm(part * x)).unwrap();
        let mean = self.bar * self.index;
        let diameter = match self.across {
            DiameterKind::Mean => mean,
            DiameterKind::Outside => mean + self.bar,
            DiameterKind::Inside => mean - self.bar,
        };
        let turns = self.active + self.ends.dead_turns();
        let kept = |figure| self.gone != figure;
        let allowable = |stress| Allowable { stress: mpa(stress), against: Against::Curvature };
        let rate = 78_500.0 * self.bar / (8.0 * self.index.powi(3) * self.active) * 1.01;
        Drawing {
            bar: kept(0).then(|| around(self.bar)),
            diameter: kept(1).then(|| (self.across, around(diameter))),
            total_turns: kept(2).then(|| Given::around(turns, part * turns, part * turns).unwrap()),
            ends: kept(3).then_some(self.ends),
            hand: kept(4).then(|| self.hand()),
            coiling: self.coiling,
            free: kept(5).then(|| around(self.free())),
            solid: (self.books & 1 > 0).then(|| Given::exact(mm(self.solid() * 1.01))),
            rate: (self.books & 2 > 0).then(|| Given::exact(si(rate * 1e3))),
            shear_modulus: kept(6).then(|| Given::exact(gpa(78.5))),
            youngs_modulus: kept(7).then(|| gpa(206.0)),
            allowable: self.allowable.map(allowable),
            tensile: kept(8).then(|| mpa(1500.0)),
            ..Drawing::default()
        }
    }

    /// Between solid, a little higher by the book, and free.
    fn working(&self) -> Length {
        let solid = self.solid() * 1.02;
        mm(solid + (self.free() - solid) * self.work)
    }

    fn case(&self, part: f64) -> Case {
        let other = if self.hand { Hand::Right } else { Hand::Left };
        let neighbour = |scale: f64| {
            let sketch = Self {
                bar: self.bar * scale,
                gone: u8::MAX,
                across: DiameterKind::Mean,
                ..self.clone()
            };
            let spring = Drawing { hand: Some(other), ..sketch.particulars(0.0) };
            Seated { spring, raise: mm(0.0) }
        };
        // A coil and one like it of scale s clear each other while s (C + 1) < C − 1, and some for growth.
        let scale = 0.8 * (self.index - 1.0) / (self.index + 1.0);
        let seats = |there: bool, scale| if there { vec![neighbour(scale)] } else { Vec::new() };
        let nest = Around {
            outer: seats(self.neighbours.0, 1.0 / scale),
            inner: seats(self.neighbours.1, scale),
            raise: mm(0.0),
            load: None,
        };
        let rate = 78_500.0 * self.bar / (8.0 * self.index.powi(3) * self.active);
        let pressed = newtons(rate * (self.free() - self.solid()));
        let asked = Asked {
            working: Some(self.working()),
            cycle: Some((0.2 * pressed, 0.6 * pressed)),
            ..Asked::default()
        };
        let original = self.particulars(0.0);
        Case { nest: Some(nest), ..Case::new(original, self.particulars(part), asked) }
    }
}

fn told(line: &Line) -> bool {
    !matches!(line.verdict, Compliance::CannotTell { .. })
}

/// From not met to met throughout; none where it cannot be told.
fn rank(verdict: &Compliance) -> Option<u8> {
    match verdict {
        Compliance::NotMet => Some(0),
        Compliance::MetAsDrawn { .. } => Some(1),
        Compliance::MetAtNominal => Some(2),
        Compliance::MetThroughout => Some(3),
        Compliance::CannotTell { .. } => None,
    }
}

/// Slack of every limit, from tight to loose.
type Slack = [f64; 14];

/// Everything asked, near what the nominal candidate offers, some of it met and some not.
fn all_asked(case: &Case, slack: Slack) -> Asked {
    let judged = case.judge().unwrap();
    let offered = |requirement| match judged.line(requirement).and_then(|line| line.offered) {
        Some(Offered::Range(range)) => range.nominal().si(),
        _ => 1.0,
    };
    let length = |value| si(value);
    let band = |requirement, slack: f64| {
        let si = offered(requirement);
        // The middle is off by up to one part in fifty.
        let si = si * (0.98 + 0.04 * slack);
        (si * (1.0 - 0.04 * slack), si * (1.0 + 0.04 * slack))
    };
    let lengths = |requirement, slack| {
        let (least, most) = band(requirement, slack);
        Some(AllowedRange::between(length(least), length(most)))
    };
    let stress = |requirement, slack: f64| {
        let stress = si(offered(requirement) * slack);
        Some(Allowable { stress, against: Against::Curvature })
    };
    let near = |slack: f64| 0.97 + 0.06 * slack;
    let [a, b, c, d, e, f, g, h, i, j, k, l, m, n] = slack;
    let rate = |value| si(value);
    let load = |value| si(value);
    let (rates, loads) = (band(R::Rate, a), band(R::Load, b));
    Asked {
        pocket: Some(length(offered(R::Pocket) * near(c))),
        post: Some(length(offered(R::Post) * near(d))),
        gap: Some(length(offered(R::OuterGap).min(offered(R::InnerGap)).max(0.0) * near(e))),
        free: lengths(R::FreeHeight, f),
        rate: Some(AllowedRange::between(rate(rates.0), rate(rates.1))),
        load: Some(AllowedRange::between(load(loads.0), load(loads.1))),
        solid: Some(length(offered(R::SolidHeight) * near(g))),
        stress_at_work: stress(R::StressAtWork, near(h)),
        stress_at_solid: stress(R::StressAtSolid, near(i)),
        reserve: Some(length(offered(R::Reserve).max(1e-6) * near(j))),
        safety: Some(offered(R::Fatigue) * near(k)),
        nest_height: lengths(R::NestHeight, l),
        play: length(1e-3 * m),
        deviation: Some(0.05 * n),
        ..case.asked.clone()
    }
}

/// The same with one limit drawn closer by a part of itself.
fn tighter(asked: &Asked, which: usize, part: f64) -> Asked {
    fn closer<Q: Copy + core::ops::Mul<f64, Output = Q>>(
        limits: Option<AllowedRange<Q>>,
        part: f64,
    ) -> Option<AllowedRange<Q>> {
        limits.map(|limits| AllowedRange {
            least: limits.least.map(|least| least * (1.0 + part)),
            most: limits.most.map(|most| most * (1.0 - part)),
        })
    }
    let less = 1.0 - part;
    let more = 1.0 + part;
    let mut asked = asked.clone();
    let lower = |allowable: Allowable| Allowable { stress: allowable.stress * less, ..allowable };
    match which {
        0 => asked.pocket = asked.pocket.map(|pocket| pocket * less),
        1 => asked.post = asked.post.map(|post| post * more),
        2 => asked.gap = asked.gap.map(|gap| gap * more),
        3 => asked.free = closer(asked.free, part),
        4 => asked.rate = closer(asked.rate, part),
        5 => asked.load = closer(asked.load, part),
        6 => asked.solid = asked.solid.map(|solid| solid * less),
        7 => asked.stress_at_work = asked.stress_at_work.map(lower),
        8 => asked.stress_at_solid = asked.stress_at_solid.map(lower),
        9 => asked.reserve = asked.reserve.map(|reserve| reserve * more),
        10 => asked.safety = asked.safety.map(|safety| safety * more),
        11 => asked.nest_height = closer(asked.nest_height, part),
        12 => asked.play *= 1.0 + 10.0 * part,
        _ => asked.deviation = asked.deviation.map(|deviation| deviation * less),
    }
    asked
}

/// Four nests of the original under a frame, one of which gets the candidate.
fn under_frame(sketch: &Sketch) -> UnderFrame {
    let rate = 78_500.0 * sketch.bar / (8.0 * sketch.index.powi(3) * sketch.active);
    let law = Law::linear(si(rate * 1e3)).unwrap();
    let member = Member { free: mm(sketch.free()), law, solid: None, raise: mm(0.0) };
    let support = |along, across| Support {
        place: Place { along: mm(along), across: mm(across) },
        nest: Nest::new(vec![member.clone()]).unwrap(),
        stop: None,
        shim: mm(0.0),
        ground: mm(0.0),
    };
    let supports = [(900.0, 500.0), (900.0, -500.0), (-900.0, 500.0), (-900.0, -500.0)];
    let load = newtons(4.0 * rate * (sketch.free() - sketch.solid()) * 0.5);
    UnderFrame {
        supports: supports.map(|(along, across)| support(along, across)).to_vec(),
        warp: None,
        replaced: vec![(2, 0)],
        weight: Weight { load, centre: Place::default() },
    }
}

proptest! {
    #[test]
    fn a_spring_is_a_true_replacement_for_itself(sketch in any_sketch()) {
        let judged = sketch.case(0.0).judge().unwrap();
        let at = |is: fn(&Compliance) -> bool| judged.lines.iter().any(|line| is(&line.verdict));
        for line in judged.lines.iter().filter(|line| told(line)) {
            // Of a steel that nobody names it is as good as the original if it is no weaker.
            let steels = [Whose::Original, Whose::Candidate];
            let unstated = steels.map(|whose| Missing { whose, figure: Figure::Steel }).to_vec();
            let stressed = matches!(line.requirement, R::StressAtWork | R::StressAtSolid);
            let expected = if stressed && sketch.allowable.is_none() {
                Compliance::MetAsDrawn { unstated }
            } else {
                Compliance::MetThroughout
            };
            prop_assert_eq!(&line.verdict, &expected, "{:?}", line);
        }
        let expected = if !judged.lines.iter().all(told) {
            Overall::CannotTell
        } else if at(|verdict| matches!(verdict, Compliance::MetAsDrawn { .. })) {
            Overall::AsDrawn
        } else {
            Overall::True
        };
        prop_assert_eq!(judged.overall, expected);
        if let Some(Ok(before)) = judged.nest.as_ref().map(|nest| &nest.before) {
            prop_assert_eq!(Some(before), judged.nest.as_ref().and_then(|nest| nest.after.as_ref().ok()));
        }
    }

    #[test]
    fn with_tolerances_it_is_one_at_nominal_at_least(sketch in any_sketch(), part in 1e-4..5e-3) {
        let judged = sketch.case(part).judge().unwrap();
        for line in judged.lines.iter().filter(|line| told(line)) {
            prop_assert!(rank(&line.verdict) >= Some(1), "{:?}", line);
        }
        prop_assert_ne!(judged.overall, Overall::No);
    }

}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(384))]

    #[test]
    fn no_closer_limit_turns_a_refusal_into_a_yes(
        sketch in any_sketch(),
        part in 0.0..5e-3,
        slack in prop::array::uniform14(0.0..1.0),
        step in 1e-4..0.1,
    ) {
        let sketch = Sketch { gone: u8::MAX, neighbours: (true, true), ..sketch };
        let mut case = sketch.case(part);
        if let Some(nest) = &mut case.nest {
            nest.load = Some(newtons(100.0));
        }
        case.asked.nest_height = Some(AllowedRange::at_least(mm(1.0)));
        case.asked = all_asked(&case, slack);
        let framed = Case { frame: Some(under_frame(&sketch)), ..case.clone() };
        let (Ok(alone), Ok(beneath)) = (case.judge(), framed.judge()) else { return Ok(()) };
        for which in 0..14 {
            // A frame is slow to settle at every corner, and only the last limit is about it.
            let (case, before) = if which == 13 { (&framed, &beneath) } else { (&case, &alone) };
            let closer = Case { asked: tighter(&case.asked, which, step), ..case.clone() };
            let Ok(after) = closer.judge() else { continue };
            prop_assert_eq!(before.lines.len(), after.lines.len());
            for (one, other) in before.lines.iter().zip(&after.lines) {
                prop_assert_eq!(one.requirement, other.requirement);
                prop_assert!(
                    rank(&other.verdict) <= rank(&one.verdict),
                    "{} {:?} {:?}", which, one, other
                );
            }
        }
    }
}

/// The closing of each limit does turn some yes into a refusal, of the line that it belongs to: the
/// property above would hold of lines that do not look at their limits.
#[test]
fn every_limit_that_is_closed_far_enough_is_missed() {
    let sketch = Sketch {
        bar: 8.0,
        index: 7.5,
        across: DiameterKind::Outside,
        active: 7.0,
        ends: Ends::ClosedGround,
        free_over_solid: 2.2,
        work: 0.5,
        hand: true,
        coiling: Some(Coiling::Cold),
        allowable: Some(900.0),
        books: 0,
        gone: u8::MAX,
        neighbours: (true, true),
    };
    let mut case = sketch.case(1e-4);
    // A little longer than the original, so that the loads under the frame do change.
    case.candidate.free = Some(Given::exact(mm(1.005 * sketch.free())));
    case.frame = Some(under_frame(&sketch));
    if let Some(nest) = &mut case.nest {
        nest.load = Some(newtons(100.0));
    }
    case.asked.nest_height = Some(AllowedRange::at_least(mm(1.0)));
    case.asked.deviation = Some(1.0);
    // Half-way: the middle of every band is the nominal figure, and the others are met by half of 3 %.
    let mut slack = [0.5; 14];
    for open in [2, 6, 7, 8] {
        slack[open] = 1.0;
    }
    for open in [3, 4, 9, 10] {
        slack[open] = 0.0;
    }
    case.asked = all_asked(&case, slack);
    let before = case.judge().unwrap();
    let missed = |judged: &Judgement| {
        let lines = judged.lines.iter().filter(|line| rank(&line.verdict) == Some(0));
        lines.map(|line| line.requirement).collect::<Vec<_>>()
    };
    assert_eq!(missed(&before), []);
    let closed: [&[R]; 14] = [
        &[R::Pocket],
        &[R::Post],
        &[R::OuterGap, R::InnerGap],
        &[R::FreeHeight],
        &[R::Rate],
        &[R::Load],
        &[R::SolidHeight],
        &[R::StressAtWork],
        &[R::StressAtSolid],
        &[R::Reserve],
        &[R::Fatigue],
        &[R::NestHeight],
        &[R::Pocket, R::Post],
        &[R::Deviation],
    ];
    for (which, requirements) in closed.into_iter().enumerate() {
        let (mut part, mut found) = (1e-2, Vec::new());
        while part < 1.0 && found.is_empty() {
            let closer = Case { asked: tighter(&case.asked, which, part), ..case.clone() };
            found = missed(&closer.judge().unwrap());
            // A band about the nominal figure leaves it by one end a little before its ends cross.
            part *= 1.01;
        }
        assert!(!found.is_empty(), "{which}");
        assert!(found.iter().all(|of| requirements.contains(of)), "{which}: {found:?}");
    }
}
