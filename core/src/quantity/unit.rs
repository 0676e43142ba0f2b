//! The units in which numbers enter and leave, the inch-pound ones exact.
//!
//! Source of every factor: NIST Special Publication 811, 2008 edition, Appendix B: the inch is
//! 25.4 mm, the pound 0.453 592 37 kg and standard gravity 9.806 65 m/s², all exact, and the others
//! follow from these three.
//!
//! ```
//! use coilnest::quantity::{Force, unit};
//!
//! assert_eq!(Force::new::<unit::pound_force>(1.0).get::<unit::newton>(), 4.448_221_615_260_5);
//! ```

pub use self::energy::foot_pound_force;
pub use self::force::{kip_force, pound_force};
pub use self::mass::pound;
pub use self::mass_density::pound_per_cubic_inch;
pub use self::pressure::{
    kip_force_per_square_inch, million_pound_force_per_square_inch, newton_per_square_millimeter,
    pound_force_per_square_inch,
};
pub use self::rate::{
    kilogram_force_per_millimeter, newton_per_meter, newton_per_millimeter, pound_force_per_inch,
};
pub use uom::si::angle::{degree, radian};
pub use uom::si::energy::joule;
pub use uom::si::force::{kilogram_force, kilonewton, newton};
pub use uom::si::frequency::hertz;
pub use uom::si::length::{centimeter, foot, inch, meter, millimeter};
pub use uom::si::mass::kilogram;
pub use uom::si::mass_density::kilogram_per_cubic_meter;
pub use uom::si::pressure::{gigapascal, kilopascal, megapascal, pascal};

/// One inch in metres, exact.
pub const INCH_M: f64 = 0.025_4;
/// One foot in metres, exact.
pub const FOOT_M: f64 = 0.304_8;
/// One avoirdupois pound in kilograms, exact.
pub const POUND_KG: f64 = 0.453_592_37;
/// One pound-force in newtons, exact: 0.453 592 37 kg × 9.806 65 m/s².
pub const POUND_FORCE_N: f64 = 4.448_221_615_260_5;
/// One kilogram-force in newtons, exact: standard gravity.
pub const KILOGRAM_FORCE_N: f64 = 9.806_65;

mod force {
    unit! {
        system: uom::si;
        quantity: uom::si::force;

        /// Pound-force, 4.448 221 615 260 5 N exactly.
        @pound_force: crate::quantity::unit::POUND_FORCE_N;
            "lb", "pound-force", "pounds-force";
        /// Kip, a thousand pounds-force.
        @kip_force: 1000.0 * crate::quantity::unit::POUND_FORCE_N;
            "kip", "kip", "kips";
    }
}

mod rate {
    unit! {
        system: uom::si;
        quantity: uom::si::radiant_exposure;

        /// Newton per metre, the SI unit of a spring's rate.
        @newton_per_meter: 1.0;
            "N/m", "newton per metre", "newtons per metre";
        /// Newton per millimetre, 1000 N/m.
        @newton_per_millimeter: 1000.0;
            "N/mm", "newton per millimetre", "newtons per millimetre";
        /// Pound-force per inch, 175.126 835 … N/m: one pound-force over one inch.
        @pound_force_per_inch:
            crate::quantity::unit::POUND_FORCE_N / crate::quantity::unit::INCH_M;
            "lb/in", "pound-force per inch", "pounds-force per inch";
        /// Kilogram-force per millimetre, 9806.65 N/m exactly.
        @kilogram_force_per_millimeter: 1000.0 * crate::quantity::unit::KILOGRAM_FORCE_N;
            "kgf/mm", "kilogram-force per millimetre", "kilograms-force per millimetre";
    }
}

