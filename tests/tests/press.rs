//! Press tests against nests that were closed in 1900, `data/press-nests-1900.csv`, which says where
//! they stand, and against another library's F distribution.

use approx::relative_eq;
use coilnest::load_test::{Fit, LoadTest, Reading};
use coilnest::propagation::Doubted;
use coilnest::quantity::unit::{inch, millimeter, newton, pound_force, pound_force_per_inch};
use coilnest::quantity::{Force, Length, SpringRate};
use statrs::distribution::{ContinuousCDF, FisherSnedecor};
use std::error::Error;

/// A nest of 1900, in inches and pounds.
struct Nest1900 {
    spring: u32,
    at_12_25: f64,
    height_at_18000: f64,
    at_9_75: f64,
    closed: Option<[f64; 2]>,
    back_at_18000: Option<f64>,
}

impl Nest1900 {
    fn all() -> Result<Vec<Self>, Box<dyn Error>> {
        let text = include_str!("../data/press-nests-1900.csv");
        let lines = text.lines().filter(|line| !line.starts_with('#'));
        lines.skip(1).map(Self::read).collect()
    }

    fn read(line: &str) -> Result<Self, Box<dyn Error>> {
        let fields: Vec<&str> = line.split(',').collect();
        let [spring, at_12_25, height, at_9_75, closed_height, closed_load, back] = fields[..]
        else {
            return Err("seven columns".into());
        };
        let optional = |text: &str| match text {
            "" => Ok(None),
            text => text.parse().map(Some),
        };
        Ok(Self {
            spring: spring.parse()?,
            at_12_25: at_12_25.parse()?,
            height_at_18000: height.parse()?,
            at_9_75: at_9_75.parse()?,
            closed: optional(closed_height)?.zip(optional(closed_load)?).map(<[f64; 2]>::from),
            back_at_18000: optional(back)?,
        })
    }

    fn loading(&self) -> Vec<Reading> {
        let open = [[12.25, self.at_12_25], [self.height_at_18000, 18_000.0], [9.75, self.at_9_75]];
        // A spring that stood at 12.25 in under 18 000 lb has one reading of it.
        let once = usize::from((self.at_12_25 - 18_000.0).abs() < 0.5);
        open.into_iter().skip(once).chain(self.closed).map(inches_and_pounds).collect()
    }
}

fn inches_and_pounds([height, load]: [f64; 2]) -> Reading {
    Reading { height: Length::new::<inch>(height), load: Force::new::<pound_force>(load) }
}

/// The rate that the report's two heights give, spring by spring: derived from the report by exact
/// arithmetic on its digits, (P at 9.75 less P at 12.25)/2.5.
const RATES_1900: [(u32, f64); 12] = [
    (8, 11_160.0),
    (9, 11_608.0),
    (10, 11_176.0),
    (12, 11_080.0),
    (13, 11_304.0),
    (14, 11_168.0),
    (15, 10_512.0),
    (16, 10_760.0),
    (17, 11_648.0),
    (18, 10_960.0),
    (19, 11_000.0),
    (20, 11_200.0),
];

#[test]
fn nests_of_1900_have_the_rate_between_their_two_heights() -> Result<(), Box<dyn Error>> {
    let nests = Nest1900::all()?;
    assert_eq!(nests.len(), RATES_1900.len());
    for (nest, (spring, rate)) in nests.iter().zip(RATES_1900) {
        let two = [[12.25, nest.at_12_25], [9.75, nest.at_9_75]].map(inches_and_pounds);
        let fit = LoadTest::new(two.to_vec(), vec![], None)?.fit();
        assert_eq!(nest.spring, spring);
        let found = fit.rate.get::<pound_force_per_inch>();
        assert!(relative_eq!(found, rate, max_relative = 1e-9), "{spring}: {found}");
    }
    Ok(())
}

/// The line through the two heights foretells the height under 18 000 lb, a reading of its own: it
/// stood where the line says or up to a twentieth of an inch lower, for a nest is softer until both
/// coils bear all round (derived from the report, whose heights go to a hundredth).
#[test]
fn nests_of_1900_stand_near_the_line_under_18000_pounds() -> Result<(), Box<dyn Error>> {
    for nest in Nest1900::all()? {
        let two = [[12.25, nest.at_12_25], [9.75, nest.at_9_75]].map(inches_and_pounds);
        let fit = LoadTest::new(two.to_vec(), vec![], None)?.fit();
        let foretold = fit.free - Force::new::<pound_force>(18_000.0) / fit.rate;
        let off = nest.height_at_18000 - foretold.get::<inch>();
        assert!((-0.05..=0.01).contains(&off), "{}: {off}", nest.spring);
    }
    Ok(())
}

