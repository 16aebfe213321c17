// What a reader sets up on this page: size, terms, units, light, ticks, counts. All of it stays on the reader's device. Words are only ever put in as text.
(function () {
  "use strict";
  var root = document.documentElement;
  var panel = document.getElementById("reader");
  if (!panel) { return; }
  var place = document.getElementById("place");
  var key = "pattern: " + panel.getAttribute("data-key");
  var state = empty();
  var keeps = true;
  var rows = all("li.row");

  function all(query, within) { return Array.prototype.slice.call((within || document).querySelectorAll(query)); }
  function one(query, within) { return (within || document).querySelector(query); }
  function empty() { return { chosen: {}, ticks: [], counts: {} }; }
  function isPlain(thing) { return typeof thing === "object" && thing !== null && !Array.isArray(thing); }

  // The device may refuse to keep anything, and what it kept may be of another version: only what is understood is taken.
  function load() {
    var kept = null;
    try {
      window.localStorage.setItem(key + " ?", "1");
      window.localStorage.removeItem(key + " ?");
      kept = JSON.parse(window.localStorage.getItem(key) || "null");
    } catch (e) {
      try { window.localStorage.getItem(key); } catch (refused) { keeps = false; }
      kept = null;
    }
    if (!isPlain(kept)) { return; }
    if (isPlain(kept.chosen)) {
      Object.keys(kept.chosen).forEach(function (name) {
        if (typeof kept.chosen[name] === "string") { state.chosen[name] = kept.chosen[name]; }
      });
    }
    if (Array.isArray(kept.ticks)) { state.ticks = kept.ticks.filter(function (tick) { return typeof tick === "string"; }).slice(-20000); }
    if (isPlain(kept.counts)) {
      Object.keys(kept.counts).forEach(function (piece) {
        var count = kept.counts[piece];
        if (typeof count === "number" && count > 0 && count < 100000) { state.counts[piece] = Math.floor(count); }
      });
    }
  }

  function save() {
    if (!keeps) { return; }
    try { window.localStorage.setItem(key, JSON.stringify(state)); } catch (e) { keeps = false; tellKept(); }
  }

  function tellKept() {
    one(".keeps", panel).hidden = !keeps;
    one(".keeps-not", panel).hidden = keeps;
  }

  // Choices: radio buttons by name.
  function radios() { return all("#reader input[type=radio]"); }
  function chosen(name) {
    var radio = radios().filter(function (r) { return r.name === name && r.checked; })[0];
    return radio ? radio.value : "";
  }

  function setChoices() {
    radios().forEach(function (r) {
      var wanted = state.chosen[r.name];
      r.checked = typeof wanted === "string" ? r.value === wanted : r.defaultChecked;
    });
    // A choice that the page no longer has leaves the usual one.
    radios().forEach(function (r) { if (r.defaultChecked && chosen(r.name) === "") { r.checked = true; } });
  }

  function mark(name, value) {
    if (value) { root.setAttribute(name, value); } else { root.removeAttribute(name); }
  }

  function apply() {
    var size = Number(chosen("size")) || 0;
    var others = chosen("others");
    var gone = size > 0 && others === "gone" ? size : 0;
    var form = String.fromCharCode(97 + 3 * (Number(chosen("terms")) || 0) + (Number(chosen("units")) || 0));
    mark("data-gone", gone ? String(gone) : "");
    mark("data-faint", size > 0 && !gone ? String(size) : "");
    mark("data-light", chosen("light") === "auto" ? "" : chosen("light"));
    all("[data-only]").forEach(function (e) { e.hidden = e.getAttribute("data-only").split(" ").indexOf(String(gone)) < 0; });
    // A drawing has no property for this, only the attribute.
    all("[data-f]").forEach(function (e) { if (e.getAttribute("data-f").indexOf(form) < 0) { e.setAttribute("hidden", "hidden"); } else { e.removeAttribute("hidden"); } });
    ["aria-label", "alt", "aria-labelledby"].forEach(function (name) {
      all("[data-" + name + "-a]").forEach(function (e) { e.setAttribute(name, e.getAttribute("data-" + name + "-" + form) || e.getAttribute("data-" + name + "-a")); });
    });
    all("[data-for=size]", panel).forEach(function (e) { e.hidden = size === 0; });
    // Where a label named nothing but sizes, the box keeps its name and the words take its place.
    rows.forEach(function (row) {
      var label = one(".label", row);
      if (!label || !one("[data-only]", label)) { return; }
      var bare = isShown(row) && label.innerText.trim() === "";
      row.classList.toggle("bare", bare);
      if (bare) { boxes(row)[0].setAttribute("aria-label", one("[data-no]", label).textContent); } else { boxes(row)[0].removeAttribute("aria-label"); }
    });
    var how = one("#your-size");
    if (how) { how.hidden = gone > 0; }
    showPlace();
  }

  // Ticks: each box goes by its row, and by its number in it.
  function boxes(row) { return all("input[type=checkbox]", row); }
  function nameOf(row, at) { return row.id + (at > 0 ? ":" + at : ""); }
  function isShown(row) { return row.getClientRects().length > 0; }

  function setTicks() {
    rows.forEach(function (row) {
      boxes(row).forEach(function (box, at) { box.checked = state.ticks.indexOf(nameOf(row, at)) >= 0; });
    });
  }

  function tick(row, box) {
    var name = nameOf(row, boxes(row).indexOf(box));
    state.ticks = state.ticks.filter(function (t) { return t !== name; });
    if (box.checked) { state.ticks.push(name); }
    save();
    showPlace();
  }

  function lastTicked() {
    for (var i = state.ticks.length - 1; i >= 0; i--) {
      var row = document.getElementById(state.ticks[i].split(":")[0]);
      if (row && row.classList.contains("row") && isShown(row)) { return { row: row, at: Number(state.ticks[i].split(":")[1]) || 0 }; }
    }
    return null;
  }

  function labelOf(row) {
    var label = one(".label", row);
    return (label && label.innerText.trim()) || one("input", row).getAttribute("aria-label") || "";
  }

  // The row to work now: the next number of the row last ticked, or the row after it.
  function current(last) {
    var many = boxes(last.row);
    if (last.at > 0 && last.at + 1 < many.length && !many[0].checked) { return { row: last.row, number: numbersOf(last.row)[last.at] }; }
    for (var i = rows.indexOf(last.row) + 1; i < rows.length; i++) {
      if (isShown(rows[i])) { return { row: rows[i], number: numbersOf(rows[i])[0] }; }
    }
    return null;
  }

  function numbersOf(row) { return (row.getAttribute("data-rows") || "").split(" ").filter(Boolean); }

  function showPlace() {
    var last = lastTicked();
    var now = last ? current(last) : null;
    rows.forEach(function (row) {
      var here = now !== null && now.row === row;
      row.classList.toggle("here", here);
      if (here) { row.setAttribute("aria-current", "step"); } else { row.removeAttribute("aria-current"); }
    });
    markCharts(now);
    if (!place) { return; }
    place.hidden = last === null;
    if (last) {
      var heading = one("h2", last.row.closest("section"));
      var number = last.at > 0 ? numbersOf(last.row)[last.at - 1] : "";
      one(".where", place).textContent = (heading ? heading.innerText.trim() + ", " : "") + labelOf(last.row) + (number ? " (" + number + ")" : "");
    }
  }

  // Charts of the section that is being worked: its row is framed, the others are veiled; in a diagram its marks stand out and the others step back.
  function markCharts(now) {
    all(".sheet .veil, .sheet .frame").forEach(function (mark) { mark.remove(); });
    all(".sheet [data-now]").forEach(function (row) { row.removeAttribute("data-now"); });
    if (!now || !now.number) { return; }
    all(".sheet", now.row.closest("section")).forEach(function (sheet) {
      var rows = all("g[data-row]", sheet);
      if (!rows.some(function (row) { return row.getAttribute("data-row") === now.number; })) { return; }
      rows.forEach(function (row) { row.setAttribute("data-now", row.getAttribute("data-row") === now.number ? "yes" : "no"); });
    });
    all(".sheet[data-bands]", now.row.closest("section")).forEach(function (sheet) {
      var svg = one("svg", sheet);
      var band = sheet.getAttribute("data-bands").split(" ").map(function (b) { return b.split(":"); }).filter(function (b) { return b[0] === now.number; })[0];
      if (!svg || !band) { return; }
      var box = svg.viewBox.baseVal;
      var top = Number(band[1]);
      var height = Number(band[2]);
      draw(svg, "veil", 0, top);
      draw(svg, "veil", top + height, Math.max(0, box.height - top - height));
      draw(svg, "frame", top, height);
      function draw(into, name, from, high) {
        var rect = document.createElementNS("http://www.w3.org/2000/svg", "rect");
        rect.setAttribute("class", name);
        rect.setAttribute("x", name === "frame" ? "2" : "0");
        rect.setAttribute("y", String(from));
        rect.setAttribute("width", String(name === "frame" ? box.width - 4 : box.width));
        rect.setAttribute("height", String(high));
        into.appendChild(rect);
      }
    });
  }

  // Counters: one a piece.
  function showCount(counter) {
    one("output", counter).textContent = String(state.counts[counter.getAttribute("data-piece")] || 0);
  }

  function count(counter, by) {
    var piece = counter.getAttribute("data-piece");
    var now = by === 0 ? 0 : Math.min(99999, Math.max(0, (state.counts[piece] || 0) + by));
    if (now > 0) { state.counts[piece] = now; } else { delete state.counts[piece]; }
    showCount(counter);
    save();
  }

  function forget() {
    try { window.localStorage.removeItem(key); } catch (e) { keeps = false; }
    state = empty();
    setChoices();
    setTicks();
    all(".counter").forEach(showCount);
    apply();
    tellKept();
    var told = document.getElementById("forgotten");
    told.textContent = told.getAttribute("data-words");
  }

  function start() {
    var choose = one("#your-size .choose");
    if (choose) {
      one("legend", choose).textContent = one("legend", choose).getAttribute("data-words");
      document.getElementById("reader-size").appendChild(choose);
    }
    load();
    panel.hidden = false;
    tellKept();
    setChoices();
    setTicks();
    all(".counter").forEach(function (counter) {
      counter.hidden = false;
      showCount(counter);
      all("button", counter).forEach(function (button) { button.addEventListener("click", function () { count(counter, Number(button.value)); }); });
    });
    panel.addEventListener("change", function (event) {
      if (event.target.type !== "radio") { return; }
      state.chosen[event.target.name] = event.target.value;
      document.getElementById("forgotten").textContent = "";
      save();
      apply();
    });
    rows.forEach(function (row) { row.addEventListener("change", function (event) { if (event.target.type === "checkbox") { tick(row, event.target); } }); });
    document.getElementById("forget").addEventListener("click", forget);
    if (place) {
      document.getElementById("go").addEventListener("click", function () {
        var last = lastTicked();
        if (!last) { return; }
        last.row.scrollIntoView({ block: "center" });
        boxes(last.row)[last.at].focus({ preventScroll: true });
      });
    }
    apply();
  }

  start();
}());
