//! One page's model: what was read and solved last stays, so that a dial's turn costs one curve.
//!
//! In: a question as JSON. Out: its answer as JSON, `{"answer": …}` or `{"faults": […]}`.

use super::answer::{PageSolution, solution};
use super::catalogue::catalogue;
use super::dial::dials;
use super::drawn::judged;
use super::page_place::{PagePlace, place};
use super::page_state::{PageState, PageUnits};
use super::questions::{Questions, questions};
use super::shown_chart::{ChartWish, WishedTheme};
use super::solved_state::SolvedState;
use super::usual_loads::{UsualLoads, usual_loads};
use crate::draw::svg;
use crate::error::{Error, PageFault, Result, Shelf};
use crate::figures::strength_curve;
use crate::grammar::{item_from_text, setup_from_texts};
use crate::library::{Library, Model, Workbench};
use crate::narrative::faults::told;
use crate::narrative::page_words::change_in_words;
use crate::plot::Look;
use crate::report::{CurveSummary, curve_data, summary};
use crate::resistance::Setup;
use crate::study::{Question, asked_pace, causes_between, study};
use crate::units::System;
use serde::{Deserialize, Serialize};
use std::rc::Rc;

/// What the page asks.
#[derive(Debug, Deserialize)]
#[serde(tag = "ask", rename_all = "snake_case", deny_unknown_fields)]
enum Asked {
    /// Which lifts, lifters, bands and chains there are.
    Catalogue,
    /// The dials of a lift and a lifter.
    Dials {
        lift: String,
        lifter: String,
        units: PageUnits,
    },
    /// Weights that suit a state, whatever weight it has itself.
    Loads { state: PageState },
    /// The curve of a state, with its charts.
    Solve {
        state: PageState,
        wish: ChartWish,
        at: f64,
    },
    /// Another place of the same curve.
    Place { wish: ChartWish, at: f64 },
    /// The present curve becomes the former one.
    Keep,
    /// No former curve any more.
    Forget,
    /// What changed since the former curve, and why.
    Why,
    /// The figure as the program draws it.
    Figure { theme: WishedTheme },
    /// The table as the program prints it.
    Table { detail: bool },
    /// Questions about the lift; the number chooses.
    Questions { seed: u32 },
    /// How near a drawn curve is, its values evenly spaced over the range.
    Judge { drawn: Vec<f64> },
}

/// One page's model.
#[derive(Debug)]
pub struct Laboratory {
    shelves: Library,
    bench: Option<((String, String), Workbench)>,
    now: Option<Rc<SolvedState>>,
    before: Option<Rc<SolvedState>>,
}

impl Default for Laboratory {
    fn default() -> Self {
        Self::new(Library::built_in())
    }
}

/// An answer, or why there is none.
#[derive(Serialize)]
#[serde(rename_all = "snake_case")]
enum Given<T: Serialize> {
    Answer(T),
    Faults(Vec<ToldFault>),
}

#[derive(Serialize)]
struct ToldFault {
    message: String,
    hints: Vec<String>,
}

impl Laboratory {
    /// A laboratory over a library.
    #[must_use]
    pub fn new(library: Library) -> Self {
        Self {
            shelves: library,
            bench: None,
            now: None,
            before: None,
        }
    }

    /// The answer to a question, both as JSON.
    pub fn ask(&mut self, question: &str) -> String {
        let asked: Asked = match serde_json::from_str(question) {
            Ok(asked) => asked,
            Err(fault) => {
                let cause = fault.to_string();
                let fault = Error::bad(PageFault::Unreadable { cause });
                return json(Err::<(), _>(fault), System::Metric);
            }
        };
        let units = self.units(&asked);
        match asked {
            Asked::Catalogue => json(catalogue(&self.shelves), units),
            Asked::Dials { lift, lifter, .. } => {
                let bench = self.bench_of(lift, lifter);
                json(bench.and_then(|bench| dials(bench, units)), units)
            }
            Asked::Loads { state } => json(self.loads(state), units),
            Asked::Solve { state, wish, at } => json(self.solve(state, &wish, at), units),
            Asked::Place { wish, at } => json(self.place(&wish, at), units),
            Asked::Keep => {
                self.before = self.now.clone();
                json(Ok(()), units)
            }
            Asked::Forget => {
                self.before = None;
                json(Ok(()), units)
            }
            Asked::Why => json(self.why(), units),
            Asked::Figure { theme } => json(self.figure(theme), units),
            Asked::Table { detail } => json(self.table(detail), units),
            Asked::Questions { seed } => json(self.questions(seed), units),
            Asked::Judge { drawn } => {
                let now = self.solved();
                json(now.and_then(|now| judged(&now.study, &drawn, units)), units)
            }
        }
    }

    /// Summary and table of a state, for those who hold the page's numbers to the program's.
    ///
    /// **Fails** as the lift does.
    pub fn numbers(&mut self, state: &PageState) -> Result<(CurveSummary, String)> {
        self.turn_to(state)?;
        let now = self.solved()?;
        let setup = now.study.setups.first();
        let table = curve_data(&now.study, setup, true).csv();
        Ok((summary(&now.study, setup), table))
    }

    /// Summary of a state.
    ///
    /// **Fails** as the lift does.
    pub(super) fn summary_of(&mut self, state: &PageState) -> Result<CurveSummary> {
        self.turn_to(state)?;
        let now = self.solved()?;
        Ok(summary(&now.study, now.study.setups.first()))
    }

    /// Names of the bands and of the chains that can hang on a bar.
    pub(super) fn hanging_names(&self) -> (Vec<String>, Vec<String>) {
        let names = |shelf| self.shelves.names(shelf);
        (names(Shelf::Bands), names(Shelf::Chains))
    }

