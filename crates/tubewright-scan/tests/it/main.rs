//! The readers from outside: round trips, second opinions, hostile input.

#[cfg(test)]
mod hostile;
#[cfg(test)]
mod round_trip;
#[cfg(test)]
mod second_opinion;
#[cfg(test)]
mod writers;
