//! What is wrong with a wall before any layout is looked for: every rule between fields, all at once.
//!
//! Bounds of single fields live in their types. Here stand the rules that need two fields: order, overlap, being on the wall.

use super::defaults::SHORTEST_BOARD;
use super::measured::Measured;
use super::scheme::{Scheme, Stock, TopLine, WallInput};
use super::survey::{Along, End, EndKind, Height, Survey};
use crate::catalogue::{Fault, Words};
use crate::quantity::{Length, Units};
use crate::stock::clear_parts::marked_faults;

/// Every rule between fields that a wall breaks; empty when it can be planned.
pub fn faults(input: &WallInput) -> Vec<Fault> {
    let mut faults = survey_faults(&input.survey, "/survey");
    scheme_faults(&input.scheme, &input.survey, &mut faults);
    stock_faults(&input.stock, &mut faults);
    super::shop::shop_faults(&input.shop, &mut faults);
    if faults.is_empty() {
        height_faults(input, &Measured::of(&input.survey), &mut faults);
    }
    faults
}

/// The rules that a survey alone can break, with pointers below `at`.
pub fn survey_faults(survey: &Survey, at: &str) -> Vec<Fault> {
    let mut faults = Vec::new();
    let length = length_faults(survey, at, &mut faults);
    station_faults(survey, at, length, &mut faults);
    rectangle_faults(survey, at, length, &mut faults);
    overlap_faults(survey, at, &mut faults);
    stud_faults(survey, at, length, &mut faults);
    stair_faults(survey, at, length, &mut faults);
    end_faults(&survey.left, &format!("{at}/left"), &mut faults);
    end_faults(&survey.right, &format!("{at}/right"), &mut faults);
    faults
}

fn said(figure: impl Into<crate::catalogue::Figure>) -> Words {
    Words::of(figure)
}

/// The length that the other places are held against: the one measured lowest.
fn length_faults(survey: &Survey, at: &str, faults: &mut Vec<Fault>) -> Length {
    for (n, reading) in survey.lengths.iter().enumerate() {
        if survey.lengths[..n].iter().any(|earlier| earlier.height == reading.height) {
            let why = "the length at this height is given twice; measure at another height, or leave one out";
            let instead = said(reading.height.get() + Length::inches(24));
            faults.push(Fault::new(format!("{at}/lengths/{n}/height"), said(reading.height), why, instead));
        }
    }
    match survey.lengths.iter().min_by_key(|reading| reading.height) {
        Some(low) => low.length.get(),
        None => {
            let why = "a wall needs its length, measured at one height at least";
            faults.push(Fault::new(format!("{at}/lengths"), "nothing", why, "one length at its height"));
            Length::LONGEST
        }
    }
}

fn station_faults(survey: &Survey, at: &str, length: Length, faults: &mut Vec<Fault>) {
    let steepest = Length::um(102_000);
    for (n, station) in survey.stations.iter().enumerate() {
        let place = station.at.get();
        beyond(format!("{at}/stations/{n}/at"), place, length, faults);
        if let Some(before) = n.checked_sub(1).map(|before| &survey.stations[before]) {
            if place < before.at.get() {
                let why = Words::new("stations go from left to right; this one lies before the last, at {}")
                    .with(before.at.get());
                let instead = said(before.at.get());
                faults.push(Fault::new(format!("{at}/stations/{n}/at"), said(place), why, instead));
            }
            if n > 1 && survey.stations[n - 2].at == station.at {
                let why = "two stations at one place are a step in the floor; a third has no meaning";
                faults.push(Fault::new(
                    format!("{at}/stations/{n}/at"),
                    said(place),
                    why,
                    said(place + Length::inches(4)),
                ));
            }
        }
        let drop = station.datum_to_floor.get() - survey.datum.get();
        if drop.size() > steepest {
            let why = Words::new(
                "the floor here would lie {} off the zero level; measure down from the datum, which is {} above the high floor point",
            )
            .with(drop.size())
            .with(survey.datum);
            let pointer = format!("{at}/stations/{n}/datum_to_floor");
            faults.push(Fault::new(pointer, said(station.datum_to_floor), why, said(survey.datum)));
        }
    }
}

fn beyond(pointer: String, place: Length, length: Length, faults: &mut Vec<Fault>) {
    if length < place {
        let why = Words::new("lies beyond the end of the wall, which is {} long").with(length);
        faults.push(Fault::new(pointer, said(place), why, said(length)));
    }
}

