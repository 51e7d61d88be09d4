// The chart with its dot, and the body with its muscles; both can be dragged along the range.

import { $, make, theme } from "./page.js";

const fraction = (value, [from, to]) => (value - from) / (to - from);

/** Puts a chart of the model into the page. The model's own text is the only markup that is taken as such. */
export function showChart(holder, chart, label) {
  const parsed = new DOMParser().parseFromString(chart.svg, "image/svg+xml").documentElement;
  parsed.setAttribute("aria-label", label);
  const known = holder.querySelector("svg");
  if (known) known.replaceWith(parsed);
  else holder.prepend(parsed);
}

/** Dots on capacity and load; where a curve is above the axis an arrow at the upper edge says how high it is. */
export function showDots(holder, chart, across, { capacity, demand, unit }) {
  const [left, top, right, bottom] = chart.area_px;
  const x = left + fraction(across, chart.across) * (right - left);
  const height = (value) => bottom - fraction(value, chart.up) * (bottom - top);
  const part = (kind) => {
    let found = holder.querySelector(`.${kind}`);
    if (!found) {
      found = make("span", { class: kind });
      holder.append(found);
    }
    return found;
  };
  const rod = part("rod");
  rod.style.left = `${x}px`;
  rod.style.top = `${Math.max(top, height(capacity))}px`;
  rod.style.height = `${bottom - Math.max(top, height(capacity))}px`;
  const above = [];
  for (const [kind, value] of [["load", demand], ["dot", capacity]]) {
    const dot = part(kind);
    const isAbove = value !== null && value > chart.up[1];
    dot.hidden = value === null || value < chart.up[0];
    dot.classList.toggle("above", isAbove);
    dot.style.left = `${x}px`;
    dot.style.top = `${value === null ? 0 : Math.max(top, height(value))}px`;
    // At an edge the dot is cut, so that it covers no number of an axis.
    const y = height(value ?? 0);
    const over = [x + HALF[kind] - right, y + HALF[kind] - bottom, left - x + HALF[kind]].map((side) => Math.max(-RING, side - RING));
    dot.style.clipPath = isAbove ? "" : `inset(-${RING}px ${over.map((side) => `${side}px`).join(" ")})`;
    if (isAbove) above.push(`${value.toFixed(0)} ${unit}`);
  }
  const note = part("note");
  note.hidden = !above.length;
  note.textContent = above.join(", ");
  note.style.top = `${top}px`;
  note.style.left = `${Math.min(x, right)}px`;
  note.classList.toggle("leftward", x > (left + right) / 2);
}

/** Half of each dot, and the ring around it, pixels. */
const HALF = { dot: 9, load: 6 };
const RING = 3;

/** Calls `act` with the place of the range under the pointer as it is dragged over the chart. */
export function dragChart(holder, shownNow, act) {
  let held = false;
  const move = (event) => {
    const now = shownNow();
    if (!held || !now?.chart) return;
    const [left, , right] = now.chart.area_px;
    const x = event.clientX - holder.getBoundingClientRect().left;
    const [from, to] = now.chart.across;
    const place = from + ((x - left) / (right - left)) * (to - from);
    act(nearest(now.across, place) / (now.across.length - 1));
  };
  holder.addEventListener("pointerdown", (event) => { held = true; holder.setPointerCapture(event.pointerId); move(event); });
  holder.addEventListener("pointermove", move);
  for (const end of ["pointerup", "pointercancel"]) holder.addEventListener(end, () => { held = false; });
}

function nearest(values, wanted) {
  let best = 0;
  values.forEach((value, index) => { if (Math.abs(value - wanted) < Math.abs(values[best] - wanted)) best = index; });
  return best;
}

const EDGE = 0.12;

