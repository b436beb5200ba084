// Written from crates/tubewright-page/src/api.rs by its test `types`; not by hand.

export type View = { 
/**
 * Names the texts that all of this was computed from; changes whenever one of them does.
 */
revision: string, 
/**
 * Names everything that is derived too: the ways found and the one that is shown.
 */
version: string, 
/**
 * `mm` or `in`: the unit that the build is written in.
 */
units: string, 
/**
 * Name of the build.
 */
name: string, 
/**
 * The build's own note.
 */
note: string | null, 
/**
 * What is wrong in the files, each as the command line shows it.
 */
problems: Array<FileProblem>, 
/**
 * What each job still lacks.
 */
missing: Array<JobLacks>, 
/**
 * The readings and what they give.
 */
measure: MeasureView, 
/**
 * What is in the way.
 */
bodies: Array<BodyView>, 
/**
 * The routes.
 */
route: RouteView, 
/**
 * What happened to the steel, oldest first.
 */
record: Array<RecordEntry>, 
/**
 * What has names in the files, for the forms: each list with the names in it.
 */
names: { [key in string]: Array<string> }, 
/**
 * What can be taken back, newest last; empty when nothing can.
 */
canUndo: string | null, 
/**
 * What can be done again.
 */
canRedo: string | null, };

export type SampleView = { 
/**
 * Its name in the address: `demo/NAME/`.
 */
name: string, 
/**
 * One line.
 */
title: string, };

export type Plan = { 
/**
 * Which version of the view it belongs to.
 */
version: string, 
/**
 * The list to buy; none before there is a route.
 */
buy: BuyView | null, 
/**
 * Why there is no list, when there is a route.
 */
buyProblem: string | null, 
/**
 * One card for each stock item that is cut.
 */
cards: Array<CardView>, 
/**
 * How each spoiled piece is made again.
 */
remakes: Array<RemakeView>, 
/**
 * What is cut already, when the cards hold only what is still to be cut.
 */
made: Array<MadeView>, 
/**
 * Clock of each part to the one before it, in the order of flow.
 */
clocks: Array<ClockView>, 
/**
 * Roll of ovals and boxes.
 */
rolls: Array<RollView>, 
/**
 * Every check.
 */
prove: ProveView, };

export type Counter = { 
/**
 * Which version of the view it belongs to.
 */
version: string, 
/**
 * Single lines first, then the dearest pairs.
 */
substitutes: Array<SubstituteView>, 
/**
 * Why there are none.
 */
trouble: string | null, 
/**
 * Parts to look for second-hand, with what to check before paying.
 */
wanted: Array<WantedView>, };

export type SubstituteView = { 
/**
 * What is out.
 */
out: Array<string>, 
/**
 * What to buy in its place.
 */
more: Array<string>, 
/**
 * What is then not needed.
 */
less: Array<string>, 
/**
 * What it costs more or less, welds counted.
 */
difference: string, 
/**
 * Whether it is the better list though nothing is out.
 */
isCheaper: boolean, 
/**
 * All together then.
 */
price: string, 
/**
 * Pieces that cannot be made then.
 */
missing: Array<string>, };

export type WantedView = { 
/**
 * The item.
 */
item: string, 
/**
 * How many.
 */
count: number, 
/**
 * What for.
 */
parts: Array<string>, 
/**
 * What to check before paying.
 */
checks: Array<string>, };

export type WayFigures = { 
/**
 * Price of what is bought, with tax and delivery.
 */
price: string | null, 
/**
 * Pieces that nothing makes.
 */
missing: number, 
/**
 * Welds.
 */
welds: number | null, 
/**
 * Time for welds and cuts, hours.
 */
hours: number | null, 
/**
 * What it costs by its cutting plan, all counted, in the shop's money-like units.
 */
costAsCut: number | null, 
/**
 * Mass of tube and components, kg.
 */
mass: number, 
/**
 * Components whose mass nobody wrote down: not in it.
 */
withoutMass: Array<string>, 
/**
 * The tightest gap but that to the ground.
 */
tightest: GapView | null, 
/**
 * The gap to the ground.
 */
ground: GapView | null, 
/**
 * What it would change of the chosen plan; none when nothing was chosen.
 */
offer: Array<string> | null, };

export type GapView = { 
/**
 * Between what and what.
 */
subject: string, 
/**
 * The gap, mm.
 */
gap: number, 
/**
 * ± (19 in 20), mm.
 */
plusMinus: number | null, 
/**
 * What it must be, mm.
 */
wanted: number, 
/**
 * Where, in words.
 */
place: string, 
/**
 * Where, mm.
 */
at: [number, number, number], };

export type FitView = { 
/**
 * Which version of the view it belongs to.
 */
version: string, 
/**
 * What is done before the first step. Lengths in mm.
 */
before: Array<string>, 
/**
 * The steps in the order of tacking.
 */
steps: Array<FitStepView>, 
/**
 * Stretches that nothing can close.
 */
unclosed: Array<string>, 
/**
 * Where the sensors' bungs go, in words. Lengths in mm.
 */
bungs: Array<string>, 
/**
 * How the runs hang.
 */
hung: Array<HungView>, 
/**
 * What the welds ask for, by run.
 */
welds: Array<WeldView>, 
/**
 * Hazards.
 */
cautions: Array<string>, 
/**
 * Why there is no sheet.
 */
trouble: string | null, 
/**
 * True when the plan is chosen, so that joints have marks that stay.
 */
isChosen: boolean, };

