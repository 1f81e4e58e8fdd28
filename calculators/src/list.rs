//! The list of calculators.

use std::sync::LazyLock;

use catalogue::Entry;

/// Every calculator, in the order in which the trade meets them. A new one is one new line.
pub static CATALOGUE: LazyLock<Vec<Entry>> = LazyLock::new(|| {
    vec![
        // 2 Hazards, permissions, fabric
        Entry::of::<crate::exposure::lead_area::LeadArea>(),
        Entry::of::<crate::exposure::heat_clearance::HeatClearance>(),
        // 3 Survey
        Entry::of::<crate::wall::read_a_length::ReadALength>(),
        Entry::of::<crate::wall::closing_checks::ClosingChecks>(),
        Entry::of::<crate::wall::corner_angle::CornerAngle>(),
        Entry::of::<crate::wall::out_of_square::OutOfSquare>(),
        Entry::of::<crate::wall::arc::ArcRadius>(),
        // 4 Design and layout
        Entry::of::<crate::wall::wall_plan::WallPlanner>(),
        Entry::of::<crate::wall::equal_bays::EqualBays>(),
        Entry::of::<crate::wall::bays_round_openings::BaysRoundOpenings>(),
        Entry::of::<crate::wall::rail_heights::RailHeights>(),
        Entry::of::<crate::wall::panel_proportion::PanelProportion>(),
        Entry::of::<crate::wall::corner_lap::CornerBoard>(),
        Entry::of::<crate::wall::plate_clash::PlateClash>(),
        Entry::of::<crate::colour::colour_values::ColourValues>(),
        // 5 Price
        Entry::of::<crate::price::labour::Labour>(),
        Entry::of::<crate::price::job_cost::JobCost>(),
        Entry::of::<crate::price::margin::Margin>(),
        Entry::of::<crate::price::margin_of_markup::MarginOfMarkup>(),
        Entry::of::<crate::programme::expected_duration::ExpectedDuration>(),
        Entry::of::<crate::programme::critical_path::CriticalPath>(),
        Entry::of::<crate::programme::job_programme::Programme>(),
        Entry::of::<crate::price::stage_payments::StagePayments>(),
        Entry::of::<crate::price::change_note::ChangeNote>(),
        Entry::of::<crate::price::order_quantity::OrderQuantity>(),
        Entry::of::<crate::coating::tins::Tins>(),
        // 6 Order and condition
        Entry::of::<crate::stock::dressed_sizes::DressedSizes>(),
        Entry::of::<crate::stock::board_feet::BoardFeet>(),
        Entry::of::<crate::stock::board_weight::BoardWeight>(),
        Entry::of::<crate::stock::strips::Strips>(),
        Entry::of::<crate::stock::equilibrium::Equilibrium>(),
        Entry::of::<crate::stock::movement::Movement>(),
        // 7 Protect, isolate, prepare
        Entry::of::<crate::exposure::air_changes::AirChanges>(),
        // 8 Set out
        Entry::of::<crate::wall::running_marks::RunningMarks>(),
        Entry::of::<crate::wall::laser_offsets::LaserOffsets>(),
        Entry::of::<crate::wall::story_pole::StoryPole>(),
        // 9 Cut and label
        Entry::of::<crate::wall::cut_lengths::CutLengths>(),
        Entry::of::<crate::wall::saw_angle::SawAngle>(),
        Entry::of::<crate::wall::frame_mitre::FrameMitre>(),
        Entry::of::<crate::wall::compound_mitre::CompoundMitre>(),
        Entry::of::<crate::wall::short_rails::ShortRails>(),
        Entry::of::<crate::wall::sloping_ceiling::SlopingCeiling>(),
        Entry::of::<crate::wall::base_and_board::BaseAndBoard>(),
        Entry::of::<crate::wall::scarf_joint::ScarfJoint>(),
        Entry::of::<crate::stock::stick_plan::StickPlan>(),
        Entry::of::<crate::stock::pieces_per_stick::PiecesPerStick>(),
        Entry::of::<crate::exposure::noise::Noise>(),
        // 10 Fix
        Entry::of::<crate::fixing::stud_hits::StudHits>(),
        Entry::of::<crate::fixing::nail_choice::NailChoice>(),
        Entry::of::<crate::fixing::nail_size::NailBySize>(),
        Entry::of::<crate::fixing::nail_holding::NailHolding>(),
        Entry::of::<crate::fixing::adhesive::Adhesive>(),
        // 11 Openings, plates, heaters, stairs
        Entry::of::<crate::wall::notch_neck::NotchNeck>(),
        Entry::of::<crate::wall::stair_rake::StairRake>(),
        Entry::of::<crate::wall::rail_kinks::RailKinks>(),
        Entry::of::<crate::exposure::handrail_clearance::HandrailClearance>(),
        Entry::of::<crate::fixing::box_set_back::BoxSetBack>(),
        Entry::of::<crate::fixing::box_fill::BoxFill>(),
        // 12 Fill and sand
        Entry::of::<crate::filling::filler::Filler>(),
        Entry::of::<crate::sanding::grit_ladder::GritLadder>(),
        Entry::of::<crate::exposure::sanding_dust::SandingDust>(),
        Entry::of::<crate::exposure::dust_build_up::DustBuildUp>(),
        Entry::of::<crate::exposure::dust_average::DustAverage>(),
        Entry::of::<crate::exposure::vibration::Vibration>(),
        // 13 Caulk
        Entry::of::<crate::filling::caulk::Caulk>(),
        Entry::of::<crate::filling::cartridge_yield::CartridgeYield>(),
        // 14 Mask, climate, set up
        Entry::of::<crate::masking::rolls::Masking>(),
        Entry::of::<crate::coating::paint_area::PaintArea>(),
        Entry::of::<crate::coating::paint_film::PaintFilm>(),
        Entry::of::<crate::coating::flow_cup::FlowCup>(),
        Entry::of::<crate::coating::thinning::Thinning>(),
        Entry::of::<crate::coating::solvent_content::SolventContent>(),
        Entry::of::<crate::exposure::solvent_vapour::SolventVapour>(),
        Entry::of::<crate::exposure::vapour_dilution::VapourDilution>(),
        Entry::of::<crate::exposure::room_moisture::RoomMoisture>(),
        Entry::of::<crate::drying::air_state::AirState>(),
        Entry::of::<crate::drying::spray_climate::SprayClimate>(),
        // 15 Spray
        Entry::of::<crate::coating::spray_pass::SprayPass>(),
        Entry::of::<crate::drying::recoat::Recoat>(),
        // 16 Strip, put right, hand over
        Entry::of::<crate::drying::tape_pull::TapePull>(),
        Entry::of::<crate::coating::overspray::Overspray>(),
        Entry::of::<crate::coating::gloss_level::GlossReading>(),
        Entry::of::<crate::colour::colour_difference::ColourDifference>(),
        Entry::of::<crate::price::site_waste::SiteWaste>(),
        // 17 One-year call
        Entry::of::<crate::stock::crack_forecast::CrackForecast>(),
    ]
});

