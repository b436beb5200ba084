//! `build.toml` as a whole; its tables have files of their own.

use super::body::BODY;
use super::car::{CARRIER_TABLE, COMPONENT, END, ENGINE, GAPS, RUN, WISHES};
use super::shapes::NOTE;
use super::survey::{ACCURACY, FRAME, MARK, POINT, READING, SETUP_TABLE};
use super::{Shape, Table, may, must, tables};

/// `build.toml`.
pub(crate) static BUILD: Table = Table {
    title: "build.toml",
    about: "The car: marks, set-ups, readings, bodies, ends, components, runs, wishes",
    keys: &[
        must(
            "format",
            Shape::Fixed("tubewright-build/1"),
            "Format of this file",
        ),
        must("name", Shape::Text, "Name of the job"),
        NOTE,
        may("frame", Shape::Table(&FRAME), "Choice of the car's axes"),
        tables("mark", &Shape::Table(&MARK), 2000),
        tables("point", &Shape::Table(&POINT), 10_000),
        tables("setup", &Shape::Table(&SETUP_TABLE), 50),
        may(
            "accuracy",
            Shape::Table(&ACCURACY),
            "± of the kinds of reading, 19 in 20",
        ),
        tables("reading", &Shape::Table(&READING), 20_000),
        tables("end", &Shape::Table(&END), 500),
        tables("carrier", &Shape::Table(&CARRIER_TABLE), 100),
        may("gaps", Shape::Table(&GAPS), "Gaps by class"),
        tables("body", &Shape::Table(&BODY), 5000),
        may("engine", Shape::Table(&ENGINE), "The engine"),
        tables("component", &Shape::Table(&COMPONENT), 500),
        tables("run", &Shape::Table(&RUN), 100),
        may("wishes", Shape::Table(&WISHES), "What you wish"),
    ],
    kinds: None,
    rules: &[],
};
