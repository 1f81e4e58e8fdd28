//! The cut list and the sticks it is sawn from.

use calculators::quantity::{Length, Units};
use calculators::wall::plan::{Cut, CutKind, EndCut, HeightKnown, Layout, MemberKind};
use calculators::wall::scheme::WallInput;
use serde::Serialize;

use super::marks::shown;
use crate::drawing::{StickBar, stick_bars};
use crate::figure;

/// One piece to cut.
#[derive(Debug, Serialize)]
pub(super) struct CutView {
    label: String,
    what: &'static str,
    width: String,
    length: String,
    start: String,
    end: String,
    known: &'static str,
    remarks: Vec<String>,
    key: String,
}

/// The sticks of one section.
#[derive(Debug, Serialize)]
pub(super) struct SticksView {
    section: String,
    count: usize,
    drawing: String,
    proof: String,
    cost: Option<String>,
    without: String,
    lines: Vec<StickLine>,
}

/// One stick in words.
#[derive(Debug, Serialize)]
pub(super) struct StickLine {
    number: usize,
    stick: String,
    /// Where the clear part of a marked stick begins.
    from: Option<String>,
    pieces: Vec<PieceView>,
    offcut: String,
    keep: bool,
}

/// One piece on a stick.
#[derive(Debug, Serialize)]
pub(super) struct PieceView {
    label: String,
    length: String,
}

pub(super) fn cuts(wall: &str, layout: &Layout, units: Units) -> Vec<CutView> {
    let view = |cut: &Cut| CutView {
        label: cut.label.clone(),
        what: what(cut.kind),
        width: figure::set(cut.width, units),
        length: shown(&cut.length, units),
        start: end_cut(cut.start),
        end: end_cut(cut.end),
        known: match cut.height {
            HeightKnown::Measured => "measured",
            HeightKnown::Interpolated => "between stations",
            HeightKnown::NotMeasured => "not measured",
        },
        remarks: cut.remarks.iter().map(|remark| figure::words(remark, units)).collect(),
        key: format!("wall-{wall}/{}-cut-{}", layout.rank, cut.label),
    };
    layout.cut_list.iter().map(view).collect()
}

const fn what(kind: MemberKind) -> &'static str {
    match kind {
        MemberKind::Board => "board",
        MemberKind::UnderBoard => "board under a sill",
        MemberKind::OverBoard => "board over a head",
        MemberKind::TopRail => "top rail",
        MemberKind::MidRail => "rail",
        MemberKind::SillRail => "sill rail",
        MemberKind::HeadRail => "head rail",
        MemberKind::Base => "base",
        MemberKind::Cap => "cap",
        MemberKind::Moulding => "moulding",
    }
}

fn end_cut(cut: EndCut) -> String {
    let angle = cut.saw.text(Units::Metric);
    match cut.cut {
        CutKind::Square => "square".to_owned(),
        CutKind::Mitre => format!("mitre {angle}"),
        CutKind::Bevel => format!("bevel {angle}"),
        CutKind::Rake => format!("rake {angle}"),
        CutKind::TwoCuts => format!("two cuts, {angle}"),
        CutKind::Curve => "to the curve".to_owned(),
        CutKind::Scarf => format!("scarf {angle}"),
    }
}

pub(super) fn sticks(input: &WallInput, layout: &Layout, units: Units) -> Vec<SticksView> {
    let metric = input.scheme.tape.units() == Units::Metric;
    let kerf = input.stock.kerf.map_or(if metric { Length::um(3_200) } else { Length::um(3_175) }, |kerf| kerf.get());
    let trim = input.stock.end_trim.map_or(if metric { Length::mm(12) } else { Length::um(12_700) }, |trim| trim.get());
    let mut views = Vec::new();
    for (index, plan) in layout.sticks.iter().enumerate() {
        let bars: Vec<StickBar<'_>> = plan
            .sticks
            .iter()
            .map(|stick| StickBar {
                stick: stick.stick,
                trim: stick.from.unwrap_or(trim),
                bad: stick.bad.iter().map(|bad| (bad.from.get(), bad.to.get())).collect(),
                pieces: stick.pieces.iter().map(|piece| (piece.label.as_str(), piece.length)).collect(),
            })
            .collect();
        let lines = plan.sticks.iter().enumerate().map(|(row, stick)| StickLine {
            number: row + 1,
            stick: figure::set(stick.stick, units),
            from: stick.from.map(|from| figure::set(from, units)),
            pieces: stick
                .pieces
                .iter()
                .map(|piece| PieceView { label: piece.label.clone(), length: figure::set(piece.length, units) })
                .collect(),
            offcut: figure::set(stick.offcut, units),
            keep: stick.keep,
        });
        let noun = if plan.sticks.len() == 1 { "stick" } else { "sticks" };
        let proof = if plan.proved {
            format!("{} {noun}. Proved: no cheaper plan exists.", plan.sticks.len())
        } else {
            format!("{} {noun}. No plan can do with fewer than {}.", plan.sticks.len(), plan.at_least)
        };
        views.push(SticksView {
            section: format!("{} × {}", figure::set(plan.width, units), figure::set(plan.thickness, units)),
            count: plan.sticks.len(),
            drawing: stick_bars(&format!("sticks-{index}"), &bars, kerf, units),
            proof,
            cost: (plan.cost.minor() > 0).then(|| plan.cost.to_string()),
            without: plan.without.join(", "),
            lines: lines.collect(),
        });
    }
    views
}
