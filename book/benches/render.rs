//! How long the book takes: reading it, rendering it in one unit system, one search, one answer panel.

use book::{Handbook, Outcome, render};
use calculators::catalogue::entry;
use calculators::quantity::Units;
use criterion::{Criterion, criterion_group, criterion_main};

fn the_book(criterion: &mut Criterion) {
    criterion.bench_function("read and check the book", |bench| {
        bench.iter(|| Handbook::built_in().map(|_| ()).map_err(|faults| faults.to_string()));
    });
    let Ok(book) = Handbook::built_in() else { return };
    for units in [Units::Imperial, Units::Metric] {
        criterion.bench_function(&format!("render every page, {}", units.word()), |bench| {
            bench.iter(|| render(&book, units))
        });
    }
    criterion.bench_function("find", |bench| bench.iter(|| book.find("second coat in a cold room")));
    let Some(entry) = entry("board-weight") else { return };
    let input = &entry.example(Units::Imperial).input;
    let Ok(answer) = entry.work(input, Units::Imperial) else { return };
    criterion.bench_function("one calculation as a page", |bench| {
        bench.iter(|| book.calculator_page(entry, input, Outcome::Answer(&answer), Units::Imperial));
    });
}

criterion_group!(benches, the_book);
criterion_main!(benches);
