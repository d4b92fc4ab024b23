// A table as the shop has it, and over each of its columns what it is taken for.
import { all, find, say, words } from "./desk.js";

/** Show the sheets of a thing; whoever was at one of its fields stays there. */
export function showSheets(thing) {
  const home = find(".sheets", thing.sheet);
  const at = home.contains(document.activeElement) ? document.activeElement.name : "";
  const places = all(".grid", home).map((grid) => [grid.scrollLeft, grid.scrollTop]);
  const wrong = faultsByCell(thing.found);
  home.replaceChildren(...thing.found.sheets.flatMap((sheet, number) => [
    told(sheet), gridOf(thing, sheet, number, wrong), ...more(sheet),
  ]));
  all(".grid", home).forEach((grid, place) => ([grid.scrollLeft, grid.scrollTop] = places[place] ?? [0, 0]));
  if (at) (find(`[name="${CSS.escape(at)}"]`, home) ?? find("select", home))?.focus({ preventScroll: true });
  const doubts = thing.found.sheets.flatMap((sheet) => sheet.columns.filter((each) => each.doubt));
  const line = find(".doubts", thing.sheet);
  line.hidden = !doubts.length;
  find("span", line).textContent = say("in_doubt", { columns: doubts.map((each) => each.heading).join(", ") });
}

/** What is wrong in the cells of a table, by their addresses. */
function faultsByCell({ faults, leaders }) {
  const wrong = new Map();
  for (const { where, text } of [...faults, ...leaders.flatMap((each) => each.faults ?? [])]) {
    const [cell] = where.split(", ");
    wrong.set(cell, [...(wrong.get(cell) ?? []), text]);
  }
  return wrong;
}

const made = (tag, text = "", values = {}) => Object.assign(document.createElement(tag), { textContent: text, ...values });

function told(sheet) {
  const kind = sheet.wide ? words.row_leader : words.row_section;
  return made("p", sheet.name ? `${sheet.name}. ${kind}` : kind);
}

const more = (sheet) => (sheet.more ? [made("p", say("more_rows", { n: sheet.more }), { className: "soft" })] : []);

function gridOf(thing, sheet, number, wrong) {
  const grid = made("div", "", { className: "grid", tabIndex: 0, role: "region" });
  grid.setAttribute("aria-label", say("first_rows", { name: sheet.name || thing.told }));
  const table = made("table");
  const heads = table.createTHead().insertRow();
  heads.append(made("td"), ...sheet.columns.map((column) => head(thing, column, `${number} ${column.letters}`)));
  const body = table.createTBody();
  sheet.rows.forEach((cells, row) => {
    const line = body.insertRow();
    line.className = row === sheet.heading ? "head" : row < sheet.data ? "left" : "";
    line.append(made("th", row + 1, { scope: "row" }), ...cells.map(([address, text], place) => {
      const cell = made("td", text, { className: sheet.columns[place].field ? "" : "left" });
      if (wrong.has(address)) {
        cell.classList.add("doubtful");
        cell.append(made("small", wrong.get(address).join(" "), { className: "message error" }));
      }
      return cell;
    }));
  });
  grid.append(table);
  return grid;
}

/** The head of a column: its heading, what it is taken for, of which section, in which unit. */
function head(thing, column, name) {
  const { letters, heading, doubt, why } = column;
  const cell = find("#column").content.firstElementChild.cloneNode(true);
  const [field, section] = all("select", cell);
  find(".heading", cell).textContent = `${letters} ${heading}`;
  for (const [select, label, value] of [[field, "column", column.field], [section, "of", column.of]]) {
    select.name = `${name} ${label}`;
    select.setAttribute("aria-label", say(label, { letters: `${letters} ${heading}` }));
    if (![...select.options].some((each) => each.value === value)) select.append(new Option(value, value));
    select.value = value;
    select.addEventListener("change", () => thing.column(heading, [field.value, section.value, ""]));
  }
  const ofSection = all("optgroup", field)[0].contains(field.selectedOptions[0]);
  section.hidden = !ofSection;
  field.disabled = section.disabled = !heading;
  find(".units", cell).append(...column.units.map((each) => unitOf(thing, column, each, name)));
  cell.classList.toggle("doubt", Boolean(doubt));
  cell.classList.toggle("left", !column.field);
  find(".why", cell).textContent = why ? say(doubt ? "doubt" : "out", { why }) : "";
  const right = find(".right", cell);
  right.hidden = !doubt || (doubt === "meaning" && heading in thing.said.columns); // a section must be chosen
  right.setAttribute("aria-label", `${right.textContent}: ${letters} ${heading}`);
  right.addEventListener("click", () => thing.column(heading, [column.field, column.of, column.unit]));
  return cell;
}

/** The unit of a column's bare numbers; of those that stand among others in its cells, of all alike. */
function unitOf(thing, column, { kind, now, all: units, own }, name) {
  const label = made("label", `${words[`unit_${kind}`]} `, { className: "above" });
  const select = made("select", "", { name: `${name} ${kind}` });
  select.setAttribute("aria-label", say("unit", { letters: `${column.letters} ${column.heading}` }));
  select.append(new Option(words.as_written, ""), ...units.map((unit) => new Option(unit, unit)));
  select.value = now;
  select.addEventListener("change", () => (own
    ? thing.column(column.heading, [column.field, column.of, select.value])
    : thing.say({ units: { ...thing.said.units, [kind]: select.value } })));
  label.append(select);
  return label;
}
