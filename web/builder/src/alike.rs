//! Puts functions that are alike side by side in an engine: a packer finds again what stands near, and says so
//! shorter. Nothing else changes; each function is what it was, under another number.

use std::cmp::Reverse;
use std::convert::Infallible;
use std::ops::Range;

use anyhow::{Context, Result};
use wasm_encoder::reencode::{Error, Reencode};
use wasm_encoder::{CodeSection, FunctionSection, Module};
use wasmparser::{CodeSectionReader, FunctionSectionReader, Parser, Payload, TypeRef};

/// The functions of a module in another order.
pub(crate) fn side_by_side(module: &[u8]) -> Result<Vec<u8>> {
    let (imported, bodies) = functions(module).context("cannot read the engine")?;
    let bodies: Vec<&[u8]> = bodies.into_iter().filter_map(|range| module.get(range)).collect();
    let mut ordered = Module::new();
    Ordered::by(imported, order(&bodies))
        .parse_core_module(&mut ordered, Parser::new(0), module)
        .context("cannot put the engine's functions in order")?;
    Ok(ordered.finish())
}

/// How many functions a module imports, and where the others stand.
fn functions(module: &[u8]) -> Result<(u32, Vec<Range<usize>>)> {
    let (mut imported, mut bodies) = (0, Vec::new());
    for payload in Parser::new(0).parse_all(module) {
        match payload? {
            Payload::ImportSection(section) => {
                for import in section.into_imports() {
                    imported += u32::from(matches!(import?.ty, TypeRef::Func(_)));
                }
            }
            Payload::CodeSectionEntry(body) => bodies.push(body.range()),
            _ => {}
        }
    }
    Ok((imported, bodies))
}

/// From the first on, each time the one most like the last of those that are left; among equals the nearest in length.
fn order(bodies: &[&[u8]]) -> Vec<usize> {
    let mut left: Vec<(usize, usize, Sketch)> =
        bodies.iter().enumerate().map(|(at, body)| (at, body.len(), Sketch::of(body))).collect();
    let mut order = Vec::new();
    let mut next = 0;
    while next < left.len() {
        let (at, length, sketch) = left.remove(next);
        order.push(at);
        let likeness = |(at, other, drawn): &(usize, usize, Sketch)| {
            (sketch.shares(drawn), Reverse(other.abs_diff(length)), Reverse(*at))
        };
        let nearest = left.iter().enumerate().max_by_key(|(_, one)| likeness(one));
        next = nearest.map_or(0, |(place, _)| place);
    }
    order
}

/// Of all runs of a few bytes in a body, the least by each of some mixings: two bodies share about as many of them
/// as they share of their runs.
struct Sketch([u32; Self::MIXINGS]);

impl Sketch {
    const MIXINGS: usize = 64;
    const RUN: usize = 4;

    fn of(body: &[u8]) -> Self {
        let mut least = [u32::MAX; Self::MIXINGS];
        for run in body.windows(Self::RUN) {
            let mut mixed = run.iter().fold(0, |sum: u32, byte| sum << 8 | u32::from(*byte));
            for one in &mut least {
                mixed = (mixed ^ mixed >> 15).wrapping_mul(0x9E37_79B1).wrapping_add(0x85EB_CA6B);
                *one = mixed.min(*one);
            }
        }
        Self(least)
    }

    fn shares(&self, other: &Self) -> usize {
        self.0.iter().zip(&other.0).filter(|(one, other)| one == other).count()
    }
}

/// Writes a module with its functions in an order.
struct Ordered {
    imported: u32,
    order: Vec<usize>,
    /// The new place of each.
    places: Vec<u32>,
}

impl Ordered {
    fn by(imported: u32, order: Vec<usize>) -> Self {
        let mut placed: Vec<(usize, u32)> = order.iter().copied().zip(0..).collect();
        placed.sort_unstable();
        Self { imported, order, places: placed.into_iter().map(|(_, place)| place).collect() }
    }
}

impl Reencode for Ordered {
    type Error = Infallible;

    fn function_index(&mut self, function: u32) -> Result<u32, Error> {
        let own = function.checked_sub(self.imported).and_then(|own| usize::try_from(own).ok());
        let place = own.and_then(|own| self.places.get(own));
        Ok(place.map_or(function, |place| self.imported + place))
    }

    fn parse_function_section(
        &mut self,
        functions: &mut FunctionSection,
        section: FunctionSectionReader<'_>,
    ) -> Result<(), Error> {
        let types = section.into_iter().collect::<Result<Vec<u32>, _>>()?;
        for kind in self.order.iter().filter_map(|from| types.get(*from)) {
            functions.function(*kind);
        }
        Ok(())
    }

    fn parse_code_section(
        &mut self,
        code: &mut CodeSection,
        section: CodeSectionReader<'_>,
    ) -> Result<(), Error> {
        let bodies = section.into_iter().collect::<Result<Vec<_>, _>>()?;
        for from in self.order.clone() {
            if let Some(body) = bodies.get(from) {
                self.parse_function_body(code, body.clone())?;
            }
        }
        Ok(())
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use wasm_encoder::{
        EntityType, ExportKind, ExportSection, Function, ImportSection, TypeSection,
    };

    /// Functions that each give some numbers, the last calling the first; one is imported before them.
    fn module(given: &[&[i32]]) -> Vec<u8> {
        let mut types = TypeSection::new();
        types.ty().function([], []);
        let mut imports = ImportSection::new();
        imports.import("page", "told", EntityType::Function(0));
        let (mut functions, mut code) = (FunctionSection::new(), CodeSection::new());
        for numbers in given {
            functions.function(0);
            let mut body = Function::new([]);
            for number in *numbers {
                body.instructions().i32_const(*number).drop();
            }
            body.instructions().call(1).call(0).end();
            code.function(&body);
        }
        let mut exports = ExportSection::new();
        exports.export("second", ExportKind::Func, 2);
        let mut module = Module::new();
        module.section(&types).section(&imports).section(&functions).section(&exports);
        module.section(&code);
        module.finish()
    }

    #[test]
    fn what_is_alike_comes_side_by_side_and_is_called_by_its_new_number() {
        let (long, other): (Vec<i32>, Vec<i32>) = ((1000..1040).collect(), (7000..7040).collect());
        let longer: Vec<i32> = (1000..1041).collect();
        let ordered = side_by_side(&module(&[&long, &other, &longer])).unwrap();

        let (imported, bodies) = functions(&ordered).unwrap();
        let lengths: Vec<usize> = bodies.iter().map(ExactSizeIterator::len).collect();
        assert_eq!((imported, bodies.len()), (1, 3));
        assert!(lengths[1] > lengths[0] && lengths[0] == lengths[2], "{lengths:?}");
        let exported = Parser::new(0).parse_all(&ordered).find_map(|payload| match payload {
            Ok(Payload::ExportSection(section)) => section.into_iter().next()?.ok(),
            _ => None,
        });
        assert_eq!(exported.map(|export| export.index), Some(3));
        // The first, which all call, stands first still; the imported one is no other.
        let first = ordered.get(bodies[0].clone()).unwrap();
        assert!(first.ends_with(&[0x10, 1, 0x10, 0, 0x0b]));
    }

    #[test]
    fn each_function_comes_once() {
        let bodies: [&[u8]; 5] = [b"a coil in a nest", b"", b"b", b"a coil in a seat", b""];
        let mut found = order(&bodies);
        assert_eq!(found[..2], [0, 3]);
        found.sort_unstable();
        assert_eq!(found, [0, 1, 2, 3, 4]);
    }
}
