//! A whole job for the saw: sticks with bad stretches, lots that stay together, pieces longer than any stick, and one plan for all.
//!
//! Each of these is brought down to the plain question of the stick plan, which is proved as it stands; what the proof then holds
//! for is said with it.

use std::collections::BTreeMap;

use super::instance::{Instance, InstanceFault, Piece};
use super::long_members::{Joined, Ways, with_long_members};
use super::matched;
use super::on_hand::{self, Held, Laid, Usable};
use super::plan::{Plan, Status};
use super::scarf::LongRail;
use super::solve::{self, Effort};
use crate::quantity::Length;

/// Pieces wanted.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Wanted {
    /// Length of each.
    pub length: Length,
    /// How many.
    pub count: u32,
    /// Pieces of one lot come from one stick, one after the other.
    pub lot: Option<u32>,
    /// Where each may be joined when it is longer than every stick, from its left end.
    pub joins_at: Vec<Length>,
}

/// What is asked.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct StickJob {
    /// The pieces.
    pub wanted: Vec<Wanted>,
    /// The sticks.
    pub held: Vec<Held>,
    /// Cut off each end of every stick.
    pub trim: Length,
    /// What one cut eats.
    pub kerf: Length,
    /// How far two pieces lap at a joint.
    pub lap: Length,
}

/// One way of cutting, with what lies where.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct SawnPart {
    /// Which part of which stick, and how it is cut; pieces of a lot stand one after another.
    pub laid: Laid,
    /// Lots cut from it.
    pub lots: Vec<u32>,
}

/// A piece that is joined.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct JoinedPiece {
    /// Its whole length.
    pub length: Length,
    /// Its parts, to their long points.
    pub parts: Vec<Length>,
}

/// The plan for the whole job.
#[derive(Clone, Debug)]
pub struct JobPlan {
    /// The plain question it came down to.
    pub asked: Instance,
    /// The plan of that question, with its proof.
    pub plan: Plan,
    /// The parts of sticks that could be used.
    pub usable: Vec<Usable>,
    /// How each is cut.
    pub sawn: Vec<SawnPart>,
    /// Pieces that are joined, as chosen together with the plan.
    pub joined: Vec<JoinedPiece>,
    /// No other choice of joints saves anything.
    pub joints_settled: bool,
    /// Sticks laid on the saw: parts of one stick count once.
    pub sticks: u32,
}

/// Why a job cannot be planned.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum JobFault {
    /// A number is out of range.
    Instance(InstanceFault),
    /// A lot is longer than every part of a stick.
    LotTooLong {
        /// The lot.
        lot: u32,
        /// Its length with the cuts in it.
        length: Length,
        /// The longest part there is.
        longest: Length,
    },
    /// A long piece cannot be joined where it may be.
    NoJoint {
        /// Its place in the list.
        wanted: usize,
        /// The longest part there is.
        longest: Length,
    },
}

