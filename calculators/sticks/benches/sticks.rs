//! How long a stick plan takes at three sizes, and how long the checker takes over its proof.

use std::hint::black_box;

use criterion::Criterion;
use sticks::certificate_check::check;
use sticks::instance::{Instance, Piece, Stick};
use sticks::solve::{Effort, cheapest};

/// Pieces of many lengths in sixty-fourths of an inch, from a seed: the same each time.
fn house(lengths: usize, pieces: u32) -> Instance {
    let mut seed = 0x5eed_u64;
    let mut below = |limit: u64| {
        seed = seed.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        (seed >> 33) % limit
    };
    let mut asked: Vec<Piece> =
        (0..lengths).map(|_| Piece { length: 500 + 4 * below(1_600) as i64, count: 1 }).collect();
    for _ in lengths as u32..pieces {
        let at = below(lengths as u64) as usize;
        asked[at].count += 1;
    }
    let stick = |length, price| Stick { length, price, available: None };
    Instance { pieces: asked, kerf: 8, sticks: vec![stick(7_680, 1_179), stick(9_216, 1_359), stick(12_288, 1_899)] }
}

fn main() {
    let mut criterion = Criterion::default().configure_from_args().sample_size(20);
    for (name, lengths, pieces) in [("a room", 8, 24), ("a house", 15, 110), ("a street", 50, 400)] {
        let asked = house(lengths, pieces);
        criterion.bench_function(&format!("cheapest sticks for {name}"), |bench| {
            bench.iter(|| cheapest(black_box(&asked), Effort::USUAL, &mut || true));
        });
        let plan = cheapest(&asked, Effort::USUAL, &mut || true).expect("numbers are in range").plan().clone();
        if let Some(certificate) = &plan.certificate {
            criterion.bench_function(&format!("checking the proof for {name}"), |bench| {
                bench.iter(|| check(black_box(&asked), &plan, certificate));
            });
        }
    }
    criterion.final_summary();
}
