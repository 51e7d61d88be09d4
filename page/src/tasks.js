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
  $("tasks").replaceChildren(...tasks.map((task, index) => make("li", {}, make("p", {}, task.text),
    make("p", { class: "row" }, make("button", { type: "button", "aria-label": `Start here: task ${index + 1}`, on: { click: () => start(task) } }, "Start here")),
    task.hint ? make("details", {}, make("summary", {}, "Hint"), make("p", {}, task.hint)) : "",
    make("p", { class: "state" }))));
}

/** Leads to the list of tasks. */
export function showTasks() {
  // The list stands above the chart, so nothing covers its head.
  scrollTo({ top: scrollY + $("tasks-head").getBoundingClientRect().top - 8 });
  $("tasks-head").focus({ preventScroll: true });
}

/** Beside the curve stands no task any more. */
export function leaveTask() {
  $("task-now").hidden = true;
}

/** Whether the state on the page meets the goal of the task that was begun: told in the list and beside the curve. */
export function checkTasks(solved, begun) {
  const index = tasks.indexOf(begun);
  if (index < 0) return;
  const { goal } = begun;
  const item = $("tasks").children[index];
  const value = solved.summary[goal.key];
  const isMet = value !== undefined && value !== null && HOLDS[goal.is](value, goal.value);
  item.classList.toggle("done", isMet);
  const now = typeof value === "number" ? Number(value.toPrecision(3)) : value ?? "nothing yet";
  const told = `${isMet ? "Done" : "Not yet"}: ${goal.name} is ${now}, asked for is ${`${SIGNS[goal.is]} ${goal.value}`.trim()}.`.replace(/-(?=\d)/g, "\u2212");
  for (const [place, text] of [[item.querySelector(".state"), told], [$("task-now"), `Task ${index + 1}. ${told}`]]) {
    place.classList.toggle("right", isMet);
    if (place.textContent !== text) place.textContent = text;
  }
  $("task-now").hidden = document.querySelector("[data-view=tasks]").getAttribute("aria-pressed") !== "true";
}
