// From the rack: what it makes, its spools in their fields, and tapers that follow the sliders.
import { all, find, say, words } from "./desk.js";
import { asking, saidIn } from "./forms.js";

find("#done").textContent = sessionStorage.getItem("done") ?? "";
sessionStorage.removeItem("done");

/** Show the page as it is now, and tell what was done. */
function again(told) {
  sessionStorage.setItem("done", told);
  location.reload();
}

/** Ask each time something is typed, after a moment; only the last answer is shown. */
function following(form, path, said, show, wait) {
  let waiting;
  let asked = new AbortController();
  const look = async () => {
    asked.abort();
    asked = new AbortController();
    const { signal } = asked;
    const answer = await asking(form, path, await said(), { signal });
    if (!signal.aborted) show(answer);
  };
  form.addEventListener("input", () => {
    clearTimeout(waiting);
    waiting = setTimeout(look, wait);
  });
  form.addEventListener("submit", (event) => {
    event.preventDefault();
    look();
  });
  return look;
}

const starters = { makes, taper, spools };
for (const [name, start] of Object.entries(starters)) if (find(`#${name}`)) start(find(`#${name}`));

// ---- What the rack makes

function makes(form) {
  const counts = () => Object.fromEntries(all("[data-count]", form).map(({ name, value }) => [name, value]));
  const look = following(form, "/rack/makes", () => ({ counts: counts() }), (answer) => {
    if (answer?.html) find("#plan").innerHTML = answer.html; // which the desk has escaped
    else find("#plan").textContent = words.plan_is;
  }, 150);
  if (Object.values(counts()).some(Boolean)) look(); // a browser may keep what was typed
}

// ---- A taper

function taper(form) {
  const sliders = JSON.parse(find("#sliders").textContent);
  const shares = all("[data-shares]", form);
  const home = find("#proposals");
  let addresses = [];

  const field = (name) => find(`[name=${name}]`, form);
  const slide = (range, value, told) => {
    range.value = value;
    range.setAttribute("aria-valuetext", told);
  };

  /** Let all three shares make 100, the two others as they stood to each other. */
  function share(name, value) {
    const others = shares.filter((each) => each.dataset.shares !== name);
    const rest = 100 - value;
    const [one, other] = others.map((each) => Number(each.value));
    const first = Math.min(Math.max(Math.round((rest * one) / (one + other)), 1), rest - 1);
    const all_three = { [name]: value, [others[0].dataset.shares]: first, [others[1].dataset.shares]: rest - first };
    for (const range of shares) {
      const part = all_three[range.dataset.shares];
      slide(range, part, `${part} %`);
      if (document.activeElement !== field(range.dataset.shares)) field(range.dataset.shares).value = part;
    }
  }

  form.addEventListener("input", ({ target }) => {
    home.classList.add("stale");
    const { slides, shares: sharing } = target.dataset;
    if (slides) {
      field(slides).value = sliders[slides].texts[target.value];
      slide(target, target.value, field(slides).value);
    } else if (sharing) share(sharing, Number(target.value));
    else if (target.name?.endsWith("_share")) {
      const value = Number(target.value);
      if (Number.isInteger(value) && value >= 1 && value <= 98) share(target.name, value);
    }
  });

  function show(answer) {
    if (!answer) return;
    home.classList.remove("stale");
    for (const address of addresses) URL.revokeObjectURL(address);
    addresses = answer.pictures.map((svg) => URL.createObjectURL(new Blob([svg], { type: "image/svg+xml" })));
    home.innerHTML = answer.html; // which the desk has escaped
    all("img", home).forEach((image, place) => (image.src = addresses[place]));
    find("#how_many").textContent = say("proposed", { n: answer.recipes.length });
    for (const [name, place] of Object.entries(answer.places)) {
      const range = find(`[data-slides=${name}]`, form);
      if (document.activeElement !== range) slide(range, place, field(name).value);
    }
    all(".keep", home).forEach((keep, place) => keep.addEventListener("submit", async (event) => {
      event.preventDefault();
      const kept = await asking(keep, "/rack/keep", { recipe: answer.recipes[place], name: field_of(keep).value });
      if (kept) location.href = `/leader/${encodeURIComponent(kept.name)}`;
    }));
  }
  const field_of = (keep) => find("[name=name]", keep);

  /** How wide a drawing is; before the first is there, what it is about to be. */
  function width() {
    const room = home.clientWidth;
    return find(".tapers .paper", home)?.clientWidth || Math.round(room / Math.max(1, Math.floor(room / 390))) - 50;
  }

  const said = async () => ({ ...(await saidIn(form)), width: width() });
  following(form, "/rack/propose", said, show, 60)();
}

// ---- The spools in their fields

function spools(form) {
  const list = find(".spool_rows", form);
  let isSaved = false;
  const rows = () => all(".spool", list);

  function name() {
    rows().forEach((row, place) => {
      for (const input of all("[data-field]", row)) input.name = `spool ${place + 1}, ${input.dataset.field}`;
    });
  }

  const said = () => rows().map((row) => ({
    was: row.dataset.was === undefined ? null : Number(row.dataset.was),
    ...Object.fromEntries(all("[data-field]", row).map((input) => [input.dataset.field, input.value])),
  }));

  find("#add").addEventListener("click", () => {
    list.append(find("#row").content.firstElementChild.cloneNode(true));
    name();
    find("input", list.lastElementChild).focus();
  });
  list.addEventListener("click", ({ target }) => {
    if (!target.matches(".remove")) return;
    target.closest(".spool").remove();
    name();
    find("#add").focus();
  });
  form.addEventListener("submit", async (event) => {
    event.preventDefault();
    const answer = await asking(form, "/rack/save", { rows: said(), base: form.dataset.base });
    isSaved = Boolean(answer);
    if (answer) again(words.saved);
  });
  find("#bring").addEventListener("submit", async (event) => {
    event.preventDefault();
    const answer = await asking(event.target, "/rack/bring", await saidIn(event.target));
    if (answer) again(say("brought", answer));
  });
  name();
  const begun = JSON.stringify(said());
  addEventListener("beforeunload", (event) => {
    if (!isSaved && JSON.stringify(said()) !== begun) event.preventDefault();
  });
}
