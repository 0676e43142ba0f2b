//! The springs of these tests, invented, and their figures by the ordinary formulas of a coil.

use coilnest::coil::DiameterKind;
use coilnest::coil::buckling::{self, Seating};
use coilnest::coil::ends::{Ends, Turns};
use coilnest::coil::fatigue::{self, Criterion, Cycle, Strength, Surface};
use coilnest::coil::{Diameters, Hand, growth, rate, set, solid, stress};
use coilnest::drawing::{Allowable, Drawing, Given};
use coilnest::material::{Against, poisson};
use coilnest::nest::{Law, Member, Nest};
use coilnest::quantity::unit::{gigapascal, megapascal, millimeter, newton, newton_per_millimeter};
use coilnest::quantity::{Force, Length, Pressure, SpringRate};
use coilnest::replacement::{Requirement, Seated};

pub(crate) fn mm(x: f64) -> Length {
    Length::new::<millimeter>(x)
}

pub(crate) fn newtons(x: f64) -> Force {
    Force::new::<newton>(x)
}

pub(crate) fn per_mm(x: f64) -> SpringRate {
    SpringRate::new::<newton_per_millimeter>(x)
}

pub(crate) fn mpa(x: f64) -> Pressure {
    Pressure::new::<megapascal>(x)
}

pub(crate) fn gpa(x: f64) -> Pressure {
    Pressure::new::<gigapascal>(x)
}

/// A spring without any doubt, all of it known.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Spring {
    pub(crate) bar: f64,
    pub(crate) across: DiameterKind,
    pub(crate) diameter: f64,
    pub(crate) turns: f64,
    pub(crate) dead: f64,
    pub(crate) ends: Ends,
    pub(crate) shear: f64,
    pub(crate) free: f64,
    pub(crate) hand: Hand,
}

/// What the wire of these tests bears at rest.
pub(crate) fn allowable() -> Allowable {
    Allowable { stress: mpa(1000.0), against: Against::Curvature }
}

/// What it breaks at.
pub(crate) fn tensile() -> Pressure {
    mpa(1600.0)
}

/// Young's modulus of every spring.
pub(crate) fn youngs() -> Pressure {
    gpa(206.0)
}

/// Half-widths: millimetres, turns, dead turns and gigapascals.
#[derive(Clone, Copy, Debug, Default)]
pub(crate) struct HalfWidths {
    pub(crate) bar: f64,
    pub(crate) diameter: f64,
    pub(crate) turns: f64,
    pub(crate) dead: f64,
    pub(crate) shear: f64,
    pub(crate) free: f64,
}

impl Spring {
    /// Its particulars, all given.
    pub(crate) fn within(self, half: HalfWidths) -> Drawing {
        let length = |x, half| Given::around(mm(x), mm(half), mm(half)).unwrap();
        let number = |x, half| Given::around(x, half, half).unwrap();
        Drawing {
            bar: Some(length(self.bar, half.bar)),
            diameter: Some((self.across, length(self.diameter, half.diameter))),
            total_turns: Some(number(self.turns, half.turns)),
            dead_turns: Some(number(self.dead, half.dead)),
            ends: Some(self.ends),
            hand: Some(self.hand),
            free: Some(length(self.free, half.free)),
            shear_modulus: Some(
                Given::around(gpa(self.shear), gpa(half.shear), gpa(half.shear)).unwrap(),
            ),
            youngs_modulus: Some(youngs()),
            allowable: Some(allowable()),
            tensile: Some(tensile()),
            ..Drawing::default()
        }
    }

    pub(crate) fn exact(self) -> Drawing {
        self.within(HalfWidths::default())
    }

    /// Its drawing without a tolerance on its sizes.
    pub(crate) fn as_drawn(self) -> Drawing {
        Drawing {
            bar: Some(Given::as_drawn(mm(self.bar))),
            diameter: Some((self.across, Given::as_drawn(mm(self.diameter)))),
            total_turns: Some(Given::as_drawn(self.turns)),
            free: Some(Given::as_drawn(mm(self.free))),
            ..self.exact()
        }
    }

    pub(crate) fn seated(self) -> Seated {
        Seated { spring: self.exact(), raise: mm(0.0) }
    }

    pub(crate) fn coil(&self) -> Diameters {
        self.across.coil(mm(self.bar), mm(self.diameter)).unwrap()
    }

    pub(crate) fn turns(&self) -> Turns {
        Turns::new(self.turns, self.dead).unwrap()
    }

    pub(crate) fn rate(&self) -> SpringRate {
        rate::rate(gpa(self.shear), self.coil(), self.turns())
    }

    pub(crate) fn solid(&self) -> Length {
        solid::height(mm(self.bar), self.turns(), self.ends)
    }

    pub(crate) fn growth(&self) -> Length {
        let (coil, free) = (self.coil(), mm(self.free));
        let pitch = solid::pitch(free, coil.bar(), self.turns(), self.ends);
        growth::held(coil, pitch, coil.bar()).max(growth::free_at_solid(coil, pitch))
    }

