// Predict first, questions, and the class's cloud of curves.

import { $, lines, make } from "./page.js";
import { ask } from "./model.js";
import { state } from "./state.js";
import { copy } from "./take.js";

const COUNT = 21;
const MARK = "torquill-curve-1";
const SIZE = { width: 720, height: 400, left: 60, right: 14, top: 8, bottom: 38 };
const TOP = 1.25;

const x = (share) => SIZE.left + share * (SIZE.width - SIZE.left - SIZE.right);
const y = (value) => SIZE.height - SIZE.bottom - (value / TOP) * (SIZE.height - SIZE.top - SIZE.bottom);

/** The room of a box: as wide as the page gives it, so that letters keep their size, and no higher than is seen at once. */
function measure(holder) {
  SIZE.width = Math.max(260, Math.min(1200, holder.clientWidth || 720));
  SIZE.height = Math.round(Math.max(200, Math.min(0.62 * SIZE.width, 0.55 * innerHeight)));
}

/** A word at a curve, in its colour, where the other curve is farthest away and on the side that is away from it. */
const named = (kind, values, other, text) => {
  const places = values.map((_, index) => index).filter((index) => index >= 0.15 * COUNT && index <= 0.85 * COUNT);
  const away = (index) => (other ? Math.abs(values[index] - other[index]) : -Math.abs(index / COUNT - 0.5));
  const best = places.reduce((found, index) => (away(index) > away(found) ? index : found), places[0]);
  const isUnder = other ? values[best] < other[best] : false;
  // Clear of the curve over the word's width.
  const around = values.slice(Math.max(0, best - 3), best + 4);
  const value = Math.min(isUnder ? Math.min(...around) : Math.max(...around), TOP);
  return make("text", { class: `name ${kind}`, x: x(best / (COUNT - 1)), y: y(value) + (isUnder || value > 1.1 ? 24 : -12), "text-anchor": "middle" }, text);
};

/** An empty box: the range across, capacity upwards in per cent of the greatest. */
function box(label, ...curves) {
  const grid = [0, 0.25, 0.5, 0.75, 1].flatMap((value) => [
    make("line", { class: value ? "grid" : "axis", x1: x(0), x2: x(1), y1: y(value), y2: y(value) }),
    make("text", { x: x(0) - 8, y: y(value) + 5, "text-anchor": "end" }, `${value * 100} %`),
  ]);
  const ends = [[0, "start", "start"], [0.5, "range of the lift", "middle"], [1, "end", "end"]].map(([share, text, anchor]) =>
    make("text", { x: x(share), y: SIZE.height - 14, "text-anchor": anchor }, text));
  return make("svg", { viewBox: `0 0 ${SIZE.width} ${SIZE.height}`, role: "img", "aria-label": label }, ...grid, ...ends, ...curves);
}

const path = (values) => `M${values.map((value, index) => `${x(index / (values.length - 1)).toFixed(1)} ${y(value).toFixed(1)}`).join("L")}`;

let drawn = Array(COUNT).fill(0.6);
/** Which of the places somebody drew; the others follow the nearest of them. */
let touched = Array(COUNT).fill(false);
let solvedNow = () => null;

let revealed = null;

function showDrawing(model = null) {
  revealed = model;
  measure($("draw"));
  const curves = [make("path", { class: touched.includes(true) ? "own" : "one", d: path(drawn) })];
  if (model) {
    curves.unshift(make("path", { class: "model", d: path(model) }));
    curves.push(named("model", model, drawn, "the model"), named("own", drawn, model, "you"));
  }
  $("reveal").disabled = !touched.includes(true);
  const picture = box(model ? "Your curve and the model's" : "Your curve", ...curves);
  $("draw").replaceChildren(picture);
}

const scaled = (values) => { const most = Math.max(...values, 1e-9); return values.map((value) => value / most); };

/** The model's curve at as many places as are drawn, as far up as Explore shows it; its highest point shown is 1. */
function model() {
  const { capacity, top } = solvedNow();
  return scaled(Array.from({ length: COUNT }, (_, index) => {
    const at = (index / (COUNT - 1)) * (capacity.length - 1);
    return Math.min(capacity[Math.round(at)], top ?? Infinity);
  }));
}

