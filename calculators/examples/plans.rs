use std::io::Read;
fn main() {
    let mut text = String::new();
    std::io::stdin().read_to_string(&mut text).unwrap();
    let walls: Vec<serde_json::Value> = serde_json::from_str(&text).unwrap();
    let entry = calculators::catalogue::entry("wall-plan").unwrap();
    let mut out = Vec::new();
    for wall in walls {
        let units = if wall["units"] == "metric" { calculators::quantity::Units::Metric } else { calculators::quantity::Units::Imperial };
        let started = std::time::Instant::now();
        let answer = std::panic::catch_unwind(std::panic::AssertUnwindSafe(|| entry.work(&wall["input"], units)));
        let took = started.elapsed().as_secs_f64();
        out.push(match answer {
            Ok(Ok(answer)) => serde_json::json!({"plan": answer, "s": took}),
            Ok(Err(faults)) => serde_json::json!({"faults": calculators::catalogue::Fault::print_all(&faults, units)}),
            Err(_) => serde_json::json!({"panic": true}),
        });
    }
    println!("{}", serde_json::to_string(&out).unwrap());
}
