//! What a shop brings to a wall besides boards: its coating's data sheet, the room's air, its rates and prices, and its own values
//! for every loss, wait and hour that the book would otherwise estimate.
//!
//! Values of a data sheet have no default; without them the paint, the waits and the programme are left out and the plan says so.
//! A shop's own value replaces the book's estimate, never the data sheet: of a wait of the shop and one on a sheet the longer governs.

mod faults;
mod pace;
mod usage;
mod waits;
mod working_days;

pub(super) use faults::shop_faults;
pub use pace::{Pace, TaskTime};
pub use usage::Usage;
pub use waits::{Wait, WaitHours, Waits};
pub use working_days::WorkingDays;

use crate::catalogue::Input;
use crate::coating::tins::Tin;
use crate::price::job_cost::Share;
use crate::price::margin::MarginShare;
use crate::quantity::{Count, Money, Physical, kind};

/// What a shop brings. What is empty takes the book's default, or leaves its figures out.
#[derive(Clone, Debug, Default, PartialEq, Input)]
#[field("Shop")]
pub struct Shop {
    /// From the paint's data sheet; without it no paint, no waits and no programme are worked out.
    #[field("Coating", default)]
    pub coating: Option<Coating>,
    /// A coat under the others, by its own data sheet; without it nothing is primed.
    #[field("Primer", default)]
    pub primer: Option<Primer>,
    /// The room while coats dry, nights counted; without it the sheet's own times stand.
    #[field("Air in the room", default)]
    pub air: Option<Air>,
    /// Hours, prices and shares; without them no price is worked out.
    #[field("Rates and prices", default)]
    pub rates: Option<Rates>,
    /// Waits between tasks, by the shop's own watch and by the data sheets.
    #[field("Waits", default)]
    pub waits: Waits,
    /// When and with how many the shop works.
    #[field("Working days", default)]
    pub days: WorkingDays,
    /// How long the shop takes for each task.
    #[field("Hours by task", default)]
    pub pace: Pace,
    /// Beads, cartridges, losses and reserves.
    #[field("What goes in and what is lost", default)]
    pub usage: Usage,
}

/// A coating by its data sheet.
#[derive(Clone, Debug, PartialEq, Input)]
#[field("Coating")]
pub struct Coating {
    /// What one coat must leave.
    #[field("Dry film of one coat")]
    pub dry_film: Physical<kind::Film, 12_000, 150_000>,
    /// Solids by VOLUME, not by weight.
    #[field("Volume solids")]
    pub volume_solids: Physical<kind::Percent, 10_000, 80_000>,
    /// How many.
    #[field("Coats")]
    pub coats: Count<1, 4>,
    /// Of what leaves the gun, the share that stays on the work; empty is 55 %.
    #[field("Reaches the work", default)]
    pub transfer: Option<Physical<kind::Percent, 15_000, 95_000>>,
    /// Stays in hose and pot; empty is 0.475 L.
    #[field("Left in the hose", default)]
    pub hose: Option<Physical<kind::Paint, 0, 10_000>>,
    /// On the sheet.
    #[field("Touch-dry on the sheet")]
    pub touch: Physical<kind::Hours, 50, 72_000>,
    /// On the sheet: the least that is ever planned.
    #[field("Recoat on the sheet")]
    pub recoat: Physical<kind::Hours, 100, 168_000>,
    /// On the sheet; below it nothing is sprayed.
    #[field("Least temperature on the sheet")]
    pub least_temperature: Physical<kind::Temperature, 0, 30_000>,
    /// Sizes and prices; empty leaves tins out.
    #[field("Tins on sale", default, size(..=8))]
    pub tins: Vec<Tin>,
}

/// A primer by its data sheet: one coat, before the others.
#[derive(Clone, Debug, PartialEq, Input)]
#[field("Primer")]
pub struct Primer {
    /// What the coat must leave.
    #[field("Dry film")]
    pub dry_film: Physical<kind::Film, 12_000, 150_000>,
    /// Solids by VOLUME, not by weight.
    #[field("Volume solids")]
    pub volume_solids: Physical<kind::Percent, 10_000, 80_000>,
    /// Of what leaves the gun, the share that stays on the work; empty is 55 %.
    #[field("Reaches the work", default)]
    pub transfer: Option<Physical<kind::Percent, 15_000, 95_000>>,
    /// Time to the next coat, on the sheet: the least that is ever planned.
    #[field("Overcoat on the sheet")]
    pub recoat: Physical<kind::Hours, 100, 168_000>,
    /// On the sheet; below it nothing is sprayed.
    #[field("Least temperature on the sheet")]
    pub least_temperature: Physical<kind::Temperature, 0, 30_000>,
}

/// The air while coats dry.
#[derive(Clone, Copy, Debug, PartialEq, Input)]
#[field("Air in the room")]
pub struct Air {
    /// Day and night.
    #[field("Air temperature")]
    pub temperature: Physical<kind::Temperature, 1_000, 45_000>,
    /// Day and night.
    #[field("Relative humidity")]
    pub relative_humidity: Physical<kind::Humidity, 1_000, 98_000>,
}

/// Hours, prices and shares of a shop.
#[derive(Clone, Debug, PartialEq, Input)]
#[field("Rates and prices")]
pub struct Rates {
    /// What an hour costs the shop.
    #[field("Cost of an hour")]
    pub hour: Money,
    /// One cartridge of caulk.
    #[field("Caulk, a cartridge", default)]
    pub caulk: Option<Money>,
    /// One cartridge of adhesive.
    #[field("Adhesive, a cartridge", default)]
    pub adhesive: Option<Money>,
    /// Nails, pins, filler, paper, tape, film and what else goes along.
    #[field("Sundries", default)]
    pub sundries: Option<Money>,
    /// Electrician, hire, waste.
    #[field("Others’ bills", default)]
    pub others: Option<Money>,
    /// Of labour and materials; empty is 8 %.
    #[field("Contingency", default)]
    pub contingency: Option<Share>,
    /// Of labour and materials; empty is 15 %.
    #[field("Overhead", default)]
    pub overhead: Option<Share>,
    /// Of the price; empty is 20 %.
    #[field("Margin", default)]
    pub margin: Option<MarginShare>,
}
