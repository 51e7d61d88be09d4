//! Reads the file of a team: a row a person, a column a lift.
//!
//! In: the text of a CSV file, what lifts are called. Out: a [`Team`]; or everything that is wrong with the file, each
//! with its place. Separators, quotes and units are as those of a training log.

use super::lift_names::LiftNames;
use super::log_file::BadRows;
use super::log_table::{LogTable, TableRow};
use super::team_cells::{self, TeamCells, ToldStrength, strength};
use crate::anatomy::Sex;
use crate::error::{Error, Fault, Result, TeamColumn, TeamFault, TeamRowFault};
use crate::units::{Length, Mass};
use std::collections::BTreeMap;

/// A person of a team.
#[derive(Debug, Clone, PartialEq)]
pub struct TeamMember {
    /// Line of the file, counted from 1.
    pub line: usize,
    /// Who it is.
    pub name: String,
    /// Which tables apply.
    pub sex: Sex,
    /// Body mass.
    pub mass: Mass,
    /// Standing height.
    pub height: Length,
    /// Months of steady training; none told is none.
    pub training_months: Option<f64>,
    /// Age in years, if told.
    pub age_years: Option<f64>,
    /// Injured or in pain.
    pub injured: bool,
    /// Ill, unusually sore, or back from a break.
    pub unwell: bool,
    /// Lifts in the order of the columns.
    pub lifts: Vec<(String, ToldStrength)>,
}

/// A team.
#[derive(Debug, Clone, PartialEq)]
pub struct Team {
    /// Its people, in the order of the file.
    pub members: Vec<TeamMember>,
    /// The lifts that columns hold.
    pub movements: Vec<String>,
    /// Headings of columns that are not used.
    pub ignored: Vec<String>,
    /// Rows left out on request.
    pub skipped: Vec<SkippedMember>,
}

/// A row that was left out on request.
#[derive(Debug, Clone, PartialEq)]
pub struct SkippedMember {
    /// Line of the file, counted from 1.
    pub line: usize,
    /// Everything that is wrong with it.
    pub faults: Vec<TeamRowFault>,
}

/// A column that holds strengths.
struct LiftColumn {
    position: usize,
    movement: String,
    unit: Option<&'static str>,
}

/// Where everything stands.
#[derive(Default)]
struct TeamHeader {
    width: usize,
    /// Field and unit of each column.
    places: BTreeMap<usize, (usize, Option<&'static str>)>,
    lifts: Vec<LiftColumn>,
    ignored: Vec<String>,
}

/// Most people of one file: more is no team, and takes minutes.
const MOST_PEOPLE: usize = 500;

/// Reads a team from a file's name and text; the lifts that can be planned, and what they are called, are told.
///
/// **Fails** with the header alone when that is wrong, else with every bad row at once, unless they are to be left out; on
/// a name that stands twice; and on a file with nobody in it.
pub fn read_team(
    (file, text): (&str, &str),
    (names, movements): (&LiftNames, &[String]),
    bad_rows: BadRows,
) -> Result<Team> {
    let table = LogTable::of(file, text);
    table.check()?;
    let mut header: Option<Result<TeamHeader>> = None;
    let (mut members, mut faults) = (Vec::<TeamMember>::new(), Vec::new());
    let mut skipped = Vec::new();
    table.rows(|row| match &header {
        None => {
            header = Some(TeamHeader::of(&table, row, names, movements));
            matches!(header, Some(Ok(_)))
        }
        Some(Ok(header)) => {
            match header.member(row) {
                Ok(member) => {
                    let twin = members
                        .iter()
                        .find(|other| is_same(&other.name, &member.name));
                    if let Some(twin) = twin {
                        let fault = Fault::new(TeamFault::NameTwice {
                            name: member.name.clone(),
                            first: twin.line,
                        });
                        faults
                            .push(fault.at(table.place(row.start, header.place(TeamColumn::Name))));
                    }
                    members.push(member);
                }
                Err(bad) if bad_rows == BadRows::LeftOut => skipped.push(SkippedMember {
                    line: row.line,
                    faults: bad.into_iter().map(|(fault, _)| fault).collect(),
                }),
                Err(bad) => faults.extend(bad.into_iter().map(|(fault, field)| {
                    let line = row.line;
                    Fault::new(TeamFault::Row { line, fault }).at(table.place(row.start, field))
                })),
            }
            members.len() + faults.len() + skipped.len() <= MOST_PEOPLE
        }
        Some(Err(_)) => false,
    });
    let named = || table.file().to_owned();
    let header = header.ok_or_else(|| Error::bad(TeamFault::Empty { file: named() }))??;
    if !faults.is_empty() {
        return Err(Error::bad_input(faults));
    }
    match members.len() {
        0 => Err(Error::bad(TeamFault::Nobody { file: named() })),
        people if people > MOST_PEOPLE => Err(Error::bad(TeamFault::TooMany { most: MOST_PEOPLE })),
        _ => Ok(Team {
            members,
            movements: header.lifts.into_iter().map(|lift| lift.movement).collect(),
            ignored: header.ignored,
            skipped,
        }),
    }
}

/// Whether two names are one person's, capitals and blanks apart.
fn is_same(one: &str, other: &str) -> bool {
    let plain = |name: &str| {
        let words: Vec<String> = name.split_whitespace().map(str::to_lowercase).collect();
        words.join(" ")
    };
    plain(one) == plain(other)
}

/// What is wrong in a row, and the field it stands in.
type BadCell = (TeamRowFault, Option<usize>);

impl TeamHeader {
    fn of(
        table: &LogTable,
        row: &TableRow<'_>,
        names: &LiftNames,
        movements: &[String],
    ) -> Result<Self> {
        let mut header = Self {
            width: row.width(),
            ..Self::default()
        };
        let headings: Vec<String> = row.fields().map(str::to_owned).collect();
        let mut faults = Vec::new();
        let twice = |first: usize, position: usize| {
            let headings = [headings[first].clone(), headings[position].clone()];
            Fault::new(TeamFault::ColumnTwice { headings })
                .at(table.place(row.start, Some(position)))
        };
        for (position, heading) in headings.iter().enumerate().filter(|(_, h)| !h.is_empty()) {
            let cells = TeamCells::of(heading, names, movements);
            match cells {
                TeamCells::Of(column, unit) => {
                    let place = header
                        .places
                        .entry(column as usize)
                        .or_insert((position, unit));
                    if place.0 != position {
                        faults.push(twice(place.0, position));
                    }
                }
                TeamCells::Lift(movement, unit) => {
                    let known = header.lifts.iter().find(|lift| lift.movement == movement);
                    if let Some(known) = known {
                        faults.push(twice(known.position, position));
                    }
                    header.lifts.push(LiftColumn {
                        position,
                        movement,
                        unit,
                    });
                }
                TeamCells::Other => header.ignored.push(heading.clone()),
            }
        }
        let needed = [
            TeamColumn::Name,
            TeamColumn::Sex,
            TeamColumn::Mass,
            TeamColumn::Height,
        ];
        for column in needed.into_iter().filter(|c| header.place(*c).is_none()) {
            let headings = headings.clone();
            let fault = Fault::new(TeamFault::NoColumn { column, headings });
            faults.push(fault.at(table.place(row.start, None)));
        }
        if header.lifts.is_empty() && faults.is_empty() {
            let fault = Fault::new(TeamFault::NoLift {
                movement: None,
                known: movements.to_vec(),
            });
            faults.push(fault.at(table.place(row.start, None)));
        }
        if faults.is_empty() {
            Ok(header)
        } else {
            Err(Error::bad_input(faults))
        }
    }

