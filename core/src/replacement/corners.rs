//! The least and the most that the tolerances of a spring make of a figure.

use super::particulars::{Figure, Particulars};
use super::point::{Point, axes};
use super::range::Range;
use crate::quantity::Length;
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

/// A figure over all tolerances, attained at both ends, in SI units.
///
/// # Errors
/// What is missing.
pub(super) fn range(
    of: &Particulars,
    figure: impl Fn(&Point) -> Result<f64, Vec<Figure>>,
) -> Result<Range<f64>, Vec<Figure>> {
    let nominal = Point::nominal(of);
    let value = figure(&nominal)?;
    let mut corners = vec![nominal];
    for axis in axes(of) {
        let from = core::mem::take(&mut corners);
        for point in from {
            for end in [axis.least, axis.most] {
                let mut corner = point;
                (axis.put)(&mut corner, end);
                corners.push(corner);
            }
        }
    }
    let mut found = Vec::with_capacity(4 * corners.len());
    for corner in corners {
        match of.bar.filter(|bar| bar.least() < bar.most()) {
            Some(bar) => {
                let along = |size: f64| {
                    figure(&Point { bar: Some(Length { value: size, ..bar.nominal() }), ..corner })
                };
                found.extend(extremes(&along, bar.least().value, bar.most().value)?);
            }
            None => found.push(figure(&corner)?),
        }
    }
    Ok(Range::spanning(value, found.into_iter()))
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
