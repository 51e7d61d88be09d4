// The page: reads the address, asks the model, shows the answer; one answer a frame at most.

import { $, lines, make, onPaper, printTheme, sight, tell, theme, warn, widthOf } from "./page.js";
import { Refused, ask, heldBytes, openModel } from "./model.js";
import { address, asked, isAddress, readAddress, state } from "./state.js";
import { buildDials, chooseMuscle, numberOf } from "./dials.js";
import { dragBody, dragChart, showBody, showChart, showDots } from "./picture.js";
import { showCloud, showQuestions, startDrawing, wireLearning } from "./learn.js";
import { buildTasks, checkTasks, leaveTask, showTasks } from "./tasks.js";
import { wireTaking } from "./take.js";

const options = JSON.parse($("options").textContent);
const { catalogue } = options;
let known = null;
let loads = null;
let solved = null;
let place = null;
let turnedLast = "";
let note = "";
let begun = null;
let frame = 0;
let whyTimer = 0;
const times = [];

/** Where the page is narrower, the curve stays in sight (`style.css`): it leaves room for the dials below it. */
const NARROW_PX = 960;
/** Charts on paper, as wide as the narrowest margins leave beside the body and below it. */
const ON_PAPER = { size: [400, 260], beside: [560, 260] };

function wish(withChart) {
  // Where another part of the page is shown, the chart has no width of its own.
  const wide = (holder) => Math.max(220, Math.round(widthOf(holder) || widthOf($("main"))));
  const width = wide($("chart"));
  const isSmall = sight.width < 640;
  const most = sight.height * (isSmall ? 0.36 : sight.width < NARROW_PX ? 0.42 : 0.56);
  const size = onPaper() ? ON_PAPER.size : [width, Math.round(Math.min(most, width * (isSmall ? 0.75 : 0.66)))];
  const beside = onPaper() ? ON_PAPER.beside : [wide($("beside")), Math.round(Math.min(420, wide($("beside")) * 0.7))];
  return {
    size: withChart ? size : null, beside: isLate && !onPaper() ? "nothing" : state.beside, beside_size: beside,
    theme: theme(), joint: state.joint ?? 0, muscle: muscleNumber(),
  };
}

function muscleNumber() {
  const number = solved ? solved.muscles.findIndex((muscle) => muscle.name === state.muscle) : -1;
  return number < 0 ? null : number;
}

/** Where a machine is slow, the chart of the muscles waits until a dial rests. */
const SLOW_MS = 14;
let isLate = false;

/** Solves the state and shows it; a state without an answer leaves the last picture and says why. */
function solve() {
  const from = performance.now();
  try {
    solved = ask({ ask: "solve", state: asked(loads), wish: wish(true), at: state.at });
    warn(note);
  } catch (fault) {
    if (!(fault instanceof Refused)) throw fault;
    warn(fault.message);
    return false;
  }
  place = solved.place;
  if (state.joint !== null) state.joint = Math.min(state.joint, solved.joints.length - 1);
  show();
  times.push(performance.now() - from);
  if (times.length > 6000) times.splice(0, 3000);
  return true;
}

function show() {
  $("finding").textContent = solved.title;
  showChart($("chart"), solved.chart, `${solved.head}. ${solved.sentences.join(" ")}`);
  $("figure-command").textContent = solved.commands.figure;
  $("table-command").textContent = solved.commands.table;
  $("sentences").replaceChildren(...lines([...solved.sentences, ...solved.warnings]));
  $("cautions").replaceChildren(...lines(solved.cautions));
  showHung();
  showPlace();
  checkTasks(solved, begun);
}

/** What hangs on the bar in words: which way a band pulls and where it hangs. */
function showHung() {
  if ($("hung-words")) $("hung-words").textContent = solved.hung ?? "";
}

/** Another place, muscle or chart beside of the same curve. */
function askPlace() {
  place = ask({ ask: "place", wish: wish(false), at: state.at });
  showPlace();
}

