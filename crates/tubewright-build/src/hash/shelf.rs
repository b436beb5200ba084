use super::{Canonical, CanonicalHasher, canonical, canonical_choice, canonical_variants};
use crate::model::{
    ComponentItem, ComponentKind, CutGives, CutOf, CutPlace, Entry, EntryKind, FrozenPiece,
    FrozenShape, FrozenStart, HandMade, Item, ItemKind, JointFace, JointReading, Material, Offer,
    OnHand, OnHandWhat, Port, PriceBreak, Section, StockShape, Supplier, Tube,
};
use crate::quantity::{Density, Duration, Mass, Share};
use crate::resolved::ResolvedPractice;

canonical_choice! {
    Material { Stainless304, Stainless321, Stainless409, Mild, CastIron, Aluminised }
    ComponentKind {
        Catalyst, Resonator, Silencer, Flex, Crossover, Merge, Cone, Stretch, Joint, Bung, Tip, Flange,
        Hanger,
    }
}

canonical! {
    Tube { name, od, wall, material, density } aside { span }
    Item { name, kind, tube } aside { note, span }
    ComponentItem { kind, length, body, necks, mass, ports, hand_made } aside {}
    HandMade { bend, leg, taken_off, angle, clr } aside {}
    Port { name, flows, at, travel, tube } aside {}
    Offer { item, supplier, price, breaks, pack, quantity, tax } aside { delivery, date, span }
    PriceBreak { from, price } aside {}
    Supplier { name, delivery_charge } aside { note, span }
    OnHand { name, what, count } aside { note, span }
    Entry { on, what } aside { note, span }
    CutOf { number, gives, place } aside {}
    CutGives { piece, length } aside {}
    FrozenStart { run, frame, tube, joint } aside {}
    FrozenPiece { run, mark, joint, shape } aside {}
    JointFace { clock, setup, reads } aside {}
    JointReading { from, rim, reads } aside {}
    ResolvedPractice {
        rate, weld_time, cut_time, kerf, length_step, bend_step, clock_step, least_straight,
        least_bend, least_grip, saw_capacity, cut_length, cut_angle, clock, bend_true, weld_pull,
        flow_per_degree, flow_per_metre, ground_loss, spares,
    } aside { defaulted }
}

canonical_variants!(ItemKind { Stock(shape), Component(item) });
canonical_variants!(StockShape { Bend { angle, clr, legs }, Straight { length } });
canonical_variants!(Section { Round { diameter }, Oval { width, height }, Box { width, height } });
canonical_variants!(OnHandWhat { Stock { tube, shape }, Item(name) });
canonical_variants!(FrozenShape {
    Straight { length },
    Bend { angle, clock, clr, legs },
    Component { component, roll, length, at, turned },
});
canonical_variants!(CutPlace {
    Straight { at, length },
    LegA { at, length },
    LegB { at, length },
    Bend { at, angle, legs },
});
canonical_variants!(EntryKind {
    Chosen { route, effort, seed, starts, pieces },
    Got { item, supplier, count },
    Out { item, supplier },
    OtherSize { item, taken, supplier, count },
    Spare { item, count },
    Cut { piece, from, of },
    Spoiled { piece },
    Tacked { joint, readings, faces },
    Welded { joint },
    Checked { joint, readings, faces },
    Accepted { route, starts, pieces },
});

impl Canonical for Mass {
    fn canonical(&self, into: &mut CanonicalHasher) {
        into.number(self.kg());
    }
}

impl Canonical for Density {
    fn canonical(&self, into: &mut CanonicalHasher) {
        into.number(self.kg_per_m3());
    }
}

impl Canonical for Duration {
    fn canonical(&self, into: &mut CanonicalHasher) {
        into.number(self.minutes());
    }
}

impl Canonical for Share {
    fn canonical(&self, into: &mut CanonicalHasher) {
        into.number(self.fraction());
    }
}
