//! Files that are written whole or not at all: beside their places first, then renamed.
//!
//! In: bytes with the paths they go to. Out: all files of a set or none, whatever fails on the way and whoever interrupts;
//! nothing half-written, nothing left over. Only a process that is killed outright (`kill -9`, a power cut) leaves what lay
//! beside: files called `.torquill-` with six letters, which nothing reads and anybody may delete.

use super::kept_output::{is_kept, taken};
use super::output::{exists, folder_of, free, promise, shown, unwritable};
use crate::error::{CommandFault, Error, Result};
use crate::library::was_read;
use std::io::{ErrorKind, Write};
use std::path::{Path, PathBuf};
use std::sync::Mutex;
use tempfile::{Builder, NamedTempFile, TempDir, TempPath};

/// What lies beside its place until the whole of its set is written.
static BESIDE: Mutex<Vec<PathBuf>> = Mutex::new(Vec::new());

/// Takes one step of writing; a test may have the n-th fail.
fn step<T>(work: impl FnOnce() -> std::io::Result<T>) -> std::io::Result<T> {
    #[cfg(test)]
    tests::fail_in_turn()?;
    work()
}

/// Writes a file as a whole or not at all.
///
/// **Fails** as [`write_files`].
pub fn write_file(path: &Path, bytes: &[u8]) -> Result<()> {
    write_files(&[(path.to_owned(), bytes)])
}

/// Writes a set of files: all beside their places first, then all renamed.
///
/// **Fails** when a folder cannot be written, a file was read by this call, or has come into a place that was free; every
/// file of the set is as it was then, and nothing is left behind.
pub fn write_files<B: AsRef<[u8]>>(files: &[(PathBuf, B)]) -> Result<()> {
    end_cleanly();
    if let Some((path, _)) = files.iter().find(|(path, _)| was_read(path)) {
        return Err(Error::bad(CommandFault::TargetIsRead { file: shown(path) }));
    }
    let staged = files
        .iter()
        .map(|(path, bytes)| staged(path, bytes.as_ref()).map_err(|fault| unwritable(path, &fault)))
        .collect::<Result<Vec<_>>>()?;
    // Who interrupts waits until the whole set is in its place.
    let mut known = taken(&BESIDE);
    let free = free();
    let occupied = files
        .iter()
        .find(|(path, _)| free.contains(path) && path.exists());
    if let Some((path, _)) = occupied {
        return Err(exists(path));
    }
    let is_set = files.len() > 1;
    let mut placed = Placed::default();
    for ((path, _), file) in files.iter().zip(staged) {
        placed.place(path, file, free.contains(path), is_set)?;
    }
    placed.keep();
    known.clear();
    drop(free);
    files.iter().for_each(|(path, _)| promise(path, true));
    Ok(())
}

/// Files of a set that are in their places, each with what stood there before; taken back unless all are kept.
#[derive(Default)]
struct Placed(Vec<(PathBuf, Option<TempPath>)>);

impl Placed {
    /// Renames a file to its place; of a set, what stood there is held by another name until all are in place.
    ///
    /// **Fails** where the file system does, and where somebody came first into a free place.
    fn place(&mut self, path: &Path, file: NamedTempFile, free: bool, is_set: bool) -> Result<()> {
        let lost = |fault: &std::io::Error| match fault.kind() {
            ErrorKind::AlreadyExists if free => exists(path),
            _ => unwritable(path, fault),
        };
        let is_there = path.symlink_metadata().is_ok();
        let former = match is_set && is_there && !free {
            true => Some(held(path).map_err(|fault| lost(&fault))?),
            false => None,
        };
        step(|| match free {
            true => file.persist_noclobber(path).map_err(|fault| fault.error),
            false => file.persist(path).map_err(|fault| fault.error),
        })
        .map_err(|fault| lost(&fault))?;
        self.0.push((path.to_owned(), former));
        Ok(())
    }

    /// Keeps everything in its place.
    fn keep(mut self) {
        self.0.clear();
    }
}

impl Drop for Placed {
    fn drop(&mut self) {
        for (path, former) in self.0.drain(..).rev() {
            // Where this fails too, nobody can do better.
            let _ = match former {
                Some(former) => former.persist(&path).map_err(|fault| fault.error),
                None => std::fs::remove_file(&path),
            };
        }
    }
}

/// What stands at a place by a second name beside it, or a copy where a file system knows no second names.
fn held(path: &Path) -> std::io::Result<TempPath> {
    let link = |to: &Path| std::fs::hard_link(path, to);
    let folder = folder_of(path);
    let linked = step(|| beside(0o666).make_in(folder, link));
    linked.map(NamedTempFile::into_temp_path).or_else(|_| {
        let copy = |to: &Path| std::fs::copy(path, to).map(|_| ());
        let copied = step(|| beside(0o666).make_in(folder, copy));
        copied.map(NamedTempFile::into_temp_path)
    })
}

