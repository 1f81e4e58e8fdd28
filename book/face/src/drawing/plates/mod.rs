//! Drawings of the handbook: a joint, a section, a way of working, each drawn from the calculation it belongs to.
//!
//! A drawing takes its measures from the worked example of a calculator, or from a chapter's own values for it, so that the figure in
//! the drawing and the figure on the page are one. A drawing that claims a scale keeps it; one that does not says so.

mod beads;
mod box_depth;
mod cable_zones;
mod corner_lap;
mod corner_legs;
mod film;
mod frame_corner;
mod given;
mod grains;
mod marks;
mod meeting;
mod mitre;
mod nail;
mod notch;
mod plate;
mod pole;
mod rake;
mod scarf;
mod spray;
mod turn;

use calculators::catalogue::{Fault, entry};
use calculators::quantity::Units;
use serde_json::Value;

use given::Given;
pub use plate::Plate;

/// One drawing a chapter may name.
struct Named {
    name: &'static str,
    /// The calculator whose measures it shows, if any.
    of: Option<&'static str>,
    draw: fn(&Given) -> Option<Plate>,
}

const fn drawn(name: &'static str, of: &'static str, draw: fn(&Given) -> Option<Plate>) -> Named {
    Named { name, of: Some(of), draw }
}

const PLATES: [Named; 18] = [
    Named { name: "meeting-joints", of: None, draw: meeting::plate },
    drawn("corner-legs", "corner-angle", corner_legs::plate),
    drawn("corner-lap", "corner-boards", corner_lap::plate),
    drawn("marks-and-steps", "running-marks", marks::plate),
    drawn("pole-and-marks", "story-pole", pole::plate),
    drawn("mitre-cut", "saw-angle", mitre::plate),
    drawn("frame-corner", "frame-mitre", frame_corner::plate),
    Named { name: "cable-zones", of: None, draw: cable_zones::plate },
    drawn("scarf-on-stud", "scarf-joint", scarf::plate),
    drawn("nail-window", "nail-choice", nail::plate),
    drawn("box-depth", "box-set-back", box_depth::plate),
    drawn("neck", "notch-neck", notch::plate),
    drawn("rake-cut", "stair-rake", rake::plate),
    drawn("rail-turn", "rail-kinks", turn::plate),
    Named { name: "grit-steps", of: None, draw: grains::plate },
    drawn("bead-shapes", "caulk", beads::plate),
    drawn("wet-and-dry", "paint-film", film::plate),
    drawn("spray-overlap", "spray-passes", spray::plate),
];

/// Every drawing a chapter may name.
pub fn known() -> impl Iterator<Item = &'static str> {
    PLATES.iter().map(|named| named.name)
}

/// A drawing with the measures of its calculation, or with a chapter's own values laid over them.
///
/// # Errors
/// A name that is not [`known`], values for a drawing that takes none, or values that its calculation refuses; in words.
pub fn draw(name: &str, values: &Value, units: Units) -> Result<Plate, String> {
    let Some(named) = PLATES.iter().find(|named| named.name == name) else {
        let known = known().collect::<Vec<_>>().join(", ");
        return Err(format!("there is no drawing {name}; known are {known}"));
    };
    let given = match named.of.and_then(entry) {
        None if !values.is_null() => return Err(format!("the drawing {name} takes no values")),
        None => Given::nothing(units),
        Some(entry) => Given::of(entry, values, units).map_err(|faults| told(name, &faults, units))?,
    };
    (named.draw)(&given).ok_or_else(|| format!("the drawing {name} cannot be drawn with these values"))
}

fn told(name: &str, faults: &[Fault], units: Units) -> String {
    let printed = Fault::print_all(faults, units);
    let first = printed.get(0);
    let part = |key: &str| first.and_then(|fault| fault.get(key)?.as_str()).unwrap_or_default();
    format!("the drawing {name}: {}: {}", part("pointer").trim_start_matches('/'), part("why"))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_drawing_says_what_it_shows_in_both_unit_systems() {
        for name in known() {
            for units in [Units::Imperial, Units::Metric] {
                let plate = draw(name, &Value::Null, units).unwrap_or_else(|why| panic!("{why}"));
                let html = plate.html(name);
                for part in ["<title id=", "<desc id=", "<figcaption>", "role=\"img\""] {
                    assert!(html.contains(part), "{name} has no {part}");
                }
                assert!(!html.contains("NaN") && !html.contains("inf\""), "{name}: a place that is no number");
            }
        }
    }

    #[test]
    fn nothing_is_drawn_beyond_its_sheet() {
        for name in known() {
            for units in [Units::Imperial, Units::Metric] {
                let html = draw(name, &Value::Null, units).unwrap_or_else(|why| panic!("{why}")).html(name);
                let size = html.split("viewBox=\"0 0 ").nth(1).and_then(|rest| rest.split('"').next()).expect("a size");
                let (wide, tall) = size.split_once(' ').expect("width and height");
                let (wide, tall): (f64, f64) = (wide.parse().expect("a width"), tall.parse().expect("a height"));
                for (mark, most) in [(" x1=\"", wide), (" x2=\"", wide), (" y1=\"", tall), (" y2=\"", tall)] {
                    for text in html.split(mark).skip(1).filter_map(|rest| rest.split('"').next()) {
                        let at: f64 = text.parse().expect("a number");
                        assert!((-0.1..=most + 0.1).contains(&at), "{name} in {units:?}: {mark}{at} lies off {size}");
                    }
                }
            }
        }
    }
}
