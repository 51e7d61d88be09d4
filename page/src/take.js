// What goes out of the page, on demand: address, figure, table, command.

import { $, say, theme } from "./page.js";
import { ask } from "./model.js";

export async function copy(text, what) {
  try {
    await navigator.clipboard.writeText(text);
    say(`${what} copied.`);
  } catch {
    // Pages from a file have no clipboard in some browsers: the text is marked for the person's own copy.
    const field = document.createElement("textarea");
    field.value = text;
    document.body.append(field);
    field.select();
    const isCopied = document.execCommand("copy");
    field.remove();
    say(isCopied ? `${what} copied.` : text);
  }
}

function save(blob, name) {
  const link = document.createElement("a");
  link.href = URL.createObjectURL(blob);
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 10000);
}

export function saveTable(name) {
  save(new Blob([ask({ ask: "table", detail: true })], { type: "text/csv" }), `${name}.csv`);
  say("Table saved.");
}

/** The figure with its letters inside, so that it looks the same everywhere. */
export function figure() {
  return ask({ ask: "figure", theme: theme() }).replace("<title>", `<style>${$("fonts").textContent}</style><title>`);
}

export function saveFigure(name) {
  save(new Blob([figure()], { type: "image/svg+xml" }), `${name}.svg`);
  say("Figure saved.");
}

export async function saveBitmap(name) {
  const image = new Image();
  image.src = URL.createObjectURL(new Blob([figure()], { type: "image/svg+xml" }));
  await image.decode();
  const canvas = document.createElement("canvas");
  [canvas.width, canvas.height] = [1920, 1080];
  canvas.getContext("2d").drawImage(image, 0, 0);
  URL.revokeObjectURL(image.src);
  const blob = await new Promise((done) => canvas.toBlob(done, "image/png"));
  save(blob, `${name}.png`);
  say("Figure saved.");
  return blob.size;
}

export function wireTaking(nameNow) {
  $("link").addEventListener("click", () => copy(location.href, "Address"));
  $("svg").addEventListener("click", () => saveFigure(nameNow()));
  $("png").addEventListener("click", () => saveBitmap(nameNow()));
  $("csv").addEventListener("click", () => saveTable(nameNow()));
  for (const button of document.querySelectorAll("[data-copy]")) {
    button.addEventListener("click", () => copy($(button.dataset.copy).textContent, "Command"));
  }
}
