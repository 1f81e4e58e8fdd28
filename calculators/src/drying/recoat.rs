//! When the second coat may go on: the sheet's time, stretched for colder, damper air and a thicker film, never shortened.
//!
//! The stretch is a model of this book's own: water leaves a film as fast as the air can take it up, so the time goes with the
//! vapour-pressure deficit, and with a power of the film. It is an estimate. Oil and alkyd paints dry by oxygen, not by this; for
//! them the sheet's own factors count. Still air and several fresh coats in one room slow drying more than is reckoned here.

use serde_json::json;

use super::air;
use crate::catalogue::works::{PRACTICE, THIS_BOOK};
use crate::catalogue::{Answer, Calculator, Card, Example, Fault, Input, Note, Output, Source, Standing, Step, Words};
use crate::quantity::{Amount, Physical, Units, kind};

/// The air in which data sheets state drying times, °C and % RH. Common practice; the sheet names its own.
pub const SHEET_AIR: (f64, f64) = (23.0, 50.0);

/// How many times longer water takes to leave a film in this air than in the sheet's; never less than one.
///
/// Range: -20 to 60 °C, 1 to 99 % RH. An estimate, see the module.
/// # Source
/// This book's model: vapour-pressure deficit at 23 °C and 50 % RH over the deficit in the room.
pub fn air_factor(celsius: f64, rh_percent: f64) -> f64 {
    let room = air::deficit_pa(celsius, rh_percent);
    if room <= 0.0 { f64::INFINITY } else { (air::deficit_pa(SHEET_AIR.0, SHEET_AIR.1) / room).max(1.0) }
}

/// How many times longer a film of another thickness takes; never less than one.
pub fn film_factor(film_ratio: f64, exponent: f64) -> f64 {
    libm::pow(film_ratio.max(1.0), exponent)
}

/// Hours rounded up to the next quarter.
pub fn up_to_quarter(hours: f64) -> f64 {
    libm::ceil(hours * 4.0 - 1e-9) / 4.0
}

pub(crate) struct Recoat;

/// What is asked.
#[derive(Input)]
pub(crate) struct Input {
    /// Touch-dry time on the data sheet.
    #[field("Touch-dry on the sheet")]
    sheet_touch: Physical<kind::Hours, 50, 72_000>,
    /// Recoat time on the data sheet: the least that is ever answered.
    #[field("Recoat on the sheet", usual = ["2 h", "24 h"])]
    sheet_recoat: Physical<kind::Hours, 100, 168_000>,
    /// In the room while it dries, heating as it will be at night.
    #[field("Air temperature", usual = ["15 °C", "28 °C"])]
    air: Physical<kind::Temperature, 1_000, 45_000>,
    /// In the room while it dries.
    #[field("Relative humidity", usual = ["30 %", "75 %"])]
    relative_humidity: Physical<kind::Humidity, 1_000, 98_000>,
    /// Least temperature on the data sheet; below it a film does not form, however long one waits.
    #[field("Least temperature on the sheet")]
    sheet_least: Physical<kind::Temperature, 0, 30_000>,
    /// Wet film put on, over the wet film that the sheet reckons with: 1 is as on the sheet.
    #[field("Film against the sheet's")]
    film_ratio: Physical<kind::Number, 500, 3_000>,
    /// Power of the film ratio; a shop that has timed its own coats sets its own.
    #[field("Film exponent")]
    film_exponent: Physical<kind::Number, 1_000, 2_000>,
}

/// What is answered.
#[derive(Output)]
pub(crate) struct Output {
    /// From the end of the coat; then the thumb decides.
    #[field("Second coat after")]
    recoat: Amount<kind::Wait>,
    /// From the end of the coat.
    #[field("Touch-dry after")]
    touch: Amount<kind::Wait>,
    /// Stretch for the air.
    #[field("Stretch for the air")]
    air_factor: Amount<kind::Number>,
    /// Stretch for the film.
    #[field("Stretch for the film")]
    film_factor: Amount<kind::Number>,
}

impl Calculator for Recoat {
    type Input = Input;
    type Output = Output;
    const CARD: Card = Card {
        id: "recoat-time",
        title: "Touch-dry and recoat",
        question: "When can the second coat go on?",
        step: 15,
        search: &[
            "second coat",
            "drying",
            "wait",
            "touch dry",
            "recoat",
            "cure",
            "paint again",
            "between coats",
            "cold room",
            "damp",
            "drying time",
            "long",
            "tacky",
            "sticky",
            "dry",
            "how long to dry",
            "paint dry",
        ],
        headline: &["/recoat", "/touch"],
        list: None,
        cautions: &[],
        sources: &[
            Source::new(
                THIS_BOOK,
                "model: sheet time x vapour-pressure deficit at 23 °C / 50 % over deficit in the room x film ratio to a power",
                Standing::HouseDefault,
            ),
            air::SOURCE,
            Source::new(PRACTICE, "full cure takes 14 to 30 days", Standing::CommonPractice),
        ],
    };

