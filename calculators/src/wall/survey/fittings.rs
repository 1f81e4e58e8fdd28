//! What stands in a wall and on it: openings, plates, and parts that are kept clear.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

use super::{Along, Clearance, Height, Thickness};

/// A window, door, fireplace or other opening, by the edges that boards stop at.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(title = "Opening")]
pub struct Opening {
    /// What it is.
    #[schemars(title = "Kind")]
    pub kind: OpeningKind,
    /// Left edge: the outside of its casing, or the opening itself where there is no casing.
    #[schemars(title = "Left")]
    pub left: Along,
    /// Right edge: the outside of its casing, or the opening itself.
    #[schemars(title = "Right")]
    pub right: Along,
    /// Lowest edge: the underside of the apron, or the sill; empty where it stands on the floor.
    #[serde(default)]
    #[schemars(title = "Underside of apron or sill")]
    pub bottom: Option<Height>,
    /// Highest edge: the top of the head casing, or the head.
    #[schemars(title = "Top of head casing")]
    pub top: Height,
    /// How far the casing stands out from the wall; empty where there is no casing.
    #[serde(default)]
    #[schemars(title = "Casing projection")]
    pub casing_projection: Option<Thickness>,
    /// How far trim that can burn must stay from it: copy it from the label or the local code.
    #[serde(default)]
    #[schemars(title = "Clearance to trim")]
    pub clearance: Option<Clearance>,
    /// The shape of its head; empty is level.
    #[serde(default)]
    #[schemars(title = "Head")]
    pub head: Option<Head>,
    /// The stool (window board) with its horns, where it reaches past the casing.
    #[serde(default)]
    #[schemars(title = "Stool")]
    pub stool: Option<Stool>,
    /// The apron under the stool, where it is narrower than the casing; boards may stand beside it.
    #[serde(default)]
    #[schemars(title = "Apron")]
    pub apron: Option<Apron>,
}

/// The head of an opening that is not level.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(title = "Head")]
pub struct Head {
    /// Its shape.
    #[schemars(title = "Kind")]
    pub kind: HeadKind,
    /// Where a curve begins on both sides; of a sloping head the height at its left side.
    #[schemars(title = "Springing")]
    pub springing: Height,
    /// The height at the right side of a sloping head.
    #[serde(default)]
    #[schemars(title = "Right side")]
    pub right: Option<Height>,
}

/// The shapes of a head.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum HeadKind {
    /// Level.
    #[default]
    Level,
    /// Half of a circle: it rises by half of the width.
    Round,
    /// Less than half of a circle.
    Segmental,
    /// Straight, higher at one side.
    Sloping,
}

/// The stool of a window, past its casing.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(title = "Stool")]
pub struct Stool {
    /// The end of its left horn.
    #[schemars(title = "Left")]
    pub left: Along,
    /// The end of its right horn.
    #[schemars(title = "Right")]
    pub right: Along,
    /// Its underside.
    #[schemars(title = "Underside")]
    pub bottom: Height,
    /// Its upper side.
    #[schemars(title = "Upper side")]
    pub top: Height,
}

/// The apron under a stool.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(title = "Apron")]
pub struct Apron {
    /// Its left end.
    #[schemars(title = "Left")]
    pub left: Along,
    /// Its right end.
    #[schemars(title = "Right")]
    pub right: Along,
    /// Its upper edge, under the stool; its lower edge is the opening's underside.
    #[schemars(title = "Upper edge")]
    pub top: Height,
}

/// The kinds of openings.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum OpeningKind {
    /// A window.
    Window,
    /// A door.
    Door,
    /// A fireplace.
    Fireplace,
    /// An alcove, a hatch, built-in furniture.
    Other,
}

/// A switch, socket or other box, by the edges of its plate, not of the box behind it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(title = "Box")]
pub struct WallBox {
    /// What it is.
    #[schemars(title = "Kind")]
    pub kind: BoxKind,
    /// Left edge of the plate.
    #[schemars(title = "Left")]
    pub left: Along,
    /// Right edge of the plate.
    #[schemars(title = "Right")]
    pub right: Along,
    /// Lower edge of the plate, above the high floor point.
    #[schemars(title = "Bottom")]
    pub bottom: Height,
    /// Upper edge of the plate.
    #[schemars(title = "Top")]
    pub top: Height,
    /// What was agreed where a board meets the plate; empty lets the plan look for the least shift.
    #[serde(default)]
    #[schemars(title = "Agreed")]
    pub agreed: Option<Agreed>,
}

/// The kinds of boxes.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum BoxKind {
    /// A light switch.
    Switch,
    /// A socket outlet.
    Socket,
    /// A thermostat.
    Thermostat,
    /// Telephone, data, aerial.
    Data,
    /// Anything else with a plate.
    Other,
}

/// What the client, the fitter and where needed the electrician have agreed about a plate and a board.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Agreed {
    /// The plate sits flat on one board, made wide enough.
    WideBoard,
    /// The board is notched round the plate.
    Notch,
    /// An electrician moves the box.
    MoveBox,
    /// It stays as it is.
    Leave,
}

/// Something that trim must stay away from.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(title = "To be kept clear")]
pub struct KeepClear {
    /// What it is.
    #[schemars(title = "Kind")]
    pub kind: KeepClearKind,
    /// Its left edge.
    #[schemars(title = "Left")]
    pub left: Along,
    /// Its right edge.
    #[schemars(title = "Right")]
    pub right: Along,
    /// Its lower edge, above the high floor point.
    #[schemars(title = "Bottom")]
    pub bottom: Height,
    /// Its upper edge.
    #[schemars(title = "Top")]
    pub top: Height,
    /// How far trim must stay away on every side: copy it from the label. Empty stops the work there until it is read.
    #[serde(default)]
    #[schemars(title = "Clearance on the label")]
    pub clearance: Option<Clearance>,
}

/// The kinds of things to be kept clear.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum KeepClearKind {
    /// A heater or radiator.
    Heater,
    /// An air vent or return.
    Vent,
    /// A smoke, heat or gas detector.
    Detector,
    /// A consumer unit, panel or isolator.
    Panel,
    /// Anything else.
    Other,
}
