//! STEP files by the automotive application protocol (ISO 10303-214), written by hand: exact
//! cylinders, tori and planes, one product for each solid, in one assembly.
//!
//! The text follows ISO 10303-21 (clear text encoding); entity names and their order of attributes
//! are from memory and judged by an outside kernel in the tests.

use core::fmt::Write as _;

use super::SolidError;
use super::pipe::shapes;
use super::topology::solid;
use crate::scene::Scene;
use tubewright_geometry::{Point, UnitVector};

/// What the head of the file says. All given by the caller.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct StepStamp {
    /// File name without folder.
    pub file_name: String,
    /// Date and time as ISO 8601 (`2026-03-14T12:00:00`).
    pub date_time: String,
    /// Hash of the plan.
    pub plan_hash: String,
}

/// Every piece of the runs as one or more named solids, in millimetres and the car's axes.
///
/// A piece of tube is hollow, with its end cuts; a bought part whose body is a cylinder on its tube
/// is one full body with its necks; of any other bought part only the tube is written; a crossover
/// is written arm by arm (arms overlap in its middle). Names: the mark, and the part's own name.
///
/// # Errors
/// [`SolidError`] for the first piece that has no sound shape, or when there is none.
pub fn to_step(scene: &Scene, stamp: &StepStamp) -> Result<String, SolidError> {
    let mut parts: Vec<Part<'_>> = Vec::new();
    for piece in scene.runs.iter().flat_map(|run| &run.pieces) {
        let found = shapes(piece)?;
        let many = found.len() > 1;
        for (i, shape) in found.into_iter().enumerate() {
            let mut name = piece.mark.clone();
            if let Some(own) = &piece.name {
                let _ = write!(name, " {own}");
            }
            if many {
                let _ = write!(name, " {} {}", piece.kind.part_word(), i + 1);
            }
            let own = name.clone();
            parts.push((name, Box::new(move |e| solid(e, &own, &shape))));
        }
    }
    if parts.is_empty() {
        return Err(SolidError::NothingToWrite);
    }
    Ok(assembly(&scene.title, stamp, &parts))
}

/// A part's name, and what writes its solid.
pub(crate) type Part<'a> = (String, Box<dyn Fn(&mut Entities) -> usize + 'a>);

