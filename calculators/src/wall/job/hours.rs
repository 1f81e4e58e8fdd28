//! Hours of one pair of hands, task by task.

use super::house::Rates;
use crate::quantity::{Amount, kind};
use crate::wall::plan::Layout;
use crate::wall::shop::Shop;

use super::TaskHours;

/// What a task is, for the waits and rules that go with it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Kind {
    SetOut,
    Fix,
    Fill,
    Sand,
    Caulk,
    Mask,
    Prime,
    Coat,
    /// Rubbing a dried film down before the next one.
    Denib,
    PullTape,
    HandOver,
}

impl Kind {
    /// A wet film that is not split by a night.
    pub(super) fn in_one_piece(self) -> bool {
        matches!(self, Self::Prime | Self::Coat)
    }
}

/// Hours of one pair of hands for each task, in the order of the work.
pub(super) fn labour(layout: &Layout, rates: &Rates, area: Amount<kind::Area>, shop: &Shop) -> Vec<(Kind, TaskHours)> {
    let totals = &layout.totals;
    let boards = layout.members.iter().filter(|member| member.position.is_some()).count();
    let rails = layout.members.len() - boards;
    let task = |kind: Kind, name: &str, hours: f64| {
        (kind, TaskHours { task: name.to_owned(), hours: Amount::of(hours * rates.difficulty) })
    };
    let fix = boards as f64 * rates.board
        + rails as f64 * rates.rail
        + totals.angled_cuts as f64 * rates.mitre
        + totals.plates.len() as f64 * rates.plate;
    let mut tasks = vec![
        task(Kind::SetOut, "set out", rates.set_out),
        task(Kind::Fix, "cut and fix", fix),
        task(Kind::Fill, "fill", layout.nails.heads as f64 * rates.hole),
        task(Kind::Sand, "sand", rates.sand_set_up + boards as f64 * rates.sand_board),
        task(Kind::Caulk, "caulk", totals.caulk.in_mm() / 1_000.0 / rates.caulk_run),
        task(Kind::Mask, "mask", rates.mask_set_up + totals.openings as f64 * rates.opening),
    ];
    let Some(coating) = &shop.coating else { return tasks };
    let sprayed = rates.coat_set_up + area.get() / rates.sprayed;
    let denib = rates.denib_set_up + boards as f64 * rates.denib_board;
    if shop.primer.is_some() {
        tasks.push(task(Kind::Prime, "prime", sprayed));
    }
    for coat in 1..=coating.coats.get() {
        if coat > 1 || shop.primer.is_some() {
            tasks.push(task(Kind::Denib, &format!("de-nib before coat {coat}"), denib));
        }
        tasks.push(task(Kind::Coat, &format!("coat {coat}"), sprayed));
    }
    tasks.push(task(Kind::PullTape, "pull tape", rates.pull_tape));
    tasks.push(task(Kind::HandOver, "put right and hand over", rates.hand_over));
    tasks
}
