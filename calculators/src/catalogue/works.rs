//! The one list of works that formulas and constants are taken from.

use super::card::Work;

/// The trade's own practice, which nobody published.
pub const PRACTICE: Work = Work { title: "Practice of the trade", edition: "" };
/// Plane geometry and arithmetic.
pub const GEOMETRY: Work = Work { title: "Plane geometry and arithmetic", edition: "" };
/// The inch, the pound and the gallon.
pub const HANDBOOK_44: Work = Work {
    title: "NIST Handbook 44, Specifications, Tolerances, and Other Technical Requirements",
    edition: "appendix C",
};
/// How units are written and rounded.
pub const SP_811: Work = Work { title: "NIST Special Publication 811, Guide for the Use of the SI", edition: "2008" };
/// Dressed sizes of softwood boards.
pub const PS_20: Work = Work {
    title: "US Department of Commerce Voluntary Product Standard PS 20, American Softwood Lumber Standard",
    edition: "PS 20-20",
};
/// Dimensioning of drawings.
pub const ISO_129: Work = Work { title: "ISO 129-1, Presentation of dimensions and tolerances", edition: "" };
