// What is brought in: dropped, picked or pasted; looked at by the desk, and kept when a person says so.
import { ask, find, RefusedError, say, send, tell, trying, words } from "./desk.js";
import { showLeaders } from "./bring_leaders.js";
import { showSheets } from "./bring_table.js";

/** One file, with what a person said of it; the desk looks at it anew whenever that changes. */
class Thing {
  constructor(file, name, told = name) {
    this.file = file;
    this.name = name;
    this.said = { columns: {}, units: {} };
    this.unticked = new Set();
    this.sheet = find("#thing").content.firstElementChild.cloneNode(true);
    this.times = 0;
    find("h2", this.sheet).textContent = this.told = told;
    find(".aside", this.sheet).setAttribute("aria-label", `${find(".aside", this.sheet).textContent}: ${told}`);
    find(".aside", this.sheet).addEventListener("click", () => this.sheet.remove());
    find(".keep", this.sheet).addEventListener("click", () => trying(() => this.keep()));
    find(".sure", this.sheet).addEventListener("click", () => this.sure());
    find(".material", this.sheet).addEventListener("change", (event) => this.say({ material: event.target.value }));
    find(".tied", this.sheet).addEventListener("change", (event) => this.say({ tied: event.target.checked }));
    this.show({});
  }

  /** Look again, with something more said. */
  say(more) {
    Object.assign(this.said, more);
    this.looking = this.look();
    return this.looking;
  }

  /** Say of a column what it is taken for. */
  column(heading, meaning) {
    return this.say({ columns: { ...this.said.columns, [heading]: meaning } });
  }

  /** Say of all columns in doubt that they are what they seem. */
  async sure() {
    await this.looking;
    const columns = { ...this.said.columns };
    for (const sheet of this.found.sheets)
      for (const each of sheet.columns)
        if (each.doubt) columns[each.heading] = [each.field, each.of, each.unit];
    return this.say({ columns });
  }

  async look() {
    const time = ++this.times;
    find(".what", this.sheet).textContent = words.looking;
    const found = await this.asked();
    if (time === this.times) this.show(found);
  }

  /** What the desk finds, or why it finds nothing; that is told beside this file alone. */
  async asked() {
    const { largest } = find("#files").dataset;
    if (this.file.size > largest) return wrong(say("too_large", { n: Math.floor(largest / 1e6) }));
    try {
      await this.file.slice(0, 1).arrayBuffer();
    } catch {
      return wrong(words.unread);
    }
    try {
      return await send("/bring/look", new File([JSON.stringify(this.said), "\n", this.file], this.name));
    } catch (error) {
      return error instanceof RefusedError ? { faults: error.faults } : wrong(words.lost);
    }
  }

  show(found) {
    this.found = { sheets: [], leaders: [], faults: [], ...found };
    const { sheets, leaders, faults, material, tied = [] } = this.found;
    const notes = [
      ...(found.left_out ?? []).map((what) => say("left_row", { what })),
      ...(found.held ?? []).map((where) => say("held", where)),
      ...(found.strangers ?? []).map((text) => say("stranger", { text })),
      ...(found.changed ?? []),
    ];
    find(".what", this.sheet).textContent = "";
    lines(find(".faults", this.sheet), faults.map(({ where, text }) => (where ? `${where}: ${text}` : text)));
    lines(find(".notes", this.sheet), notes);
    showSheets(this);
    const asks = find(".of", this.sheet);
    asks.hidden = !material?.bare;
    if (material) {
      find("span", asks).textContent = say("material", { n: material.bare });
      const select = find("select", asks);
      const guess = find(`option[value="${CSS.escape(material.guess)}"]`, select);
      if (guess) select.firstElementChild.after(guess);
      select.value = material.now;
    }
    find(".day", this.sheet).hidden = !tied.length;
    find(".day span", this.sheet).textContent = say("tied", { days: tied.join(", ") });
    showLeaders(this);
    if (!this.times) return;
    tell(say(leaders.length ? "found" : "none", { name: this.told, n: leaders.length }));
  }

  /** The leaders that are to be kept. */
  get chosen() {
    return this.found.leaders.filter((each) => each.text && !each.here && !this.unticked.has(each.text));
  }

  async keep() {
    const { chosen } = this;
    const { answers = null } = this.found;
    const { names } = await ask("/bring/keep", { texts: chosen.map((each) => each.text), answers });
    chosen.forEach((each, place) => (each.here = names[place]));
    showLeaders(this);
    find(".leaders a:not([hidden])", this.sheet)?.focus();
    tell(say("kept", { n: names.length }));
  }
}

const wrong = (text) => ({ faults: [{ where: "", text }] });

function lines(list, texts) {
  list.replaceChildren(...texts.map((text) => Object.assign(document.createElement("li"), { textContent: text })));
}

/** Look at files one after the other, so that a large one keeps none of the others from being told. */
async function bring(files) {
  const things = [...files].map((file) => new Thing(file, file.name));
  find("#brought").prepend(...things.map((thing) => thing.sheet));
  for (const thing of things) await thing.look();
}

const input = find("#files");
input.addEventListener("change", () => {
  bring(input.files);
  input.value = "";
});

addEventListener("dragover", (event) => {
  if (![...event.dataTransfer.types].includes("Files")) return;
  event.preventDefault();
  document.body.classList.add("over");
});
addEventListener("dragleave", (event) => {
  if (!event.relatedTarget) document.body.classList.remove("over");
});
addEventListener("drop", (event) => {
  document.body.classList.remove("over");
  if (!event.dataTransfer.files.length) return;
  event.preventDefault();
  bring(event.dataTransfer.files);
});
addEventListener("paste", (event) => {
  if (!event.clipboardData.files.length) return;
  event.preventDefault();
  bring(event.clipboardData.files);
});

let pasted = null;
find("#paste").addEventListener("submit", (event) => {
  event.preventDefault();
  const text = new FormData(event.target).get("text");
  pasted?.sheet.remove();
  pasted = new Thing(new Blob([text]), "", words.pasted);
  find("#brought").prepend(pasted.sheet);
  pasted.look();
});
