//! What a job costs and what is charged for it, in whole minor units of the shop's currency.

pub mod margin;
