//! How long a shop takes for each task, one pair of hands.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use crate::quantity::{Physical, Within, kind};

/// Hours of one pair of hands for one of a thing.
pub type TaskTime = Physical<kind::Hours, 0, 20_000>;

/// A shop's hours by task. What is empty is the book's estimate.
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(title = "Hours by task")]
pub struct Pace {
    /// Every task of this wall takes so many times longer; a stair about 1.4, a textured wall about 1.3; empty is 1.
    #[serde(default)]
    #[schemars(title = "Difficulty", extend("x-usual" = ["0.8", "2"]))]
    pub difficulty: Option<Physical<kind::Number, 100, 5_000>>,
    /// One wall; empty is 0.75 h.
    #[serde(default)]
    #[schemars(title = "Set out a wall")]
    pub set_out: Option<TaskTime>,
    /// Cut and fix one; empty is 0.4 h.
    #[serde(default)]
    #[schemars(title = "A rail")]
    pub rail: Option<TaskTime>,
    /// Cut and fix one; empty is 0.3 h.
    #[serde(default)]
    #[schemars(title = "A board")]
    pub board: Option<TaskTime>,
    /// One end that is not cut square; empty is 0.2 h.
    #[serde(default)]
    #[schemars(title = "A mitre")]
    pub mitre: Option<TaskTime>,
    /// Work round one; empty is 0.4 h.
    #[serde(default)]
    #[schemars(title = "A plate")]
    pub plate: Option<TaskTime>,
    /// Fill one; empty is half a minute.
    #[serde(default)]
    #[schemars(title = "A nail hole")]
    pub hole: Option<Physical<kind::Minutes, 0, 60_000>>,
    /// To sand a wall, whatever its size; empty is 0.5 h.
    #[serde(default)]
    #[schemars(title = "Set up for sanding")]
    pub sand_set_up: Option<TaskTime>,
    /// Edges and faces of one; empty is 0.05 h.
    #[serde(default)]
    #[schemars(title = "Sand a board")]
    pub sand_board: Option<TaskTime>,
    /// To rub a dried coat of a wall down and wipe it, whatever its size; empty is 0.25 h.
    #[serde(default)]
    #[schemars(title = "Set up for de-nibbing")]
    pub denib_set_up: Option<TaskTime>,
    /// Rub one down between coats; empty is 0.03 h.
    #[serde(default)]
    #[schemars(title = "De-nib a board")]
    pub denib_board: Option<TaskTime>,
    /// Length of edge in an hour; empty is 100 ft (30.48 m).
    #[serde(default)]
    #[schemars(title = "Caulk run in an hour")]
    pub caulk_run: Option<Within<1_000_000, 300_000_000>>,
    /// To mask a wall, whatever its size; empty is 0.5 h.
    #[serde(default)]
    #[schemars(title = "Set up for masking")]
    pub mask_set_up: Option<TaskTime>,
    /// Mask one; empty is 0.6 h.
    #[serde(default)]
    #[schemars(title = "An opening")]
    pub opening: Option<TaskTime>,
    /// To spray a coat, and to clean up after it; empty is 0.75 h.
    #[serde(default)]
    #[schemars(title = "Set up for a coat")]
    pub coat_set_up: Option<TaskTime>,
    /// Area sprayed in an hour; empty is 20 m².
    #[serde(default)]
    #[schemars(title = "Sprayed in an hour")]
    pub sprayed: Option<Physical<kind::Area, 1_000, 500_000>>,
    /// Of one wall; empty is 0.5 h.
    #[serde(default)]
    #[schemars(title = "Pull the tape")]
    pub pull_tape: Option<TaskTime>,
    /// Of one wall; empty is 1 h.
    #[serde(default)]
    #[schemars(title = "Put right and hand over")]
    pub hand_over: Option<TaskTime>,
}
