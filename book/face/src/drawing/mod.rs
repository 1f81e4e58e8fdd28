//! Drawings in SVG: the elevation of a wall, its sticks as bars, its programme as a line; and the plates of the chapters.
//!
//! One drawing serves screen, print and the file of a pack: strokes and fills are classes of the style sheet, lettering keeps its size
//! while the drawing scales. Light falls from the upper left: what stands proud has heavy right and lower edges. Every
//! figure of a drawing also stands in a list; the drawing is one picture to a screen reader, with title and description.

mod canvas;
mod dimension;
mod elevation;
mod lettered;
mod outline;
pub mod plates;
mod pole_strip;
mod sticks;
mod time_line;

pub use elevation::{Elevation, elevation};
pub use pole_strip::{PoleMark, Strip, strips};
pub use sticks::{StickBar, stick_bars};
pub use time_line::{TimeBar, time_line};
