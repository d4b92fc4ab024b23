// The shop's file as it is typed; what was changed in it is kept.
import { all, ask, find, RefusedError, say, send, tell, trying, words } from "./desk.js";
import "./stock_choice.js";
import { showFieldFaults } from "./field_faults.js";

const form = find("#shop");
let { base } = JSON.parse(find("#begun").textContent);
const KEPT = "input[name], select[name]";
const begun = new Map();

const fields = () => all(KEPT, form).filter(({ name }) => !name.startsWith("learn."));
// What the page came with: somebody may have typed before this was loaded.
const cameWith = (field) => (field.options
  ? ([...field.options].find((each) => each.defaultSelected) ?? field.options[0])?.value
  : field.defaultValue);
const note = () => fields().forEach(({ name, value }) => begun.set(name, value));
const changed = () => fields().filter(({ name, value }) => begun.get(name) !== value);

/** What was changed, by the table of the file that it stands in. */
function typed() {
  const said = { keys: {}, choice: {}, lap: {}, printer: {} };
  for (const { name, value } of changed()) {
    const [table, key] = parted(name);
    said[table][key] = value;
  }
  if (find("#own_lap").value.trim()) said.lap[find("#own_knot").value] = find("#own_lap").value;
  return said;
}

function parted(name) {
  const at = name.indexOf(".");
  return at < 0 ? ["keys", name] : [name.slice(0, at), name.slice(at + 1)];
}

/** Keep what is said; true once it is kept. */
async function keep(said, over = false) {
  try {
    const answer = await ask("/shop/save", { ...said, base, over });
    if (answer.changed) return await settle(said);
    base = answer.base;
    showFaults([]);
    tell(words.saved);
    showImprint();
    return true;
  } catch (error) {
    if (!(error instanceof RefusedError)) throw error;
    showFaults(error.faults);
    tell(words.not_saved, true);
    return false;
  }
}

function showFaults(faults) {
  const elsewhere = showFieldFaults(form, faults);
  find("#faults").replaceChildren(...elsewhere.map(({ where, text }) => {
    const line = document.createElement("li");
    line.append(where ? `${where}: ${text}` : text);
    return line;
  }));
  find("[aria-invalid]", form)?.focus();
}

/** The file was changed elsewhere: the person says what of it is to stand. */
function settle(said) {
  const dialog = find("#conflict");
  dialog.showModal();
  return new Promise((done) => {
    dialog.onclose = () => done(false);
    dialog.onclick = ({ target }) => {
      if (!target.value) return;
      dialog.onclose = null;
      dialog.close();
      if (target.value === "theirs") reload();
      else done(keep(said, true));
    };
  });
}

function reload() {
  note();
  find("#own_lap").value = "";
  location.reload();
}

async function save() {
  const said = typed();
  const anew = "language" in said.keys || Object.keys(said.lap).length > 0;
  if (!(await keep(said))) return;
  note();
  if (anew) reload();
}

const dirty = () => changed().length > 0 || find("#own_lap").value.trim() !== "";

form.addEventListener("submit", (event) => {
  event.preventDefault();
  trying(save);
});
document.addEventListener("keydown", (event) => {
  if (!(event.ctrlKey || event.metaKey) || event.key !== "s") return;
  event.preventDefault();
  trying(save);
});
addEventListener("beforeunload", (event) => {
  if (dirty()) event.preventDefault();
});
find("[name=language]").addEventListener("change", () => trying(save));

// The logo.

function showImprint() {
  const image = find("#imprint");
  image.onload = () => (image.hidden = false);
  image.onerror = () => (image.hidden = true);
  if (all("[name=name], [name=line], [name=logo]").some(({ value }) => value)) image.src = `/shop/imprint.svg?${base}`;
  else image.hidden = true;
}

const take = (file) => trying(async () => {
  try {
    const { name } = await send("/shop/logo", file);
    find("[name=logo]").value = name;
    if (await keep({ keys: { logo: name } })) begun.set("logo", name);
  } catch (error) {
    if (!(error instanceof RefusedError)) throw error;
    showFaults(error.faults);
  }
});

find("#picture").addEventListener("change", ({ target }) => {
  if (target.files.length) take(target.files[0]);
  target.value = "";
});
const drop = find("#drop");
for (const kind of ["dragover", "dragleave", "drop"]) {
  drop.addEventListener(kind, (event) => {
    event.preventDefault();
    drop.classList.toggle("over", kind === "dragover");
    if (kind === "drop" && event.dataTransfer.files.length) take(event.dataTransfer.files[0]);
  });
}

// A knot tied once.

let found = null;
const knot = find("[name='learn.knot']");

function sort() {
  const joint = knot.selectedOptions[0].dataset.pieces === "2";
  find("#second").hidden = !joint;
  find("#after_joint").hidden = !joint;
  find("#after_end").hidden = joint;
}

function forget() {
  found = null;
  find("#sum").textContent = "";
  find("#keep_lap").hidden = true;
}

find("#learn").addEventListener("input", forget);
knot.addEventListener("change", sort);
find("#reckon").addEventListener("click", () => trying(async () => {
  forget();
  const inputs = all("[name]", find("#learn"));
  const said = Object.fromEntries(inputs.map(({ name, value }) => [parted(name)[1], value]));
  try {
    found = await ask("/shop/learn", said);
    showFieldFaults(find("#learn"), []);
  } catch (error) {
    if (!(error instanceof RefusedError)) throw error;
    const here = error.faults.map((fault) => ({ ...fault, where: `learn.${fault.where}` }));
    find("#sum").textContent = showFieldFaults(find("#learn"), here).map(({ text }) => text).join(" ");
    return;
  }
  const { was, joint } = found;
  find("#sum").textContent = say(joint ? "sum_of_joint" : "sum_of_end", found) + (was && was !== found.lap ? ` ${say("was", found)}` : "");
  find("#keep_lap").hidden = false;
}));
find("#keep_lap").addEventListener("click", () => trying(async () => {
  if (await keep({ lap: { [found.key]: found.lap } })) {
    if (!dirty()) reload();
    forget();
  }
}));

// The printer.

function aim() {
  const asked = new URLSearchParams({ paper: find("#check_paper").value, backs: find("#check_backs").value });
  find("#check_page").href = `/shop/printer.pdf?${asked}`;
  find("#corrected_page").href = `/shop/printer.pdf?corrected=1&${asked}`;
  const both = find("#check_backs").value !== "" || all("[name^='printer.back']").some(({ value }) => value);
  find("#back").hidden = !both;
}

find("#check").addEventListener("change", aim);
for (const field of fields()) begun.set(field.name, cameWith(field));
sort();
aim();
showImprint();
