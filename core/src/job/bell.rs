//! How likely each free height of a coil is by its readings: the bell that a verdict weighs.

use super::answer::format;
use super::assess::assess;
use super::input::Job;
use super::report::{Bell, Figure};
use crate::quantity::{self, Length};
use crate::tables::Tables;

/// So many standard uncertainties to each side are drawn: beyond lies one part in fifteen thousand.
const REACH: f64 = 4.0;
/// Points on each side of the middle.
const POINTS: i32 = 40;

/// The bell of a coil of a job, `nests[0].seats[1]`; none where its readings give no free height with a
/// doubt.
///
/// A measured height is taken as normal, with its mean and its standard uncertainty, as a verdict takes
/// it. The curve is one at the mean.
///
/// # Source
/// [`crate::verdict::SOURCE`].
#[must_use]
pub fn bell(job: &Job, tables: &Tables<'_>, path: &str) -> Option<Bell> {
    let mut numbers =
        path.split(|c: char| !c.is_ascii_digit()).filter_map(|part| part.parse::<usize>().ok());
    let (nest, seat) = (numbers.next()?, numbers.next()?);
    if path != format!("nests[{nest}].seats[{seat}]") {
        return None;
    }
    let mut all = assess(job, tables);
    let coil = all.nests.get_mut(nest)?.seats.get_mut(seat)?;
    let free = coil.free.take().filter(|_| coil.measured)?;
    let doubt = free.doubt_si.filter(|doubt| *doubt > 0.0)?;
    let system = format(job).system;
    let shown = |metres: f64| quantity::shown::<Length>(quantity::si(metres), system);
    let number = |metres: f64| shown(metres).0;
    let limit = |of: &Option<Figure>| of.as_ref().map(|figure| number(figure.si));
    let verdict = coil.verdict.as_ref();
    let (least, most) =
        (verdict.and_then(|v| limit(&v.least)), verdict.and_then(|v| limit(&v.most)));
    let points = (-POINTS..=POINTS).map(|step| {
        let off = REACH * f64::from(step) / f64::from(POINTS);
        [number(free.si + off * doubt), libm::exp(-0.5 * off * off)]
    });
    Some(Bell {
        unit: shown(free.si).1.into(),
        mean: number(free.si),
        points: points.collect(),
        least,
        most,
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::job::file;

    const TABLES: Tables<'_> = Tables::NONE;

    fn job(readings: &str, limits: &str) -> Job {
        let text = format!(
            r#"{{ "format": "coilnest-job/1", "tape": {{ "graduation": "1/16 in", "error": "1/64" }},
            "coils": [{{ "id": "outer", "free": "14" {limits} }}],
            "nests": [{{ "id": "A", "seats": [{{ "coil": "outer", "readings": [{readings}] }}] }}] }}"#
        );
        file::open(&text).expect("a job")
    }

    /// The part of a bell's area that lies below a height.
    fn below(bell: &Bell, height: f64) -> f64 {
        let strips = bell.points.windows(2).map(|pair| {
            let [[a, p], [b, q]] = [pair[0], pair[1]];
            let part = ((height - a) / (b - a)).clamp(0.0, 1.0);
            (part * (b - a) * (p + (p + part * (q - p))) / 2.0, (b - a) * (p + q) / 2.0)
        });
        let (under, whole) = strips.fold((0.0, 0.0), |sum, one| (sum.0 + one.0, sum.1 + one.1));
        under / whole
    }

    #[test]
    fn the_area_below_a_limit_is_the_probability_of_the_verdict() {
        let limits = r#", "limits": { "under": "1/8", "over": "1/8" }"#;
        for reading in ["13 7/8", "13 15/16", "14 1/8 full", "13 3/4"] {
            let job = job(&format!("{reading:?}"), limits);
            let bell = bell(&job, &TABLES, "nests[0].seats[0]").expect("a bell");
            let report = assess(&job, &TABLES);
            let verdict = report.nests[0].seats[0].verdict.as_ref().expect("a verdict");
            let [short, long] = [verdict.p_short, verdict.p_long].map(|p| p.expect("a number"));
            let (least, most) = (bell.least.expect("a least"), bell.most.expect("a most"));
            assert!((below(&bell, least) - short).abs() < 1e-3, "{reading}: short");
            assert!((1.0 - below(&bell, most) - long).abs() < 1e-3, "{reading}: long");
        }
    }

    #[test]
    fn it_is_drawn_in_the_unit_of_the_job_and_round_the_mean() {
        let bell = bell(&job(r#""14""#, ""), &TABLES, "nests[0].seats[0]").expect("a bell");
        assert_eq!((&*bell.unit, bell.least, bell.most), ("in", None, None));
        assert!((bell.mean - 14.0).abs() < 1e-12);
        let highest = bell.points.iter().max_by(|a, b| a[1].total_cmp(&b[1]));
        assert_eq!(highest.map(|point| point[1]), Some(1.0));
    }

    #[test]
    fn there_is_none_without_a_reading_or_for_another_path() {
        let unread = job("", "");
        assert_eq!(bell(&unread, &TABLES, "nests[0].seats[0]"), None);
        let read = job(r#""14""#, "");
        for path in ["", "nests[0]", "nests[0].seats[1]", "nests[0].seats[0].readings[0]"] {
            assert_eq!(bell(&read, &TABLES, path), None, "{path}");
        }
    }
}