    fn example(units: Units) -> Example {
        let air = if units == Units::Metric { "18 °C" } else { "64.4 °F" };
        let least = if units == Units::Metric { "10 °C" } else { "50 °F" };
        Example {
            input: json!({ "sheet_touch": "1 h", "sheet_recoat": "4 h", "air": air, "relative_humidity": "65 %", "sheet_least": least, "film_ratio": 1.2, "film_exponent": 1.5 }),
            expects: vec![("/result/recoat/text", json!("10.25 h")), ("/result/air_factor/text", json!("1.945"))],
            checked_against: "PsychroLib 2.5.0: deficit 1405.2 Pa at 23/50 over 722.5 Pa at 18/65 is 1.94494, times 1.2^1.5 = 1.31453, times 4 h = 10.23 h",
        }
    }

    fn compute(input: &Input) -> Result<Answer<Output>, Vec<Fault>> {
        if input.air.get() < input.sheet_least.get() {
            let said = Words::of(input.air);
            let why = Words::new("below {} this film does not form, however long one waits").with(input.sheet_least);
            return Err(vec![Fault::new("/air", said, why, Words::of(input.sheet_least))]);
        }
        if input.sheet_touch.get() > input.sheet_recoat.get() {
            let said = Words::of(input.sheet_touch);
            let why = Words::new("touch-dry comes before recoat, {} on this sheet").with(input.sheet_recoat);
            return Err(vec![Fault::new("/sheet_touch", said, why, Words::of(input.sheet_recoat))]);
        }
        let room_air = air_factor(input.air.get(), input.relative_humidity.get());
        let film = film_factor(input.film_ratio.get(), input.film_exponent.get());
        let hours = |sheet: f64| sheet * room_air * film;
        let (recoat, touch) = (hours(input.sheet_recoat.get()), hours(input.sheet_touch.get()));
        let hpa = |pascal: f64| Amount::<kind::VapourPressure>::of(pascal / 100.0);
        let working = vec![
            Step::new("stretch for the air")
                .by("max(1, s / d)")
                .given(
                    "s",
                    "vapour-pressure deficit in the sheet's air, 23 °C and 50 % RH",
                    hpa(air::deficit_pa(SHEET_AIR.0, SHEET_AIR.1)),
                )
                .given(
                    "d",
                    "vapour-pressure deficit in the room",
                    hpa(air::deficit_pa(input.air.get(), input.relative_humidity.get())),
                )
                .gives("A", "stretch for the air", room_air)
                .because("never below one: warm dry air does not shorten what the sheet says"),
            Step::new("stretch for the film")
                .by("max(1, f) ^ x")
                .given("f", "film against the sheet's", input.film_ratio)
                .given("x", "film exponent", input.film_exponent)
                .gives("F", "stretch for the film", film),
            Step::new("recoat")
                .by("t * A * F")
                .given("t", "recoat on the sheet", input.sheet_recoat)
                .given("A", "stretch for the air", room_air)
                .given("F", "stretch for the film", film)
                .gives("r", "recoat before rounding", Amount::<kind::Hours>::of(recoat))
                .because("rounded up to a quarter of an hour; the same stretch goes with touch-dry"),
        ];
        let mut notes = vec![Note::remark(
            "An estimate. The clock is the first test, the thumb the second: press and turn; a mark means wait.",
        )];
        if room_air * film > 4.0 {
            notes.push(Note::check("More than four times the sheet's time: warm and dry the room first."));
        }
        Ok(Answer {
            result: Output {
                recoat: Amount::of(up_to_quarter(recoat)),
                touch: Amount::of(up_to_quarter(touch)),
                air_factor: Amount::of(room_air),
                film_factor: Amount::of(film),
            },
            working,
            notes,
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_stretch_for_the_air_goes_as_joint_compound_dries() {
        // Hours that a coat of drying joint compound takes, °F and % RH: the table that handbooks of plasterboard print, from memory.
        // Its bands (10 h, 17 to 19 h, 48 h, 3 to 5 days) were read in the Drywall Finishing Council's leaflet on the same subject.
        // The model goes by the deficit alone and is slower in damp air: a fifth at 90 %, less elsewhere.
        let table = [
            (50.0, 50.0, 36.0),
            (60.0, 50.0, 24.0),
            (80.0, 50.0, 12.0),
            (60.0, 70.0, 38.0),
            (70.0, 70.0, 26.0),
            (70.0, 90.0, 72.0),
        ];
        let deficit = |fahrenheit: f64, humidity: f64| air::deficit_pa((fahrenheit - 32.0) / 1.8, humidity);
        for (fahrenheit, humidity, hours) in table {
            let model = 17.0 * deficit(70.0, 50.0) / deficit(fahrenheit, humidity);
            assert!((model / hours - 1.0).abs() < 0.2, "{fahrenheit} °F, {humidity} %: {model:.1} h for {hours} h");
        }
    }
}
