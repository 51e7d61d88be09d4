// What is shown: one object, in the address too, so that an address is a figure.

const VERSION = 1;
const MOST_LETTERS = 160;
const MOST_SET = 80;
const VIEWS = ["explore", "predict", "quiz", "tasks", "class"];

export const state = {
  lift: "bench-press", lifter: "reference-man", load: null, band: "", bands: 1, chain: "", chains: 1, speed: 0,
  set: {}, units: "metric", at: 0, view: "explore", beside: "lengths", joint: 0, muscle: "",
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
  if (state.joint) words.set("joint", state.joint);
  if (state.muscle) words.set("muscle", state.muscle);
  if (state.view !== "explore") words.set("view", state.view);
  return `#${words}`;
}

const number = (text, least, most) => {
  const value = Number(text);
  return text !== null && text.trim() !== "" && Number.isFinite(value) ? Math.min(most, Math.max(least, value)) : null;
};
const plain = (text) => typeof text === "string" && text.length <= MOST_LETTERS && !/[\u0000-\u001f<>]/.test(text);

function hung(text) {
  const [name, count] = (text ?? "").split(":");
  return /^[\w-]{1,60}$/.test(name) ? [name, number(count ?? "1", 1, 8) ?? 1] : ["", 1];
}

/** Reads an address into the state; returns a word on what was left out. An address may hold anything. */
export function readAddress(hash) {
  const words = new URLSearchParams(hash.slice(1, 8000));
  const name = (key, usual) => (/^[\w-]{1,60}$/.test(words.get(key) ?? "") ? words.get(key) : usual);
  state.lift = name("lift", state.lift);
  state.lifter = name("lifter", state.lifter);
  state.units = words.get("units") === "us" ? "us" : "metric";
  const load = number(words.get("load"), 0, 3000);
  state.load = load === null ? null : Math.round(load * 100) / 100;
  [state.band, state.bands] = hung(words.get("band"));
  [state.chain, state.chains] = hung(words.get("chain"));
  state.bands = Math.round(state.bands);
  state.chains = Math.round(state.chains);
  state.speed = number(words.get("speed"), -1000, 1000) ?? 0;
  state.set = {};
  for (const text of words.getAll("set").slice(0, MOST_SET)) {
    const cut = text.indexOf("=");
    if (cut > 0 && plain(text) && /^[\w.]+$/.test(text.slice(0, cut))) state.set[text.slice(0, cut)] = text.slice(cut + 1);
  }
  state.at = number(words.get("at"), 0, 1) ?? 0;
  state.beside = ["lengths", "arms", "moments"].includes(words.get("beside")) ? words.get("beside") : "lengths";
  state.joint = Math.round(number(words.get("joint"), 0, 9) ?? 0);
  state.muscle = name("muscle", "");
  state.view = VIEWS.includes(words.get("view")) ? words.get("view") : "explore";
  const version = words.get("v");
  return version !== null && version !== String(VERSION) ? "This address was made by another version of the page; what it does not know is left out." : "";
}
