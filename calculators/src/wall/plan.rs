//! What comes out: up to three layouts of one wall, each complete enough to set out, cut and fix from.

mod finding;
mod member;

pub use finding::{Action, Choice, Conflict, ConflictKind, Severity};
pub use member::{CutKind, EndCut, Joint, LongEdges, Member, MemberKind, Notch, Point};

use super::job::Job;
use super::survey::BoxKind;
use crate::catalogue::{Note, Output, Words};
use crate::quantity::{Amount, Exact, Length, Money, Reading, Tape, kind};
use crate::stock::clear_parts::Marked;

/// The plan of one wall.
#[derive(Clone, Debug, PartialEq, Output)]
pub struct WallPlan {
    /// The wall's name.
    pub wall: String,
    /// The tape on which marks are read.
    pub tape: Tape,
    /// Length on which the bays are set out.
    pub length: Length,
    /// Height above the high floor point at which that length was measured.
    pub length_at: Length,
    /// How much the floor falls along the wall, highest to lowest measured point.
    pub floor_fall: Length,
    /// What the survey gives reason to say, for every layout.
    pub notes: Vec<Note>,
    /// The layouts, the one to take first.
    pub layouts: Vec<Layout>,
}

/// One way to divide the wall.
#[derive(Clone, Debug, PartialEq, Output)]
pub struct Layout {
    /// 1 for the one to take.
    pub rank: usize,
    /// Why it is offered, in a few words.
    pub reason: Words,
    /// Boards along the foot of the wall, fixed ones included.
    pub boards: usize,
    /// The runs between fixed boards, from left to right.
    pub runs: Vec<Run>,
    /// The widest bay less the narrowest.
    pub spread: Exact,
    /// The middle of all bays: all clear widths shared out equally.
    pub mean_bay: Exact,
    /// What it costs in evenness and distance from the wish, term by term.
    pub score: Score,
    /// Every board's place, from left to right.
    pub positions: Vec<Position>,
    /// Every piece of trim.
    pub members: Vec<Member>,
    /// Every clear bay in every row.
    pub bays: Vec<Bay>,
    /// What to mark on each horizontal line, from one zero.
    pub marks: Vec<MarkLine>,
    /// Heights up or down from the datum line.
    pub offsets: Vec<Offset>,
    /// Each piece with its own length, in the order of the wall.
    pub cut_list: Vec<Cut>,
    /// What must be settled, and what is worth knowing before work starts.
    pub conflicts: Vec<Conflict>,
    /// Which boards meet a stud.
    pub studs: StudHits,
    /// Nails and pins.
    pub nails: Nails,
    /// Pieces with the lengths they are sawn to, joined ones split, for a stick plan.
    pub pieces: Vec<Piece>,
    /// What to buy and in what order to saw it.
    pub sticks: Vec<StickPlan>,
    /// Lengths and areas that paint, caulk and price are worked out from.
    pub totals: Totals,
    /// Quantities, shopping list, hours, programme, cost and price.
    pub job: Job,
}

/// A run of wall between two fixed boards or ends.
#[derive(Clone, Debug, PartialEq, Output)]
pub struct Run {
    /// Where it starts.
    pub left: Exact,
    /// Where it ends.
    pub right: Exact,
    /// Boards in it.
    pub boards: usize,
    /// Clear bays in it: one more than the boards.
    pub bays: usize,
    /// The width of each bay, before anything is shifted for a plate.
    pub bay: Exact,
    /// The opening below or above which it lies, counted from the left; none on plain wall.
    pub opening: Option<usize>,
}

/// What a layout costs: the terms add up to the total.
#[derive(Clone, Debug, PartialEq, Output)]
pub struct Score {
    /// The terms, each with its share.
    pub terms: Vec<ScoreTerm>,
    /// Their sum; less is better.
    pub total: Exact,
}

/// One term of a score.
#[derive(Clone, Debug, PartialEq, Output)]
pub struct ScoreTerm {
    /// What it stands for.
    pub name: Words,
    /// The measure itself.
    pub measure: Exact,
    /// What it is multiplied by.
    pub weight: i64,
    /// What it adds to the total.
    pub adds: Exact,
}