/// A rectangle of the survey: its pointer and its four edges.
struct Rectangle {
    pointer: String,
    name: &'static str,
    left: Length,
    right: Length,
    bottom: Option<Length>,
    top: Length,
}

impl Rectangle {
    fn overlaps(&self, other: &Self) -> bool {
        self.left < other.right
            && other.left < self.right
            && other.bottom.is_none_or(|bottom| bottom < self.top)
            && self.bottom.is_none_or(|bottom| bottom < other.top)
    }
}

fn rectangle(
    pointer: String,
    name: &'static str,
    sides: (Along, Along),
    bottom: Option<Height>,
    top: Height,
) -> Rectangle {
    Rectangle {
        pointer,
        name,
        left: sides.0.get(),
        right: sides.1.get(),
        bottom: bottom.map(Length::from),
        top: top.get(),
    }
}

fn openings(survey: &Survey, at: &str) -> Vec<Rectangle> {
    let one = |(n, opening): (usize, &super::survey::Opening)| {
        rectangle(format!("{at}/openings/{n}"), "opening", (opening.left, opening.right), opening.bottom, opening.top)
    };
    survey.openings.iter().enumerate().map(one).collect()
}

fn boxes(survey: &Survey, at: &str) -> Vec<Rectangle> {
    let one = |(n, plate): (usize, &super::survey::WallBox)| {
        rectangle(format!("{at}/boxes/{n}"), "plate", (plate.left, plate.right), Some(plate.bottom), plate.top)
    };
    survey.boxes.iter().enumerate().map(one).collect()
}

fn kept_clear(survey: &Survey, at: &str) -> Vec<Rectangle> {
    let one = |(n, zone): (usize, &super::survey::KeepClear)| {
        rectangle(
            format!("{at}/keep_clear/{n}"),
            "part to be kept clear",
            (zone.left, zone.right),
            Some(zone.bottom),
            zone.top,
        )
    };
    survey.keep_clear.iter().enumerate().map(one).collect()
}

fn rectangle_faults(survey: &Survey, at: &str, length: Length, faults: &mut Vec<Fault>) {
    for shape in openings(survey, at).into_iter().chain(boxes(survey, at)).chain(kept_clear(survey, at)) {
        if shape.right <= shape.left {
            let why = Words::new("the right edge must lie to the right of the left edge, at {}").with(shape.left);
            let instead = said(shape.left + Length::inches(3));
            faults.push(Fault::new(format!("{}/right", shape.pointer), said(shape.right), why, instead));
        }
        if let Some(bottom) = shape.bottom.filter(|bottom| shape.top <= *bottom) {
            let why = Words::new("the top must lie above the bottom, at {}").with(bottom);
            let instead = said(bottom + Length::inches(4));
            faults.push(Fault::new(format!("{}/top", shape.pointer), said(shape.top), why, instead));
        }
        if shape.bottom.is_none() && !shape.top.is_positive() {
            let why = "an opening that stands on the floor must end above it";
            faults.push(Fault::new(format!("{}/top", shape.pointer), said(shape.top), why, said(Length::inches(80))));
        }
        beyond(format!("{}/right", shape.pointer), shape.right, length, faults);
    }
}

fn overlap_faults(survey: &Survey, at: &str, faults: &mut Vec<Fault>) {
    let openings = openings(survey, at);
    for (n, later) in openings.iter().enumerate() {
        for earlier in openings[..n].iter().filter(|earlier| earlier.overlaps(later)) {
            let why = Words::new("overlaps {}, which ends at {}").with(earlier.pointer.clone()).with(earlier.right);
            faults.push(Fault::new(format!("{}/left", later.pointer), said(later.left), why, said(earlier.right)));
        }
    }
    let boxes = boxes(survey, at);
    for (n, plate) in boxes.iter().enumerate() {
        for opening in openings.iter().filter(|opening| opening.overlaps(plate)) {
            let why = Words::new("this {} lies inside {}, from {} to {}")
                .with(plate.name)
                .with(opening.pointer.clone())
                .with(opening.left)
                .with(opening.right);
            faults.push(Fault::new(format!("{}/left", plate.pointer), said(plate.left), why, said(opening.right)));
        }
        for earlier in boxes[..n].iter().filter(|earlier| earlier.overlaps(plate)) {
            let why =
                Words::new("overlaps the plate {}, which ends at {}").with(earlier.pointer.clone()).with(earlier.right);
            faults.push(Fault::new(format!("{}/left", plate.pointer), said(plate.left), why, said(earlier.right)));
        }
    }
}