    fn solved(&self) -> Result<Rc<SolvedState>> {
        let now = self.now.clone();
        now.ok_or_else(|| Error::bad(PageFault::NothingSolved))
    }

    /// Units that a question is to be answered in: its own, or those of what was solved.
    fn units(&self, asked: &Asked) -> System {
        match asked {
            Asked::Solve { state, .. } | Asked::Loads { state } => state.units.into(),
            Asked::Dials { units, .. } => (*units).into(),
            _ => self.now.as_ref().map_or(System::Metric, |now| now.units()),
        }
    }

    pub(super) fn loads(&mut self, mut state: PageState) -> Result<UsualLoads> {
        state.check(&self.shelves)?;
        state.load.clear();
        let model = self.model(&state)?;
        let beside = self.setup(&state)?.unwrap_or_default();
        usual_loads(&model, &beside, state.units.into())
    }

    pub(super) fn bench_of(&mut self, lift: String, lifter: String) -> Result<&Workbench> {
        let state = PageState {
            lift,
            lifter,
            ..PageState::default()
        };
        state.check(&self.shelves)?;
        self.bench(&state)
    }

    fn solve(&mut self, state: PageState, wish: &ChartWish, at: f64) -> Result<PageSolution> {
        self.turn_to(&state)?;
        let now = self.solved()?;
        solution(&now, self.before.as_deref(), wish, at)
    }

    fn place(&self, wish: &ChartWish, at: f64) -> Result<PagePlace> {
        let now = self.solved()?;
        place(&now, wish, at)
    }

    fn why(&self) -> Result<Vec<String>> {
        let now = self.solved()?;
        let Some(before) = &self.before else {
            return Ok(Vec::new());
        };
        if before.study.movement_name != now.study.movement_name {
            return Ok(Vec::new());
        }
        let causes = causes_between(
            (&before.model, &before.study, before.pace),
            (&now.model, &now.study, now.pace),
        )?;
        Ok(change_in_words(
            &before.study,
            &now.study,
            &causes,
            now.units(),
        ))
    }

    fn questions(&mut self, seed: u32) -> Result<Questions> {
        let now = self.solved()?;
        let bench = self.bench(&now.state.clone())?;
        questions(&now, bench, seed)
    }

    fn figure(&self, theme: WishedTheme) -> Result<String> {
        let now = self.solved()?;
        let told = now.study.told(now.units());
        let look = Look {
            theme: theme.into(),
            ..Look::default()
        };
        svg(&strength_curve(told, &told.strength_words(), look)?)
    }

    fn table(&self, detail: bool) -> Result<String> {
        let now = self.solved()?;
        let table = curve_data(&now.study, now.study.setups.first(), detail);
        Ok(table.csv())
    }

    /// The workbench of a state's lift and lifter.
    fn bench(&mut self, state: &PageState) -> Result<&Workbench> {
        let names = (state.lift.clone(), state.lifter.clone());
        if self.bench.as_ref().is_none_or(|(known, _)| *known != names) {
            let opened = Workbench::open(&self.shelves, &names.1, &names.0)?;
            self.bench = Some((names, opened));
        }
        let (_, bench) = self.bench.as_ref().expect("a bench was just opened");
        Ok(bench)
    }

    /// Solves a state, unless it is the present one.
    pub(super) fn turn_to(&mut self, state: &PageState) -> Result<()> {
        if self.now.as_ref().is_some_and(|now| now.state == *state) {
            return Ok(());
        }
        state.check(&self.shelves)?;
        let model = self.model(state)?;
        let setups: Vec<Setup> = self.setup(state)?.into_iter().collect();
        let pace = asked_pace(state.speed.as_deref())?;
        let mut question = Question::new(&state.lift, &model.movement, &model.lifter);
        question.pace = pace;
        let study = study(&question, &setups)?;
        self.now = Some(Rc::new(SolvedState {
            state: state.clone(),
            model,
            pace,
            study,
        }));
        Ok(())
    }

    /// The model of a state: the present one where only the load differs.
    fn model(&mut self, state: &PageState) -> Result<Rc<Model>> {
        let now = self.now.iter().chain(&self.before);
        let is_same = |solved: &&Rc<SolvedState>| {
            let known = &solved.state;
            (&known.lift, &known.lifter, &known.set) == (&state.lift, &state.lifter, &state.set)
        };
        if let Some(known) = now.clone().find(is_same) {
            return Ok(Rc::clone(&known.model));
        }
        self.bench(state)?.model(&state.set).map(Rc::new)
    }

    fn setup(&self, state: &PageState) -> Result<Option<Setup>> {
        let pieces = self.shelves.pieces()?;
        let stock = pieces.stock();
        let mut setup = setup_from_texts(
            &borrowed(&state.load),
            &borrowed(&state.band),
            &borrowed(&state.chain),
            &stock,
        )?;
        for text in &state.item {
            setup.items.push(item_from_text(text, &stock)?);
        }
        Ok((!setup.items.is_empty()).then_some(setup))
    }
}

fn borrowed(list: &[String]) -> Vec<&str> {
    list.iter().map(String::as_str).collect()
}

fn json<T: Serialize>(result: Result<T>, units: System) -> String {
    let given = match result {
        Ok(answer) => Given::Answer(answer),
        Err(error) => Given::Faults(
            error
                .faults()
                .iter()
                .map(|fault| {
                    let words = told(fault, units);
                    ToldFault {
                        message: words.message,
                        hints: words.hints,
                    }
                })
                .collect(),
        ),
    };
    serde_json::to_string(&given).expect("answers are structs, so every key is a text")
}