function wireDrawing() {
  let last = null;
  const put = (event) => {
    const picture = $("draw").querySelector("svg");
    const at = new DOMPoint(event.clientX, event.clientY).matrixTransform(picture.getScreenCTM().inverse());
    const share = Math.min(1, Math.max(0, (at.x - x(0)) / (x(1) - x(0))));
    const value = Math.min(TOP, Math.max(0, ((y(0) - at.y) / (y(0) - y(TOP))) * TOP));
    const index = Math.round(share * (COUNT - 1));
    const [from, to] = [Math.min(last?.[0] ?? index, index), Math.max(last?.[0] ?? index, index)];
    for (let between = from; between <= to; between += 1) {
      const part = last && last[0] !== index ? (between - last[0]) / (index - last[0]) : 1;
      drawn[between] = last ? last[1] + part * (value - last[1]) : value;
      touched[between] = true;
    }
    fillGaps();
    last = [index, value];
    showDrawing();
    showPoints();
  };
  const holder = $("draw");
  holder.addEventListener("pointerdown", (event) => { last = null; holder.setPointerCapture(event.pointerId); put(event); });
  holder.addEventListener("pointermove", (event) => { if (holder.hasPointerCapture(event.pointerId)) put(event); });
}

/** Where nobody drew, the curve goes straight on between what was drawn, and level to the ends. */
function fillGaps() {
  const known = touched.flatMap((is, index) => (is ? [index] : []));
  drawn.forEach((_, index) => {
    if (touched[index]) return;
    const before = known.findLast((each) => each < index);
    const after = known.find((each) => each > index);
    const part = before === undefined || after === undefined ? 0 : (index - before) / (after - before);
    drawn[index] = drawn[before ?? after] + part * (drawn[after ?? before] - drawn[before ?? after]);
  });
}

const POINTS = [[0, "Start"], [5, "First quarter"], [10, "Middle"], [15, "Last quarter"], [20, "End"]];

function showPoints() {
  for (const [index] of POINTS) {
    const input = $(`point-${index}`);
    input.value = Math.round(drawn[index] * 100);
    tellPoint(input);
  }
}

/** The value of a slider, for the eye and for the ear. */
function tellPoint(input) {
  const told = `${input.value} %`;
  input.setAttribute("aria-valuetext", told);
  input.previousElementSibling.textContent = told;
}

function buildPoints() {
  $("points").replaceChildren(...POINTS.map(([index, name]) => make("div", { class: "point" }, make("label", { for: `point-${index}` }, name), make("output", { for: `point-${index}` }),
    make("input", { type: "range", id: `point-${index}`, min: 0, max: 125, step: 1, value: 60, on: { input: between } }))));
}

/** Straight lines between the five points that the keyboard sets. */
function between() {
  const values = POINTS.map(([index]) => Number($(`point-${index}`).value) / 100);
  POINTS.forEach(([index]) => tellPoint($(`point-${index}`)));
  touched = Array(COUNT).fill(true);
  drawn = Array.from({ length: COUNT }, (_, index) => {
    const part = Math.min(3, Math.floor(index / 5));
    return values[part] + ((index - part * 5) / 5) * (values[part + 1] - values[part]);
  });
  showDrawing();
}

export function wireLearning(solved, load) {
  solvedNow = solved;
  buildPoints();
  wireDrawing();
  $("again").addEventListener("click", startDrawing);
  $("reveal").addEventListener("click", () => {
    const judged = ask({ ask: "judge", drawn });
    drawn = scaled(drawn);
    showDrawing(model());
    $("verdict").replaceChildren(make("p", { class: "strong" }, `${judged.points} of 100 points.`), make("ul", {}, ...lines(judged.words)));
    $("line").hidden = false;
    showPoints();
  });
  $("show-model").addEventListener("click", () => { isModelShown = !isModelShown; showCloud(); });
  $("line").addEventListener("click", () => copy(resultLine(), "Result line"));
  $("lines").addEventListener("input", showCloud);
  addEventListener("resize", () => {
    if (state.view === "predict") showDrawing(revealed);
    if (state.view === "class") showCloud();
  });
  wireQuestions(load);
}

export function startDrawing() {
  drawn = Array(COUNT).fill(0.6);
  touched = Array(COUNT).fill(false);
  $("rule").textContent = solvedNow()?.score_rule ?? "";
  $("verdict").replaceChildren();
  $("line").hidden = true;
  showDrawing();
  showPoints();
}

/** One person's drawn curve as a line of text, without a name. */
function resultLine() {
  return [MARK, state.lift, state.lifter, ...scaled(drawn).map((value) => value.toFixed(3))].join(" ");
}

