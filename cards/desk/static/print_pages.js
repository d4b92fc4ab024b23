// The pages of a print as pictures; on the first sheet of labels each place can be picked.
import { find, say } from "./desk.js";

const MOST = 60; // pages that are shown

export function showPages({ at, pages = [], places }, start, pick) {
  const shown = pages.slice(0, MOST).map((size, place) => page(at, size, place + 1));
  if (places && !shown.length) shown.push(blank());
  if (places) shown[0].append(...labels(places, start, pick));
  find("#pages").replaceChildren(...shown);
  find("#pick").hidden = !places;
  const more = pages.length - MOST;
  find("#more_pages").textContent = more > 0 ? say("more_pages", { n: more }) : "";
}

function page(at, [width, height], number) {
  const figure = document.createElement("div");
  figure.className = "page";
  const image = Object.assign(new Image(), {
    loading: "lazy", className: "paper", alt: say("page", { n: number }), width: Math.round(width), height: Math.round(height),
  });
  image.src = `/prints/${at}/${number}.svg`;
  figure.append(image);
  return figure;
}

/** A sheet to pick from, of which nothing can be printed as it is chosen now. */
function blank() {
  return Object.assign(document.createElement("div"), { className: "page paper blank" });
}

function labels({ columns, width, height, at }, start, pick) {
  return at.map(([x, y], place) => {
    const number = place + 1;
    const name = say("label", { n: number, row: Math.floor(place / columns) + 1, column: (place % columns) + 1 });
    const button = Object.assign(document.createElement("button"), { type: "button", className: "place", title: name });
    button.setAttribute("aria-label", name);
    button.setAttribute("aria-pressed", number === start);
    button.classList.toggle("gone", number < start);
    Object.assign(button.style, { left: `${x}%`, top: `${y}%`, width: `${width}%`, height: `${height}%` });
    button.addEventListener("click", () => {
      pick(number);
      refocus(number);
    });
    return button;
  });
}

/** The picture is made anew, so that whoever picks by keyboard is put back where they were. */
function refocus(number) {
  const watch = new MutationObserver(() => {
    const button = find("#pages").querySelectorAll("button")[number - 1];
    if (!button) return;
    watch.disconnect();
    button.focus({ preventScroll: true });
  });
  watch.observe(find("#pages"), { childList: true });
}
