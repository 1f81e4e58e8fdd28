//! What a person measures on one wall, in the order in which they walk it.
//!
//! Facing the wall, zero is its left end; every place along it is a running dimension from that zero. Heights count from the
//! zero level: a level plane through the highest point of the floor, from which the datum line is set up. On a stair the zero
//! level is the lower landing.

mod fittings;

pub use fittings::{
    Agreed, Apron, BoxKind, Head, HeadKind, KeepClear, KeepClearKind, Opening, OpeningKind, Stool, WallBox,
};

use crate::catalogue::Input;
use crate::quantity::{Physical, Within, kind};

/// A place along the wall, running from zero at the left end.
pub type Along = Within<0, 76_200_000>;
/// A height above the zero level.
pub type Height = Within<-3_000_000, 12_000_000>;
/// A length of wall: 1 in to 250 ft.
pub type WallLength = Within<25_000, 76_200_000>;
/// The thickness of a board, base or casing: 1/8 in to 2 in.
pub type Thickness = Within<3_000, 51_000>;
/// A small distance that may be nothing: up to 4 in.
pub type Small = Within<0, 102_000>;
/// A clearance to heat, air or a device: up to 6 ft.
pub type Clearance = Within<0, 1_830_000>;
/// The angle between the faces of two walls: 30° to 150°; 90° is square, inside and outside.
pub type CornerAngle = Physical<kind::Angle, 30_000, 150_000>;

/// All that was measured on one wall.
#[derive(Clone, Debug, PartialEq, Input)]
#[field("Survey")]
pub struct Survey {
    /// A short name for the wall; it stands on every label.
    #[field("Wall", size(1..=24))]
    pub name: String,
    /// How high the datum (the level laser line) is above the highest point of the floor; on a stair, above the lower landing.
    #[field("Datum above the high floor point")]
    pub datum: Within<200_000, 3_000_000>,
    /// The length of the wall, measured at one to three heights; bays are set out on the lowest one.
    #[field("Wall length", size(1..=6))]
    pub lengths: Vec<LengthAt>,
    /// Where the floor and the ceiling were measured, from left to right; none means they were not measured.
    #[field("Stations", default, size(..=60))]
    pub stations: Vec<Station>,
    /// The base (skirting) at the floor.
    #[field("Base", default)]
    pub base: Option<Base>,
    /// What stands at the top of the wall.
    #[field("Top of the wall", default)]
    pub top: Top,
    /// The left end of the wall.
    #[field("Left end")]
    pub left: End,
    /// The right end of the wall.
    #[field("Right end")]
    pub right: End,
    /// Windows, doors, fireplaces and other openings.
    #[field("Openings", default, size(..=40))]
    pub openings: Vec<Opening>,
    /// Switches, sockets and other boxes, each by the edges of its plate.
    #[field("Boxes", default, size(..=60))]
    pub boxes: Vec<WallBox>,
    /// Heaters, vents, detectors and other things that trim must stay away from.
    #[field("To be kept clear", default, size(..=40))]
    pub keep_clear: Vec<KeepClear>,
    /// The studs behind the plasterboard, where they were found.
    #[field("Studs", default)]
    pub studs: Option<Studs>,
    /// The stair, where the wall runs up one.
    #[field("Stair", default)]
    pub stair: Option<Stair>,
}

/// The length of the wall at one height.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Input)]
#[field("Length at a height")]
pub struct LengthAt {
    /// Height above the high floor point at which the tape was held; nothing is just above the base or the floor.
    #[field("At height")]
    pub height: Height,
    /// Length of the wall there, corner to corner.
    #[field("Length")]
    pub length: WallLength,
    /// How far the left end stands to the right of zero at this height; leave empty where the left end is plumb.
    #[field("Left end is in by", default)]
    pub left_in: Option<Within<-76_000, 76_000>>,
}

/// Floor, ceiling and flatness at one place along the wall.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Input)]
#[field("Station")]
pub struct Station {
    /// Where along the wall, from zero at the left.
    #[field("At")]
    pub at: Along,
    /// From the datum line down to the floor; on an upper landing, from that landing's own datum line at the same height.
    #[field("Datum to floor")]
    pub datum_to_floor: Within<0, 6_000_000>,
    /// From the floor up to the ceiling, where it was measured.
    #[field("Floor to ceiling", default)]
    pub floor_to_ceiling: Option<Within<300_000, 12_000_000>>,
    /// The gap under a straightedge laid along the wall here.
    #[field("Bow", default)]
    pub bow: Option<Small>,
}

