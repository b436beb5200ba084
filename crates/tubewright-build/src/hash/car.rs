use super::{Canonical, CanonicalHasher, canonical, canonical_choice, canonical_variants};
use crate::model::{
    Along, Body, BodyKind, Bolt, Carrier, CarrierKind, CarrierRef, CentreLinePair, Class,
    Component, Direction, Doubt, Edge, End, EndGiven, EndKind, EndPlace, Engine, Face, Flows,
    FrameChoice, HeldBy, HoleEdge, HookedHole, Mark, MayTurn, MeasuredPoint, Motion, PartMayTurn,
    PartTurn, PinnedPart, Place, PlaceAt, PlusMinus, Reading, ReadingKind, Room, Run, RunEnd,
    RunPin, SawOff, ScanPlace, Setup, Side, Stance, TapeEnd, Through, TubeSide, Wishes,
};
use crate::quantity::{Power, RotationSpeed, TyreSize, Volume};
use crate::resolved::{ResolvedAccuracy, ResolvedGaps};

canonical_choice! {
    Side { Left, Right, Centre }
    Stance { Wheels, Lift, Stands }
    Doubt { Dropped }
    TapeEnd { From, To }
    HoleEdge { Near, Far }
    Face { Near, Far, Outer, Inner }
    Direction { Front, Rear, Left, Right, Up, Down }
    EndKind { Flange, SawnTube, Tip, Joint }
    Flows { Out, In }
    HeldBy { Bolts, SprungBolts, BandClamp, Slip }
    PinnedPart { Joint, Line }
    Class {
        Structure, Floor, Driveline, Moving, Tyre, Soft, SoftShielded, FuelBrake, Heat, Ground,
        Bonnet, Service,
    }
    Room { SteeringShaft, Exhaust, Coolant, Lines }
}

canonical! {
    FrameChoice { origin, centre_line, level } aside { span }
    CentreLinePair { left, right } aside {}
    Mark { name, side, carrier } aside { place, span }
    MeasuredPoint { name, side, carrier } aside { place, span }
    Setup { name, stance } aside { note, span }
    Reading { number, kind, plus_minus, doubt } aside { note, span }
    HookedHole { at, diameter, edge } aside {}
    TubeSide { at, of, face } aside {}
    Place { at } aside { span }
    End { name, kind, carrier, od, rim, material, held_by, bolts, flows, given, saw_off } aside { place, span }
    Bolt { clock, circle } aside {}
    EndGiven { at, points, turn_up, turn_right, within, room, may_turn } aside {}
    MayTurn { up, right } aside {}
    SawOff { back, mitre } aside {}
    Carrier { name, kind } aside { span }
    Motion { axis, rock, bump, droop, steer, kingpin } aside {}
    Body { name, kind, class, carrier, gap, never_pass, no_tip } aside { note, span }
    Edge { is_lower, is_outer } aside {}
    ScanPlace { mark, at } aside {}
    TyreSize { width, diameter, rim } aside {}
    Engine { layout, displacement, power, max_speed } aside { span }
    Component { name, item, carrier, zone, roll, turn, may_turn, or, stands, along } aside { span }
    PartTurn { up, right } aside {}
    PartMayTurn { up, right, roll } aside {}
    Run { name, from, to, tube, through, max_bends, passes, joints_in, pins } aside { note, span }
    RunPin { what, near, at, within } aside { span }
    Through { component, side } aside { span }
    Wishes { keep_catalysts, order_of_room, effort, seed } aside { units }
    ResolvedAccuracy { tape, height, plumb, offset, symmetry, angle, rim } aside { defaulted }
    ResolvedGaps {
        structure, floor, driveline, moving, tyre, soft, soft_shielded, fuel_brake, heat, ground,
        bonnet, service, run, itself,
    } aside { defaulted }
}

canonical_variants!(PlaceAt { Mark(name), Point(name), End { end, at } });
canonical_variants!(EndPlace { Centre, Rim(clock), Bolt(number) });
canonical_variants!(CarrierRef { Chassis, Carrier(name) });
canonical_variants!(PlusMinus { Length(length), Angle(angle) });
canonical_variants!(Along { Line(line), Plumb { setup } });
canonical_variants!(RunEnd { End(name), Port { component, port } });
canonical_variants!(CarrierKind { Engine(motion), Wheel(motion), Axle(motion), Hung { sway } });
canonical_variants!(ReadingKind {
    Tape { from, to, reads, burnt, holes, sides },
    Height { of, setup, reads },
    Plumb { from, to, setup, reads },
    Offset { from, to, along, reads },
    Symmetry { left, right },
    Inclination { from, to, setup, reads },
    Bearing { from, to, base, setup, reads },
    Face { end, clock, setup, reads },
});
canonical_variants!(BodyKind {
    Rail { from, to, edge, width, height },
    Tube { from, to, touched, diameter },
    Tyre { hub, marking, side, inboard, bulge },
    Tank { corners, depth, depth_goes },
    Box { corner, opposite },
    Capsule { from, to, diameter },
    Cylinder { from, to, diameter },
    Sphere { at, diameter },
    Outline { corners, depth, depth_goes },
    HalfSpace { through, keep_out },
    Ground { setup },
    Scan { file, unit, noise, fit_scale, places },
});

impl Canonical for Volume {
    fn canonical(&self, into: &mut CanonicalHasher) {
        into.number(self.litres());
    }
}

impl Canonical for Power {
    fn canonical(&self, into: &mut CanonicalHasher) {
        into.number(self.kw());
    }
}

impl Canonical for RotationSpeed {
    fn canonical(&self, into: &mut CanonicalHasher) {
        into.number(self.rev_per_minute());
    }
}