export type HangerView = { 
/**
 * Its mark.
 */
mark: string, 
/**
 * Where it is, in words. Lengths in mm.
 */
place: string, 
/**
 * What its rubber carries, N: an estimate.
 */
newton: number, };

export type HungView = { 
/**
 * Their names.
 */
runs: string, 
/**
 * Why no places are told.
 */
trouble: string | null, 
/**
 * True when every rubber is within its load and nothing sinks too far.
 */
isWithin: boolean, 
/**
 * Mass behind the flex, kg.
 */
kg: number | null, 
/**
 * How far the place that sinks most does, mm.
 */
sag: number | null, 
/**
 * The hangers, upstream first.
 */
hangers: Array<HangerView>, };

export type TrimView = { 
/**
 * What is left longer and where: *left 6 mm longer at its upstream end*. Lengths in mm.
 */
words: string, 
/**
 * What its item has no steel for and what to do then. Lengths in mm.
 */
lack: string | null, };

export type FitStepView = { 
/**
 * From 1.
 */
number: number, 
/**
 * The run.
 */
run: string, 
/**
 * The pieces.
 */
marks: Array<string>, 
/**
 * What is done, in words.
 */
act: string, 
/**
 * The joint that it makes.
 */
makes: string, 
/**
 * How much longer a closing piece is left until the gap is measured.
 */
trim: TrimView | null, 
/**
 * How the joint is held, where the run meets the car there and is not welded to it.
 */
held: string | null, 
/**
 * The distances that prove it.
 */
checks: Array<JointCheckView>, };

export type JointCheckView = { 
/**
 * The joint.
 */
joint: string, 
/**
 * The distances.
 */
distances: Array<CheckDistanceView>, 
/**
 * How the plan has its face slope toward twelve and toward three o'clock, degrees up from level with the
 * car level.
 */
slopes: [number, number] | null, 
/**
 * In which direction they leave the joint loose, and by how much (19 in 20, mm), when they do.
 */
loose: [string, number] | null, 
/**
 * What to do where the distances do not hold the joint, lengths in mm.
 */
advice: string | null, 
/**
 * Each may be off by this, mm; negative when a gap is lost even with tapes that read true.
 */
tolerance: number, 
/**
 * What sets it.
 */
toleranceBy: string | null, 
/**
 * ± of the joint by the pieces alone, mm.
 */
plusMinusBefore: number, 
/**
 * ± when the distances are kept to, mm.
 */
plusMinusAfter: number, 
/**
 * What would do when the tolerance is negative.
 */
better: Array<string>, 
/**
 * Why there are fewer distances than are wanted: then it is not checked.
 */
tooFew: string | null, };

export type CheckDistanceView = { 
/**
 * From this mark.
 */
mark: string, 
/**
 * To this hour on the rim.
 */
hour: number, 
/**
 * What the tape should say, mm.
 */
reads: number, };

export type WeldView = { 
/**
 * The run.
 */
run: string, 
/**
 * Both materials.
 */
materials: string, 
/**
 * The filler and why.
 */
filler: string, 
/**
 * Where to start with the current, gap, step and wire, in words.
 */
settings: string, 
/**
 * What to mind.
 */
minds: Array<string>, 
/**
 * How to purge; none where nothing is purged.
 */
purge: string | null, };

export type JointView = { 
/**
 * Its mark.
 */
joint: string, 
/**
 * From the plan to where it is: rearwards, right, up, mm.
 */
off: [number, number, number], 
/**
 * ± of each, mm.
 */
plusMinus: [number, number, number], 
/**
 * How far it points off, degrees.
 */
lean: number, 
/**
 * How far it is turned about its own line, degrees.
 */
roll: number, 
/**
 * How that is known.
 */
by: string, 
/**
 * Which way its tapes leave it loose, and the one line to add; none when they hold it.
 */
loose: string | null, 
/**
 * Its readings.
 */
readings: Array<TapeSeenView>, 
/**
 * How to go on.
 */
offers: Array<OfferView>, 
/**
 * Why there is nothing to choose from, where there is not.
 */
whyNone: string, };

export type TapeSeenView = { 
/**
 * From which mark.
 */
from: string, 
/**
 * Hour on the rim; none for the centre.
 */
hour: number | null, 
/**
 * What the tape says, mm.
 */
reads: number, 
/**
 * What it would say as planned, mm.
 */
planned: number, 
/**
 * What is left over against where the joint was found, mm.
 */
leftOver: number, 
/**
 * Whether it stands out.
 */
isDoubtful: boolean, };

