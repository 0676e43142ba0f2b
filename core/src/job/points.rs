//! Points of a frame whose height counts, as of a coupler or a buffer, against the limits of the user.

use super::context::Context;
use super::figures::text;
use super::formulas::{POINT, POINT_WARPED};
use super::frame::{FrameSpec, LoadedFrame};
use super::input::Frame as FrameEntry;
use super::problem::Path;
use super::report::{PointReport, PointWord, Problem};
use super::standing::TapedAt;
use crate::formula::Value;
use crate::frame::standing::Spot;
use crate::frame::{self, Place, Settled};
use crate::quantity::{self, Length};
use crate::say::Say;
use crate::verdict::{self, Limits, LimitsError, Word};

/// A point of the frame, as it is written.
pub(crate) struct Point {
    pub(crate) name: String,
    pub(crate) place: Place,
    /// From the frame at the lower seats' level to where its height counts from.
    pub(crate) added: Length,
    limits: Option<Limits>,
    pub(crate) taped: Option<TapedAt>,
}

/// Reads the points of a frame; one without its place is left out.
pub(crate) fn read(context: &mut Context<'_>, at: &Path, entry: &FrameEntry) -> Vec<Point> {
    let points = context.objects(at, entry.points()).into_iter().zip(1..);
    let points = points.filter_map(|((at, entry), nth)| {
        let name = context.text(&at, entry.name());
        let name = name.map_or_else(|| text!("Point {nth}"), str::to_owned);
        let along = context.read(&at, entry.along());
        let across = context.read(&at, entry.across()).unwrap_or_default();
        let added = context.read(&at, entry.added()).unwrap_or_default();
        let (least, most) = (context.read(&at, entry.least()), context.read(&at, entry.most()));
        let limits = Limits::new(least, most).map_err(|error| {
            if let LimitsError::Crossed { .. } = error {
                let message = error.say(context.system());
                context.problem(Problem::said(
                    &at.field("least"),
                    "limits-crossed",
                    &message,
                    "33 1/2",
                ));
            }
        });
        let taped = context.read(&at, entry.standing()).map(|reading| {
            let here = at.field("standing");
            TapedAt { at: here.clone(), place: here, of: name.clone(), reading }
        });
        let Some(along) = along else {
            let text =
                text!("{name}: where it is along the frame is not given, so it is left out.");
            context.note(&at.field("along"), "place-unknown", text);
            return None;
        };
        let place = Place { along, across };
        Some(Point { name, place, added, limits: limits.ok(), taped })
    });
    points.collect()
}

/// How high each point stands, and whether that is within its limits.
pub(crate) fn assess(
    context: &mut Context<'_>,
    written: &FrameSpec,
    loaded: &LoadedFrame,
    settled: &Settled,
    level: f64,
) -> Vec<PointReport> {
    let spots: Vec<Spot> = written.points.iter().map(|point| Spot::Place(point.place)).collect();
    let Ok(stands) = loaded.frame.stands(loaded.weight, loaded.coil_doubts(), &spots) else {
        return Vec::new();
    };
    let format = context.format;
    let [a, b] =
        [settled.slope_along, settled.slope_across].map(|slope| quantity::write_number(slope, 7));
    let w = super::frame::warp_said(format, settled.twist);
    let (z, middle) = (format.decimal(settled.middle), loaded.frame.middle());
    let warps = loaded.frame.warp().is_some();
    let points = written.points.iter().zip(stands).map(|(point, stands)| {
        let height = stands.value + point.added;
        let values: [Value<'_>; 9] = [
            ("z", &z),
            ("a", &a),
            ("x", &format.decimal(point.place.along)),
            ("xm", &format.decimal(middle.along)),
            ("b", &b),
            ("y", &format.decimal(point.place.across)),
            ("ym", &format.decimal(middle.across)),
            ("w", &w),
            ("ha", &format.decimal(point.added)),
        ];
        let formula = if warps { POINT_WARPED } else { POINT };
        let figure = format.height(height).give_or_take(format, stands.doubt);
        let figure = context.ledger.work(figure, formula, &values, &frame::SOURCE);
        let verdict =
            point.limits.map(|limits| verdict::judge(height, stands.doubt, limits, level));
        let (word, title) = match verdict.as_ref().map(|verdict| verdict.word) {
            Some(Word::Good) => (PointWord::Within, "Within its limits"),
            Some(Word::Short) => (PointWord::Low, "Too low"),
            Some(Word::Long) => (PointWord::High, "Too high"),
            Some(Word::TooClose) => (PointWord::TooClose, "Too close to call"),
            None => (PointWord::None, "No limit given"),
        };
        let limit =
            |of: fn(&Limits) -> Option<Length>| Some(format.fine_text(of(point.limits.as_ref()?)?));
        PointReport {
            name: point.name.clone(),
            height: figure,
            least: limit(Limits::least),
            most: limit(Limits::most),
            word,
            title: title.into(),
            p_within: verdict.map(|verdict| verdict.p_in),
        }
    });
    points.collect()
}
