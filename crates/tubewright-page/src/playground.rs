//! A build behind an address: the person's own, or a demonstration that is copied when somebody opens
//! it and can be played with until the program ends.

use crate::api::Refusal;
use crate::deeds::refusal;
use crate::samples::Sample;
use crate::workshop::Workshop;
use std::sync::{Arc, Mutex, PoisonError};
use tempfile::TempDir;

/// What is behind an address.
#[derive(Clone, Debug)]
pub(crate) struct Playground {
    inner: Arc<Inner>,
}

#[derive(Debug)]
enum Inner {
    Own(Workshop),
    Copy {
        sample: &'static Sample,
        samples: &'static [Sample],
        copy: Mutex<Option<(TempDir, Workshop)>>,
    },
}

impl Playground {
    pub(crate) fn of(workshop: Workshop) -> Self {
        Self {
            inner: Arc::new(Inner::Own(workshop)),
        }
    }

    pub(crate) fn around(sample: &'static Sample, samples: &'static [Sample]) -> Self {
        Self {
            inner: Arc::new(Inner::Copy {
                sample,
                samples,
                copy: Mutex::new(None),
            }),
        }
    }

    /// The build; a demonstration is copied the first time.
    ///
    /// # Errors
    /// A [`Refusal`] when there is no room for the copy.
    pub(crate) fn build(&self) -> Result<Workshop, Refusal> {
        match &*self.inner {
            Inner::Own(workshop) => Ok(workshop.clone()),
            Inner::Copy {
                sample,
                samples,
                copy,
            } => {
                let mut copy = copy.lock().unwrap_or_else(PoisonError::into_inner);
                if let Some((_, workshop)) = &*copy {
                    return Ok(workshop.clone());
                }
                let folder = tempfile::tempdir().map_err(|error| no_room(&error))?;
                write_all(sample, folder.path()).map_err(|error| no_room(&error))?;
                let workshop = Workshop::open(folder.path(), samples)
                    .map_err(|error| refusal(&error.to_string()))?;
                *copy = Some((folder, workshop.clone()));
                Ok(workshop)
            }
        }
    }

    /// Puts a demonstration back to what it was; the person's own build is never touched.
    ///
    /// # Errors
    /// A [`Refusal`] for the person's own build, or when the files cannot be written.
    pub(crate) fn start_again(&self) -> Result<(), Refusal> {
        let Inner::Copy { sample, .. } = &*self.inner else {
            return Err(refusal("only a demonstration can be started again"));
        };
        let workshop = self.build()?;
        write_all(sample, workshop.path()).map_err(|error| no_room(&error))?;
        for derived in ["plan.json", crate::undo::FILE] {
            // What is not there need not go.
            let _gone = std::fs::remove_file(workshop.path().join(derived));
        }
        workshop.open_again()
    }
}

fn no_room(error: &std::io::Error) -> Refusal {
    refusal(&format!("the demonstration could not be copied: {error}"))
}

fn write_all(sample: &Sample, folder: &std::path::Path) -> std::io::Result<()> {
    for (name, content) in sample.files {
        let path = folder.join(name);
        if let Some(parent) = path.parent() {
            std::fs::create_dir_all(parent)?;
        }
        std::fs::write(path, content)?;
    }
    Ok(())
}
