//! Files that are written whole or not at all: beside their places first, then renamed.
//!
//! In: bytes with the paths they go to. Out: all files of a call or none, whatever fails on the way and whoever interrupts;
//! nothing half-written, nothing left over. Only a process that is killed outright (`kill -9`, a power cut) leaves what lay
//! beside: files called `.torquill-` with six letters, which nothing reads and anybody may delete.

use super::kept_output::{is_kept, taken};
use super::output::{exists, folder_of, free, note, promise, shown, unwritable};
use crate::error::{CommandFault, Error, Result};
use crate::library::was_read;
use std::cell::{Cell, RefCell};
use std::io::{ErrorKind, Write};
use std::path::{Path, PathBuf};
use std::sync::Mutex;
use tempfile::{Builder, NamedTempFile, TempDir, TempPath};

/// What lies beside its place until the whole of its call is done.
static BESIDE: Mutex<Vec<PathBuf>> = Mutex::new(Vec::new());

thread_local! {
    /// Steps of writing in this thread that succeed before one fails as on a full disk; only tests set it.
    pub static STEPS_LEFT: Cell<Option<usize>> = const { Cell::new(None) };

    /// What the call of this thread has ready.
    static READY: RefCell<Ready> = RefCell::default();
}

/// Files beside their places, and what is told when they are in them.
#[derive(Default)]
struct Ready {
    files: Vec<(PathBuf, NamedTempFile)>,
    told: Vec<String>,
}

/// Takes one step of writing; a test may have the n-th fail.
fn step<T>(work: impl FnOnce() -> std::io::Result<T>) -> std::io::Result<T> {
    let left = STEPS_LEFT.get();
    STEPS_LEFT.set(left.and_then(|left| left.checked_sub(1)));
    match left {
        Some(0) => Err(ErrorKind::StorageFull.into()),
        _ => work(),
    }
}

/// Readies a file: written beside its place, in it when the call [settles](settle).
///
/// **Fails** as [`write_files`].
pub fn write_file(path: &Path, bytes: &[u8]) -> Result<()> {
    write_files(&[(path.to_owned(), bytes)])
}

/// Readies a set of files: written beside their places, in them when the call [settles](settle).
///
/// **Fails** when a folder cannot be written, or a file was read by this call.
pub fn write_files<B: AsRef<[u8]>>(files: &[(PathBuf, B)]) -> Result<()> {
    end_cleanly();
    if let Some((path, _)) = files.iter().find(|(path, _)| was_read(path)) {
        return Err(Error::bad(CommandFault::TargetIsRead { file: shown(path) }));
    }
    for (path, bytes) in files {
        let file = staged(path, bytes.as_ref()).map_err(|fault| unwritable(path, &fault))?;
        READY.with_borrow_mut(|ready| {
            ready.files.retain(|(other, _)| other != path);
            ready.files.push((path.clone(), file));
        });
    }
    Ok(())
}

/// A message about files that is true when they are in their places: told then.
pub fn tell_settled(text: String) {
    READY.with_borrow_mut(|ready| ready.told.push(text));
}

/// Renames everything that the call has ready to its place: all of it or nothing.
///
/// **Fails** when a place cannot be written or something has come into one that was free; every file is as it was then,
/// and nothing is left behind.
pub fn settle() -> Result<()> {
    let Ready { files, told } = READY.take();
    place_all(files)?;
    told.iter().for_each(|text| note(text));
    Ok(())
}

/// Takes away what a call has ready that came to nothing.
pub fn forget_ready() {
    let ready = READY.take();
    let mut known = taken(&BESIDE);
    known.retain(|path| !ready.files.iter().any(|(_, file)| file.path() == path));
}

fn place_all(files: Vec<(PathBuf, NamedTempFile)>) -> Result<()> {
    // Who interrupts waits until everything is in its place.
    let mut known = taken(&BESIDE);
    let free = free();
    let occupied = files
        .iter()
        .find(|(path, _)| free.contains(path) && path.symlink_metadata().is_ok());
    if let Some((path, _)) = occupied {
        return Err(exists(path));
    }
    let is_set = files.len() > 1;
    let paths: Vec<PathBuf> = files.iter().map(|(path, _)| path.clone()).collect();
    let mut placed = PlacedFiles::default();
    for (path, file) in files {
        placed.place(&path, file, free.contains(&path), is_set)?;
    }
    placed.keep();
    known.clear();
    drop(free);
    paths.iter().for_each(|path| promise(path, true));
    Ok(())
}

/// Files of a set that are in their places, each with what stood there before; taken back unless all are kept.
#[derive(Default)]
struct PlacedFiles(Vec<(PathBuf, Option<TempPath>)>);

impl PlacedFiles {
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

impl Drop for PlacedFiles {
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
    let made = made.keep();
    known.retain(|path| *path != made);
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

/// Has a file that grows beyond the user's limit fail as any other write does, where it would end the program.
pub fn let_limits_fail() {
    // Where it cannot be heeded the usual end stays: no harm.
    #[cfg(unix)]
    let _ = signal_hook::flag::register(signal_hook::consts::SIGXFSZ, std::sync::Arc::default());
}

/// Has an interruption take away what is half written, or wait until it is whole; the status is 130 then, whichever signal
/// it was.
fn end_cleanly() {
    if is_kept() {
        return;
    }
    // Where a search has set its handler, that one lets the writing end: no harm.
    let _ = ctrlc::set_handler(|| end_now());
}

/// Ends the program as interrupted, with a set that is being written taken away or whole.
pub fn end_now() -> ! {
    // Held to the end, so that nothing is written or renamed any more.
    let known = taken(&BESIDE);
    for path in known.iter() {
        // What is in its place already has another name.
        let _ = std::fs::remove_file(path).or_else(|_| std::fs::remove_dir_all(path));
    }
    std::process::exit(130);
}
