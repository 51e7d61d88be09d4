// What is shown: one object, in the address too, so that an address is a figure.

const VERSION = 1;
const MOST_LETTERS = 160;
const MOST_SET = 80;
const VIEWS = ["explore", "predict", "quiz", "tasks", "class"];

export const state = {
  lift: "bench-press", lifter: "reference-man", load: null, band: "", bands: 1, chain: "", chains: 1, speed: 0,
  set: {}, units: "metric", at: 0, view: "explore", beside: "lengths", joint: null, muscle: "",
};

/** What the model is asked for, without weight and speed where their units are not known: each text is the value of an option of the program. */
export function asked(loads) {
  return {
    lift: state.lift, lifter: state.lifter,
    load: state.load === null || !loads ? [] : [`${state.load} ${loads.unit}`],
    band: state.band ? [`${state.band}:${state.bands}`] : [],
    chain: state.chain ? [`${state.chain}:${state.chains}`] : [],
    item: [], speed: state.speed && loads ? `${state.speed} ${loads.speed_unit}` : null,
    set: Object.entries(state.set).map(([path, value]) => `${path}=${value}`), units: state.units,
  };
}

export function address() {
  const words = new URLSearchParams({ v: VERSION, lift: state.lift, lifter: state.lifter });
  if (state.units !== "metric") words.set("units", state.units);
  if (state.load !== null) words.set("load", state.load);
  if (state.band) words.set("band", `${state.band}:${state.bands}`);
  if (state.chain) words.set("chain", `${state.chain}:${state.chains}`);
  if (state.speed) words.set("speed", state.speed);
  for (const [path, value] of Object.entries(state.set)) words.append("set", `${path}=${value}`);
  words.set("at", state.at.toFixed(2));
  if (state.beside !== "lengths") words.set("beside", state.beside);
  if (state.joint !== null) words.set("joint", state.joint);
  if (state.muscle) words.set("muscle", state.muscle);
  if (state.view !== "explore") words.set("view", state.view);
  return `#${words}`;
}

const plain = (text) => text.length <= MOST_LETTERS && !/[\u0000-\u001f<>]/.test(text);
const isName = (text) => /^[\w-]{1,60}$/.test(text);

/** A number between ends; nothing where the text is none. */
function number(text, least, most) {
  const value = Number(text);
  return text.trim() !== "" && Number.isFinite(value) && value >= least && value <= most ? value : null;
}

/** What each word of an address says: takes it into the state, and tells whether it was understood. */
const READ = {
  v: () => true,
  lift: (text) => { state.lift = isName(text) ? text : state.lift; return isName(text); },
  lifter: (text) => { state.lifter = isName(text) ? text : state.lifter; return isName(text); },
  units: (text) => { state.units = text === "us" ? "us" : "metric"; return ["us", "metric"].includes(text); },
  load: (text) => { state.load = rounded(number(text, 0, 1e9)); return state.load !== null; },
  band: (text) => hung("band", "bands", text),
  chain: (text) => hung("chain", "chains", text),
  speed: (text) => { const value = number(text, -1e6, 1e6); state.speed = value ?? 0; return value !== null; },
  set: (text) => {
    const [path] = text.split("=", 1);
    const isFit = text.includes("=") && plain(text) && /^[\w.]+$/.test(path) && !(path in Object.prototype) && !Object.hasOwn(state.set, path) && Object.keys(state.set).length < MOST_SET;
    if (isFit) state.set[path] = text.slice(path.length + 1);
    return isFit;
  },
  at: (text) => { const value = number(text, 0, 1); state.at = value ?? 0; return value !== null; },
  beside: (text) => { const isOne = ["lengths", "arms", "moments"].includes(text); state.beside = isOne ? text : "lengths"; return isOne; },
  joint: (text) => { const value = number(text, 0, 9); state.joint = value === null ? null : Math.round(value); return value !== null; },
  muscle: (text) => { state.muscle = isName(text) ? text : ""; return isName(text); },
  view: (text) => { state.view = VIEWS.includes(text) ? text : "explore"; return VIEWS.includes(text); },
};

const rounded = (value) => (value === null ? null : Math.round(value * 100) / 100);

function hung(kind, many, text) {
  const [name, count] = text.includes(":") ? text.split(":") : [text, "1"];
  const value = number(count, 1, 8);
  if (!isName(name) || value === null || !Number.isInteger(value)) return false;
  [state[kind], state[many]] = [name, value];
  return true;
}

/** Whether a hash is an address of the page, and not a place in it. */
export const isAddress = (hash) => hash.length < 2 || hash.includes("=");

/** Reads an address into the state; returns what was left out of it, a sentence each. An address may hold anything. */
export function readAddress(hash) {
  const words = new URLSearchParams(hash.slice(1, 8000));
  Object.assign(state, {
    units: "metric", load: null, band: "", bands: 1, chain: "", chains: 1, speed: 0, set: {}, at: 0, view: "explore", beside: "lengths", joint: null, muscle: "",
  });
  const told = [];
  const seen = new Set();
  for (const [key, value] of words) {
    const isTwice = key !== "set" && seen.has(key);
    seen.add(key);
    if (isTwice || !Object.hasOwn(READ, key) || !READ[key](value)) told.push(leftOut(`${key}=${value}`));
  }
  if (hash.length > 8000) told.push("The address is too long: its end is left out.");
  const version = words.get("v");
  if (version !== null && version !== String(VERSION)) told.unshift("This address was made by another version of the page; what it does not know is left out.");
  return told;
}

const leftOut = (word) => `\u201c${word.length > 60 ? `${word.slice(0, 60)}\u2026` : word}\u201d in the address is not understood and left out.`;