/// The cheapest plan for a job.
/// # Errors
/// A [`JobFault`]. A piece too long without a place to join it comes back in the plan's status.
pub fn plan(job: &StickJob, effort: Effort, keep_going: &mut dyn FnMut() -> bool) -> Result<JobPlan, JobFault> {
    let usable = on_hand::usable(&job.held, job.trim, job.kerf);
    let longest = usable.iter().map(|part| part.length).max().unwrap_or(Length::ZERO);
    let kerf = job.kerf.nm();
    let mut asked = Instance { pieces: Vec::new(), kerf, sticks: on_hand::offered(&job.held, &usable) };
    let lots = lots(job);
    for (lot, set) in &lots {
        let length = matched::joined(set, kerf).unwrap_or(i64::MAX);
        if longest.nm() < length {
            return Err(JobFault::LotTooLong { lot: *lot, length: Length::from_nm(length), longest });
        }
        asked.pieces.push(Piece { length, count: 1 });
    }
    let (mut members, mut lengths): (Vec<Ways>, Vec<Length>) = (Vec::new(), Vec::new());
    for (index, wanted) in job.wanted.iter().enumerate().filter(|(_, wanted)| wanted.lot.is_none()) {
        if wanted.length <= longest || wanted.joins_at.is_empty() {
            asked.pieces.push(Piece { length: wanted.length.nm(), count: wanted.count });
            continue;
        }
        let ways = ways(wanted, longest, job.lap).ok_or(JobFault::NoJoint { wanted: index, longest })?;
        for _ in 0..wanted.count {
            members.push(ways.clone());
            lengths.push(wanted.length);
        }
    }
    let (mut joints_settled, mut joined) = (true, Vec::new());
    if !members.is_empty() {
        let found = with_long_members(&asked, &members, &|_| true, effort, keep_going).map_err(JobFault::Instance)?;
        let Joined { chosen, settled, .. } = found;
        joints_settled = settled;
        for ((ways, way), length) in members.iter().zip(chosen).zip(lengths) {
            let parts = ways.get(way).cloned().unwrap_or_default();
            asked.pieces.extend(parts.iter().map(|&length| Piece { length, count: 1 }));
            joined.push(JoinedPiece { length, parts: parts.into_iter().map(Length::from_nm).collect() });
        }
    }
    let plan = solve::plan(&asked, effort, keep_going).map_err(JobFault::Instance)?;
    let found = matches!(plan.status, Status::ProvedLeast | Status::BestFound { .. });
    let sawn = if found { sawn(&plan, &lots, job, &usable) } else { Vec::new() };
    let laid: Vec<Laid> = sawn.iter().map(|part| part.laid.clone()).collect();
    let sticks = on_hand::sticks_laid(&laid, &usable);
    Ok(JobPlan { asked, plan, usable, sawn, joined, joints_settled, sticks })
}

fn lots(job: &StickJob) -> Vec<(u32, Vec<Piece>)> {
    let mut lots: BTreeMap<u32, Vec<Piece>> = BTreeMap::new();
    for wanted in &job.wanted {
        if let Some(lot) = wanted.lot {
            lots.entry(lot).or_default().push(Piece { length: wanted.length.nm(), count: wanted.count });
        }
    }
    lots.into_iter().collect()
}

/// The best balanced joints first, then every single joint that fits.
fn ways(wanted: &Wanted, usable: Length, lap: Length) -> Option<Ways> {
    let mut studs = wanted.joins_at.clone();
    studs.sort_unstable();
    let rail = LongRail { from: Length::ZERO, to: wanted.length, usable, lap, studs: &studs };
    let in_nm = |joints: &[Length]| rail.pieces(joints).into_iter().map(Length::nm).collect::<Vec<i64>>();
    let mut ways = vec![in_nm(&rail.joints()?)];
    for stud in rail.single_joints() {
        let way = in_nm(&[stud]);
        if !ways.contains(&way) {
            ways.push(way);
        }
    }
    Some(ways)
}

