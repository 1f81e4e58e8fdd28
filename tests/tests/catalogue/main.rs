//! Every calculator of the catalogue by what must hold for all of them: units, directions, and inputs of any shape.

mod any_shape;
mod directions;
mod judged;
mod printed_working;
mod units;
