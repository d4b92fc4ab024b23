// One leader: its fields as they are typed, and beside them what the desk makes of them.
import { ask, find, tell, trying, words } from "./desk.js";
import { draw } from "./leader_drawing.js";
import { fillAll, placeOf, write } from "./leader_fields.js";
import { changeRows, showRows } from "./leader_rows.js";
import { knotOf } from "./leader_shown.js";
import { asSent, at, isDirty, keepAside, letGo, past, savingNow } from "./leader_state.js";
import { showTabs, shownVariant } from "./leader_variants.js";

const editor = find("#editor");
const open = (name) => (location.href = `/leader/${encodeURIComponent(name)}`);

/** Show the whole draft in the fields again. */
function show() {
  showRows();
  showTabs(draw, changed);
  fillAll("#written");
  showMarks();
}

function showMarks() {
  editor.classList.toggle("dirty", isDirty());
  find("#undo").disabled = !past.has(-1);
  find("#redo").disabled = !past.has(1);
  find("#title").textContent = at.draft.head.name || at.name;
  keepAside();
}

/** The draft was changed otherwise than by typing: show it, keep the step, and have it drawn. */
function changed() {
  past.keep(at.draft);
  show();
  draw();
}

editor.addEventListener("input", (event) => {
  const input = event.target.closest("[data-of]");
  if (!input) return;
  const { of, field } = input.dataset;
  write(input);
  past.keep(at.draft, `${of} ${placeOf(input)} ${at.variant} ${field}`);
  if (of === "variants" && field === "name") showTabs(draw, changed);
  showMarks();
  draw();
});

function travel(steps) {
  const there = past.go(steps);
  if (there === undefined) return;
  at.draft = there;
  show();
  draw();
}

changeRows(changed);
find("#undo").addEventListener("click", () => travel(-1));
find("#redo").addEventListener("click", () => travel(1));
find("#size").addEventListener("change", () => draw());

document.addEventListener("keydown", (event) => {
  if (!(event.ctrlKey || event.metaKey) || event.altKey) return;
  const key = event.key.toLowerCase();
  if (key === "z") travel(event.shiftKey ? 1 : -1);
  else if (key === "y") travel(1);
  else if (key === "s") save();
  else return;
  event.preventDefault();
});

<<<<<<< HEAD
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

=======
>>>>>>> main
// ---- Its file

function save(options = {}) {
  return trying(async () => {
    const done = savingNow();
    const answer = await ask("/save", { name: at.name, draft: asSent(), base: at.base, ...options });
    if (answer.changed) {
      find("#conflict").showModal();
    } else if (answer.name !== at.name) {
      letGo();
      open(answer.name);
    } else {
      done(answer.base);
      showMarks();
      tell(words.saved);
    }
  });
}

editor.addEventListener("submit", (event) => {
  event.preventDefault();
  save();
});
find("#apart").addEventListener("click", () => save({ apart: true }));

find("#conflict").addEventListener("click", ({ target: { value } }) => {
  if (!value) return;
  find("#conflict").close();
  if (value === "theirs") {
    letGo();
    location.reload();
  } else save({ [value]: true });
});

addEventListener("beforeunload", (event) => {
  if (isDirty()) event.preventDefault();
});

// ---- What becomes of a leader besides

find("#drop").addEventListener("click", () => {
  at.draft.variants.splice(at.variant, 1);
  at.variant = null;
  changed();
});

find("#vary").addEventListener("click", () => trying(async () => {
  open((await ask("/vary", { draft: asSent(), variant: shownVariant() })).name);
}));

find("#png").addEventListener("click", (event) => {
  if (isDirty()) {
    event.preventDefault();
    tell(words.save_first, true);
  }
  const wishes = { size: find("#size").value };
  if (shownVariant() !== null) wishes.variant = shownVariant();
  event.currentTarget.href = `/png/${encodeURIComponent(at.name)}?${new URLSearchParams(wishes)}`;
});

for (const [end, field] of [["#butt", "butt_end"], ["#fly", "fly_knot"]]) {
  find(end).append(knotOf("head", field, find(end).dataset.called));
}
show();
draw();
