//! Stretches of tube that stand in the car already and stay as they are: a run ends at the one end of it, another goes on
//! from the other.

use tubewright_build::model::{Component, ComponentItem, Name, Section};
use tubewright_geometry::Point;
use tubewright_route::problem::{Bar, Crossover, Ports, Region, TurnRoom};

use super::meeting::widest_port_mm;
use super::problem::{Poser, RunError};
use crate::places::PlacedEnd;

impl Poser<'_> {
    /// A stretch where its two ends were measured: its coordinates are those of the car.
    pub(super) fn standing(
        &self,
        component: &Component,
        item: &ComponentItem,
    ) -> Result<Crossover, RunError> {
        let unsound = |what| RunError::UnsoundItem(component.name.to_string(), what);
        let [into, out] = component
            .stands
            .as_ref()
            .ok_or_else(|| unsound("two ends that it stands between"))?;
        let placed = |name: &Name| -> Result<&PlacedEnd, RunError> {
            let found = self.places.ends.get(name.as_str());
            found.ok_or_else(|| RunError::EndNotFound(name.to_string()))
        };
        let (into, out) = (placed(into)?.frame_in_car, placed(out)?.frame_in_car);
        let ports = Ports {
            inlet: into.origin.to_vector(),
            inlet_direction: into.travel(),
            outlet: out.origin.to_vector(),
            outlet_direction: out.travel(),
        };
        let radius_mm = match &item.body {
            Some(Section::Round { diameter }) => 0.5 * diameter.mm(),
            Some(_) => return Err(unsound("a round body, or none: it is tube")),
            None => 0.5 * widest_port_mm(self.model, item).ok_or_else(|| unsound("a tube size"))?,
        };
        let mut along = vec![into.origin];
        for place in &component.along {
            let found = self.places.place(&place.at);
            let found = found.ok_or_else(|| RunError::AlongNotFound {
                part: component.name.to_string(),
                place: place.at.name().to_string(),
            })?;
            along.push(found.point_in_car);
        }
        along.push(out.origin);
        let body = along
            .windows(2)
            .filter_map(|pair| match pair {
                [a, b] => Some(Bar {
                    a: a.to_vector(),
                    b: b.to_vector(),
                    radius_mm,
                }),
                _ => None,
            })
            .collect();
        Ok(Crossover {
            id: component.name.to_string(),
            poses: Region {
                min: Point::ORIGIN,
                max: Point::ORIGIN,
            },
            turns: TurnRoom::NONE,
            ports_within: None,
            body,
            left: ports,
            right: ports,
            stands: true,
        })
    }
}
