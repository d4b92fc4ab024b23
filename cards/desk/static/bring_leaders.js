// The leaders that were found in something: each with its small card, or with what is wrong in it.
import { all, ask, find, say, words } from "./desk.js";

const pictures = new Map(); // addresses of cards, by the text of their leader

/** Draw a card when it comes into sight. */
const watch = new IntersectionObserver((entries) => {
  for (const { target, isIntersecting } of entries) {
    if (!isIntersecting) continue;
    watch.unobserve(target);
    draw(target.each.text).then((address) => {
      const picture = find("img", target);
      picture.hidden = !address; // until then its place is kept, so that nothing moves under a finger
      if (address) picture.src = address;
    });
  }
});

function draw(text) {
  if (!pictures.has(text)) pictures.set(text, drawn(text));
  return pictures.get(text);
}

async function drawn(text) {
  try {
    const { svg } = await ask("/bring/card", { text });
    return URL.createObjectURL(new Blob([svg], { type: "image/svg+xml" }));
  } catch {
    return ""; // its own page tells why no card holds it
  }
}

/** Show the leaders of a thing, and how many of them are to be kept. */
export function showLeaders(thing) {
  const list = find(".leaders", thing.sheet);
  list.replaceChildren(...thing.found.leaders.map((each) => shown(thing, each)));
  count(thing);
}

function shown(thing, each) {
  const item = find("#leader").content.firstElementChild.cloneNode(true);
  item.each = each;
  find("b", item).textContent = each.name;
  find(".told", item).textContent = each.told ?? words.wrong;
  const box = find("input", item);
  box.checked = Boolean(each.text) && !thing.unticked.has(each.text);
  box.hidden = !each.text || Boolean(each.here);
  box.addEventListener("change", () => {
    if (box.checked) thing.unticked.delete(each.text);
    else thing.unticked.add(each.text);
    count(thing);
  });
  if (each.here) {
    const link = find("a", item);
    link.hidden = false;
    link.href = `/leader/${encodeURIComponent(each.here)}`;
    link.textContent = say("here", { name: each.here });
  }
  find(".faults", item).replaceChildren(...(each.faults ?? []).map(({ where, text }) => {
    return Object.assign(document.createElement("li"), { textContent: where ? `${where}: ${text}` : text });
  }));
  if (each.text) watch.observe(item);
  return item;
}

function count(thing) {
  const button = find(".keep", thing.sheet);
  button.textContent = say("keep", { n: thing.chosen.length });
  button.hidden = !all("input:not([hidden])", find(".leaders", thing.sheet)).length;
  button.disabled = !thing.chosen.length;
}
