// One leader: its fields as they are typed, and beside them what the desk makes of them.
import { all, ask, find, say, tell, trying, words } from "./desk.js";
import { History } from "./history.js";
import { keepPictures, knotOf, showDrawn, showFaults } from "./leader_shown.js";
import { movable } from "./moving.js";

const begun = JSON.parse(find("#begun").textContent);
const keptUnder = `draft ${begun.name} ${begun.base}`;
const editor = find("#editor");
let { name, base } = begun;
let draft = JSON.parse(sessionStorage.getItem(keptUnder) ?? "null") ?? begun.draft;
let saved = JSON.stringify(begun.draft);
let variant = null; // the place of the one that is shown
const past = new History(draft);

// ---- The fields

const homeOf = (input) => {
  const { of } = input.dataset;
  if (of === "head") return draft.head;
  if (of === "rows") return draft.rows[placeOf(input)];
  const change = draft.variants[variant];
  return of === "variants" || !change ? change : (change.replace ??= {});
};
const placeOf = (element) => all("#rows > .row").indexOf(element.closest(".row"));

function write(input) {
  const home = homeOf(input);
  const { field } = input.dataset;
  const value = input.type === "checkbox" ? input.checked : input.value;
  if (value === "" || value === false) delete home[field];
  else home[field] = value;
  const change = draft.variants[variant];
  if (change?.replace && !Object.keys(change.replace).length) delete change.replace;
}

function fill(input) {
  const { of, field } = input.dataset;
  const home = of === "replace" ? draft.variants[variant]?.replace : homeOf(input);
  const value = home?.[field] ?? "";
  if (input.type === "checkbox") input.checked = value === true;
  else if (input.value !== String(value)) input.value = value;
}

function rows() {
  const list = find("#rows");
  while (list.children.length > draft.rows.length) list.lastElementChild.remove();
  while (list.children.length < draft.rows.length) {
    const row = find("#row").content.firstElementChild.cloneNode(true);
    row.lastElementChild.append(knotOf("rows"));
    list.append(row);
  }
  all("#rows > .row").forEach((row, place) => {
    find(".section", row).setAttribute("aria-label", say("section", { n: place + 1 }));
    find(".place", row).textContent = place + 1;
    find(".joint", row).hidden = place === draft.rows.length - 1;
    find(".up", row).disabled = place === 0;
    find(".down", row).disabled = place === draft.rows.length - 1;
    find(".remove", row).disabled = draft.rows.length === 1;
    const told = ["dropper", "tapers_to", "bought"].some((key) => key in draft.rows[place]);
    if (told) more(row, true);
  });
}

function more(row, open) {
  find(".more", row).setAttribute("aria-expanded", open);
  find(".fields", row).hidden = !open;
}

/** Show the whole draft in the fields again. */
function show() {
  rows();
  if (variant !== null && variant >= draft.variants.length) variant = null;
  tabs();
  for (const input of all("#written [data-of]")) fill(input);
  marks();
}

function marks() {
  const dirty = JSON.stringify(draft) !== saved;
  editor.classList.toggle("dirty", dirty);
  find("#undo").disabled = !past.has(-1);
  find("#redo").disabled = !past.has(1);
  find("#title").textContent = draft.head.name || name;
  if (dirty) sessionStorage.setItem(keptUnder, JSON.stringify(draft));
  else sessionStorage.removeItem(keptUnder);
}

/** The draft was changed: keep the step, and have it drawn. */
function changed(mark = null) {
  past.keep(draft, mark);
  marks();
  draw();
}

editor.addEventListener("input", (event) => {
  const input = event.target.closest("[data-of]");
  if (!input) return;
  write(input);
  changed(`${input.dataset.of} ${placeOf(input)} ${input.dataset.field}`);
  if (input.dataset.of === "variants" && input.dataset.field === "name") tabs();
});

function travel(steps) {
  const there = past.go(steps);
  if (there === undefined) return;
  draft = there;
  show();
  draw();
}

// ---- Rows added, moved and taken out

function add(place) {
  const above = draft.rows[place - 1] ?? {};
  draft.rows.splice(place, 0, above.material ? { material: above.material } : {});
  show();
  changed();
  find("[data-field=length]", all("#rows > .row")[place]).focus();
}

function remove(place) {
  if (draft.rows.length === 1) return;
  draft.rows.splice(place, 1);
  show();
  changed();
  const left = Math.min(place, draft.rows.length - 1);
  find("[data-field=length]", all("#rows > .row")[left]).focus();
  tell(say("removed", { n: place + 1 }));
}

function move(from, to, field = "length") {
  if (to < 0 || to >= draft.rows.length || to === from) return;
  draft.rows.splice(to, 0, ...draft.rows.splice(from, 1));
  show();
  changed();
  find(field, all("#rows > .row")[to])?.focus();
  tell(say("moved", { n: to + 1 }));
}

movable(find("#rows"), (from, to) => move(from, to, "[data-field=length]"));

find("#rows").addEventListener("click", (event) => {
  const button = event.target.closest("button");
  if (!button) return;
  const place = placeOf(button);
  if (button.matches(".more")) more(button.closest(".row"), find(".fields", button.closest(".row")).hidden);
  if (button.matches(".remove")) remove(place);
  if (button.matches(".up")) move(place, place - 1, place > 1 ? ".up" : ".down");
  if (button.matches(".down")) move(place, place + 1, place < draft.rows.length - 2 ? ".down" : ".up");
});

find("#rows").addEventListener("keydown", (event) => {
  const input = event.target;
  if (!input.dataset.field) return;
  const field = `[data-field=${input.dataset.field}]`;
  if (event.altKey && event.key === "ArrowUp") move(placeOf(input), placeOf(input) - 1, field);
  else if (event.altKey && event.key === "ArrowDown") move(placeOf(input), placeOf(input) + 1, field);
  else if (event.key === "Enter" && input.matches("input")) add(placeOf(input) + 1);
  else return;
  event.preventDefault();
});