/// Where a board stands.
#[derive(Clone, Debug, PartialEq, Eq, Output)]
pub struct Position {
    /// Counted from the left, beginning with 1.
    pub number: usize,
    /// The left edge that can be seen, and that is marked.
    pub left: Exact,
    /// The right edge that can be seen.
    pub right: Exact,
    /// The left edge of the board itself; it differs in a corner, where another board laps over it.
    pub board_left: Exact,
    /// The right edge of the board itself.
    pub board_right: Exact,
    /// Why it stands there.
    pub why: Standing,
    /// How far it was moved to clear a plate; right is positive.
    pub shifted: Exact,
}

/// Why a board stands where it stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Output)]
pub enum Standing {
    /// At the left or right end of the wall.
    End,
    /// Tight against an opening.
    Opening,
    /// The only board between two openings, or between an end and an opening.
    Pier,
    /// At a nosing, where a rail turns from level to rake.
    Nosing,
    /// Tight to a step of the floor or the ceiling.
    Step,
    /// Made wide enough to carry a plate.
    WideBoard,
    /// Shared out over a run.
    Field,
}

/// A clear bay between two boards, in one row.
#[derive(Clone, Copy, Debug, PartialEq, Output)]
pub struct Bay {
    /// Its left edge.
    pub left: Exact,
    /// Clear width.
    pub width: Exact,
    /// Clear height at its middle, between the base or rail below and the rail above.
    pub height: Exact,
    /// The middle of its foot above the zero level.
    pub bottom: Exact,
    /// Height over width.
    pub proportion: f64,
}

/// The marks along one horizontal line.
#[derive(Clone, Debug, PartialEq, Output)]
pub struct MarkLine {
    /// The line.
    pub name: Words,
    /// Its height above the zero level where it is level.
    pub height: Exact,
    /// The marks, from left to right.
    pub marks: Vec<Mark>,
    /// What the tape must show at the last right edge, and at the end of the wall.
    pub last: Reading,
}

/// One board's marks.
#[derive(Clone, Copy, Debug, PartialEq, Output)]
pub struct Mark {
    /// The board's number.
    pub board: usize,
    /// Left edge; the cross goes to the right of this mark.
    pub left: Reading,
    /// Right edge.
    pub right: Reading,
}

/// A height measured from the datum line.
#[derive(Clone, Debug, PartialEq, Output)]
pub struct Offset {
    /// What lies at that height.
    pub name: Words,
    /// Above the zero level.
    pub height: Exact,
    /// Up from the datum line; down is negative.
    pub offset: Reading,
}

/// One line of the cut list.
#[derive(Clone, Debug, PartialEq, Output)]
pub struct Cut {
    /// The label on the back of the piece.
    pub label: String,
    /// What it is.
    pub kind: MemberKind,
    /// Width it is ripped to.
    pub width: Exact,
    /// What the saw stop is set to.
    pub length: Reading,
    /// The cut at the foot or left end.
    pub start: EndCut,
    /// The cut at the head or right end.
    pub end: EndCut,
    /// Whether the height here was measured or worked out between two stations.
    pub height: HeightKnown,
    /// What else to do to it: taper, notch, chamfer.
    pub remarks: Vec<Words>,
}

/// How well the height at a place is known.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Output)]
pub enum HeightKnown {
    /// A station stands within the board's width.
    Measured,
    /// Worked out between the stations on both sides.
    Interpolated,
    /// Beyond the last station, or without any: taken as level.
    NotMeasured,
}

/// Which boards get a real fixing.
#[derive(Clone, Debug, Default, PartialEq, Output)]
pub struct StudHits {
    /// Whether studs were found at all.
    pub known: bool,
    /// Centres along the wall.
    pub centres: Vec<Length>,
    /// Numbers of the boards with a stud well inside their width.
    pub hits: Vec<usize>,
    /// Numbers of the others: adhesive and pins.
    pub misses: Vec<usize>,
}

