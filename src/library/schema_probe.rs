//! What the readers of model files know: every record with its fields, every choice with its words.
//!
//! In: a type that is read. Out: [`KnownRecords`], as the type itself asks for them while it is read from nothing.

use crate::units::QuantityKind;
use serde::de::value::{Error as ValueError, StrDeserializer};
use serde::de::{
    Deserialize, DeserializeSeed, Deserializer, EnumAccess, Error, Expected, IntoDeserializer,
    MapAccess, SeqAccess, VariantAccess, Visitor,
};
use std::collections::{BTreeMap, BTreeSet};

/// Names as a type declares them.
pub type Names = &'static [&'static str];

/// Records and choices, by the names of their types.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct KnownRecords {
    /// Every record with its fields; that of a word of a choice is `Choice::Word`.
    pub records: BTreeMap<String, Names>,
    /// Every choice with its words.
    pub choices: BTreeMap<String, Names>,
    /// The words of every field that is a choice, by the field's name.
    pub words_of: BTreeMap<&'static str, Names>,
}

/// Readings of a type; each takes other words of its choices.
const ROUNDS: usize = 80;

/// Everything that a type asks for.
pub(super) fn known_records<T: for<'de> Deserialize<'de>>(into: &mut KnownRecords) {
    let mut notes = Notes {
        known: std::mem::take(into),
        ..Notes::default()
    };
    for round in 0..ROUNDS {
        notes.round = round;
        // Values from nothing are refused somewhere; what was asked for before is the answer.
        let _ = T::deserialize(Probe(&mut notes));
    }
    *into = notes.known;
}

/// The fields that a type asks for at its root.
pub(super) fn root_fields<T: for<'de> Deserialize<'de>>() -> Names {
    let mut notes = Notes::default();
    let _ = T::deserialize(Probe(&mut notes));
    notes.first.unwrap_or_default()
}

/// What was asked for so far.
#[derive(Default)]
struct Notes {
    known: KnownRecords,
    /// The fields of the first record.
    first: Option<Names>,
    /// How often each choice was met.
    met: BTreeMap<String, usize>,
    /// Fields whose values from nothing are refused; they come last.
    refused: BTreeSet<(String, &'static str)>,
    round: usize,
    /// The field whose value is asked for next.
    field: Option<&'static str>,
}

/// Gives a reader something of whatever it asks for.
struct Probe<'n>(&'n mut Notes);

impl Probe<'_> {
    /// A quantity of the kind that a reader expects.
    fn quantity(expected: &str) -> Option<&'static str> {
        Some(match QuantityKind::from_expectation(expected)? {
            QuantityKind::Length => "1 m",
            QuantityKind::Mass => "1 kg",
            QuantityKind::Force => "1 N",
            QuantityKind::Torque => "1 N·m",
            QuantityKind::Angle => "1 rad",
            QuantityKind::Speed => "1 m/s",
            QuantityKind::AngularSpeed => "1 rad/s",
            QuantityKind::Duration => "1 s",
            QuantityKind::Stress => "1 Pa",
            QuantityKind::LinearDensity => "1 kg/m",
        })
    }
}

/// Number types all get a 1.
macro_rules! ones {
    ($($ask:ident $give:ident),+ $(,)?) => {$(
        fn $ask<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, ValueError> {
            visitor.$give(1 as _)
        }
    )+};
}

impl<'de> Deserializer<'de> for Probe<'_> {
    type Error = ValueError;

    ones!(
        deserialize_i8 visit_i8, deserialize_i16 visit_i16, deserialize_i32 visit_i32,
        deserialize_i64 visit_i64, deserialize_u8 visit_u8, deserialize_u16 visit_u16,
        deserialize_u32 visit_u32, deserialize_u64 visit_u64, deserialize_f32 visit_f32,
        deserialize_f64 visit_f64,
    );

    fn deserialize_any<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, ValueError> {
        let expected = (&visitor as &dyn Expected).to_string();
        match Self::quantity(&expected) {
            Some(text) => visitor.visit_str(text),
            None => Err(ValueError::custom("")),
        }
    }

    fn deserialize_bool<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, ValueError> {
        visitor.visit_bool(false)
    }

    fn deserialize_str<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, ValueError> {
        visitor.visit_str("x")
    }

    fn deserialize_string<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, ValueError> {
        visitor.visit_str("x")
    }

    fn deserialize_option<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, ValueError> {
        visitor.visit_some(self)
    }

    fn deserialize_newtype_struct<V: Visitor<'de>>(
        self,
        _name: &'static str,
        visitor: V,
    ) -> Result<V::Value, ValueError> {
        visitor.visit_newtype_struct(self)
    }

    fn deserialize_seq<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, ValueError> {
        self.0.field = None;
        visitor.visit_seq(Several(self.0, 1))
    }

    fn deserialize_tuple<V: Visitor<'de>>(
        self,
        count: usize,
        visitor: V,
    ) -> Result<V::Value, ValueError> {
        visitor.visit_seq(Several(self.0, count))
    }

    fn deserialize_map<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, ValueError> {
        self.0.field = None;
        visitor.visit_map(Entries(self.0, 1))
    }

    fn deserialize_struct<V: Visitor<'de>>(
        self,
        name: &'static str,
        fields: Names,
        visitor: V,
    ) -> Result<V::Value, ValueError> {
        self.0.first.get_or_insert(fields);
        self.0.field = None;
        visitor.visit_map(Fields::of(self.0, name.to_owned(), fields))
    }

    fn deserialize_enum<V: Visitor<'de>>(
        self,
        name: &'static str,
        words: Names,
        visitor: V,
    ) -> Result<V::Value, ValueError> {
        self.0.known.choices.insert(name.to_owned(), words);
        if let Some(field) = self.0.field.take() {
            self.0.known.words_of.insert(field, words);
        }
        let met = self.0.met.entry(name.to_owned()).or_default();
        let word = words[*met % words.len().max(1)];
        *met += 1;
        visitor.visit_enum(Word {
            notes: self.0,
            choice: name,
            word,
        })
    }

    serde::forward_to_deserialize_any! {
        i128 u128 char bytes byte_buf unit unit_struct tuple_struct identifier ignored_any
    }
}

