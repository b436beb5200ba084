//! Catalogue, on hand, buying and cutting plan, saw marks.
