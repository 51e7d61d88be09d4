// A lecturer's tasks: each has a text, a start, a goal that the page checks, a hint.

import { $, make } from "./page.js";

const HOLDS = {
  "<=": (a, b) => a <= b, ">=": (a, b) => a >= b, "<": (a, b) => a < b, ">": (a, b) => a > b, "=": (a, b) => String(a) === String(b),
};

const SIGNS = { "<=": "at most", ">=": "at least", "<": "less than", ">": "more than", "=": "" };

let tasks = [];

export function buildTasks(given, start) {
  tasks = given ?? [];
  document.querySelector("[data-view=tasks]").hidden = !tasks.length;
  $("tasks").replaceChildren(...tasks.map((task) => make("li", {}, make("p", {}, task.text),
    make("p", { class: "row" }, make("button", { type: "button", on: { click: () => start(task) } }, "Start here")),
    task.hint ? make("details", {}, make("summary", {}, "Hint"), make("p", {}, task.hint)) : "",
    make("p", { class: "state", "aria-live": "polite" }))));
}

/** Which goals the state on the page meets. */
export function checkTasks(solved, begun) {
  tasks.forEach((task, index) => {
    const item = $("tasks").children[index];
    if (begun !== task) return;
    const value = solved.summary[task.goal.key];
    const isMet = value !== undefined && value !== null && HOLDS[task.goal.is](value, task.goal.value);
    const state = item.querySelector(".state");
    item.classList.toggle("done", isMet);
    state.className = isMet ? "state right" : "state";
    const now = typeof value === "number" ? Number(value.toPrecision(3)) : value ?? "nothing yet";
    state.textContent = `${isMet ? "Done" : "Not yet"}: ${task.goal.name} is ${now}, asked for is ${SIGNS[task.goal.is]} ${task.goal.value}.`;
  });
}