    pub(crate) fn load(&self, height: Length) -> Force {
        self.rate() * (mm(self.free) - height).max(mm(0.0))
    }

    pub(crate) fn member(&self) -> Member {
        let law = Law::linear(self.rate()).unwrap();
        Member { free: mm(self.free), law, solid: Some(self.solid()), raise: mm(0.0) }
    }

    /// Its share of the nest's load.
    pub(crate) fn share(&self, setting: &Setting) -> f64 {
        let state = self.nest(setting).at_load(setting.nest_load).unwrap();
        (state.members[1].load / setting.nest_load).value
    }

    fn nest(&self, setting: &Setting) -> Nest {
        let members = [setting.outer.member(), self.member(), setting.inner.member()];
        Nest::new(members.to_vec()).unwrap()
    }

    /// What it offers to a requirement, in SI units.
    pub(crate) fn offers(&self, requirement: Requirement, setting: &Setting) -> f64 {
        let coil = self.coil();
        let free = mm(self.free);
        let stressed = |load| {
            (set::factor(Against::Curvature, coil.index()) * stress::uncorrected(load, coil)).value
        };
        match requirement {
            Requirement::Pocket => (coil.outside() + self.growth()).value,
            Requirement::Post => coil.inside().value,
            Requirement::OuterGap => {
                let outer = setting.outer.coil();
                ((outer.inside() - coil.outside() - self.growth()) / 2.0).value
            }
            Requirement::InnerGap => {
                let inner = setting.inner;
                ((coil.inside() - inner.coil().outside() - inner.growth()) / 2.0).value
            }
            Requirement::FreeHeight => free.value,
            Requirement::Rate => self.rate().value,
            Requirement::Load => self.load(setting.working).value,
            Requirement::SolidHeight => self.solid().value,
            Requirement::Reserve => (setting.working - self.solid()).value,
            Requirement::StressAtWork => stressed(self.load(setting.working)),
            Requirement::StressAtSolid => stressed(self.load(self.solid())),
            Requirement::Buckling => {
                let ratio = poisson(gpa(setting.nominal_shear), youngs());
                let deflection = buckling::deflection(coil, free, Seating::BothPivoted, ratio);
                deflection.map_or(0.0, |deflection| (free - deflection).value)
            }
            Requirement::Fatigue => {
                let cycle = Cycle::between(coil, setting.cycle.0, setting.cycle.1).unwrap();
                let torsional_yield = allowable().stress;
                let against_yield = (torsional_yield / cycle.greatest()).value;
                let strength = Strength { tensile: tensile(), torsional_yield };
                let goodman =
                    fatigue::endurance(cycle, strength, Surface::Unpeened, Criterion::Goodman);
                goodman.map_or(against_yield, |found| found.safety.min(against_yield))
            }
            Requirement::NestHeight => {
                self.nest(setting).at_load(setting.nest_load).unwrap().height.value
            }
            other => panic!("{other:?} is no figure of a spring"),
        }
    }
}

/// Where a spring stands and works.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Setting {
    pub(crate) outer: Spring,
    pub(crate) inner: Spring,
    pub(crate) working: Length,
    pub(crate) cycle: (Force, Force),
    pub(crate) nest_load: Force,
    pub(crate) nominal_shear: f64,
}

/// Every requirement that compares figures of the spring itself or its nest.
pub(crate) const FIGURES: [Requirement; 14] = [
    Requirement::Pocket,
    Requirement::Post,
    Requirement::OuterGap,
    Requirement::InnerGap,
    Requirement::FreeHeight,
    Requirement::Rate,
    Requirement::Load,
    Requirement::SolidHeight,
    Requirement::Reserve,
    Requirement::StressAtWork,
    Requirement::StressAtSolid,
    Requirement::Buckling,
    Requirement::Fatigue,
    Requirement::NestHeight,
];

/// The middle one of three coils of wire: a bar of 8 mm on a mean diameter of 60 mm.
pub(crate) fn middle(across: DiameterKind) -> Spring {
    let diameter = match across {
        DiameterKind::Mean => 60.0,
        DiameterKind::Outside => 68.0,
        DiameterKind::Inside => 52.0,
    };
    Spring {
        bar: 8.0,
        across,
        diameter,
        turns: 9.0,
        dead: 2.0,
        ends: Ends::ClosedGround,
        shear: 79.0,
        free: 160.0,
        hand: Hand::Right,
    }
}

/// Its neighbours, its working height and loads.
pub(crate) fn setting() -> Setting {
    let middle = middle(DiameterKind::Mean);
    let outer = Spring { bar: 12.0, diameter: 92.0, hand: Hand::Left, ..middle };
    let inner = Spring { bar: 5.0, diameter: 40.0, turns: 13.0, hand: Hand::Left, ..middle };
    Setting {
        outer: Spring { turns: 8.0, ..outer },
        inner,
        working: mm(125.0),
        cycle: (newtons(200.0), newtons(900.0)),
        nest_load: newtons(4000.0),
        nominal_shear: middle.shear,
    }
}
