//! What is to be put on the wall: boards, bays, rails, treatment at openings, leeway at boxes, and the sticks it is cut from.

mod trim;

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

pub use trim::{
    Arris, Cap, CapEnds, Framing, Glue, Meeting, Mouldings, OverLight, RailCorners, RailSection, Section, Sections,
    Stacked, StepBoard,
};

use super::shop::Shop;
use super::survey::{Clearance, Height, Small, Survey, Thickness};
use crate::quantity::{Count, Money, Physical, Tape, Within, kind};
use crate::stock::clear_parts::Marked;

/// The width of a board: 1/2 in to 12 in, as measured, never the nominal size.
pub type BoardWidth = Within<12_000, 305_000>;
/// A clear bay between two boards: 2 in to 48 in.
pub type BayWidth = Within<50_000, 1_220_000>;

/// One measured wall and what is to be put on it.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(title = "Wall")]
pub struct WallInput {
    /// What was measured.
    #[schemars(title = "Survey")]
    pub survey: Survey,
    /// What the client is shown.
    #[schemars(title = "Scheme")]
    pub scheme: Scheme,
    /// What it is cut from.
    #[serde(default)]
    #[schemars(title = "Stock")]
    pub stock: Stock,
    /// Coating, air, rates and prices, for quantities, programme and price.
    #[serde(default)]
    #[schemars(title = "Shop")]
    pub shop: Shop,
}

/// What is to be put on the wall.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(title = "Scheme")]
pub struct Scheme {
    /// Width of a board, measured on delivered stock.
    #[schemars(title = "Board width")]
    pub board_width: BoardWidth,
    /// Thickness of a board, measured on delivered stock.
    #[schemars(title = "Board thickness")]
    pub board_thickness: Thickness,
    /// What the boards are made of: it decides how thin a neck beside a notch may be.
    #[serde(default)]
    #[schemars(title = "Material")]
    pub material: Material,
    /// How wide the bays should be. Give this or a number of boards, not both.
    #[serde(default)]
    #[schemars(title = "Wished bay")]
    pub target_bay: Option<BayWidth>,
    /// How many boards the wall should have, counted along its foot. Give this or a wished bay, not both.
    #[serde(default)]
    #[schemars(title = "Wished number of boards")]
    pub boards: Option<Count<1, 600>>,
    /// No bay narrower than this, where the wall allows it; empty is 7/13 of the wished bay.
    #[serde(default)]
    #[schemars(title = "Narrowest bay")]
    pub bay_min: Option<BayWidth>,
    /// No bay wider than this, where the wall allows it; empty is 22/13 of the wished bay.
    #[serde(default)]
    #[schemars(title = "Widest bay")]
    pub bay_max: Option<BayWidth>,
    /// How boards meet openings.
    #[serde(default)]
    #[schemars(title = "At openings")]
    pub treatment: Treatment,
    /// Whether both boards of an inside corner show the same width, or are cut from the same width.
    #[serde(default)]
    #[schemars(title = "Corner boards")]
    pub corner_boards: CornerBoards,
    /// The rails.
    #[schemars(title = "Rails")]
    pub rails: Rails,
    /// A cap or ledge on the top rail; empty is none.
    #[serde(default)]
    #[schemars(title = "Cap")]
    pub cap: Option<Cap>,
    /// Mitred frames of a moulding inside the bays; empty is none.
    #[serde(default)]
    #[schemars(title = "Mouldings")]
    pub mouldings: Option<Mouldings>,
    /// How trim meets an opening without a casing.
    #[serde(default)]
    #[schemars(title = "Edge without casing")]
    pub arris: Arris,
    /// The boards beside things that stand above each other.
    #[serde(default)]
    #[schemars(title = "Things above each other")]
    pub stacked: Stacked,
    /// How far the boards beside a thing run up and down.
    #[serde(default)]
    #[schemars(title = "Boards beside a thing")]
    pub framing: Framing,
    /// What stands at a step of the floor or the ceiling.
    #[serde(default)]
    #[schemars(title = "At a step")]
    pub step_board: StepBoard,
    /// What is held by adhesive.
    #[serde(default)]
    #[schemars(title = "Adhesive for")]
    pub glue: Glue,
    /// What may be moved, and how far, to clear a plate.
    #[serde(default)]
    #[schemars(title = "Leeway at boxes")]
    pub leeway: Leeway,
    /// Gap left under each board: nothing on a base, a little above a hard floor.
    #[serde(default)]
    #[schemars(title = "Relief under boards")]
    pub relief: Option<Within<0, 51_000>>,
    /// The finest mark used; it also says in which units the shop marks and cuts.
    #[serde(default)]
    #[schemars(title = "Tape")]
    pub tape: Tape,
    /// Which way a board's length is rounded to the saw stop.
    #[serde(default)]
    #[schemars(title = "Lengths are rounded")]
    pub rounding: Rounding,
    /// Thickness of the plasterboard, for the choice of nails; empty is 1/2 in or 12.5 mm.
    #[serde(default)]
    #[schemars(title = "Plasterboard")]
    pub plasterboard: Option<Within<6_000, 32_000>>,
}