export type OfferView = { 
/**
 * From 1.
 */
number: number, 
/**
 * What it changes, in words.
 */
what: string, 
/**
 * Whether it arrives, keeps every gap and can be made.
 */
isGood: boolean, 
/**
 * How far off it arrives, mm.
 */
arrivesOff: number, 
/**
 * ± of that, mm.
 */
arrivesPlusMinus: number, 
/**
 * How far off in direction, degrees.
 */
arrivesTurn: number, 
/**
 * The least room of any gap over what it must have, ± counted, mm.
 */
leastRoom: number | null, 
/**
 * Gaps that fail.
 */
failing: Array<string>, 
/**
 * The changes.
 */
changes: Array<string>, 
/**
 * Cut steel that is lost.
 */
lost: Array<string>, 
/**
 * Pieces that go to the saw again.
 */
recut: Array<string>, 
/**
 * What is still to be bought, and how much dearer that is.
 */
price: string | null, 
/**
 * Pieces that cannot be made.
 */
missing: Array<string>, };

export type LineView = { 
/**
 * One place.
 */
from: string, 
/**
 * The other.
 */
to: string, 
/**
 * True when its reading is doubtful.
 */
isDoubtful: boolean, };

export type TakeView = { 
/**
 * Tape, height or plumb.
 */
kind: TakeKind, 
/**
 * From here; for a height, of this.
 */
from: SpotView, 
/**
 * To here; none for a height.
 */
to: SpotView | null, 
/**
 * How the car stands; none for a tape.
 */
setup: string | null, };

export type TakeKind = "tape" | "height" | "plumb";

export type SpotView = { 
/**
 * The mark, point or end.
 */
name: string, 
/**
 * Clock mark on the rim of an end, hours; none for its centre, or for a mark or point.
 */
rim: number | null, };

export type SolidView = { 
/**
 * Its name.
 */
name: string, 
/**
 * Its class in words.
 */
class: string, 
/**
 * Gap that runs keep from it, mm.
 */
gap: number, 
/**
 * Its shapes at rest.
 */
shapes: Array<ShapeView>, 
/**
 * How it moves, nearest to the body first.
 */
freedoms: Array<FreedomView>, };

export type ShapeView = { "kind": "box", 
/**
 * Centre.
 */
centre: [number, number, number], 
/**
 * Three directions.
 */
axes: [[number, number, number], [number, number, number], [number, number, number]], 
/**
 * Half the size along each.
 */
half: [number, number, number], } | { "kind": "bar", 
/**
 * One end of its axis.
 */
a: [number, number, number], 
/**
 * The other.
 */
b: [number, number, number], 
/**
 * Radius.
 */
radius: number, 
/**
 * True when its ends are round.
 */
isRound: boolean, } | { "kind": "ball", 
/**
 * Centre.
 */
centre: [number, number, number], 
/**
 * Radius.
 */
radius: number, } | { "kind": "prism", 
/**
 * Corners of one face, in order.
 */
corners: Array<[number, number, number]>, 
/**
 * From there to the other face.
 */
depth: [number, number, number], } | { "kind": "plane", 
/**
 * A place on it.
 */
at: [number, number, number], 
/**
 * Out of what is taken.
 */
outward: [number, number, number], } | { "kind": "triangles", 
/**
 * The coordinates.
 */
corners: Array<number>, 
/**
 * How many there are in the scan.
 */
of: number, } | { "kind": "places", 
/**
 * Three coordinates each, one after the other.
 */
places: Array<number>, };

export type FreedomView = { "kind": "shift", 
/**
 * The direction.
 */
along: [number, number, number], 
/**
 * Least and most, mm.
 */
range: [number, number], } | { "kind": "turn", 
/**
 * A place on the axis.
 */
at: [number, number, number], 
/**
 * Its direction.
 */
axis: [number, number, number], 
/**
 * Least and most, degrees.
 */
range: [number, number], } | { "kind": "sway", 
/**
 * The distance, mm.
 */
most: number, };

export type JointSlope = { 
/**
 * From the centre toward this clock mark, hours.
 */
toward: number, 
/**
 * How the car stands.
 */
setup: string, 
/**
 * As the angle finder reads, up from level.
 */
reads: string, };

export type JointTape = { 
/**
 * The mark.
 */
from: string, 
/**
 * Clock of the scribed place, hours.
 */
rim: number, 
/**
 * As the tape reads.
 */
reads: string, };

export type Field = { 
/**
 * The key.
 */
key: string, 
/**
 * The value.
 */
value: Value, };

export type Value = boolean | number | number | string | Array<Value> | { [key in string]: Value };

export type FileProblem = { 
/**
 * True when nothing is computed before it is mended.
 */
isError: boolean, 
/**
 * File, line, column and all words.
 */
words: string, };

export type JobLacks = { 
/**
 * The job.
 */
job: string, 
/**
 * What it lacks.
 */
lacks: Array<string>, };

export type MeasureView = { 
/**
 * Every reading in the order of its number.
 */
readings: Array<ReadingView>, 
/**
 * Every mark, point and end.
 */
places: Array<PlaceView>, 
/**
 * Names of the set-ups, with how the car stands.
 */
setups: Array<SetupView>, 
/**
 * Readings to spare.
 */
spare: number, 
/**
 * Whether the readings agree as well as their ± says; none without any to spare.
 */
agree: boolean | null, 
/**
 * Why there are no places at all.
 */
trouble: string | null, 
/**
 * The readings to take next, most useful first.
 */
next: Array<NextReading>, 
/**
 * What the readings do not tell yet, in words.
 */
lacks: Array<string>, 
/**
 * Lines of the sketch: two places that a reading joins.
 */
lines: Array<LineView>, };

