//! What an example starts from, and what coilnest makes of it.

mod new_spring;
mod single;
mod wire;

use crate::measure::Measure;
use coilnest::bounds;
use coilnest::coil::ends::{Ends, Turns};
use coilnest::coil::{Diameters, rate, solid, stress};
use coilnest::measured::{self, Tape, TapeClass};
use coilnest::nest::{Law, Member, Nest, State};
use coilnest::quantity::{Force, Length, Mass, Pressure, SpringRate, System, unit};
use coilnest::reading::Reading;
use coilnest::verdict::{Limits, judge};
use coilnest_tables::TABLES;
use serde::{Deserialize, Serialize};
use single::{Column, Cycled, Room, SurfaceName, Surging};

/// What an example starts from: `given` of a case, by its `subject`.
#[derive(Clone, Debug, Deserialize)]
#[serde(rename_all = "kebab-case", deny_unknown_fields)]
pub enum Given {
    /// One coil.
    Coil(Box<Coil>),
    /// One coil between seats, as a column.
    Column(Box<Column>),
    /// One coil, its gaps and its set.
    Room(Box<Room>),
    /// One coil, swinging within itself.
    Surging(Box<Surging>),
    /// One coil between two loads.
    Cycled(Box<Cycled>),
    /// Springs that were tested to a life without end.
    Endured {
        /// What was done to their wire.
        surface: SurfaceName,
    },
    /// Coils inside each other.
    Nest {
        /// Outermost first.
        coils: Vec<Coil>,
        /// The load of all.
        load: Measure,
    },
    /// A tape.
    Tape {
        /// Its class in the tables.
        class: String,
        /// The length measured.
        length: Measure,
        /// What the class adds for the tape's end.
        end: Option<Measure>,
    },
    /// A tape reading.
    #[serde(rename_all = "kebab-case")]
    Reading {
        /// As written.
        reading: String,
        /// Distance of the marks.
        graduation: String,
        /// The tape's class in the tables.
        tape_class: Option<String>,
    },
    /// A measured value between limits, in any one unit.
    Conformity {
        /// The estimate.
        estimate: f64,
        /// Its standard uncertainty.
        uncertainty: f64,
        /// The least allowed.
        least: Option<f64>,
        /// The most allowed.
        most: Option<f64>,
    },
    /// One of a unit.
    Unit {
        /// Which.
        one: UnitName,
    },
    /// A steel of the tables.
    Steel {
        /// Its row.
        row: String,
    },
    /// A wire or bar, and how its strength is known.
    Wire(wire::Wire),
    /// A new spring, and the quality that was ordered.
    NewSpring(new_spring::NewSpring),
}

/// A coil, as far as an example gives it.
#[derive(Clone, Debug, Deserialize)]
#[serde(rename_all = "kebab-case", deny_unknown_fields)]
pub struct Coil {
    bar: Measure,
    mean: Option<Measure>,
    outside: Option<Measure>,
    index: Option<f64>,
    ends: Option<EndsName>,
    turns: Option<f64>,
    active_turns: Option<f64>,
    shear_modulus: Option<Measure>,
    free: Option<Measure>,
    load: Option<Measure>,
    /// Instead of a load: the stress that it brings, times a factor or plain.
    stress: Option<Measure>,
    #[serde(default)]
    factor: Factor,
}

/// A form of the ends.
#[derive(Clone, Copy, Debug, Deserialize)]
#[serde(rename_all = "kebab-case")]
enum EndsName {
    Open,
    OpenGround,
    Closed,
    ClosedGround,
    TaperedGround,
}

/// What a given stress includes.
#[derive(Clone, Copy, Debug, Default, Deserialize)]
#[serde(rename_all = "kebab-case")]
enum Factor {
    #[default]
    None,
    Wahl,
    Bergstrasser,
}

/// A unit of the calculation.
#[derive(Clone, Copy, Debug, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum UnitName {
    /// Inch.
    Inch,
    /// Pound.
    Pound,
    /// Pound-force.
    PoundForce,
    /// Kilogram-force.
    KilogramForce,
    /// Pound-force per inch.
    PoundForcePerInch,
    /// Pound-force per square inch.
    PoundForcePerSquareInch,
}

