//! The tasks on the calendar, with the waits between them.

use super::house::{CALENDAR, House};
use super::{ProgrammeLine, TaskHours};
use crate::catalogue::Words;
use crate::drying::{recoat, tape_pull};
use crate::programme::calendar::moment;
use crate::programme::network::Tie;
use crate::programme::schedule::{Job as Task, lay};
use crate::wall::shop::{Coating, Shop};

/// The tasks one after the other, with the waits between them, in working hours.
pub(super) fn programme(
    labour: &[TaskHours],
    coating: &Coating,
    shop: &Shop,
    house: &House,
    crew: f64,
    assumed: &mut Vec<Words>,
) -> Vec<ProgrammeLine> {
    let stretch = shop.air.map_or(1.0, |air| recoat::air_factor(air.temperature.get(), air.relative_humidity.get()));
    if let Some(air) = shop.air.filter(|air| air.temperature.get() < coating.least_temperature.get()) {
        assumed.push(
            Words::new("{} is below the least on the sheet, {}: no coat goes on in this air")
                .with(air.temperature)
                .with(coating.least_temperature),
        );
        return Vec::new();
    }
    if stretch.is_infinite() {
        assumed.push(Words::new("nothing dries in saturated air: no programme"));
        return Vec::new();
    }
    assumed.push(
        Words::new("drying stretched {} times for the air of the room; never shorter than the sheet").with(stretch),
    );
    let touch = recoat::up_to_quarter(coating.touch.get() * stretch);
    let wait = recoat::up_to_quarter(coating.recoat.get() * stretch);
    let minutes = |hours: f64| libm::ceil(hours * 60.0) as i64;
    // Waits after each task, on the clock.
    let waits: Vec<i64> = labour
        .iter()
        .enumerate()
        .map(|(index, task)| match task.task.as_str() {
            "cut and fix" => house.adhesive_wait,
            "fill" => house.filler_wait,
            "caulk" => house.caulk_wait,
            coat if coat.starts_with("coat ") => {
                let last = labour.get(index + 1).is_none_or(|next| !next.task.starts_with("coat "));
                if last { minutes(tape_pull::SHARES.0 * touch) } else { minutes(wait) }
            }
            "pull tape" => minutes(wait) - minutes(tape_pull::SHARES.0 * touch),
            _ => 0,
        })
        .collect();
    let tasks: Vec<Task> = labour
        .iter()
        .enumerate()
        .map(|(index, task)| Task {
            minutes: minutes(task.hours.get() / crew).min(CALENDAR.day_length() * 60),
            crew: 0,
            in_one_piece: task.task.starts_with("coat ") && minutes(task.hours.get() / crew) <= CALENDAR.day_length(),
            window: (task.task == "pull tape" && index > 0).then(|| (index - 1, minutes(tape_pull::SHARES.1 * wait))),
        })
        .collect();
    let ties: Vec<Vec<Tie>> = (0..tasks.len())
        .map(|index| if index == 0 { Vec::new() } else { vec![Tie { after: index - 1, wait: waits[index - 1] }] })
        .collect();
    let order: Vec<usize> = (0..tasks.len()).collect();
    let slots = lay(&tasks, &ties, &order, &CALENDAR);
    labour
        .iter()
        .zip(&slots)
        .zip(&waits)
        .map(|((task, slot), wait)| ProgrammeLine {
            task: task.task.clone(),
            starts: moment(slot.start),
            ends: moment(slot.finish),
            start_minute: slot.start,
            end_minute: slot.finish,
            wait_minutes: *wait,
            late: slot.late.is_some(),
        })
        .collect()
}
