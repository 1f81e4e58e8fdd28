//! The page itself: what stands in its title block, its numbers, and the parts in order of use.

use calculators::catalogue::{Entry, Fault};
use calculators::quantity::Units;
use calculators::wall::plan::{Layout, WallPlan};
use calculators::wall::scheme::WallInput;
use serde::Serialize;
use serde_json::Value;

use super::{at_wall, client, cuts, findings, how, job, marks, pole, ways};
use crate::Face;
use crate::drawing::{Elevation, elevation};
use crate::figure;
use crate::form::{Form, Told};
use crate::theme::Theme;

/// What the style sheet says of drawings, for a drawing that stands alone: black on white.
const DRAWN_ALONE: &str = ".thin,.medium,.heavy,.cut{fill:none;stroke:#14191c;stroke-linecap:square}.thin{stroke-width:.8}\
.medium{stroke-width:1.3}.heavy{stroke-width:2.2}.cut{stroke-width:3.4}.soft{stroke:#6f7b7a}.dashed{stroke-dasharray:7 4}\
.chain{stroke-dasharray:14 3 2 3}.fill-wall{fill:#dde4df}.fill-board,.fill-sheet{fill:#fff}.fill-glass{fill:#eef2f0}\
.fill-paper{fill:#f4f6f2}.fill-solid{fill:#14191c}text{font:18px sans-serif;fill:#14191c}.flag text{fill:#fff}\
.flag.hollow text{fill:#14191c}.pennant{fill:#14191c}.hollow .pennant{fill:#fff;stroke:#14191c}";

/// Which part of the sheet is shown.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum WallView {
    /// All of it.
    #[default]
    Sheet,
    /// Marks and heights alone, large, for use at the wall.
    Numbers,
    /// The saw's sheet: cut list and sticks.
    Saw,
    /// What the client agrees to: drawing, the look in words, a line to sign on.
    Client,
    /// What to buy, and when which task is due.
    Lists,
    /// Heights at full size, to be printed and taped together.
    Pole,
}

impl WallView {
    /// All parts, in the order in which they are offered.
    pub const ALL: [Self; 6] = [Self::Sheet, Self::Numbers, Self::Saw, Self::Client, Self::Lists, Self::Pole];

    /// What it is called on its button and on top of its page.
    pub const fn name(self) -> &'static str {
        match self {
            Self::Sheet => "Whole sheet",
            Self::Numbers => "At the wall",
            Self::Saw => "For the saw",
            Self::Client => "For the client",
            Self::Lists => "Lists",
            Self::Pole => "Story pole",
        }
    }

    /// The word used in addresses and forms.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Sheet => "sheet",
            Self::Numbers => "numbers",
            Self::Saw => "saw",
            Self::Client => "client",
            Self::Lists => "lists",
            Self::Pole => "pole",
        }
    }

    /// The view a word names; the whole sheet for any other.
    pub fn named(word: &str) -> Self {
        Self::ALL.into_iter().find(|view| view.word() == word).unwrap_or_default()
    }
}

/// One wall as it is to be shown.
#[derive(Clone, Copy, Debug)]
pub struct WallSheet<'a> {
    /// What the person typed, for the form.
    pub values: &'a Value,
    /// What came of it: the wall and its plan, or what is wrong.
    pub outcome: Result<(&'a WallInput, &'a WallPlan), &'a [Fault]>,
    /// Rank of the layout to show, 1 for the first.
    pub layout: usize,
    /// Which part.
    pub view: WallView,
    /// Which mark is in view at the wall, counted from 1.
    pub at: usize,
    /// Whether the survey form stands open.
    pub open: bool,
}

#[derive(Serialize)]
struct SheetView<'a> {
    /// No server stands behind it: nothing can be asked or changed.
    bare: bool,
    root: &'a str,
    view: &'static str,
    view_name: &'static str,
    views: Vec<ViewLine>,
    at: usize,
    units: &'static str,
    layout: usize,
    open: bool,
    heading: String,
    faults: &'a [Told],
    fields: String,
    /// Signal panels of what the part on show leads to.
    cautions: Vec<String>,
    plan: Option<PlanView>,
    say: String,
}

