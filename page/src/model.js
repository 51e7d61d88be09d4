// The model: a WebAssembly module that answers questions; both are JSON.

let instance = null;
let compiled = null;

export async function openModel(text) {
  const bytes = Uint8Array.from(atob(text.trim()), (letter) => letter.charCodeAt(0));
  const stream = new Blob([bytes]).stream().pipeThrough(new DecompressionStream("gzip"));
  compiled = await WebAssembly.compile(await new Response(stream).arrayBuffer());
  instance = await WebAssembly.instantiate(compiled, nothingAround());
}

/** A library of the module knows of browsers; what it would call of them is never called. */
function nothingAround() {
  const around = {};
  for (const { module, name } of WebAssembly.Module.imports(compiled)) {
    (around[module] ??= {})[name] = () => { throw new Error(`the module called ${name}`); };
  }
  return around;
}

const toBytes = new TextEncoder();
const toText = new TextDecoder();

/** The answer, or an error whose `faults` say what is wrong. */
export function ask(question) {
  const { room_for: roomFor, ask: asks, answer_at: answerAt, memory } = instance.exports;
  const written = toBytes.encode(JSON.stringify(question));
  try {
    const at = roomFor(written.length);
    new Uint8Array(memory.buffer, at, written.length).set(written);
    const length = asks();
    const given = JSON.parse(toText.decode(new Uint8Array(memory.buffer, answerAt(), length)));
    if (given.faults) throw new Refused(given.faults);
    return given.answer;
  } catch (fault) {
    // After a trap the module's memory is not to be trusted: a fresh one takes its place.
    if (fault instanceof WebAssembly.RuntimeError) {
      instance = new WebAssembly.Instance(compiled, nothingAround());
      throw new Refused([{ message: "The model stopped at this state.", hints: [] }]);
    }
    throw fault;
  }
}

export class Refused extends Error {
  constructor(faults) {
    super(faults.map((fault) => [fault.message, ...fault.hints].join("; ")).join("\n"));
    this.faults = faults;
  }
}

/** Bytes that the module holds still use of the page, for the test of its heap. */
export function heldBytes() {
  return instance.exports.memory.buffer.byteLength;
}
