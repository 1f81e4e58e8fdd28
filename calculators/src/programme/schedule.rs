//! Tasks laid over working hours and crews: the forward pass, the slack, and windows that must be met.
//!
//! Work is done in working hours, waits run day and night, a coat is not split. Each crew does one thing at a time, in the order in
//! which its tasks can start, those named first before those named later. It is a sound list rule, not a proof that no better order
//! of two crews exists.

use super::calendar::Calendar;
use super::network::Tie;

/// A task to be laid over the calendar.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Job {
    /// Minutes of work.
    pub minutes: i64,
    /// Which crew does it.
    pub crew: usize,
    /// Whether it must not be split by a night.
    pub in_one_piece: bool,
    /// Minutes after the end of the tie before by which it must have started, and which tie that is.
    pub window: Option<(usize, i64)>,
}

/// Where a task came to lie.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Slot {
    /// Start, in minutes from midnight of the first day.
    pub start: i64,
    /// Finish.
    pub finish: i64,
    /// Working minutes it may slip without moving the end.
    pub slack: i64,
    /// Whether it began after its window had closed, and by how many minutes.
    pub late: Option<i64>,
}

/// Lays all tasks over the calendar; `not_before` holds single tasks back.
fn forward(
    jobs: &[Job],
    ties: &[Vec<Tie>],
    order: &[usize],
    calendar: &Calendar,
    not_before: &[i64],
) -> (Vec<(i64, i64)>, Vec<Vec<Tie>>) {
    let crews = jobs.iter().map(|job| job.crew).max().map_or(0, |most| most + 1);
    let mut free = vec![(0_i64, None::<usize>); crews];
    let mut slots = vec![(0, 0); jobs.len()];
    let mut done = vec![false; jobs.len()];
    let mut all_ties = ties.to_vec();
    for _ in 0..jobs.len() {
        // Of the tasks that may be next, the one that can start first; the order of the list decides between equals.
        let ready =
            order.iter().copied().filter(|place| !done[*place] && ties[*place].iter().all(|tie| done[tie.after]));
        let start_of = |place: usize| {
            let tied = ties[place].iter().map(|tie| slots[tie.after].1 + tie.wait).max().unwrap_or(0);
            calendar.work(
                tied.max(free[jobs[place].crew].0).max(not_before[place]),
                jobs[place].minutes,
                jobs[place].in_one_piece,
            )
        };
        let Some((place, slot)) = ready.map(|place| (place, start_of(place))).min_by_key(|(_, slot)| slot.0) else {
            break;
        };
        slots[place] = slot;
        done[place] = true;
        let crew = &mut free[jobs[place].crew];
        if let Some(before) = crew.1
            && !all_ties[place].iter().any(|tie| tie.after == before)
        {
            all_ties[place].push(Tie { after: before, wait: 0 });
        }
        *crew = (slot.1, Some(place));
    }
    (slots, all_ties)
}

/// Slots of all tasks, with windows met where holding back the task before the window can meet them.
pub fn lay(jobs: &[Job], ties: &[Vec<Tie>], order: &[usize], calendar: &Calendar) -> Vec<Slot> {
    let mut not_before = vec![0; jobs.len()];
    let late = |slots: &[(i64, i64)], place: usize| {
        let (before, window) = jobs[place].window?;
        let closes = slots[before].1 + window;
        (slots[place].0 > closes).then(|| slots[place].0 - closes)
    };
    let (mut slots, mut all_ties) = forward(jobs, ties, order, calendar, &not_before);
    for place in 0..jobs.len() {
        let Some((before, _)) = jobs[place].window else { continue };
        // Hold the coat back, a quarter of an hour at a time over two days, until its window falls into working hours.
        let kept = (not_before.clone(), slots.clone(), all_ties.clone());
        let mut tries = 0;
        while late(&slots, place).is_some() && tries < 192 {
            not_before[before] = calendar.open_at(slots[before].0.max(not_before[before]) + 15);
            (slots, all_ties) = forward(jobs, ties, order, calendar, &not_before);
            tries += 1;
        }
        if late(&slots, place).is_some() {
            (not_before, slots, all_ties) = kept;
        }
    }
    let latest = latest_starts(jobs, &all_ties, &slots, calendar);
    (0..jobs.len())
        .map(|place| Slot {
            start: slots[place].0,
            finish: slots[place].1,
            slack: calendar.between(slots[place].0, latest[place]),
            late: late(&slots, place),
        })
        .collect()
}

/// The latest start of each task that leaves the end where it is, found by trying later starts.
fn latest_starts(jobs: &[Job], ties: &[Vec<Tie>], slots: &[(i64, i64)], calendar: &Calendar) -> Vec<i64> {
    let end = slots.iter().map(|slot| slot.1).max().unwrap_or(0);
    let mut latest_finish = vec![end; jobs.len()];
    let mut latest_start = vec![0; jobs.len()];
    let mut by_finish: Vec<usize> = (0..jobs.len()).collect();
    by_finish.sort_by_key(|place| std::cmp::Reverse((slots[*place].0, slots[*place].1, *place)));
    for place in by_finish {
        // Starts are tried back from the latest finish; the first that fits is the latest.
        let (mut low, mut high) = (slots[place].0, latest_finish[place].max(slots[place].0));
        while low < high {
            let middle = low + (high - low + 1) / 2;
            let (start, finish) = calendar.work(middle, jobs[place].minutes, jobs[place].in_one_piece);
            if start >= middle && finish <= latest_finish[place] { low = middle } else { high = middle - 1 }
        }
        latest_start[place] = low;
        for tie in &ties[place] {
            latest_finish[tie.after] = latest_finish[tie.after].min(low - tie.wait);
        }
    }
    latest_start
}
