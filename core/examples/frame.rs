//! What four nests carry under a frame whose weight lies off the middle.

use coilnest::quantity::unit::{kilonewton, millimeter, newton_per_millimeter};
use coilnest::{Force, Frame, Law, Length, Member, Nest, Place, SpringRate, Support, Weight};
use std::error::Error;

fn main() -> Result<(), Box<dyn Error>> {
    for load in loads()? {
        println!("{load:.2} kN");
    }
    Ok(())
}

/// Left and right of the first axle, then of the second, 2 m further on; 1.5 m from side to side.
fn loads() -> Result<Vec<f64>, Box<dyn Error>> {
    let mm = Length::new::<millimeter>;
    let law = Law::linear(SpringRate::new::<newton_per_millimeter>(400.0))?;
    let coil = Member { free: mm(350.0), law, solid: Some(mm(220.0)), raise: mm(0.0) };
    let nest = Nest::new(vec![coil])?;
    let at = |along, across| Place { along: mm(along), across: mm(across) };
    let places = [at(0.0, 750.0), at(0.0, -750.0), at(2000.0, 750.0), at(2000.0, -750.0)];
    let stands =
        |place| Support { place, nest: nest.clone(), stop: None, shim: mm(0.0), ground: mm(0.0) };
    let frame = Frame::new(places.map(stands).to_vec(), None)?;
    let weight = Weight { load: Force::new::<kilonewton>(60.0), centre: at(1100.0, 50.0) };
    let settled = frame.settle(weight)?;
    Ok(settled.supports.iter().map(|nest| nest.load.get::<kilonewton>()).collect())
}

#[test]
fn by_hand() -> Result<(), Box<dyn Error>> {
    // 60/4 · (1 ± 100/1000 ± 50/750): alike nests share a moment by their distance from the middle.
    let expected = [14.5, 12.5, 17.5, 15.5];
    let near = |(found, expected): (&f64, &f64)| (found - expected).abs() < 1e-9;
    let loads = loads()?;
    assert!(loads.iter().zip(&expected).all(near), "{loads:?}, {expected:?}");
    Ok(())
}
