"use strict";
(() => {
  const MONTHS = ["january", "february", "march", "april", "may", "june", "july", "august", "september", "october", "november", "december"];
  const NUMBER = /^([-\u2212+]?)(\d[\d,]*(?:\.\d+)?|\.\d+)(?:[- ](\d+)\/(\d+)|\/(\d+))?\s*(?:%|[A-Za-z\u00b0\u00b5].*)?$/;
  const NONE = ["", "\u2013"];
  const words = new Intl.Collator("en-US", { numeric: true, sensitivity: "base" });

  const read = (cell) => cell.textContent.replace(/\s+/g, " ").trim();

  function readDate(text) {
    const iso = /^(\d{4})-(\d\d)-(\d\d)$/.exec(text);
    if (iso) return Date.UTC(iso[1], iso[2] - 1, iso[3]);
    const long = /^([A-Za-z]+) (\d{1,2}), (\d{4})$/.exec(text);
    const month = long ? MONTHS.indexOf(long[1].toLowerCase()) : -1;
    return month < 0 ? NaN : Date.UTC(long[3], month, long[2]);
  }

  function readNumber(text) {
    const found = NUMBER.exec(text);
    if (!found) return NaN;
    const whole = Number(found[2].replace(/,/g, ""));
    const size = found[5] ? whole / found[5] : found[3] ? whole + found[3] / found[4] : whole;
    return found[1] && found[1] !== "+" ? -size : size;
  }

  /* A column in which every value is a date is sorted by date, one of numbers by number, any other as words and marks. */
  function findOrder(texts) {
    const given = texts.filter((text) => !NONE.includes(text));
    const kind = [readDate, readNumber].find((one) => given.every((text) => !Number.isNaN(one(text))));
    return kind ? (a, b) => kind(a) - kind(b) : words.compare;
  }

  function sortRows(rows, place, way) {
    const keyed = rows.map((row) => ({ row, text: read(row.cells[place]) }));
    const order = findOrder(keyed.map((one) => one.text));
    const isNone = (one) => NONE.includes(one.text);
    return keyed
      .sort((a, b) => isNone(a) - isNone(b) || (isNone(a) ? 0 : way * order(a.text, b.text)))
      .map((one) => one.row);
  }

  function make(name, values, ...children) {
    const made = Object.assign(document.createElement(name), values);
    made.append(...children);
    return made;
  }

  function addSorting(table, rows, tell) {
    const heads = [...table.tHead.rows[0].cells];
    heads.forEach((head, place) => {
      const title = read(head);
      const button = make("button", { type: "button" }, ...head.childNodes);
      button.addEventListener("click", () => {
        const next = { ascending: "descending", descending: "none" }[head.getAttribute("aria-sort")] || "ascending";
        heads.forEach((one) => one.setAttribute("aria-sort", one === head ? next : "none"));
        const sorted = next === "none" ? rows : sortRows(rows, place, next === "ascending" ? 1 : -1);
        table.tBodies[0].append(...sorted);
        tell(next === "none" ? "First order." : `Sorted by ${title}, ${next}.`);
      });
      head.append(button);
      head.setAttribute("aria-sort", "none");
    });
  }

  function addFilter(table, rows, number) {
    const texts = rows.map((row) => read(row).toLowerCase());
    const title = read(table.caption);
    const field = make("input", { type: "search", id: `filter${number}`, autocomplete: "off" });
    const status = make("p", {});
    status.setAttribute("role", "status");
    let shown = rows.length;
    const tell = (said) => { status.textContent = `${shown} of ${rows.length} rows shown. ${said}`.trim(); };
    field.addEventListener("input", () => {
      const asked = field.value.toLowerCase().split(/\s+/).filter(Boolean);
      shown = 0;
      rows.forEach((row, place) => {
        row.hidden = !asked.every((word) => texts[place].includes(word));
        shown += !row.hidden;
      });
      tell("");
    });
    const label = make("label", { htmlFor: field.id }, `Filter: ${title}`);
    table.before(make("div", { className: "filter" }, label, field, status));
    return tell;
  }

  document.querySelectorAll("main table").forEach((table, number) => {
    const rows = [...table.tBodies[0].rows];
    if (rows.length < 2) return;
    table.classList.add("sorts");
    addSorting(table, rows, addFilter(table, rows, number));
  });
})();
