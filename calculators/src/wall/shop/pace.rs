//! How long a shop takes for each task, one pair of hands.

use crate::catalogue::Input;
use crate::quantity::{Physical, Within, kind};

/// Hours of one pair of hands for one of a thing.
pub type TaskTime = Physical<kind::Hours, 0, 20_000>;

/// A shop's hours by task. What is empty is the book's estimate.
#[derive(Clone, Copy, Debug, Default, PartialEq, Input)]
#[field("Hours by task")]
pub struct Pace {
    /// Every task of this wall takes so many times longer; a stair about 1.4, a textured wall about 1.3; empty is 1.
    #[field("Difficulty", default, usual = ["0.8", "2"])]
    pub difficulty: Option<Physical<kind::Number, 100, 5_000>>,
    /// One wall; empty is 0.75 h.
    #[field("Set out a wall", default)]
    pub set_out: Option<TaskTime>,
    /// Cut and fix one; empty is 0.4 h.
    #[field("A rail", default)]
    pub rail: Option<TaskTime>,
    /// Cut and fix one; empty is 0.3 h.
    #[field("A board", default)]
    pub board: Option<TaskTime>,
    /// One end that is not cut square; empty is 0.2 h.
    #[field("A mitre", default)]
    pub mitre: Option<TaskTime>,
    /// Work round one; empty is 0.4 h.
    #[field("A plate", default)]
    pub plate: Option<TaskTime>,
    /// Fill one; empty is half a minute.
    #[field("A nail hole", default)]
    pub hole: Option<Physical<kind::Minutes, 0, 60_000>>,
    /// To sand a wall, whatever its size; empty is 0.5 h.
    #[field("Set up for sanding", default)]
    pub sand_set_up: Option<TaskTime>,
    /// Edges and faces of one; empty is 0.05 h.
    #[field("Sand a board", default)]
    pub sand_board: Option<TaskTime>,
    /// To rub a dried coat of a wall down and wipe it, whatever its size; empty is 0.25 h.
    #[field("Set up for de-nibbing", default)]
    pub denib_set_up: Option<TaskTime>,
    /// Rub one down between coats; empty is 0.03 h.
    #[field("De-nib a board", default)]
    pub denib_board: Option<TaskTime>,
    /// Length of edge in an hour; empty is 100 ft (30.48 m).
    #[field("Caulk run in an hour", default)]
    pub caulk_run: Option<Within<1_000_000, 300_000_000>>,
    /// To mask a wall, whatever its size; empty is 0.5 h.
    #[field("Set up for masking", default)]
    pub mask_set_up: Option<TaskTime>,
    /// Mask one; empty is 0.6 h.
    #[field("An opening", default)]
    pub opening: Option<TaskTime>,
    /// To spray a coat, and to clean up after it; empty is 0.75 h.
    #[field("Set up for a coat", default)]
    pub coat_set_up: Option<TaskTime>,
    /// Area sprayed in an hour; empty is 20 m².
    #[field("Sprayed in an hour", default)]
    pub sprayed: Option<Physical<kind::Area, 1_000, 500_000>>,
    /// Of one wall; empty is 0.5 h.
    #[field("Pull the tape", default)]
    pub pull_tape: Option<TaskTime>,
    /// Of one wall; empty is 1 h.
    #[field("Put right and hand over", default)]
    pub hand_over: Option<TaskTime>,
}
