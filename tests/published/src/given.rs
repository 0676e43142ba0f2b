//! What an example starts from, and what coilnest makes of it.

mod new_spring;
mod single;
mod wire;

use crate::fields::Fields;
use crate::output::Output;
use coilnest::bounds;
use coilnest::coil::ends::{Ends, Turns};
use coilnest::coil::{Diameters, rate, solid, stress};
use coilnest::measured::{self, Tape, TapeClass};
use coilnest::nest::{Law, Member, Nest};
use coilnest::quantity::{Force, Length, Mass, Pressure, SpringRate, System, unit};
use coilnest::reading::Reading;
use coilnest::verdict::{Limits, judge};
use coilnest_tables::TABLES;
use serde_json::Value;

/// What an example starts from: `given` of a case, under the name of its subject.
pub(crate) struct Given<'a> {
    subject: &'static Subject,
    fields: Fields<'a>,
}

/// A kind of thing that an example is about.
struct Subject {
    name: &'static str,
    /// What can be given of it.
    takes: &'static [&'static str],
    /// A value in SI, or one for each coil of a nest; a sentence when the example does not give what it needs.
    compute: fn(Fields<'_>, Output) -> Result<Vec<f64>, String>,
}

const SUBJECTS: &[Subject] = &[
    Subject { name: "coil", takes: Coil::TAKES, compute: coil },
    single::COLUMN,
    single::ROOM,
    single::SURGING,
    single::CYCLED,
    single::ENDURED,
    Subject { name: "nest", takes: &["coils", "load"], compute: nest },
    Subject { name: "tape", takes: &["class", "length", "end"], compute: tape },
    Subject { name: "reading", takes: &["reading", "graduation", "tape-class"], compute: reading },
    Subject {
        name: "conformity",
        takes: &["estimate", "uncertainty", "least", "most"],
        compute: conformity,
    },
    Subject { name: "unit", takes: &["one"], compute: in_si },
    Subject { name: "steel", takes: &["row"], compute: steel },
    wire::WIRE,
    new_spring::NEW_SPRING,
];

impl<'a> Given<'a> {
    pub(crate) fn read(value: &'a Value) -> Result<Self, String> {
        let given = value.as_object().and_then(|given| given.iter().next());
        let (name, fields) = given.ok_or("nothing is given")?;
        let subject = SUBJECTS.iter().find(|subject| subject.name == name);
        let subject = subject.ok_or_else(|| format!("no subject {name:?}"))?;
        Ok(Self { subject, fields: Fields::of(fields, subject.takes)? })
    }

    pub(crate) fn compute(&self, output: Output) -> Result<Vec<f64>, String> {
        (self.subject.compute)(self.fields, output)
    }
}

/// A coil, as far as an example gives it.
#[derive(Clone, Copy)]
struct Coil<'a>(Fields<'a>);

