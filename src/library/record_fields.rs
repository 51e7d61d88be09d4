//! The fields that the records of each kind of model file have.
//!
//! In: a kind. Out: names, as the record types declare them.

use super::schema_probe::{KnownRecords, Names, known_records, root_fields};
use crate::anatomy::{Curves, LifterRecord, MuscleTable, Sarcomere, SegmentTable};
use crate::error::Shelf;
use crate::grammar::SetupFile;
use crate::movement::Movement;
use crate::person::PersonTable;
use crate::progress::published_equations::{RepetitionEquations, VelocityEquations};
use crate::resistance::{Band, Chain};
use crate::session::published::{
    ClusterTable, EccentricTable, FatigueTable, PyramidTable, RecoveryTable, RepetitionTable,
    RestTable, StraightTable,
};
use crate::setups::GymFile;

/// Does the same with each type of a kind of file.
macro_rules! each_type {
    ($shelf:expr, $with:ident) => {
        match $shelf {
            Shelf::Lifters => vec![$with!(LifterRecord)],
            Shelf::Segments => vec![$with!(SegmentTable)],
            Shelf::Muscles => vec![$with!(MuscleTable)],
            Shelf::Curves => vec![$with!(Curves)],
            Shelf::Sarcomeres => vec![$with!(Sarcomere)],
            Shelf::Movements => vec![$with!(Movement)],
            Shelf::Bands => vec![$with!(Band)],
            Shelf::Chains => vec![$with!(Chain)],
            Shelf::Setups => vec![$with!(SetupFile)],
            Shelf::Gyms => vec![$with!(GymFile)],
            Shelf::Published => vec![
                $with!(RepetitionEquations),
                $with!(VelocityEquations),
                $with!(RepetitionTable),
                $with!(FatigueTable),
                $with!(RecoveryTable),
                $with!(EccentricTable),
                $with!(RestTable),
                $with!(StraightTable),
                $with!(ClusterTable),
                $with!(PyramidTable),
                $with!(PersonTable),
            ],
        }
    };
}

/// The fields of each type of record of a kind, as the types declare them.
pub(super) fn fields_of(shelf: Shelf) -> Vec<Names> {
    macro_rules! root {
        ($type:ty) => {
            root_fields::<$type>()
        };
    }
    each_type!(shelf, root)
}

/// Every record of a kind of file with its fields, those inside others among them, and every choice with its words.
#[must_use]
pub fn records_of(shelf: Shelf) -> KnownRecords {
    let mut known = KnownRecords::default();
    macro_rules! all {
        ($type:ty) => {
            known_records::<$type>(&mut known)
        };
    }
    let _: Vec<()> = each_type!(shelf, all);
    known
}
