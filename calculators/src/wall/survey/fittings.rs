//! What stands in a wall and on it: openings, plates, and parts that are kept clear.

use super::{Along, Clearance, Height, Thickness};
use crate::catalogue::Input;

/// A window, door, fireplace or other opening, by the edges that boards stop at.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Input)]
#[field("Opening")]
pub struct Opening {
    /// What it is.
    #[field("Kind")]
    pub kind: OpeningKind,
    /// Left edge: the outside of its casing, or the opening itself where there is no casing.
    #[field("Left")]
    pub left: Along,
    /// Right edge: the outside of its casing, or the opening itself.
    #[field("Right")]
    pub right: Along,
    /// Lowest edge: the underside of the apron, or the sill; empty where it stands on the floor.
    #[field("Underside of apron or sill", default)]
    pub bottom: Option<Height>,
    /// Highest edge: the top of the head casing, or the head.
    #[field("Top of head casing")]
    pub top: Height,
    /// How far the casing stands out from the wall; empty where there is no casing.
    #[field("Casing projection", default)]
    pub casing_projection: Option<Thickness>,
    /// How far trim that can burn must stay from it: copy it from the label or the local code.
    #[field("Clearance to trim", default)]
    pub clearance: Option<Clearance>,
    /// The shape of its head; empty is level.
    #[field("Head", default)]
    pub head: Option<Head>,
    /// The stool (window board) with its horns, where it reaches past the casing.
    #[field("Stool", default)]
    pub stool: Option<Stool>,
    /// The apron under the stool, where it is narrower than the casing; boards may stand beside it.
    #[field("Apron", default)]
    pub apron: Option<Apron>,
}

/// The head of an opening that is not level.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Input)]
#[field("Head")]
pub struct Head {
    /// Its shape.
    #[field("Kind")]
    pub kind: HeadKind,
    /// Where a curve begins on both sides; of a sloping head the height at its left side.
    #[field("Springing")]
    pub springing: Height,
    /// The height at the right side of a sloping head.
    #[field("Right side", default)]
    pub right: Option<Height>,
}

/// The shapes of a head.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Input)]
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
#[derive(Clone, Copy, Debug, PartialEq, Eq, Input)]
#[field("Stool")]
pub struct Stool {
    /// The end of its left horn.
    #[field("Left")]
    pub left: Along,
    /// The end of its right horn.
    #[field("Right")]
    pub right: Along,
    /// Its underside.
    #[field("Underside")]
    pub bottom: Height,
    /// Its upper side.
    #[field("Upper side")]
    pub top: Height,
}

/// The apron under a stool.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Input)]
#[field("Apron")]
pub struct Apron {
    /// Its left end.
    #[field("Left")]
    pub left: Along,
    /// Its right end.
    #[field("Right")]
    pub right: Along,
    /// Its upper edge, under the stool; its lower edge is the opening's underside.
    #[field("Upper edge")]
    pub top: Height,
}

/// The kinds of openings.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Input)]
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
#[derive(Clone, Copy, Debug, PartialEq, Eq, Input)]
#[field("Box")]
pub struct WallBox {
    /// What it is.
    #[field("Kind")]
    pub kind: BoxKind,
    /// Left edge of the plate.
    #[field("Left")]
    pub left: Along,
    /// Right edge of the plate.
    #[field("Right")]
    pub right: Along,
    /// Lower edge of the plate, above the high floor point.
    #[field("Bottom")]
    pub bottom: Height,
    /// Upper edge of the plate.
    #[field("Top")]
    pub top: Height,
    /// What was agreed where a board meets the plate; empty lets the plan look for the least shift.
    #[field("Agreed", default)]
    pub agreed: Option<Agreed>,
}

/// The kinds of boxes.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Input)]
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
#[derive(Clone, Copy, Debug, PartialEq, Eq, Input)]
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
#[derive(Clone, Copy, Debug, PartialEq, Eq, Input)]
#[field("To be kept clear")]
pub struct KeepClear {
    /// What it is.
    #[field("Kind")]
    pub kind: KeepClearKind,
    /// Its left edge.
    #[field("Left")]
    pub left: Along,
    /// Its right edge.
    #[field("Right")]
    pub right: Along,
    /// Its lower edge, above the high floor point.
    #[field("Bottom")]
    pub bottom: Height,
    /// Its upper edge.
    #[field("Top")]
    pub top: Height,
    /// How far trim must stay away on every side: copy it from the label. Empty stops the work there until it is read.
    #[field("Clearance on the label", default)]
    pub clearance: Option<Clearance>,
}

/// The kinds of things to be kept clear.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Input)]
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
