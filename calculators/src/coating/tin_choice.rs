//! The choice of tins: the cheapest that hold enough, told exactly.
//!
//! Volumes are whole counts of a sixteenth of a nanolitre: a millilitre and a US fluid ounce are both whole in it, so a gallon of need is
//! held by a gallon tin and by four quarts, and by nothing less.

use super::tins::Tin;
use crate::quantity::{Amount, kind};

/// Counts in a litre.
const LITRE: f64 = 16e9;
/// What may be missing for the sake of decimals in a need or a size: a microlitre.
const SLACK: i64 = 16_000;
/// The most steps that are looked at one by one.
const MOST_STEPS: i64 = 4_000_000;
/// The most choices that are looked at where the sizes have no common measure.
const MOST_CHOICES: u32 = 2_000_000;
/// The most paint that is asked for.
const MOST: f64 = 1_000.0;

/// How good a choice is, the least first: its price, what is left over, how many tins.
type Worth = (i64, i64, u32);

/// The cheapest choice of tins that holds at least `needed`; among equals the least left over, then the fewest tins.
///
/// Answers how many of each size. Exact where the sizes have a common measure that goes at most four million times into the need, and
/// wherever two million choices are enough to look at; beyond that the best that was seen. Never holds less than is needed.
/// `None` when there is no tin, a price is below zero, or more than 1 000 L are needed.
pub fn cheapest(needed: Amount<kind::Paint>, tins: &[Tin]) -> Option<Vec<u32>> {
    let litres = needed.get();
    if tins.is_empty() || !(0.0..=MOST).contains(&litres) || tins.iter().any(|tin| tin.price.minor() < 0) {
        return None;
    }
    let whole = |litres: f64| libm::round(litres * LITRE) as i64;
    let sizes: Vec<(i64, i64)> = tins.iter().map(|tin| (whole(tin.holds.get()), tin.price.minor())).collect();
    let need = (whole(litres) - SLACK).max(0);
    let measure = sizes.iter().fold(0, |measure, (size, _)| num_integer::gcd(measure, *size)).max(1);
    let largest = sizes.iter().map(|(size, _)| *size).max().unwrap_or(0);
    if (need + largest) / measure < MOST_STEPS {
        return step_by_step(need, measure, &sizes);
    }
    let mut search = Search { sizes: ordered(&sizes), best: None, counts: vec![0; sizes.len()], left: MOST_CHOICES };
    search.go(0, need, (0, 0, 0));
    let (_, counts) = search.best?;
    let mut told = vec![0; sizes.len()];
    for ((at, ..), count) in search.sizes.iter().zip(counts) {
        told[*at] = count;
    }
    Some(told)
}

/// Every amount that tins can hold, from nothing up to the need and the largest tin beyond it.
fn step_by_step(need: i64, measure: i64, sizes: &[(i64, i64)]) -> Option<Vec<u32>> {
    let steps = |volume: i64| usize::try_from(volume / measure).unwrap_or(0);
    let least = steps(need + measure - 1);
    let far = least + sizes.iter().map(|(size, _)| steps(*size)).max().unwrap_or(0);
    // best[v]: price, tins and the last size of the cheapest choice that holds exactly v steps.
    let mut best: Vec<Option<(i64, u32, u8)>> = vec![None; far + 1];
    best[0] = Some((0, 0, 0));
    for volume in 1..=far {
        for (index, (size, price)) in sizes.iter().enumerate() {
            let size = steps(*size);
            if size == 0 || size > volume {
                continue;
            }
            if let Some((before, count, _)) = best[volume - size] {
                let candidate = (before.saturating_add(*price), count + 1);
                if best[volume].is_none_or(|(price, count, _)| candidate < (price, count)) {
                    best[volume] = Some((candidate.0, candidate.1, index as u8));
                }
            }
        }
    }
    let mut volume = (least..=far)
        .filter(|volume| best[*volume].is_some())
        .min_by_key(|volume| best[*volume].map_or((i64::MAX, 0, 0), |(price, count, _)| (price, *volume, count)))?;
    let mut counts = vec![0; sizes.len()];
    while let Some((_, _, index)) = best[volume].filter(|_| volume > 0) {
        let index = usize::from(index);
        counts[index] += 1;
        volume -= steps(sizes[index].0);
    }
    Some(counts)
}

/// Sizes with their places, the cheapest for what it holds first.
fn ordered(sizes: &[(i64, i64)]) -> Vec<(usize, i64, i64)> {
    let mut ordered: Vec<_> = sizes.iter().enumerate().map(|(at, (size, price))| (at, *size, *price)).collect();
    let cross = |price: i64, size: i64| i128::from(price) * i128::from(size);
    ordered.sort_by(|one, other| cross(one.2, other.1).cmp(&cross(other.2, one.1)).then(other.1.cmp(&one.1)));
    ordered
}

