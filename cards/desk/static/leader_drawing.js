// What the desk makes of the draft, asked for at every change and always of the newest.
import { ask, find, trying } from "./desk.js";
import { keepPictures, showDrawn, showFaults } from "./leader_shown.js";
import { asSent, at } from "./leader_state.js";
import { shownVariant } from "./leader_variants.js";

const REST = 350; // milliseconds without a key, after which the code is made too

const seen = new Set(); // pictures that are here already
let wanted = null;
let isDrawing = false;
let resting;

/** Have all drawn anew. */
export function draw(code = false) {
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
  const wishes = { variant: shownVariant(), size: find("#size").value };
  const answer = await ask("/draw", { draft: asSent(), ...wishes, seen: [...seen], code });
  for (const { id } of answer.pictures ?? []) seen.add(id);
  keepPictures(answer.pictures ?? []);
  if (wanted) return; // it is of the past already
  showFaults(answer.faults ?? []);
  if (answer.faults) return;
  showDrawn(answer, at.draft, at.variant !== null);
  if (!code) resting = setTimeout(() => draw(true), REST);
}