/// So many values without names.
struct Several<'n>(&'n mut Notes, usize);

impl<'de> SeqAccess<'de> for Several<'_> {
    type Error = ValueError;

    fn next_element_seed<S: DeserializeSeed<'de>>(
        &mut self,
        seed: S,
    ) -> Result<Option<S::Value>, ValueError> {
        if self.1 == 0 {
            return Ok(None);
        }
        self.1 -= 1;
        seed.deserialize(Probe(self.0)).map(Some)
    }
}

/// So many entries of a map.
struct Entries<'n>(&'n mut Notes, usize);

impl<'de> MapAccess<'de> for Entries<'_> {
    type Error = ValueError;

    fn next_key_seed<S: DeserializeSeed<'de>>(
        &mut self,
        seed: S,
    ) -> Result<Option<S::Value>, ValueError> {
        if self.1 == 0 {
            return Ok(None);
        }
        self.1 -= 1;
        seed.deserialize(Probe(self.0)).map(Some)
    }

    fn next_value_seed<S: DeserializeSeed<'de>>(
        &mut self,
        seed: S,
    ) -> Result<S::Value, ValueError> {
        seed.deserialize(Probe(self.0))
    }
}

/// The fields of a record, those that are refused at the end, each of them first among these in some round.
struct Fields<'n> {
    notes: &'n mut Notes,
    record: String,
    left: Vec<&'static str>,
    now: &'static str,
}

impl<'n> Fields<'n> {
    fn of(notes: &'n mut Notes, record: String, fields: Names) -> Self {
        notes.known.records.insert(record.clone(), fields);
        let is_refused = |field: &&'static str| notes.refused.contains(&(record.clone(), *field));
        let (mut last, mut left): (Vec<_>, Vec<_>) = fields.iter().copied().partition(is_refused);
        if !last.is_empty() {
            let turn = notes.round % last.len();
            last.rotate_left(turn);
        }
        left.extend(last);
        left.reverse();
        Self {
            notes,
            record,
            left,
            now: "",
        }
    }
}

impl<'de> MapAccess<'de> for Fields<'_> {
    type Error = ValueError;

    fn next_key_seed<S: DeserializeSeed<'de>>(
        &mut self,
        seed: S,
    ) -> Result<Option<S::Value>, ValueError> {
        let Some(field) = self.left.pop() else {
            return Ok(None);
        };
        self.now = field;
        let field: StrDeserializer<'_, ValueError> = field.into_deserializer();
        seed.deserialize(field).map(Some)
    }

    fn next_value_seed<S: DeserializeSeed<'de>>(
        &mut self,
        seed: S,
    ) -> Result<S::Value, ValueError> {
        self.notes.field = Some(self.now);
        let value = seed.deserialize(Probe(self.notes));
        self.notes.field = None;
        if value.is_err() {
            self.notes.refused.insert((self.record.clone(), self.now));
        }
        value
    }
}

/// One word of a choice.
struct Word<'n> {
    notes: &'n mut Notes,
    choice: &'static str,
    word: &'static str,
}

impl<'de, 'n> EnumAccess<'de> for Word<'n> {
    type Error = ValueError;
    type Variant = Self;

    fn variant_seed<S: DeserializeSeed<'de>>(
        self,
        seed: S,
    ) -> Result<(S::Value, Self), ValueError> {
        let word: StrDeserializer<'_, ValueError> = self.word.into_deserializer();
        Ok((seed.deserialize(word)?, self))
    }
}

impl<'de> VariantAccess<'de> for Word<'_> {
    type Error = ValueError;

    fn unit_variant(self) -> Result<(), ValueError> {
        Ok(())
    }

    fn newtype_variant_seed<S: DeserializeSeed<'de>>(
        self,
        seed: S,
    ) -> Result<S::Value, ValueError> {
        seed.deserialize(Probe(self.notes))
    }

    fn tuple_variant<V: Visitor<'de>>(
        self,
        count: usize,
        visitor: V,
    ) -> Result<V::Value, ValueError> {
        visitor.visit_seq(Several(self.notes, count))
    }

    fn struct_variant<V: Visitor<'de>>(
        self,
        fields: Names,
        visitor: V,
    ) -> Result<V::Value, ValueError> {
        let record = format!("{}::{}", self.choice, self.word);
        visitor.visit_map(Fields::of(self.notes, record, fields))
    }
}