export type SetupView = { 
/**
 * Its name.
 */
name: string, 
/**
 * True when ground clearance can be told from it.
 */
isOnWheels: boolean, };

export type ReadingView = { 
/**
 * Its number, given once.
 */
number: number, 
/**
 * What was measured: *A left to B right*.
 */
what: string, 
/**
 * As it was typed; none for a symmetrical pair.
 */
reads: string | null, 
/**
 * How far it is off what all others say, mm or degrees; none when it takes no part.
 */
off: number | null, 
/**
 * `mm` or `°`.
 */
unit: string, 
/**
 * What it is corrected with.
 */
pad: PadKind, 
/**
 * True when the person dropped it.
 */
isDropped: boolean, 
/**
 * True when nothing else checks it.
 */
isUnchecked: boolean, 
/**
 * Why it is doubtful and what it probably was.
 */
doubt: string | null, 
/**
 * What it probably was, as it would be typed.
 */
wasProbably: string | null, };

export type PadKind = "length" | "ahead" | "higher" | "slope" | "turn" | "none";

export type ScanView = { 
/**
 * By what name a body names it.
 */
file: string, 
/**
 * Triangles; none for a scan of points alone.
 */
triangles: number, 
/**
 * Points.
 */
points: number, 
/**
 * Length, width and height in the file's own axes and units: what one unit is the file does not say.
 */
size: [number, number, number], 
/**
 * What was dropped on reading.
 */
warnings: Array<string>, };

export type PlaceView = { 
/**
 * Its name.
 */
name: string, 
/**
 * Mark, point or end.
 */
kind: PlaceKind, 
/**
 * Where it is in words.
 */
place: string | null, 
/**
 * x rearwards, y right, z up, mm; none while the readings do not tell.
 */
at: [number, number, number] | null, 
/**
 * ± (19 in 20), mm.
 */
plusMinus: number | null, 
/**
 * ± of an end's direction, degrees.
 */
turnPlusMinus: number | null, };

export type PlaceKind = "mark" | "point" | "end";

export type NextReading = { 
/**
 * What to measure.
 */
what: string, 
/**
 * What it is for: what gets surer by it, or which reading it checks.
 */
why: string, 
/**
 * What the tape will show, about, mm.
 */
shows: number | null, 
/**
 * How to take it, when the page has a form for it.
 */
take: TakeView | null, };

export type BodyView = { 
/**
 * Its name.
 */
name: string, 
/**
 * Its class in words.
 */
class: string, 
/**
 * Gap that runs keep from it, mm.
 */
gap: number, 
/**
 * True when it moves.
 */
isMoving: boolean, 
/**
 * ± (19 in 20) of where it is, mm.
 */
plusMinus: number | null, 
/**
 * Why it is not there.
 */
missing: string | null, };

export type RouteView = { 
/**
 * While solving: work done, work to do and the best cost so far.
 */
solving: Solving | null, 
/**
 * The ways that were found: those without a fault first, then the cheaper.
 */
ways: Array<WayView>, 
/**
 * Which of them is shown, bought and cut.
 */
shown: number, 
/**
 * Why there are none, or what to know about them.
 */
words: string | null, 
/**
 * What they are older than.
 */
stale: string | null, 
/**
 * The way that was chosen and is bought, cut and fitted, with the date.
 */
chosen: string | null, 
/**
 * Its runs, else those of the way that is shown.
 */
runs: Array<RunView>, 
/**
 * Where runs are pinned by hand.
 */
pins: Array<PinView>, 
/**
 * Bodies that have sides, with those that no run may pass.
 */
sides: Array<SidesView>, 
/**
 * Runs that could not be put to the solver, each with its reason.
 */
leftOut: Array<string>, };

export type Solving = { 
/**
 * Work units done.
 */
done: number, 
/**
 * Work units to do.
 */
of: number, 
/**
 * Best cost so far.
 */
best: number | null, };

export type WayView = { 
/**
 * What it does.
 */
name: string, 
/**
 * Cost in the shop's units of money.
 */
cost: number, 
/**
 * No way costs less.
 */
lowerBound: number, 
/**
 * Tube along its centre line, mm.
 */
length: number, 
/**
 * Sum of bend angles, degrees.
 */
bends: number, 
/**
 * How far its ends are off, mm.
 */
endsOff: number, 
/**
 * How many bends it has.
 */
bendCount: number, };

export type RunView = { 
/**
 * Its name.
 */
name: string, 
/**
 * Name of its tube.
 */
tube: string, 
/**
 * The pieces in the order of flow.
 */
pieces: Array<PieceView>, 
/**
 * What of it can be taken on the drawing.
 */
grips: Array<GripView>, 
/**
 * The last joint.
 */
lastJoint: string, 
/**
 * What is special at its ends: where a tip with room lies, how an outlet is sawn off. Lengths in mm.
 */
atEnds: Array<string>, 
/**
 * How far the pieces end from where they should, mm.
 */
endError: number, 
/**
 * The same for the direction, degrees.
 */
endErrorTurn: number, };

