//! Judges answers made by others: `judge PROBLEM ANSWER...` prints one line of JSON for each answer:
//! `{"holds": bool, "cost": number, "broken": [text]}`.
#![expect(clippy::print_stdout, reason = "the answer of a filter")]

use serde_json::json;

fn main() -> Result<(), Box<dyn std::error::Error>> {
    let mut args = std::env::args().skip(1);
    let problem = std::fs::read_to_string(args.next().ok_or("which problem?")?)?;
    for answer in args {
        let verdict = tubewright_walker::judge(&problem, &std::fs::read_to_string(answer)?)?;
        let broken: Vec<String> = verdict
            .violations
            .iter()
            .map(|v| {
                format!(
                    "rule {}: {} ({:.3}, limit {:.3})",
                    v.rule, v.what, v.measured, v.limit
                )
            })
            .collect();
        println!(
            "{}",
            json!({"holds": broken.is_empty(), "cost": verdict.cost, "broken": broken})
        );
    }
    Ok(())
}
