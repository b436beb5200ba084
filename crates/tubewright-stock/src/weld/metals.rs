//! Which filler joins which two metals, and what a coated or ferritic tube asks for first.
//!
//! Classes are those of AWS A5.9 (stainless), A5.18 (mild steel) and A5.15 (cast iron), from memory;
//! which class is taken for which pair is common practice, no source. They are what to start from: the
//! tube's maker comes first.

/// What a part is made of.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Metal {
    /// Austenitic stainless 304.
    Austenitic304,
    /// Stabilised austenitic stainless 321.
    Austenitic321,
    /// Ferritic stainless 409.
    Ferritic409,
    /// Mild steel.
    Mild,
    /// Mild steel with an aluminium coat.
    Aluminised,
    /// Cast iron.
    CastIron,
}

impl Metal {
    /// From the word that the stock file uses.
    #[must_use]
    pub fn from_word(word: &str) -> Option<Self> {
        Some(match word {
            "304" => Self::Austenitic304,
            "321" => Self::Austenitic321,
            "409" => Self::Ferritic409,
            "mild" => Self::Mild,
            "aluminised" => Self::Aluminised,
            "cast iron" => Self::CastIron,
            _ => return None,
        })
    }

    /// Whether it is stainless: its root must be shielded from air.
    #[must_use]
    pub const fn is_stainless(self) -> bool {
        matches!(
            self,
            Self::Austenitic304 | Self::Austenitic321 | Self::Ferritic409
        )
    }

    const fn is_austenitic(self) -> bool {
        matches!(self, Self::Austenitic304 | Self::Austenitic321)
    }
}

/// What joins two metals.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct FillerChoice {
    /// Class of the wire.
    pub filler: &'static str,
    /// Why this one.
    pub why: &'static str,
    /// What must be done or minded beside it.
    pub minds: Vec<&'static str>,
    /// Whether the inside must be purged: either side is stainless.
    pub purge: bool,
}

/// The filler for a joint between two metals, whichever way round.
#[must_use]
pub fn filler_choice(a: Metal, b: Metal) -> FillerChoice {
    let either = |metal: Metal| a == metal || b == metal;
    let both = |test: fn(Metal) -> bool| test(a) && test(b);
    let stainless = a.is_stainless() || b.is_stainless();
    let (filler, why) = if either(Metal::CastIron) {
        (
            "ENi-CI",
            "cast iron takes up nickel without hardening; better a flange bolted to it than a weld",
        )
    } else if a == Metal::Austenitic304 && b == Metal::Austenitic304 {
        (
            "ER308L",
            "matches 304; low carbon keeps the joint from rusting beside the weld",
        )
    } else if both(Metal::is_austenitic) {
        ("ER347", "stabilised like 321, for metal that stays hot")
    } else if a == Metal::Ferritic409 && b == Metal::Ferritic409 {
        (
            "ER409Nb",
            "grows with heat as 409 does; ER309L also holds but grows half as much again",
        )
    } else if stainless {
        (
            "ER309L",
            "stays sound when diluted by the other metal: 308 would crack or rust there",
        )
    } else {
        (
            "ER70S-2",
            "deoxidised, for mild steel that is not quite clean",
        )
    };
    let mut minds = Vec::new();
    if either(Metal::Aluminised) {
        minds.push(
            "grind the aluminium coat off 25 mm on both sides, outside and inside: it spoils the weld and its fume is aluminium oxide; extract at the source and coat again afterwards",
        );
    }
    if either(Metal::Ferritic409) {
        minds.push(
            "ferritic: little heat, no weave, no preheat; the grain beside the weld grows and does not come back",
        );
    }
    if stainless && !(a.is_stainless() && b.is_stainless()) {
        minds.push(
            "dissimilar: lean the arc to the mild side, which rusts first; paint it afterwards, and keep a flex between the two where they grow apart",
        );
    }
    if a.is_austenitic() && b == Metal::Ferritic409 || b.is_austenitic() && a == Metal::Ferritic409
    {
        minds.push("304 and 321 grow half as much again as 409: no such joint next to an anchor");
    }
    if either(Metal::CastIron) {
        minds.push("preheat and cool slowly, or it cracks; not a weld to learn on");
    }
    FillerChoice {
        filler,
        why,
        minds,
        purge: stainless,
    }
}
