//! What it costs and what is charged.

use super::Purchase;
use crate::catalogue::Words;
use crate::price::job_cost::{Cost, cost_of};
use crate::price::margin::{MarginShare, price_at_margin};
use crate::quantity::{Amount, Money, kind};
use crate::wall::shop::Rates;

pub(super) fn priced(
    rates: &Rates,
    hours: f64,
    shopping: &[Purchase],
    assumed: &mut Vec<Words>,
) -> Option<(Cost, Money)> {
    let bought = shopping.iter().filter_map(|line| line.cost).try_fold(Money::ZERO, Money::plus)?;
    let extra = rates.sundries.unwrap_or_default().plus(rates.others.unwrap_or_default())?;
    let percent = |share: Option<crate::price::job_cost::Share>, house: f64| share.map_or(house, |share| share.get());
    let cost = cost_of(
        hours,
        rates.hour,
        bought.plus(extra)?,
        percent(rates.contingency, 8.0),
        percent(rates.overhead, 15.0),
    )?;
    let margin = rates.margin.or_else(|| MarginShare::new(20.0))?;
    assumed.push(
        Words::new("contingency {}, overhead {}, margin {}")
            .with(Amount::<kind::Percent>::of(percent(rates.contingency, 8.0)))
            .with(Amount::<kind::Percent>::of(percent(rates.overhead, 15.0)))
            .with(margin),
    );
    Some((cost, price_at_margin(cost.total, margin)?))
}
