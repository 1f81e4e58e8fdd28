//! How much paint a coat takes: from the dry film on the sheet to litres in the pot.

use serde_json::json;

use super::film;
use crate::catalogue::works::{ASTM_D4414, THIS_BOOK};
use crate::catalogue::{Answer, Calculator, Card, Example, Fault, Input, Note, Output, Source, Standing, Step, Words};
use crate::quantity::{Amount, Count, Physical, Units, kind};

pub(crate) struct PaintFilm;

/// What is asked.
#[derive(Input)]
pub(crate) struct Input {
    /// What one coat must leave, from the data sheet.
    #[field("Dry film of one coat", usual = ["25 um", "65 um"])]
    dry_film: Physical<kind::Film, 12_000, 500_000>,
    /// Solids by VOLUME, from the data sheet; the weight figure beside it is larger and wrong here.
    #[field("Volume solids", usual = ["30 %", "50 %"])]
    volume_solids: Physical<kind::Percent, 10_000, 100_000>,
    /// Added, as a share of the paint's volume.
    #[field("Thinner", usual = ["0 %", "10 %"])]
    thinner: Physical<kind::Percent, 0, 50_000>,
    /// The most that the data sheet allows.
    #[field("Thinner the sheet allows")]
    thinner_most: Physical<kind::Percent, 0, 50_000>,
    /// All that is sprayed, faces and edges.
    #[field("Area")]
    area: Physical<kind::Area, 10, 5_000_000>,
    /// Of what leaves the gun, the share that stays on the work; weigh the pot to know yours.
    #[field("Transfer efficiency", usual = ["40 %", "80 %"])]
    transfer: Physical<kind::Percent, 15_000, 100_000>,
    /// Each of the same film.
    #[field("Coats")]
    coats: Count<1, 5>,
    /// Stays in hose and pot at the end: 0.48 L in 15 m of 6 mm hose.
    #[field("Left in the hose")]
    hose: Physical<kind::Paint, 0, 10_000>,
    /// How the gauge's teeth are stepped.
    #[field("Notch gauge stepped in", default)]
    comb: Comb,
}

/// The two combs that are sold.
#[derive(Clone, Copy, Debug, Default, Input)]
pub(crate) enum Comb {
    /// Teeth by the mil, a thousandth of an inch.
    Mil,
    /// Teeth by 25 µm.
    #[default]
    Micrometre,
}

/// What is answered.
#[derive(Output)]
pub(crate) struct Output {
    /// As it comes from the tin, for one coat.
    #[field("Paint for one coat")]
    paint: Amount<kind::Paint>,
    /// Paint and thinner together, for one coat.
    #[field("In the pot for one coat")]
    mixed: Amount<kind::Paint>,
    /// What the gauge should read.
    #[field("Wet film")]
    wet_film: Amount<kind::Film>,
    /// The tooth that just gets wet.
    #[field("Last wet tooth")]
    wet_tooth: Option<Amount<kind::Film>>,
    /// The tooth that just stays dry.
    #[field("First dry tooth")]
    dry_tooth: Option<Amount<kind::Film>>,
    /// Paint from the tin, nothing lost.
    #[field("Spreading rate, nothing lost")]
    spreading_rate: Amount<kind::SpreadingRate>,
    /// Paint from the tin, with what flies past.
    #[field("Spreading rate in practice")]
    practical_rate: Amount<kind::SpreadingRate>,
    /// All coats and the hose, before tins.
    #[field("Paint for all coats and the hose")]
    total: Amount<kind::Paint>,
}

impl Calculator for PaintFilm {
    type Input = Input;
    type Output = Output;
    const CARD: Card = Card {
        id: "paint-film",
        title: "Film, spreading rate and paint",
        question: "How much paint goes in the pot for one coat, and what must the gauge read?",
        step: 14,
        search: &["coverage", "wet film", "dry film", "gauge", "litres", "gallons", "spreading rate", "volume solids"],
        headline: &["/paint", "/wet_film", "/spreading_rate"],
        list: None,
        cautions: &["spray-mist", "injection"],
        sources: &[
            film::SOURCE,
            Source::new(
                ASTM_D4414,
                "the film lies between the last wet tooth and the first dry one",
                Standing::FromMemory,
            ),
            Source::new(THIS_BOOK, "55 % reaching the work until the pot has been weighed", Standing::HouseDefault),
        ],
    };

