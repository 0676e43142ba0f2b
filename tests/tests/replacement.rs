//! Replacements: a spring for itself, limits that are drawn closer, sampled tolerances, figures that
//! are missing, published nests, frames by hand, contradictions and orders.

mod any;
mod by_hand;
mod less;
mod missing;
mod orders;
mod refused;
mod sampled;
mod springs;
mod together;
