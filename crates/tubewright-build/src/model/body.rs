use crate::model::{CarrierRef, Direction, Name, Place, Side};
use crate::quantity::{Quantity, TyreSize};
use crate::span::Span;
use tubewright_geometry::{Length, Point};

/// Something a run must keep clear of.
#[derive(Clone, Debug, PartialEq)]
pub struct Body {
    /// Its name.
    pub name: Name,
    /// Shape from what a tape gives.
    pub kind: BodyKind,
    /// What it minds; decides the gap.
    pub class: Class,
    /// What it moves with.
    pub carrier: CarrierRef,
    /// Its own gap, when it differs from that of its class.
    pub gap: Option<Quantity<Length>>,
    /// Sides of it on which no run may pass, as said; `None` when nothing is said of it.
    pub never_pass: Option<Vec<Direction>>,
    /// No tip may lie under or over it, nor nearer than this to its outline seen from above.
    pub no_tip: Option<Quantity<Length>>,
    /// Words of the person.
    pub note: Option<String>,
    /// Where it was written.
    pub span: Span,
}

impl Body {
    /// Sides of it on which no run may pass: those that are said, else the upper side of a floor, because
    /// what lies above it is the cabin or the load.
    #[must_use]
    pub fn closed_sides(&self) -> &[Direction] {
        match &self.never_pass {
            Some(said) => said,
            None if self.class == Class::Floor => &[Direction::Up],
            None => &[],
        }
    }
}

/// What a body minds.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Class {
    /// Rails, crossmembers.
    Structure,
    /// Floor pan.
    Floor,
    /// Gearbox, propshaft, axle.
    Driveline,
    /// Linkages, suspension arms, anything that moves by itself.
    Moving,
    /// Tyre.
    Tyre,
    /// Hose, wiring, plastic without a shield.
    Soft,
    /// Hose, wiring, plastic behind a shield.
    SoftShielded,
    /// Fuel or brake part.
    FuelBrake,
    /// Hot metal.
    Heat,
    /// The ground.
    Ground,
    /// Bonnet.
    Bonnet,
    /// Room kept free by hand.
    Service,
}

/// Shape of a body from what a tape gives.
#[derive(Clone, Debug, PartialEq)]
#[non_exhaustive]
pub enum BodyKind {
    /// Two points on one of its four edges, and its section.
    Rail {
        /// One end of the edge.
        from: Place,
        /// Other end of the edge.
        to: Place,
        /// Which edge.
        edge: Edge,
        /// Size across the car.
        width: Quantity<Length>,
        /// Size upwards.
        height: Quantity<Length>,
    },
    /// Two points on the surface and the girth or diameter.
    Tube {
        /// One surface point.
        from: Place,
        /// The other.
        to: Place,
        /// Side of the tube on which the points lie.
        touched: Direction,
        /// Diameter (girth already divided by π).
        diameter: Quantity<Length>,
    },
    /// A tyre by its hub and the marking on its wall.
    Tyre {
        /// A place on the wheel's axis.
        hub: Place,
        /// Its size.
        marking: Quantity<TyreSize>,
        /// Side of the car.
        side: Side,
        /// From the hub place inwards to the middle of the tyre; negative for outwards.
        inboard: Quantity<Length>,
        /// Growth of the wall, each side.
        bulge: Option<Quantity<Length>>,
    },
    /// Corners of the bottom or top outline, in order, and the depth; the outline is level.
    Tank {
        /// The corners, at least three.
        corners: Vec<Place>,
        /// The depth.
        depth: Quantity<Length>,
        /// Up or down.
        depth_goes: Direction,
    },
    /// Two opposite corners, sides along the car's axes.
    Box {
        /// One corner.
        corner: Place,
        /// The corner opposite.
        opposite: Place,
    },
    /// Two axis points and the diameter, round ends.
    Capsule {
        /// One end of the axis.
        from: Place,
        /// The other.
        to: Place,
        /// Diameter.
        diameter: Quantity<Length>,
    },
    /// Two axis points and the diameter, flat ends.
    Cylinder {
        /// One end of the axis.
        from: Place,
        /// The other.
        to: Place,
        /// Diameter.
        diameter: Quantity<Length>,
    },
    /// A ball.
    Sphere {
        /// Its centre.
        at: Place,
        /// Diameter.
        diameter: Quantity<Length>,
    },
    /// Like a tank, in any plane, with any direction of depth.
    Outline {
        /// The corners, at least three.
        corners: Vec<Place>,
        /// The depth.
        depth: Quantity<Length>,
        /// To which side of the outline.
        depth_goes: Direction,
    },
    /// Everything beyond the plane of three places.
    HalfSpace {
        /// The places.
        through: [Place; 3],
        /// The side that is taken.
        keep_out: Direction,
    },
    /// The floor of a set-up on its wheels.
    Ground {
        /// The set-up.
        setup: Name,
    },
    /// A scan placed by marks seen in it.
    Scan {
        /// Path inside the build folder, with `/`.
        file: String,
        /// What one unit of the file is.
        unit: Quantity<Length>,
        /// Noise allowance (19 in 20).
        noise: Quantity<Length>,
        /// Also adjust the scale.
        fit_scale: bool,
        /// Marks seen in the scan.
        places: Vec<ScanPlace>,
    },
}

/// Which edge of a rail was measured.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Edge {
    /// On the lower side (else the upper).
    pub is_lower: bool,
    /// On the side away from the car's middle (else toward it).
    pub is_outer: bool,
}

/// A place of the car seen in a scan.
#[derive(Clone, Debug, PartialEq)]
pub struct ScanPlace {
    /// The mark, point or end centre.
    pub mark: Place,
    /// Where it is in the file, in the file's own units.
    pub at: Point,
}
