//! The stick plan against optima found by other programs, and against instances whose optimum is known by construction.

use std::path::Path;
use std::time::Duration;

use calculators::stock::certificate::{Branch, Claim};
use calculators::stock::certificate_check::check;
use calculators::stock::instance::{Instance, Piece, Stick};
use calculators::stock::plan::{Reason, Status};
use calculators::stock::solve::{Effort, plan};
use tests::sticks::{Limits, differences, questions, solved};

/// No clock decides in a test: the work is counted.
const UNHURRIED: Limits = Limits { cheapest: Duration::MAX, leftover: Duration::MAX };

#[test]
fn every_stored_optimum_is_found_proved_and_certified() {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("data/sticks");
    let mut files = 0;
    for entry in std::fs::read_dir(folder).unwrap() {
        let file = entry.unwrap().path();
        let text = std::fs::read_to_string(&file).unwrap();
        let answers: Vec<_> =
            questions(&text).unwrap().iter().map(|question| solved(question, UNHURRIED).unwrap()).collect();
        let differences = differences(&text, &answers).unwrap();
        assert!(differences.is_empty(), "{}:\n{}", file.display(), differences.join("\n"));
        files += 1;
    }
    assert!(files > 0, "no file of instances was read");
}

#[test]
fn an_altered_stored_optimum_is_noticed() {
    let text = r#"{"instances": [{"id": "flush", "pieces": [{"length": 10, "count": 2}], "kerf": 1,
        "stocks": [{"length": 21, "price": 5, "available": null}],
        "status": "optimal", "optimum_cost": 4, "optimum_sticks": 1, "optimum_longest_leftover": 0}]}"#;
    let answers: Vec<_> =
        questions(text).unwrap().iter().map(|question| solved(question, UNHURRIED).unwrap()).collect();
    assert_eq!(differences(text, &answers).unwrap(), ["flush: cost 5, stored 4"]);
}

/// Groups of three that fill a stick of 1000 exactly, after the published generator of triplets (OR-Library, Journal of
/// the Operational Research Society 41 (1990) 1069–1072, from memory): the optimum is one stick a group.
fn triplets(groups: u32, mut seed: u64) -> Instance {
    let mut below = |limit: u64| {
        seed = seed.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        ((seed >> 33) % limit) as i64
    };
    let mut pieces = Vec::new();
    for _ in 0..groups {
        let first = 380 + below(111);
        let rest = 1_000 - first;
        let second = 250 + below((rest / 2 - 249) as u64);
        pieces.extend([first, second, rest - second].map(|length| Piece { length, count: 1 }));
    }
    Instance { pieces, kerf: 0, sticks: vec![Stick { length: 1_000, price: 1, available: None }] }
}

#[test]
fn triplets_fill_every_stick() {
    for (groups, seed) in [(10, 1), (20, 2), (20, 3), (40, 4)] {
        let asked = triplets(groups, seed);
        let plan = plan(&asked, Effort::USUAL, &mut || true).unwrap();
        assert_eq!((plan.status, plan.stick_count, plan.longest_leftover), (Status::ProvedLeast, groups, 0));
        assert!(plan.leftover_proved);
        check(&asked, &plan, plan.certificate.as_ref().unwrap()).unwrap();
    }
}

#[test]
fn a_certificate_that_claims_too_much_is_refused() {
    let asked = triplets(10, 7);
    let plan = plan(&asked, Effort::USUAL, &mut || true).unwrap();
    let honest = plan.certificate.clone().unwrap();
    let mut claims_more = honest.clone();
    claims_more.claim = Claim::LeastWeight(plan.cost * 31 + i64::from(plan.stick_count) + 1);
    assert!(check(&asked, &plan, &claims_more).is_err());
    let mut worth_more = honest.clone();
    for case in &mut worth_more.cases {
        if let Branch::Leaf(leaf) = case {
            leaf.values.iter_mut().for_each(|value| *value += leaf.scale);
        }
    }
    assert!(check(&asked, &plan, &worth_more).is_err());
    let mut open = honest;
    open.cases[0] = Branch::Open;
    assert!(check(&asked, &plan, &open).is_err());
}

