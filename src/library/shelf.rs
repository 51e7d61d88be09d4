//! The kinds of model file, and the folder that holds each.
//!
//! In: a folder's name or a file's path. Out: [`Shelf`], and the fields that its records have.

use crate::anatomy::{Curves, LifterRecord, MuscleTable, Sarcomere, SegmentTable};
use crate::grammar::SetupFile;
use crate::movement::Movement;
use crate::resistance::{Band, Chain};
use crate::setups::GymFile;
use serde::de::value::Error as ValueError;
use serde::de::{Deserialize, Deserializer, Error, Visitor};
use serde::forward_to_deserialize_any;
use std::path::Path;

/// A kind of model file; each has a folder of its own.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Shelf {
    /// Lifters: height, mass, strength, which tables.
    Lifters,
    /// Tables of body segments.
    Segments,
    /// Tables of muscles.
    Muscles,
    /// Curves of the muscle fibre.
    Curves,
    /// Filament lengths of a sarcomere.
    Sarcomeres,
    /// Movements.
    Movements,
    /// Elastic bands.
    Bands,
    /// Chains.
    Chains,
    /// Setups: what hangs on the bar.
    Setups,
    /// Gyms: what there is to hang.
    Gyms,
    /// Published tables that estimates and plans are made with.
    Published,
}

impl Shelf {
    /// Every kind.
    pub const ALL: [Self; 11] = [
        Self::Lifters,
        Self::Segments,
        Self::Muscles,
        Self::Curves,
        Self::Sarcomeres,
        Self::Movements,
        Self::Bands,
        Self::Chains,
        Self::Setups,
        Self::Gyms,
        Self::Published,
    ];

    /// The folder in `models/`.
    #[must_use]
    pub fn folder(self) -> &'static str {
        match self {
            Self::Lifters => "lifters",
            Self::Segments => "segments",
            Self::Muscles => "muscles",
            Self::Curves => "curves",
            Self::Sarcomeres => "sarcomeres",
            Self::Movements => "movements",
            Self::Bands => "bands",
            Self::Chains => "chains",
            Self::Setups => "setups",
            Self::Gyms => "gyms",
            Self::Published => "published",
        }
    }

    /// What messages call one of them.
    #[must_use]
    pub fn one(self) -> &'static str {
        match self {
            Self::Lifters => "lifter",
            Self::Segments => "segment table",
            Self::Muscles => "muscle table",
            Self::Curves => "set of curves",
            Self::Sarcomeres => "sarcomere",
            Self::Movements => "movement",
            Self::Bands => "band",
            Self::Chains => "chain",
            Self::Setups => "setup",
            Self::Gyms => "gym",
            Self::Published => "published table",
        }
    }

    /// The kind that a file's folder says, if it says one.
    #[must_use]
    pub fn of_path(path: &Path) -> Option<Self> {
        let folder = path.parent()?.file_name()?.to_str()?;
        Self::ALL.into_iter().find(|shelf| shelf.folder() == folder)
    }
}

/// The fields of a kind's records, as their types declare them.
pub(super) fn fields_of(shelf: Shelf) -> &'static [&'static str] {
    match shelf {
        Shelf::Lifters => fields::<LifterRecord>(),
        Shelf::Segments => fields::<SegmentTable>(),
        Shelf::Muscles => fields::<MuscleTable>(),
        Shelf::Curves => fields::<Curves>(),
        Shelf::Sarcomeres => fields::<Sarcomere>(),
        Shelf::Movements => fields::<Movement>(),
        Shelf::Bands => fields::<Band>(),
        Shelf::Chains => fields::<Chain>(),
        Shelf::Setups => fields::<SetupFile>(),
        Shelf::Gyms => fields::<GymFile>(),
        // Its files have no field in common: the name tells which table it is.
        Shelf::Published => &[],
    }
}

/// The names of a record type's fields: its reader is asked to read, and tells them first.
fn fields<'de, T: Deserialize<'de>>() -> &'static [&'static str] {
    let mut asked = Asked(&[]);
    // The reader always stops here: what it asked for is the answer.
    let _ = T::deserialize(&mut asked);
    asked.0
}

/// Notes the fields that a reader asks for, and gives nothing.
struct Asked(&'static [&'static str]);

impl<'de> Deserializer<'de> for &mut Asked {
    type Error = ValueError;

    fn deserialize_struct<V: Visitor<'de>>(
        self,
        _name: &'static str,
        fields: &'static [&'static str],
        visitor: V,
    ) -> Result<V::Value, ValueError> {
        self.0 = fields;
        self.deserialize_any(visitor)
    }

    fn deserialize_any<V: Visitor<'de>>(self, _visitor: V) -> Result<V::Value, ValueError> {
        Err(ValueError::custom("nothing is read here"))
    }

    forward_to_deserialize_any! {
        bool i8 i16 i32 i64 i128 u8 u16 u32 u64 u128 f32 f64 char str string bytes byte_buf option
        unit unit_struct newtype_struct seq tuple tuple_struct map enum identifier ignored_any
    }
}
