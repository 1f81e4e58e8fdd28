//! How quantities, hours and price were got, line by line, from the same settings that they were worked out with.

use super::house::{HOSE_L, House, TRANSFER};
use super::prices::{self, Shares};
use super::{Job, Purchase};
use crate::catalogue::{Figure, Step, Words};
use crate::filling::caulk;
use crate::price::job_cost;
use crate::price::margin::price_step;
use crate::quantity::{Amount, Length, Units, kind};
use crate::wall::plan::Layout;
use crate::wall::shop::{Coating, Rates, Shop};

/// The working behind a layout's job.
pub fn working(layout: &Layout, shop: &Shop, units: Units) -> Vec<Step> {
    let (house, job) = (House::of(shop, units), &layout.job);
    let mut steps = vec![area(layout, job)];
    steps.extend(
        shop.coating.as_ref().map(|coating| paint(coating, job, house.amounts.paint_reserve)).into_iter().flatten(),
    );
    steps.extend(cartridges(layout, job, &house));
    steps.extend(filler_and_tape(layout, job, &house));
    steps.extend(hours(layout, job, &house));
    steps.extend(shop.rates.as_ref().and_then(|rates| price(rates, job)).into_iter().flatten());
    steps
}

fn bought(job: &Job, what: &str) -> Option<Figure> {
    job.shopping.iter().find(|line: &&Purchase| line.what == what).map(|line| line.buy.clone())
}

fn percent(share: f64) -> Amount<kind::Percent> {
    Amount::of(share * 100.0)
}

fn area(layout: &Layout, job: &Job) -> Step {
    Step::new("area to coat")
        .by("F + E + B")
        .given("F", "boarded field, openings taken off", layout.totals.field)
        .given("E", "edges of boards and rails", layout.totals.edges)
        .given("B", "face of the base", layout.totals.base_face)
        .gives("A", "area to coat", job.paint_area)
}

fn paint(coating: &Coating, job: &Job, reserve: f64) -> Vec<Step> {
    let (Some(wet), Some(per_coat), Some(total)) = (job.wet_film, job.paint_per_coat, bought(job, "paint")) else {
        return Vec::new();
    };
    let transfer = coating.transfer.map_or(percent(TRANSFER), |share| Amount::of(share.get()));
    let hose = coating.hose.map_or(Amount::of(HOSE_L), |hose| hose.amount());
    vec![
        Step::new("wet film that leaves the dry film")
            .by("d / (s / 100)")
            .given("d", "dry film of one coat", coating.dry_film)
            .given("s", "volume solids", coating.volume_solids)
            .gives("w", "wet film", wet),
        Step::new("paint for one coat, with what flies past")
            .by("A * w / 1000 / (e / 100)")
            .given("A", "area to coat", job.paint_area)
            .given("w", "wet film", wet)
            .given("e", "reaches the work", transfer)
            .gives("P", "paint for one coat", per_coat)
            .because("a litre over a square metre is 1000 µm"),
        Step::new("paint in all")
            .by("(P * n + h) * (1 + r / 100)")
            .given("P", "paint for one coat", per_coat)
            .given("n", "coats", coating.coats.get())
            .given("h", "left in the hose", hose)
            .given("r", "on top", percent(reserve))
            .gives("T", "paint", total),
    ]
}

