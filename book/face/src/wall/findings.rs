//! Findings: what is in the way, where it is flagged on the drawing, and what can be done.

use calculators::catalogue::NoteLevel;
use calculators::quantity::Units;
use calculators::wall::plan::{Action, Choice, Layout, Severity, WallPlan};
use serde::Serialize;

use crate::figure;

/// One finding.
#[derive(Debug, Serialize)]
pub(super) struct FindingView {
    number: usize,
    /// Must be settled before work starts.
    settle: bool,
    said: String,
    members: String,
    options: Vec<OptionView>,
}

/// One way to settle it.
#[derive(Debug, Serialize)]
pub(super) struct OptionView {
    action: &'static str,
    words: String,
    state: &'static str,
}

/// A sentence raised by the survey.
#[derive(Debug, Serialize)]
pub(super) struct RemarkView {
    hold: bool,
    words: String,
}

pub(super) fn findings(layout: &Layout, units: Units) -> Vec<FindingView> {
    layout
        .conflicts
        .iter()
        .enumerate()
        .map(|(index, conflict)| FindingView {
            number: index + 1,
            settle: conflict.severity == Severity::Settle,
            said: figure::sentence(&conflict.said, units),
            members: conflict.members.join(", "),
            options: conflict.options.iter().map(|option| option_view(option, units)).collect(),
        })
        .collect()
}

fn option_view(option: &Choice, units: Units) -> OptionView {
    OptionView {
        action: action(option.action),
        words: figure::sentence(&option.words, units),
        state: match (option.applied, option.allowed) {
            (true, _) => "done in this plan",
            (_, true) => "possible",
            _ => "refused",
        },
    }
}

pub(super) fn remarks(plan: &WallPlan, units: Units) -> Vec<RemarkView> {
    let remark = |note: &calculators::catalogue::Note| RemarkView {
        hold: note.level == NoteLevel::Hold,
        words: figure::sentence(&note.words, units),
    };
    plan.notes.iter().map(remark).collect()
}

const fn action(action: Action) -> &'static str {
    match action {
        Action::Leave => "Leave it",
        Action::Shift => "Shift the board",
        Action::ChangeCount => "Another number of boards",
        Action::WideBoard => "One wide board",
        Action::Notch => "Notch the board",
        Action::MoveBox => "Move the box",
        Action::MoveRail => "Move the rail",
        Action::Scribe => "Scribe it",
        Action::Caulk => "Caulk it",
        Action::Chamfer => "Ease the edge",
        Action::KeepOut => "Keep trim out",
        Action::Measure => "Measure",
        Action::Blocking => "Fix blocking",
        Action::MoveBoard => "Move the board",
        Action::Cover => "Cover it",
        Action::LongerStick => "Order other stock",
    }
}