#[derive(Serialize)]
struct ViewLine {
    word: &'static str,
    name: &'static str,
}

#[derive(Serialize)]
struct PlanView {
    wall: String,
    cells: Vec<Cell>,
    drawing: String,
    numbers: Vec<Cell>,
    remarks: Vec<findings::RemarkView>,
    findings: Vec<findings::FindingView>,
    to_settle: usize,
    ways: Vec<ways::WayView>,
    lines: Vec<marks::MarkLineView>,
    offsets: Vec<marks::OffsetView>,
    cuts: Vec<cuts::CutView>,
    sticks: Vec<cuts::SticksView>,
    reason: String,
    job: job::JobView,
    how: how::HowView,
    one: Option<at_wall::OneMark>,
    pole: Vec<pole::StripView>,
    agreed: Vec<client::AgreedView>,
}

#[derive(Serialize)]
struct Cell {
    label: &'static str,
    value: String,
}

impl Face {
    /// The drawing of one layout of a wall, with the style sheet's roles written into it.
    pub fn wall_drawing(&self, input: &WallInput, plan: &WallPlan, rank: usize, units: Units) -> String {
        let svg = self.drawing_of(input, plan, rank, units);
        svg.replacen("<svg ", "<svg xmlns=\"http://www.w3.org/2000/svg\" ", 1).replacen(
            "<defs>",
            &format!("<style>{DRAWN_ALONE}</style><defs>"),
            1,
        )
    }

    /// The drawing of one layout of a wall, for a page.
    pub fn drawing_of(&self, input: &WallInput, plan: &WallPlan, rank: usize, units: Units) -> String {
        let layout = plan.layouts.iter().find(|layout| layout.rank == rank).or(plan.layouts.first());
        layout.map_or_else(String::new, |layout| {
            elevation("elevation", &Elevation { input, plan, layout, dimensioned: true }, units)
        })
    }

    /// The inside of the wall sheet, for a script that puts it in the place of the one on the page.
    pub fn wall_part(&self, entry: &Entry, sheet: WallSheet<'_>, units: Units) -> String {
        self.wall_sheet(entry, sheet, false, units)
    }

    /// On every part, what the card says: what runs behind the wall, and live boxes. Before the saw, what the saw does; on the lists,
    /// what the nailer does; on a stair, the fall. Where the part is a sheet of paper, each in a few lines.
    fn cautions_of(&self, entry: &Entry, sheet: WallSheet<'_>) -> Vec<String> {
        let on_stair = sheet.outcome.is_ok_and(|(input, _)| input.survey.stair.is_some());
        let of_the_part: &[&str] = match sheet.view {
            WallView::Sheet | WallView::Numbers => &["ladder-work"],
            WallView::Saw => &["saw-blade", "wood-dust", "noise"],
            WallView::Lists => &["nail-gun", "solvent-vapour"],
            WallView::Client | WallView::Pole => &[],
        };
        let keys = entry.card().cautions.iter().chain(of_the_part).copied().chain(on_stair.then_some("stair-work"));
        let brief = !matches!(sheet.view, WallView::Sheet | WallView::Numbers);
        keys.map(|key| if brief { self.brief_caution(key) } else { self.caution(key) }).collect()
    }