/// Nails and pins for one layout.
#[derive(Clone, Debug, PartialEq, Output)]
pub struct Nails {
    /// Shortest useful nail for rails into studs.
    pub rail_from: Length,
    /// Nails must stay shorter than this.
    pub rail_below: Length,
    /// The length to take, where one is sold inside that window.
    pub rail_nail: Option<Length>,
    /// The longest pin that goes through board and plasterboard and no further, for where there is no stud.
    pub pin: Option<Length>,
    /// Nails in rails.
    pub in_rails: usize,
    /// Nails in boards.
    pub in_boards: usize,
    /// Pins beside adhesive where there is no stud.
    pub pins: usize,
    /// Heads to be filled.
    pub heads: usize,
    /// Nails per member, in the order of the members.
    pub per_member: Vec<MemberNails>,
}

/// Nails of one member.
#[derive(Clone, Debug, PartialEq, Eq, Output)]
pub struct MemberNails {
    /// Label of the member.
    pub member: String,
    /// Nails into studs, base and rails.
    pub nails: usize,
    /// Pins with adhesive.
    pub pins: usize,
}

/// A length to be sawn.
#[derive(Clone, Debug, PartialEq, Output)]
pub struct Piece {
    /// The label of the piece.
    pub label: String,
    /// Width of the stock it is cut from.
    pub width: Length,
    /// Thickness of the stock.
    pub thickness: Length,
    /// What the stop is set to.
    pub length: Length,
    /// True for rails, false for boards.
    pub rail: bool,
}

/// The sticks of one section.
#[derive(Clone, Debug, PartialEq, Output)]
pub struct StickPlan {
    /// Width of the stock.
    pub width: Length,
    /// Thickness of the stock.
    pub thickness: Length,
    /// How each stick is sawn, in order.
    pub sticks: Vec<SawnStick>,
    /// What the sticks cost.
    pub cost: Money,
    /// No plan can do with fewer sticks of the longest kind than this.
    pub at_least: usize,
    /// True where nothing better exists.
    pub proved: bool,
    /// Pieces for which there was no stick.
    pub without: Vec<String>,
}

/// One stick and what is cut from it.
#[derive(Clone, Debug, PartialEq, Output)]
pub struct SawnStick {
    /// Whole length of the stick.
    pub stick: Length,
    /// Where its clear part begins, on a stick with bad stretches.
    pub from: Option<Length>,
    /// Its bad stretches.
    pub bad: Vec<Marked>,
    /// The pieces, in the order of sawing.
    pub pieces: Vec<SawnPiece>,
    /// What is left over.
    pub offcut: Length,
    /// Whether the offcut is long enough to keep.
    pub keep: bool,
}

/// One piece on a stick.
#[derive(Clone, Debug, PartialEq, Output)]
pub struct SawnPiece {
    /// Its label.
    pub label: String,
    /// Its length.
    pub length: Length,
}

/// Lengths and areas of one layout.
#[derive(Clone, Debug, PartialEq, Output)]
pub struct Totals {
    /// All boards, end to end.
    pub board_length: Exact,
    /// What is held by adhesive, end to end: boards, and what has no stud behind it.
    pub glued: Exact,
    /// All rails, end to end.
    pub rail_length: Exact,
    /// New base, end to end.
    pub base_length: Exact,
    /// Long edges of boards that stand proud and are painted.
    pub board_edges: Exact,
    /// Long edges of rails that are painted, without the places where boards butt.
    pub rail_edges: Exact,
    /// Joints against the wall, the base and casings that are caulked.
    pub caulk: Exact,
    /// Wall between base and top of the boarding, openings taken off: boards and bays together.
    pub field: Amount<kind::Area>,
    /// Faces of the boards and rails alone.
    pub faces: Amount<kind::Area>,
    /// Edges of boards and rails.
    pub edges: Amount<kind::Area>,
    /// The face of the base.
    pub base_face: Amount<kind::Area>,
    /// Openings on the wall.
    pub openings: usize,
    /// Plates that come off and go on again.
    pub plates: Vec<BoxKind>,
    /// Mitred or angled cuts.
    pub angled_cuts: usize,
}
