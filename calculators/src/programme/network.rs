//! The network of tasks: who waits for whom, in an order in which nobody comes before what they wait for.

use std::collections::HashMap;

use crate::catalogue::Fault;

/// A tie to an earlier task: its place in the list, and minutes to wait after it on the clock.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Tie {
    /// Place of the earlier task.
    pub after: usize,
    /// Minutes between its end and the start of the later.
    pub wait: i64,
}

/// Times of one task in minutes from the start, on a clock without nights.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Times {
    /// Earliest start.
    pub earliest_start: i64,
    /// Earliest finish.
    pub earliest_finish: i64,
    /// Latest start that does not move the end.
    pub latest_start: i64,
    /// Latest finish that does not move the end.
    pub latest_finish: i64,
}

impl Times {
    /// Room to move without moving the end.
    pub const fn float(self) -> i64 {
        self.latest_start - self.earliest_start
    }
}

/// The ties of every task, and an order in which they are kept.
pub type Network = (Vec<Vec<Tie>>, Vec<usize>);

/// Reads ties by name: each name must be another task's, and no task may wait for itself, even by a round.
///
/// `tasks` gives name and the names it follows; `pointer` makes the JSON pointer of a tie.
/// # Errors
/// Every unknown name, doubled name, and one task of a round.
pub fn tied(
    tasks: &[(&str, Vec<(&str, i64)>)],
    pointer: impl Fn(usize, usize) -> String,
    named: impl Fn(usize) -> String,
) -> Result<Network, Vec<Fault>> {
    let mut places = HashMap::new();
    let mut faults = Vec::new();
    for (place, (name, _)) in tasks.iter().enumerate() {
        if places.insert(*name, place).is_some() {
            faults.push(Fault::new(
                named(place),
                format!("«{name}»"),
                "two tasks have this name; each needs its own",
                format!("{name} 2"),
            ));
        }
    }
    let mut ties = vec![Vec::new(); tasks.len()];
    for (place, (_, follows)) in tasks.iter().enumerate() {
        for (index, (name, wait)) in follows.iter().enumerate() {
            match places.get(name) {
                Some(after) => ties[place].push(Tie { after: *after, wait: *wait }),
                None => {
                    let known: Vec<_> =
                        tasks.iter().map(|(name, _)| *name).filter(|other| *other != tasks[place].0).take(8).collect();
                    let why = format!("there is no such task; named are {}", known.join(", "));
                    faults.push(Fault::new(
                        pointer(place, index),
                        format!("«{name}»"),
                        why,
                        known.first().copied().unwrap_or_default(),
                    ));
                }
            }
        }
    }
    if !faults.is_empty() {
        return Err(faults);
    }
    match in_order(&ties) {
        Ok(order) => Ok((ties, order)),
        Err(place) => {
            let why = "it waits for itself, by way of others; one of them must go first";
            Err(vec![Fault::new(named(place), format!("«{}»", tasks[place].0), why, serde_json::Value::Null)])
        }
    }
}

/// Places in an order in which ties are kept; of those that could come next, the first in the list. Else one place of a round.
fn in_order(ties: &[Vec<Tie>]) -> Result<Vec<usize>, usize> {
    let mut done = vec![false; ties.len()];
    let mut order = Vec::with_capacity(ties.len());
    while order.len() < ties.len() {
        let next = (0..ties.len()).find(|place| !done[*place] && ties[*place].iter().all(|tie| done[tie.after]));
        let Some(next) = next else {
            return Err(done.iter().position(|done| !done).unwrap_or(0));
        };
        done[next] = true;
        order.push(next);
    }
    Ok(order)
}

/// Forward and backward pass on a clock without nights; durations in minutes.
/// # Source
/// Critical path method: ES = max(EF + lag), LF = min(LS − lag), float = LS − ES.
pub fn times(durations: &[i64], ties: &[Vec<Tie>], order: &[usize]) -> Vec<Times> {
    let mut times =
        vec![Times { earliest_start: 0, earliest_finish: 0, latest_start: 0, latest_finish: 0 }; durations.len()];
    for place in order {
        let start =
            ties[*place].iter().map(|tie| times[tie.after].earliest_finish + tie.wait).max().unwrap_or(0).max(0);
        times[*place].earliest_start = start;
        times[*place].earliest_finish = start + durations[*place];
    }
    let end = times.iter().map(|times| times.earliest_finish).max().unwrap_or(0);
    let mut latest = vec![end; durations.len()];
    for place in order.iter().rev() {
        let start = latest[*place] - durations[*place];
        for tie in &ties[*place] {
            latest[tie.after] = latest[tie.after].min(start - tie.wait);
        }
        times[*place].latest_finish = latest[*place];
        times[*place].latest_start = start;
    }
    times
}
