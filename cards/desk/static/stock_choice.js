// A choice of stock, whose last item lets a person type a size of their own.
import { all, find } from "./desk.js";

for (const select of all("[data-stock]")) {
  const own = find("input", select.closest(".field"));
  const show = () => (own.closest("label").hidden = select.value !== "?");
  select.addEventListener("change", () => {
    own.value = select.value === "?" ? "" : select.value;
    show();
    if (select.value === "?") own.focus();
  });
  show();
}
