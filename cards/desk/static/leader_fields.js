// The fields of the page and the draft: one written into the other.
import { all, find } from "./desk.js";
import { at } from "./leader_state.js";

/** The place of the row that an element stands in. */
export const placeOf = (element) => all("#rows > .row").indexOf(element.closest(".row"));

function homeOf(input) {
  const { of } = input.dataset;
  if (of === "head") return at.draft.head;
  if (of === "rows") return at.draft.rows[placeOf(input)];
  const change = at.draft.variants[at.variant];
  return of === "replace" ? change?.replace : change;
}

/** Take what stands in a field into the draft. */
export function write(input) {
  const { of, field } = input.dataset;
  const change = at.draft.variants[at.variant];
  if (of === "replace") change.replace ??= {};
  const home = homeOf(input);
  const value = input.type === "checkbox" ? input.checked : input.value;
  if (value === "" || value === false) delete home[field];
  else home[field] = value;
  if (of === "replace" && !Object.keys(change.replace).length) delete change.replace;
}

/** Show in all fields below an element what the draft says. */
export function fillAll(selector) {
  for (const input of all(`${selector} [data-of]`)) {
    const value = homeOf(input)?.[input.dataset.field] ?? "";
    if (input.type === "checkbox") input.checked = value === true;
    else if (input.value !== String(value)) input.value = value;
  }
}

/** Have as many children in a list as there should be; `make` makes one more. */
export function fitTo(list, count, make) {
  while (list.children.length > count) list.lastElementChild.remove();
  while (list.children.length < count) list.append(make(list.children.length + 1));
}

/** The first field of a row, where one begins to type. */
export const focusRow = (place, selector = "[data-field=length]") =>
  find(selector, all("#rows > .row")[place])?.focus();
