// Rows that are taken by their handle and dropped between others.
import { all } from "./desk.js";

/** Let the rows of a list be dragged; `moved` is told from which place to which. */
export function movable(list, moved) {
  let from = null;
  const rowAt = (event) => event.target.closest(".row");
  const placeOf = (row) => all(":scope > .row", list).indexOf(row);
  const clear = () => all(".over", list).forEach((row) => row.classList.remove("over"));

  list.addEventListener("dragstart", (event) => {
    from = placeOf(rowAt(event));
    event.dataTransfer.effectAllowed = "move";
    event.dataTransfer.setData("text/plain", String(from + 1));
  });
  list.addEventListener("dragover", (event) => {
    if (from === null) return;
    event.preventDefault();
    clear();
    rowAt(event)?.classList.add("over");
  });
  list.addEventListener("drop", (event) => {
    event.preventDefault();
    const row = rowAt(event);
    if (from !== null && row) moved(from, placeOf(row));
  });
  list.addEventListener("dragend", () => {
    from = null;
    clear();
  });
}
