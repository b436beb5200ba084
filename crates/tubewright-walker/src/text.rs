//! Reading a problem or a solution from its text, with the path of what is missing.

use serde_json::Value;

use crate::solid::Solid;
use crate::space::V;

/// Why a judgement could not be made at all.
#[derive(Debug, thiserror::Error)]
#[non_exhaustive]
pub enum JudgeError {
    /// The text is no JSON.
    #[error("not JSON: {0}")]
    Json(#[from] serde_json::Error),
    /// A value is missing or of another kind than the definition says.
    #[error("{0}: missing or of the wrong kind")]
    Missing(String),
}

pub(crate) struct Look<'a> {
    pub(crate) value: &'a Value,
    pub(crate) path: String,
}

impl<'a> Look<'a> {
    pub(crate) fn get(&self, key: &str) -> Result<Look<'a>, JudgeError> {
        let path = format!("{}/{key}", self.path);
        self.value
            .get(key)
            .map(|value| Look {
                value,
                path: path.clone(),
            })
            .ok_or(JudgeError::Missing(path))
    }
    pub(crate) fn number(&self) -> Result<f64, JudgeError> {
        self.value
            .as_f64()
            .ok_or_else(|| JudgeError::Missing(self.path.clone()))
    }
    pub(crate) fn text(&self) -> Result<&'a str, JudgeError> {
        self.value
            .as_str()
            .ok_or_else(|| JudgeError::Missing(self.path.clone()))
    }
    pub(crate) fn list(&self) -> Result<Vec<Look<'a>>, JudgeError> {
        let items = self
            .value
            .as_array()
            .ok_or_else(|| JudgeError::Missing(self.path.clone()))?;
        Ok(items
            .iter()
            .enumerate()
            .map(|(i, value)| Look {
                value,
                path: format!("{}/{i}", self.path),
            })
            .collect())
    }
    pub(crate) fn vector(&self) -> Result<V, JudgeError> {
        let numbers: Vec<f64> = self
            .list()?
            .iter()
            .map(Look::number)
            .collect::<Result<_, _>>()?;
        <V>::try_from(numbers).map_err(|_| JudgeError::Missing(self.path.clone()))
    }
    pub(crate) fn num(&self, key: &str) -> Result<f64, JudgeError> {
        self.get(key)?.number()
    }
    pub(crate) fn vec(&self, key: &str) -> Result<V, JudgeError> {
        self.get(key)?.vector()
    }
}

pub(crate) fn solid(of: &Look<'_>) -> Result<Solid, JudgeError> {
    Ok(match of.get("type")?.text()? {
        "box" => Solid::Box {
            centre: of.vec("center")?,
            half: of.vec("half")?,
            axes: match of.get("axes") {
                Ok(axes) if !axes.value.is_null() => {
                    let rows = axes
                        .list()?
                        .iter()
                        .map(Look::vector)
                        .collect::<Result<Vec<_>, _>>()?;
                    <[V; 3]>::try_from(rows).map_err(|_| JudgeError::Missing(axes.path))?
                }
                _ => [[1.0, 0.0, 0.0], [0.0, 1.0, 0.0], [0.0, 0.0, 1.0]],
            },
        },
        "capsule" => Solid::Capsule {
            a: of.vec("a")?,
            b: of.vec("b")?,
            radius: of.num("r")?,
        },
        "cylinder" => Solid::Cylinder {
            a: of.vec("a")?,
            b: of.vec("b")?,
            radius: of.num("r")?,
        },
        "mesh" => {
            let vertices = of
                .get("vertices")?
                .list()?
                .iter()
                .map(Look::vector)
                .collect::<Result<Vec<_>, _>>()?;
            let mut faces = Vec::new();
            for face in of.get("faces")?.list()? {
                let mut corners = [0usize; 3];
                for (slot, corner) in corners.iter_mut().zip(face.list()?) {
                    let index = corner.value.as_u64().and_then(|i| usize::try_from(i).ok());
                    *slot = index
                        .filter(|i| *i < vertices.len())
                        .ok_or(JudgeError::Missing(corner.path))?;
                }
                faces.push(corners);
            }
            Solid::Mesh { vertices, faces }
        }
        "envelope" => Solid::Envelope(
            of.get("of")?
                .list()?
                .iter()
                .map(solid)
                .collect::<Result<_, _>>()?,
        ),
        "ground" => Solid::HalfSpace {
            point: [0.0, 0.0, of.num("z")?],
            outward: [0.0, 0.0, 1.0],
        },
        _ => return Err(JudgeError::Missing(format!("{}/type", of.path))),
    })
}
