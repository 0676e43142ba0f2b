//! Which coils would carry 3000 N at 150 mm in a pocket of 110 mm, the lightest first.

use coilnest::coil::ends::Ends;
use coilnest::quantity::unit::{
    gigapascal, kilogram_per_cubic_meter, megapascal, millimeter, newton, newton_per_millimeter,
};
use coilnest::quantity::{Force, Length, MassDensity, Pressure, SpringRate};
use coilnest::sizing::{
    Allowed, Factor, Make, Metal, Need, NeedError, Rank, Reserve, Room, Rounding, Sized, Sizing,
    Work, steps,
};

fn main() -> Result<(), NeedError> {
    for found in sized()?.designs {
        let coil = found.design.coil;
        let (bar, outside) = (coil.bar().get::<millimeter>(), coil.outside().get::<millimeter>());
        println!("bar {bar:.1} mm, outside {outside:.1} mm");
    }
    Ok(())
}

fn sized() -> Result<Sized, NeedError> {
    let mm = Length::new::<millimeter>;
    let allowed =
        |mpa, factor| Allowed::Stress { stress: Pressure::new::<megapascal>(mpa), factor };
    let rate = SpringRate::new::<newton_per_millimeter>(60.0);
    let need = Need {
        work: Work::at_height(Force::new::<newton>(3000.0), mm(150.0), rate),
        room: Room { pocket: Some(mm(110.0)), clearance: mm(2.0), ..Room::default() },
        reserve: Reserve::default(),
        make: Make::usual(Ends::ClosedGround),
        metal: Metal {
            shear_modulus: Pressure::new::<gigapascal>(81.5),
            poisson: 0.26,
            density: MassDensity::new::<kilogram_per_cubic_meter>(7850.0),
            at_load: allowed(600.0, Factor::Bergstrasser),
            at_solid: Some(allowed(760.0, Factor::Uncorrected)),
        },
    };
    let bars = [10.0, 11.0, 12.0, 13.0, 14.0].map(mm);
    let sizing = Sizing::new(need, &bars, &steps(3.0, 12.0, 0.25))?;
    Ok(sizing.designs(&Rounding::METRIC, Rank::Mass))
}

#[test]
fn all_go_into_the_pocket() -> Result<(), NeedError> {
    let sized = sized()?;
    let outside = |coil: coilnest::coil::Diameters| coil.outside().get::<millimeter>();
    assert!(!sized.designs.is_empty());
    assert!(sized.designs.iter().all(|found| outside(found.design.coil) <= 108.0));
    Ok(())
}
