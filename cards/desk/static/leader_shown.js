// What the desk has made of a leader, put where it belongs on the page.
import { all, find, words } from "./desk.js";
import { at } from "./leader_state.js";

/** The choice of a knot, for a joint below a row or for an end of the leader. */
export function knotOf(of, field = "knot", called = "") {
  const knot = find("#knot").content.cloneNode(true);
  const select = find("select", knot);
  select.dataset.of = of;
  select.dataset.field = field;
  if (called) find("label span", knot).textContent = called;
  return knot;
}

let messages = 0; // that have a name of their own

/** Show what is wrong beside the fields that it is of, and what is of none above them all. */
export function showFaults(faults) {
  for (const input of all("[aria-invalid]")) {
    input.removeAttribute("aria-invalid");
    input.removeAttribute("aria-describedby");
  }
  for (const message of all(".message")) message.textContent = "";
  const elsewhere = [];
  for (const fault of faults) {
    const input = inputOf(fault);
    const message = input && messageOf(input);
    if (!message) {
      elsewhere.push(fault);
      continue;
    }
    input.setAttribute("aria-invalid", "true");
    message.id ||= `message-${(messages += 1)}`;
    input.setAttribute("aria-describedby", message.id);
    message.textContent = [message.textContent, fault.text].filter(Boolean).join(" ");
    input.closest("details")?.setAttribute("open", "");
    input.closest(".fields")?.removeAttribute("hidden");
  }
  find("#faults").replaceChildren(...elsewhere.map((fault) => item([fault.where, fault.text])));
  find("#editor").classList.toggle("stale", faults.length > 0);
}

/** The field of a fault, where it is one of what is shown. */
function inputOf({ of, row, field }) {
  const ofVariant = of === "variants";
  if (ofVariant ? row !== at.variant : at.variant !== null) return null;
  if (!field) return ofVariant ? find("#change input") : null;
  if (field === "replace") return find("#replace input");
  const home = of === "rows" ? all("#rows > .row")[row] : find("#editor");
  return home && find(`[data-of=${of}][data-field=${field}]`, home);
}

function messageOf(input) {
  const home = input.closest(".field, .joint");
  return home && find(".message", home);
}

/** Show all that comes of a leader that can be tied. */
export function showDrawn(drawn, draft, varied) {
  find("#measure").textContent = drawn.title;
  find("#finished").textContent = drawn.altogether.finished;
  find("#cut").textContent = drawn.altogether.cut;
  if (varied) showVariant(drawn);
  else showRows(drawn, draft);
  showFindings(drawn);
  showPictures(drawn);
}

function showRows({ rows, joints, butt, fly }, draft) {
  find(".heads .cut").textContent = draft.head.lengths === "cut" ? words.tied : words.cut;
  all("#rows > .row").forEach((row, place) => {
    const isCut = draft.head.lengths === "cut"; // then what was typed is cut so, and ties to less
    find("output", row).textContent = isCut ? rows[place].finished : rows[place].cut;
    find(".cut small", row).textContent = isCut ? words.tied : words.cut;
    find(".strand i", row).style.width = `${rows[place].thick}px`;
    const part = find("[data-field=part] option", row);
    part.textContent = rows[place].part_named ? "–" : rows[place].part;
    if (joints[place]) showKnot(find(".joint", row), joints[place], draft.rows[place].knot);
  });
  showKnot(find("#butt"), butt, draft.head.butt_end);
  showKnot(find("#fly"), fly, draft.head.fly_knot);
}

function showKnot(home, { knot, told, lap, why, fits }, named = "") {
  const chosen = fits.find((each) => each.name === knot);
  const select = find("select", home);
  const choices = JSON.stringify([knot, told, fits, named]);
  if (select.dataset.choices !== choices) { // which is seldom, and takes longer than all else here
    select.dataset.choices = choices;
    const rule = new Option(`${words.by_rule}: ${named ? "…" : told}`, "");
    const known = fits.map(({ name, told: called, against }) => new Option(against ? `${called} (${against})` : called, name));
    if (named && !chosen) known.push(new Option(told, named));
    select.replaceChildren(rule, ...known);
  }
  select.value = named ? chosen?.name ?? named : "";
  find(".lap", home).textContent = lap;
  find(".why", home).textContent = [named ? told : "", why, named ? chosen?.against : ""].filter(Boolean).join("; ");
}

function showVariant({ rows, joints }) {
  const lines = rows.map((row, place) => {
    const line = document.createElement("tr");
    line.append(...[place + 1, row.line, row.finished, row.cut, joints[place]?.told ?? "", joints[place]?.lap ?? ""].map((text) => cell(text)));
    return line;
  });
  const head = document.createElement("tr");
  head.append(...words.heads.split("|").map((text) => cell(text, "th")));
  find("#of_variant").replaceChildren(head, ...lines);
}

function cell(text, kind = "td") {
  return Object.assign(document.createElement(kind), { textContent: text });
}

function showFindings({ findings, rows }) {
  const homes = all("#rows > .row .found");
  homes.forEach((home) => home.replaceChildren());
  const whole = [];
  for (const finding of findings) {
    const said = item([finding.told, `${finding.what}: ${finding.why}.`, finding.standing], finding.severity);
    const home = finding.row === null ? null : homes[finding.row];
    if (home && homes.length === rows.length && !find("#written").hidden) home.append(said);
    else whole.push(said);
  }
  find("#findings").replaceChildren(...whole);
  find("#heed").hidden = findings.length > 0 && whole.length === 0;
  if (!findings.length) find("#findings").replaceChildren(item(["", words.nothing]));
}

function item([first, then, last = ""], kind = "") {
  const line = document.createElement("li");
  if (first) line.append(Object.assign(document.createElement("b"), { textContent: `${first}: `, className: kind }));
  line.append(then);
  if (last) line.append(Object.assign(document.createElement("span"), { textContent: ` [${last}]`, className: "soft" }));
  return line;
}

const pictures = new Map(); // those that the desk has sent, by their names

/** Keep the pictures that the desk has sent; it sends each once. */
export function keepPictures(sent) {
  for (const { id, svg } of sent) if (svg !== null) pictures.set(id, svg);
}

function showPictures({ pictures: sent, no_card: refusal }) {
  const [plot, ...sides] = sent.map(({ id }) => id);
  show(find("#plot"), plot);
  const home = find("#sides");
  while (home.children.length > sides.length) home.lastElementChild.remove();
  while (home.children.length < sides.length) {
    home.append(Object.assign(document.createElement("div"), { className: "paper" }));
  }
  sides.forEach((id, place) => show(home.children[place], id));
  find("#no_card").textContent = refusal;
  const front = find("svg", home)?.viewBox.baseVal;
  home.classList.toggle("tall", front !== undefined && front.height > front.width);
}

/** Put a picture into its place; as part of the page it is there sooner than as a file of its own. */
function show(place, id) {
  if (place.dataset.id === id) return;
  place.innerHTML = pictures.get(id).replace(/^<\?xml.*?\?>/, "");
  place.dataset.id = id;
}