/// The base (skirting) at the foot of the wall.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Input)]
#[field("Base")]
pub struct Base {
    /// Height of the base, floor to its top edge.
    #[field("Height")]
    pub height: Within<6_000, 610_000>,
    /// How far its face stands out from the wall.
    #[field("Thickness")]
    pub thickness: Thickness,
    /// Whether the base is there and stays, or is cut and fitted with the boards.
    #[field("Base is", default)]
    pub work: BaseWork,
    /// Whether its top edge follows the floor or was fitted level.
    #[field("Top edge", default)]
    pub line: BaseLine,
}

/// What happens to the base.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Input)]
pub enum BaseWork {
    /// It is on the wall and stays.
    #[default]
    Stays,
    /// It is cut and fitted with the boards.
    New,
}

/// How the top edge of the base runs.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Input)]
pub enum BaseLine {
    /// It keeps the same height over a falling floor.
    #[default]
    FollowsFloor,
    /// It was fitted level at the high floor point and scribed to the floor.
    Level,
}

/// What stands at the top of the wall.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Input)]
#[field("Top")]
pub struct Top {
    /// How far a crown (cornice) comes down from the ceiling; nothing where there is none.
    #[field("Crown drop", default)]
    pub crown_drop: Option<Within<0, 610_000>>,
}

/// One end of the wall.
#[derive(Clone, Copy, Debug, PartialEq, Input)]
#[field("End")]
pub struct End {
    /// What the boarding meets there, and who laps whom.
    #[field("Kind")]
    pub kind: EndKind,
    /// The corner's angle as measured across the room; empty means not measured, never 90°.
    #[field("Corner angle", default)]
    pub angle: Option<CornerAngle>,
    /// Thickness of the boards on the other wall, where it differs from this wall's.
    #[field("Board thickness round the corner", default)]
    pub other_thickness: Option<Thickness>,
}

/// What the boarding meets at an end.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Input)]
pub enum EndKind {
    /// An inside corner; this wall is fitted first and runs tight into it.
    InsideFirst,
    /// An inside corner; this wall is fitted second and starts at the other wall's board face.
    InsideSecond,
    /// An outside corner; this wall's board laps over the edge of the other wall's.
    OutsideLapping,
    /// An outside corner; the other wall's board laps over this wall's edge.
    OutsideLapped,
    /// An outside corner, mitred.
    OutsideMitred,
    /// A casing (architrave) or other trim; the last bay runs up to it.
    CasingBay,
    /// A casing or other trim; a board stands against it.
    CasingBoard,
    /// The boarding simply ends, with a bay.
    OpenBay,
    /// The boarding simply ends, with a board.
    OpenBoard,
}

/// Where the studs are.
#[derive(Clone, Debug, PartialEq, Eq, Input)]
#[field("Studs")]
pub struct Studs {
    /// What the studs are made of.
    #[field("Kind", default)]
    pub kind: StudKind,
    /// The centre of one stud, proved by a hole or a magnet.
    #[field("One proved centre", default)]
    pub first: Option<Along>,
    /// From centre to centre.
    #[field("Spacing", default)]
    pub spacing: Option<Within<200_000, 915_000>>,
    /// Centres found one by one, where they keep no spacing.
    #[field("Centres found", default, size(..=200))]
    pub found: Vec<Along>,
}

/// What studs are made of.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Input)]
pub enum StudKind {
    /// Timber: nails hold.
    #[default]
    Timber,
    /// Metal: screws, not nails.
    Metal,
}

/// A straight stair along the wall, between two landings.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Input)]
#[field("Stair")]
pub struct Stair {
    /// Which way it climbs when you face the wall.
    #[field("Climbs to the", default)]
    pub climbs: Climbs,
    /// Where the lowest nosing meets the wall, from zero at the left end.
    #[field("First nosing at")]
    pub first_nosing: Along,
    /// Level distance from the first nosing to the last, measured in one go.
    #[field("Run, first to last nosing")]
    pub run: Within<150_000, 20_000_000>,
    /// Plumb distance from the first nosing to the last, measured in one go.
    #[field("Rise, first to last nosing")]
    pub rise: Within<50_000, 12_000_000>,
    /// Height of the first step, from the lower landing to the first nosing.
    #[field("First riser")]
    pub first_riser: Within<20_000, 305_000>,
    /// How far the top edge of the base runs above the nosing line, measured plumb.
    #[field("Base above the nosing line")]
    pub base_over_nosings: Within<0, 610_000>,
}

/// Which way a stair climbs.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Input)]
pub enum Climbs {
    /// The upper landing is on the right.
    #[default]
    Right,
    /// The upper landing is on the left.
    Left,
}
