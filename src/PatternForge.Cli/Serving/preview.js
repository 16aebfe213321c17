"use strict";
// Asks for the state of one pattern, waits for the next one, and shows it. Words of a pattern go in as text alone.
(() => {
  const find = id => document.getElementById(id);
  const page = find("page");
  let at = 0, version = "", asked = 0;

  const element = (name, text, kind) => {
    const made = document.createElement(name);
    made.textContent = text;
    if (kind) made.className = kind;
    return made;
  };

  const counted = (number, thing) => `${number} ${thing}${number === 1 ? "" : "s"}`;

  function reload() {
    const inner = page.contentWindow;
    let place = 0;
    try { place = inner.scrollY; } catch { place = 0; }
    page.onload = () => { try { page.contentWindow.scrollTo(0, place); } catch { /* it is another page by now */ } };
    inner.location.replace(`page?at=${at}&version=${encodeURIComponent(version)}`);
  }

  function show(state) {
    find("name").textContent = state.title || state.path;
    document.title = state.title || state.path;
    const list = find("list");
    list.replaceChildren();
    const file = state.report && state.report.files[0];
    const findings = file ? file.findings.filter(f => !f.accepted) : [];
    for (const finding of findings) {
      const item = document.createElement("li");
      const place = `line ${finding.line}${finding.sizes ? `, size ${finding.sizes.join(", ")}` : ""}`;
      const first = element("p", `${finding.severity} `, finding.severity);
      first.append(element("span", `${finding.code}, ${place}`));
      item.append(first, element("p", finding.message));
      if (finding.help) item.append(element("p", finding.help, "help"));
      list.append(item);
    }
    const kinds = ["error", "warning", "note"].map(k => [k, findings.filter(f => f.severity === k).length]).filter(k => k[1] > 0);
    find("found").textContent = kinds.length ? kinds.map(k => counted(k[1], k[0])).join(", ") : "Nothing found";
    find("read").textContent = state.problem || (file ? `${file.coverage.checked} of ${counted(file.coverage.instructions, "instruction line")} checked` : "");
  }

  async function follow(mine) {
    while (mine === asked) {
      try {
        const answer = await fetch(`state?at=${at}&since=${encodeURIComponent(version)}`);
        if (mine !== asked) return;
        if (answer.status === 200) {
          const state = await answer.json();
          version = state.version;
          show(state);
          reload();
          find("state").textContent = `Up to date, ${new Date().toLocaleTimeString()}`;
        }
      } catch {
        find("state").textContent = "The preview has stopped: start it again, and this page goes on";
        await new Promise(done => setTimeout(done, 1500));
      }
    }
  }

  async function begin() {
    try {
      const patterns = await (await fetch("patterns")).json();
      const select = find("patterns");
      patterns.forEach((path, i) => { const option = element("option", path); option.value = i; select.append(option); });
      find("choice").hidden = patterns.length < 2;
      select.addEventListener("change", () => { at = Number(select.value); version = ""; follow(++asked); });
    } catch {
      find("state").textContent = "The preview does not answer";
    }
    follow(++asked);
  }

  begin();
})();
