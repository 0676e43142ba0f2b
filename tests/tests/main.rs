//! All checks against the outside as one program: linked once, and run on all cores at a time.

#![cfg(test)]

mod coil_table;
mod column;
mod common_practice;
mod doubts;
mod ends;
mod frames;
mod guides;
mod jobs;
mod jobs_any;
mod jobs_errors;
mod jobs_whole;
mod judge;
mod kept;
mod level;
mod matching;
mod mutations;
mod nests;
mod one_coil;
mod one_nest;
mod oracle;
mod outside;
mod press;
mod properties;
mod published;
mod read_back;
mod reading;
mod replace_jobs;
mod replacement;
mod respell;
mod sampled;
mod schemas;
mod sheet_refusals;
mod sheets;
mod shims;
mod since;
mod sizing;
mod solid_elements;
mod spreadsheets;
mod stack;
mod standing;
mod verdicts;
mod workings;