fn stud_faults(survey: &Survey, at: &str, length: Length, faults: &mut Vec<Fault>) {
    let Some(studs) = &survey.studs else { return };
    match (studs.first, studs.spacing) {
        (None, Some(spacing)) => {
            let why = "a spacing needs one proved centre to start from";
            faults.push(Fault::new(format!("{at}/studs/first"), "nothing", why, said(spacing)));
        }
        (Some(_), None) if studs.found.is_empty() => {
            let why = "one centre needs the spacing of the others, or give every centre that was found";
            faults.push(Fault::new(format!("{at}/studs/spacing"), "nothing", why, said(Length::inches(16))));
        }
        (None, None) if studs.found.is_empty() => {
            let why = "give one proved centre and the spacing, or every centre that was found; leave studs out where none were looked for";
            faults.push(Fault::new(format!("{at}/studs/first"), "nothing", why, said(Length::inches(16))));
        }
        _ => {}
    }
    if let Some(first) = studs.first {
        beyond(format!("{at}/studs/first"), first.get(), length, faults);
    }
    for (n, centre) in studs.found.iter().enumerate() {
        beyond(format!("{at}/studs/found/{n}"), centre.get(), length, faults);
    }
}

fn stair_faults(survey: &Survey, at: &str, length: Length, faults: &mut Vec<Fault>) {
    let Some(stair) = &survey.stair else { return };
    let (first, run) = (stair.first_nosing.get(), stair.run.get());
    beyond(format!("{at}/stair/first_nosing"), first, length, faults);
    let fits = match stair.climbs {
        super::survey::Climbs::Right => first + run <= length,
        super::survey::Climbs::Left => run <= first,
    };
    if !fits {
        let why = Words::new("from the first nosing at {} this run ends outside the wall, which is {} long")
            .with(first)
            .with(length);
        faults.push(Fault::new(format!("{at}/stair/run"), said(run), why, said(length - first)));
    }
    if stair.rise.get() > run {
        let why = Words::new("a stair that rises more than its run of {} is a ladder; are rise and run changed over?")
            .with(run);
        faults.push(Fault::new(format!("{at}/stair/rise"), said(stair.rise), why, said(run)));
    }
}

fn end_faults(end: &End, at: &str, faults: &mut Vec<Fault>) {
    if end.kind == EndKind::OutsideMitred && end.angle.is_none() {
        let why = "a mitre needs the corner's measured angle; 90° is never taken for granted";
        faults.push(Fault::new(format!("{at}/angle"), "nothing", why, "90.5"));
    }
}

fn scheme_faults(scheme: &Scheme, survey: &Survey, faults: &mut Vec<Fault>) {
    match (scheme.target_bay, scheme.boards) {
        (Some(_), Some(count)) => {
            let why = "a wished bay and a wished number of boards cannot both be kept; leave one of them empty";
            faults.push(Fault::new("/scheme/boards", said(count.get()), why, ""));
        }
        (None, None) => {
            let why = "the layout needs a wish: how wide a bay should be, or how many boards";
            faults.push(Fault::new("/scheme/target_bay", "nothing", why, said(usual_bay(scheme.tape.units()))));
        }
        _ => {}
    }
    if let Some((min, max)) = scheme.bay_min.zip(scheme.bay_max).filter(|(min, max)| max < min) {
        let why = Words::new("the widest bay must not be narrower than the narrowest, {}").with(min);
        faults.push(Fault::new("/scheme/bay_max", said(max), why, said(min)));
    }
    if let Some(target) = scheme.target_bay {
        if let Some(min) = scheme.bay_min.filter(|min| target < *min) {
            let why = Words::new("the wished bay of {} is narrower than this").with(target);
            faults.push(Fault::new("/scheme/bay_min", said(min), why, said(target)));
        }
        if let Some(max) = scheme.bay_max.filter(|max| *max < target) {
            let why = Words::new("the wished bay of {} is wider than this").with(target);
            faults.push(Fault::new("/scheme/bay_max", said(max), why, said(target)));
        }
    }
    if let Some(radius) = scheme.leeway.edge_radius.filter(|radius| radius.get() > scheme.board_thickness.get()) {
        let why = Words::new("an edge cannot be rounded more than the board is thick, {}").with(scheme.board_thickness);
        faults.push(Fault::new("/scheme/leeway/edge_radius", said(radius), why, said(scheme.board_thickness)));
    }
    let rails = &scheme.rails;
    if rails.rows.is_some() && !rails.between.is_empty() {
        let why = "equal rows and rails at chosen heights cannot both be kept; leave one of them empty";
        faults.push(Fault::new("/scheme/rails/rows", said(rails.rows.map_or(1, |rows| rows.get())), why, ""));
    }
    let measured = survey.stations.iter().any(|station| station.floor_to_ceiling.is_some());
    if matches!(rails.top_line, TopLine::CeilingRail | TopLine::CeilingNoRail) && !measured {
        let why = "boarding up to the ceiling needs the ceiling's height at one station at least";
        faults.push(Fault::new("/survey/stations", "no ceiling height", why, "floor_to_ceiling at both ends"));
    }
    if matches!(rails.top_line, TopLine::LevelRail | TopLine::LevelNoRail) && rails.top.is_none() && !measured {
        let why = "the boarding needs a top: its height, or the ceiling's height at one station at least";
        faults.push(Fault::new("/scheme/rails/top", "nothing", why, said(Length::inches(62))));
    }
}

