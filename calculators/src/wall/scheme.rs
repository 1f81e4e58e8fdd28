//! What is to be put on the wall: boards, bays, rails, treatment at openings, leeway at boxes, and the sticks it is cut from.

mod trim;

pub use trim::{
    Arris, Cap, CapEnds, Framing, Glue, Meeting, Mouldings, OverLight, RailCorners, RailSection, Section, Sections,
    Stacked, StepBoard,
};

use super::shop::Shop;
use super::survey::{Clearance, Height, Small, Survey, Thickness};
use crate::catalogue::Input;
use crate::quantity::{Count, Money, Physical, Tape, Within, kind};
use crate::stock::clear_parts::Marked;

/// The width of a board: 1/2 in to 12 in, as measured, never the nominal size.
pub type BoardWidth = Within<12_000, 305_000>;
/// A clear bay between two boards: 2 in to 48 in.
pub type BayWidth = Within<50_000, 1_220_000>;

/// One measured wall and what is to be put on it.
#[derive(Clone, Debug, PartialEq, Input)]
#[field("Wall")]
pub struct WallInput {
    /// What was measured.
    #[field("Survey")]
    pub survey: Survey,
    /// What the client is shown.
    #[field("Scheme")]
    pub scheme: Scheme,
    /// What it is cut from.
    #[field("Stock", default)]
    pub stock: Stock,
    /// Coating, air, rates and prices, for quantities, programme and price.
    #[field("Shop", default)]
    pub shop: Shop,
}

/// What is to be put on the wall.
#[derive(Clone, Debug, PartialEq, Input)]
#[field("Scheme")]
pub struct Scheme {
    /// Width of a board, measured on delivered stock.
    #[field("Board width")]
    pub board_width: BoardWidth,
    /// Thickness of a board, measured on delivered stock.
    #[field("Board thickness")]
    pub board_thickness: Thickness,
    /// What the boards are made of: it decides how thin a neck beside a notch may be.
    #[field("Material", default)]
    pub material: Material,
    /// How wide the bays should be. Give this or a number of boards, not both.
    #[field("Target bay", default)]
    pub target_bay: Option<BayWidth>,
    /// How many boards the wall should have, counted along its foot. Give this or a wished bay, not both.
    #[field("Number of boards", default)]
    pub boards: Option<Count<1, 600>>,
    /// No bay narrower than this, where the wall allows it; empty is 7/13 of the wished bay.
    #[field("Narrowest bay", default)]
    pub bay_min: Option<BayWidth>,
    /// No bay wider than this, where the wall allows it; empty is 22/13 of the wished bay.
    #[field("Widest bay", default)]
    pub bay_max: Option<BayWidth>,
    /// How boards meet openings.
    #[field("At openings", default)]
    pub treatment: Treatment,
    /// Whether both boards of an inside corner show the same width, or are cut from the same width.
    #[field("Corner boards", default)]
    pub corner_boards: CornerBoards,
    /// The rails.
    #[field("Rails")]
    pub rails: Rails,
    /// A cap or ledge on the top rail; empty is none.
    #[field("Cap", default)]
    pub cap: Option<Cap>,
    /// Mitred frames of a moulding inside the bays; empty is none.
    #[field("Mouldings", default)]
    pub mouldings: Option<Mouldings>,
    /// How trim meets an opening without a casing.
    #[field("Edge without casing", default)]
    pub arris: Arris,
    /// The boards beside things that stand above each other.
    #[field("Things above each other", default)]
    pub stacked: Stacked,
    /// How far the boards beside a thing run up and down.
    #[field("Boards beside a thing", default)]
    pub framing: Framing,
    /// What stands at a step of the floor or the ceiling.
    #[field("At a step", default)]
    pub step_board: StepBoard,
    /// What is held by adhesive.
    #[field("Adhesive for", default)]
    pub glue: Glue,
    /// What may be moved, and how far, to clear a plate.
    #[field("Clearances at plates", default)]
    pub leeway: Leeway,
    /// Gap left under each board: nothing on a base, a little above a hard floor.
    #[field("Relief under boards", default)]
    pub relief: Option<Within<0, 51_000>>,
    /// The finest mark used; it also says in which units the shop marks and cuts.
    #[field("Tape", default)]
    pub tape: Tape,
    /// Which way a board's length is rounded to the saw stop.
    #[field("Lengths are rounded", default)]
    pub rounding: Rounding,
    /// Thickness of the plasterboard, for the choice of nails; empty is 1/2 in or 12.5 mm.
    #[field("Plasterboard", default)]
    pub plasterboard: Option<Within<6_000, 32_000>>,
}

/// What the boards are made of.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Input)]
pub enum Material {
    /// Medium-density fibreboard.
    #[default]
    Mdf,
    /// Solid timber.
    Solid,
}

/// How boards meet openings.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Input)]
pub enum Treatment {
    /// A board stands tight against each side of every opening.
    #[default]
    BoardsAtEdges,
    /// Bays run up to the opening; below and above it, boards stand just inside its edges.
    BaysToEdges,
}

/// How the two boards of an inside corner are ripped.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Input)]
pub enum CornerBoards {
    /// Both show the full board width: the one fitted first is ripped wider by the other's thickness.
    #[default]
    EqualReveal,
    /// Both are of the board's width: the one fitted first shows less.
    EqualStock,
}