/// Writes files into a folder that is not there yet: into one beside it, which is then renamed.
///
/// **Fails** where a folder cannot be made or written; nothing is left behind then.
pub fn write_folder(folder: &Path, files: &[(String, Vec<u8>)]) -> Result<()> {
    end_cleanly();
    let not_made = |fault: std::io::Error| {
        Error::bad(CommandFault::FolderNotMade {
            folder: shown(folder),
            cause: fault.to_string(),
        })
    };
    let parent = folder_of(folder);
    std::fs::create_dir_all(parent).map_err(not_made)?;
    let made = staged_folder(parent).map_err(not_made)?;
    for (name, bytes) in files {
        // Who interrupts takes the folder away between two files.
        let _known = taken(&BESIDE);
        step(|| std::fs::write(made.path().join(name), bytes))
            .map_err(|fault| unwritable(&folder.join(name), &fault))?;
    }
    let mut known = taken(&BESIDE);
    step(|| std::fs::rename(made.path(), folder)).map_err(not_made)?;
    let _ = made.keep();
    known.clear();
    Ok(())
}

/// What makes a file or folder of a random name beside its place, with these rights less what the user's mask takes.
fn beside(mode: u32) -> Builder<'static, 'static> {
    let mut builder = Builder::new();
    builder.prefix(".torquill-");
    #[cfg(unix)]
    builder.permissions(std::os::unix::fs::PermissionsExt::from_mode(mode));
    #[cfg(not(unix))]
    let _ = mode;
    builder
}

/// The bytes in a file of a name of its own in the same folder, with the rights that the file is to have.
fn staged(path: &Path, bytes: &[u8]) -> std::io::Result<NamedTempFile> {
    let kept = std::fs::metadata(path)
        .ok()
        .map(|there| there.permissions());
    let mut known = taken(&BESIDE);
    let mut file = step(|| beside(0o666).tempfile_in(folder_of(path)))?;
    known.push(file.path().to_owned());
    drop(known);
    step(|| file.as_file_mut().write_all(bytes))?;
    if let Some(rights) = kept {
        step(|| file.as_file().set_permissions(rights))?;
    }
    Ok(file)
}

/// A folder of a name of its own.
fn staged_folder(parent: &Path) -> std::io::Result<TempDir> {
    let mut known = taken(&BESIDE);
    let made = step(|| beside(0o777).tempdir_in(parent))?;
    known.push(made.path().to_owned());
    Ok(made)
}

/// Has an interruption take away what is half written, or wait until it is whole; the status is 130 then, whichever signal
/// it was.
fn end_cleanly() {
    if is_kept() {
        return;
    }
    // Where a search has set its handler, that one lets the writing end: no harm.
    let _ = ctrlc::set_handler(|| {
        // Held to the end, so that nothing is written or renamed any more.
        let known = taken(&BESIDE);
        for path in known.iter() {
            // What is in its place already has another name.
            let _ = std::fs::remove_file(path).or_else(|_| std::fs::remove_dir_all(path));
        }
        std::process::exit(130);
    });
}

#[cfg(test)]
mod tests {
    use super::{write_files, write_folder};
    use crate::cli::output::check_target;
    use std::cell::Cell;
    use std::collections::BTreeMap;
    use std::path::Path;

    thread_local! {
        /// Steps that succeed before one fails.
        static LEFT: Cell<Option<usize>> = const { Cell::new(None) };
    }

    pub(super) fn fail_in_turn() -> std::io::Result<()> {
        match LEFT.get() {
            Some(0) => {
                LEFT.set(None);
                Err(std::io::ErrorKind::StorageFull.into())
            }
            left => {
                LEFT.set(left.map(|left| left - 1));
                Ok(())
            }
        }
    }

    /// Files of a folder with what they hold, hidden ones too.
    fn held(folder: &Path) -> BTreeMap<String, String> {
        let entries = std::fs::read_dir(folder).expect("a folder");
        let file = |entry: std::fs::DirEntry| {
            let name = entry.file_name().into_string().expect("a name of ours");
            let text = std::fs::read_to_string(entry.path()).expect("a text of ours");
            (name, text)
        };
        entries
            .map(|entry| file(entry.expect("an entry")))
            .collect()
    }

