//! Base and board of different thickness: an overhang to be chamfered, or a ledge to be eased.

use crate::catalogue::Words;
use crate::quantity::Length;

/// How the face of a board stands to the face of the base below it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum BaseStep {
    /// They are flush.
    Flush,
    /// The board stands proud of a thinner base by so much.
    Overhang(Length),
    /// The base stands proud of a thinner board by so much.
    Ledge(Length),
}

/// The step between a board and a base.
pub fn step(board: Length, base: Length) -> BaseStep {
    match board - base {
        Length::ZERO => BaseStep::Flush,
        proud if proud.is_positive() => BaseStep::Overhang(proud),
        back => BaseStep::Ledge(-back),
    }
}

impl BaseStep {
    /// What there is to see.
    pub fn said(self) -> Words {
        match self {
            Self::Flush => Words::new("board and base are flush"),
            Self::Overhang(by) => Words::new("boards stand {} proud of the base").with(by),
            Self::Ledge(by) => Words::new("the base stands {} proud of the boards: a ledge for dust").with(by),
        }
    }

    /// What is done about it. Common practice, no source.
    pub fn remedy(self) -> Words {
        match self {
            Self::Flush => Words::new("nothing: caulk the line"),
            Self::Overhang(by) => Words::new(
                "chamfer the foot of each board {} at 45°, so that its front edge lands on the face of the base",
            )
            .with(by),
            Self::Ledge(by) => {
                Words::new("ease the top edge of the base, and name the ledge of {} in the care sheet").with(by)
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn thinner_and_thicker_bases() {
        // Common practice arithmetic, worked by hand.
        let in16 = |sixteenths: i64| Length::sixty_fourths(sixteenths * 4);
        assert_eq!(step(in16(12), in16(9)), BaseStep::Overhang(in16(3)));
        assert_eq!(step(Length::mm(18), Length::mm(14)), BaseStep::Overhang(Length::mm(4)));
        assert_eq!(step(in16(8), in16(12)), BaseStep::Ledge(in16(4)));
        assert_eq!(step(in16(8), in16(8)), BaseStep::Flush);
    }
}
