// Small help for the document.

export const $ = (id) => document.getElementById(id);

/** An element with attributes and children; texts stay texts. */
export function make(name, attributes = {}, ...children) {
  const isDrawn = DRAWN.includes(name);
  const element = isDrawn ? document.createElementNS("http://www.w3.org/2000/svg", name) : document.createElement(name);
  for (const [key, value] of Object.entries(attributes)) {
    if (key === "on") for (const [event, act] of Object.entries(value)) element.addEventListener(event, act);
    else if (value === true) element.setAttribute(key, "");
    else if (value !== false && value !== null && value !== undefined) element.setAttribute(key, value);
  }
  element.append(...children);
  return element;
}
const DRAWN = ["svg", "path", "polyline", "line", "circle", "rect", "text", "g"];

/** Width of an element, and of the window, as they were laid out last: to ask while the page changes would lay it out twice. */
export function widthOf(element) {
  if (!widths.has(element)) {
    watch.observe(element);
    widths.set(element, element.clientWidth);
  }
  return widths.get(element);
}
const widths = new WeakMap();
const watch = new ResizeObserver((seen) => { for (const { target } of seen) widths.set(target, target.clientWidth); });
export const sight = { width: innerWidth, height: innerHeight };
addEventListener("resize", () => { [sight.width, sight.height] = [innerWidth, innerHeight]; });

/** Puts a text where it is not there yet. */
export function tell(element, text) {
  if (element.textContent !== text) element.textContent = text;
}

export const lines = (texts) => texts.map((text) => make("li", {}, text));

let saidTimer = 0;
/** Says something short where a screen reader hears it. */
export function say(text) {
  $("said").textContent = text;
  clearTimeout(saidTimer);
  saidTimer = setTimeout(() => { $("said").textContent = ""; }, 6000);
}

export function warn(text) {
  $("notice").textContent = text;
  $("notice").hidden = !text;
}

/** A number without more digits than its step has. */
export function shown(value, step) {
  const decimals = Math.max(0, Math.min(6, Math.ceil(-Math.log10(step) - 1e-9)));
  return String(Number(value.toFixed(decimals)));
}

let isPaper = false;
/** Whether what is drawn now goes to paper. */
export function printTheme(now) {
  isPaper = now;
}
export const onPaper = () => isPaper;
export const theme = () => (!isPaper && matchMedia("(prefers-color-scheme: dark)").matches ? "dark" : "light");