/// What may be printed.
#[derive(Clone, Copy, Debug, Deserialize, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[serde(rename_all = "kebab-case")]
#[expect(missing_docs, reason = "each is the name of what it is")]
pub enum Output {
    Mean,
    Outside,
    Inside,
    Index,
    ActiveTurns,
    TotalTurns,
    Solid,
    Pitch,
    Rate,
    Wahl,
    Bergstrasser,
    /// How far Bergsträsser's factor lies below Wahl's, as a share of Wahl's.
    BergstrasserBelowWahl,
    Load,
    Deflection,
    /// Free height: solid and the deflection at the load.
    FreeForLoad,
    /// Load that closes the coil from its free height.
    LoadToSolid,
    Stress,
    StressWahl,
    StressBergstrasser,
    Slenderness,
    /// Free height up to which it never buckles.
    StableFree,
    /// Deflection at which it buckles.
    Buckles,
    LateralOverAxial,
    LeastGaps,
    /// Between two turns, at the load.
    GapBetweenTurns,
    ClashAllowance,
    Allowable,
    SafetyAgainstSet,
    ActiveMass,
    FirstFrequency,
    StressAmplitude,
    StressMean,
    TorsionalUltimate,
    ReversedGoodman,
    ReversedGerber,
    AmplitudeGoodman,
    AmplitudeGerber,
    SafetyGoodman,
    SafetyGerber,
    SafetySines,
    /// Of each coil of a nest.
    Loads,
    Deflections,
    StressesWahl,
    PermissibleError,
    /// Without what the class adds for the tape's end.
    PermissibleErrorFromZero,
    StandardUncertainty,
    ExpandedUncertainty,
    Estimate,
    ProbabilityIn,
    ProbabilityBelow,
    ProbabilityAbove,
    InSi,
    ShearModulus,
    YoungsModulus,
    Density,
    TensileStrength,
    /// What may be borne in torsion once the set is removed.
    AllowableSetRemoved,
    LoadTolerance,
    FreeTolerance,
    DiameterTolerance,
    Squareness,
    Parallelism,
    /// In degrees.
    SquarenessAngle,
    /// In degrees.
    ParallelismAngle,
}

impl Given {
    /// A value in SI, or one for each coil of a nest.
    ///
    /// # Errors
    /// A sentence when the example does not give what the output needs.
    pub fn compute(&self, output: Output) -> Result<Vec<f64>, String> {
        match self {
            Self::Coil(coil) => Ok(vec![coil.compute(output)?]),
            Self::Column(column) => Ok(vec![column.compute(output)?]),
            Self::Room(room) => Ok(vec![room.compute(output)?]),
            Self::Surging(surging) => Ok(vec![surging.compute(output)?]),
            Self::Cycled(cycled) => Ok(vec![cycled.compute(output)?]),
            Self::Endured { surface } => Ok(vec![surface.compute(output)?]),
            Self::Nest { coils, load } => nest(coils, load, output),
            Self::Tape { class, length, end } => {
                let error = permissible_error(class, metres(length))?;
                let length = match output {
                    Output::PermissibleError => error,
                    Output::PermissibleErrorFromZero => error - metres(need("end", end.as_ref())?),
                    Output::StandardUncertainty => measured::uniform(error),
                    _ => return no(output),
                };
                Ok(vec![length.value])
            }
            Self::Reading { reading, graduation, tape_class } => {
                let read = |text: &str, bound| {
                    Reading::parse(text, System::Inch, bound).map_err(|refusal| refusal.to_string())
                };
                let graduation = read(graduation, &bounds::GRADUATION)?.length();
                let interval = read(reading, &bounds::READING)?.interval(graduation);
                let none = Length::default();
                let class = tape_class.as_ref();
                let error =
                    class.map(|class| permissible_error(class, interval.estimate())).transpose()?;
                let tape = Tape { error: error.unwrap_or(none), place: none };
                let measured =
                    measured::measure(&[interval], tape).map_err(|error| error.to_string())?;
                let length = match output {
                    Output::Estimate => measured.mean,
                    Output::StandardUncertainty => measured.doubt(),
                    Output::ExpandedUncertainty => 2.0 * measured.doubt(),
                    _ => return no(output),
                };
                Ok(vec![length.value])
            }
            Self::Conformity { estimate, uncertainty, least, most } => {
                let metre = Length::new::<unit::meter>;
                let limits = Limits::new(least.map(metre), most.map(metre))
                    .map_err(|error| error.to_string())?;
                let verdict = judge(metre(*estimate), metre(*uncertainty), limits, 0.95);
                Ok(vec![match output {
                    Output::ProbabilityIn => verdict.p_in,
                    Output::ProbabilityBelow => verdict.p_short,
                    Output::ProbabilityAbove => verdict.p_long,
                    _ => return no(output),
                }])
            }
            Self::Unit { one } => match output {
                Output::InSi => Ok(vec![one.in_si()]),
                _ => no(output),
            },
            Self::Steel { row } => {
                let steel = TABLES.steel(row).ok_or_else(|| format!("no steel {row:?}"))?;
                Ok(vec![match output {
                    Output::ShearModulus => steel.shear_modulus().value.value,
                    Output::YoungsModulus => steel.youngs_modulus().value.value,
                    Output::Density => steel.density().ok_or("no density")?.value.value,
                    _ => return no(output),
                }])
            }
            Self::Wire(wire) => Ok(vec![wire.compute(output)?]),
            Self::NewSpring(spring) => Ok(vec![spring.compute(output)?]),
        }
    }
}