fn stock_faults(stock: &Stock, faults: &mut Vec<Fault>) {
    let trim = stock.end_trim.map_or(Length::ZERO, Length::from);
    for (n, stick) in stock.sticks.iter().enumerate() {
        if stick.length.get() <= trim * 2 {
            let why = Words::new("nothing is left of this stick after {} is cut off each end").with(trim);
            let instead = said(trim * 2 + Length::mm(2_400));
            faults.push(Fault::new(format!("/stock/sticks/{n}/length"), said(stick.length), why, instead));
        }
        faults.extend(marked_faults(&format!("/stock/sticks/{n}"), stick.price.unwrap_or_default(), &stick.bad));
    }
}

/// Heights against each other: base, rails, ceiling.
fn height_faults(input: &WallInput, wall: &Measured, faults: &mut Vec<Fault>) {
    let rails = &input.scheme.rails;
    let least = SHORTEST_BOARD.in_units(input.scheme.tape.units());
    let base = input.survey.base.map_or(Length::ZERO, |base| base.height.get());
    let thickness = input.scheme.board_thickness.get();
    let width = if rails.has_top_rail() { rails.top_section(thickness).width } else { Length::ZERO };
    let over_all = wall.ceiling.as_ref().and_then(|ceiling| ceiling.iter().map(|(_, height)| *height).min());
    if let Some(top) = rails.top {
        if let Some(ceiling) = over_all.filter(|ceiling| wall.flight.is_none() && *ceiling < top.get()) {
            let why = Words::new("this is above the lowest point under the ceiling or crown, {}").with(ceiling);
            faults.push(Fault::new("/scheme/rails/top", said(top), why, said(ceiling)));
        }
        if top.get() < base + width + least {
            let why = Words::new("between a base of {} and a rail of {} no board is left").with(base).with(width);
            faults.push(Fault::new("/scheme/rails/top", said(top), why, said(base + width + Length::inches(24))));
        }
    }
    let top = rails.top.map(Length::from).or(over_all);
    let mut below = base;
    for (n, rail) in rails.between.iter().enumerate() {
        let pointer = format!("/scheme/rails/between/{n}");
        let own = rails.mid_section(n, thickness).width;
        if rail.get() - own < below + least {
            let why = Words::new("a rail of {} here leaves no row above {}; rails go from the bottom up")
                .with(own)
                .with(below);
            faults.push(Fault::new(pointer.clone(), said(*rail), why, said(below + own + Length::inches(12))));
        }
        if let Some(top) = top.filter(|top| *top - width < rail.get() + least) {
            let why = Words::new("leaves no row below the top rail, whose top is at {}").with(top);
            faults.push(Fault::new(pointer, said(*rail), why, said(top - width - Length::inches(12))));
        }
        below = rail.get();
    }
    if let Some((rows, top)) = rails.rows.zip(top) {
        let rows = i64::from(rows);
        let inner: Length =
            (1..rows).map(|k| rails.mid_section(usize::try_from(k - 1).unwrap_or(0), thickness).width).sum();
        let clear = top - base - width - inner;
        if clear < least * rows {
            let why = Words::new("rails of {} in all leave rows lower than {}").with(width + inner).with(least);
            faults.push(Fault::new("/scheme/rails/rows", said(rows), why, 1));
        }
    }
}

/// A usual bay, for the way out of a missing wish: 13 in or 330 mm.
fn usual_bay(units: Units) -> Length {
    match units {
        Units::Imperial => Length::inches(13),
        Units::Metric => Length::mm(330),
    }
}

#[cfg(test)]
mod tests;
