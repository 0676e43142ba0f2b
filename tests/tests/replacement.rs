//! Replacements: a spring for itself, limits that are drawn closer, sampled tolerances, figures that
//! are missing, published nests, frames by hand, contradictions and orders.
#![cfg(test)]

#[path = "replacement/any.rs"]
mod any;
#[path = "replacement/by_hand.rs"]
mod by_hand;
#[path = "replacement/less.rs"]
mod less;
#[path = "replacement/missing.rs"]
mod missing;
#[path = "replacement/orders.rs"]
mod orders;
#[path = "replacement/refused.rs"]
mod refused;
#[path = "replacement/sampled.rs"]
mod sampled;
#[path = "replacement/springs.rs"]
mod springs;
#[path = "replacement/together.rs"]
mod together;
