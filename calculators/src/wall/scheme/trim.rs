//! More of the trade than boards under a rail: how rails and boards meet, their sections, a cap, mouldings, and the customs at openings.

use super::{BoardWidth, Rails};
use crate::catalogue::Input;
use crate::quantity::{Count, Length, Within};
use crate::wall::survey::{Small, Thickness};

/// Which of the two runs through where a board and a rail along the wall meet.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Input)]
pub enum Meeting {
    /// Rails run through; boards stand between them.
    #[default]
    OverBoards,
    /// Boards run through to the top; each rail is cut between two boards.
    BetweenBoards,
    /// The top rail runs through; the rails below it are cut between the boards.
    BetweenBelowTop,
}

/// How the top rail and the outer boards meet.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Input)]
pub enum RailCorners {
    /// The rail runs over the outer boards.
    #[default]
    RailOver,
    /// Rail and outer board are mitred in the plane of the wall, from the outer to the inner corner of the frame.
    MitredInPlane,
}

/// The sections of rails that differ from the others.
#[derive(Clone, Debug, Default, PartialEq, Eq, Input)]
#[field("Sections")]
pub struct Sections {
    /// The top rail; empty is the rail width above.
    #[field("Top rail", default)]
    pub top: Option<RailSection>,
    /// The rails between base and top rail, from the bottom up; the last one stands for all above it.
    #[field("Further rails", default, size(..=6))]
    pub between: Vec<RailSection>,
    /// The rails under sills and over heads.
    #[field("Rails at openings", default)]
    pub at_openings: Option<RailSection>,
}

/// The section of a rail.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Input)]
#[field("Section of a rail")]
pub struct RailSection {
    /// As measured on delivered stock.
    #[field("Width")]
    pub width: BoardWidth,
    /// Empty is the thickness of the other rails.
    #[field("Thickness", default)]
    pub thickness: Option<Thickness>,
}

/// Width and thickness of a piece.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Section {
    /// Across its length.
    pub width: Length,
    /// Out from the wall.
    pub thickness: Length,
}

/// A cap or ledge on the top rail.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Input)]
#[field("Cap")]
pub struct Cap {
    /// How far it reaches out from the wall.
    #[field("Depth")]
    pub depth: Within<6_000, 305_000>,
    /// How thick it is, up the wall.
    #[field("Thickness")]
    pub thickness: Thickness,
    /// What happens at an end where nothing stops it.
    #[field("Free ends", default)]
    pub ends: CapEnds,
}

/// The free ends of a cap.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Input)]
pub enum CapEnds {
    /// The front overhangs at the end too, and a short piece is mitred back to the wall.
    #[default]
    Returned,
    /// Cut square, flush with the end of the rail.
    Square,
    /// Cut square against a casing.
    ToCasing,
}

/// Mitred frames of a moulding inside the bays.
#[derive(Clone, Debug, PartialEq, Eq, Input)]
#[field("Mouldings")]
pub struct Mouldings {
    /// Width of the moulding.
    #[field("Width")]
    pub width: Within<6_000, 102_000>,
    /// Thickness of the moulding.
    #[field("Thickness")]
    pub thickness: Thickness,
    /// Clear wall between the frame and what is round the bay.
    #[field("Margin")]
    pub margin: Small,
    /// The rows that get frames, the lowest being 1; none named is every row.
    #[field("Rows", default, size(..=8))]
    pub rows: Vec<Count<1, 8>>,
}

/// How trim meets an opening that has no casing.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Input)]
pub enum Arris {
    /// Boards and rails end flush with the edge of the plaster.
    #[default]
    Flush,
    /// Boards and rails are set back a little, and the edge shows: 1/4 in or 6 mm.
    SetBack,
}

/// The boards beside things that stand above each other with sides not far apart.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Input)]
pub enum Stacked {
    /// One pair of boards at the outer sides serves both.
    #[default]
    OuterPair,
    /// Each has boards at its own sides.
    OwnPairs,
}

/// How far the boards beside a thing run up and down.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Input)]
pub enum Framing {
    /// Through all rows, as far as the wall is free.
    #[default]
    AllRows,
    /// Beside the thing alone, up and down to the next rail.
    OwnRow,
}

/// What stands at a step of the floor or the ceiling.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Input)]
pub enum StepBoard {
    /// A board tight to the step on its taller side.
    #[default]
    TallerSide,
    /// No board of its own; others are moved off the step.
    None,
}

/// What closes the light over a straight rail where the ceiling rises above it.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Input)]
pub enum OverLight {
    /// A thin strip along the ceiling covers it.
    #[default]
    CoverStrip,
    /// The rail's top edge is scribed to the ceiling, its lower edge stays straight.
    Scribed,
}

/// What is held by adhesive.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Input)]
pub enum Glue {
    /// All boards, and rails and bases that have no stud behind them.
    #[default]
    Boards,
    /// Only what has no stud behind it.
    OffStuds,
}

impl Rails {
    /// The section of the rails that have none of their own.
    pub fn section(&self, board_thickness: Length) -> Section {
        Section { width: self.width.get(), thickness: self.thickness.map_or(board_thickness, Length::from) }
    }

    /// The section of the top rail.
    pub fn top_section(&self, board_thickness: Length) -> Section {
        self.own(self.sections.top, board_thickness)
    }

    /// The section of a rail between base and top rail, counted from the bottom up, beginning with 0.
    pub fn mid_section(&self, n: usize, board_thickness: Length) -> Section {
        let own = self.sections.between.get(n).or(self.sections.between.last()).copied();
        self.own(own, board_thickness)
    }

    /// The section of the rails under sills and over heads.
    pub fn opening_section(&self, board_thickness: Length) -> Section {
        self.own(self.sections.at_openings, board_thickness)
    }

    fn own(&self, own: Option<RailSection>, board_thickness: Length) -> Section {
        let usual = self.section(board_thickness);
        own.map_or(usual, |own| Section {
            width: own.width.get(),
            thickness: own.thickness.map_or(usual.thickness, Length::from),
        })
    }
}