export type GripView = { 
/**
 * Mark of the joint, or of the bend.
 */
mark: string, 
/**
 * True for a joint, false for the middle of a bend.
 */
isJoint: boolean, 
/**
 * Where it is, mm.
 */
at: [number, number, number], 
/**
 * Whether it can be moved: it is no end, no part where runs meet and not tacked.
 */
isFree: boolean, };

export type DragAsked = { 
/**
 * The run.
 */
run: string, 
/**
 * Mark of the joint or the bend.
 */
mark: string, 
/**
 * True for a joint.
 */
isJoint: boolean, 
/**
 * Where to, mm.
 */
to: [number, number, number], };

export type DragView = { 
/**
 * Where what was taken came, mm: as near as the run gives.
 */
at: [number, number, number], 
/**
 * Its pieces.
 */
line: Array<StretchView>, 
/**
 * Its tightest gaps, the tightest first.
 */
gaps: Array<GapView>, 
/**
 * How many of all its gaps are too small with their ± taken off.
 */
failing: number, 
/**
 * How many gaps could not be checked.
 */
unchecked: number, };

export type StretchView = { 
/**
 * Places along its centre line, mm.
 */
points: Array<[number, number, number]>, 
/**
 * Half its width, mm.
 */
radius: number, };

export type LaidViewView = { 
/**
 * side, above or behind.
 */
view: string, 
/**
 * Width and height of the paper, mm.
 */
paper: [number, number], 
/**
 * Where the car's origin lies on the paper: from the left, from above, mm.
 */
origin: [number, number], 
/**
 * Paper mm per mm of the car.
 */
scale: number, 
/**
 * The car's direction that points to the right.
 */
right: [number, number, number], 
/**
 * The car's direction that points up.
 */
up: [number, number, number], };

export type PinView = { 
/**
 * The run.
 */
run: string, 
/**
 * Its place in the run's list, from 0.
 */
number: number, 
/**
 * True when it holds a joint.
 */
isJoint: boolean, 
/**
 * Where it is, in words; lengths in mm.
 */
words: string, 
/**
 * The middle of its room, mm; none while its mark is not found.
 */
at: [number, number, number] | null, 
/**
 * How far its room reaches each way, mm.
 */
within: number, 
/**
 * How far the run that is shown stays away from it, mm; none when there is no run.
 */
away: number | null, };

export type SidesView = { 
/**
 * The body.
 */
body: string, 
/**
 * Closed sides: front, rear, left, right, above, below.
 */
closed: Array<string>, 
/**
 * True when they are closed without a word in the file: a floor, above which the cabin is.
 */
isByItself: boolean, };

export type PartView = { 
/**
 * Name of the component.
 */
component: string, 
/**
 * What it is: catalyst, resonator, ….
 */
kind: string, 
/**
 * Runs that go through it.
 */
runs: Array<string>, 
/**
 * All items of that kind, the one that it is now first.
 */
choices: Array<PartChoice>, 
/**
 * Whether it stands in the plan that was chosen, so that a change is another plan.
 */
isChosen: boolean, };

export type PartChoice = { 
/**
 * The item.
 */
item: string, 
/**
 * Whether the part is this item now.
 */
isNow: boolean, 
/**
 * Whole length, mm.
 */
length: number, 
/**
 * Necks at inlet and outlet, mm.
 */
necks: [number, number], 
/**
 * Width and height of its body, mm; none for a part no thicker than its tube.
 */
body: [number, number] | null, 
/**
 * round, oval or box.
 */
section: string, 
/**
 * Outside diameter of its tube, mm; none when it is not known.
 */
tube: number | null, 
/**
 * Mass, kg.
 */
mass: number | null, 
/**
 * Cheapest price of one, with tax; none when nobody offers it.
 */
price: string | null, 
/**
 * How many lie on hand.
 */
onHand: number, 
/**
 * Why it does not fit in the place of the part; none when it does.
 */
unfit: string | null, };

export type PieceView = { 
/**
 * Its mark.
 */
mark: string, 
/**
 * Mark of the joint before it.
 */
joint: string, 
/**
 * What it is.
 */
what: string, 
/**
 * Length, mm, of a straight or component.
 */
length: number | null, 
/**
 * Bend angle, degrees.
 */
angle: number | null, 
/**
 * Clock of the bend looking downstream, degrees.
 */
clock: number | null, 
/**
 * Where it ends, mm.
 */
end: [number, number, number], };

export type BuyView = { 
/**
 * For which plan: chosen with its date, or the way that is shown.
 */
whatFor: string, 
/**
 * True when that plan is chosen.
 */
isChosen: boolean, 
/**
 * The lines.
 */
lines: Array<BuyLine>, 
/**
 * What changed since something was out; none when nothing was.
 */
plannedAnew: Array<string> | null, 
/**
 * Delivery by supplier.
 */
deliveries: Array<DeliveryLine>, 
/**
 * All together.
 */
price: string, 
/**
 * How sure that is the cheapest.
 */
proof: string, 
/**
 * Welds.
 */
welds: number, 
/**
 * What was bought so far that the list does not ask for.
 */
surplus: Array<string>, 
/**
 * Taken from the shelf.
 */
onHand: Array<string>, 
/**
 * Pieces that cannot be made, with the reason.
 */
missing: Array<string>, };