impl<'a> Coil<'a> {
    /// `stress` is that which a load brings that is not given, plain or times a `factor`.
    const TAKES: &'static [&'static str] = &[
        "bar",
        "mean",
        "outside",
        "index",
        "ends",
        "turns",
        "active-turns",
        "shear-modulus",
        "free",
        "load",
        "stress",
        "factor",
    ];

    /// The coil of an example that gives more than a coil.
    fn of(given: Fields<'a>) -> Result<Self, String> {
        Self::read(given.value("coil")?)
    }

    fn read(value: &'a Value) -> Result<Self, String> {
        Fields::of(value, Self::TAKES).map(Self)
    }

    fn diameters(self) -> Result<Diameters, String> {
        let bar = self.0.length("bar")?;
        let diameters = match ["mean", "outside", "index"].map(|name| self.0.has(name)) {
            [true, false, false] => Diameters::from_mean(bar, self.0.length("mean")?),
            [false, true, false] => Diameters::from_outside(bar, self.0.length("outside")?),
            [false, false, true] => Diameters::from_mean(bar, bar * self.0.number("index")?),
            _ => return Err("one of mean, outside and index was expected".into()),
        };
        diameters.map_err(|error| error.to_string())
    }

    fn ends(self) -> Result<Ends, String> {
        self.0.word(
            "ends",
            &[
                ("open", Ends::Open),
                ("open-ground", Ends::OpenGround),
                ("closed", Ends::Closed),
                ("closed-ground", Ends::ClosedGround),
                ("tapered-ground", Ends::TaperedGround),
            ],
        )
    }

    /// Where an example names no ends, its turns are all at work.
    fn turns(self) -> Result<Turns, String> {
        let dead = if self.0.has("ends") { self.ends()?.dead_turns() } else { 0.0 };
        let total = match ["turns", "active-turns"].map(|name| self.0.has(name)) {
            [true, false] => self.0.number("turns")?,
            [false, true] => self.0.number("active-turns")? + dead,
            _ => return Err("one of turns and active-turns was expected".into()),
        };
        Turns::new(total, dead).map_err(|error| error.to_string())
    }

    fn solid(self) -> Result<Length, String> {
        Ok(solid::height(self.0.length("bar")?, self.turns()?, self.ends()?))
    }

    fn rate(self) -> Result<SpringRate, String> {
        Ok(rate::rate(self.shear_modulus()?, self.diameters()?, self.turns()?))
    }

    fn shear_modulus(self) -> Result<Pressure, String> {
        self.0.pressure("shear-modulus")
    }

    fn free(self) -> Result<Length, String> {
        self.0.length("free")
    }

    fn load(self) -> Result<Force, String> {
        match ["load", "stress"].map(|name| self.0.has(name)) {
            [true, false] => self.0.force("load"),
            [false, true] => {
                let diameters = self.diameters()?;
                let factor = match self.0.maybe("factor", Fields::text)? {
                    None => 1.0,
                    Some("wahl") => stress::wahl(diameters.index()),
                    Some("bergstrasser") => stress::bergstrasser(diameters.index()),
                    Some(other) => return Err(format!("no factor {other:?}")),
                };
                // Stress is proportional to load.
                let newton = Force::new::<unit::newton>(1.0);
                let of_one_newton = factor * stress::uncorrected(newton, diameters);
                Ok(newton * (self.0.pressure("stress")? / of_one_newton).value)
            }
            _ => Err("one of load and stress was expected".into()),
        }
    }
}

fn coil(given: Fields<'_>, output: Output) -> Result<Vec<f64>, String> {
    let coil = Coil(given);
    let diameters = coil.diameters()?;
    let bar = diameters.bar();
    let stressed =
        |factor: f64| coil.load().map(|load| stress::uncorrected(load, diameters).value * factor);
    let (wahl, bergstrasser) =
        (stress::wahl(diameters.index()), stress::bergstrasser(diameters.index()));
    Ok(vec![match output {
        Output::Mean => diameters.mean().value,
        Output::Outside => diameters.outside().value,
        Output::Inside => diameters.inside().value,
        Output::Index => diameters.index(),
        Output::ActiveTurns => coil.turns()?.active(),
        Output::TotalTurns => coil.turns()?.total(),
        Output::Solid => coil.solid()?.value,
        Output::Pitch => solid::pitch(coil.free()?, bar, coil.turns()?, coil.ends()?).value,
        Output::Rate => coil.rate()?.value,
        Output::Wahl => wahl,
        Output::Bergstrasser => bergstrasser,
        Output::BergstrasserBelowWahl => (wahl - bergstrasser) / wahl,
        Output::Load => coil.load()?.value,
        Output::Deflection => (coil.load()? / coil.rate()?).value,
        Output::FreeForLoad => (coil.solid()? + coil.load()? / coil.rate()?).value,
        Output::LoadToSolid => (coil.rate()? * (coil.free()? - coil.solid()?)).value,
        Output::Stress => stressed(1.0)?,
        Output::StressWahl => stressed(wahl)?,
        Output::StressBergstrasser => stressed(bergstrasser)?,
        _ => return no(output),
    }])
}