    #[test]
    fn fault_whichever_step_fails_a_set_is_as_it_was() {
        let mut failed = 0;
        for step in 0.. {
            let folder = tempfile::tempdir().expect("a folder");
            let at = |name: &str| folder.path().join(name);
            std::fs::write(at("a"), "old a").expect("a file");
            std::fs::write(at("b"), "old b").expect("a file");
            let before = held(folder.path());
            check_target(&at("new"), false).expect("it is free");
            let set = ["a", "new", "b"].map(|name| (at(name), format!("new {name}")));
            LEFT.set(Some(step));
            let written = write_files(&set);
            let whole = LEFT.replace(None).is_some();
            if whole {
                // More steps were allowed than there are.
                written.expect("nothing failed");
                assert_eq!(held(folder.path()).len(), 3);
                break;
            }
            let now = held(folder.path());
            match written {
                Err(_) => assert_eq!(now, before, "step {step}"),
                // A second name that cannot be given is made up for by a copy.
                Ok(()) => assert!(now.values().all(|text| text.starts_with("new")), "{now:?}"),
            }
            failed += 1;
        }
        assert!(failed >= 12, "{failed} steps");
    }

    #[test]
    fn fault_whichever_step_fails_a_new_folder_is_not_there() {
        let mut failed = 0;
        for step in 0.. {
            let folder = tempfile::tempdir().expect("a folder");
            let set = ["a", "b"].map(|name| (name.to_owned(), vec![1]));
            LEFT.set(Some(step));
            let written = write_folder(&folder.path().join("set"), &set);
            if LEFT.replace(None).is_some() {
                written.expect("nothing failed");
                break;
            }
            assert!(written.is_err());
            let left = std::fs::read_dir(folder.path()).expect("a folder").count();
            assert_eq!(left, 0, "step {step}");
            failed += 1;
        }
        assert_eq!(failed, 4);
    }

    #[test]
    fn fault_a_set_that_cannot_be_written_changes_no_file() {
        let folder = tempfile::tempdir().expect("a folder");
        let (first, lost) = (
            folder.path().join("a.txt"),
            folder.path().join("gone/b.txt"),
        );
        std::fs::write(&first, "before").expect("a file");
        assert!(write_files(&[(first.clone(), "after"), (lost, "b")]).is_err());
        assert_eq!(
            std::fs::read_to_string(&first).expect("it is there"),
            "before"
        );
        assert_eq!(
            std::fs::read_dir(folder.path()).expect("a folder").count(),
            1
        );
    }

    #[test]
    fn fault_a_file_that_comes_while_the_program_computes_stays() {
        let folder = tempfile::tempdir().expect("a folder");
        let (ours, theirs) = (folder.path().join("a.txt"), folder.path().join("b.txt"));
        for path in [&ours, &theirs] {
            check_target(path, false).expect("it is free");
        }
        std::fs::write(&theirs, "theirs").expect("a file");
        let set = [(ours.clone(), "ours"), (theirs.clone(), "ours")];
        assert!(write_files(&set).is_err());
        let text = std::fs::read_to_string(&theirs).expect("it is there");
        assert_eq!((text.as_str(), ours.exists()), ("theirs", false));
        check_target(&theirs, true).expect("it may be replaced");
        write_files(&set).expect("both can be written");
        let text = std::fs::read_to_string(&theirs).expect("it is there");
        assert_eq!(text, "ours");
        let count = std::fs::read_dir(folder.path()).expect("a folder").count();
        assert_eq!(count, 2);
    }

    #[test]
    fn fault_a_new_folder_comes_whole_or_not_at_all() {
        let folder = tempfile::tempdir().expect("a folder");
        let set = |name: &str| vec![("a.txt".to_owned(), vec![1]), (name.to_owned(), vec![2])];
        let target = folder.path().join("deep/set");
        assert!(write_folder(&target, &set("gone/b.txt")).is_err());
        let left = std::fs::read_dir(folder.path().join("deep")).expect("a folder");
        assert_eq!(left.count(), 0);
        write_folder(&target, &set("b.txt")).expect("it can be written");
        assert_eq!(std::fs::read_dir(&target).expect("a folder").count(), 2);
    }

    #[cfg(unix)]
    #[test]
    fn law_rights_of_a_replaced_file_are_kept() {
        use std::os::unix::fs::PermissionsExt;
        let folder = tempfile::tempdir().expect("a folder");
        let path = folder.path().join("a.txt");
        for mode in [0o600, 0o640, 0o644] {
            std::fs::write(&path, "before").expect("a file");
            std::fs::set_permissions(&path, PermissionsExt::from_mode(mode)).expect("rights");
            write_files(&[(path.clone(), "after")]).expect("it can be written");
            let rights = std::fs::metadata(&path).expect("it is there").permissions();
            assert_eq!(rights.mode() & 0o777, mode);
        }
    }
}
