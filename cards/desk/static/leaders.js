// The shelf: found, sorted, begun and copied.
import { all, ask, find, say, tell, trying } from "./desk.js";

const open = (name) => (location.href = `/leader/${encodeURIComponent(name)}`);

find("#new").addEventListener("submit", (event) => {
  event.preventDefault();
  const as = new FormData(event.target).get("as");
  trying(async () => open((await ask("/begin", { as })).name));
});

find("#samples")?.addEventListener("click", () => trying(async () => {
  await ask("/samples", {});
  location.reload();
}));

const shelf = find("#shelf");
if (shelf) {
  const leaders = all("li", shelf);
  const number = (by) => (a, b) => Number(b.dataset[by]) - Number(a.dataset[by]);
  const name = (a, b) => a.dataset.name.localeCompare(b.dataset.name, document.documentElement.lang);
  const orders = { name, line_weight: number("line_weight"), length: number("length"), tippet: number("tippet") };

  find("#sort").addEventListener("change", (event) => {
    shelf.append(...leaders.sort((a, b) => orders[event.target.value](a, b) || name(a, b)));
  });

  find("#find").addEventListener("input", (event) => {
    const parts = event.target.value.toLocaleLowerCase().split(/\s+/);
    for (const each of leaders) {
      const text = each.dataset.text.toLocaleLowerCase();
      each.hidden = !parts.every((part) => text.includes(part));
    }
    tell(say("found", { n: leaders.filter((each) => !each.hidden).length }));
  });

  for (const button of all(".copy", shelf)) {
    const { file, name: was } = button.closest("li").dataset;
    button.addEventListener("click", () => trying(async () => {
      open((await ask("/copy", { name: file, as: `${was}, ${say("copied")}` })).name);
    }));
  }
}
