//! Every input that once broke a door, every seed, and seeds damaged at random.
#![cfg(test)]

use proptest::prelude::*;
use std::path::{Path, PathBuf};
use tubewright_doors::Door;

fn fuzz_folder(kind: &str, door: Door) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR"))
        .join("../../fuzz")
        .join(kind)
        .join(door.name())
}

/// The files of a folder in the order of their names; none when it is not there.
fn inputs(folder: &Path) -> Vec<(PathBuf, Vec<u8>)> {
    let Ok(entries) = std::fs::read_dir(folder) else {
        return Vec::new();
    };
    let mut paths: Vec<_> = entries.map(|entry| entry.unwrap().path()).collect();
    paths.sort();
    paths
        .into_iter()
        .map(|path| {
            let bytes = std::fs::read(&path).unwrap();
            (path, bytes)
        })
        .collect()
}

/// The seeds of the fuzz target, and the demonstration cars' files of that kind.
fn seeds(door: Door) -> Vec<(PathBuf, Vec<u8>)> {
    let mut seeds = inputs(&fuzz_folder("seeds", door));
    let file_name = match door {
        Door::BuildFile => "build.toml",
        Door::StockFile => "stock.toml",
        Door::ShopFile => "shop.toml",
        _ => return seeds,
    };
    let builds = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../builds");
    let mut cars: Vec<_> = std::fs::read_dir(builds)
        .map(|entries| entries.map(|entry| entry.unwrap().path()).collect())
        .unwrap_or_default();
    cars.sort();
    for path in cars.into_iter().map(|car| car.join(file_name)) {
        if let Ok(bytes) = std::fs::read(&path) {
            seeds.push((path, bytes));
        }
    }
    seeds
}

#[test]
fn what_once_broke_a_door_does_so_no_more() {
    for &door in Door::ALL {
        for (path, bytes) in inputs(&fuzz_folder("regressions", door)) {
            if let Err(broken) = door.hand_in(&bytes) {
                panic!("{door}: {}: {broken}", path.display());
            }
        }
    }
}

#[test]
fn every_door_has_seeds_and_keeps_its_promises_on_them() {
    for &door in Door::ALL {
        let seeds = seeds(door);
        assert!(!seeds.is_empty(), "no seeds for {door}");
        for (path, bytes) in seeds {
            if let Err(broken) = door.hand_in(&bytes) {
                panic!("{door}: {}: {broken}", path.display());
            }
        }
    }
}

#[test]
fn every_door_is_fuzzed() {
    let targets = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../fuzz/fuzz_targets");
    for &door in Door::ALL {
        let target = targets.join(format!("{door}.rs"));
        assert!(target.is_file(), "{} is missing", target.display());
    }
}

/// One damage: bytes taken out at a place and others put there.
#[derive(Clone, Debug)]
struct Damage {
    at: prop::sample::Index,
    taken: usize,
    put: Vec<u8>,
}

fn damage() -> impl Strategy<Value = Damage> {
    let put = prop_oneof![
        prop::collection::vec(any::<u8>(), 0..6),
        prop::sample::select(vec![
            "\"",
            "]",
            "[[",
            "nan",
            "-1",
            "1e999",
            "\n",
            "=",
            "é",
            "999999999999",
            "1/0",
            "mm",
        ])
        .prop_map(|words| words.as_bytes().to_vec()),
    ];
    (any::<prop::sample::Index>(), 0_usize..12, put).prop_map(|(at, taken, put)| Damage {
        at,
        taken,
        put,
    })
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn damaged_seeds_break_no_door(
        door in prop::sample::select(Door::ALL),
        which in any::<prop::sample::Index>(),
        damages in prop::collection::vec(damage(), 1..6),
    ) {
        let seeds = seeds(door);
        let (_, mut bytes) = seeds[which.index(seeds.len())].clone();
        for Damage { at, taken, put } in damages {
            let from = at.index(bytes.len() + 1);
            let to = (from + taken).min(bytes.len());
            bytes.splice(from..to, put);
        }
        if let Err(broken) = door.hand_in(&bytes) {
            return Err(TestCaseError::fail(format!("{door}: {broken}\n{}", String::from_utf8_lossy(&bytes))));
        }
    }
}
