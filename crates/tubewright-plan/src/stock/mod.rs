//! The buying and cutting plan of the chosen runs.

mod make;
mod opening;
mod remake;
mod request;
mod spares;
mod tape_marks;
mod wanted;
mod words;

pub use make::{BuyOrMakeAsked, BuyOrMakeError, BuyOrMakeFound, buy_or_make_at_the_shop};
pub use opening::Opening;
pub(crate) use opening::openings;
pub use remake::{
    Leftover, LeftoverError, Remake, before_spoiled, is_left_a_length, leftover, leftover_name,
    part_of, spoiled_entries,
};
pub use request::{RequestError, request_of};
pub use spares::{SpareList, any_of, spare_list};
pub use tape_marks::{Followed, on_the_tape};
pub(crate) use wanted::HANGERS;
pub use wanted::{Wanted, wanted};
pub use words::{missing_words, proof_words, source_words, trouble_words};
