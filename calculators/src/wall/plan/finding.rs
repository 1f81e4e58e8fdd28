//! What was found on a layout that must be settled or is worth knowing, and the ways to settle it.

use crate::catalogue::{Output, Words};
use crate::quantity::Exact;

/// Something that is in the way.
#[derive(Clone, Debug, PartialEq, Output)]
pub struct Conflict {
    /// Whether it must be settled before work starts.
    pub severity: Severity,
    /// What it is.
    pub what: ConflictKind,
    /// What is in the way of what.
    pub said: Words,
    /// What can be done, the best first; those that are refused say why.
    pub options: Vec<Choice>,
    /// Labels of the pieces concerned.
    pub members: Vec<String>,
    /// The box concerned, counted from the top of the survey's list.
    pub box_index: Option<usize>,
    /// Where it is on the elevation: left, bottom, right, top.
    pub place: [Exact; 4],
}

/// How much a conflict weighs.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Output)]
pub enum Severity {
    /// Must be settled before anything is cut.
    Settle,
    /// Worth knowing.
    Note,
}

/// The kinds of conflicts.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Output)]
pub enum ConflictKind {
    /// A board and a plate.
    Plate,
    /// A rail and a plate.
    RailPlate,
    /// Trim within a clearance.
    Clearance,
    /// A clearance that nobody has read yet.
    ClearanceUnknown,
    /// A board over the turn of a rail or base.
    Kink,
    /// A bay outside the wished limits.
    Bay,
    /// A board ripped too narrow.
    Sliver,
    /// A member longer than any stick, with no stud to join it on.
    Joint,
    /// A wall end that leans.
    Lean,
    /// A board thicker than the base or casing it meets.
    Projection,
    /// Two rails, or a rail and an opening, too near each other.
    Rail,
    /// A corner that was not measured.
    Corner,
    /// Wall that stays without boards.
    Bare,
    /// A strip of wall too narrow for a rip.
    Strip,
    /// A bay narrower than the smallest, or a strip beside a thing.
    NarrowBay,
    /// A line that departs from what was measured: light over a rail, a wedge under a crown.
    Line,
    /// A board cut to a curve.
    Curve,
    /// An end that nothing carries or closes.
    End,
    /// A board that needs stock of its own.
    Stock,
    /// Pieces that no stick gives.
    Stick,
    /// A closed piece that is cut short by more than caulk hides.
    Rounding,
    /// Bays without a frame of mouldings.
    Moulding,
    /// A price that leaves pieces out.
    Price,
}

/// One way to settle a conflict.
#[derive(Clone, Debug, PartialEq, Output)]
pub struct Choice {
    /// What is done.
    pub action: Action,
    /// Whether it can be done within the limits.
    pub allowed: bool,
    /// Whether the plan already does it.
    pub applied: bool,
    /// How, or why not.
    pub words: Words,
}

/// What can be done about a conflict.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Output)]
pub enum Action {
    /// Leave it.
    Leave,
    /// Shift the board and spread the change over its run.
    Shift,
    /// Another number of boards in the run.
    ChangeCount,
    /// One board wide enough to carry the plate.
    WideBoard,
    /// Notch the board round the plate.
    Notch,
    /// An electrician moves the box.
    MoveBox,
    /// Move the rail.
    MoveRail,
    /// Scribe a taper.
    Scribe,
    /// Caulk it.
    Caulk,
    /// Chamfer or ease an edge.
    Chamfer,
    /// Keep trim out.
    KeepOut,
    /// Read the label, or measure.
    Measure,
    /// Fix blocking between studs.
    Blocking,
    /// Move a board.
    MoveBoard,
    /// Cover the light with a strip.
    Cover,
    /// Order other stock.
    LongerStick,
}