mod pressure {
    unit! {
        system: uom::si;
        quantity: uom::si::pressure;

        /// Pound-force per square inch, 6894.757 293 … Pa: one pound-force over one square inch.
        @pound_force_per_square_inch: crate::quantity::unit::POUND_FORCE_N
            / (crate::quantity::unit::INCH_M * crate::quantity::unit::INCH_M);
            "psi", "pound-force per square inch", "pounds-force per square inch";
        /// A thousand pounds-force per square inch.
        @kip_force_per_square_inch: 1.0e3 * crate::quantity::unit::POUND_FORCE_N
            / (crate::quantity::unit::INCH_M * crate::quantity::unit::INCH_M);
            "ksi", "kip per square inch", "kips per square inch";
        /// A million pounds-force per square inch.
        @million_pound_force_per_square_inch: 1.0e6 * crate::quantity::unit::POUND_FORCE_N
            / (crate::quantity::unit::INCH_M * crate::quantity::unit::INCH_M);
            "Mpsi", "million pounds-force per square inch",
            "million pounds-force per square inch";
        /// Newton per square millimetre, the same as a megapascal.
        @newton_per_square_millimeter: 1.0e6;
            "N/mm²", "newton per square millimetre", "newtons per square millimetre";
    }
}

mod mass {
    unit! {
        system: uom::si;
        quantity: uom::si::mass;

        /// Avoirdupois pound, 0.453 592 37 kg exactly.
        @pound: crate::quantity::unit::POUND_KG;
            "lb", "pound", "pounds";
    }
}

mod mass_density {
    unit! {
        system: uom::si;
        quantity: uom::si::mass_density;

        /// Pound per cubic inch, 27 679.904 … kg/m³.
        @pound_per_cubic_inch: crate::quantity::unit::POUND_KG
            / (crate::quantity::unit::INCH_M
                * crate::quantity::unit::INCH_M
                * crate::quantity::unit::INCH_M);
            "lb/in³", "pound per cubic inch", "pounds per cubic inch";
    }
}

mod energy {
    unit! {
        system: uom::si;
        quantity: uom::si::energy;

        /// Foot pound-force, 1.355 817 948 … J.
        @foot_pound_force:
            crate::quantity::unit::POUND_FORCE_N * crate::quantity::unit::FOOT_M;
            "ft·lb", "foot pound-force", "foot pounds-force";
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::{Energy, Force, Length, Mass, MassDensity, Pressure, SpringRate};

    /// The digits of NIST SP 811 (2008), Appendix B.8 and footnotes, carried further by exact
    /// decimal arithmetic from 25.4 mm, 0.453 592 37 kg and 9.806 65 m/s². A unit in the last place
    /// is what one rounded division may cost.
    fn same(found: f64, exact: f64) {
        assert!((found - exact).abs() <= exact * f64::EPSILON, "{found:e} is not {exact:e}");
    }

    #[test]
    fn inch_pound_units_are_those_of_sp_811() {
        same(Length::new::<inch>(1.0).value, 0.025_4);
        same(Length::new::<foot>(1.0).value, 0.304_8);
        same(Mass::new::<pound>(1.0).value, 0.453_592_37);
        same(Force::new::<pound_force>(1.0).value, 4.448_221_615_260_5);
        same(Force::new::<kip_force>(1.0).value, 4_448.221_615_260_5);
        same(Force::new::<kilogram_force>(1.0).value, 9.806_65);
        same(SpringRate::new::<pound_force_per_inch>(1.0).value, 175.126_835_246_476_4);
        same(Pressure::new::<pound_force_per_square_inch>(1.0).value, 6_894.757_293_168_361);
        same(Pressure::new::<kip_force_per_square_inch>(1.0).value, 6_894_757.293_168_361);
        same(
            Pressure::new::<million_pound_force_per_square_inch>(1.0).value,
            6_894_757_293.168_361,
        );
        same(MassDensity::new::<pound_per_cubic_inch>(1.0).value, 27_679.904_710_203_12);
        same(Energy::new::<foot_pound_force>(1.0).value, 1.355_817_948_331_400_4);
    }

    #[test]
    fn the_pound_force_is_the_pound_times_standard_gravity() {
        same(POUND_FORCE_N, POUND_KG * KILOGRAM_FORCE_N);
    }

    #[test]
    fn a_force_over_a_length_is_a_rate() {
        let rate: SpringRate = Force::new::<pound_force>(1.0) / Length::new::<inch>(1.0);
        same(rate.get::<pound_force_per_inch>(), 1.0);
        same(rate.get::<newton_per_meter>(), 175.126_835_246_476_4);
        let back: Force = rate * Length::new::<inch>(2.0);
        same(back.get::<pound_force>(), 2.0);
    }
}
