//! How much surface there really is: the wall, the edges of boards and rails, and what the boards hide.

use serde_json::json;

use crate::catalogue::works::GEOMETRY;
use crate::catalogue::{Answer, Calculator, Card, Example, Fault, Input, Note, Output, Source, Standing, Step, Words};
use crate::quantity::{Amount, Count, Length, Physical, Units, Within, kind};

/// Area of a rectangle of exact sides.
pub fn rectangle(width: Length, height: Length) -> Amount<kind::Area> {
    Amount::of(width.in_m() * height.in_m())
}

/// Surface that boards add to a flat wall: both long edges of each, less edges that no brush reaches.
///
/// Shape: a count of equal boards, how many of their edges are hidden in corners or behind casings.
pub fn board_edges(boards: u32, length: Length, thickness: Length, hidden_edges: u32) -> Amount<kind::Area> {
    let edges = f64::from((2 * boards).saturating_sub(hidden_edges));
    Amount::of(edges * length.in_m() * thickness.in_m())
}

/// Surface that a rail adds: its upper and lower edge, less where board ends meet it.
pub fn rail_edges(
    length: Length,
    thickness: Length,
    boards: u32,
    board_width: Length,
    edges: u32,
) -> Amount<kind::Area> {
    let open = f64::from(edges) * length.in_m() - f64::from(boards) * board_width.in_m();
    Amount::of(open.max(0.0) * thickness.in_m())
}

pub(crate) struct PaintArea;

/// What is asked.
#[derive(Input)]
pub(crate) struct Input {
    /// The part of the wall that is coated, from end to end.
    #[field("Width of the field")]
    width: Within<25_000, 60_000_000>,
    /// From the top of the base to the top of the top rail.
    #[field("Height of the field")]
    height: Within<25_000, 6_000_000>,
    /// Standing boards.
    #[field("Boards")]
    boards: Count<0, 400>,
    /// The mean length where they differ.
    #[field("Board length")]
    board_length: Within<25_000, 6_000_000>,
    /// As measured.
    #[field("Board width")]
    board_width: Within<12_000, 305_000>,
    /// As measured.
    #[field("Thickness")]
    thickness: Within<3_000, 51_000>,
    /// Edges in corners or tight behind a casing, which are not coated.
    #[field("Hidden board edges")]
    hidden_edges: Count<0, 800>,
    /// Top edge and bottom edge of every rail counted.
    #[field("Rail edges")]
    rail_edges: Count<0, 40>,
    /// Of that length, boards end against one rail edge each.
    #[field("Openings")]
    openings: Option<Physical<kind::Area, 0, 200_000>>,
    /// Coated too, where it stays.
    #[field("Base height")]
    base_height: Option<Within<0, 400_000>>,
}

/// What is answered.
#[derive(Output)]
pub(crate) struct Output {
    /// All that is coated.
    #[field("Area to coat")]
    total: Amount<kind::Area>,
    /// Total over the flat field.
    #[field("Against the flat field")]
    factor: Amount<kind::Number>,
    /// Field less openings; the face of a board stands for the wall behind it.
    #[field("Faces")]
    faces: Amount<kind::Area>,
    /// Long edges of the boards.
    #[field("Board edges")]
    edges: Amount<kind::Area>,
    /// Edges of the rails.
    #[field("Rail edges")]
    rails: Amount<kind::Area>,
    /// The base.
    #[field("Base")]
    base: Amount<kind::Area>,
}

impl Calculator for PaintArea {
    type Input = Input;
    type Output = Output;
    const CARD: Card = Card {
        id: "paint-area",
        title: "Area to coat",
        question: "How much surface is really there, edges and all?",
        step: 14,
        search: &["surface", "edges", "square feet", "square metres", "paint area"],
        headline: &["/total", "/factor"],
        list: None,
        cautions: &[],
        sources: &[Source::new(GEOMETRY, "faces replace the wall behind them; edges are added", Standing::Derived)],
    };

