// What every screen uses: its words, questions to the desk, and what is told of the answers.

export const words = JSON.parse(document.getElementById("words").textContent);

/** The words of a key, with values in their places. */
export function say(key, values = {}) {
  return words[key].replace(/\{(\w+)\}/g, (_, name) => values[name]);
}

const status = document.getElementById("status");
let fading;

/** Tell something at the foot of the page, and to whoever listens to it. */
export function tell(text, wrong = false) {
  clearTimeout(fading);
  status.textContent = text;
  status.classList.toggle("wrong", wrong);
  if (!wrong) fading = setTimeout(() => (status.textContent = ""), 4000);
}

export class RefusedError extends Error {
  constructor(answer) {
    super((answer.refused ?? []).join("\n"));
    this.faults = answer.faults ?? [];
  }
}

/** Ask the desk, with what is said as JSON; what it refuses is thrown. */
export async function ask(path, said, options = {}) {
  return answered(await fetch(path, {
    method: "POST",
    headers: { "content-type": "application/json" },
    body: JSON.stringify(said),
    ...options,
  }));
}

/** Send a file to the desk, as it is. */
export async function send(path, file) {
  const address = `${path}?name=${encodeURIComponent(file.name)}`;
  return answered(await fetch(address, { method: "POST", body: file }));
}

async function answered(response) {
  if (response.ok) return response.json();
  const type = response.headers.get("content-type") ?? "";
  throw type.includes("json") ? new RefusedError(await response.json()) : new Error(words.lost);
}

/** Do something, and tell what goes wrong in it. */
export async function trying(work) {
  try {
    return await work();
  } catch (error) {
    if (error.name === "AbortError") return undefined;
    tell(error instanceof RefusedError ? error.message : words.lost, true);
    if (!(error instanceof RefusedError)) console.error(error);
    return undefined;
  }
}

/** The first element that a selector finds. */
export const find = (selector, within = document) => within.querySelector(selector);

/** All elements that a selector finds. */
export const all = (selector, within = document) => [...within.querySelectorAll(selector)];

find("#end")?.addEventListener("click", () => trying(async () => {
  await ask("/end", {});
  find("main").replaceChildren(Object.assign(document.createElement("p"), { textContent: words.ended, className: "empty" }));
}));
