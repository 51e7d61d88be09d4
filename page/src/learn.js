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

/** A word at a curve's place, in its colour. */
const named = (kind, values, share, text) => {
  const value = values[Math.round(share * (values.length - 1))];
  return make("text", { class: `name ${kind}`, x: x(share), y: y(value) + (value > 1 ? 22 : -10), "text-anchor": "middle" }, text);
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
let solvedNow = () => null;

let revealed = null;

function showDrawing(model = null) {
  revealed = model;
  measure($("draw"));
  const curves = [make("path", { class: "own", d: path(drawn) })];
  if (model) curves.unshift(make("path", { class: "model", d: path(model) }), named("model", model, 0.75, "the model"), named("own", drawn, 0.25, "you"));
  const picture = box(model ? "Your curve and the model's" : "Your curve", ...curves);
  $("draw").replaceChildren(picture);
}

const scaled = (values) => { const most = Math.max(...values, 1e-9); return values.map((value) => value / most); };

/** The model's curve at as many places as are drawn, its greatest value 1. */
function model() {
  const { capacity } = solvedNow();
  return scaled(Array.from({ length: COUNT }, (_, index) => {
    const at = (index / (COUNT - 1)) * (capacity.length - 1);
    return capacity[Math.round(at)];
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
    }
    last = [index, value];
    showDrawing();
    showPoints();
  };
  const holder = $("draw");
  holder.addEventListener("pointerdown", (event) => { last = null; holder.setPointerCapture(event.pointerId); put(event); });
  holder.addEventListener("pointermove", (event) => { if (holder.hasPointerCapture(event.pointerId)) put(event); });
}

const POINTS = [[0, "Start"], [5, "First quarter"], [10, "Middle"], [15, "Last quarter"], [20, "End"]];

function showPoints() {
  for (const [index] of POINTS) {
    const input = $(`point-${index}`);
    if (input) input.value = Math.round(drawn[index] * 100);
  }
}

function buildPoints() {
  $("points").replaceChildren(...POINTS.map(([index, name]) => make("label", {}, name,
    make("input", { type: "range", id: `point-${index}`, min: 0, max: 125, step: 1, value: 60, on: { input: between } }))));
}

/** Straight lines between the five points that the keyboard sets. */
function between() {
  const values = POINTS.map(([index]) => Number($(`point-${index}`).value) / 100);
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
  });
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
  $("verdict").replaceChildren();
  $("line").hidden = true;
  showDrawing();
  showPoints();
}

/** One person's drawn curve as a line of text, without a name. */
function resultLine() {
  return [MARK, state.lift, state.lifter, ...scaled(drawn).map((value) => value.toFixed(3))].join(" ");
}

function readLine(text) {
  const [mark, lift, lifter, ...values] = text.trim().split(/\s+/);
  const numbers = values.map(Number);
  const isFit = mark === MARK && /^[\w-]{1,60}$/.test(lift ?? "") && /^[\w-]{1,60}$/.test(lifter ?? "") && numbers.length === COUNT &&
    numbers.every((value) => Number.isFinite(value) && value >= 0 && value <= TOP);
  return isFit ? { lift, lifter, numbers } : null;
}

/** All curves of the class that are of the lift on the page, their mean, and the model's. */
export function showCloud() {
  const texts = $("lines").value.slice(0, 200000).split("\n").filter((text) => text.trim());
  const read = texts.map(readLine);
  const of = read.filter((line) => line && line.lift === state.lift);
  measure($("cloud"));
  const curves = of.map(({ numbers }) => make("path", { class: "one", d: path(numbers) }));
  if (of.length) {
    const mean = Array.from({ length: COUNT }, (_, index) => of.reduce((sum, { numbers }) => sum + numbers[index], 0) / of.length);
    curves.push(make("path", { class: "own", d: path(mean) }), named("own", mean, 0.25, "the class"));
  }
  if (solvedNow()) curves.push(make("path", { class: "model", d: path(model()) }), named("model", model(), 0.75, "the model"));
  $("cloud").replaceChildren(box("The curves of the class, their mean, and the model's", ...curves));
  const other = read.filter((line) => line && line.lift !== state.lift).length;
  const bad = read.filter((line) => !line).length;
  const told = [`${of.length} curves of this lift (thin), their mean (orange), the model's (blue).`];
  if (other) told.push(`${other} lines are of another lift.`);
  if (bad) told.push(`${bad} lines cannot be read.`);
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
