//! Which day it will be done: tasks, waits that run overnight, crews, and the path that decides.

pub mod calendar;
pub mod critical_path;
pub mod expected_duration;
pub mod job_programme;
pub mod network;
pub mod schedule;
