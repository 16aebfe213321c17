
(function () {
  "use strict";
  var form = document.getElementById("sheet");
  var status = document.getElementById("status");
  var told = form.dataset;
  var place = "test sheet: " + told.pattern + " / " + told.version + " / " + told.size;
  var fields = Array.prototype.filter.call(form.elements, function (field) { return field.dataset.key !== undefined; });

  // A draft stays on this device; a browser that keeps nothing for files on disk is no obstacle.
  function keep(draft) {
    try {
      if (draft) { window.localStorage.setItem(place, JSON.stringify(draft)); } else { window.localStorage.removeItem(place); }
    } catch (e) { /* without a draft */ }
  }

  function kept() {
    try { return JSON.parse(window.localStorage.getItem(place)) || {}; } catch (e) { return {}; }
  }

  function draft() {
    var all = {};
    fields.forEach(function (field) { if (field.value !== "") { all[field.id] = field.value; } });
    return all;
  }

  function answers() {
    var all = Object.create(null);
    all["test-sheet"] = 1;
    all.pattern = told.pattern;
    if (told.version !== "") { all.version = told.version; }
    if (told.size !== "") { all.size = told.size; }
    fields.forEach(function (field) {
      var said = field.value.trim();
      if (said === "") { return; }
      var path = [field.dataset.group, field.dataset.key, field.dataset.field].filter(function (part) { return part !== undefined; });
      var last = path.pop();
      var at = path.reduce(function (inner, part) { return inner[part] || (inner[part] = Object.create(null)); }, all);
      at[last] = said;
    });
    return all;
  }

  var old = kept();
  fields.forEach(function (field) { if (typeof old[field.id] === "string" && field.value === "") { field.value = old[field.id]; } });
  form.addEventListener("input", function () { keep(draft()); });
  form.addEventListener("submit", function (event) { event.preventDefault(); });

  document.getElementById("save").addEventListener("click", function () {
    var link = document.createElement("a");
    link.href = URL.createObjectURL(new Blob([JSON.stringify(answers(), null, 2) + "\n"], { type: "application/json" }));
    link.download = told.file;
    document.body.appendChild(link);
    link.click();
    link.remove();
    status.textContent = "Saved as " + told.file + ". Please send that file back.";
  });

  document.getElementById("clear").addEventListener("click", function () {
    if (window.confirm("Clear all answers on this page?")) {
      form.reset();
      keep(null);
      status.textContent = "The form is empty, and no draft is kept.";
    }
  });

  document.getElementById("plain").hidden = true;
  document.getElementById("buttons").hidden = false;
}());