fn sawn(plan: &Plan, lots: &[(u32, Vec<Piece>)], job: &StickJob, usable: &[Usable]) -> Vec<SawnPart> {
    let sets: Vec<Vec<Piece>> = lots.iter().map(|(_, set)| set.clone()).collect();
    let parted = matched::parted(plan, &sets, job.kerf.nm());
    let cuts: Vec<_> = parted.iter().map(|(cut, _)| cut.clone()).collect();
    on_hand::laid(&cuts, &job.held, usable)
        .into_iter()
        .map(|laid| {
            let same = parted.iter().find(|(cut, _)| cut.pieces == laid.cut.pieces && cut.length == laid.cut.length);
            let held = same.map(|(_, held)| held.as_slice()).unwrap_or_default();
            let lots = held.iter().filter_map(|set| lots.get(*set)).map(|(lot, _)| *lot).collect();
            SawnPart { laid, lots }
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::super::clear_parts::BadStretch;
    use super::*;

    fn wanted(mm: i64, count: u32) -> Wanted {
        Wanted { length: Length::mm(mm), count, lot: None, joins_at: Vec::new() }
    }

    fn bought(mm: i64, price: i64) -> Held {
        Held { length: Length::mm(mm), price, available: None, bad: Vec::new() }
    }

    fn planned(job: &StickJob) -> JobPlan {
        plan(job, Effort::USUAL, &mut || true).expect("a plan")
    }

    #[test]
    fn a_knot_a_lot_and_a_long_piece_in_one_plan() {
        // By hand, kerf 0: the rack's 2400 with a knot from 1000 to 1100 gives 1000 and 1300. 900 comes out of the first. The lot of
        // 700 and 500 (1200) out of the second. The 5000 is joined at 2400: 2400 + 2600 with no lap, two sticks of 3000.
        let knot = BadStretch { from: Length::mm(1_000), to: Length::mm(1_100) };
        let lot = |mm| Wanted { lot: Some(7), ..wanted(mm, 1) };
        let job = StickJob {
            wanted: vec![
                wanted(900, 1),
                lot(700),
                lot(500),
                Wanted { joins_at: vec![Length::mm(2_400)], ..wanted(5_000, 1) },
            ],
            held: vec![
                Held { length: Length::mm(2_400), price: 0, available: Some(1), bad: vec![knot] },
                bought(3_000, 1_000),
            ],
            trim: Length::ZERO,
            kerf: Length::ZERO,
            lap: Length::ZERO,
        };
        let found = planned(&job);
        assert_eq!((found.plan.cost, found.plan.status, found.sticks), (2_000, Status::ProvedLeast, 3));
        assert_eq!(
            found.joined,
            [JoinedPiece { length: Length::mm(5_000), parts: vec![Length::mm(2_400), Length::mm(2_600)] }]
        );
        let together = found.sawn.iter().find(|part| part.lots == [7]).expect("the lot");
        let cut: Vec<i64> = together.laid.cut.pieces.iter().map(|piece| piece.length / 1_000_000).collect();
        assert_eq!(cut, [700, 500]);
        assert_eq!(found.usable[together.laid.part].from, Length::mm(1_100), "beyond the knot");
    }

    #[test]
    fn a_joint_is_moved_when_that_saves_a_stick() {
        // By hand: 1500 from sticks of 1000 and a 400. Joined in the middle, 750 + 750 leave 250 twice and the 400 needs a third stick;
        // joined at 900, the 600 leaves room for the 400.
        let long = Wanted { joins_at: [600, 750, 900].map(Length::mm).to_vec(), ..wanted(1_500, 1) };
        let job = StickJob {
            wanted: vec![wanted(400, 1), long],
            held: vec![bought(1_000, 500)],
            trim: Length::ZERO,
            kerf: Length::ZERO,
            lap: Length::ZERO,
        };
        let found = planned(&job);
        assert_eq!((found.plan.cost, found.sticks, found.joints_settled), (1_000, 2, true));
    }

    #[test]
    fn what_cannot_be_is_told() {
        let job = |wanted| StickJob {
            wanted,
            held: vec![bought(1_000, 500)],
            trim: Length::ZERO,
            kerf: Length::mm(3),
            lap: Length::ZERO,
        };
        let lot = |mm| Wanted { lot: Some(1), ..wanted(mm, 1) };
        let fault = plan(&job(vec![lot(600), lot(500)]), Effort::USUAL, &mut || true).err();
        assert_eq!(fault, Some(JobFault::LotTooLong { lot: 1, length: Length::mm(1_103), longest: Length::mm(1_000) }));
        let far = Wanted { joins_at: vec![Length::mm(200)], ..wanted(1_500, 1) };
        let fault = plan(&job(vec![far]), Effort::USUAL, &mut || true).err();
        assert_eq!(fault, Some(JobFault::NoJoint { wanted: 0, longest: Length::mm(1_000) }));
    }
}
