//! Parts of a job that are read, so that a slip of the pen is found, but not yet reckoned with.

use super::desk::Desk;

use super::input::{Frame, Job};
use super::problem::Path;
use super::report::Problem;
use super::seat;
use crate::bounds;
use crate::quantity::{self, Length};

/// Reads frame and bench.
pub(crate) fn read(
    desk: &mut Desk<'_>,
    job: &Job,
    nests: &[String],
    coils: &[String],
    graduation: Length,
) {
    let at = Path::of("frame");
    if let Some(frame) = desk.object(&at, &job.frame) {
        read_frame(desk, &at, frame, nests);
    }
    let at = Path::of("bench");
    for (index, entry) in desk.list(&at, &job.bench).iter().enumerate() {
        let at = at.item(index);
        let Some(coil) = desk.object(&at, entry) else { continue };
        desk.text(&at, "label", &coil.label);
        if let Some(name) = desk.text(&at, "coil", &coil.coil) {
            expect_known(desk, &at.field("coil"), name, coils, "no-such-coil");
        }
        seat::readings(desk, &at, &coil.readings, graduation);
    }
}

/// Reports a name that the job does not have.
pub(crate) fn expect_known(
    desk: &mut Desk<'_>,
    at: &Path,
    name: &str,
    known: &[String],
    code: &'static str,
) {
    if known.iter().any(|known| known == name) {
        return;
    }
    let named: Vec<&str> =
        known.iter().map(String::as_str).filter(|name| !name.is_empty()).collect();
    let expected = match named.as_slice() {
        [] => "a name that stands in the job".to_owned(),
        named => format!("one of {}", quantity::joined(named.iter(), ", ")),
    };
    let example = named.first().copied().unwrap_or_default();
    desk.problem(Problem::new(
        at,
        code,
        name,
        &expected,
        "this job has none of that name",
        example,
    ));
}

fn read_frame(desk: &mut Desk<'_>, at: &Path, frame: &Frame, nests: &[String]) {
    desk.quantity(at, "weight", &frame.weight, &bounds::LOAD);
    desk.quantity(at, "warp_stiffness", &frame.warp_stiffness, &bounds::WARP_STIFFNESS);
    desk.quantity(at, "stop_stiffness", &frame.stop_stiffness, &bounds::RATE);
    desk.length(at, "largest_stack", &frame.largest_stack, &bounds::SHIM);
    if let Some(centre) = desk.object(&at.field("centre"), &frame.centre) {
        let at = at.field("centre");
        desk.length(&at, "along", &centre.along, &bounds::POSITION);
        desk.length(&at, "across", &centre.across, &bounds::POSITION);
    }
    let stock = at.field("shim_stock");
    for (index, shim) in desk.list(&stock, &frame.shim_stock).iter().enumerate() {
        desk.length(&stock.item(index), "", shim, &bounds::SHIM);
    }
    let supports = at.field("supports");
    for (index, entry) in desk.list(&supports, &frame.supports).iter().enumerate() {
        let at = supports.item(index);
        let Some(support) = desk.object(&at, entry) else { continue };
        if let Some(name) = desk.text(&at, "nest", &support.nest) {
            expect_known(desk, &at.field("nest"), name, nests, "no-such-nest");
        }
        desk.length(&at, "along", &support.along, &bounds::POSITION);
        desk.length(&at, "across", &support.across, &bounds::POSITION);
        desk.length(&at, "shim", &support.shim, &bounds::SHIM);
        desk.length(&at, "ground", &support.ground, &bounds::GROUND);
    }
}