find("#add").addEventListener("click", () => add(draft.rows.length));
find("#undo").addEventListener("click", () => travel(-1));
find("#redo").addEventListener("click", () => travel(1));

document.addEventListener("keydown", (event) => {
  if (!(event.ctrlKey || event.metaKey) || event.altKey) return;
  const key = event.key.toLowerCase();
  if (key === "z") travel(event.shiftKey ? 1 : -1);
  else if (key === "y") travel(1);
  else if (key === "s") save();
  else return;
  event.preventDefault();
});

// ---- What the desk makes of it

const seen = new Set(); // pictures that are here already
let wanted = null; // what is to be drawn next
let isDrawing = false;
let resting;

/** Have all drawn anew, one after the other and always the newest. The code comes after a rest. */
function draw(code = false) {
  clearTimeout(resting);
  wanted = { code };
  if (!isDrawing) drawWanted();
}

async function drawWanted() {
  isDrawing = true;
  while (wanted) {
    const { code } = wanted;
    wanted = null;
    await trying(() => drawOnce(code));
  }
  isDrawing = false;
}

async function drawOnce(code) {
  const of = variant === null ? null : draft.variants[variant]?.name ?? null;
  const answer = await ask("/draw", { draft, variant: of, size: find("#size").value, seen: [...seen], code });
  for (const { id } of answer.pictures ?? []) seen.add(id);
  keepPictures(answer.pictures ?? []);
  if (wanted) return; // it is of the past already
  showFaults(answer.faults ?? []);
  if (answer.faults) return;
  showDrawn(answer, draft, variant !== null);
  if (!code) resting = setTimeout(() => draw(true), 350);
}

find("#size").addEventListener("change", () => draw());

// ---- Variants

function tabs() {
  const list = find("#tabs");
  const labels = [words.plain, ...draft.variants.map((each) => each.name ?? "…")];
  const made = labels.map((label, place) => {
    const tab = Object.assign(document.createElement("button"), { type: "button", textContent: label });
    tab.setAttribute("role", "tab");
    const chosen = place - 1 === (variant ?? -1);
    tab.setAttribute("aria-selected", chosen);
    tab.setAttribute("aria-controls", place ? "varied" : "written");
    tab.tabIndex = chosen ? 0 : -1;
    tab.addEventListener("click", () => choose(place ? place - 1 : null));
    return tab;
  });
  list.replaceChildren(...made);
  find("#written").hidden = variant !== null;
  find("#varied").hidden = variant === null;
  const change = find("#change");
  if (variant !== null && !change.children.length) change.append(find("#variant").content.cloneNode(true));
  if (variant === null) return;
  otherLines();
  for (const input of all("#varied [data-of]")) fill(input);
}

/** A field for the other line of each section that a variant may have there. */
function otherLines() {
  const home = find("#replace");
  while (home.children.length > draft.rows.length) home.lastElementChild.remove();
  while (home.children.length < draft.rows.length) {
    const line = find("#other_line").content.cloneNode(true);
    const place = home.children.length + 1;
    find("span", line).textContent = say("section", { n: place });
    find("input", line).dataset.field = place;
    home.append(line);
  }
  find("#other").open ||= draft.variants[variant].replace !== undefined;
}

function choose(place) {
  variant = place;
  tabs();
  draw();
}

find("#another").addEventListener("click", () => {
  draft.variants.push({ name: `${words.variant} ${draft.variants.length + 1}` });
  variant = draft.variants.length - 1;
  show();
  changed();
  find("#change input").focus();
});

find("#tabs").addEventListener("keydown", (event) => {
  const step = { ArrowLeft: -1, ArrowRight: 1 }[event.key];
  if (!step) return;
  const count = draft.variants.length + 1;
  const place = ((variant ?? -1) + 1 + step + count) % count;
  choose(place ? place - 1 : null);
  find("[aria-selected=true]").focus();
});

find("#drop").addEventListener("click", () => {
  draft.variants.splice(variant, 1);
  variant = null;
  show();
  changed();
});

find("#vary").addEventListener("click", () => trying(async () => {
  const answer = await ask("/vary", { draft, variant: draft.variants[variant].name });
  location.href = `/leader/${encodeURIComponent(answer.name)}`;
}));

// ---- Its file

async function save(options = {}) {
  await trying(async () => {
    const answer = await ask("/save", { name, draft, base, ...options });
    if (answer.changed) {
      find("#conflict").showModal();
      return;
    }
    sessionStorage.removeItem(keptUnder);
    if (answer.name !== name) {
      saved = JSON.stringify(draft);
      location.href = `/leader/${encodeURIComponent(answer.name)}`;
      return;
    }
    ({ base, draft } = answer);
    saved = JSON.stringify(draft);
    past.keep(draft);
    show();
    tell(words.saved);
  });
}

editor.addEventListener("submit", (event) => {
  event.preventDefault();
  save();
});
find("#apart").addEventListener("click", () => save({ apart: true }));

find("#conflict").addEventListener("click", (event) => {
  const { value } = event.target;
  if (!value) return;
  find("#conflict").close();
  if (value === "theirs") {
    sessionStorage.removeItem(keptUnder);
    saved = JSON.stringify(draft);
    location.reload();
  } else save({ [value]: true });
});

addEventListener("beforeunload", (event) => {
  if (JSON.stringify(draft) !== saved) event.preventDefault();
});

for (const [end, field] of [["#butt", "butt_end"], ["#fly", "fly_knot"]]) {
  find(end).append(knotOf("head", field, find(end).dataset.called));
}
show();
draw();
