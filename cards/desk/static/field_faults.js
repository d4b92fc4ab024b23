// What the desk has refused, beside the fields that it is of.
import { all, find } from "./desk.js";

/** Show each fault beside its field; return those of no field here. */
export function showFieldFaults(form, faults) {
  for (const input of all("[aria-invalid]", form)) input.removeAttribute("aria-invalid");
  for (const message of all(".message", form)) message.textContent = "";
  return faults.filter(({ where, text }) => {
    const name = where.split(/, |: /)[0].replaceAll(" ", "_");
    const input = name && find(`[name="${CSS.escape(name)}"]`, form);
    const home = input ? input.closest(".field") ?? input.closest("label") : null;
    const message = home ? find(".message", home) : name && find(`[data-field="${CSS.escape(name)}"]`, form);
    if (!message) return true;
    input?.setAttribute("aria-invalid", "true");
    message.textContent = [message.textContent, text].filter(Boolean).join(" ");
    message.classList.add("error");
    message.closest("details")?.setAttribute("open", "");
    return false;
  });
}
