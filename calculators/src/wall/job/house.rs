//! What stands until a shop has its own: losses, beads, waits, working hours. Defaults of this book.

use crate::programme::calendar::Calendar;
use crate::quantity::{Amount, Length, Units, kind};

/// Losses, beads and waits that stand until a shop has its own. Defaults of this book.
pub(super) struct House {
    pub(super) bead: Length,
    pub(super) leg: Length,
    pub(super) cartridge: Amount<kind::SmallVolume>,
    pub(super) tape_roll: Length,
    pub(super) edge_sand_hours: f64,
    pub(super) adhesive_wait: i64,
    pub(super) filler_wait: i64,
    pub(super) caulk_wait: i64,
}

pub(super) const WAVE: f64 = 1.25;
pub(super) const ADHESIVE_LOST: f64 = 0.10;
pub(super) const CAULK_LOST: f64 = 0.25;
pub(super) const HOLE_ML: f64 = 0.05;
pub(super) const SHRINK: f64 = 0.10;
pub(super) const TAPE_EXTRA: f64 = 10.0;
pub(super) const TRANSFER: f64 = 0.55;
pub(super) const HOSE_L: f64 = 0.475;
pub(super) const RESERVE: f64 = 1.05;
/// Square metres a hand sprays in an hour, setting up and cleaning left aside.
pub(super) const SPRAY_M2_H: f64 = 20.0;
/// Working hours of the default calendar: 08:00 to 16:30, Monday to Friday, starting on a Monday.
pub(super) const CALENDAR: Calendar = Calendar { starts: 480, ends: 990, first_weekday: 0, days_a_week: 5 };

impl House {
    pub(super) fn of(units: Units) -> Self {
        let (bead, leg, millilitres, tape_roll) = match units {
            Units::Imperial => (Length::um(6_350), Length::um(3_175), 298.692_648_6, Length::inches(180 * 12)),
            Units::Metric => (Length::mm(6), Length::mm(3), 300.0, Length::mm(55_000)),
        };
        Self {
            bead,
            leg,
            cartridge: Amount::of(millilitres),
            tape_roll,
            edge_sand_hours: 0.05,
            adhesive_wait: 16 * 60,
            filler_wait: 3 * 60,
            caulk_wait: 2 * 60,
        }
    }
}
