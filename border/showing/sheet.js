// Ticks, dates and notes are kept by the browser, each under what it belongs to: a round by
// what is to be made in it, so that a round that has become another one begins unticked.
"use strict";
(() => {
  const say = (words) => { document.getElementById("said").textContent = words; };
  const all = (what, within = document) => [...within.querySelectorAll(what)];
  const mine = `border sheet|${document.body.dataset.project}|`;
  const name = (place) => mine + place.dataset.keep;
  const boxes = (place) => all("input[type=checkbox]:not(:disabled)", place);
  const lines = (place) => all("input[type=text]", place);

  let store = null;
  try {
    store = window.localStorage;
    store.setItem(`${mine}try`, "1");
    store.removeItem(`${mine}try`);
  } catch {
    store = null;
    say("This browser keeps no ticks for this page: print it, and tick by pen.");
  }

  const keep = (place) => {
    const ticks = boxes(place).map((box) => (box.checked ? "1" : "0")).join("");
    const texts = lines(place).map((line) => line.value);
    try {
      if (ticks.includes("1") || texts.some(Boolean)) {
        store.setItem(name(place), JSON.stringify({ ticks, texts }));
      } else {
        store.removeItem(name(place));
      }
    } catch {
      say("The browser has no room to keep this: print the page, and tick by pen.");
    }
  };

  const fill = (place) => {
    let kept = null;
    try { kept = JSON.parse(store.getItem(name(place))); } catch { /* not ours: leave it */ }
    boxes(place).forEach((box, i) => { box.checked = kept?.ticks?.[i] === "1"; });
    lines(place).forEach((line, i) => { line.value = kept?.texts?.[i] ?? ""; });
  };

  const places = all("[data-keep]");
  if (store) {
    places.forEach(fill);
    document.addEventListener("input", (event) => {
      const place = event.target.closest("[data-keep]");
      if (place) keep(place);
    });
    window.addEventListener("storage", () => places.forEach(fill));
  }

  const clear = document.getElementById("clear");
  clear.addEventListener("click", () => {
    if (!window.confirm("Take away all ticks, dates and notes of this sheet?")) return;
    places.forEach((place) => {
      boxes(place).forEach((box) => { box.checked = false; });
      lines(place).forEach((line) => { line.value = ""; });
      if (store) store.removeItem(name(place));
    });
    say("All ticks, dates and notes are taken away.");
  });

  const find = document.getElementById("find");
  find.addEventListener("click", () => {
    const every = boxes(document);
    const next = every[every.findLastIndex((box) => box.checked) + 1];
    if (!next) return say("Every box is ticked.");
    next.focus();
    next.scrollIntoView({ block: "center" });
    return say("");
  });
  document.getElementById("keys").hidden = false;
})();