fn nest(given: Fields<'_>, output: Output) -> Result<Vec<f64>, String> {
    let coils = given.list("coils")?.iter().map(Coil::read);
    let coils = coils.collect::<Result<Vec<_>, _>>()?;
    let members = coils.iter().map(|coil| {
        let law = Law::linear(coil.rate()?).map_err(|error| error.to_string())?;
        Ok(Member { free: coil.free()?, law, solid: None, raise: Length::default() })
    });
    let members = members.collect::<Result<Vec<Member>, String>>()?;
    let nest = Nest::new(members).map_err(|error| error.to_string())?;
    let state = nest.at_load(given.force("load")?).map_err(|error| error.to_string())?;
    let each = coils.iter().zip(state.members).map(|(coil, member)| {
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

/// A tape, the length measured with it, and what its class adds for its end.
fn tape(given: Fields<'_>, output: Output) -> Result<Vec<f64>, String> {
    let error = permissible_error(given.text("class")?, given.length("length")?)?;
    let length = match output {
        Output::PermissibleError => error,
        Output::PermissibleErrorFromZero => error - given.length("end")?,
        Output::StandardUncertainty => measured::uniform(error),
        _ => return no(output),
    };
    Ok(vec![length.value])
}

/// A tape reading as written, the distance of the marks, and the tape's class in the tables.
fn reading(given: Fields<'_>, output: Output) -> Result<Vec<f64>, String> {
    let read = |name, bound| {
        let reading = Reading::parse(given.text(name)?, System::Inch, bound);
        reading.map_err(|refusal| refusal.to_string())
    };
    let graduation = read("graduation", &bounds::GRADUATION)?.length();
    let interval = read("reading", &bounds::READING)?.interval(graduation);
    let class = given.maybe("tape-class", Fields::text)?;
    let error = class.map(|class| permissible_error(class, interval.estimate())).transpose()?;
    let tape = Tape { error: error.unwrap_or_default(), place: Length::default() };
    let measured = measured::measure(&[interval], tape).map_err(|error| error.to_string())?;
    let length = match output {
        Output::Estimate => measured.mean,
        Output::StandardUncertainty => measured.doubt(),
        Output::ExpandedUncertainty => 2.0 * measured.doubt(),
        _ => return no(output),
    };
    Ok(vec![length.value])
}

/// A measured value between limits, in any one unit.
fn conformity(given: Fields<'_>, output: Output) -> Result<Vec<f64>, String> {
    let metres = |name: &str| given.number(name).map(Length::new::<unit::meter>);
    let limit = |name| given.maybe(name, |_, name| metres(name));
    let limits = Limits::new(limit("least")?, limit("most")?).map_err(|error| error.to_string())?;
    let verdict = judge(metres("estimate")?, metres("uncertainty")?, limits, 0.95);
    Ok(vec![match output {
        Output::ProbabilityIn => verdict.p_in,
        Output::ProbabilityBelow => verdict.p_short,
        Output::ProbabilityAbove => verdict.p_long,
        _ => return no(output),
    }])
}

/// One of a unit of the calculation.
fn in_si(given: Fields<'_>, output: Output) -> Result<Vec<f64>, String> {
    let units = [
        ("inch", Length::new::<unit::inch>(1.0).value),
        ("pound", Mass::new::<unit::pound>(1.0).value),
        ("pound-force", Force::new::<unit::pound_force>(1.0).value),
        ("kilogram-force", Force::new::<unit::kilogram_force>(1.0).value),
        ("pound-force-per-inch", SpringRate::new::<unit::pound_force_per_inch>(1.0).value),
        (
            "pound-force-per-square-inch",
            Pressure::new::<unit::pound_force_per_square_inch>(1.0).value,
        ),
    ];
    match output {
        Output::InSi => Ok(vec![given.word("one", &units)?]),
        _ => no(output),
    }
}

/// A steel of the tables, by its row.
fn steel(given: Fields<'_>, output: Output) -> Result<Vec<f64>, String> {
    let row = given.text("row")?;
    let steel = TABLES.steel(row).ok_or_else(|| format!("no steel {row:?}"))?;
    Ok(vec![match output {
        Output::ShearModulus => steel.shear_modulus().value.value,
        Output::YoungsModulus => steel.youngs_modulus().value.value,
        Output::Density => steel.density().ok_or("no density")?.value.value,
        _ => return no(output),
    }])
}

fn permissible_error(class: &str, length: Length) -> Result<Length, String> {
    let class: &TapeClass =
        TABLES.tape_class(class).ok_or_else(|| format!("no tape class {class:?}"))?;
    class.permissible_error(length).ok_or_else(|| "longer than the class covers".to_owned())
}

fn no<T>(output: Output) -> Result<T, String> {
    Err(format!("{} does not follow from this subject", output.name()))
}