    fn example(units: Units) -> Example {
        match units {
            Units::Imperial => Example {
                input: json!({ "dry_film": "1.5 mil", "volume_solids": "38 %", "thinner": "10 %", "thinner_most": "10 %", "area": "82.5 ft2", "transfer": "55 %", "coats": 2, "hose": "16.1 fl oz", "comb": "mil" }),
                expects: vec![
                    ("/result/wet_film/text", json!("4.34 mil")),
                    ("/result/wet_tooth/text", json!("4 mil")),
                    ("/result/dry_tooth/text", json!("5 mil")),
                    ("/result/spreading_rate/text", json!("406.4 ft²/US gal")),
                    ("/result/paint/text", json!("0.369 US gal")),
                ],
                checked_against: "by hand: 1604.17 x 0.38 / 1.5 = 406.4; 1.5 x 1.1 / 0.38 = 4.342; 82.5 / 406.4 / 0.55 = 0.3691",
            },
            Units::Metric => Example {
                input: json!({ "dry_film": "38 um", "volume_solids": "38 %", "thinner": "10 %", "thinner_most": "10 %", "area": "7.67 m2", "transfer": "55 %", "coats": 2, "hose": "0.475 L", "comb": "micrometre" }),
                expects: vec![
                    ("/result/wet_film/text", json!("110 µm")),
                    ("/result/wet_tooth/text", json!("100 µm")),
                    ("/result/dry_tooth/text", json!("125 µm")),
                    ("/result/spreading_rate/text", json!("10 m²/L")),
                    ("/result/paint/text", json!("1.395 L")),
                ],
                checked_against: "by hand: 38 x 1.1 / 0.38 = 110; 1000 / 100 = 10; 7.67 / 10 / 0.55 = 1.3945",
            },
        }
    }

    fn compute(input: &Input) -> Result<Answer<Output>, Vec<Fault>> {
        if input.thinner.get() > input.thinner_most.get() {
            let why = Words::new("the data sheet allows {} at most").with(input.thinner_most);
            return Err(vec![Fault::new("/thinner", Words::of(input.thinner), why, Words::of(input.thinner_most))]);
        }
        let (solids, thinner, transfer) =
            (input.volume_solids.get() / 100.0, input.thinner.get() / 100.0, input.transfer.get() / 100.0);
        let unthinned = film::wet_film(input.dry_film.amount(), solids, 0.0);
        let wet = film::wet_film(input.dry_film.amount(), solids, thinner);
        let paint = film::litres_sprayed(input.area.get(), unthinned, transfer);
        let mixed = film::litres_sprayed(input.area.get(), wet, transfer);
        let rate = film::spreading_rate(unthinned);
        let total = Amount::<kind::Paint>::of(paint.get() * f64::from(input.coats.get()) + input.hose.get());
        let teeth = match input.comb {
            Comb::Mil => &film::GAUGE_TEETH_UM,
            Comb::Micrometre => &film::METRIC_TEETH_UM,
        };
        let (wet_tooth, dry_tooth) = film::gauge_teeth(wet.get(), teeth);
        let working = vec![
            Step::new("wet film that leaves the dry film")
                .by("d * (1 + t / 100) / (s / 100)")
                .given("d", "dry film of one coat", input.dry_film)
                .given("t", "thinner", input.thinner)
                .given("s", "volume solids", input.volume_solids)
                .gives("w", "wet film", wet),
            Step::new("spreading rate of the paint as it comes from the tin")
                .by("10 * s / d")
                .given("s", "volume solids", input.volume_solids)
                .given("d", "dry film of one coat", input.dry_film)
                .gives("R", "spreading rate", rate)
                .because(
                    "a litre over a square metre is 1000 µm; in mil and gallons the same reads 1604.17 × solids ÷ film",
                ),
            Step::new("paint for one coat, with what flies past")
                .by("A / R / (e / 100)")
                .given("A", "area", input.area)
                .given("R", "spreading rate", rate)
                .given("e", "transfer efficiency", input.transfer)
                .gives("P", "paint for one coat", paint),
            Step::new("in the pot")
                .by("P * (1 + t / 100)")
                .given("P", "paint for one coat", paint)
                .given("t", "thinner", input.thinner)
                .gives("M", "paint and thinner", mixed),
            Step::new("all coats and the hose")
                .by("P * n + h")
                .given("P", "paint for one coat", paint)
                .given("n", "coats", input.coats.get())
                .given("h", "left in the hose", input.hose)
                .gives("T", "total", total)
                .because("tins are chosen from this, once, so that all of it is one batch"),
        ];
        Ok(Answer {
            result: Output {
                paint,
                mixed,
                wet_film: wet,
                wet_tooth: wet_tooth.map(Amount::of),
                dry_tooth: dry_tooth.map(Amount::of),
                spreading_rate: rate,
                practical_rate: Amount::of(rate.get() * transfer),
                total,
            },
            working,
            notes: vec![Note::remark(
                "Weigh the pot before and after one wall: the share that reaches the work is yours, not the book's.",
            )],
        })
    }
}
