use toml_edit::{Array, InlineTable, Value};

/// A value as it is to stand in a file.
#[derive(Clone, Debug, PartialEq)]
pub enum Written {
    /// Text, quantities among it.
    Text(String),
    /// A whole number.
    Whole(i64),
    /// A plain number.
    Number(f64),
    /// True or false.
    Yes(bool),
    /// A list on one line.
    List(Vec<Written>),
    /// A table in braces.
    Table(Vec<(String, Written)>),
}

impl Written {
    /// Text.
    #[must_use]
    pub fn text(text: impl Into<String>) -> Self {
        Self::Text(text.into())
    }

    /// A list of texts.
    #[must_use]
    pub fn texts<'t>(texts: impl IntoIterator<Item = &'t str>) -> Self {
        Self::List(texts.into_iter().map(Self::text).collect())
    }

    pub(crate) fn to_value(&self) -> Value {
        match self {
            Self::Text(text) => Value::from(text.as_str()),
            Self::Whole(number) => Value::from(*number),
            Self::Number(number) => Value::from(*number),
            Self::Yes(yes) => Value::from(*yes),
            Self::List(items) => Value::Array(items.iter().map(Self::to_value).collect::<Array>()),
            Self::Table(fields) => Value::InlineTable(
                fields
                    .iter()
                    .map(|(key, value)| (key.as_str(), value.to_value()))
                    .collect::<InlineTable>(),
            ),
        }
    }
}
