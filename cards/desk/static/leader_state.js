// The leader as it stands in the fields, what its file last said, and every step between.
import { find } from "./desk.js";
import { History } from "./history.js";

const begun = JSON.parse(find("#begun").textContent);

/** What all parts of this screen look at; `variant` is the place of the one that is shown. */
export const at = { name: begun.name, base: begun.base, draft: null, variant: null };

// A row keeps its name however it is moved; by that is known which one of the file it is.
let rows = 0;
let variants = 0;
const places = { rows: new Map(), variants: new Map() };
let saved;

export const newRow = (row = {}) => ({ id: (rows += 1), ...row });
export const newVariant = (change) => ({ id: (variants += 1), ...change });

function read({ head, rows: written, variants: changes }) {
  const named = (list, make, kind) => list.map(({ was, ...rest }) => {
    const item = make(rest);
    places[kind].set(item.id, was);
    return item;
  });
  return { head, rows: named(written, newRow, "rows"), variants: named(changes, newVariant, "variants") };
}

const keptUnder = () => `draft ${at.name} ${at.base}`;
at.draft = read(begun.draft);
saved = JSON.stringify(at.draft);
const kept = JSON.parse(sessionStorage.getItem(keptUnder()) ?? "null");
if (kept) {
  at.draft = kept.draft;
  [rows, variants] = kept.named;
  for (const kind of ["rows", "variants"]) places[kind] = new Map(kept.places[kind]);
}

export const past = new History(at.draft);

/** Whether something was typed that the file does not say. */
export const isDirty = () => JSON.stringify(at.draft) !== saved;

/** The draft as the desk takes it: each row with its place in the file. */
export function asSent() {
  const placed = (kind) => at.draft[kind].map(({ id, ...rest }) => ({ ...rest, was: places[kind].get(id) ?? null }));
  return { head: at.draft.head, rows: placed("rows"), variants: placed("variants") };
}

/** What to call once the draft as it is now has become the file's. */
export function savingNow() {
  const { rows: sentRows, variants: sentVariants } = at.draft;
  const ids = { rows: sentRows.map(({ id }) => id), variants: sentVariants.map(({ id }) => id) };
  const text = JSON.stringify(at.draft);
  return (base) => {
    sessionStorage.removeItem(keptUnder());
    at.base = base;
    saved = text;
    for (const kind of ["rows", "variants"]) {
      places[kind] = new Map(ids[kind].map((id, place) => [id, place]));
    }
  };
}

/** Forget what was typed, since another file has it, or nobody wants it. */
export function letGo() {
  sessionStorage.removeItem(keptUnder());
  saved = JSON.stringify(at.draft);
}

/** Keep what is not saved with this window, in case that is loaded again. */
export function keepAside() {
  if (!isDirty()) {
    sessionStorage.removeItem(keptUnder());
    return;
  }
  const known = { rows: [...places.rows], variants: [...places.variants] };
  const all = { draft: at.draft, named: [rows, variants], places: known };
  sessionStorage.setItem(keptUnder(), JSON.stringify(all));
}