export type BuyLine = { 
/**
 * The item.
 */
item: string, 
/**
 * From whom.
 */
supplier: string, 
/**
 * How many.
 */
quantity: number, 
/**
 * How many of them were got.
 */
got: number, 
/**
 * Price of one.
 */
each: string, 
/**
 * Price of all.
 */
together: string, 
/**
 * True when the supplier was out of it.
 */
isOut: boolean, };

export type DeliveryLine = { 
/**
 * The supplier.
 */
supplier: string, 
/**
 * The charge.
 */
charge: string, };

export type CardView = { 
/**
 * The item it is cut from.
 */
item: string, 
/**
 * True when it lies on the shelf.
 */
isOnHand: boolean, 
/**
 * Number among those of the same name.
 */
number: number, 
/**
 * Its shape in words, with lengths in millimetres.
 */
stock: string, 
/**
 * The same with lengths in inches.
 */
stockInInches: string, 
/**
 * The parts from end A on, each by the marks of the pieces it serves.
 */
parts: Array<Array<string>>, 
/**
 * The cuts in the order of sawing.
 */
cuts: Array<CutView>, 
/**
 * The same where parts that close a stretch are left longer, marks as a metric tape shows them; none
 * where the card has no such part.
 */
closing: ClosingView | null, 
/**
 * The same with marks as a tape in inches shows them.
 */
closingInInches: ClosingView | null, 
/**
 * Number of its picture.
 */
picture: number, 
/**
 * What this saw should not do.
 */
warnings: Array<string>, };

export type ClosingView = { 
/**
 * What that means at the saw.
 */
words: string, 
/**
 * The cuts with their marks so that the parts come out longer; none where the marks stay and the
 * words say what to do.
 */
cuts: Array<CutView> | null, };

export type CutView = { 
/**
 * In the order of sawing.
 */
number: number, 
/**
 * The end that the tape starts from: A or B.
 */
from: string, 
/**
 * Along the outside, mm.
 */
outside: number, 
/**
 * Along the inside, mm.
 */
inside: number, 
/**
 * Along the side, mm.
 */
side: number, 
/**
 * Not sawn but dressed down to the ring: up to this comes off, mm; none where the saw cuts.
 */
dress: number | null, 
/**
 * Saw angle from square, degrees.
 */
saw: number, 
/**
 * The end toward which the kerf goes.
 */
kerfToward: string, 
/**
 * The pieces whose face it makes.
 */
faces: Array<string>, };

export type ClockView = { 
/**
 * The run.
 */
run: string, 
/**
 * Marks of the pieces that the part serves.
 */
part: Array<string>, 
/**
 * Clockwise looking downstream, degrees.
 */
clock: number, 
/**
 * The same round the outside, mm.
 */
round: number, 
/**
 * True when the part is turned end for end.
 */
isReversed: boolean, };

export type RollView = { 
/**
 * The run.
 */
run: string, 
/**
 * Mark of the part.
 */
mark: string, 
/**
 * The component.
 */
component: string, 
/**
 * From the witness line of the part before it, clockwise looking downstream, degrees.
 */
clock: number, 
/**
 * The same round the outside of its neck, mm.
 */
round: number, 
/**
 * From lying flat in the car, degrees.
 */
fromFlat: number, };

export type MadeView = { 
/**
 * The item.
 */
item: string, 
/**
 * Number among those of the same name.
 */
number: number, 
/**
 * Its parts, each by the marks of the pieces it serves.
 */
parts: Array<Array<string>>, };

export type RemakeView = { 
/**
 * Its mark.
 */
piece: string, 
/**
 * What it is cut from, cheapest, as a sentence; none when nothing on the shelf or for sale makes it.
 */
from: string | null, 
/**
 * What is still to be bought and by how much that is more than before, as a sentence.
 */
buying: string, 
/**
 * Pieces that cannot be made.
 */
missing: Array<string>, 
/**
 * Why nothing was worked out.
 */
trouble: string | null, 
/**
 * How what is left of it is told.
 */
leftAs: LeftAs, 
/**
 * The name on the shelf of what is left of it, once that was said.
 */
onShelf: string | null, };

export type LeftAs = "length" | "angle" | "unknown";

export type ErrandsAsked = { 
/**
 * When the shop is left: `8:00`.
 */
leave: string, 
/**
 * The stops.
 */
stops: Array<StopAsked>, 
/**
 * Minutes by road; the workshop is called `shop`.
 */
roads: Array<RoadAsked>, };

export type StopAsked = { 
/**
 * Its name.
 */
name: string, 
/**
 * When it opens: `8:00`.
 */
opens: string, 
/**
 * When it closes.
 */
closes: string, 
/**
 * Minutes there.
 */
minutes: number, };

export type RoadAsked = { 
/**
 * One end.
 */
a: string, 
/**
 * The other.
 */
b: string, 
/**
 * Minutes.
 */
minutes: number, };

export type ErrandsView = { 
/**
 * When the shop is left.
 */
leaves: string, 
/**
 * The stops in order.
 */
stops: Array<StopView>, 
/**
 * When the shop is reached again.
 */
back: string, 
/**
 * Suppliers that the plan buys from and that are no stop.
 */
notVisited: Array<string>, };