    fn example(units: Units) -> Example {
        match units {
            Units::Imperial => Example {
                input: json!({ "width": "173 3/8 in", "height": "56 1/2 in", "boards": 12, "board_length": "53 1/8 in", "board_width": "2 1/2 in", "thickness": "3/4 in", "hidden_edges": 2, "rail_edges": 2, "base_height": "5 1/2 in" }),
                expects: vec![
                    ("/result/faces/text", json!("68.03 ft²")),
                    ("/result/edges/text", json!("6.09 ft²")),
                    ("/result/rails/text", json!("1.65 ft²")),
                ],
                checked_against: "by hand: 173.375 x 56.5 / 144 = 68.03; 22 x 53.125 x 0.75 / 144 = 6.09; (346.75 - 30) x 0.75 / 144 = 1.65",
            },
            Units::Metric => Example {
                input: json!({ "width": "4404 mm", "height": "1435 mm", "boards": 12, "board_length": "1349 mm", "board_width": "64 mm", "thickness": "18 mm", "hidden_edges": 2, "rail_edges": 2, "base_height": "140 mm" }),
                expects: vec![("/result/faces/text", json!("6.32 m²")), ("/result/edges/text", json!("0.534 m²"))],
                checked_against: "by hand: 4.404 x 1.435 = 6.320; 22 x 1.349 x 0.018 = 0.534",
            },
        }
    }

    fn compute(input: &Input) -> Result<Answer<Output>, Vec<Fault>> {
        let field = rectangle(input.width.get(), input.height.get());
        let openings = input.openings.map_or(0.0, Physical::get);
        if openings >= field.get() {
            let why = Words::new("openings must leave some of the field, {}").with(field);
            return Err(vec![Fault::new("/openings", Words::of(Amount::<kind::Area>::of(openings)), why, "0 m2")]);
        }
        let covered = input.board_width.get() * i64::from(input.boards.get());
        if covered > input.width.get() {
            let why = Words::new("so many boards cover {}, more than the field of {}").with(covered).with(input.width);
            return Err(vec![Fault::new("/boards", Words::of(input.boards.get()), why, 12)]);
        }
        let faces = Amount::<kind::Area>::of(field.get() - openings);
        let edges =
            board_edges(input.boards.get(), input.board_length.get(), input.thickness.get(), input.hidden_edges.get());
        let rails = if input.rail_edges.get() == 0 {
            Amount::of(0.0)
        } else {
            rail_edges(
                input.width.get(),
                input.thickness.get(),
                input.boards.get(),
                input.board_width.get(),
                input.rail_edges.get(),
            )
        };
        let base = input.base_height.map_or(Amount::of(0.0), |height| rectangle(input.width.get(), height.get()));
        let total = Amount::<kind::Area>::of(faces.get() + edges.get() + rails.get() + base.get());
        let shown_edges = (2 * input.boards.get()).saturating_sub(input.hidden_edges.get());
        let mut working = vec![
            Step::new("faces: the field less openings")
                .by("w * h / 1000000 - o")
                .given("w", "width of the field", input.width)
                .given("h", "height of the field", input.height)
                .given("o", "openings", Amount::<kind::Area>::of(openings))
                .gives("F", "faces", faces)
                .because("a board's face stands for the wall behind it"),
            Step::new("board edges")
                .by("n * l * t / 1000000")
                .given("n", "edges in view", shown_edges)
                .given("l", "board length", input.board_length)
                .given("t", "thickness", input.thickness)
                .gives("E", "board edges", edges),
        ];
        if input.rail_edges.get() > 0 {
            working.push(
                Step::new("rail edges, less the board ends that meet them")
                    .by("max(0, k * w - n * b) * t / 1000000")
                    .given("k", "rail edges", input.rail_edges.get())
                    .given("w", "width of the field", input.width)
                    .given("n", "boards", input.boards.get())
                    .given("b", "board width", input.board_width)
                    .given("t", "thickness", input.thickness)
                    .gives("R", "rail edges", rails),
            );
        }
        working.push(
            Step::new("all together")
                .by("F + E + R + B")
                .given("F", "faces", faces)
                .given("E", "board edges", edges)
                .given("R", "rail edges", rails)
                .given("B", "base", base)
                .gives("A", "area to coat", total),
        );
        let notes = vec![Note::remark(
            "Paint bought by the flat wall runs short by the edges: that share is the factor above one.",
        )];
        Ok(Answer {
            result: Output { total, factor: Amount::of(total.get() / faces.get()), faces, edges, rails, base },
            working,
            notes,
        })
    }
}
