//! The build folder: parsing with units and spans, the model, comment-keeping edits, atomic saves.
