//! What it costs and what is charged.

use super::Purchase;
use crate::catalogue::Words;
use crate::price::job_cost::{Cost, cost_of};
use crate::price::margin::{MarginShare, price_at_margin};
use crate::quantity::{Amount, Money, kind};
use crate::wall::shop::Rates;

/// What a shop lays on labour and materials, and what it keeps of the price, in percent.
pub(super) struct Shares {
    pub(super) contingency: f64,
    pub(super) overhead: f64,
    pub(super) margin: MarginShare,
}

/// A shop's own shares, and the book's where it gave none.
pub(super) fn shares(rates: &Rates) -> Option<Shares> {
    Some(Shares {
        contingency: rates.contingency.map_or(8.0, |share| share.get()),
        overhead: rates.overhead.map_or(15.0, |share| share.get()),
        margin: rates.margin.or_else(|| MarginShare::new(20.0))?,
    })
}

pub(super) fn priced(
    rates: &Rates,
    hours: f64,
    shopping: &[Purchase],
    assumed: &mut Vec<Words>,
) -> Option<(Cost, Money)> {
    let bought = shopping.iter().filter_map(|line| line.cost).try_fold(Money::ZERO, Money::plus)?;
    let extra = rates.sundries.unwrap_or_default().plus(rates.others.unwrap_or_default())?;
    let Shares { contingency, overhead, margin } = shares(rates)?;
    let cost = cost_of(hours, rates.hour, bought.plus(extra)?, contingency, overhead)?;
    let shares = [
        ("contingency", contingency, rates.contingency.is_some()),
        ("overhead", overhead, rates.overhead.is_some()),
        ("margin", margin.get(), rates.margin.is_some()),
    ];
    for (whose, given) in [("estimates of this book", false), ("the shop’s own shares", true)] {
        let of_these = || shares.iter().filter(|share| share.2 == given);
        let names: Vec<String> = of_these().map(|share| format!("{} {{}}", share.0)).collect();
        if !names.is_empty() {
            let start = Words::new(format!("{whose}: {}", names.join(", ")));
            assumed.push(of_these().fold(start, |told, share| told.with(Amount::<kind::Percent>::of(share.1))));
        }
    }
    Some((cost, price_at_margin(cost.total, margin)?))
}
