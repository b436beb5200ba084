use crate::model::{CarrierRef, Flows, Name, Place};
use crate::quantity::{Mass, Quantity};
use crate::span::Span;
use tubewright_geometry::{Angle, Length, Point, UnitVector};

/// An item of the stock file put into this car.
#[derive(Clone, Debug, PartialEq)]
pub struct Component {
    /// Its name.
    pub name: Name,
    /// The item; its kind is [`crate::model::ItemKind::Component`].
    pub item: Name,
    /// What it moves with; `None` when it rides with the run that holds it.
    pub carrier: Option<CarrierRef>,
    /// Opposite corners, along the car's axes, of the room it must lie in.
    pub zone: Option<[Place; 2]>,
    /// Fixed clock of its own twelve o'clock, when it matters.
    pub roll: Option<Quantity<Angle>>,
    /// Of a part where runs meet: its outlets turned up, then to the car's right, from along the car.
    pub turn: Option<PartTurn>,
    /// Of such a part: how far the search may turn it from there; not at all when left out.
    pub may_turn: Option<PartMayTurn>,
    /// Other crossovers of the build that may stand in its place, in the order written.
    pub or: Vec<Name>,
    /// Of a stretch that stands: the ends at which gas comes in and goes out.
    pub stands: Option<[Name; 2]>,
    /// Of a stretch that stands: places along its centre line between its two ends, in the order of flow.
    pub along: Vec<Place>,
    /// Where it was written.
    pub span: Span,
}

/// How a part where runs meet is turned from lying along the car.
#[derive(Clone, Debug, PartialEq)]
pub struct PartTurn {
    /// Its outlets up.
    pub up: Quantity<Angle>,
    /// Then to the car's right.
    pub right: Quantity<Angle>,
}

/// How far a part where runs meet may be turned, either way.
#[derive(Clone, Debug, PartialEq)]
pub struct PartMayTurn {
    /// Its outlets up or down.
    pub up: Quantity<Angle>,
    /// Its outlets to the right or the left.
    pub right: Quantity<Angle>,
    /// About its own length.
    pub roll: Quantity<Angle>,
}

/// An item with ports.
#[derive(Clone, Debug, PartialEq)]
pub struct ComponentItem {
    /// What it is.
    pub kind: ComponentKind,
    /// Length along the flow, necks included.
    pub length: Quantity<Length>,
    /// Section of its body; `None` for a part no thicker than its tube.
    pub body: Option<Section>,
    /// Length of the neck at the inlet and at the outlet before the body begins.
    pub necks: [Quantity<Length>; 2],
    /// Mass.
    pub mass: Option<Quantity<Mass>>,
    /// Its ports. A straight-through item has `in` and `out`; the two ports of a crossover's side
    /// share the side's name.
    pub ports: Vec<Port>,
    /// How it is made of two bends, when it is not bought: length and ports follow from it.
    pub hand_made: Option<Box<HandMade>>,
}

/// A crossover of two equal bends, each with its back cut off along a plane parallel to the bend's axis, welded
/// together round the opening.
#[derive(Clone, Debug, PartialEq)]
pub struct HandMade {
    /// The bend that both halves are made of.
    pub bend: Name,
    /// Straight leg that stays on at both ends of each bend.
    pub leg: Quantity<Length>,
    /// What the plane takes off the back of each bend at its apex.
    pub taken_off: Quantity<Length>,
    /// Angle of the bend, from its item.
    pub angle: Angle,
    /// Centre-line radius of the bend, from its item.
    pub clr: Length,
}

impl ComponentItem {
    /// The inlet of a side; without a side, the only inlet.
    #[must_use]
    pub fn inlet(&self, side: Option<&str>) -> Option<&Port> {
        self.only(Flows::In, side)
    }

    /// The outlet of a side; without a side, the only outlet.
    #[must_use]
    pub fn outlet(&self, side: Option<&str>) -> Option<&Port> {
        self.only(Flows::Out, side)
    }

    fn only(&self, flows: Flows, side: Option<&str>) -> Option<&Port> {
        let mut ports = self
            .ports
            .iter()
            .filter(|port| port.flows == flows && side.is_none_or(|side| port.name == side));
        let first = ports.next()?;
        ports.next().is_none().then_some(first)
    }
}

/// What a component is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
#[non_exhaustive]
pub enum ComponentKind {
    /// Catalyst.
    Catalyst,
    /// Resonator.
    Resonator,
    /// Silencer.
    Silencer,
    /// Flex section.
    Flex,
    /// X or H between two banks.
    Crossover,
    /// Two into one, or one into two.
    Merge,
    /// Cone between two tube sizes.
    Cone,
    /// Tube that stands in the car already and stays.
    Stretch,
    /// Slip joint, band clamp, bolted flange pair.
    Joint,
    /// Bung for a sensor.
    Bung,
    /// Tip.
    Tip,
    /// Flange.
    Flange,
    /// Hanger.
    Hanger,
}

/// Section of a component's body square to the flow.
#[derive(Clone, Debug, PartialEq)]
pub enum Section {
    /// Round.
    Round {
        /// Diameter.
        diameter: Quantity<Length>,
    },
    /// Oval: a rectangle with half-round short sides.
    Oval {
        /// Size across.
        width: Quantity<Length>,
        /// Size toward its twelve o'clock.
        height: Quantity<Length>,
    },
    /// Box.
    Box {
        /// Size across.
        width: Quantity<Length>,
        /// Size toward its twelve o'clock.
        height: Quantity<Length>,
    },
}

/// Where a tube meets a component.
///
/// Place and direction are in the component's own frame in the order of
/// [`tubewright_geometry::Frame`] (along the travel, toward twelve, toward three), whose origin is
/// the middle of the inlet side: `frame.point_from_local(port.at)` is the place in the car. The file
/// writes *along flow, right, up*, with right as the car's right when the flow runs rearwards,
/// which is toward nine o'clock looking downstream.
#[derive(Clone, Debug, PartialEq)]
pub struct Port {
    /// `in`, `out`, or the name of a side.
    pub name: String,
    /// Whether the gas flows in or out of the component here.
    pub flows: Flows,
    /// Middle of the face.
    pub at: Point,
    /// Direction of flow there.
    pub travel: UnitVector,
    /// Size of the neck.
    pub tube: Name,
}
