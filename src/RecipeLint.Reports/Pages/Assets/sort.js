"use strict";
// No ampersand and no less-than sign stand in it, so that the page reads as XML too.
// Columns of the overview sort when their head is pressed; without script the table stands as it was made, the gravest first.
(() => {
  const table = document.querySelector("table.sortable");
  if (!table) { return; }
  const body = table.tBodies[0];
  const original = [...body.rows];
  const key = (row, i) => row.cells[i].dataset.key ?? row.cells[i].textContent.trim();
  table.querySelectorAll("thead th").forEach((head, i) => {
    const button = document.createElement("button");
    button.type = "button";
    button.append(...head.childNodes);
    head.append(button);
    button.addEventListener("click", () => {
      const up = head.getAttribute("aria-sort") !== "ascending";
      table.querySelectorAll("thead th").forEach((h) => h.removeAttribute("aria-sort"));
      head.setAttribute("aria-sort", up ? "ascending" : "descending");
      const rows = original.slice().sort((a, b) => {
        const [x, y] = [key(a, i), key(b, i)];
        const numbers = [x, y].every((v) => v !== "" ? !isNaN(v) : false);
        const order = numbers ? Number(x) - Number(y) : x.localeCompare(y, "en");
        return up ? order : -order;
      });
      body.append(...rows);
    });
  });
})();
