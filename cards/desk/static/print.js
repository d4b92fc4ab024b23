// What is chosen to be printed, counted and shown at each change.
import { all, ask, find, RefusedError, say, tell, trying, words } from "./desk.js";
import "./stock_choice.js";
import { showFieldFaults } from "./field_faults.js";
import { showPages } from "./print_pages.js";

const FEW = 30; // leaders, and so many times as many pieces, which are counted without being asked
const form = find("#wishes");
let made = null; // the last print that was made
let turn = 0; // of the changes
let asking = false;
let again = null; // what is to be asked next

function kind() {
  return form.elements.kind.value;
}

/** Show only what this kind of print has. */
function sort() {
  const press = form.elements.press.checked;
  const shown = new Set([kind()]);
  if (["cards", "knots"].includes(kind()) && !press) shown.add("sheets");
  for (const each of all("[data-of]", form)) {
    const of = each.dataset.of.split(" ");
    each.hidden = each.dataset.of !== "" && !of.some((one) => shown.has(one));
  }
}

function wanted() {
  const typed = Object.fromEntries([...new FormData(form)].filter(([, value]) => value !== ""));
  const leaders = all("#chosen input:checked").map(({ dataset }) => [dataset.file, dataset.variant ?? ""]);
  return { kind: kind(), leaders, typed };
}

function isFew({ leaders, typed }) {
  return leaders.length <= FEW && leaders.length * (Number(typed.copies) || 1) <= FEW * 20;
}

/** Ask for the plan; one question at a time, and of many leaders only when told to. */
async function plan(told = false) {
  const mine = ++turn;
  sort();
  made = null;
  for (const id of ["#keep", "#print"]) find(id).disabled = true;
  const wishes = wanted();
  const waits = wishes.leaders.length > 0 && !told && !isFew(wishes);
  find("#count").hidden = !waits;
  if (!wishes.leaders.length) show({ told: words.none_chosen });
  else if (waits) show({ told: say("many", { n: wishes.leaders.length }) });
  else if (asking) again = () => plan(told);
  else await askFor(wishes, mine);
}

async function askFor(wishes, mine) {
  asking = true;
  find("#told").textContent = words.counting;
  await trying(async () => {
    try {
      const answer = await ask("/print/plan", wishes);
      if (mine === turn) show(answer);
    } catch (error) {
      if (!(error instanceof RefusedError)) throw error;
      if (mine === turn) show({ told: words.not_so }, error.faults);
    }
  });
  asking = false;
  const next = again;
  again = null;
  if (mine !== turn) await next?.();
}

function show(answer, faults = []) {
  made = answer.at ? answer : null;
  find("#told").textContent = answer.told ?? words.wrong;
  fill("#left_out", answer.left_out ?? []);
  heed(answer.heed ?? [], Boolean(answer.wrong));
  find("#anyway").hidden = !answer.wrong;
  fill("#faults", showFieldFaults(form, faults).map(({ where, text }) => (where ? `${where}: ${text}` : text)));
  for (const id of ["#keep", "#print"]) find(id).disabled = !made;
  showPages(answer, Number(form.elements.start.value) || 1, pick);
  showPng();
}

/** What there is to heed, folded until a person asks; what is wrong is not. */
function heed(lines, wrong) {
  fill("#heed", lines);
  find("#heed").classList.toggle("error", wrong);
  find("#heeding").hidden = !lines.length;
  find("#heeding").open ||= wrong;
  find("#heeding span").textContent = lines.length;
}

function fill(id, lines) {
  find(id).replaceChildren(...lines.map((text) => Object.assign(document.createElement("li"), { textContent: text })));
}

/** A label was picked on the sheet's picture: the first free one. */
function pick(number) {
  form.elements.start.value = number;
  plan();
}

/** One leader's card can be kept as a picture too. */
function showPng() {
  const { leaders, typed, kind: of } = wanted();
  const png = find("#png");
  png.hidden = of !== "cards" || leaders.length !== 1 || !made;
  if (png.hidden) return;
  const [[file, variant]] = leaders;
  const { size = "", language = "", units = "", brief = "" } = typed;
  png.href = `/png/${encodeURIComponent(file)}?${new URLSearchParams({ variant, size, language, units, brief })}`;
}

/** The address of the PDF, which is made again where the desk has forgotten it. */
async function address() {
  const path = () => `/prints/${made.at}/${encodeURIComponent(made.name)}.pdf`;
  if (!(await fetch(path(), { method: "HEAD" })).ok) await plan(true);
  return made && path();
}

find("#keep")?.addEventListener("click", () => trying(async () => {
  const path = await address();
  if (path) Object.assign(document.createElement("a"), { href: `${path}?keep`, download: "" }).click();
}));

find("#print")?.addEventListener("click", async () => {
  const opened = window.open("", "_blank"); // at once, or the browser takes it for an advertisement
  const path = await trying(address);
  if (!path) return opened.close();
  opened.location = path;
  return tell(words.opened);
});

if (form) {
  let pause;
  form.addEventListener("input", ({ target }) => {
    if (target.id === "find") return;
    clearTimeout(pause);
    pause = setTimeout(plan, target.matches("input:not([type=checkbox], [type=radio])") ? 500 : 0);
  });
  form.addEventListener("submit", (event) => event.preventDefault());
  find("#count").addEventListener("click", () => plan(true));
  const listed = () => all("#chosen > li");
  find("#find")?.addEventListener("input", ({ target }) => {
    const parts = target.value.toLocaleLowerCase().split(/\s+/);
    for (const each of listed()) {
      const text = each.dataset.text.toLocaleLowerCase();
      each.hidden = !parts.every((part) => text.includes(part));
    }
    tell(say("found", { n: listed().filter((each) => !each.hidden).length }));
  });
  const tickAll = (checked) => {
    for (const each of listed()) if (!each.hidden) find("input", each).checked = checked;
    if (!checked) for (const each of all("#chosen input")) each.checked = false;
    plan();
  };
  find("#all").addEventListener("click", () => tickAll(true));
  find("#none").addEventListener("click", () => tickAll(false));
  plan();
}