/** The body at a place: limbs, load, and each muscle as wide as its force and as bright as it is active. */
export function showBody(holder, solved, place, chosen) {
  const [left, low, right, high] = solved.body_extent;
  const box = [left - EDGE, -high - EDGE, right - left + 2 * EDGE, high - low + 2 * EDGE];
  const points = (line) => line.map(([x, z]) => `${x.toFixed(4)},${(-z).toFixed(4)}`).join(" ");
  const { body } = place;
  const muscles = place.numbers.muscles;
  const most = Math.max(1, ...muscles.map((muscle) => muscle.force_n));
  const parts = [];
  for (const line of body.supports) parts.push(make("polyline", { class: "support", points: points(line), "stroke-width": 0.02 }));
  for (const limb of body.limbs) parts.push(make("polyline", { class: "bone", points: points(limb), "stroke-width": 0.05 }));
  if (body.head) parts.push(make("circle", { class: "head", cx: body.head[0][0], cy: -body.head[0][1], r: body.head[1] }));
  if (body.load) {
    const [[x, z], radius] = body.load;
    parts.push(make("circle", { class: "weight", cx: x, cy: -z, r: radius ?? 0.07, "stroke-width": 0.02 }));
  }
  const drawn = body.muscles.map((line) => [line, muscles[line.number]]).sort((a, b) => a[1].activation - b[1].activation);
  for (const [line, muscle] of drawn) {
    const isChosen = solved.muscles[line.number].name === chosen;
    parts.push(make("path", {
      class: isChosen ? "muscle chosen" : "muscle", d: smooth(line.way), stroke: colour(muscle.activation),
      "stroke-width": (0.008 + 0.026 * Math.sqrt(muscle.force_n / most)).toFixed(4), opacity: isChosen ? 1 : 0.85,
    }));
  }
  const picture = make("svg", { viewBox: box.map((side) => side.toFixed(3)).join(" "), role: "img", "aria-label": spoken(solved, muscles) }, ...parts);
  holder.replaceChildren(picture);
}

function spoken(solved, muscles) {
  const busy = muscles.map((muscle, index) => [muscle.force_n, solved.muscles[index].title]).sort((a, b) => b[0] - a[0]);
  return `The body at this place. Pulling most: ${busy.slice(0, 3).map(([force, title]) => `${title} ${force.toFixed(0)} N`).join(", ")}.`;
}

/** From the grey of an idle muscle to a strong red. */
function colour(activation) {
  const dark = theme() === "dark";
  const [from, to] = dark ? [[110, 122, 136], [255, 120, 90]] : [[138, 149, 163], [190, 30, 20]];
  return `rgb(${from.map((part, index) => Math.round(part + activation * (to[index] - part))).join(",")})`;
}

function smooth(way) {
  const at = ([x, z]) => `${x.toFixed(4)} ${(-z).toFixed(4)}`;
  if (way.length < 3) return `M${way.map(at).join("L")}`;
  let path = `M${at(way[0])}`;
  for (let index = 1; index < way.length - 1; index += 1) {
    const end = index === way.length - 2 ? way[index + 1] : [0, 1].map((axis) => (way[index][axis] + way[index + 1][axis]) / 2);
    path += `Q${at(way[index])} ${at(end)}`;
  }
  return path;
}

/** Calls `act` with the place of the range whose load is nearest to the pointer. */
export function dragBody(holder, shownNow, act) {
  let held = false;
  const move = (event) => {
    const now = shownNow();
    const picture = holder.querySelector("svg");
    if (!held || !now || !picture) return;
    const at = new DOMPoint(event.clientX, event.clientY).matrixTransform(picture.getScreenCTM().inverse());
    let best = 0;
    let least = Infinity;
    now.load_way.forEach(([x, z], index) => {
      const away = Math.hypot(x - at.x, -z - at.y);
      if (away < least) [least, best] = [away, index];
    });
    act(best / (now.load_way.length - 1));
  };
  holder.addEventListener("pointerdown", (event) => { held = true; holder.setPointerCapture(event.pointerId); move(event); });
  holder.addEventListener("pointermove", move);
  for (const end of ["pointerup", "pointercancel"]) holder.addEventListener(end, () => { held = false; });
}
