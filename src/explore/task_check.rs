//! Whether tasks can be worked: each start is solved, its goal is not met there, and some turn of the dials meets it.
//!
//! In: tasks as they are read, the dials that a page leaves. Out: nothing, or every task that cannot be worked.

use super::dial::{DialRange, dials};
use super::laboratory::Laboratory;
use super::page_address::PageAddress;
use super::page_state::PageState;
use super::task_file::{PageTask, TaskFile};
use crate::error::{Error, Fault, PageFault, Result, TaskFault, What};
use crate::library::Library;
use std::collections::BTreeMap;

/// Places of the dial of the weight that are tried.
const LOAD_PLACES: u32 = 40;
/// Places of it that are tried together with another dial.
const FEW_PLACES: u32 = 6;
/// Places of any other dial.
const DIAL_PLACES: u32 = 4;
/// Most states of one start, assumed: the grid of a lift with many dials.
const MOST_STATES: usize = 1000;
/// Starts with a goal that nothing met, after which a file is bad enough (assumed).
const MOST_UNMET: usize = 3;

/// What a page leaves to its tasks.
#[derive(Debug, Clone, Copy)]
pub struct TaskGround<'a> {
    /// The only lift of the page.
    pub lift: Option<&'a str>,
    /// The lifter that the page begins with.
    pub lifter: &'a str,
    /// The groups of dials that are there; all of them without a word.
    pub only: Option<&'a [String]>,
    /// Model files.
    pub library: &'a Library,
}

/// Tries every task; those with one start together, so that it and what is near it is solved once.
///
/// **Fails** with every one whose start has no answer, whose goal is met there, or whose goal is met nowhere on the grid:
/// the weight over its dial, every other dial and piece by itself, and what changes the lift together with the weight.
/// No more than [`MOST_STATES`] are tried of a start, and none after [`MOST_UNMET`] starts with a goal that nothing met.
pub fn check_tasks(file: &TaskFile<'_>, tasks: &[PageTask], ground: TaskGround<'_>) -> Result<()> {
    let TaskGround { library, .. } = ground;
    let mut laboratory = Laboratory::new(library.clone());
    let mut of_starts: BTreeMap<&str, Vec<&PageTask>> = BTreeMap::new();
    for task in tasks {
        of_starts.entry(&task.start).or_default().push(task);
    }
    let mut of_starts: Vec<Vec<&PageTask>> = of_starts.into_values().collect();
    of_starts.sort_by_key(|tasks| tasks[0].lines.start);
    let (mut faults, mut unmet) = (Vec::new(), 0);
    for tasks in of_starts {
        let found = faults_of(&mut laboratory, &tasks, ground, file);
        let is_unmet = |(_, fault): &(usize, Fault)| {
            matches!(
                fault.what,
                What::Page(PageFault::Task(TaskFault::NeverMet { .. }))
            )
        };
        unmet += usize::from(found.iter().any(is_unmet));
        faults.extend(found);
        if unmet == MOST_UNMET {
            break;
        }
    }
    if faults.is_empty() {
        return Ok(());
    }
    faults.sort_by_key(|(line, _)| *line);
    let faults = faults.into_iter().map(|(_, fault)| fault);
    Err(Error::bad_input(faults.collect()))
}

/// Faults of tasks that share a start, with their lines.
fn faults_of(
    laboratory: &mut Laboratory,
    tasks: &[&PageTask],
    ground: TaskGround<'_>,
    file: &TaskFile<'_>,
) -> Vec<(usize, Fault)> {
    let line = tasks[0].lines.start;
    let told = |fault: TaskFault| (fault.line().unwrap_or(line), file.fault(fault));
    let start = match started(laboratory, tasks[0], ground) {
        Ok(start) => start,
        Err(Unstarted::Told(fault)) => return vec![told(fault)],
        Err(Unstarted::Unsolved(error)) => {
            let faults = error.faults().iter().cloned();
            return faults
                .map(|fault| (line, fault.at(file.place(line))))
                .collect();
        }
    };
    let mut tries = Tries {
        laboratory,
        open: tasks.to_vec(),
        count: 0,
    };
    tries.is_done(&start.state);
    let is_open = |task: &&&PageTask| tries.open.iter().any(|open| open.lines == task.lines);
    let met = tasks.iter().filter(|task| !is_open(task));
    let mut faults: Vec<(usize, Fault)> = met
        .map(|task| task.lines.goal)
        .map(|line| told(TaskFault::MetAtStart { line }))
        .collect();
    if let Err(error) = tries.walk(&start, ground.only) {
        faults.extend(error.faults().iter().map(|fault| (line, fault.clone())));
    }
    let tried = tries.count;
    let unmet = tries.open.iter().map(|task| task.lines.goal);
    faults.extend(unmet.map(|line| told(TaskFault::NeverMet { line, tried })));
    faults
}

/// Why there is no start.
enum Unstarted {
    Told(TaskFault),
    Unsolved(Error),
}

/// A start that has an answer.
struct Start {
    state: PageState,
    /// Unit of its weight, and where its dial ends.
    load_unit: &'static str,
    most_load: f64,
    speed_unit: &'static str,
}

