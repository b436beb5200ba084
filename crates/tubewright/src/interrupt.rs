//! Ctrl-C asks the work to stop; what is being saved is finished first, because every save is one
//! rename.

use std::sync::atomic::{AtomicBool, Ordering};

static STOP: AtomicBool = AtomicBool::new(false);

/// The flag that long work looks at.
pub(crate) fn flag() -> &'static AtomicBool {
    &STOP
}

/// True after Ctrl-C or a polite request to end.
pub(crate) fn was_asked() -> bool {
    STOP.load(Ordering::Relaxed)
}

/// Listens for Ctrl-C. Where that cannot be had, Ctrl-C ends the program at once, which loses
/// nothing either.
pub(crate) fn listen() {
    let listening = ctrlc::set_handler(|| STOP.store(true, Ordering::Relaxed));
    if let Err(error) = listening {
        crate::terminal::say(&format!(
            "note: Ctrl-C will stop at once and not politely ({error})"
        ));
    }
}
