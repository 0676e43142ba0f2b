//! What lies in a nest's way from its lower seat to the frame: pads, plates and shims, over and under it.
//!
//! ```text
//! H = h(F) + Σ (t_j − F/k_j)
//! ```
//! `H` height from the lower seat to the frame · `h(F)` height of the nest under its load · `t_j` thickness of a
//! layer without load · `k_j` its squeeze, load per length; without end where none is stated
//!
//! A rigid layer does what a shim of its thickness does. One that is worn or missing lets its corner down
//! by what it lost, under the same load.

use crate::formula::Formula;
use crate::nest::{Law, LawError, Member, Nest, NestError, State};
use crate::quantity::{Force, Length, SpringRate, System};
use crate::say::{Say, says};
use crate::source::{Known, Source};
use thiserror::Error;

/// Where the height of a stack comes from.
pub const SOURCE: Source = Source::new("statics", "springs in series", Known::Derived);

/// The thickness of all layers without load.
pub const THICKNESS: Formula = Formula::new("{T} = Σ [{tp}]");
/// Height from the lower seat to the frame.
pub const HEIGHT: Formula = Formula::new("{H} = {h} + {T} − {sq}");
/// A pad, plate or shim in the way of the load.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Layer {
    /// Thickness without load.
    pub thickness: Length,
    /// Load per length by which it is squeezed; none of what does not give.
    pub squeeze: Option<SpringRate>,
}

/// Layers that lie on each other, in any order.
///
/// # Example
/// A nest of 200 N/mm, 300 mm free, on a pad of 20 mm that gives 2000 N/mm, under 10 kN:
/// ```
/// use coilnest::nest::{Law, Member, Nest};
/// use coilnest::quantity::{Force, Length, SpringRate};
/// use coilnest::quantity::unit::{millimeter, newton, newton_per_millimeter};
/// use coilnest::stack::{Layer, Stack};
///
/// let mm = Length::new::<millimeter>;
/// let rate = SpringRate::new::<newton_per_millimeter>;
/// let law = Law::linear(rate(200.0))?;
/// let nest = Nest::new(vec![Member { free: mm(300.0), law, solid: None, raise: mm(0.0) }])?;
/// let stack = Stack::new(vec![Layer { thickness: mm(20.0), squeeze: Some(rate(2000.0)) }])?;
///
/// let stands = stack.on(&nest, Force::new::<newton>(10_000.0))?;
/// assert!((stands.height.get::<millimeter>() - 265.0).abs() < 1e-9); // 300 − 50 + 20 − 5
/// let back = stack.at_height(&nest, stands.height)?;
/// assert!((back.load.get::<newton>() - 10_000.0).abs() < 1e-6);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Stack {
    layers: Vec<Layer>,
}

/// A nest with its stack under a load.
#[derive(Clone, Debug, PartialEq)]
pub struct Stood {
    /// Height from the lower seat to the frame.
    pub height: Length,
    /// The nest alone.
    pub nest: State,
}