export type StopView = { 
/**
 * Its name.
 */
name: string, 
/**
 * When it is done with.
 */
done: string, };

export type MakeAsked = { 
/**
 * Price with tax and delivery.
 */
price: number, 
/**
 * Minutes on the road for it, there and back.
 */
drive: number, 
/**
 * Minutes of waiting that stop the job.
 */
wait: number, 
/**
 * Minutes to make it, set-up counted.
 */
make: number, 
/**
 * Material for making it.
 */
material: number, };

export type MakeView = { 
/**
 * `buy` or `make`.
 */
cheaper: string, 
/**
 * Both sums, where they meet and the rate, as sentences.
 */
words: string, };

export type TemplatesView = { 
/**
 * Which version of the view it belongs to.
 */
version: string, 
/**
 * Which cuts want a template and which do not; what cannot be made by hand, and why.
 */
words: Array<string>, 
/**
 * Why there are none.
 */
trouble: string | null, 
/**
 * Every template.
 */
templates: Array<TemplateView>, };

export type TemplateView = { 
/**
 * Number of it, from 0.
 */
number: number, 
/**
 * Name of its file, without what follows the dot.
 */
file: string, 
/**
 * What it is.
 */
title: string, 
/**
 * How it is laid round the tube.
 */
lay: string, 
/**
 * Width of the drawing in one piece, mm.
 */
width: number, 
/**
 * Its height, mm.
 */
height: number, 
/**
 * Pages of the paper asked for.
 */
pages: number, };

export type ProveView = { 
/**
 * How many fail.
 */
fail: number, 
/**
 * How many are not checked.
 */
notChecked: number, 
/**
 * How many pass.
 */
pass: number, 
/**
 * The findings, worst first.
 */
findings: Array<FindingView>, };

export type StateView = "fail" | "notChecked" | "pass" | "doesNotApply";

export type FindingView = { 
/**
 * Its state.
 */
state: StateView, 
/**
 * The rule in words.
 */
title: string, 
/**
 * Where the limit comes from.
 */
source: string, 
/**
 * What was judged.
 */
subject: string, 
/**
 * The number that was found.
 */
value: number | null, 
/**
 * Its ± (19 in 20).
 */
plusMinus: number | null, 
/**
 * `mm`, `°` or nothing.
 */
unit: string, 
/**
 * True when `limit` is the least that is allowed, false when the most.
 */
isLeast: boolean, 
/**
 * The limit.
 */
limit: number | null, 
/**
 * Where it is, in words.
 */
place: string | null, 
/**
 * Where it is in the car, mm.
 */
at: [number, number, number] | null, 
/**
 * What to do.
 */
advice: string, };

export type RecordEntry = { 
/**
 * Date.
 */
on: string, 
/**
 * What happened, in words.
 */
words: string, 
/**
 * The mark of the piece or joint it is about, or the name of the item.
 */
about: string, 
/**
 * The kind of entry: got, out, cut, spoiled, tacked, welded, checked, chosen, ….
 */
what: string, };

