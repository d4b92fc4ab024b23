// The tying book: planned while one types, tied, marked, put right; what was done is told.
import { all, find, say, tell, words } from "./desk.js";
import { asking, saidIn } from "./forms.js";

// ---- Who is at the bench, as long as nobody says otherwise

const who = find("#who");
who.value = localStorage.getItem("who") ?? who.value; // another day the page has another address
who.addEventListener("input", () => localStorage.setItem("who", who.value));

// ---- What was done before the page was shown anew

find("#done").textContent = sessionStorage.getItem("done") ?? "";
sessionStorage.removeItem("done");

/** Show the book as it is now, or another page, and tell what was done. */
function on(told, address = location.href) {
  sessionStorage.setItem("done", told);
  if (address === location.href) location.reload();
  else location.href = address;
}

async function act(home, path, said, then) {
  const answer = await asking(home, path, { ...said, who: who.value });
  if (answer) on(answer.told, then);
}

for (const form of all("form.act")) {
  form.addEventListener("submit", async (event) => {
    event.preventDefault();
    const { path, then, ...of } = form.dataset;
    act(form, path, { ...of, ...(await saidIn(form)) }, then);
  });
}

// ---- A batch

const tie = find("#tie");
if (tie) planning(tie);

function planning(form) {
  let plan = null;
  let waiting;
  let asked = new AbortController();

  const wish = async () => ({ ...(await saidIn(form)), counts: counts() });
  const counts = () => Object.fromEntries(all("[data-count]", form).map(({ name, value }) => [name, value]));

  function show(answer) {
    plan = answer.html ? answer : null;
    if (plan) find("#plan").innerHTML = plan.html; // which the desk has escaped
    else find("#plan").textContent = words.plan_is;
    find("#anyway").hidden = !plan?.is_wrong;
    marks();
  }

  function marks() {
    const isWrong = plan?.is_wrong && !find("#anyway input").checked;
    find("#do").disabled = !plan || plan.is_short || isWrong;
  }

  async function look() {
    asked.abort();
    asked = new AbortController();
    const { signal } = asked;
    const answer = await asking(form, "/book/plan", await wish(), { signal });
    if (signal.aborted) return;
    find("#told").textContent = "";
    show(answer ?? {});
  }

  form.addEventListener("input", (event) => {
    if (event.target.matches("#find, [name=tied], [name=anyway]")) return marks();
    plan = null;
    marks();
    clearTimeout(waiting);
    waiting = setTimeout(look, 150);
  });

  form.addEventListener("submit", async (event) => {
    if (event.submitter?.hasAttribute("formaction")) return;
    event.preventDefault();
    if (!plan) return look();
    find("#do").disabled = true;
    const answer = await asking(form, "/book/tie", { ...(await wish()), who: who.value, seen: plan.seen });
    if (answer?.changed) {
      show(answer.changed);
      find("#told").textContent = words.changed_plan;
    } else if (answer) {
      form.reset();
      on(answer.told, `/book/leaders?batch=${answer.batch}`);
    } else marks();
  });

  form.addEventListener("keydown", (event) => { // Enter would press the first button there is
    if (event.key !== "Enter" || !event.target.matches("input")) return;
    event.preventDefault();
    look();
  });

  if (Object.values(counts()).some(Boolean)) look(); // a browser may keep what was typed

  find("#find")?.addEventListener("input", ({ target }) => {
    const parts = target.value.toLocaleLowerCase().split(/\s+/);
    for (const row of all(".choice li", form)) {
      const text = row.textContent.toLocaleLowerCase();
      row.hidden = !parts.every((part) => text.includes(part));
    }
  });
}

// ---- Leaders that are ticked

const chosen = find("#chosen");
if (chosen) choosing(chosen);

function choosing(form) {
  const boxes = all("[name=number]", form);
  const ticked = () => boxes.filter((box) => box.checked).map((box) => box.value);
  const marks = () => {
    find("#how_many").textContent = ticked().length;
    find("#every").checked = ticked().length === boxes.length;
  };

  find("#every").addEventListener("change", ({ target }) => {
    for (const box of boxes) box.checked = target.checked;
    marks();
  });
  form.addEventListener("change", marks);
  form.addEventListener("keydown", (event) => {
    const part = event.target.closest("input") && event.target.closest("[data-path]");
    if (event.key !== "Enter" || !part) return;
    event.preventDefault();
    find(".go", part).click();
  });
  for (const button of all(".go", form)) {
    button.addEventListener("click", async () => {
      const part = button.closest("[data-path]");
      const said = { ...(await saidIn(part)), what: part.dataset.what, numbers: ticked() };
      act(form, part.dataset.path, { ...said, entry: form.dataset.entry });
    });
  }
  form.addEventListener("submit", (event) => {
    if (ticked().length) return;
    event.preventDefault();
    tell(say("none_chosen"), true);
  });
  marks();
}