function showPlace() {
  const { numbers } = place;
  const inUnit = (value) => (value ?? null) === null ? null : value * solved.shown.load[1];
  const values = { capacity: inUnit(numbers.capacity_n ?? numbers.capacity_nm), demand: inUnit(numbers.demand_n ?? numbers.demand_nm), unit: solved.shown.load[0] };
  showDots($("chart"), solved.chart, solved.across[place.sample], values);
  showBody($("body"), solved, place, state.muscle);
  if (place.beside) showChart($("beside"), place.beside, `${$("muscle-head").textContent}: ${document.querySelector("[data-beside][aria-pressed=true]").textContent}`);
  $("here").textContent = place.words.replaceAll(" %", "\u00a0%");
  $("at").value = place.sample / (solved.range.length - 1);
  $("at").setAttribute("aria-valuetext", place.words);
  showTable();
}

const rows = [];

function showTable() {
  const { force, arm, torque } = solved.shown;
  const order = place.numbers.muscles.map((_, index) => index).sort((a, b) => Math.abs(place.torques_nm[b]) - Math.abs(place.torques_nm[a]));
  while (rows.length < order.length) rows.push(tableRow());
  order.forEach((index, line) => {
    const muscle = place.numbers.muscles[index];
    const { row, button, cells } = rows[line];
    tell(button, solved.muscles[index].title);
    button.value = solved.muscles[index].name;
    row.className = button.value === state.muscle ? "chosen" : "";
    const told = [
      `${(muscle.activation * 100).toFixed(0)} %`, (muscle.force_n * force[1]).toFixed(0), (place.arms_m[index] * arm[1]).toFixed(1),
      (place.torques_nm[index] * torque[1]).toFixed(1), `${(muscle.fibre_length_norm * 100).toFixed(0)} %${place.is_living[index] ? "" : " †"}`,
    ];
    told.forEach((text, cell) => tell(cells[cell], text.replace(/^-(0\.?0*)$/, "$1").replace("-", "\u2212")));
    cells[4].className = place.is_living[index] ? "" : "out";
  });
  $("force-unit").textContent = force[0];
  $("arm-unit").textContent = arm[0];
  $("torque-unit").textContent = torque[0];
  if ($("table").childElementCount !== order.length) $("table").replaceChildren(...rows.slice(0, order.length).map((each) => each.row));
}

function tableRow() {
  const button = make("button", { type: "button", on: { click: () => { chooseMuscle(button.value); refresh(true); } } });
  const cells = Array.from({ length: 5 }, () => make("td"));
  return { row: make("tr", {}, make("td", {}, button), ...cells), button, cells };
}

/** Shows what changed at once: the whole curve, or only another place of it. Whatever comes before the next frame waits for it. */
let waiting = null;
function refresh(whole) {
  if (frame) {
    waiting ||= whole;
    return;
  }
  frame = requestAnimationFrame(() => {
    frame = 0;
    const [more, all] = [waiting !== null, waiting];
    waiting = null;
    if (more) refresh(all);
  });
  const all = whole || !solved;
  if (all) {
    isLate = times.length > 3 && times.at(-1) > SLOW_MS;
    solve();
  } else {
    askPlace();
  }
  clearTimeout(whyTimer);
  whyTimer = setTimeout(afterwards, 250, all);
}

/** What may come a moment later: the reasons and the address. */
function afterwards(whole) {
  history.replaceState(null, "", address());
  if (isLate) {
    isLate = false;
    askPlace();
  }
  if (!whole) return;
  const told = ask({ ask: "why" });
  document.querySelector(".why").classList.toggle("told", told.length > 0);
  $("why").replaceChildren(...lines(told.length ? told : ["Turn a dial: the former curve stays as a thin line, and what changed is told here, muscle by muscle."]));
}

/** Before another dial is turned, the present curve becomes the one to compare with. */
function turned(id) {
  note = "";
  if (id === "muscle") { refresh(true); return; }
  if (id !== turnedLast) ask({ ask: "keep" });
  turnedLast = id;
  refresh(true);
}

/** Turns to the lift and lifter of the state; `later` leaves the dials to be built after the first picture. */
function turnLift(fresh, later = false) {
  if (fresh) {
    note = "";
    state.load = null;
    state.set = {};
    [state.band, state.chain] = ["", ""];
    state.speed = 0;
    state.joint = null;
  }
  try {
    loads = ask({ ask: "loads", state: asked(null) });
  } catch (fault) {
    if (!(fault instanceof Refused)) throw fault;
    warn(fault.message);
    return false;
  }
  state.load ??= loads.usual_load;
  ask({ ask: "forget" });
  turnedLast = "";
  const isSolved = solve();
  if (isSolved && !solved.muscles.some((muscle) => muscle.name === state.muscle)) {
    state.muscle = strongest();
    askPlace();
  }
  if (isSolved && state.joint === null) {
    state.joint = solved.first_joint;
    askPlace();
  }
  if (isSolved) fill($("joint"), solved.joints.map((joint, index) => [index, joint.title]), state.joint);
  if (!later) furnish();
  return isSolved;
}