/// What the boards are made of.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Material {
    /// Medium-density fibreboard.
    #[default]
    Mdf,
    /// Solid timber.
    Solid,
}

/// How boards meet openings.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Treatment {
    /// A board stands tight against each side of every opening.
    #[default]
    BoardsAtEdges,
    /// Bays run up to the opening; below and above it, boards stand just inside its edges.
    BaysToEdges,
}

/// How the two boards of an inside corner are ripped.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum CornerBoards {
    /// Both show the full board width: the one fitted first is ripped wider by the other's thickness.
    #[default]
    EqualReveal,
    /// Both are of the board's width: the one fitted first shows less.
    EqualStock,
}

/// The rails of the scheme.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(title = "Rails")]
pub struct Rails {
    /// Width of a rail, measured on delivered stock.
    #[schemars(title = "Rail width")]
    pub width: BoardWidth,
    /// Thickness of a rail; empty is the boards' thickness.
    #[serde(default)]
    #[schemars(title = "Rail thickness")]
    pub thickness: Option<Thickness>,
    /// How the top of the boarding runs.
    #[serde(default)]
    #[schemars(title = "Top rail")]
    pub top_line: TopLine,
    /// Top edge of the top rail above the high floor point; on a stair also above the nosings. Empty is the ceiling or crown.
    #[serde(default)]
    #[schemars(title = "Top of the boarding")]
    pub top: Option<Height>,
    /// Top edges of further rails below it, from the bottom up.
    #[serde(default)]
    #[schemars(title = "Further rails, top edges", length(max = 6))]
    pub between: Vec<Height>,
    /// Rows of equal height between base and top rail, instead of further rails at chosen heights.
    #[serde(default)]
    #[schemars(title = "Equal rows")]
    pub rows: Option<Count<1, 7>>,
    /// Short rails below sills and above heads.
    #[serde(default)]
    #[schemars(title = "Rails at openings")]
    pub at_openings: AtOpenings,
    /// Which of the two runs through where a board and a rail along the wall meet.
    #[serde(default)]
    #[schemars(title = "Boards and rails")]
    pub meeting: Meeting,
    /// How the top rail and the outer boards meet.
    #[serde(default)]
    #[schemars(title = "Top corners")]
    pub corners: RailCorners,
    /// Rails of other sections.
    #[serde(default)]
    #[schemars(title = "Other sections")]
    pub sections: Sections,
    /// What closes the light over a straight rail.
    #[serde(default)]
    #[schemars(title = "Light over a rail")]
    pub over_light: OverLight,
    /// Room left at each end of a closed rail for the wood to move; empty is none.
    #[serde(default)]
    #[schemars(title = "Gap at a rail's end")]
    pub end_gap: Option<Small>,
}

