// The dials: load, bands, chains, speed, and every value of the model that the lift uses.

import { $, make, shown } from "./page.js";
import { state } from "./state.js";

const GROUPS = [
  ["load", "Load and speed"], ["technique", "Technique"], ["machine", "Machine"], ["muscle", "One muscle"],
  ["limbs", "Limb lengths"], ["lifter", "The lifter"],
];

/** Builds all dials; `turned(id)` is called on every change, `allowed` names the groups that are open. */
export function buildDials(known, loads, catalogue, allowed, turned) {
  const open = new Set([...document.querySelectorAll("#dials > details[open]")].map((group) => group.dataset.group));
  const isFirst = !$("dials").childElementCount;
  const parts = {
    load: loadDials(loads, catalogue, turned),
    muscle: muscleDials(known, turned),
  };
  for (const group of ["technique", "machine", "limbs", "lifter"]) {
    parts[group] = known.dials.filter((dial) => dial.group === group).map((dial) => valueDial(dial, turned));
  }
  const blocks = GROUPS.filter(([group]) => parts[group].length && (!allowed || allowed.includes(group))).map(([group, title]) =>
    make("details", { "data-group": group, open: isFirst ? group === "load" || group === "technique" : open.has(group) },
      make("summary", {}, title), make("div", { class: "group" }, ...parts[group])));
  $("dials").replaceChildren(...blocks);
}

function loadDials(loads, catalogue, turned) {
  const load = plainDial({
    id: "load", name: "Weight", unit: loads.unit, least: 0, most: Math.max(loads.most_load, state.load ?? 0), step: loads.most_load > 60 ? 1 : 0.5,
    note: "Bar and both sides together; of dumb-bells one hand's.",
    get: () => state.load ?? 0, set: (value) => { state.load = value; }, turned,
  });
  const speed = plainDial({
    id: "speed", name: "Speed", unit: loads.speed_unit, ...(loads.speed_unit === "m/s" ? { least: -0.6, most: 1, step: 0.05 } : { least: -120, most: 240, step: 5 }),
    note: "0 is held still; above 0 the load is lifted at this speed, below 0 lowered.",
    get: () => state.speed, set: (value) => { state.speed = value; }, turned,
  });
  const hung = (id, name, names, many) => make("div", { class: "dial" },
    make("div", { class: "pair" },
      make("label", {}, `${name} `, make("select", { id, on: { change: (event) => { state[id] = event.target.value; turned(id); } } },
        make("option", { value: "" }, "none"), ...names.map((each) => make("option", { value: each, selected: state[id] === each }, each.replaceAll("-", " "))))),
      make("label", {}, "a side ", make("input", { type: "number", id: many, min: 1, max: 8, step: 1, value: state[many],
        on: { change: (event) => {
          state[many] = Math.min(8, Math.max(1, Math.round(Number(event.target.value)) || 1));
          event.target.value = state[many];
          turned(many);
        } } }))));
  const words = make("p", { class: "quiet", id: "hung-words" });
  return [load, hung("band", "Band", catalogue.bands, "bands"), hung("chain", "Chain", catalogue.chains, "chains"), words, speed];
}

function plainDial({ id, name, unit, least, most, step, note, get, set, turned }) {
  const output = make("output", { for: id });
  const input = make("input", { type: "range", id, min: least, max: most, step, value: get() });
  const tell = () => { output.textContent = `${shown(get(), step / 100).replace("-", "\u2212")} ${unit}`; input.setAttribute("aria-valuetext", output.textContent); };
  input.addEventListener("input", () => { set(Number(shown(Number(input.value), step))); tell(); turned(id); });
  tell();
  return make("div", { class: "dial" }, make("div", { class: "top" }, make("label", { for: id }, name), output), input, make("p", { class: "quiet" }, note));
}