/** Everything around the picture. */
function furnish() {
  known = ask({ ask: "dials", lift: state.lift, lifter: state.lifter, units: state.units });
  buildDials(known, loads, catalogue, options.only, turned);
  if (solved) showHung();
  if (solved) afterwards(true);
  if (state.view === "predict") startDrawing();
  if (state.view === "class") showCloud();
  if (state.view === "quiz") showQuestions();
}

/** The same state in other units. */
function turnUnits(units) {
  const [formerDials, formerLoads] = [known.dials, loads];
  state.units = units;
  known = ask({ ask: "dials", lift: state.lift, lifter: state.lifter, units });
  loads = ask({ ask: "loads", state: { lift: state.lift, lifter: state.lifter, units } });
  if (state.load !== null) state.load = Math.round((state.load / formerLoads.per_kg) * loads.per_kg * 100) / 100;
  known.dials.forEach((dial, index) => {
    const former = formerDials[index];
    const number = numberOf(state.set[dial.path], former.kind.unit);
    if (former.kind.unit !== dial.kind.unit && !Number.isNaN(number)) {
      state.set[dial.path] = `${Number(((number / former.kind.per_si) * dial.kind.per_si).toPrecision(9))} ${dial.kind.unit}`;
    }
  });
  turnLift(false);
}

/** The muscle that pulls most at the place on the page. */
function strongest() {
  const forces = place.numbers.muscles.map((muscle) => muscle.force_n);
  return solved.muscles[forces.indexOf(Math.max(...forces))].name;
}

function fill(select, entries, chosen) {
  select.replaceChildren(...entries.map(([value, text]) => make("option", { value, selected: String(value) === String(chosen) }, text)));
}

function turnView(view) {
  state.view = view;
  if (view !== "tasks") leaveTask();
  markView();
  if (view === "predict") startDrawing();
  if (view === "quiz") showQuestions();
  if (view === "class") showCloud();
  refresh(true);
  if (view === "tasks") showTasks();
}

function markView() {
  const { view } = state;
  for (const button of document.querySelectorAll("[data-view]")) button.setAttribute("aria-pressed", String(button.dataset.view === view));
  for (const part of document.querySelectorAll("[data-in]")) part.hidden = !part.dataset.in.split(" ").includes(view);
  const isSingle = ["predict", "quiz", "class"].includes(view);
  $("stage").hidden = isSingle;
  $("main").classList.toggle("single", isSingle);
}

function wire() {
  $("lift").addEventListener("change", () => { state.lift = $("lift").value; state.muscle = ""; turnLift(true); });
  $("lifter").addEventListener("change", () => { state.lifter = $("lifter").value; turnLift(true); });
  $("at").addEventListener("input", () => { state.at = Number($("at").value); refresh(false); });
  $("joint").addEventListener("change", () => { state.joint = Number($("joint").value); refresh(false); });
  $("keep").addEventListener("click", () => { ask({ ask: "keep" }); turnedLast = "kept"; refresh(true); });
  $("units").addEventListener("change", () => turnUnits($("units").value));
  $("reset").addEventListener("click", () => turnLift(true));
  for (const button of document.querySelectorAll("[data-view]")) button.addEventListener("click", () => turnView(button.dataset.view));
  for (const button of document.querySelectorAll("[data-beside]")) button.addEventListener("click", () => turnBeside(button.dataset.beside));
  const drag = (at) => { state.at = at; refresh(false); };
  dragChart($("chart"), () => solved, drag);
  dragBody($("body"), () => solved, drag);
  wireTaking(() => state.lift);
  wireLearning(() => solved);
  buildTasks(options.tasks, beginTask);
  new ResizeObserver(() => refresh(true)).observe($("chart"));
  new ResizeObserver(measureStuck).observe(document.querySelector(".curve"));
  // The link leads on within the page; the address stays what it is.
  document.querySelector(".skip").addEventListener("click", (event) => {
    event.preventDefault();
    const target = $("stage").hidden ? document.querySelector(".panel:not([hidden]) h1") : $("stage");
    target.tabIndex = -1;
    target.focus();
  });
  // Paper is light, whatever the screen is.
  for (const [event, isPaper] of [["beforeprint", true], ["afterprint", false]]) addEventListener(event, () => { printTheme(isPaper); if (solved) solve(); });
  matchMedia("(prefers-color-scheme: dark)").addEventListener("change", () => refresh(true));
  addEventListener("hashchange", () => { if (isAddress(location.hash)) openAddress(location.hash); });
}

