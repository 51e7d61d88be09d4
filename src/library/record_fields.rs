//! The fields that the records of each kind of model file have.
//!
//! In: a kind. Out: names, as the record types declare them.

use crate::anatomy::{Curves, LifterRecord, MuscleTable, Sarcomere, SegmentTable};
use crate::error::Shelf;
use crate::grammar::SetupFile;
use crate::movement::Movement;
use crate::progress::published_equations::{RepetitionEquations, VelocityEquations};
use crate::resistance::{Band, Chain};
use crate::session::published::{
    ClusterTable, EccentricTable, FatigueTable, PyramidTable, RecoveryTable, RepetitionTable,
    RestTable, StraightTable,
};
use crate::setups::GymFile;
use serde::de::value::Error as ValueError;
use serde::de::{Deserialize, Deserializer, Error, Visitor};
use serde::forward_to_deserialize_any;

/// The fields of each type of record of a kind, as the types declare them.
pub(super) fn fields_of(shelf: Shelf) -> Vec<&'static [&'static str]> {
    vec![match shelf {
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
        Shelf::Published => return fields_of_tables(),
    }]
}

/// The fields of the published tables.
fn fields_of_tables() -> Vec<&'static [&'static str]> {
    vec![
        fields::<RepetitionEquations>(),
        fields::<VelocityEquations>(),
        fields::<RepetitionTable>(),
        fields::<FatigueTable>(),
        fields::<RecoveryTable>(),
        fields::<EccentricTable>(),
        fields::<RestTable>(),
        fields::<StraightTable>(),
        fields::<ClusterTable>(),
        fields::<PyramidTable>(),
    ]
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
        Err(ValueError::custom(""))
    }

    forward_to_deserialize_any! {
        bool i8 i16 i32 i64 i128 u8 u16 u32 u64 u128 f32 f64 char str string bytes byte_buf option
        unit unit_struct newtype_struct seq tuple tuple_struct map enum identifier ignored_any
    }
}