/// Choices looked at in depth, for sizes without a common measure.
struct Search {
    sizes: Vec<(usize, i64, i64)>,
    best: Option<(Worth, Vec<u32>)>,
    counts: Vec<u32>,
    left: u32,
}

impl Search {
    fn go(&mut self, at: usize, need: i64, so_far: Worth) {
        if need <= 0 {
            let worth = (so_far.0, -need, so_far.2);
            if self.best.as_ref().is_none_or(|(best, _)| worth < *best) {
                self.best = Some((worth, self.counts.clone()));
            }
            return;
        }
        let Some((_, size, price)) = self.sizes.get(at).copied() else { return };
        // No rest is bought for less than this size's price for what it holds, since later sizes cost more.
        let rest = i128::from(need) * i128::from(price) / i128::from(size.max(1));
        let least = so_far.0.saturating_add(i64::try_from(rest).unwrap_or(i64::MAX));
        if size == 0 || self.left == 0 || self.best.as_ref().is_some_and(|(best, _)| (least, 0, 0) >= *best) {
            return;
        }
        let most = (need + size - 1) / size;
        for count in (0..=most).rev() {
            self.left = self.left.saturating_sub(1);
            let tins = u32::try_from(count).unwrap_or(u32::MAX);
            self.counts[at] = tins;
            self.go(
                at + 1,
                need - count * size,
                (so_far.0.saturating_add(price.saturating_mul(count)), 0, so_far.2 + tins),
            );
        }
        self.counts[at] = 0;
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::{Money, Physical};

    const GALLON: f64 = 3.785_411_784;

    fn tin(litres: f64, price: i64) -> Tin {
        Tin { holds: Physical::new(litres).expect("a real size"), price: Money::from_minor(price) }
    }

    fn check(litres: f64, tins: &[Tin], expected: &[u32]) {
        assert_eq!(cheapest(Amount::of(litres), tins).as_deref(), Some(expected), "{litres} L");
    }

    #[test]
    fn the_cheapest_choice_is_found_where_the_largest_tin_misleads() {
        // Looked through by hand: 6 L of 5 L at 84 and 3 L at 45 is 90 with two small ones.
        check(6.0, &[tin(5.0, 8_400), tin(3.0, 4_500)], &[0, 2]);
        check(0.0, &[tin(1.0, 100)], &[0]);
        assert_eq!(cheapest(Amount::of(0.5), &[]), None);
    }

    #[test]
    fn a_gallon_holds_a_gallon() {
        // NIST Handbook 44, appendix C: a US gallon is 231 cubic inches and four quarts.
        check(GALLON, &[tin(GALLON, 8_000)], &[1]);
        check(GALLON, &[tin(GALLON / 4.0, 2_400), tin(GALLON, 9_600)], &[0, 1]);
        check(3.0 * GALLON / 4.0, &[tin(GALLON / 4.0, 2_400), tin(GALLON, 7_300)], &[3, 0]);
        check(GALLON + 0.001, &[tin(GALLON, 8_000)], &[2]);
        // Sizes without a common measure: 946 mL beside a gallon.
        check(GALLON, &[tin(0.946, 1_900), tin(GALLON, 8_000)], &[0, 1]);
        check(4.0 * 0.946, &[tin(0.946, 1_900), tin(GALLON, 8_000)], &[4, 0]);
    }

    #[test]
    fn no_choice_is_cheaper_than_the_one_that_is_told() {
        // Against looking through every choice, for sizes and prices that follow from the round.
        for round in 0_u32..60 {
            let sizes = [0.25 + f64::from(round % 7) * 0.13, 1.0 + f64::from(round % 5) * 0.5, 2.7];
            let prices = [300 + i64::from(round % 11) * 37, 900 + i64::from(round % 3) * 211, 2_000];
            let tins: Vec<Tin> = sizes.iter().zip(prices).map(|(size, price)| tin(*size, price)).collect();
            let need = 0.4 + f64::from(round) * 0.171;
            let mut best = i64::MAX;
            for one in 0..50 {
                for two in 0..15 {
                    for three in 0..8 {
                        let counts = [one, two, three].map(f64::from);
                        let held: f64 = counts.iter().zip(sizes).map(|(count, size)| count * size).sum();
                        if held > need - 1e-7 {
                            let each = [one, two, three].map(i64::from);
                            best = best.min(each.iter().zip(prices).map(|(count, price)| count * price).sum());
                        }
                    }
                }
            }
            let told = cheapest(Amount::of(need), &tins).expect("there are tins");
            let cost: i64 = told.iter().zip(prices).map(|(count, price)| i64::from(*count) * price).sum();
            assert_eq!(cost, best, "{need} L of {sizes:?} at {prices:?}");
        }
    }
}
