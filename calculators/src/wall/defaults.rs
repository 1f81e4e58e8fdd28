//! What the book takes where the scheme leaves a field empty, in the shop's own units.
//!
//! Common practice or defaults of this book, no source; a shop may change each of them within the bounds of its field.

use super::scheme::{Leeway, Material, Scheme, Stock};
use crate::quantity::{Exact, Length, Tape, Units};

const fn in64(sixty_fourths: i64) -> Length {
    Length::sixty_fourths(sixty_fourths)
}

/// One default in both unit systems.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Pair {
    /// Where the shop reads inches.
    pub imperial: Length,
    /// Where the shop reads millimetres.
    pub metric: Length,
}

impl Pair {
    const fn new(sixty_fourths: i64, micrometres: i64) -> Self {
        Self { imperial: in64(sixty_fourths), metric: Length::um(micrometres) }
    }

    /// The value in one unit system.
    pub const fn in_units(self, units: Units) -> Length {
        match units {
            Units::Imperial => self.imperial,
            Units::Metric => self.metric,
        }
    }
}

/// Clear wall between a plate and a board.
pub const PLATE_CLEARANCE: Pair = Pair::new(32, 12_000);
/// Most shift of one board.
pub const MAX_SHIFT: Pair = Pair::new(24, 10_000);
/// Most change between neighbouring bays, unless the share below is more.
pub const MAX_CHANGE: Pair = Pair::new(32, 12_000);
/// Most change between neighbouring bays as a share of the bay: 5 in 100.
pub const MAX_CHANGE_PERCENT: i64 = 5;
/// Radius of an eased edge.
pub const EDGE_RADIUS: Pair = Pair::new(8, 3_000);
/// Thinnest neck beside a notch, fibreboard.
pub const NECK_MDF: Pair = Pair::new(80, 32_000);
/// Thinnest neck beside a notch, solid timber.
pub const NECK_SOLID: Pair = Pair::new(64, 25_000);
/// Longest notch along a board.
pub const LONGEST_NOTCH: Pair = Pair::new(6 * 64, 150_000);
/// Air between a cut-out and what goes through it, and flat wood round a plate.
pub const CUT_CLEARANCE: Pair = Pair::new(4, 1_500);
/// Narrowest board that is ripped.
pub const NARROWEST_RIP: Pair = Pair::new(64, 25_000);
/// Relief above a hard floor where there is no base.
pub const FLOOR_RELIEF: Pair = Pair::new(8, 3_000);
/// A stud counts when its centre lies at least this far inside both edges of a board.
pub const STUD_MARGIN: Pair = Pair::new(32, 12_000);
/// What a saw cut eats, until it is measured.
pub const KERF: Pair = Pair::new(8, 3_200);
/// What is cut off each end of a stick.
pub const END_TRIM: Pair = Pair::new(32, 12_000);
/// Offcuts from this length are kept.
pub const KEEP_OFFCUT: Pair = Pair::new(12 * 64, 300_000);
/// No joint nearer than this to an opening or a plate.
pub const JOINT_DISTANCE: Pair = Pair::new(12 * 64, 300_000);
/// A gap up to this wide can be caulked; a wider one is scribed.
pub const WIDEST_CAULK: Pair = Pair::new(12, 5_000);
/// Thickness of plasterboard.
pub const PLASTERBOARD: Pair = Pair::new(32, 12_500);
/// What each plate left in the way adds to a layout's score.
pub const PLATE_PENALTY: Pair = Pair::new(64, 25_000);
/// No rail nearer than this to a plate's edge.
pub const RAIL_TO_PLATE: Pair = Pair::new(2 * 64, 50_000);
/// A board this short is left out, and a row this low is no row.
pub const SHORTEST_BOARD: Pair = Pair::new(2 * 64, 50_000);

/// The smallest bay: what is narrower is told.
pub const SMALLEST_BAY: Pair = Pair::new(2 * 64, 50_000);
/// The shortest piece of base.
pub const SHORTEST_BASE: Pair = Pair::new(6 * 64, 150_000);
/// A side of a thing asks for a board where at least so much of its height is free.
pub const FREE_SIDE: Pair = Pair::new(2 * 64, 50_000);
/// How far trim is set back from the edge of an opening without casing, where the edge is to show.
pub const SET_BACK: Pair = Pair::new(16, 6_000);
/// A ceiling turns where it departs by more than this from the chord.
pub const TURN_DEPARTURE: Pair = Pair::new(32, 12_000);
/// A new base is pressed down to a floor that departs by no more than this from its piece.
pub const FLOOR_STEP: Pair = Pair::new(4, 1_000);
/// An end is cut at an angle where the line it meets falls by more than this over the piece's width.
pub const SQUARE_FALL: Pair = Pair::new(4, 1_500);
/// A closed piece that rounding leaves short by more than this is told.
pub const ROUNDED_DOWN: Pair = Pair::new(4, 1_500);
/// Clear wall between a plate and a moulding.
pub const MOULDING_TO_PLATE: Pair = Pair::new(8, 3_000);