export type Deed = { "do": "addTape", 
/**
 * From this place.
 */
from: Spot, 
/**
 * To this place.
 */
to: Spot, 
/**
 * As the tape reads.
 */
reads: string, } | { "do": "addHeight", 
/**
 * Of this place.
 */
of: Spot, 
/**
 * How the car stands.
 */
setup: string, 
/**
 * As the tape reads.
 */
reads: string, } | { "do": "addPlumb", 
/**
 * From below this place.
 */
from: Spot, 
/**
 * To below this place.
 */
to: Spot, 
/**
 * How the car stands.
 */
setup: string, 
/**
 * As the tape reads.
 */
reads: string, } | { "do": "addOffset", 
/**
 * From this place.
 */
from: Spot, 
/**
 * To this place.
 */
to: Spot, 
/**
 * Along the line from the first of these places to the second; none for straight up.
 */
along: [string, string] | null, 
/**
 * How the car stands, for straight up.
 */
setup: string | null, 
/**
 * As the tape reads; below zero when it lies the other way.
 */
reads: string, } | { "do": "addSlope", 
/**
 * From this place.
 */
from: Spot, 
/**
 * To this place.
 */
to: Spot, 
/**
 * How the car stands.
 */
setup: string, 
/**
 * As the angle finder reads; below zero when it falls.
 */
reads: string, } | { "do": "addBearing", 
/**
 * From this place.
 */
from: Spot, 
/**
 * To this place.
 */
to: Spot, 
/**
 * Start and end of the line that it is turned from.
 */
base: [string, string], 
/**
 * How the car stands.
 */
setup: string, 
/**
 * The angle, clockwise; below zero against the clock.
 */
reads: string, } | { "do": "addFace", 
/**
 * The end.
 */
end: string, 
/**
 * Clock mark, hours.
 */
toward: number, 
/**
 * How the car stands.
 */
setup: string, 
/**
 * As the angle finder reads; below zero when it falls.
 */
reads: string, } | { "do": "changeReading", 
/**
 * Its number.
 */
number: number, 
/**
 * What it said when the person began.
 */
was: string, 
/**
 * What it says now.
 */
reads: string, } | { "do": "dropReading", 
/**
 * Its number.
 */
number: number, 
/**
 * Whether it is dropped.
 */
dropped: boolean, } | { "do": "addMark", 
/**
 * Its name.
 */
name: string, 
/**
 * Where it is in words.
 */
place: string | null, 
/**
 * left, right or centre.
 */
side: string | null, } | { "do": "addPoint", 
/**
 * Its name.
 */
name: string, 
/**
 * Where it is in words.
 */
place: string | null, 
/**
 * left, right or centre.
 */
side: string | null, } | { "do": "addSetup", 
/**
 * Its name.
 */
name: string, 
/**
 * wheels, lift or stands.
 */
stance: string, } | { "do": "chooseFrame", 
/**
 * Where x and z are zero.
 */
origin: string, 
/**
 * Pairs of a left and a right place, front to rear.
 */
centreLine: Array<[string, string]>, 
/**
 * The set-up whose plumb line is z.
 */
level: string, } | { "do": "add", 
/**
 * The list.
 */
list: string, 
/**
 * Its keys.
 */
fields: Array<Field>, } | { "do": "set", 
/**
 * The list or table.
 */
list: string, 
/**
 * Name of the element; none for a table.
 */
name: string | null, 
/**
 * The key.
 */
key: string, 
/**
 * The value; none clears it.
 */
value: Value | null, } | { "do": "remove", 
/**
 * The list.
 */
list: string, 
/**
 * Its name; the number of a reading.
 */
name: string, } | { "do": "rename", 
/**
 * mark, point, body, end, run, ….
 */
kind: string, 
/**
 * Old name.
 */
from: string, 
/**
 * New name.
 */
to: string, } | { "do": "startStock", 
/**
 * Which demonstration.
 */
like: string, } | { "do": "acceptWay", 
/**
 * Date, year-month-day.
 */
on: string, 
/**
 * Its number on the page, from 0.
 */
way: number, 
/**
 * Its name, as it was looked at.
 */
name: string, } | { "do": "acceptOffer", 
/**
 * Date, year-month-day.
 */
on: string, 
/**
 * The joint.
 */
joint: string, 
/**
 * Number of the offer, from 1.
 */
number: number, 
/**
 * What it was, as it was looked at.
 */
what: string, } | { "do": "choose", 
/**
 * Date, year-month-day.
 */
on: string, 
/**
 * Its number on the page, from 0.
 */
way: number, 
/**
 * Its name, as it was looked at.
 */
name: string, } | { "do": "pin", 
/**
 * The run.
 */
run: string, 
/**
 * True when one of its joints is to lie there.
 */
isJoint: boolean, 
/**
 * Where, mm.
 */
at: [number, number, number], 
/**
 * How far from there its room reaches each way, as the shop writes it.
 */
within: string, } | { "do": "unpin", 
/**
 * The run.
 */
run: string, 
/**
 * Its place in the list, from 0.
 */
number: number, 
/**
 * Its words, as it was looked at.
 */
words: string, } | { "do": "closeSide", 
/**
 * The body.
 */
body: string, 
/**
 * front, rear, left, right, above or below.
 */
side: string, 
/**
 * Whether it is closed.
 */
isClosed: boolean, } | { "do": "shelveRest", 
/**
 * Its mark.
 */
piece: string, 
/**
 * A length of a straight, an angle of a bend.
 */
left: string, } | { "do": "happened", 
/**
 * Date, year-month-day.
 */
on: string, 
/**
 * What.
 */
what: Happening, };

export type Spot = { 
/**
 * The mark, point or end.
 */
name: string, 
/**
 * On an end: the clock mark of its rim, hours; none for its centre, or for a mark or point.
 */
rim: number | null, };

export type Happening = { "kind": "got", 
/**
 * The item.
 */
item: string, 
/**
 * From whom.
 */
supplier: string, 
/**
 * How many.
 */
count: number, } | { "kind": "out", 
/**
 * The item.
 */
item: string, 
/**
 * Who has none.
 */
supplier: string, } | { "kind": "cut", 
/**
 * Its mark.
 */
piece: string, 
/**
 * What it was cut from.
 */
from: string, } | { "kind": "spoiled", 
/**
 * Its mark.
 */
piece: string, } | { "kind": "otherSize", 
/**
 * The item that was wanted.
 */
item: string, 
/**
 * The item that was taken.
 */
taken: string, 
/**
 * How many.
 */
count: number, } | { "kind": "tacked", 
/**
 * Its mark.
 */
joint: string, 
/**
 * Distances as measured; none when nothing was taped.
 */
readings: Array<JointTape>, 
/**
 * Slopes of its face as the angle finder reads.
 */
slopes: Array<JointSlope>, } | { "kind": "welded", 
/**
 * Its mark.
 */
joint: string, } | { "kind": "checked", 
/**
 * Its mark.
 */
joint: string, };

export type Refusal = { 
/**
 * What is wrong and what to do, for the person.
 */
words: string, 
/**
 * What the value is now, when somebody else changed it meanwhile.
 */
now: string | null, };

export type News = { "event": "changed" } | { "event": "solving", 
/**
 * How far it is.
 */
progress: Solving, };