impl Coil {
    fn compute(&self, output: Output) -> Result<f64, String> {
        let diameters = self.diameters()?;
        let bar = metres(&self.bar);
        let stressed = |factor: f64| {
            self.load().map(|load| stress::uncorrected(load, diameters).value * factor)
        };
        let (wahl, bergstrasser) =
            (stress::wahl(diameters.index()), stress::bergstrasser(diameters.index()));
        Ok(match output {
            Output::Mean => diameters.mean().value,
            Output::Outside => diameters.outside().value,
            Output::Inside => diameters.inside().value,
            Output::Index => diameters.index(),
            Output::ActiveTurns => self.turns()?.active(),
            Output::TotalTurns => self.turns()?.total(),
            Output::Solid => self.solid()?.value,
            Output::Pitch => solid::pitch(self.free()?, bar, self.turns()?, self.ends()?).value,
            Output::Rate => self.rate()?.value,
            Output::Wahl => wahl,
            Output::Bergstrasser => bergstrasser,
            Output::BergstrasserBelowWahl => (wahl - bergstrasser) / wahl,
            Output::Load => self.load()?.value,
            Output::Deflection => (self.load()? / self.rate()?).value,
            Output::FreeForLoad => (self.solid()? + self.load()? / self.rate()?).value,
            Output::LoadToSolid => (self.rate()? * (self.free()? - self.solid()?)).value,
            Output::Stress => stressed(1.0)?,
            Output::StressWahl => stressed(wahl)?,
            Output::StressBergstrasser => stressed(bergstrasser)?,
            _ => return no(output),
        })
    }

    pub(super) fn diameters(&self) -> Result<Diameters, String> {
        let bar = metres(&self.bar);
        let diameters = match (&self.mean, &self.outside, self.index) {
            (Some(mean), None, None) => Diameters::from_mean(bar, metres(mean)),
            (None, Some(outside), None) => Diameters::from_outside(bar, metres(outside)),
            (None, None, Some(index)) => Diameters::from_mean(bar, bar * index),
            _ => return Err("one of mean, outside and index was expected".into()),
        };
        diameters.map_err(|error| error.to_string())
    }

    pub(super) fn ends(&self) -> Result<Ends, String> {
        Ok(match need("ends", self.ends)? {
            EndsName::Open => Ends::Open,
            EndsName::OpenGround => Ends::OpenGround,
            EndsName::Closed => Ends::Closed,
            EndsName::ClosedGround => Ends::ClosedGround,
            EndsName::TaperedGround => Ends::TaperedGround,
        })
    }

