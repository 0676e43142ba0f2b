//! The least and the most that the tolerances of a spring make of a figure.

use super::Drawing;
use super::figure::{Figure, Figures};
use super::point::Point;
use super::range::Range;
use crate::source::{Known, Source};

/// Why the ends of a range are the least and the most.
///
/// Every figure here rises all the way or falls all the way with the diameter, the turns, the dead
/// turns, the modulus, the free height, and a solid height or rate that is given, whatever the others
/// are. So its extremes lie where each of these is at an end of its tolerance. With the bar a figure
/// may turn round: the stress at solid has a most where the solid height is about half the free one.
/// Where it does within the bar's tolerance, the place is searched for.
pub const SOURCE: Source = Source::new(
    "coilnest",
    "every figure is monotone in all but the bar, along which it is searched",
    Known::Derived,
);

/// A figure of a spring, or what it lacks.
type Of<'f> = &'f dyn Fn(&Point) -> Result<f64, Figures>;

/// A figure over the tolerances of all that it rests on, attained at both ends, in SI units.
///
/// Where a rate or a solid height is stated beside sizes that give one, the figure lies where both
/// accounts allow it.
///
/// # Errors
/// What is missing.
pub(crate) fn range(
    of: &Drawing,
    figure: impl Fn(&Point) -> Result<f64, Figures>,
) -> Result<Range<f64>, Figures> {
    let figure: Of<'_> = &figure;
    let stated = by_one_account(of, figure)?;
    let Some(sizes) = of.without_statements() else { return Ok(stated) };
    Ok(by_one_account(&sizes, figure).map_or(stated, |drawn| stated.within(drawn)))
}

/// As a figure goes one way with each but the bar, two corners are enough: that at which each is at the
/// end that lowers it, and that at which each is at the other.
fn by_one_account(of: &Drawing, figure: Of<'_>) -> Result<Range<f64>, Figures> {
    let varied = Varied::of(of, figure)?;
    let (mut low, mut high) = (vec![varied.nominal.clone()], vec![varied.nominal.clone()]);
    for (axis, [least, most]) in &varied.axes {
        let at = |end| figure(&varied.nominal.with(*axis, end));
        let rise = at(*most)? - at(*least)?;
        let put = |corners: &mut Vec<Point>, ends: &[f64]| {
            let from = core::mem::take(corners);
            corners.extend(
                from.iter().flat_map(|point| ends.iter().map(|end| point.with(*axis, *end))),
            );
        };
        // Where it rests here it may move elsewhere, as a load does of a coil that stands free.
        if rise == 0.0 {
            put(&mut low, &[*least, *most]);
            put(&mut high, &[*least, *most]);
        } else {
            let (lowers, raises) = if rise > 0.0 { (*least, *most) } else { (*most, *least) };
            put(&mut low, &[lowers]);
            put(&mut high, &[raises]);
        }
    }
    low.extend(high);
    varied.over(low, figure)
}

/// The same of a figure that goes one way and then the other: the most is attained at one of all
/// corners; the least may be lower between them.
///
/// # Errors
/// What is missing.
pub(crate) fn range_at_corners(
    of: &Drawing,
    figure: impl Fn(&Point) -> Result<f64, Figures>,
) -> Result<Range<f64>, Figures> {
    let figure: Of<'_> = &figure;
    let varied = Varied::of(of, figure)?;
    let mut corners = vec![varied.nominal.clone()];
    for (axis, ends) in &varied.axes {
        let from = core::mem::take(&mut corners);
        corners
            .extend(from.iter().flat_map(|point| ends.iter().map(|end| point.with(*axis, *end))));
    }
    varied.over(corners, figure)
}

/// What of a drawing makes a figure vary.
struct Varied {
    nominal: Point,
    value: f64,
    /// Each figure with a tolerance, but for the bar, and the ends of it.
    axes: Vec<(Figure, [f64; 2])>,
    bar: Option<[f64; 2]>,
    /// The figures whose tolerances nobody gave.
    unstated: Figures,
}

impl Varied {
    fn of(of: &Drawing, figure: Of<'_>) -> Result<Self, Figures> {
        let nominal = Point::nominal(of);
        let value = figure(&nominal)?;
        let mut found =
            Self { nominal, value, axes: Vec::new(), bar: None, unstated: Figures::NONE };
        for (axis, given) in Figure::ALL.into_iter().zip(of.varying()) {
            let Some(given) = given.filter(|_| found.nominal.used().contains(axis)) else {
                continue;
            };
            let range = given.range(axis);
            found.unstated = found.unstated | range.unstated();
            let ends = [range.least(), range.most()];
            if range.least() < range.most() {
                match axis {
                    Figure::Bar => found.bar = Some(ends),
                    _ => found.axes.push((axis, ends)),
                }
            }
        }
        Ok(found)
    }

    /// At some corners, and along the bar at each of them.
    fn over(self, corners: Vec<Point>, figure: Of<'_>) -> Result<Range<f64>, Figures> {
        let mut found = Vec::with_capacity(3 * corners.len());
        for corner in corners {
            match self.bar {
                Some([least, most]) => {
                    let along = |size: f64| figure(&corner.with(Figure::Bar, size));
                    found.extend(extremes(&along, least, most)?);
                }
                None => found.push(figure(&corner)?),
            }
        }
        Ok(Range::spanning(self.value, found.into_iter()).resting_on(self.unstated))
    }
}

/// The values at both ends, and the extreme between them where there is one.
fn extremes<E>(
    along: &impl Fn(f64) -> Result<f64, E>,
    least: f64,
    most: f64,
) -> Result<[f64; 3], E> {
    let step = (most - least) * 1e-4;
    let (first, last) = (along(least)?, along(most)?);
    let (rise, fall) = (along(least + step)? - first, last - along(most - step)?);
    let between = if rise > 0.0 && fall < 0.0 {
        turning(along, least, most, 1.0)?
    } else if rise < 0.0 && fall > 0.0 {
        turning(along, least, most, -1.0)?
    } else {
        first
    };
    Ok([first, between, last])
}

/// The most of `sign` times a function with one turning point, by the golden section.
fn turning<E>(
    along: &impl Fn(f64) -> Result<f64, E>,
    mut least: f64,
    mut most: f64,
    sign: f64,
) -> Result<f64, E> {
    const GOLDEN: f64 = 0.618_033_988_749_894_8;
    let (mut low, mut high) = (most - GOLDEN * (most - least), least + GOLDEN * (most - least));
    let (mut at_low, mut at_high) = (along(low)?, along(high)?);
    // A value near its turning point is flat: 40 cuts leave 4·10⁻⁹ of the width and its square of the value.
    for _ in 0..40 {
        if sign * at_low > sign * at_high {
            (most, high, at_high) = (high, low, at_low);
            low = most - GOLDEN * (most - least);
            at_low = along(low)?;
        } else {
            (least, low, at_low) = (low, high, at_high);
            high = least + GOLDEN * (most - least);
            at_high = along(high)?;
        }
    }
    Ok(if sign * at_low > sign * at_high { at_low } else { at_high })
}
