//! From the nests of a job to what stands on the track: boxes, on beams or under nests, and wheels.

use super::super::context::Context;
use super::super::figures::{Format, text};
use super::super::frame::{self, BeamSpec, FrameSpec, LoadedFrame};
use super::super::report::{Problem, Wheel};
use crate::frame::Settled;
use crate::frame::beams::{Axle, Beam, Bearing, LOAD, SOURCE, Seat};
use crate::quantity::{self, Force, Length};
use crate::say::{Message, Reader, Say};

/// What stands on the track, by name.
pub(crate) struct Wheels {
    standing: Vec<(String, Bearing)>,
}

/// A box before it is known what its axle makes of it.
struct OneBox {
    name: String,
    bearing: Bearing,
    along: Length,
    across: Length,
}

/// Boxes nearer to each other along the frame are of one axle.
const ONE_AXLE_M: f64 = 0.01;

impl Wheels {
    /// Boxes where no distance between wheels is given, else wheels.
    pub(crate) fn of(context: &mut Context<'_>, written: &FrameSpec, loaded: &LoadedFrame) -> Self {
        let boxes = boxes(context, written, loaded);
        let standing = match written.wheels_apart {
            Some(apart) => on_axles(context, &boxes, apart),
            None => None,
        };
        let as_boxes = || boxes.into_iter().map(|of| (of.name, of.bearing)).collect();
        Self { standing: standing.unwrap_or_else(as_boxes) }
    }

    pub(crate) fn count(&self) -> usize {
        self.standing.len()
    }

    pub(crate) fn bearings(&self) -> Vec<Bearing> {
        self.standing.iter().map(|(_, bearing)| bearing.clone()).collect()
    }

    pub(crate) fn names(&self) -> impl Iterator<Item = &str> + Clone {
        self.standing.iter().map(|(name, _)| name.as_str())
    }

    /// What each carries on level track.
    pub(crate) fn at_rest(&self, context: &mut Context<'_>, settled: &Settled) -> Vec<Wheel> {
        let format = context.format;
        let loads: Vec<Force> = settled.supports.iter().map(|standing| standing.load).collect();
        let wheels = self.standing.iter().map(|(name, bearing)| {
            let terms = bearing.parts().iter().map(|(support, part)| {
                let load = loads.get(*support).copied().unwrap_or_default();
                (quantity::write_number(*part, 4), format.say::<Force>(load))
            });
            let terms: Vec<_> = terms.collect();
            let terms = terms.iter().map(|(part, load)| [("c", part as _), ("F", load as _)]);
            let figure = format.figure::<Force>(bearing.load(&loads));
            let load = context.ledger.sum(figure, LOAD, terms, &SOURCE);
            Wheel { name: name.clone(), load }
        });
        wheels.collect()
    }
}

/// The boxes of the beams, then those right under a nest.
fn boxes(context: &mut Context<'_>, written: &FrameSpec, loaded: &LoadedFrame) -> Vec<OneBox> {
    let mut on_beams = Vec::new();
    let mut boxes = Vec::new();
    for beam in &written.beams {
        match beam_boxes(context.format, written, loaded, beam) {
            Ok((supports, both)) => {
                on_beams.extend(supports);
                boxes.extend(both);
            }
            Err(why) => {
                let read = text!("{}: {}", beam.name, why.read);
                context.problem(Problem::said(&beam.at, "beam", &Message { read, ..why }, ""));
            }
        }
    }
    let nests = written.supports.iter().zip(loaded.frame.supports()).enumerate();
    for (support, (nest, of)) in nests {
        if !on_beams.contains(&support) {
            boxes.push(OneBox {
                name: nest.nest.clone(),
                bearing: Bearing::under(support),
                along: of.place.along,
                across: of.place.across,
            });
        }
    }
    boxes
}

/// The nests that stand on a beam, and its two boxes, or why it has none.
fn beam_boxes(
    format: Format,
    written: &FrameSpec,
    loaded: &LoadedFrame,
    beam: &BeamSpec,
) -> Result<(Vec<usize>, [OneBox; 2]), Message> {
    let [one, other] = beam.boxes.as_slice() else {
        return Err(Message {
            read: text!("{} boxes of the beam", beam.boxes.len()),
            expected: "two of them".to_owned(),
            hint: "give where each stands along the frame".to_owned(),
        });
    };
    let (back, front) = if one <= other { (*one, *other) } else { (*other, *one) };
    let mut seats = Vec::new();
    let mut across = Length::default();
    for nest in &beam.nests {
        let nests = written.supports.iter().zip(loaded.frame.supports()).enumerate();
        let of_name = nests.filter(|(_, (written, _))| &written.nest == nest);
        for (support, (_, of)) in of_name {
            seats.push(Seat { support, at: of.place.along });
            across += of.place.across;
        }
    }
    #[expect(clippy::cast_precision_loss, reason = "a frame has few nests")]
    let across = across / seats.len().max(1) as f64;
    let supports = seats.iter().map(|seat| seat.support).collect();
    let names = written.names();
    let reader = Reader { system: format.system, nests: &names };
    let beam_of = Beam::new([back, front], seats).map_err(|error| error.say_to(reader))?;
    let [behind, ahead] = beam_of.boxes();
    let one_box = |bearing, end: &str, along| OneBox {
        name: text!("{}, {end} end", beam.name),
        bearing,
        along,
        across,
    };
    Ok((supports, [one_box(ahead, "A", front), one_box(behind, "B", back)]))
}

/// The wheels of axles whose boxes lie across from each other.
fn on_axles(
    context: &mut Context<'_>,
    boxes: &[OneBox],
    apart: Length,
) -> Option<Vec<(String, Bearing)>> {
    let mut wheels = Vec::with_capacity(boxes.len());
    for (index, of) in boxes.iter().enumerate() {
        let near = |other: &OneBox| (other.along - of.along).value.abs() <= ONE_AXLE_M;
        let mut across = boxes.iter().enumerate().filter(|(at, other)| *at != index && near(other));
        let axle = match (across.next(), across.next()) {
            (Some((_, other)), None) => {
                let axle = Axle::new((of.across - other.across).abs(), apart).ok();
                axle.map(|axle| axle.wheels(&[of.bearing.clone(), other.bearing.clone()]))
            }
            _ => None,
        };
        let Some([wheel, _]) = axle else {
            let why = text!("{} has not just one other box across from it", of.name);
            let read = context.format.fine_text(apart);
            let at = frame::path().field("wheels_apart");
            let expected = "boxes that lie in pairs across the frame, or nothing here";
            context.problem(Problem::new(&at, "no-axle", &read, expected, &why, ""));
            return None;
        };
        wheels.push((of.name.clone(), wheel));
    }
    Some(wheels)
}