/// The rails of the scheme.
#[derive(Clone, Debug, PartialEq, Eq, Input)]
#[field("Rails")]
pub struct Rails {
    /// Width of a rail, measured on delivered stock.
    #[field("Rail width")]
    pub width: BoardWidth,
    /// Thickness of a rail; empty is the boards' thickness.
    #[field("Rail thickness", default)]
    pub thickness: Option<Thickness>,
    /// How the top of the boarding runs.
    #[field("Top rail", default)]
    pub top_line: TopLine,
    /// Top edge of the top rail above the high floor point; on a stair also above the nosings. Empty is the ceiling or crown.
    #[field("Top of the boarding", default)]
    pub top: Option<Height>,
    /// Top edges of further rails below it, from the bottom up.
    #[field("Further rails, top edges", default, size(..=6))]
    pub between: Vec<Height>,
    /// Rows of equal height between base and top rail, instead of further rails at chosen heights.
    #[field("Equal rows", default)]
    pub rows: Option<Count<1, 7>>,
    /// Short rails below sills and above heads.
    #[field("Rails at openings", default)]
    pub at_openings: AtOpenings,
    /// Which of the two runs through where a board and a rail along the wall meet.
    #[field("Boards and rails", default)]
    pub meeting: Meeting,
    /// How the top rail and the outer boards meet.
    #[field("Top corners", default)]
    pub corners: RailCorners,
    /// Rails of other sections.
    #[field("Other sections", default)]
    pub sections: Sections,
    /// What closes the light over a straight rail.
    #[field("Light over a rail", default)]
    pub over_light: OverLight,
    /// Room left at each end of a closed rail for the wood to move; empty is none.
    #[field("Gap at a rail's end", default)]
    pub end_gap: Option<Small>,
}

/// How the top of the boarding runs.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Input)]
pub enum TopLine {
    /// A level top rail; on a stair it runs level, rakes with the nosings, and runs level again.
    #[default]
    LevelRail,
    /// A top rail that follows the ceiling, level or sloping.
    CeilingRail,
    /// No top rail: boards run up to a level line.
    LevelNoRail,
    /// No top rail: boards run up to the ceiling, level or sloping.
    CeilingNoRail,
}

/// Where short rails run along openings.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Input)]
pub enum AtOpenings {
    /// Under sills and over heads.
    #[default]
    SillAndHead,
    /// Under sills only.
    Sill,
    /// Over heads only.
    Head,
    /// None: boards butt against the casing.
    None,
}

/// What may be moved to clear a plate, and how far. What is empty takes the book's default.
#[derive(Clone, Copy, Debug, Default, PartialEq, Input)]
#[field("Clearances at plates")]
pub struct Leeway {
    /// Clear wall between a plate and a board; empty is 1/2 in or 12 mm.
    #[field("Clearance to plates", default)]
    pub clearance: Option<Within<3_000, 102_000>>,
    /// How far one board may move; empty is 3/8 in or 10 mm.
    #[field("Most shift of a board", default)]
    pub max_shift: Option<Within<0, 51_000>>,
    /// How much two neighbouring bays may differ; empty is 5 % of the bay or 1/2 in (12 mm), whichever is more.
    #[field("Most change between neighbours", default)]
    pub max_change: Option<Small>,
    /// Radius of the eased edge of a board; empty is 1/8 in or 3 mm.
    #[field("Edge radius", default)]
    pub edge_radius: Option<Within<0, 51_000>>,
    /// Thinnest neck beside a notch; empty is 1-1/4 in (32 mm) for fibreboard, 1 in (25 mm) for solid timber.
    #[field("Thinnest neck", default)]
    pub min_neck: Option<Within<19_000, 305_000>>,
}

/// Which way a length is rounded to the saw stop.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Input)]
pub enum Rounding {
    /// To the nearest stop: tight or open by half a step at most.
    #[default]
    Nearest,
    /// Never over: the next stop at or below, for boards that are caulked.
    NeverOver,
}

/// The sticks that boards and rails are cut from, and how the saw eats into them.
#[derive(Clone, Debug, Default, PartialEq, Input)]
#[field("Stock")]
pub struct Stock {
    /// The sticks that can be had; empty works out the pieces without a stick plan.
    #[field("Sticks", default, size(..=24))]
    pub sticks: Vec<Stick>,
    /// What one saw cut eats; empty is 1/8 in or 3.2 mm until it is measured.
    #[field("Kerf", default)]
    pub kerf: Option<Within<400, 6_400>>,
    /// What is cut off each end of a stick first; empty is 1/2 in or 12 mm.
    #[field("End trim", default)]
    pub end_trim: Option<Within<0, 305_000>>,
    /// Offcuts from this length are kept; empty is 12 in or 300 mm.
    #[field("Keep offcuts from", default)]
    pub keep_offcut: Option<Clearance>,
    /// The angle of a scarf joint, from the face of the rail; empty is 45°.
    #[field("Scarf angle", default)]
    pub scarf_angle: Option<Physical<kind::Angle, 5_000, 90_000>>,
}

/// One length of stick.
#[derive(Clone, Debug, PartialEq, Eq, Input)]
#[field("Stick")]
pub struct Stick {
    /// Its whole length.
    #[field("Length")]
    pub length: Within<100_000, 12_000_000>,
    /// What one costs; an offcut in the rack costs nothing.
    #[field("Price", default)]
    pub price: Option<Money>,
    /// How many there are; empty is as many as are needed.
    #[field("On hand", default)]
    pub available: Option<Count<0, 10_000>>,
    /// What may be cut from it.
    #[field("For", default)]
    pub cut_for: CutFor,
    /// Knots, splits, dents that no piece may hold; what lies on either side is used. Only for sticks in the rack, at no price.
    #[field("Bad stretches", default, size(..=8))]
    pub bad: Vec<Marked>,
}

/// What may be cut from a stick.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Input)]
pub enum CutFor {
    /// Boards and rails: it can be had in both widths.
    #[default]
    Any,
    /// Boards only.
    Boards,
    /// Rails only.
    Rails,
}
