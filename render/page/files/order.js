// The running order, the cues that come next, the findings and the light levels.

const el = (tag, attributes = {}, ...inside) => {
  const e = document.createElement(tag);
  for (const [k, v] of Object.entries(attributes)) {
    if (k === "on") e.addEventListener("click", v);
    else if (v !== null) e.setAttribute(k, v);
  }
  e.append(...inside);
  return e;
};

const $ = (id) => document.getElementById(id);

// clockOf says a time as minutes and seconds to a tenth.
function clockOf(seconds) {
  const tenths = Math.round(seconds * 10); // as on paper
  const m = Math.floor(tenths / 600), s = Math.floor(tenths / 10) % 60;
  return `${m}:${String(s).padStart(2, "0")}.${tenths % 10}`;
}

class Order {
  // load lists the lines of a shot, those of a department only if one is chosen.
  load(doc, shot, dep, go) {
    this.shot = shot;
    const rate = rateOf(doc);
    const d = doc.departments.find((x) => x.id === dep);
    const list = $("lines");
    list.replaceChildren();
    $("notes").replaceChildren(...(d && d.notes || []).map((n) => el("li", {}, n)));
    this.rows = [];
    let beat = -1;
    shot.lines.forEach((l, i) => {
      if (d && shot === doc.shots[0] && !d.lines.includes(i)) return;
      if (l.beat !== beat) {
        beat = l.beat;
        const b = shot.beats[beat];
        list.append(el("li", { class: "beathead" }, el("button", { type: "button", on: () => go(b.f) }, `${beat + 1}. ${b.n}`), el("span", {}, b.cue)));
      }
      const left = el("span", { class: "left" });
      const frame = Math.ceil(l.f * rate - 1e-3);
      const row = el("li", { class: "line " + l.k, title: l.text },
        el("button", { type: "button", class: "when", on: () => go(frame), "aria-label": "go to " + clockOf(l.f) }, clockOf(l.f)),
        el("span", { class: "what" }, l.what), left,
        el("span", { class: "cue" }, l.cue));
      list.append(row);
      this.rows.push({ l, row, left, state: "" });
    });
    if (!this.rows.length) list.append(el("li", { class: "none" }, "nothing to do in this take"));
    this.next = null;
  }

  // show marks what goes on and what comes next at a time.
  show(t, follow) {
    let upcoming = null, current = null;
    for (const r of this.rows) {
      const end = Math.max(r.l.to, r.l.f + (r.l.open ? 1.2 : 0.6));
      const shown = r.l.open ? r.l.f + 1.2 : end;
      const state = t < r.l.f - 1e-6 ? (r.l.f - t < 10 ? "soon" : "later") : t < shown ? "now" : "past";
      if (state !== r.state) {
        r.row.classList.remove("soon", "later", "now", "past");
        r.row.classList.add(state);
        if (state === "now") r.row.setAttribute("aria-current", "true"); else r.row.removeAttribute("aria-current");
        r.state = state;
        if (state !== "soon") r.left.textContent = "";
      }
      if (state === "soon") r.left.textContent = "in " + (Math.ceil((r.l.f - t) * 10 - 1e-6) / 10).toFixed(1);
      if (t >= r.l.f - 1e-6) current = r;
      else if (!upcoming) upcoming = r;
    }
    const next = $("next");
    if (upcoming) {
      const text = `next, in ${(Math.ceil((upcoming.l.f - t) * 10 - 1e-6) / 10).toFixed(1)} s: ${upcoming.l.what}`;
      if (next.textContent !== text) next.textContent = text;
    } else if (next.textContent !== "nothing more to come") next.textContent = "nothing more to come";
    if (follow && current && current !== this.at) {
      const list = $("lines");
      if (list.scrollHeight > list.clientHeight + 4) list.scrollTop = current.row.offsetTop - list.clientHeight / 3;
    }
    this.at = current;
  }
}

const SIGN = { error: "\u2715", warning: "!", note: "i" };

// listFindings writes what was found; go takes an index to its frame.
function listFindings(doc, shot, go) {
  const all = shot.findings.concat(shot === doc.shots[0] ? doc.general || [] : []);
  const count = (s) => all.filter((f) => f.sev === s).length;
  const words = [["error", "errors"], ["warning", "warnings"], ["note", "notes"]]
    .map(([one, many]) => [count(one), count(one) === 1 ? one : many]).filter(([n]) => n).map(([n, w]) => `${n} ${w}`);
  $("found").textContent = words.length ? "Found: " + words.join(", ") : "Nothing found that would spoil it";
  $("findinglist").replaceChildren(...all.map((f, i) => {
    const where = f.frames ? el("button", { type: "button", class: "jump", "data-finding": i, on: () => go(i) }, "frame " + f.worst) : el("span", { class: "jump" }, "");
    const item = el("li", { class: f.sev, "data-code": f.code },
      el("span", { class: "sign", "aria-label": f.sev }, SIGN[f.sev] || ""), where,
      el("div", {}, el("b", {}, f.code), " ", f.msg,
        ...(f.notes || []).map((n) => el("small", {}, n)), ...(f.fixes || []).map((n) => el("small", {}, "fix: " + n)),
        el("small", { class: "place" }, f.at || "")));
    return item;
  }));
  return all;
}

class Light {
  load(shot) {
    this.units = shot.lights;
    $("light").hidden = !shot.lights.length;
    $("light").replaceChildren(el("h2", {}, "Light"), ...shot.lights.map((u) => {
      u.bar = el("i", {});
      u.per = el("output", {});
      return el("div", { class: "unit" }, el("span", {}, u.n), el("span", { class: "level" }, u.bar), u.per);
    }));
  }

  show(t) {
    for (const u of this.units) {
      const v = levelAt(u, t);
      u.bar.style.width = v.toFixed(1) + "%";
      const text = v.toFixed(0) + " %";
      if (u.per.textContent !== text) u.per.textContent = text;
    }
  }
}
