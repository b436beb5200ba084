//! Reads the entries of `tests/data`.

/// One published value.
pub(crate) struct Check(toml::Table);

/// The entry of this id.
pub(crate) fn check(text: &str, id: &str) -> Check {
    let table: toml::Table = text.parse().unwrap();
    let entries = table["check"].as_array().unwrap();
    let entry = entries
        .iter()
        .find(|entry| entry["id"].as_str() == Some(id));
    Check(
        entry
            .unwrap_or_else(|| panic!("no entry {id}"))
            .as_table()
            .unwrap()
            .clone(),
    )
}

fn float(value: &toml::Value) -> f64 {
    value
        .as_float()
        .or_else(|| value.as_integer().map(|i| i as f64))
        .unwrap()
}

impl Check {
    pub(crate) fn source(&self) -> String {
        format!(
            "{}: {}",
            self.0["id"].as_str().unwrap(),
            self.0["source"].as_str().unwrap()
        )
    }

    pub(crate) fn input(&self, key: &str) -> Option<&toml::Value> {
        self.0["inputs"].get(key)
    }

    pub(crate) fn number(&self, key: &str) -> f64 {
        float(&self.0["inputs"][key])
    }

    pub(crate) fn numbers(&self, key: &str) -> Vec<f64> {
        floats(&self.0["inputs"][key])
    }

    pub(crate) fn expected_number(&self, key: &str) -> f64 {
        float(&self.0["expected"][key])
    }

    /// The expected value when it is one number.
    pub(crate) fn value(&self) -> f64 {
        float(&self.0["expected"])
    }

    pub(crate) fn expected_order(&self, key: &str) -> Vec<u32> {
        floats(&self.0["expected"][key])
            .into_iter()
            .map(|v| v as u32)
            .collect()
    }

    pub(crate) fn expected_words(&self, key: &str) -> Vec<String> {
        let words = self.0["expected"][key].as_array().unwrap();
        words
            .iter()
            .map(|word| word.as_str().unwrap().to_owned())
            .collect()
    }

    /// Compares a list; an empty key is the expected value itself.
    #[track_caller]
    pub(crate) fn assert_list(&self, key: &str, got: impl Iterator<Item = f64>, tolerance: f64) {
        let expected = &self.0["expected"];
        let expected = floats(if key.is_empty() {
            expected
        } else {
            &expected[key]
        });
        let got: Vec<f64> = got.collect();
        assert_eq!(got.len(), expected.len(), "{}", self.source());
        for (got, expected) in got.into_iter().zip(expected) {
            self.assert_near(key, got, expected, tolerance);
        }
    }

    /// Compares one number, relative or absolute, whichever is larger.
    #[track_caller]
    pub(crate) fn assert_near(&self, what: &str, got: f64, expected: f64, tolerance: f64) {
        let allowed = tolerance * expected.abs().max(1.0);
        assert!(
            (got - expected).abs() <= allowed,
            "{what}: got {got}, expected {expected}, off by {}, allowed {allowed}; {}",
            got - expected,
            self.source()
        );
    }
}

pub(crate) fn floats(value: &toml::Value) -> Vec<f64> {
    value.as_array().unwrap().iter().map(float).collect()
}