    /// Where an example names no ends, its turns are all at work.
    pub(super) fn turns(&self) -> Result<Turns, String> {
        let dead = if self.ends.is_some() { self.ends()?.dead_turns() } else { 0.0 };
        let total = match (self.turns, self.active_turns) {
            (Some(total), None) => total,
            (None, Some(active)) => active + dead,
            _ => return Err("one of turns and active-turns was expected".into()),
        };
        Turns::new(total, dead).map_err(|error| error.to_string())
    }

    fn solid(&self) -> Result<Length, String> {
        Ok(solid::height(metres(&self.bar), self.turns()?, self.ends()?))
    }

    pub(super) fn rate(&self) -> Result<SpringRate, String> {
        Ok(rate::rate(self.shear_modulus()?, self.diameters()?, self.turns()?))
    }

    pub(super) fn shear_modulus(&self) -> Result<Pressure, String> {
        let modulus = need("shear-modulus", self.shear_modulus.as_ref())?;
        Ok(Pressure::new::<unit::pascal>(modulus.si()))
    }

    pub(super) fn free(&self) -> Result<Length, String> {
        need("free", self.free.as_ref()).map(metres)
    }

    pub(super) fn load(&self) -> Result<Force, String> {
        let newtons = Force::new::<unit::newton>;
        match (&self.load, &self.stress) {
            (Some(load), None) => Ok(newtons(load.si())),
            (None, Some(given)) => {
                let diameters = self.diameters()?;
                let factor = match self.factor {
                    Factor::None => 1.0,
                    Factor::Wahl => stress::wahl(diameters.index()),
                    Factor::Bergstrasser => stress::bergstrasser(diameters.index()),
                };
                // Stress is proportional to load.
                let of_one_newton = factor * stress::uncorrected(newtons(1.0), diameters).value;
                Ok(newtons(given.si() / of_one_newton))
            }
            _ => Err("one of load and stress was expected".into()),
        }
    }
}

fn nest(coils: &[Coil], load: &Measure, output: Output) -> Result<Vec<f64>, String> {
    let members = coils.iter().map(|coil| {
        let law = Law::linear(coil.rate()?).map_err(|error| error.to_string())?;
        Ok(Member { free: coil.free()?, law, solid: None, raise: Length::default() })
    });
    let members = members.collect::<Result<Vec<Member>, String>>()?;
    let nest = Nest::new(members).map_err(|error| error.to_string())?;
    let at_load = nest.at_load(Force::new::<unit::newton>(load.si()));
    let State { members, .. } = at_load.map_err(|error| error.to_string())?;
    let each = coils.iter().zip(members).map(|(coil, member)| {
        Ok(match output {
            Output::Loads => member.load.value,
            Output::Deflections => member.deflection.value,
            Output::StressesWahl => {
                let diameters = coil.diameters()?;
                stress::uncorrected(member.load, diameters).value * stress::wahl(diameters.index())
            }
            _ => return no(output),
        })
    });
    each.collect()
}

impl UnitName {
    fn in_si(self) -> f64 {
        match self {
            Self::Inch => Length::new::<unit::inch>(1.0).value,
            Self::Pound => Mass::new::<unit::pound>(1.0).value,
            Self::PoundForce => Force::new::<unit::pound_force>(1.0).value,
            Self::KilogramForce => Force::new::<unit::kilogram_force>(1.0).value,
            Self::PoundForcePerInch => SpringRate::new::<unit::pound_force_per_inch>(1.0).value,
            Self::PoundForcePerSquareInch => {
                Pressure::new::<unit::pound_force_per_square_inch>(1.0).value
            }
        }
    }
}

fn permissible_error(class: &str, length: Length) -> Result<Length, String> {
    let class: &TapeClass =
        TABLES.tape_class(class).ok_or_else(|| format!("no tape class {class:?}"))?;
    class.permissible_error(length).ok_or_else(|| "longer than the class covers".to_owned())
}

pub(super) fn metres(measure: &Measure) -> Length {
    Length::new::<unit::meter>(measure.si())
}

pub(super) fn need<T>(name: &str, given: Option<T>) -> Result<T, String> {
    given.ok_or_else(|| format!("{name} is not given"))
}

pub(super) fn no<T>(output: Output) -> Result<T, String> {
    Err(format!("{output:?} does not follow from this subject"))
}
