// What was typed, step by step, without end: a state in, the one before or after it out.

export class History {
  constructor(state) {
    this.steps = [JSON.stringify(state)];
    this.place = 0;
    this.mark = null;
  }

  /** Keep a state. Typing on in one field, which `mark` names, is one step until one pauses. */
  keep(state, mark = null) {
    const text = JSON.stringify(state);
    if (text === this.steps[this.place]) return;
    const now = performance.now();
    const typesOn = mark !== null && mark === this.mark && now - this.at < 900;
    this.steps.length = this.place + 1;
    if (typesOn && this.place > 0) this.steps[this.place] = text;
    else this.place = this.steps.push(text) - 1;
    [this.mark, this.at] = [mark, now];
  }

  /** The state so many steps on, or undefined where there is none. */
  go(steps) {
    const there = this.steps[this.place + steps];
    if (there === undefined) return undefined;
    this.place += steps;
    this.mark = null;
    return JSON.parse(there);
  }

  has(steps) {
    return this.steps[this.place + steps] !== undefined;
  }
}
