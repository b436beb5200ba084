//! Order of errands.

use tubewright_stock::{Stop, best_round};

use crate::data::{check, floats};

const DATA: &str = include_str!("../data/errands.toml");

fn solved(id: &str) {
    let check = check(DATA, id);
    let minutes: Vec<Vec<u32>> = check
        .input("travel_min")
        .unwrap()
        .as_array()
        .unwrap()
        .iter()
        .map(|row| floats(row).into_iter().map(|v| v as u32).collect())
        .collect();
    let [opens, closes, service] =
        ["open_min", "close_min", "service_min"].map(|key| check.numbers(key));
    let stops: Vec<Stop> = (1..minutes.len())
        .map(|n| Stop {
            name: n.to_string(),
            opens: opens[n] as u32,
            closes: closes[n] as u32,
            service: service[n] as u32,
        })
        .collect();
    let departs = check.number("depart_min") as u32;
    let round = best_round(&stops, &minutes, departs).unwrap();
    let expected = check.expected_number("best_return_min") as u32;
    assert_eq!(round.returns, expected, "{}", check.source());
    if check.expected_number("ties") < 1.5 {
        let order: Vec<u32> = round.order.iter().map(|n| *n as u32 + 1).collect();
        assert_eq!(
            order,
            check.expected_order("best_order"),
            "{}",
            check.source()
        );
    }
    // Walked by the clock.
    let (mut at, mut now) = (0, departs);
    for stop in &round.order {
        let arrives = (now + minutes[at][stop + 1]).max(stops[*stop].opens);
        now = arrives + stops[*stop].service;
        assert!(now <= stops[*stop].closes);
        at = stop + 1;
    }
    assert_eq!(now + minutes[at][0], round.returns);
    assert_eq!(round.order.len(), stops.len());
}

#[test]
fn errand_1() {
    solved("errand-1");
}

#[test]
fn errand_2() {
    solved("errand-2");
}

#[test]
fn errand_3() {
    solved("errand-3");
}
