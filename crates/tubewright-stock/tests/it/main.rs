//! Plans from outside: against exhaustive search, and whole requests with their proof.

#[cfg(test)]
mod budget;
#[cfg(test)]
mod exhaustive;
#[cfg(test)]
mod making;
mod marks;
#[cfg(test)]
mod plans;
#[cfg(test)]
mod progress;
#[cfg(test)]
mod shop;
#[cfg(test)]
mod spares;
