// The sections as rows: shown, added, moved and taken out, by keys, buttons and the mouse.
import { all, find, say, tell } from "./desk.js";
import { fitTo, focusRow, placeOf } from "./leader_fields.js";
import { knotOf } from "./leader_shown.js";
import { at, newRow } from "./leader_state.js";
import { movable } from "./moving.js";

const RARE = ["dropper", "tapers_to", "bought"];

/** Have a row for each section. */
export function showRows() {
  const { rows } = at.draft;
  fitTo(find("#rows"), rows.length, () => {
    const row = find("#row").content.firstElementChild.cloneNode(true);
    row.lastElementChild.append(knotOf("rows"));
    return row;
  });
  all("#rows > .row").forEach((row, place) => {
    find(".section", row).setAttribute("aria-label", say("section", { n: place + 1 }));
    find(".place", row).textContent = place + 1;
    find(".joint", row).hidden = place === rows.length - 1;
    find(".up", row).disabled = place === 0;
    find(".down", row).disabled = place === rows.length - 1;
    find(".remove", row).disabled = rows.length === 1;
    if (RARE.some((key) => key in rows[place])) openMore(row, true);
  });
}

function openMore(row, open) {
  find(".more", row).setAttribute("aria-expanded", open);
  find(".fields", row).hidden = !open;
}

/** Let the rows be changed; `changed` is told of each change. */
export function changeRows(changed) {
  const list = find("#rows");

  function add(place) {
    const { material } = at.draft.rows[place - 1] ?? {};
    at.draft.rows.splice(place, 0, newRow(material ? { material } : {}));
    changed();
    focusRow(place);
  }

  function remove(place) {
    if (at.draft.rows.length === 1) return;
    at.draft.rows.splice(place, 1);
    changed();
    focusRow(Math.min(place, at.draft.rows.length - 1));
    tell(say("removed", { n: place + 1 }));
  }

  function move(from, to, selector) {
    if (to < 0 || to >= at.draft.rows.length || to === from) return;
    at.draft.rows.splice(to, 0, ...at.draft.rows.splice(from, 1));
    changed();
    focusRow(to, selector);
    tell(say("moved", { n: to + 1 }));
  }

  movable(list, move);
  find("#add").addEventListener("click", () => add(at.draft.rows.length));

  list.addEventListener("click", (event) => {
    const button = event.target.closest("button");
    if (!button) return;
    const place = placeOf(button);
    const row = button.closest(".row");
    const last = at.draft.rows.length - 1;
    if (button.matches(".more")) openMore(row, find(".fields", row).hidden);
    if (button.matches(".remove")) remove(place);
    if (button.matches(".up")) move(place, place - 1, place > 1 ? ".up" : ".down");
    if (button.matches(".down")) move(place, place + 1, place < last - 1 ? ".down" : ".up");
  });

  list.addEventListener("keydown", (event) => {
    const { target: input, altKey, key } = event;
    if (!input.dataset.field) return;
    const place = placeOf(input);
    const same = `[data-field=${input.dataset.field}]`;
    if (altKey && key === "ArrowUp") move(place, place - 1, same);
    else if (altKey && key === "ArrowDown") move(place, place + 1, same);
    else if (key === "Enter" && input.matches("input")) add(place + 1);
    else return;
    event.preventDefault();
  });
}
