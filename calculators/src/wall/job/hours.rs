//! Hours of one pair of hands, task by task.

use super::TaskHours;
use super::house::{House, SPRAY_M2_H};
use crate::quantity::{Amount, kind};
use crate::wall::plan::Layout;
use crate::wall::shop::Coating;

/// Hours of one pair of hands by the book's rates for each task, in the order of the work.
pub(super) fn labour(
    layout: &Layout,
    house: &House,
    area: Amount<kind::Area>,
    coating: Option<&Coating>,
) -> Vec<TaskHours> {
    let totals = &layout.totals;
    let rate = |task: &str| {
        crate::price::labour::HOUSE_RATES.iter().find(|(name, _, _)| *name == task).map_or(0.0, |(_, _, hours)| *hours)
    };
    let boards = layout.members.iter().filter(|member| member.position.is_some()).count();
    let rails = layout.members.len() - boards;
    let task = |name: &str, hours: f64| TaskHours { task: name.to_owned(), hours: Amount::of(hours) };
    let fix = boards as f64 * rate("fix boards")
        + rails as f64 * rate("fix rails")
        + totals.angled_cuts as f64 * rate("cut mitres")
        + totals.plates.len() as f64 * rate("work round plates");
    let mut tasks = vec![
        task("set out", rate("set out") / 2.0),
        task("cut and fix", fix),
        task("fill", layout.nails.heads as f64 * rate("fill")),
        task("sand", 0.5 + boards as f64 * house.edge_sand_hours),
        task("caulk", totals.caulk.in_mm() / 1_000.0 * rate("caulk")),
        task("mask", 0.5 + totals.openings as f64 * rate("mask")),
    ];
    if let Some(coating) = coating {
        for coat in 1..=coating.coats.get() {
            tasks.push(task(&format!("coat {coat}"), 0.75 + area.get() / SPRAY_M2_H));
        }
        tasks.push(task("pull tape", 0.5));
        tasks.push(task("put right and hand over", 1.0));
    }
    tasks
}