function muscleDials(known, turned) {
  const names = [...new Set(known.dials.filter((dial) => dial.muscle).map((dial) => dial.muscle))];
  if (!names.length) return [];
  if (!names.includes(state.muscle)) state.muscle = names[0];
  const own = make("div", {});
  const fill = () => own.replaceChildren(...known.dials.filter((dial) => dial.muscle === state.muscle).map((dial) => valueDial(dial, turned)));
  const select = make("select", { id: "muscle" }, ...names.map((name) => make("option", { value: name, selected: name === state.muscle }, known.muscle_titles[name] ?? name)));
  select.addEventListener("change", () => { state.muscle = select.value; fill(); turned("muscle"); });
  select.fill = fill;
  fill();
  return [make("div", { class: "dial" }, make("label", { for: "muscle" }, "Muscle "), select), own];
}

/** Turns the dials to another muscle. */
export function chooseMuscle(name) {
  state.muscle = name;
  const select = $("muscle");
  if (select) {
    select.value = name;
    select.fill();
    select.closest("details").open = true;
  }
}

/** The number of a text in this unit; no number where the text is in another. */
export function numberOf(text, unit) {
  const [, number, rest] = /^\s*([-\u2212]?[\d.]+(?:e[-+]?\d+)?)\s*(.*)$/i.exec(text ?? "") ?? [];
  return number !== undefined && rest.trim() === unit ? Number(number.replace("\u2212", "-")) : NaN;
}

let count = 0;

function valueDial(dial, turned) {
  const id = `dial-${(count += 1)}`;
  const block = make("div", { class: "dial", "data-path": dial.path });
  const output = make("output", { for: id });
  const undo = make("button", { type: "button", class: "undo", "aria-label": `Undo ${dial.name}` }, "undo");
  const input = dial.kind.kind === "word" ? wordInput(dial, id) : numberInput(dial, id);
  const tell = () => {
    const isSet = dial.path in state.set;
    block.classList.toggle("set", isSet);
    undo.hidden = !isSet;
    output.textContent = input.told();
    if (output.textContent) input.setAttribute("aria-valuetext", output.textContent);
  };
  const change = () => { tell(); turned(dial.path); };
  input.addEventListener("input", () => { state.set[dial.path] = input.setting(); change(); });
  undo.addEventListener("click", () => { delete state.set[dial.path]; input.back(); change(); input.focus(); });
  tell();
  block.append(make("div", { class: "top" }, make("label", { for: id }, dial.name), output, undo), input,
    make("details", { class: "source" }, make("summary", {}, [dial.plausible, dial.from].filter(Boolean).join(" · ")),
      make("p", {}, dial.meaning), make("p", {}, dial.source || "No source is named.")));
  return block;
}

function wordInput(dial, id) {
  const { now, of } = dial.kind;
  const select = make("select", { id }, ...of.map((word) => make("option", { value: word }, word)));
  select.back = () => { select.value = state.set[dial.path] ?? now; };
  select.told = () => "";
  select.setting = () => select.value;
  select.back();
  return select;
}

function numberInput(dial, id) {
  const { now, unit, least, most, step } = dial.kind;
  const toldUnit = dial.told_unit || unit;
  const input = make("input", { type: "range", id, min: least, max: most, step: "any" });
  const isFree = dial.kind.kind === "free";
  const start = isFree ? (least + most) / 2 : now;
  const told = (value, digits) => `${Number(value.toPrecision(digits))} ${toldUnit}`.trim().replace("-", "\u2212");
  const set = () => numberOf(state.set[dial.path], unit);
  input.back = () => { input.value = Number.isNaN(set()) ? start : set(); };
  input.told = () => {
    if (!(dial.path in state.set)) return isFree ? "free" : told(start, 4);
    const own = set();
    return Number.isNaN(own) ? state.set[dial.path].replace("-", "\u2212") : told(own, 5);
  };
  input.setting = () => `${shown(Math.min(most, Math.max(least, Math.round(Number(input.value) / step) * step)), step)} ${unit}`.trim();
  // Arrow keys go by whole steps.
  input.addEventListener("keydown", (event) => {
    const way = { ArrowRight: 1, ArrowUp: 1, ArrowLeft: -1, ArrowDown: -1, PageUp: 10, PageDown: -10 }[event.key];
    if (!way) return;
    event.preventDefault();
    const present = Number.isNaN(set()) ? start : set();
    input.value = Math.min(most, Math.max(least, Math.round(present / step + way) * step));
    input.dispatchEvent(new Event("input", { bubbles: true }));
  });
  input.back();
  return input;
}