fn started(
    laboratory: &mut Laboratory,
    task: &PageTask,
    ground: TaskGround<'_>,
) -> std::result::Result<Start, Unstarted> {
    let line = task.lines.start;
    let address = PageAddress::from_text(task.start.trim_start_matches('#'))
        .map_err(|fault| Unstarted::Told(fault.of_line(line)))?;
    let mut state = address.state;
    if state.lifter.is_empty() {
        ground.lifter.clone_into(&mut state.lifter);
    }
    if let Some(lift) = ground.lift.filter(|lift| *lift != state.lift) {
        return Err(Unstarted::Told(TaskFault::OtherLift {
            line,
            lift: state.lift,
            frozen: lift.to_owned(),
        }));
    }
    let loads = laboratory.loads(state.clone());
    let loads = loads.map_err(Unstarted::Unsolved)?;
    let load = address.load.unwrap_or(loads.usual_load);
    state.load = vec![format!("{load} {}", loads.unit)];
    let speed = address.speed;
    state.speed = speed.map(|speed| format!("{speed} {}", loads.speed_unit));
    laboratory.turn_to(&state).map_err(Unstarted::Unsolved)?;
    Ok(Start {
        state,
        load_unit: loads.unit,
        most_load: loads.most_load,
        speed_unit: loads.speed_unit,
    })
}

/// States of one start that are tried.
struct Tries<'a> {
    laboratory: &'a mut Laboratory,
    /// Tasks whose goal no state has met yet.
    open: Vec<&'a PageTask>,
    count: usize,
}

impl Tries<'_> {
    /// Tries a state; one without an answer meets nothing. Whether no more need be tried.
    fn is_done(&mut self, state: &PageState) -> bool {
        if !self.is_over() {
            self.count += 1;
            if let Ok(summary) = self.laboratory.summary_of(state) {
                self.open.retain(|task| !task.goal.is_met(&summary));
            }
        }
        self.is_over()
    }

    fn is_over(&self) -> bool {
        self.open.is_empty() || self.count >= MOST_STATES
    }

    /// Tries the states of the grid until every goal is met.
    fn walk(&mut self, start: &Start, only: Option<&[String]>) -> Result<()> {
        let is_open = |group: &str| only.is_none_or(|only| only.iter().any(|each| each == group));
        let has_load = is_open("load");
        if self.is_over() || (has_load && self.over_load(&start.state, start, LOAD_PLACES)) {
            return Ok(());
        }
        let mut states = Vec::new();
        if has_load {
            states.extend(self.hung(start)?);
        }
        let (lift, lifter) = (start.state.lift.clone(), start.state.lifter.clone());
        let bench = self.laboratory.bench_of(lift, lifter)?;
        for dial in dials(bench, start.state.units.into())?.ranges() {
            if is_open(dial.group) {
                states.extend(dial_states(&start.state, &dial));
            }
        }
        // All dials by themselves before any of them with the weight: most goals are near.
        if states.iter().any(|(state, _)| self.is_done(state)) {
            return Ok(());
        }
        let with_load = states.iter().filter(|(_, is_lift)| has_load && *is_lift);
        for (state, _) in with_load {
            if self.over_load(state, start, FEW_PLACES) {
                break;
            }
        }
        Ok(())
    }

    fn over_load(&mut self, state: &PageState, start: &Start, places: u32) -> bool {
        (0..=places).any(|place| {
            let load = start.most_load * f64::from(place) / f64::from(places);
            let mut state = state.clone();
            state.load = vec![format!("{load} {}", start.load_unit)];
            self.is_done(&state)
        })
    }

    /// The start with each band, each chain, and other speeds.
    fn hung(&self, start: &Start) -> Result<Vec<(PageState, bool)>> {
        let (bands, chains) = self.laboratory.hanging_names();
        let mut states = Vec::new();
        let mut push = |change: &dyn Fn(&mut PageState)| {
            let mut state = start.state.clone();
            change(&mut state);
            states.push((state, true));
        };
        for count in [1, 2, 4] {
            for name in &bands {
                push(&|state| state.band = vec![format!("{name}:{count}")]);
            }
            for name in &chains {
                push(&|state| state.chain = vec![format!("{name}:{count}")]);
            }
        }
        let speeds: &[f64] = match start.speed_unit {
            "m/s" => &[-0.6, -0.3, 0.3, 0.6, 1.0],
            _ => &[-120.0, -60.0, 60.0, 120.0, 240.0],
        };
        for speed in speeds {
            push(&|state| state.speed = Some(format!("{speed} {}", start.speed_unit)));
        }
        Ok(states)
    }
}

/// The start with a dial at places of its range; whether the dial changes how the lift is done.
fn dial_states(start: &PageState, dial: &DialRange) -> Vec<(PageState, bool)> {
    let values: Vec<String> = match &dial.words {
        Some(words) => words.clone(),
        None => (0..=DIAL_PLACES)
            .map(|place| {
                let [least, most] = dial.ends;
                let value = least + (most - least) * f64::from(place) / f64::from(DIAL_PLACES);
                format!("{value:.6} {}", dial.unit).trim().to_owned()
            })
            .collect(),
    };
    let is_lift = dial.group == "technique" || dial.group == "machine";
    values
        .into_iter()
        .map(|value| {
            let mut state = start.clone();
            let path = format!("{}=", dial.path);
            state.set.retain(|set| !set.starts_with(&path));
            state.set.push(path + &value);
            (state, is_lift)
        })
        .collect()
}
