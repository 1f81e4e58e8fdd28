//! Shopping list, programme, and cost, as rows and a time line.

use calculators::quantity::{Money, Units};
use calculators::wall::job::{Job, ProgrammeLine};
use serde::Serialize;

use crate::drawing::{TimeBar, time_line};
use crate::figure;
use calculators::catalogue::capital;

/// What a layout takes besides its boards.
#[derive(Debug, Serialize)]
pub(super) struct JobView {
    shopping: Vec<BuyView>,
    paint: Vec<Pair>,
    programme: Vec<LineView>,
    time_line: String,
    done: Option<String>,
    labour: Vec<Pair>,
    cost: Vec<Pair>,
    price: Option<String>,
    /// Pieces that no stick gives, which leave the price out.
    without_stick: String,
    /// What the price leaves out.
    without_price: String,
    assumed: Vec<String>,
}

/// One line of the shopping list.
#[derive(Debug, Serialize)]
pub(super) struct BuyView {
    what: String,
    buy: String,
    unit: String,
    cost: String,
}

/// A label and a figure.
#[derive(Debug, Serialize)]
pub(super) struct Pair {
    label: String,
    value: String,
}

/// One task on the calendar.
#[derive(Debug, Serialize)]
pub(super) struct LineView {
    task: String,
    starts: String,
    ends: String,
    wait: String,
    late: bool,
}

fn pair(label: &str, value: String) -> Pair {
    Pair { label: label.to_owned(), value }
}

fn money(label: &str, amount: Money) -> Pair {
    pair(label, amount.to_string())
}

pub(super) fn view(job: &Job, units: Units) -> JobView {
    let mut paint = vec![pair("Area to coat", figure::set(job.paint_area, units))];
    paint.extend(job.paint_per_coat.map(|paint| pair("Paint for one coat", figure::set(paint, units))));
    paint.extend(job.wet_film.map(|film| pair("Wet film", figure::set(film, units))));
    let bars: Vec<TimeBar<'_>> = job
        .programme
        .iter()
        .map(|line| TimeBar {
            task: &line.task,
            start: line.start_minute,
            end: line.end_minute,
            wait: line.wait_minutes,
        })
        .collect();
    JobView {
        shopping: job
            .shopping
            .iter()
            .map(|line| BuyView {
                what: capital(&line.what),
                buy: figure::set(line.buy.clone(), units),
                unit: figure::words(&line.unit, units),
                cost: line.cost.map_or_else(String::new, |cost| cost.to_string()),
            })
            .collect(),
        paint,
        time_line: if bars.is_empty() { String::new() } else { time_line("time-line", &bars) },
        programme: job.programme.iter().map(line_view).collect(),
        done: job.done.clone(),
        labour: job.labour.iter().map(|task| pair(&capital(&task.task), figure::set(task.hours, units))).collect(),
        cost: job.cost.map_or_else(Vec::new, |cost| {
            vec![
                money("Labour", cost.labour),
                money("Materials", cost.materials),
                money("Contingency", cost.contingency),
                money("Overhead", cost.overhead),
                money("Cost", cost.total),
            ]
        }),
        price: job.price.map(|price| price.to_string()),
        without_stick: job.without_stick.join(", "),
        without_price: job.without_price.join(", "),
        assumed: job.assumed.iter().map(|words| figure::sentence(words, units)).collect(),
    }
}

fn line_view(line: &ProgrammeLine) -> LineView {
    let hours = line.wait_minutes as f64 / 60.0;
    LineView {
        task: capital(&line.task),
        starts: line.starts.clone(),
        ends: line.ends.clone(),
        wait: if line.wait_minutes > 0 { format!("{} h", (hours * 4.0).ceil() / 4.0) } else { String::new() },
        late: line.late,
    }
}