    /// The wall sheet without a page round it; `bare` for a file that no server stands behind.
    pub fn wall_sheet(&self, entry: &Entry, sheet: WallSheet<'_>, bare: bool, units: Units) -> String {
        let faults = sheet.outcome.err().unwrap_or_default();
        let form = Form::new(&self.theme, entry, sheet.values, faults, units).folding();
        let plan = sheet.outcome.ok().and_then(|(input, plan)| {
            let layout = plan.layouts.iter().find(|layout| layout.rank == sheet.layout).or(plan.layouts.first())?;
            Some(plan_view(&self.theme, input, plan, layout, &sheet, units))
        });
        let count = form.faults().len();
        let view = SheetView {
            bare,
            root: "/",
            view: sheet.view.word(),
            view_name: sheet.view.name(),
            views: WallView::ALL.map(|view| ViewLine { word: view.word(), name: view.name() }).into(),
            at: sheet.at,
            units: units.word(),
            layout: sheet.layout,
            open: sheet.open || count > 0,
            heading: format!("{count} {} cannot be worked with", if count == 1 { "value" } else { "values" }),
            faults: form.faults(),
            fields: form.html(),
            cautions: self.cautions_of(entry, sheet),
            say: plan.as_ref().map_or_else(|| format!("{count} values cannot be worked with"), |plan| plan.say(units)),
            plan,
        };
        self.theme.fill("wall-sheet.html", &view)
    }
}

impl PlanView {
    fn say(&self, _: Units) -> String {
        format!("Wall {} worked out: {} findings, {} to settle", self.wall, self.findings.len(), self.to_settle)
    }
}

fn plan_view(
    theme: &Theme,
    input: &WallInput,
    plan: &WallPlan,
    layout: &Layout,
    sheet: &WallSheet<'_>,
    units: Units,
) -> PlanView {
    let survey = &input.survey;
    let cell = |label, value: String| Cell { label, value };
    let things = |count: usize, one: &str, more: &str| format!("{count} {}", if count == 1 { one } else { more });
    let measured = [
        things(survey.stations.len(), "station", "stations"),
        things(survey.openings.len(), "opening", "openings"),
        things(survey.boxes.len(), "box", "boxes"),
    ]
    .join(", ");
    let drawing = Elevation { input, plan, layout, dimensioned: true };
    let findings = findings::findings(layout, units);
    let to_settle = layout
        .conflicts
        .iter()
        .filter(|conflict| conflict.severity == calculators::wall::plan::Severity::Settle)
        .count();
    let sticks: usize = layout.sticks.iter().map(|plan| plan.sticks.len()).sum();
    let mut numbers = vec![
        cell("length on which bays are set out", figure::set(plan.length, units)),
        cell("clear bays", ways::bay_range(layout, "<small>to</small>", units)),
        cell("boards along the foot", layout.boards.to_string()),
        cell("pieces to cut", layout.cut_list.len().to_string()),
    ];
    if sticks > 0 {
        numbers.push(cell("sticks to saw", sticks.to_string()));
    }
    numbers
        .push(cell("nails and pins", (layout.nails.in_rails + layout.nails.in_boards + layout.nails.pins).to_string()));
    PlanView {
        wall: plan.wall.clone(),
        cells: vec![
            cell("Wall", figure::escape(&plan.wall)),
            cell("Measured", measured),
            cell("Floor falls", figure::set(plan.floor_fall, units)),
            cell("Tape", figure::set(input.scheme.tape.in_units(units).step(), units)),
        ],
        drawing: elevation("elevation", &drawing, units),
        numbers,
        remarks: findings::remarks(plan, units),
        findings,
        to_settle,
        ways: ways::ways(input, plan, layout.rank, units),
        lines: marks::lines(&plan.wall, layout, units),
        offsets: marks::offsets(layout, units),
        cuts: cuts::cuts(&plan.wall, layout, units),
        sticks: cuts::sticks(input, layout, units),
        reason: figure::sentence(&layout.reason, units),
        job: job::view(&layout.job, units),
        how: how::view(theme, input, layout, sheet.view, units),
        one: at_wall::one(layout, sheet.at, units),
        pole: if sheet.view == WallView::Pole { pole::view(layout, units) } else { Vec::new() },
        agreed: if sheet.view == WallView::Client { client::agreed(input, layout, units) } else { Vec::new() },
    }
}