/// Down to where they lay closed, the readings are of one spring: the rate of all of them is that of
/// the two heights within twice its own doubt.
#[test]
fn nests_of_1900_keep_their_rate_until_they_close() -> Result<(), Box<dyn Error>> {
    for (nest, (_, rate)) in Nest1900::all()?.iter().zip(RATES_1900) {
        let fit = LoadTest::new(nest.loading(), vec![], None)?.fit();
        let two = Doubted::exact(SpringRate::new::<pound_force_per_inch>(rate));
        let off = fit.rate_against(two).in_doubts;
        let spring = nest.spring;
        assert_eq!(off.is_some(), nest.loading().len() > 2, "{spring}");
        assert!(off.is_none_or(|off| off.abs() <= 2.0), "{spring}: {off:?}");
    }
    Ok(())
}

/// Closed and let go again, spring 20 stood 0.3 to 0.4 in lower under the same load: 12.27 and then
/// 11.89 in under 18 000 lb.
#[test]
fn a_nest_of_1900_stands_lower_on_the_way_back() -> Result<(), Box<dyn Error>> {
    let mut seen = 0;
    for nest in Nest1900::all()? {
        let Some(back) = nest.back_at_18000 else { continue };
        let unloading = vec![inches_and_pounds([back, 18_000.0])];
        let lost = LoadTest::new(nest.loading(), unloading, None)?.hysteresis();
        let lost = lost.ok_or("a reading within the loads")?.greatest.lower.get::<inch>();
        assert!((lost - 0.38).abs() < 1e-9 && (0.3..=0.4).contains(&lost), "{lost}");
        seen += 1;
    }
    assert_eq!(seen, 1);
    Ok(())
}

/// Ten loads off a line, in newtons, invented.
const SCATTER: [f64; 10] = [31.0, -44.0, 12.0, 55.0, -37.0, -8.0, 26.0, -61.0, 40.0, -3.0];

/// The chance is the F-test's, by another library's F distribution with 2 and m − 4 degrees of
/// freedom, times the seven ways to part ten readings with two or more on either side.
#[test]
fn the_chance_is_that_of_the_f_distribution() -> Result<(), Box<dyn Error>> {
    let other = FisherSnedecor::new(2.0, 6.0)?;
    for closing in [185.0, 200.0, 215.0, 232.0, 250.0, 260.0] {
        let readings = (0..).zip(SCATTER).map(|(number, off)| {
            let height = 300.0 - 15.0 * f64::from(number);
            let load = 250.0 * (320.0 - height) + 125.0 * f64::max(closing - height, 0.0) + off;
            Reading { height: Length::new::<millimeter>(height), load: Force::new::<newton>(load) }
        });
        let fit = LoadTest::new(readings.collect(), vec![], None)?.fit();
        let found = fit.closing.ok_or("a bend")?.chance;
        let two: f64 = fit.residuals.iter().map(|residual| residual.off.value.powi(2)).sum();
        let ratio = (one_line(&fit) - two) / 2.0 / (two / 6.0);
        let expected = 7.0 * other.sf(ratio);
        assert!(
            relative_eq!(found, expected, max_relative = 1e-8),
            "{closing}: {found} and {expected}"
        );
    }
    Ok(())
}

/// Sum of squares about one line through all readings, by the sums of a pocket calculator.
fn one_line(fit: &Fit) -> f64 {
    let points = || fit.residuals.iter().map(|r| (r.reading.height.value, r.reading.load.value));
    let count = points().map(|_| 1.0).sum::<f64>();
    let sum = |of: fn((f64, f64)) -> f64| points().map(of).sum::<f64>() / count;
    let (x, y) = (sum(|(x, _)| x), sum(|(_, y)| y));
    let (xx, xy, yy) = (sum(|(x, _)| x * x), sum(|(x, y)| x * y), sum(|(_, y)| y * y));
    count * ((yy - y * y) - (xy - x * y).powi(2) / (xx - x * x))
}