/** A result line in whatever a mail or a chat has put around it: quoted, behind a name, with decimal commas. */
function readLine(text) {
  const from = text.indexOf(MARK);
  if (from < 0) return null;
  const [, lift, lifter, ...values] = text.slice(from).trim().replace(/[)\]>"'*;]+$/, "").split(/[\s;]+/);
  const numbers = values.map((value) => Number(value.replace(",", ".")));
  const isFit = /^[\w-]{1,60}$/.test(lift ?? "") && /^[\w-]{1,60}$/.test(lifter ?? "") && numbers.length === COUNT &&
    numbers.every((value) => Number.isFinite(value) && value >= 0 && value <= TOP);
  return isFit ? { lift, lifter, numbers, key: [lift, lifter, ...numbers].join(" ") } : null;
}

const counted = (count, one, many) => `${count} ${count === 1 ? one : many}`;

/** What a class sent: the curves of the lift and lifter on the page, and how many of each other kind. */
function readClass(text) {
  const read = text.slice(0, 200000).split("\n").filter((line) => line.trim()).map(readLine);
  const sound = read.filter(Boolean);
  const once = sound.filter((line, index) => sound.findIndex((other) => other.key === line.key) === index);
  const ofLift = once.filter((line) => line.lift === state.lift);
  const of = ofLift.filter((line) => line.lifter === state.lifter);
  const told = [`${counted(of.length, "curve", "curves")} of this lift and lifter (thin)${of.length ? ", mean of the class (orange)" : ""}.`];
  const others = [
    [once.length - ofLift.length, "line is of another lift", "lines are of another lift"],
    [ofLift.length - of.length, "line is of another lifter", "lines are of another lifter"],
    [sound.length - once.length, "line stands there twice and counts once", "lines stand there twice and count once"],
    [read.length - sound.length, "line cannot be read", "lines cannot be read"],
  ];
  for (const [count, one, many] of others) if (count) told.push(`${counted(count, one, many)}.`);
  return { of, told };
}

/** The model's curve of the class's lift is shown on demand alone: whoever looks may not have predicted yet. */
let isModelShown = false;

/** All curves of the class that are of the lift and lifter on the page, and their mean. */
export function showCloud() {
  const { of, told } = readClass($("lines").value);
  measure($("cloud"));
  const curves = of.map(({ numbers }) => make("path", { class: "one", d: path(numbers) }));
  const mean = of.length ? Array.from({ length: COUNT }, (_, index) => of.reduce((sum, { numbers }) => sum + numbers[index], 0) / of.length) : null;
  const shown = isModelShown && solvedNow() ? model() : null;
  if (mean) curves.push(make("path", { class: "own", d: path(mean) }));
  if (shown) curves.push(make("path", { class: "model", d: path(shown) }));
  if (mean) curves.push(named("own", mean, shown, "the class"));
  if (shown) curves.push(named("model", shown, mean, "the model"));
  if (shown) told.push("The model's curve is blue.");
  const label = shown ? "The curves of the class, their mean, and the model's" : "The curves of the class, and their mean";
  $("cloud").replaceChildren(box(label, ...curves));
  $("show-model").textContent = shown ? "Hide the model's curve" : "Show the model's curve";
  $("show-model").setAttribute("aria-pressed", String(Boolean(shown)));
  $("cloud-words").textContent = told.join(" ");
}

let seed = 1;

function wireQuestions(load) {
  const fresh = () => { seed = (seed * 48271) % 2147483647; showQuestions(load); };
  $("quiz").fresh = fresh;
}

/** Another set of questions about the lift on the page. */
export function showQuestions(load) {
  const { questions } = ask({ ask: "questions", seed });
  const sets = questions.map((question, number) => {
    const name = `question-${number}`;
    const verdict = make("p", { "aria-live": "polite" });
    const options = question.options.map((option, index) => make("label", {},
      make("input", { type: "radio", name, value: index, on: { change: () => {
        verdict.className = option.is_right ? "right" : "wrong";
        verdict.textContent = `${option.is_right ? "Yes." : "No."} ${option.why}`;
      } } }), make("span", {}, option.text)));
    return make("fieldset", {}, make("legend", {}, question.text), ...options, verdict);
  });
  $("quiz").replaceChildren(...sets, make("button", { type: "button", on: { click: () => $("quiz").fresh() } }, "Other questions"));
}
