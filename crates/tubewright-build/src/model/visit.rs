//! Every name that an element refers to, in one place: what may be left out with what, and what a
//! renaming carries along.

use super::{
    Along, Body, BodyKind, Carrier, CarrierKind, CarrierRef, Component, End, Entry, EntryKind,
    FrameChoice, FrozenPiece, FrozenShape, Item, ItemKind, Mark, MeasuredPoint, Name, Offer,
    OnHand, OnHandWhat, Place, PlaceAt, Reading, ReadingKind, Run, RunEnd, Setup, Supplier, Tube,
};
use crate::keys::Target;

/// Called with every name and what it names.
pub(crate) type See<'f> = &'f mut dyn FnMut(Target, &mut Name);

/// Shows the names that an element refers to, its own not included.
pub(crate) trait Refers {
    fn references(&mut self, see: See<'_>);
}

/// An element's own name.
pub(crate) trait Declares {
    const TARGET: Target;
    fn own_name(&mut self) -> &mut Name;
}

macro_rules! declares {
    ($($type:ty => $target:ident;)*) => {
        $(impl Declares for $type {
            const TARGET: Target = Target::$target;
            fn own_name(&mut self) -> &mut Name {
                &mut self.name
            }
        })*
    };
}

declares! {
    Mark => Mark;
    MeasuredPoint => Point;
    Setup => Setup;
    End => End;
    Carrier => Carrier;
    Body => Body;
    Component => Component;
    Run => Run;
    Tube => Tube;
    Item => Item;
    Supplier => Supplier;
    OnHand => OnHand;
}

fn places<'p>(places: impl IntoIterator<Item = &'p mut Place>, see: See<'_>) {
    for place in places {
        place.references(see);
    }
}

impl Refers for Place {
    fn references(&mut self, see: See<'_>) {
        match &mut self.at {
            PlaceAt::Mark(name) => see(Target::Mark, name),
            PlaceAt::Point(name) => see(Target::Point, name),
            PlaceAt::End { end, .. } => see(Target::End, end),
        }
    }
}

impl Refers for CarrierRef {
    fn references(&mut self, see: See<'_>) {
        if let Self::Carrier(name) = self {
            see(Target::Carrier, name);
        }
    }
}

impl Refers for FrameChoice {
    fn references(&mut self, see: See<'_>) {
        self.origin.references(see);
        for pair in &mut self.centre_line {
            places([&mut pair.left, &mut pair.right], see);
        }
        see(Target::Setup, &mut self.level);
    }
}

impl Refers for Mark {
    fn references(&mut self, see: See<'_>) {
        self.carrier.references(see);
    }
}

impl Refers for MeasuredPoint {
    fn references(&mut self, see: See<'_>) {
        self.carrier.references(see);
    }
}

