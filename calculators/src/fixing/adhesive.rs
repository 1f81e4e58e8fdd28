//! Adhesive for boards: the wave along each board, and how many boards a cartridge does.

use serde_json::json;

use crate::catalogue::works::{PRACTICE, THIS_BOOK};
use crate::catalogue::{Answer, Calculator, Card, Example, Fault, Input, Note, Output, Source, Standing, Step, Words};
use crate::filling::bead::{self, BeadShape};
use crate::quantity::{Amount, Length, Physical, Units, Within, kind};

/// Adhesive that leaves the cartridges for a length of board, in mL: a round bead, longer than the board by its waves.
pub fn adhesive_volume(boards: Length, bead: Length, wave: f64, lost: f64) -> Amount<kind::SmallVolume> {
    let section = BeadShape::Round.section_mm2(bead, Length::ZERO);
    Amount::of(section * boards.in_m() * wave / (1.0 - lost))
}

pub(crate) struct Adhesive;

/// What is asked.
#[derive(Input)]
pub(crate) struct Input {
    /// All boards that are glued, end to end.
    #[field("Length of boards")]
    boards: Within<25_000, 900_000_000>,
    /// As one board stands, for boards to a cartridge.
    #[field("One board")]
    board: Within<25_000, 7_000_000>,
    /// Not the hole in the nozzle.
    #[field("Diameter of the bead", usual = ["3/16 in", "3/8 in"])]
    bead: Within<3_000, 13_000>,
    /// Bead length over board length: 1 is a straight bead.
    #[field("Wave")]
    wave: Physical<kind::Number, 1_000, 3_000>,
    /// Nozzle, tube and squeeze-out.
    #[field("Lost", usual = ["5 %", "40 %"])]
    lost: Physical<kind::Percent, 0, 70_000>,
    /// As printed on it.
    #[field("Cartridge")]
    cartridge: Physical<kind::SmallVolume, 30_000, 1_200_000>,
    /// From its sheet, in this air: board up and pressed before then.
    #[field("Open time")]
    open_time: Option<Physical<kind::Minutes, 1_000, 240_000>>,
    /// From bead to pressed, as your crew does it.
    #[field("Minutes to a board")]
    per_board: Option<Physical<kind::Minutes, 100, 120_000>>,
}

/// What is answered.
#[derive(Output)]
pub(crate) struct Output {
    /// To take along.
    #[field("Cartridges")]
    cartridges: u32,
    /// With its share lost.
    #[field("Boards to a cartridge")]
    boards_each: Amount<kind::Number>,
    /// In all.
    #[field("Adhesive")]
    volume: Amount<kind::SmallVolume>,
    /// Before the first bead skins.
    #[field("Boards at a time")]
    batch: Option<u32>,
}

impl Calculator for Adhesive {
    type Input = Input;
    type Output = Output;
    const CARD: Card = Card {
        id: "adhesive",
        title: "Adhesive",
        question: "How many cartridges of adhesive, and how many boards at a time?",
        step: 10,
        search: &["glue", "grab adhesive", "tubes", "open time", "bead"],
        headline: &["/cartridges", "/boards_each"],
        list: None,
        cautions: &["adhesive-skin", "solvent-vapour"],
        sources: &[
            bead::SOURCE,
            Source::new(THIS_BOOK, "wave 1.25, a tenth lost", Standing::HouseDefault),
            Source::new(PRACTICE, "a quarter-inch (6 mm) bead", Standing::CommonPractice),
        ],
    };

    fn example(units: Units) -> Example {
        match units {
            Units::Imperial => Example {
                input: json!({ "boards": "53'", "board": "53 in", "bead": "1/4 in", "wave": 1.25, "lost": "10 %", "cartridge": "10.1 fl oz" }),
                expects: vec![("/result/cartridges", json!(3)), ("/result/boards_each/text", json!("5.044"))],
                checked_against: "by hand: π/64 x 53 x 1.25 / 0.9 = 3.613 in³ to a board; 18.227 / 3.613 = 5.044; 12 boards take 2.4",
            },
            Units::Metric => Example {
                input: json!({ "boards": "16.2 m", "board": "1350 mm", "bead": "6 mm", "wave": 1.25, "lost": "10 %", "cartridge": "300 mL" }),
                expects: vec![("/result/cartridges", json!(3))],
                checked_against: "by hand: 28.274 x 16.2 x 1.25 / 0.9 = 636 mL of 300 each",
            },
        }
    }

    fn compute(input: &Input) -> Result<Answer<Output>, Vec<Fault>> {
        let lost = input.lost.get() / 100.0;
        let volume = adhesive_volume(input.boards.get(), input.bead.get(), input.wave.get(), lost);
        let one = adhesive_volume(input.board.get(), input.bead.get(), input.wave.get(), lost);
        let boards_each = input.cartridge.get() / one.get();
        let cartridges = libm::ceil(volume.get() / input.cartridge.get() - 1e-6) as u32;
        let batch =
            input.open_time.zip(input.per_board).map(|(open, each)| libm::floor(open.get() / each.get() + 1e-9) as u32);
        let working = vec![
            Step::new("adhesive for all boards, in mL")
                .by("pi * b ^ 2 / 4 * L / 1000 * w / (1 - x / 100)")
                .given("b", "diameter of the bead", input.bead)
                .given("L", "length of boards", input.boards)
                .given("w", "wave", input.wave)
                .given("x", "lost", input.lost)
                .gives("V", "adhesive", volume),
            Step::new("boards to a cartridge")
                .by("C / (pi * b ^ 2 / 4 * l / 1000 * w / (1 - x / 100))")
                .given("C", "cartridge", input.cartridge)
                .given("b", "diameter of the bead", input.bead)
                .given("l", "one board", input.board)
                .given("w", "wave", input.wave)
                .given("x", "lost", input.lost)
                .gives("n", "boards to a cartridge", boards_each),
            Step::new("cartridges")
                .by("ceil(V / C)")
                .given("V", "adhesive", volume)
                .given("C", "cartridge", input.cartridge)
                .gives("k", "cartridges", cartridges),
        ];
        let mut notes = Vec::new();
        if batch == Some(0) {
            notes.push(Note::hold("One board takes longer than the open time: two people, or another adhesive."));
        } else if let Some(batch) = batch {
            notes.push(Note::remark(
                Words::new("Run the bead on at most {} boards before the first is pressed.").with(batch),
            ));
        }
        notes.push(Note::remark("Keep it off the tongue of a notch and out of joints that are to move."));
        Ok(Answer {
            result: Output { cartridges, boards_each: Amount::of(boards_each), volume, batch },
            working,
            notes,
        })
    }
}
