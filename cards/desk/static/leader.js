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