/// By hand, with the saw's cut of 2 in each size: two sticks of 34 hold two 12s and a 6 each, one of 44 the rest, at
/// 7 + 7 + 13 = 27. All pieces need 115, and three of 34 hold 108, two of 44 hold 92, one of each 82: nothing is cheaper.
fn twelves_and_sixes() -> Instance {
    Instance {
        pieces: [(12, 6), (6, 3), (5, 1)].map(|(length, count)| Piece { length, count }).to_vec(),
        kerf: 2,
        sticks: [(44, 13), (34, 7)].map(|(length, price)| Stick { length, price, available: None }).to_vec(),
    }
}

#[test]
fn a_proof_that_splits_on_pieces_holds_and_a_bent_one_is_refused() {
    let asked = twelves_and_sixes();
    let plan = plan(&asked, Effort::USUAL, &mut || true).unwrap();
    assert_eq!((plan.status, plan.cost, plan.stick_count), (Status::ProvedLeast, 27, 3));
    let honest = plan.certificate.clone().unwrap();
    check(&asked, &plan, &honest).unwrap();
    let on_pieces = |case: &Branch| matches!(case, Branch::Split { holds, .. } if !holds.is_empty());
    let at = honest.cases.iter().position(on_pieces).expect("this question is split on pieces");
    // The longest pieces come first: three 12s on one stick.
    let bent = |piece: usize, least: u32| {
        let mut certificate = honest.clone();
        if let Branch::Split { holds, .. } = &mut certificate.cases[at] {
            holds[0] = (piece, least);
        }
        check(&asked, &plan, &certificate)
    };
    assert!(bent(0, 3).is_ok());
    assert!(bent(99, 3).is_err(), "a piece that is not asked for");
    assert!(bent(0, 0).is_err(), "none of a piece");
    let charged = |charge: &dyn Fn(&mut Vec<i64>)| {
        let mut certificate = honest.clone();
        for case in &mut certificate.cases {
            if let Branch::Leaf(leaf) = case {
                charge(&mut leaf.held);
            }
        }
        check(&asked, &plan, &certificate)
    };
    assert!(charged(&|_| {}).is_ok());
    assert!(charged(&|held| held.iter_mut().for_each(|charge| *charge = 0)).is_err(), "charges left out");
    assert!(charged(&|held| held.push(0)).is_err(), "charges for splits that are not there");
}

#[test]
fn a_certificate_survives_being_written_and_read() {
    let asked = triplets(10, 9);
    let plan = plan(&asked, Effort::USUAL, &mut || true).unwrap();
    let text = serde_json::to_string(&plan).unwrap();
    let read: calculators::stock::plan::Plan = serde_json::from_str(&text).unwrap();
    assert_eq!(read, plan);
    check(&asked, &read, read.certificate.as_ref().unwrap()).unwrap();
}

#[test]
fn what_cannot_be_cut_is_named() {
    let sticks = |available| vec![Stick { length: 96, price: 9, available }, Stick { length: 48, price: 5, available }];
    let asked = |length, count, available| Instance {
        pieces: vec![Piece { length, count }],
        kerf: 1,
        sticks: sticks(available),
    };
    let too_long = plan(&asked(97, 1, None), Effort::USUAL, &mut || true).unwrap();
    assert_eq!(too_long.status, Status::Impossible(Reason::PieceTooLong { piece: 97, longest_stick: Some(96) }));
    // Two on the long stick, one on the short: three of the five fit, two more need one more long stick.
    let short = asked(40, 5, Some(1));
    let too_few = plan(&short, Effort::USUAL, &mut || true).unwrap();
    assert_eq!(too_few.status, Status::Impossible(Reason::TooFewSticks { short: 1, length: 96 }));
    check(&short, &too_few, too_few.certificate.as_ref().unwrap()).unwrap();
}

#[test]
fn stopped_at_once_it_still_answers_with_a_bound() {
    let asked = triplets(20, 5);
    let plan = plan(&asked, Effort::USUAL, &mut || false).unwrap();
    match plan.status {
        Status::BestFound { bound, could_save } => {
            assert_eq!(bound + could_save, plan.cost);
            assert!(bound <= 20 && plan.cost >= 20);
        }
        Status::ProvedLeast => assert_eq!(plan.stick_count, 20),
        other => panic!("{other:?}"),
    }
}