/** What is focused below the chart that stays in sight does not hide under it. */
function measureStuck() {
  const curve = document.querySelector(".curve");
  const isStuck = getComputedStyle(curve).position === "sticky";
  document.documentElement.style.scrollPaddingTop = isStuck ? `${curve.offsetHeight + 8}px` : "0";
}

/** A task begins at its address, with the first dial under the hand. */
function beginTask(task) {
  begun = task;
  openAddress(task.start);
  state.view = "tasks";
  markView();
  refresh(true);
  const dial = document.querySelector("#dials details[open] input, #dials details[open] select");
  (dial?.closest(".dial") ?? $("dials")).scrollIntoView({ block: "center" });
  dial?.focus({ preventScroll: true });
}

function turnBeside(beside) {
  state.beside = beside;
  markBeside();
  refresh(false);
}

function markBeside() {
  for (const button of document.querySelectorAll("[data-beside]")) button.setAttribute("aria-pressed", String(button.dataset.beside === state.beside));
}

/** Turns the page to an address; what no model answers is left, and the page says so. */
function openAddress(hash, later = false) {
  note = "";
  let told = readAddress(hash || "#");
  // A load, a band or a setting of one lift says nothing of another.
  if (options.lift && /[#&]lift=/.test(hash) && state.lift !== options.lift) {
    readAddress("#");
    told = ["The address is of another lift than this page: nothing of it is taken."];
  }
  if (options.lift) state.lift = options.lift;
  if (options.lifter && !/[#&]lifter=/.test(hash)) state.lifter = options.lifter;
  const has = (list, name) => list.some((each) => each.name === name);
  const lacks = (what, name) => { told.push(`There is no ${what} \u201c${name}\u201d here.`); };
  if (!has(catalogue.lifts, state.lift)) { lacks("lift", state.lift); state.lift = catalogue.lifts[0].name; }
  if (!has(catalogue.lifters, state.lifter)) { lacks("lifter", state.lifter); state.lifter = catalogue.lifters[0].name; }
  if (state.band && !catalogue.bands.includes(state.band)) { lacks("band", state.band); state.band = ""; }
  if (state.chain && !catalogue.chains.includes(state.chain)) { lacks("chain", state.chain); state.chain = ""; }
  fill($("lift"), catalogue.lifts.map((lift) => [lift.name, lift.title]), state.lift);
  fill($("lifter"), catalogue.lifters.map((lifter) => [lifter.name, lifter.title]), state.lifter);
  $("lift").disabled = Boolean(options.lift);
  $("units").value = state.units;
  if (state.view === "tasks" && !options.tasks.length) state.view = "explore";
  markView();
  markBeside();
  if (!turnLift(false, later)) {
    told.push(`The address could not be shown: ${$("notice").textContent}`);
    [state.set, state.band, state.chain] = [{}, "", ""];
    turnLift(true, later);
  }
  note = told.join("\n");
  warn(note);
}

async function open() {
  await openModel($("module").textContent);
  $("version").textContent = `torquill ${catalogue.version}, model ${catalogue.model_hash.slice(0, 19)}.`;
  wire();
  openAddress(location.hash, true);
  await nextPicture();
  document.documentElement.dataset.shown = String(Math.round(performance.now()));
  furnish();
  document.documentElement.dataset.ready = String(Math.round(performance.now()));
}

/** After the browser has drawn; a page that nobody looks at draws nothing, so it is not waited for long. */
const nextPicture = () => new Promise((done) => { requestAnimationFrame(() => setTimeout(done)); setTimeout(done, 500); });

/** For the browser test: the state, the answer, and how long answers took. */
globalThis.torquill = { state, ask, asked: () => asked(loads), address, times, heldBytes, solved: () => solved, solve };

open().catch((fault) => { warn(`The page cannot run here: ${fault.message}`); });
