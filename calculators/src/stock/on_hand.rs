//! Sticks as they lie in the rack, and what of them a plan can cut from: ends trimmed, bad stretches cut out.

use super::clear_parts::{BadStretch, Marked, clear_parts};
use super::instance;
use super::plan::CutStick;
use crate::quantity::{Length, Money};

/// Sticks alike: one length, one price, marked in the same places.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Held {
    /// Whole length.
    pub length: Length,
    /// Price of one in minor units of money.
    pub price: i64,
    /// How many there are; none means no limit.
    pub available: Option<u32>,
    /// Where each of them is bad.
    pub bad: Vec<BadStretch>,
}

impl Held {
    /// Sticks as a shop says them. Sticks that were marked are one stick, unless somebody says that there are more like it.
    pub fn told(length: Length, price: Money, available: Option<u32>, bad: &[Marked]) -> Self {
        Self {
            length,
            price: price.minor(),
            available: available.or((!bad.is_empty()).then_some(1)),
            bad: bad.iter().map(|bad| bad.stretch()).collect(),
        }
    }
}

/// A part of such sticks that pieces can be cut from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Usable {
    /// Which sticks, by their place in the list.
    pub held: usize,
    /// Where it begins, from the stick's first end.
    pub from: Length,
    /// How long it is.
    pub length: Length,
}

/// Every part that can be used, stick by stick from the first end; sticks of which none are on hand stay out.
pub fn usable(held: &[Held], trim: Length, kerf: Length) -> Vec<Usable> {
    let on_hand = held.iter().enumerate().filter(|(_, sticks)| sticks.available != Some(0));
    on_hand
        .flat_map(|(at, sticks)| {
            let parts = clear_parts(sticks.length, trim, &sticks.bad, kerf);
            parts.into_iter().map(move |part| Usable { held: at, from: part.from, length: part.length })
        })
        .collect()
}

/// The parts as sticks of a plan, each at the price of its stick. A stick that gives several parts is paid for: its price
/// must be 0, or a plan that uses two of its parts would pay twice.
pub fn offered(held: &[Held], usable: &[Usable]) -> Vec<instance::Stick> {
    let stick = |part: &Usable| {
        let Held { price, available, .. } = held[part.held];
        instance::Stick { length: part.length.nm(), price, available }
    };
    usable.iter().filter(|part| part.held < held.len()).map(stick).collect()
}

/// Sticks of a plan with the place of each in the rack.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Laid {
    /// The part it is cut from, by its place in the list of usable parts.
    pub part: usize,
    /// How it is cut; `times` says how many of this part.
    pub cut: CutStick,
}

/// Finds a part for every stick of a plan: those of which there are only so many first.
///
/// The plan counts parts of one length and price together; what is more than the parts there are stays out.
pub fn laid(cuts: &[CutStick], held: &[Held], usable: &[Usable]) -> Vec<Laid> {
    let limit = |part: &Usable| held.get(part.held).and_then(|sticks| sticks.available);
    let mut left: Vec<Option<u32>> = usable.iter().map(limit).collect();
    let mut order: Vec<usize> = (0..usable.len()).collect();
    order.sort_by_key(|&part| left[part].is_none());
    let mut placed = Vec::new();
    for cut in cuts {
        let mut times = cut.times;
        for &part in &order {
            let price = held.get(usable[part].held).map(|sticks| sticks.price);
            if times == 0 || usable[part].length.nm() != cut.length || price != Some(cut.price) {
                continue;
            }
            let taken = left[part].map_or(times, |left| left.min(times));
            if taken > 0 {
                left[part] = left[part].map(|left| left - taken);
                times -= taken;
                placed.push(Laid { part, cut: CutStick { times: taken, ..cut.clone() } });
            }
        }
    }
    placed
}

/// How many sticks are laid on the saw: parts of one stick count once.
pub fn sticks_laid(laid: &[Laid], usable: &[Usable]) -> u32 {
    let of_part = |part: usize| -> u32 { laid.iter().filter(|one| one.part == part).map(|one| one.cut.times).sum() };
    let mut most = std::collections::BTreeMap::new();
    for (part, place) in usable.iter().enumerate() {
        let held = most.entry(place.held).or_insert(0);
        *held = of_part(part).max(*held);
    }
    most.into_values().sum()
}

#[cfg(test)]
mod tests {
    use super::super::instance::{Instance, Piece};
    use super::super::solve::{Effort, plan};
    use super::*;

    #[test]
    fn two_parts_of_one_stick_are_one_stick_on_the_saw() {
        // By hand: 2400 with a knot from 1000 to 1100 gives 1000 and 1300; 900 and 1200 come out of it, nothing is bought.
        let knot = BadStretch { from: Length::mm(1_000), to: Length::mm(1_100) };
        let held = [
            Held { length: Length::mm(2_400), price: 0, available: Some(1), bad: vec![knot] },
            Held { length: Length::mm(2_400), price: 990, available: None, bad: Vec::new() },
        ];
        let parts = usable(&held, Length::ZERO, Length::mm(3));
        assert_eq!(parts.iter().map(|part| part.length).collect::<Vec<_>>(), [1_000, 1_300, 2_400].map(Length::mm));
        let piece = |mm| Piece { length: Length::mm(mm).nm(), count: 1 };
        let asked = Instance {
            pieces: vec![piece(900), piece(1_200)],
            kerf: Length::mm(3).nm(),
            sticks: offered(&held, &parts),
        };
        let plan = plan(&asked, Effort::USUAL, &mut || true).unwrap();
        let laid = laid(&plan.sticks, &held, &parts);
        assert_eq!((plan.cost, plan.stick_count, sticks_laid(&laid, &parts)), (0, 2, 1));
        let mut places: Vec<_> = laid.iter().map(|one| parts[one.part].from).collect();
        places.sort();
        assert_eq!(places, [Length::ZERO, Length::mm(1_100)]);
    }

    #[test]
    fn limited_sticks_of_one_length_and_price_are_used_up_first() {
        let alike = |available| Held { length: Length::mm(1_000), price: 5, available, bad: Vec::new() };
        let held = [alike(None), alike(Some(2))];
        let parts = usable(&held, Length::ZERO, Length::ZERO);
        let cut = CutStick { length: Length::mm(1_000).nm(), price: 5, times: 5, pieces: Vec::new(), leftover: 0 };
        let laid: Vec<_> = laid(&[cut], &held, &parts).into_iter().map(|one| (one.part, one.cut.times)).collect();
        assert_eq!(laid, [(1, 2), (0, 3)]);
    }
}