/// The calculator with this id.
pub fn entry(id: &str) -> Option<&'static Entry> {
    CATALOGUE.iter().find(|entry| entry.card().id == id)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::catalogue::{Fault, Printed, Step, formula};
    use crate::quantity::Units;
    use proptest::prelude::*;
    use serde_json::{Value, json};

    const BOTH: [Units; 2] = [Units::Imperial, Units::Metric];

    #[test]
    fn ids_are_unique_and_steps_follow_the_trade() {
        let ids: Vec<_> = CATALOGUE.iter().map(|entry| entry.card().id).collect();
        let mut once = ids.clone();
        once.sort_unstable();
        once.dedup();
        assert_eq!(once.len(), ids.len(), "an id stands twice");
        assert!(CATALOGUE.iter().all(|entry| (1..=17).contains(&entry.card().step)));
        assert!(CATALOGUE.is_sorted_by_key(|entry| entry.card().step), "a line stands in another step's place");
    }

    #[test]
    fn every_worked_example_comes_out_as_stated() {
        for entry in CATALOGUE.iter() {
            for units in BOTH {
                let id = entry.card().id;
                let example = entry.example(units);
                let answer = entry.answer(&example.input, units).unwrap_or_else(|faults| {
                    panic!("{id} in {units:?}: {:#}", Fault::print_all(&faults, units));
                });
                assert!(!example.expects.is_empty(), "{id}: the example states no figure");
                for (pointer, expected) in &example.expects {
                    assert_eq!(answer.pointer(pointer), Some(expected), "{id} in {units:?} at {pointer}: {answer:#}");
                }
                for pointer in entry.card().headline {
                    assert!(
                        answer.pointer(&format!("/result{pointer}")).is_some(),
                        "{id}: no {pointer} for the headline"
                    );
                }
                if let Some(list) = entry.card().list {
                    assert!(
                        answer.pointer(&format!("/result{list}")).is_some_and(Value::is_array),
                        "{id}: no list {list}"
                    );
                }
            }
        }
    }

    #[test]
    fn every_line_of_working_is_true() {
        for entry in CATALOGUE.iter() {
            for units in BOTH {
                let answer = entry.work(&entry.example(units).input, units).expect("examples are valid");
                assert!(!answer.working.is_empty(), "{}: no working", entry.card().id);
                for step in &answer.working {
                    checked(step).unwrap_or_else(|why| panic!("{} in {units:?}: {why}", entry.card().id));
                    step.check().unwrap_or_else(|why| panic!("{} in {units:?}: {why}", entry.card().id));
                }
            }
        }
    }

    /// Evaluates a step from what is printed of it, as a reader of the API would.
    fn checked(step: &Step) -> Result<(), String> {
        let step = Printed(step, Units::Metric).to_value();
        let Some(text) = step["formula"].as_str() else { return Ok(()) };
        let number = |value: &Value| {
            let nm = |of: &str| Some(value[of][0].as_f64()? / value[of][1].as_f64()? / 1e6);
            let minor = || Some(value["minor"].as_f64()? / 100.0);
            value
                .as_f64()
                .or_else(|| nm("exact_nm"))
                .or_else(|| nm("nm"))
                .or_else(|| value["value"].as_f64())
                .or_else(minor)
        };
        let given = |symbol: &str| {
            let named = step["given"].as_array()?.iter().find(|named| named["symbol"] == symbol)?;
            number(&named["value"])
        };
        let ours = formula::parse(text).map_err(|fault| format!("{text}: {fault}"))?.value(&given)?;
        let stated = number(&step["result"]["value"]).ok_or_else(|| format!("{text}: no result"))?;
        let slack = if step["result"]["value"]["minor"].is_i64() { 0.005_001 } else { 1e-6 * ours.abs() + 1e-6 };
        if (ours - stated).abs() <= slack { Ok(()) } else { Err(format!("{text} is {ours}, stated {stated}")) }
    }

    #[test]
    fn a_line_of_working_that_is_not_true_is_found() {
        let step = Step::new("sum")
            .by("a + b")
            .given("a", "first", 1_i64)
            .given("b", "second", 2_i64)
            .gives("c", "sum", 4_i64);
        assert!(step.check().is_err());
        assert!(checked(&step).is_err());
    }

    /// Any JSON, with the field names of real inputs mixed in.
    fn any_json(names: Vec<String>) -> impl Strategy<Value = Value> {
        let leaf = prop_oneof![
            Just(Value::Null),
            any::<bool>().prop_map(Value::from),
            any::<i64>().prop_map(Value::from),
            any::<f64>().prop_map(Value::from),
            Just(json!(5.0)),
            Just(json!("0")),
            "[0-9' \"/.,a-z-]{0,14}".prop_map(Value::from),
            "\\PC{0,8}".prop_map(Value::from),
        ];
        leaf.prop_recursive(3, 32, 6, move |inner| {
            prop_oneof![
                prop::collection::vec(inner.clone(), 0..5).prop_map(Value::from),
                prop::collection::vec((prop::sample::select(names.clone()), inner), 0..6)
                    .prop_map(|pairs| Value::Object(pairs.into_iter().collect())),
            ]
        })
    }

    fn names_in(value: &Value, names: &mut Vec<String>) {
        match value {
            Value::Object(fields) => fields.iter().for_each(|(name, inner)| {
                names.push(name.clone());
                names_in(inner, names);
            }),
            Value::Array(items) => items.iter().for_each(|item| names_in(item, names)),
            _ => {}
        }
    }

    /// Every place in an input, as pointers.
    fn places(value: &Value, at: &str, found: &mut Vec<String>) {
        found.push(at.to_owned());
        match value {
            Value::Object(fields) => {
                fields.iter().for_each(|(name, inner)| places(inner, &format!("{at}/{name}"), found))
            }
            Value::Array(items) => {
                items.iter().enumerate().for_each(|(n, inner)| places(inner, &format!("{at}/{n}"), found))
            }
            _ => {}
        }
    }

    #[test]
    fn no_input_panics_and_what_the_reader_passes_the_type_reads() {
        for entry in CATALOGUE.iter() {
            let example = &entry.example(Units::Imperial).input;
            let (mut names, mut spots) = (vec!["unknown".to_owned()], Vec::new());
            names_in(example, &mut names);
            places(example, "", &mut spots);
            let mut runner =
                proptest::test_runner::TestRunner::new(ProptestConfig { cases: 96, ..ProptestConfig::default() });
            let cases = (prop::sample::select(spots), any_json(names), prop::sample::select(BOTH.to_vec()));
            let outcome = runner.run(&cases, |(spot, replacement, units)| {
                let mut input = example.clone();
                if let Some(place) = input.pointer_mut(&spot) {
                    *place = replacement;
                }
                match entry.work(&input, units) {
                    Ok(answer) => prop_assert!(!answer.result.fields().is_empty(), "no result for {input}"),
                    Err(faults) => {
                        prop_assert!(!faults.is_empty());
                        let ours = faults
                            .iter()
                            .find(|fault| fault.pointer.is_empty() && fault.instead.is_null() && input.is_object());
                        prop_assert!(ours.is_none(), "the reader passed what the type refuses: {ours:?} for {input}");
                    }
                }
                Ok(())
            });
            outcome.unwrap_or_else(|why| panic!("{}: {why}", entry.card().id));
        }
    }

    #[test]
    fn the_word_that_was_probably_meant_is_offered() {
        let entry = entry("wall-plan").expect("it is declared");
        let mut wall = entry.example(Units::Metric).input.clone();
        for (said, meant) in
            [("outside", "outside-mitred"), ("inside-firts", "inside-first"), ("casing_bay", "casing-bay")]
        {
            wall["survey"]["right"]["kind"] = json!(said);
            let faults = entry.read(&wall, Units::Metric).expect_err("no such end");
            let fault = faults.iter().find(|fault| fault.pointer == "/survey/right/kind").expect("told");
            let offered = fault.instead.as_str().unwrap_or_default();
            assert_eq!(offered.split('-').next(), meant.split('-').next(), "{said}: {offered}");
        }
    }
}
