// The variants as tabs: chosen, begun, and their own fields.
import { all, find, say, words } from "./desk.js";
import { fillAll, fitTo } from "./leader_fields.js";
import { at, newVariant } from "./leader_state.js";

function button(text, does) {
  const made = Object.assign(document.createElement("button"), { type: "button", textContent: text });
  made.addEventListener("click", does);
  return made;
}

/** Show the tabs, and of a variant the fields of what it changes. */
export function showTabs(chosen, changed) {
  const { variants, rows } = at.draft;
  if (at.variant !== null && at.variant >= variants.length) at.variant = null;
  const choose = (place) => {
    at.variant = place;
    showTabs(chosen, changed);
    chosen();
  };
  const labels = [words.plain, ...variants.map((each) => each.name ?? "…")];
  const tabs = labels.map((label, place) => {
    const tab = button(label, () => choose(place ? place - 1 : null));
    const isChosen = place - 1 === (at.variant ?? -1);
    tab.setAttribute("role", "tab");
    tab.setAttribute("aria-selected", isChosen);
    tab.setAttribute("aria-controls", place ? "varied" : "written");
    tab.tabIndex = isChosen ? 0 : -1;
    return tab;
  });
  find("#tabs").replaceChildren(...tabs);
  find("#tabs").onkeydown = ({ key }) => {
    const step = { ArrowLeft: -1, ArrowRight: 1 }[key];
    if (!step) return;
    const place = ((at.variant ?? -1) + 1 + step + labels.length) % labels.length;
    choose(place ? place - 1 : null);
    find("#tabs [aria-selected=true]").focus();
  };
  find("#new_variant").onclick = () => {
    at.draft.variants.push(newVariant({ name: `${words.variant} ${variants.length + 1}` }));
    at.variant = at.draft.variants.length - 1;
    changed();
    find("#change input").focus();
  };
  find("#written").hidden = at.variant !== null;
  find("#varied").hidden = at.variant === null;
  if (at.variant === null) return;
  if (!find("#change").children.length) find("#change").append(find("#variant").content.cloneNode(true));
  fitTo(find("#replace"), rows.length, (place) => {
    const line = find("#other_line").content.firstElementChild.cloneNode(true);
    find("span", line).textContent = say("section", { n: place });
    find("input", line).dataset.field = place;
    return line;
  });
  find("#other").open ||= variants[at.variant].replace !== undefined;
  fillAll("#varied");
}

/** The name of the variant that is shown; null where it is the leader as it is written. */
export const shownVariant = () => (at.variant === null ? null : at.draft.variants[at.variant]?.name ?? null);