    /// The field of a column.
    fn place(&self, column: TeamColumn) -> Option<usize> {
        self.places.get(&(column as usize)).map(|place| place.0)
    }

    /// What stands in a column, with its unit from the heading; empty where the column is not there.
    fn cell<'a>(
        &self,
        column: TeamColumn,
        row: &'a TableRow<'_>,
    ) -> (&'a str, Option<&'static str>) {
        match self.places.get(&(column as usize)) {
            Some((position, unit)) => (row.field(*position), *unit),
            None => ("", None),
        }
    }

    fn member(&self, row: &TableRow<'_>) -> std::result::Result<TeamMember, Vec<BadCell>> {
        if row.width() > self.width {
            let fault = TeamRowFault::TooManyFields {
                fields: row.width(),
                columns: self.width,
            };
            return Err(vec![(fault, None)]);
        }
        let mut bad: Vec<BadCell> = Vec::new();
        let name = self.read(TeamColumn::Name, row, &mut bad, |text, _| {
            Ok(text.split_whitespace().collect::<Vec<_>>().join(" "))
        });
        let sex = self.read(TeamColumn::Sex, row, &mut bad, |text, _| {
            team_cells::sex(text)
        });
        let height = self.read(TeamColumn::Height, row, &mut bad, team_cells::height);
        let mass = self.read(TeamColumn::Mass, row, &mut bad, |text, unit| {
            team_cells::mass(text, unit, height)
        });
        let training_months = self.number(TeamColumn::TrainingMonths, row, &mut bad);
        let age_years = self.number(TeamColumn::Age, row, &mut bad);
        let injured = self.is_told(TeamColumn::Injured, row, &mut bad);
        let unwell = self.is_told(TeamColumn::Unwell, row, &mut bad);
        let mut lifts = Vec::new();
        for lift in &self.lifts {
            match strength(&lift.movement, row.field(lift.position), lift.unit) {
                Ok(told) => lifts.push((lift.movement.clone(), told)),
                Err(fault) => bad.push((fault, Some(lift.position))),
            }
        }
        match (name, sex, mass, height) {
            (Some(name), Some(sex), Some(mass), Some(height)) if bad.is_empty() => Ok(TeamMember {
                line: row.line,
                name,
                sex,
                mass,
                height,
                training_months,
                age_years,
                injured,
                unwell,
                lifts,
            }),
            _ => Err(bad),
        }
    }

    /// A field that must be there.
    fn read<T>(
        &self,
        column: TeamColumn,
        row: &TableRow<'_>,
        bad: &mut Vec<BadCell>,
        read: impl FnOnce(&str, Option<&str>) -> std::result::Result<T, TeamRowFault>,
    ) -> Option<T> {
        let (text, unit) = self.cell(column, row);
        if text.is_empty() {
            bad.push((TeamRowFault::Missing(column), None));
            return None;
        }
        let field = self.place(column);
        read(text, unit)
            .map_err(|fault| bad.push((fault, field)))
            .ok()
    }

    /// A number that may be left out.
    fn number(
        &self,
        column: TeamColumn,
        row: &TableRow<'_>,
        bad: &mut Vec<BadCell>,
    ) -> Option<f64> {
        let (text, _) = self.cell(column, row);
        if text.is_empty() {
            return None;
        }
        let field = self.place(column);
        team_cells::number(column, text)
            .map_err(|fault| bad.push((fault, field)))
            .ok()
    }

    /// A yes or no that may be left out; what is neither is not taken for a no.
    fn is_told(&self, column: TeamColumn, row: &TableRow<'_>, bad: &mut Vec<BadCell>) -> bool {
        let (text, _) = self.cell(column, row);
        let told = team_cells::yes_or_no(column, text);
        told.map_err(|fault| bad.push((fault, self.place(column))))
            .unwrap_or(false)
    }
}