/// A kink of a rail whose half is under this many degrees is cut square.
pub const SQUARE_KINK: f64 = 0.25;

/// The scheme with every empty field filled.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Settled {
    /// The tape for marks.
    pub tape: Tape,
    /// The tape for the saw stop.
    pub saw_tape: Tape,
    /// Clear wall between a plate and a board.
    pub clearance: Length,
    /// Most shift of one board.
    pub max_shift: Length,
    /// Most change between neighbours where it was given.
    pub max_change: Option<Length>,
    /// Radius of an eased edge.
    pub edge_radius: Length,
    /// Thinnest neck beside a notch.
    pub min_neck: Length,
    /// Thickness of plasterboard.
    pub plasterboard: Length,
    /// What a saw cut eats.
    pub kerf: Length,
    /// What is cut off each end of a stick.
    pub end_trim: Length,
    /// Offcuts from this length are kept.
    pub keep_offcut: Length,
}

impl Settled {
    /// Fills the empty fields of a scheme and a stock.
    pub fn of(scheme: &Scheme, stock: &Stock) -> Self {
        let units = scheme.tape.units();
        Self {
            plasterboard: scheme.plasterboard.map_or(PLASTERBOARD.in_units(units), Length::from),
            kerf: stock.kerf.map_or(KERF.in_units(units), Length::from),
            end_trim: stock.end_trim.map_or(END_TRIM.in_units(units), Length::from),
            keep_offcut: stock.keep_offcut.map_or(KEEP_OFFCUT.in_units(units), Length::from),
            ..Self::with_leeway(&scheme.leeway, scheme.material, scheme.tape)
        }
    }

    /// Fills the empty fields of a leeway; everything else takes the book's default.
    pub fn with_leeway(leeway: &Leeway, material: Material, tape: Tape) -> Self {
        let units = tape.units();
        let neck = match material {
            Material::Mdf => NECK_MDF,
            Material::Solid => NECK_SOLID,
        };
        Self {
            tape,
            saw_tape: saw_tape(tape),
            clearance: leeway.clearance.map_or(PLATE_CLEARANCE.in_units(units), Length::from),
            max_shift: leeway.max_shift.map_or(MAX_SHIFT.in_units(units), Length::from),
            max_change: leeway.max_change.map(Length::from),
            edge_radius: leeway.edge_radius.map_or(EDGE_RADIUS.in_units(units), Length::from),
            min_neck: leeway.min_neck.map_or(neck.in_units(units), Length::from),
            plasterboard: PLASTERBOARD.in_units(units),
            kerf: KERF.in_units(units),
            end_trim: END_TRIM.in_units(units),
            keep_offcut: KEEP_OFFCUT.in_units(units),
        }
    }

    /// The shop's units.
    pub const fn units(&self) -> Units {
        self.tape.units()
    }

    /// How much two neighbouring bays may differ when they are this wide.
    pub fn change_limit(&self, bay: Exact) -> Exact {
        max_change(self.max_change, bay, self.units())
    }
}

/// How much neighbouring bays of this width may differ: as given, else a share of the bay or a fixed length, whichever is more.
pub fn max_change(given: Option<Length>, bay: Exact, units: Units) -> Exact {
    let usual = || bay.times(MAX_CHANGE_PERCENT, 100).unwrap_or(Exact::ZERO).max(MAX_CHANGE.in_units(units).exact());
    given.map_or_else(usual, Length::exact)
}

/// The tape that has the saw stop's steps.
pub const fn saw_tape(tape: Tape) -> Tape {
    match tape {
        Tape::Eighth => Tape::Sixteenth,
        Tape::Sixteenth | Tape::ThirtySecond => Tape::ThirtySecond,
        Tape::SixtyFourth => Tape::SixtyFourth,
        Tape::TwoMillimetres | Tape::Millimetre => Tape::Millimetre,
        Tape::HalfMillimetre => Tape::HalfMillimetre,
    }
}