/// How the top of the boarding runs.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
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
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
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
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(title = "Leeway at boxes")]
pub struct Leeway {
    /// Clear wall between a plate and a board; empty is 1/2 in or 12 mm.
    #[serde(default)]
    #[schemars(title = "Clearance to plates")]
    pub clearance: Option<Within<3_000, 102_000>>,
    /// How far one board may move; empty is 3/8 in or 10 mm.
    #[serde(default)]
    #[schemars(title = "Most shift of a board")]
    pub max_shift: Option<Within<0, 51_000>>,
    /// How much two neighbouring bays may differ; empty is 5 % of the bay or 1/2 in (12 mm), whichever is more.
    #[serde(default)]
    #[schemars(title = "Most change between neighbours")]
    pub max_change: Option<Small>,
    /// Radius of the eased edge of a board; empty is 1/8 in or 3 mm.
    #[serde(default)]
    #[schemars(title = "Edge radius")]
    pub edge_radius: Option<Within<0, 51_000>>,
    /// Thinnest neck beside a notch; empty is 1-1/4 in (32 mm) for fibreboard, 1 in (25 mm) for solid timber.
    #[serde(default)]
    #[schemars(title = "Thinnest neck")]
    pub min_neck: Option<Within<19_000, 305_000>>,
}

/// Which way a length is rounded to the saw stop.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Rounding {
    /// To the nearest stop: tight or open by half a step at most.
    #[default]
    Nearest,
    /// Never over: the next stop at or below, for boards that are caulked.
    NeverOver,
}

/// The sticks that boards and rails are cut from, and how the saw eats into them.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(title = "Stock")]
pub struct Stock {
    /// The sticks that can be had; empty works out the pieces without a stick plan.
    #[serde(default)]
    #[schemars(title = "Sticks", length(max = 24))]
    pub sticks: Vec<Stick>,
    /// What one saw cut eats; empty is 1/8 in or 3.2 mm until it is measured.
    #[serde(default)]
    #[schemars(title = "Kerf")]
    pub kerf: Option<Within<400, 6_400>>,
    /// What is cut off each end of a stick first; empty is 1/2 in or 12 mm.
    #[serde(default)]
    #[schemars(title = "End trim")]
    pub end_trim: Option<Within<0, 305_000>>,
    /// Offcuts from this length are kept; empty is 12 in or 300 mm.
    #[serde(default)]
    #[schemars(title = "Keep offcuts from")]
    pub keep_offcut: Option<Clearance>,
    /// The angle of a scarf joint, from the face of the rail; empty is 45°.
    #[serde(default)]
    #[schemars(title = "Scarf angle")]
    pub scarf_angle: Option<Physical<kind::Angle, 5_000, 90_000>>,
}

/// One length of stick.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(title = "Stick")]
pub struct Stick {
    /// Its whole length.
    #[schemars(title = "Length")]
    pub length: Within<100_000, 12_000_000>,
    /// What one costs; an offcut in the rack costs nothing.
    #[serde(default)]
    #[schemars(title = "Price")]
    pub price: Option<Money>,
    /// How many there are; empty is as many as are needed.
    #[serde(default)]
    #[schemars(title = "On hand")]
    pub available: Option<Count<0, 10_000>>,
    /// What may be cut from it.
    #[serde(default)]
    #[schemars(title = "For")]
    pub cut_for: CutFor,
    /// Knots, splits, dents that no piece may hold; what lies on either side is used. Only for sticks in the rack, at no price.
    #[serde(default)]
    #[schemars(title = "Bad stretches", length(max = 8))]
    pub bad: Vec<Marked>,
}

/// What may be cut from a stick.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum CutFor {
    /// Boards and rails: it can be had in both widths.
    #[default]
    Any,
    /// Boards only.
    Boards,
    /// Rails only.
    Rails,
}