fn cartridges(layout: &Layout, job: &Job, house: &House) -> Vec<Step> {
    let amounts = &house.amounts;
    let cartridge = |millilitres| Amount::<kind::SmallVolume>::of(millilitres);
    let section = caulk::caulk_section_mm2(amounts.leg, Length::ZERO, Length::ZERO);
    let adhesive = bought(job, "adhesive").map(|count| {
        Step::new("cartridges of adhesive")
            .by("ceil(pi * b ^ 2 / 4 * L / 1000 * w / (1 - x / 100) / C)")
            .given("b", "diameter of the bead", amounts.bead)
            .given("L", "what is glued, end to end", layout.totals.glued)
            .given("w", "wave", Amount::<kind::Number>::of(amounts.wave))
            .given("x", "lost", percent(amounts.adhesive_lost))
            .given("C", "cartridge", cartridge(amounts.adhesive_cartridge))
            .gives("n", "cartridges", count)
            .because("a cubic millimetre is a thousandth of a millilitre")
    });
    let share = layout.totals.caulk.in_mm() * section / 1_000.0 / (1.0 - amounts.caulk_lost) / amounts.caulk_cartridge;
    let caulk = Step::new("cartridges of caulk before rounding")
        .by("E * S / 1000 / (1 - x / 100) / C")
        .given("E", "joints that are caulked", layout.totals.caulk)
        .given("S", "section of the fillet, in mm²", Amount::<kind::Number>::of(section))
        .given("x", "lost", percent(amounts.caulk_lost))
        .given("C", "cartridge", cartridge(amounts.caulk_cartridge))
        .gives("c", "cartridges", Amount::<kind::Number>::of(share))
        .because(
            Words::new("a fillet with legs of {} is half of a square; up to whole ones, one more where the last would be used to over 95 %")
                .with(amounts.leg),
        );
    adhesive.into_iter().chain([caulk]).collect()
}

fn filler_and_tape(layout: &Layout, job: &Job, house: &House) -> Vec<Step> {
    let amounts = &house.amounts;
    let filler = bought(job, "filler").map(|volume| {
        Step::new("filler")
            .by("n * v / (1 - s / 100)")
            .given("n", "heads", layout.nails.heads)
            .given("v", "filler in a nail hole", Amount::<kind::SmallVolume>::of(amounts.hole))
            .given("s", "shrinks", percent(amounts.shrink))
            .gives("V", "filler", volume)
    });
    let tape = bought(job, "masking tape").map(|rolls| {
        Step::new("rolls of tape")
            .by("ceil(2 * R * (1 + x / 100) / r)")
            .given("R", "rails, end to end", layout.totals.rail_length)
            .given("x", "on top", Amount::<kind::Percent>::of(amounts.tape_extra))
            .given("r", "roll", amounts.tape_roll)
            .gives("n", "rolls", rolls)
            .because("tape runs along the foot and along the top of the boarding")
    });
    filler.into_iter().chain(tape).collect()
}

fn hours(layout: &Layout, job: &Job, house: &House) -> Vec<Step> {
    let (rates, totals) = (&house.rates, &layout.totals);
    let boards = layout.members.iter().filter(|member| member.position.is_some()).count();
    let each = |hours| Amount::<kind::Hours>::of(hours);
    let of = |name: &str| job.labour.iter().find(|task| task.task == name).map(|task| task.hours);
    let mut steps = Vec::new();
    steps.extend(of("cut and fix").map(|hours| {
        Step::new("hours to cut and fix")
            .by("(n * b + r * a + m * c + p * e) * D")
            .given("n", "boards", boards)
            .given("b", "each", each(rates.board))
            .given("r", "rails and base", layout.members.len() - boards)
            .given("a", "each", each(rates.rail))
            .given("m", "mitres and angled cuts", totals.angled_cuts)
            .given("c", "each", each(rates.mitre))
            .given("p", "plates", totals.plates.len())
            .given("e", "each", each(rates.plate))
            .given("D", "difficulty", Amount::<kind::Number>::of(rates.difficulty))
            .gives("H", "hours", hours)
    }));
    let mut sum = Vec::new();
    let mut all = Step::new("hours of one pair of hands, all tasks");
    for (n, task) in job.labour.iter().enumerate() {
        sum.push(format!("h{}", n + 1));
        all = all.given(format!("h{}", n + 1), task.task.clone(), task.hours);
    }
    if !sum.is_empty() {
        steps.push(all.by(sum.join(" + ")).gives("H", "hours", job.hours));
    }
    steps
}

fn price(rates: &Rates, job: &Job) -> Option<Vec<Step>> {
    let (cost, price) = (job.cost?, job.price?);
    let Shares { contingency, overhead, margin } = prices::shares(rates)?;
    let mut steps = job_cost::working(&cost, job.hours, rates.hour, Amount::of(contingency), Amount::of(overhead));
    steps.push(price_step(cost.total, margin, price));
    Some(steps)
}