impl Refers for Setup {
    fn references(&mut self, _: See<'_>) {}
}

impl Refers for Supplier {
    fn references(&mut self, _: See<'_>) {}
}

impl Refers for Tube {
    fn references(&mut self, _: See<'_>) {}
}

impl Refers for Reading {
    fn references(&mut self, see: See<'_>) {
        match &mut self.kind {
            ReadingKind::Tape { from, to, .. } => places([from, to], see),
            ReadingKind::Height { of, setup, .. } => {
                of.references(see);
                see(Target::Setup, setup);
            }
            ReadingKind::Plumb {
                from, to, setup, ..
            }
            | ReadingKind::Inclination {
                from, to, setup, ..
            } => {
                places([from, to], see);
                see(Target::Setup, setup);
            }
            ReadingKind::Offset {
                from, to, along, ..
            } => {
                places([from, to], see);
                match along {
                    Along::Line(line) => places(line, see),
                    Along::Plumb { setup } => see(Target::Setup, setup),
                }
            }
            ReadingKind::Symmetry { left, right } => places([left, right], see),
            ReadingKind::Bearing {
                from,
                to,
                base,
                setup,
                ..
            } => {
                places([from, to], see);
                places(base, see);
                see(Target::Setup, setup);
            }
            ReadingKind::Face { end, setup, .. } => {
                see(Target::End, end);
                see(Target::Setup, setup);
            }
        }
    }
}

impl Refers for End {
    fn references(&mut self, see: See<'_>) {
        self.carrier.references(see);
        if let Some(given) = &mut self.given {
            given.at.references(see);
            places(given.room.iter_mut().flatten(), see);
        }
    }
}

impl Refers for Carrier {
    fn references(&mut self, see: See<'_>) {
        match &mut self.kind {
            CarrierKind::Engine(motion)
            | CarrierKind::Wheel(motion)
            | CarrierKind::Axle(motion) => {
                places(motion.axis.iter_mut().flatten(), see);
                places(motion.kingpin.iter_mut().flatten(), see);
            }
            CarrierKind::Hung { .. } => {}
        }
    }
}

impl Refers for Body {
    fn references(&mut self, see: See<'_>) {
        self.carrier.references(see);
        match &mut self.kind {
            BodyKind::Rail { from, to, .. }
            | BodyKind::Tube { from, to, .. }
            | BodyKind::Capsule { from, to, .. }
            | BodyKind::Cylinder { from, to, .. } => places([from, to], see),
            BodyKind::Tyre { hub: at, .. } | BodyKind::Sphere { at, .. } => at.references(see),
            BodyKind::Tank { corners, .. } | BodyKind::Outline { corners, .. } => {
                places(corners, see);
            }
            BodyKind::Box { corner, opposite } => places([corner, opposite], see),
            BodyKind::HalfSpace { through, .. } => places(through, see),
            BodyKind::Ground { setup } => see(Target::Setup, setup),
            BodyKind::Scan { places: seen, .. } => {
                places(seen.iter_mut().map(|seen| &mut seen.mark), see);
            }
        }
    }
}

impl Refers for Component {
    fn references(&mut self, see: See<'_>) {
        see(Target::Item, &mut self.item);
        if let Some(carrier) = &mut self.carrier {
            carrier.references(see);
        }
        places(self.zone.iter_mut().flatten(), see);
        for stand_in in &mut self.or {
            see(Target::Component, stand_in);
        }
        for end in self.stands.iter_mut().flatten() {
            see(Target::End, end);
        }
        places(&mut self.along, see);
    }
}

impl Refers for Run {
    fn references(&mut self, see: See<'_>) {
        for end in [&mut self.from, &mut self.to] {
            match end {
                RunEnd::End(name) => see(Target::End, name),
                RunEnd::Port { component, .. } => see(Target::Component, component),
            }
        }
        see(Target::Tube, &mut self.tube);
        for through in &mut self.through {
            see(Target::Component, &mut through.component);
        }
        let rooms = self.passes.iter_mut().chain(&mut self.joints_in);
        places(rooms.flatten(), see);
        places(self.pins.iter_mut().map(|pin| &mut pin.near), see);
    }
}

impl Refers for Item {
    fn references(&mut self, see: See<'_>) {
        if let Some(tube) = &mut self.tube {
            see(Target::Tube, tube);
        }
        if let ItemKind::Component(component) = &mut self.kind {
            for port in &mut component.ports {
                see(Target::Tube, &mut port.tube);
            }
            if let Some(made) = &mut component.hand_made {
                see(Target::Item, &mut made.bend);
            }
        }
    }
}

impl Refers for Offer {
    fn references(&mut self, see: See<'_>) {
        see(Target::Item, &mut self.item);
        see(Target::Supplier, &mut self.supplier);
    }
}

impl Refers for OnHand {
    fn references(&mut self, see: See<'_>) {
        match &mut self.what {
            OnHandWhat::Stock { tube, .. } => see(Target::Tube, tube),
            OnHandWhat::Item(item) => see(Target::Item, item),
        }
    }
}

impl Refers for FrozenPiece {
    fn references(&mut self, see: See<'_>) {
        see(Target::Run, &mut self.run);
        if let FrozenShape::Component { component, .. } = &mut self.shape {
            see(Target::Component, component);
        }
    }
}

impl Refers for Entry {
    fn references(&mut self, see: See<'_>) {
        match &mut self.what {
            EntryKind::Chosen { starts, pieces, .. }
            | EntryKind::Accepted { starts, pieces, .. } => {
                for start in starts {
                    see(Target::Run, &mut start.run);
                    if let Some(tube) = &mut start.tube {
                        see(Target::Tube, tube);
                    }
                }
                for piece in pieces {
                    piece.references(see);
                }
            }
            EntryKind::Got { item, supplier, .. } | EntryKind::Out { item, supplier } => {
                see(Target::Item, item);
                if let Some(supplier) = supplier {
                    see(Target::Supplier, supplier);
                }
            }
            EntryKind::OtherSize {
                item,
                taken,
                supplier,
                ..
            } => {
                see(Target::Item, item);
                see(Target::Item, taken);
                if let Some(supplier) = supplier {
                    see(Target::Supplier, supplier);
                }
            }
            EntryKind::Spare { item, .. } => see(Target::Item, item),
            EntryKind::Cut { from, .. } => see(Target::CutFrom, from),
            EntryKind::Tacked {
                readings, faces, ..
            }
            | EntryKind::Checked {
                readings, faces, ..
            } => {
                places(readings.iter_mut().map(|reading| &mut reading.from), see);
                for face in faces {
                    see(Target::Setup, &mut face.setup);
                }
            }
            EntryKind::Spoiled { .. } | EntryKind::Welded { .. } => {}
        }
    }
}
