// A form's fields as the desk takes them, and what it refuses told beside them.
import { RefusedError, all, ask, find, tell, words } from "./desk.js";

/** What the fields within an element say, by their names; a dropped file comes with its bytes. */
export async function saidIn(home) {
  const said = {};
  for (const input of all("input[name], select[name]", home)) {
    if (input.type === "file") {
      if (input.files[0]) said[input.name] = await fileIn(input.files[0]);
    } else if (input.type === "checkbox") said[input.name] = input.checked;
    else said[input.name] = input.value;
  }
  return said;
}

async function fileIn(file) {
  const address = await new Promise((resolve, reject) => {
    const reader = new FileReader();
    reader.addEventListener("load", () => resolve(reader.result));
    reader.addEventListener("error", () => reject(reader.error));
    reader.readAsDataURL(file);
  });
  return { name: file.name, data: address.slice(address.indexOf(",") + 1) };
}

/** Ask the desk with the fields of a form; what it refuses is told beside them, and undefined. */
export async function asking(home, path, said, options) {
  try {
    const answer = await ask(path, said, options);
    clear(home);
    if (find("#status.wrong")) tell("");
    return answer;
  } catch (error) {
    if (error.name === "AbortError") return undefined;
    clear(home);
    if (error instanceof RefusedError) showRefused(home, error.faults);
    else tell(words.lost, true);
    return undefined;
  }
}

function clear(home) {
  for (const input of all("[aria-invalid]", home)) input.removeAttribute("aria-invalid");
  for (const message of all(".message", home)) message.textContent = "";
  find(".faults", home)?.replaceChildren();
}

function showRefused(home, faults) {
  const elsewhere = [];
  for (const { where, text } of faults) {
    const input = all("[name]", home).find((each) => each.name === where || where.startsWith(`${each.name},`));
    const message = input && (find(".message", input.closest("label")) ?? find(".message", input.closest("li") ?? input));
    if (message) {
      input.setAttribute("aria-invalid", "true");
      message.textContent = text;
      message.id ||= `of ${input.name}`.replaceAll(/\W+/g, "-");
      input.setAttribute("aria-describedby", message.id);
    } else elsewhere.push(where ? `${where}: ${text}` : text);
  }
  find(".faults", home)?.replaceChildren(
    ...elsewhere.map((text) => Object.assign(document.createElement("li"), { textContent: text })),
  );
  if (elsewhere.length) tell(elsewhere.join("\n"), true);
  find("[aria-invalid]", home)?.focus();
}
