//! The box behind a new board: how far it sits back, what brings it out again, how long the screws become.
//!
//! A wooden board round a box makes the surround combustible: the allowance for plaster is gone, and the box must come flush.

use serde_json::json;

use crate::catalogue::works::NFPA_70;
use crate::catalogue::{Answer, Calculator, Card, Example, Fault, Input, Note, Output, Source, Standing, Step, Words};
use crate::quantity::{Length, Reading, SIXTY_FOURTH, Tape, Units, Within};

/// Largest set-back behind a surface that cannot burn, United States: 1/4 in.
/// # Source
/// NFPA 70, 314.20, as quoted in public summaries: "6 mm (1/4 in.)".
pub const PLASTER_SET_BACK: Length = Length::um(6_350);
/// The same in the code's metric figure.
pub const PLASTER_SET_BACK_METRIC: Length = Length::mm(6);

/// The United States figure for a length: 1/4 in for one that stands on an inch mark, 6 mm for any other, as the code prints both.
fn united_states(set_back: Length) -> Length {
    let on_an_inch_mark = set_back.nm() % SIXTY_FOURTH.nm() == 0;
    if on_an_inch_mark { PLASTER_SET_BACK } else { PLASTER_SET_BACK_METRIC }
}

/// Depth of extension that brings a box flush with a board fixed round it: what it sat back, and the board.
pub fn extension_depth(set_back: Length, added: Length) -> Length {
    set_back + added
}

/// What surrounds the box once the work is done.
#[derive(Clone, Copy, PartialEq, Eq, Input)]
pub(crate) enum Surround {
    /// Wood or fibreboard: it can burn.
    Combustible,
    /// Plaster, tile or gypsum.
    Plaster,
}

pub(crate) struct BoxSetBack;

/// What is asked.
#[derive(Input)]
pub(crate) struct Input {
    /// Front edge of the box behind the old wall surface, measured with the circuit proved dead.
    #[field("Box sits back now")]
    set_back: Within<0, 100_000>,
    /// Thickness of the board round the plate; nothing where the wall stays bare there.
    #[field("Board added")]
    added: Within<0, 102_000>,
    /// What the plate will lie on.
    #[field("Surround")]
    surround: Surround,
    /// Behind plaster, by the wiring rules where the house stands; left empty, the United States figure counts, 1/4 in or 6 mm. Behind wood
    /// nothing is allowed.
    #[field("Local rule allows, in plaster")]
    local: Option<Within<0, 20_000>>,
    /// As it is now.
    #[field("Device screws now")]
    screw: Within<5_000, 150_000>,
}

/// What is answered.
#[derive(Output)]
pub(crate) struct Output {
    /// Of a ring or sleeve, fitted by an electrician.
    #[field("Extension")]
    extension: Length,
    /// Behind the finished surface, without an extension.
    #[field("Set back then")]
    set_back: Length,
    /// Behind the finished surface.
    #[field("Allowed")]
    allowed: Reading,
    /// As long as now, and as much more as the surface comes forward.
    #[field("Device screws then")]
    screw: Length,
}

impl Calculator for BoxSetBack {
    type Input = Input;
    type Output = Output;
    const CARD: Card = Card {
        id: "box-set-back",
        title: "Box set back by a board",
        question: "The wall got thicker: what about the box?",
        step: 11,
        search: &[
            "switch box",
            "extension ring",
            "flush",
            "socket",
            "recessed",
            "pattress",
            "back box",
            "too deep",
            "recessed box",
        ],
        headline: &["/extension", "/screw"],
        list: None,
        cautions: &["live-box", "recessed-box"],
        sources: &[Source::new(
            NFPA_70,
            "314.20: flush in combustible, 1/4 in (6 mm) behind non-combustible surfaces; United States",
            Standing::Published,
        )],
    };

    fn example(units: Units) -> Example {
        let (board, back, screw, extension) = if units == Units::Metric {
            ("18 mm", "3 mm", "20 mm", "21 mm")
        } else {
            ("1/2 in", "1/8 in", "3/4 in", "5/8 in")
        };
        Example {
            input: json!({ "set_back": back, "added": board, "surround": "combustible", "screw": screw }),
            expects: vec![("/result/extension/tape", json!(extension))],
            checked_against: "314.20 as quoted: flush in wood, so board plus what it sat back",
        }
    }

    fn compute(input: &Input) -> Result<Answer<Output>, Vec<Fault>> {
        let set_back = extension_depth(input.set_back.get(), input.added.get());
        let allowed = match (input.surround, input.local) {
            (Surround::Combustible, _) => Length::ZERO,
            (Surround::Plaster, Some(local)) => local.get(),
            (Surround::Plaster, None) => united_states(set_back),
        };
        let extension = if set_back > allowed { set_back } else { Length::ZERO };
        let screw = input.screw.get() + input.added.get();
        let working = vec![
            Step::new("set back behind the finished surface")
                .by("b + t")
                .given("b", "box sits back now", input.set_back)
                .given("t", "board added", input.added)
                .gives("s", "set back then", set_back)
                .because(Words::new("allowed is {} behind this surround").with(allowed)),
            Step::new("device screws")
                .by("v + t")
                .given("v", "device screws now", input.screw)
                .given("t", "board added", input.added)
                .gives("V", "device screws then", screw),
        ];
        let whose = if input.local.is_some() {
            "the local rule, as you gave it"
        } else {
            "the United States rule (NFPA 70, 314.20, as quoted)"
        };
        let mut notes = vec![if set_back > allowed {
            Note::hold(
                "The box must come forward before it is energised. An electrician fits the extension; a long screw that pulls the device forward is no extension.",
            )
        } else {
            Note::check(format!("Not further back than {whose} allows. Local code and a licensed electrician decide."))
        }];
        if input.local.is_none() {
            notes.push(Note::check(
                "Compared with the United States rule. Anywhere else ask for the local figure and put it in.",
            ));
        }
        notes.push(Note::remark(
            "A ring with screw holes of its own keeps the device's screws; a sleeve needs the longer ones.",
        ));
        Ok(Answer {
            result: Output { extension, set_back, allowed: Tape::SixtyFourth.short(allowed.exact()), screw },
            working,
            notes,
        })
    }
}
