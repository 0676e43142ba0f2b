//! How high two coils, one inside the other, stand under 3000 lb.

use coilnest::quantity::{System, read};
use coilnest::reading::{Reading, Step, write_inch};
use coilnest::{Law, Length, Member, Nest, bounds};
use std::error::Error;

fn main() -> Result<(), Box<dyn Error>> {
    println!("{}", height()?);
    Ok(())
}

fn height() -> Result<String, Box<dyn Error>> {
    let nest = Nest::new(vec![coil("14", "1000 lb/in")?, coil("13 3/4", "400 lb/in")?])?;
    let state = nest.at_load(read("3000 lb", System::Inch, &bounds::LOAD)?)?;
    Ok(write_inch(state.height, Step::Sixteenth))
}

fn coil(free: &str, rate: &str) -> Result<Member, Box<dyn Error>> {
    let free = Reading::parse(free, System::Inch, &bounds::FREE_HEIGHT)?.length();
    let law = Law::linear(read(rate, System::Inch, &bounds::RATE)?)?;
    Ok(Member { free, law, solid: None, raise: Length::default() })
}

#[test]
fn by_hand() -> Result<(), Box<dyn Error>> {
    // 1000·s + 400·(s − 1/4) = 3000, so s = 3100/1400 = 2.214 in
    assert_eq!(height()?, "11 13/16 in scant");
    Ok(())
}
