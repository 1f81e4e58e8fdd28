//! Joints of a rail that is longer than any stick: on proved studs, away from openings and plates, the parts as equal as studs permit.

use crate::quantity::{Amount, Exact, Length};
use crate::stock::scarf::{LongRail, lap};
use crate::wall::defaults::{JOINT_DISTANCE, Settled};
use crate::wall::plan::{Joint, Member};
use crate::wall::scheme::WallInput;
use crate::wall::sticks::longest_for;

/// What joints are made with.
pub(super) struct JointWork<'a> {
    pub(super) input: &'a WallInput,
    pub(super) settled: &'a Settled,
    /// The rail's slope in degrees, rising to the right.
    pub(super) degrees: f64,
}

/// The joints of a rail, and where a single one could stand as well; none where one piece fits, or where no stud allows them (told as a
/// finding). `joined` collects the studs of all rails, so that joints of several lines are staggered where studs permit.
pub(super) fn joints(member: &Member, work: &JointWork<'_>, joined: &mut Vec<Length>) -> (Vec<Joint>, Vec<Length>) {
    let Some(usable) = longest_for(&work.input.stock, work.settled, true) else { return Default::default() };
    if member.length.exact <= usable {
        return Default::default();
    }
    let angle = work.input.stock.scarf_angle.map_or(45.0, |angle| angle.get());
    let lap = lap(member.thickness, angle);
    let all: Vec<Length> = member.studs.iter().copied().filter(|stud| stands(*stud, member, work)).collect();
    let staggered: Vec<Length> = all.iter().filter(|stud| !joined.contains(stud)).copied().collect();
    let divided = |studs: &[Length]| -> Option<Vec<Length>> {
        let along: Vec<Length> = studs.iter().map(|stud| along(member, work.degrees, *stud)).collect();
        let rail = LongRail { from: Length::ZERO, to: whole(member), usable, lap, studs: &along };
        let at = rail.joints()?;
        Some(studs.iter().zip(&along).filter(|(_, along)| at.contains(along)).map(|(stud, _)| *stud).collect())
    };
    // As few as the sticks allow comes first, then staggered.
    let fewest = divided(&all);
    let apart = divided(&staggered).filter(|apart| fewest.as_ref().is_none_or(|fewest| apart.len() <= fewest.len()));
    let made = apart.or(fewest).unwrap_or_default();
    joined.extend(made.iter().copied());
    let places = if made.len() == 1 {
        let along_all: Vec<Length> = all.iter().map(|stud| along(member, work.degrees, *stud)).collect();
        let single = LongRail { from: Length::ZERO, to: whole(member), usable, lap, studs: &along_all }.single_joints();
        all.iter().zip(&along_all).filter(|(_, along)| single.contains(along)).map(|(stud, _)| *stud).collect()
    } else {
        Vec::new()
    };
    let joint = |stud: Length| Joint {
        stud,
        angle: Amount::of(angle),
        lap: lap.exact(),
        along: along(member, work.degrees, stud),
    };
    (made.into_iter().map(joint).collect(), places)
}

fn whole(member: &Member) -> Length {
    member.length.exact.nearest(Length::from_nm(1))
}

/// How far along the rail, from its left long point, its middle line crosses a stud; a joint runs square across it there.
pub fn along(member: &Member, degrees: f64, stud: Length) -> Length {
    let nm = Length::from_nm(1);
    let [a, _, _, d] = [0, 1, 2, 3].map(|n| member.outline[n]);
    if degrees == 0.0 {
        return (stud.exact() - a.x.min(d.x)).nearest(nm);
    }
    let (sine, cosine) = (libm::sin(degrees.to_radians()), libm::cos(degrees.to_radians()));
    let from_long_point = |x: Exact, y: Exact| (x - d.x).in_mm() * cosine + (y - d.y).in_mm() * sine;
    let start = from_long_point(a.x, a.y).min(0.0);
    let aside = (stud.exact() - d.x).in_mm() - member.width.in_mm() / 2.0 * sine;
    Length::nearest_mm(aside / cosine - start)
}

/// A stud takes a joint far enough from the sides of openings, measured along the wall above and below them too, and not over a plate.
fn stands(stud: Length, member: &Member, work: &JointWork<'_>) -> bool {
    let distance = JOINT_DISTANCE.in_units(work.settled.units());
    let survey = &work.input.survey;
    let near = |side: Length| (stud - side).size() < distance;
    let openings = survey.openings.iter().any(|opening| near(opening.left.get()) || near(opening.right.get()));
    let heights = || member.outline.iter().map(|point| point.y);
    let (low, high) = (heights().min().unwrap_or(Exact::ZERO), heights().max().unwrap_or(Exact::ZERO));
    let plates = survey.boxes.iter().any(|plate| {
        let level = low < plate.top.get().exact() + distance && plate.bottom.get().exact() - distance < high;
        level && plate.left.get() <= stud && stud <= plate.right.get()
    });
    !openings && !plates
}
