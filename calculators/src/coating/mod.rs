//! Paint: how much surface, how thick a film, how much in the pot, how thin, how fast the gun goes.

pub mod film;
pub mod flow_cup;
pub mod gloss_level;
pub mod overspray;
pub mod paint_area;
pub mod paint_film;
pub mod solvent_content;
pub mod spray_pass;
pub mod thinning;
pub mod tin_choice;
pub mod tins;