/// Why layers make no stack, or do not bear a load. Layers are counted from 1.
#[derive(Clone, Copy, Debug, Error, PartialEq)]
#[error("{}", self.say(System::Metric))]
#[non_exhaustive]
pub enum StackError {
    /// A layer without thickness.
    Thickness {
        /// Which layer.
        layer: usize,
        /// Its thickness.
        thickness: Length,
    },
    /// A layer whose squeeze is no rate.
    Squeeze {
        /// Which layer.
        layer: usize,
        /// Its squeeze.
        squeeze: SpringRate,
    },
    /// A layer that is squeezed to nothing.
    Crushed {
        /// Which layer.
        layer: usize,
        /// The load.
        load: Force,
    },
    /// The nest has no answer.
    Nest(#[from] NestError),
    /// A rate of the nest is none.
    Law(#[from] LawError),
}

says! {
    StackError through [Nest, Law] {
        Thickness { layer, thickness } =>
            "layer {layer} is {thickness} thick", "a thickness above zero",
            "leave out what is not there";
        Squeeze { layer, squeeze } =>
            "layer {layer} has a squeeze of {squeeze}", "a rate above zero",
            "leave it out where it does not give";
        Crushed { layer, load } =>
            "layer {layer} would be squeezed to nothing by {load}", "a load that it bears",
            "see whether its squeeze is right";
    }
}

impl Stack {
    /// From layers; none is a stack without height.
    ///
    /// # Errors
    /// [`StackError::Thickness`], [`StackError::Squeeze`].
    pub fn new(layers: Vec<Layer>) -> Result<Self, StackError> {
        for (of, layer) in layers.iter().zip(1..) {
            let thickness = of.thickness;
            if !(thickness.value > 0.0 && thickness.value.is_finite()) {
                return Err(StackError::Thickness { layer, thickness });
            }
            match of.squeeze {
                Some(squeeze) if !(squeeze.value > 0.0 && squeeze.value.is_finite()) => {
                    return Err(StackError::Squeeze { layer, squeeze });
                }
                _ => {}
            }
        }
        Ok(Self { layers })
    }

    /// Its layers.
    #[must_use]
    pub fn layers(&self) -> &[Layer] {
        &self.layers
    }

    /// Its thickness without load.
    #[must_use]
    pub fn thickness(&self) -> Length {
        self.layers.iter().map(|layer| layer.thickness).sum()
    }

    /// The same of layers that do not give.
    #[must_use]
    pub fn rigid(&self) -> Self {
        let layers = self.layers.iter().map(|layer| Layer { squeeze: None, ..*layer });
        Self { layers: layers.collect() }
    }

    /// By how much it is squeezed under a load.
    #[must_use]
    pub fn squeezed(&self, load: Force) -> Length {
        self.layers.iter().filter_map(|layer| Some(load / layer.squeeze?)).sum()
    }

    /// Its thickness under a load.
    ///
    /// # Errors
    /// [`StackError::Crushed`].
    pub fn under(&self, load: Force) -> Result<Length, StackError> {
        for (of, layer) in self.layers.iter().zip(1..) {
            if of.squeeze.is_some_and(|squeeze| load / squeeze >= of.thickness) {
                return Err(StackError::Crushed { layer, load });
            }
        }
        Ok(self.thickness() - self.squeezed(load))
    }

    /// A nest and this stack under a load.
    ///
    /// # Errors
    /// [`StackError::Crushed`], [`StackError::Nest`].
    ///
    /// # Source
    /// [`SOURCE`].
    pub fn on(&self, nest: &Nest, load: Force) -> Result<Stood, StackError> {
        let thickness = self.under(load)?;
        let state = nest.at_load(load)?;
        Ok(Stood { height: state.height + thickness, nest: state })
    }

    /// The nest where it and this stack together are so high.
    ///
    /// # Errors
    /// As [`Stack::over`]; [`NestError::BelowSolid`] where both are not so low.
    pub fn at_height(&self, nest: &Nest, height: Length) -> Result<State, StackError> {
        let load = self.over(nest)?.at_height(height - self.thickness())?.load;
        self.under(load)?;
        Ok(nest.at_load(load)?)
    }

    /// The nest as it is felt through what the stack gives: a nest of as many coils that under each load is
    /// lower by as much as the stack is squeezed.
    ///
    /// ```text
    /// h' = h − F · Σ 1/k_j        k' = k / (1 + k · Σ 1/k_j)
    /// ```
    /// `k` rate of all coils that carry, of which each coil has the step that it adds.
    ///
    /// # Errors
    /// [`StackError::Nest`], [`StackError::Law`]: none of a nest that is one.
    ///
    /// # Source
    /// [`SOURCE`].
    pub fn over(&self, nest: &Nest) -> Result<Nest, StackError> {
        if self.layers.iter().all(|layer| layer.squeeze.is_none()) {
            return Ok(nest.clone());
        }
        let felt = |height: Length| {
            let load: Force =
                nest.members().iter().map(|coil| coil.law.load(coil.touch_height() - height)).sum();
            height - self.squeezed(load)
        };
        let softened = |rate: SpringRate| {
            let give: f64 =
                self.layers.iter().filter_map(|layer| Some((rate / layer.squeeze?).value)).sum();
            rate / (1.0 + give)
        };
        let mut members = Vec::with_capacity(nest.members().len());
        for (index, member) in nest.members().iter().enumerate() {
            let free = felt(member.touch_height());
            let mut law: Option<(Law, SpringRate)> = None;
            for (from, _) in member.law.steps() {
                let height = member.touch_height() - from;
                // With the coils before it at this height, and then with it.
                let [before, with] = rates_at(nest, index, height).map(softened);
                let step = with - before;
                law = Some(match law {
                    None => (Law::linear(step)?, step),
                    Some((law, rate)) => (law.then(free - felt(height), rate + step)?, rate + step),
                });
            }
            let Some((law, _)) = law else { continue };
            let solid = member.solid_height().map(felt);
            members.push(Member { free, law, solid, raise: Length::default() });
        }
        Ok(Nest::new(members)?)
    }
}

/// The rate of a nest at a bend of one of its coils, without its step and with it. Of coils that bend at
/// one height the first goes first.
fn rates_at(nest: &Nest, member: usize, height: Length) -> [SpringRate; 2] {
    let mut rates = [SpringRate::default(); 2];
    for (index, coil) in nest.members().iter().enumerate() {
        for (from, step) in coil.law.steps() {
            let at = coil.touch_height() - from;
            let before = at > height || at >= height && index < member;
            let own = index == member && at >= height && at <= height;
            let [without, with] = &mut rates;
            if before {
                *without += step;
            }
            if before || own {
                *with += step;
            }
        }
    }
    rates
}
