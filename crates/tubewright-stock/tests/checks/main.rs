//! Published and proven values, each under the id of its entry in `tests/data`.

#[cfg(test)]
mod bend_cuts;
#[cfg(test)]
mod cutting;
#[cfg(test)]
mod data;
#[cfg(test)]
mod errands;
#[cfg(test)]
mod welding;
