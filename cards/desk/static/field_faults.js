// What the desk has refused, beside the fields that it is of.
import { all, find } from "./desk.js";

/** Show each fault beside its field; return those of no field here. */
export function showFieldFaults(form, faults) {
  for (const input of all("[aria-invalid]", form)) input.removeAttribute("aria-invalid");
  for (const message of all(".message", form)) message.textContent = "";
  return faults.filter(({ where, text }) => {
    const names = [where.replaceAll(", ", "."), where.split(/, |: /)[0]].map(CSS.escape);
    const named = names.find((each) => each && find(`[name="${each}"], [data-field="${each}"]`, form));
    const input = named && find(`[name="${named}"]`, form);
    const home = input ? input.closest(".field") ?? input.closest("label") : null;
    const message = home ? find(".message", home) : named && find(`[data-field="${named}"]`, form);
    if (!message) return true;
    input?.setAttribute("aria-invalid", "true");
    message.textContent = [message.textContent, text].filter(Boolean).join(" ");
    message.classList.add("error");
    message.closest("details")?.setAttribute("open", "");
    return false;
  });
}