/// A file with each part as a named product of one assembly; each writer returns its
/// MANIFOLD_SOLID_BREP.
pub(crate) fn assembly(title: &str, stamp: &StepStamp, parts: &[Part<'_>]) -> String {
    let mut e = Entities::default();
    let context = head_entities(&mut e);
    let origin = e.placement(Point::ORIGIN, UnitVector::Z, UnitVector::X);
    let whole = product(&mut e, &context, title);
    let whole_rep = e.add(&format!(
        "SHAPE_REPRESENTATION('',(#{origin}),#{})",
        context.geometric
    ));
    e.add(&format!(
        "SHAPE_DEFINITION_REPRESENTATION(#{},#{whole_rep})",
        whole.shape
    ));
    for (count, (name, write)) in (1..).zip(parts) {
        let brep = write(&mut e);
        let part = product(&mut e, &context, name);
        let rep = e.add(&format!(
            "ADVANCED_BREP_SHAPE_REPRESENTATION({},(#{origin},#{brep}),#{})",
            Entities::text(name),
            context.geometric
        ));
        e.add(&format!(
            "SHAPE_DEFINITION_REPRESENTATION(#{},#{rep})",
            part.shape
        ));
        place_in(
            &mut e,
            (&whole, whole_rep),
            (&part, rep),
            origin,
            name,
            count,
        );
    }
    let mut out = String::from("ISO-10303-21;\nHEADER;\n");
    let description = format!("Runs of {title}, plan {}", stamp.plan_hash);
    let _ = writeln!(
        out,
        "FILE_DESCRIPTION(({}),'2;1');",
        Entities::text(&description)
    );
    let _ = writeln!(
        out,
        "FILE_NAME({},{},(''),(''),'tubewright','tubewright','');",
        Entities::text(&stamp.file_name),
        Entities::text(&stamp.date_time)
    );
    out.push_str("FILE_SCHEMA(('AUTOMOTIVE_DESIGN { 1 0 10303 214 1 1 1 1 }'));\nENDSEC;\nDATA;\n");
    out.push_str(&e.text);
    out.push_str("ENDSEC;\nEND-ISO-10303-21;\n");
    out
}

struct Context {
    product: usize,
    design: usize,
    geometric: usize,
}

struct Product {
    definition: usize,
    shape: usize,
}

fn head_entities(e: &mut Entities) -> Context {
    let application =
        e.add("APPLICATION_CONTEXT('core data for automotive mechanical design processes')");
    e.add(&format!(
        "APPLICATION_PROTOCOL_DEFINITION('international standard','automotive_design',2000,#{application})"
    ));
    let product = e.add(&format!("PRODUCT_CONTEXT('',#{application},'mechanical')"));
    let design = e.add(&format!(
        "PRODUCT_DEFINITION_CONTEXT('part definition',#{application},'design')"
    ));
    let mm = e.add("(LENGTH_UNIT()NAMED_UNIT(*)SI_UNIT(.MILLI.,.METRE.))");
    let rad = e.add("(NAMED_UNIT(*)PLANE_ANGLE_UNIT()SI_UNIT($,.RADIAN.))");
    let sr = e.add("(NAMED_UNIT(*)SI_UNIT($,.STERADIAN.)SOLID_ANGLE_UNIT())");
    let near = e.add(&format!(
        "UNCERTAINTY_MEASURE_WITH_UNIT(LENGTH_MEASURE(1.E-06),#{mm},'distance_accuracy_value','confusion accuracy')"
    ));
    let geometric = e.add(&format!(
        "(GEOMETRIC_REPRESENTATION_CONTEXT(3)GLOBAL_UNCERTAINTY_ASSIGNED_CONTEXT((#{near}))\
         GLOBAL_UNIT_ASSIGNED_CONTEXT((#{mm},#{rad},#{sr}))REPRESENTATION_CONTEXT('car','3D'))"
    ));
    Context {
        product,
        design,
        geometric,
    }
}

fn product(e: &mut Entities, context: &Context, name: &str) -> Product {
    let name = Entities::text(name);
    let product = e.add(&format!("PRODUCT({name},{name},'',(#{}))", context.product));
    e.add(&format!(
        "PRODUCT_RELATED_PRODUCT_CATEGORY('part',$,(#{product}))"
    ));
    let formation = e.add(&format!("PRODUCT_DEFINITION_FORMATION('','',#{product})"));
    let definition = e.add(&format!(
        "PRODUCT_DEFINITION('design','',#{formation},#{})",
        context.design
    ));
    let shape = e.add(&format!("PRODUCT_DEFINITION_SHAPE('','',#{definition})"));
    Product { definition, shape }
}

/// The part in the assembly, where it is: all share the car's axes.
fn place_in(
    e: &mut Entities,
    (whole, whole_rep): (&Product, usize),
    (part, rep): (&Product, usize),
    origin: usize,
    name: &str,
    number: usize,
) {
    let name = Entities::text(name);
    let use_of = e.add(&format!(
        "NEXT_ASSEMBLY_USAGE_OCCURRENCE('{number}',{name},'',#{},#{},$)",
        whole.definition, part.definition
    ));
    let shape = e.add(&format!("PRODUCT_DEFINITION_SHAPE('','',#{use_of})"));
    let still = e.add(&format!(
        "ITEM_DEFINED_TRANSFORMATION('','',#{origin},#{origin})"
    ));
    let relation = e.add(&format!(
        "(REPRESENTATION_RELATIONSHIP('','',#{rep},#{whole_rep})\
         REPRESENTATION_RELATIONSHIP_WITH_TRANSFORMATION(#{still})SHAPE_REPRESENTATION_RELATIONSHIP())"
    ));
    e.add(&format!(
        "CONTEXT_DEPENDENT_SHAPE_REPRESENTATION(#{relation},#{shape})"
    ));
}

/// Numbered entities.
#[derive(Default)]
pub(crate) struct Entities {
    text: String,
    count: usize,
}

impl Entities {
    pub(crate) fn add(&mut self, body: &str) -> usize {
        self.count += 1;
        // Writing to a String cannot fail.
        let _ = writeln!(self.text, "#{}={body};", self.count);
        self.count
    }

    pub(crate) fn list(ids: &[usize]) -> String {
        ids.iter()
            .map(|id| format!("#{id}"))
            .collect::<Vec<_>>()
            .join(",")
    }

    /// A real number: always with a point, never with an exponent.
    pub(crate) fn real(value: f64) -> String {
        let text = format!("{value:.12}");
        let text = text.trim_end_matches('0');
        if text == "-0." {
            "0.".to_owned()
        } else {
            text.to_owned()
        }
    }

    /// Quoted text: apostrophes doubled, what is not plain ASCII as `\X4\` code points.
    pub(crate) fn text(words: &str) -> String {
        let mut out = String::from("'");
        for c in words.chars() {
            match c {
                '\'' => out.push_str("''"),
                '\\' => out.push_str("\\\\"),
                ' '..='~' => out.push(c),
                c if c.is_control() => out.push(' '),
                c => {
                    let _ = write!(out, "\\X4\\{:08X}\\X0\\", u32::from(c));
                }
            }
        }
        out.push('\'');
        out
    }

    fn triple([x, y, z]: [f64; 3]) -> String {
        format!("({},{},{})", Self::real(x), Self::real(y), Self::real(z))
    }

    pub(crate) fn point(&mut self, p: Point) -> usize {
        self.add(&format!(
            "CARTESIAN_POINT('',{})",
            Self::triple(p.to_array())
        ))
    }

    fn direction(&mut self, d: UnitVector) -> usize {
        self.add(&format!("DIRECTION('',{})", Self::triple(d.to_array())))
    }

    pub(crate) fn placement(&mut self, at: Point, axis: UnitVector, toward: UnitVector) -> usize {
        let (p, a, r) = (self.point(at), self.direction(axis), self.direction(toward));
        self.add(&format!("AXIS2_PLACEMENT_3D('',#{p},#{a},#{r})"))
    }

    pub(crate) fn vertex(&mut self, at: Point) -> usize {
        let p = self.point(at);
        self.add(&format!("VERTEX_POINT('',#{p})"))
    }

    pub(crate) fn line(&mut self, from: Point, along: UnitVector) -> usize {
        let (p, d) = (self.point(from), self.direction(along));
        let v = self.add(&format!("VECTOR('',#{d},1.)"));
        self.add(&format!("LINE('',#{p},#{v})"))
    }

    pub(crate) fn circle(
        &mut self,
        centre: Point,
        axis: UnitVector,
        toward: UnitVector,
        radius_mm: f64,
    ) -> usize {
        let place = self.placement(centre, axis, toward);
        self.add(&format!("CIRCLE('',#{place},{})", Self::real(radius_mm)))
    }

    pub(crate) fn ellipse(
        &mut self,
        centre: Point,
        axis: UnitVector,
        long: UnitVector,
        [half_long_mm, half_short_mm]: [f64; 2],
    ) -> usize {
        let place = self.placement(centre, axis, long);
        self.add(&format!(
            "ELLIPSE('',#{place},{},{})",
            Self::real(half_long_mm),
            Self::real(half_short_mm)
        ))
    }

    pub(crate) fn bound(&mut self, kind: &str, edges: &[(usize, bool)]) -> usize {
        let oriented: Vec<usize> = edges
            .iter()
            .map(|&(edge, forward)| {
                let sense = if forward { ".T." } else { ".F." };
                self.add(&format!("ORIENTED_EDGE('',*,*,#{edge},{sense})"))
            })
            .collect();
        let around = self.add(&format!("EDGE_LOOP('',({}))", Self::list(&oriented)));
        self.add(&format!("{kind}('',#{around},.T.)"))
    }
}
