// The rehearsal: along the strip where the take breaks and what each cue has to
// spare, and beside the findings all of it in words.

// Rehearsal's places are what it found weak: where something breaks, and the cues
// that have little to spare.
class Rehearsal {
  // load shows what came of a rehearsal of a shot; of a pickup there is none.
  load(doc, shot, go) {
    const r = shot === doc.shots[0] ? doc.rehearsal : null;
    this.shot = shot;
    this.go = go;
    this.places = [];
    this.at = -1;
    $("main").classList.toggle("rehearsed", Boolean(r));
    $("rehearsal").hidden = $("rehearsed").hidden = !r;
    if (!r) return;
    this.part = (f) => (100 * f / Math.max(1, shot.frames)).toFixed(3) + "%";
    $("rehearsalhead").textContent = r.title;
    const list = [el("ul", { class: "says" }, ...r.says.map((s) => el("li", {}, s)))];
    const heading = (t) => list.push(el("h3", {}, t));
    heading(r.breaks.title);
    if (r.breaks.empty) list.push(el("p", {}, r.breaks.empty));
    else list.push(el("ol", { class: "breaks" }, ...r.breaks.list.map((w) => this.item(w, "breaks", w.often, w.what, shareBar(w, r.breaks.most)))));
    heading(r.cues.title);
    if (r.cues.empty) list.push(el("p", {}, r.cues.empty));
    else {
      const items = r.cues.list.map((c) => this.item(c, "cue", c.spare, `${c.what} (${c.cue})`, spareBar(c, r.cues.scale)));
      list.push(el("ol", { class: "spares" }, ...r.cues.tight.map((i) => items[i])));
    }
    if (r.cues.rest) list.push(el("p", {}, r.cues.rest));
    if (r.changes.list.length) {
      heading(r.changes.title);
      list.push(el("ul", {}, ...r.changes.list.map((c) => el("li", {}, el("b", {}, `${c.gain} points, to ${c.chance}`), " " + c.what))));
    }
    list.push(el("p", { class: "caution" }, r.caution));
    $("rehearsallist").replaceChildren(...list);
    this.strip(r);
    this.places.sort((a, b) => a.of.f - b.of.f);
  }

  // item is a line of the list that leads to its place.
  item(of, kind, bold, text, bar) {
    const place = { of, kind, say: `${of.clock} ${text}: ${bold}` };
    const go = () => this.choose(this.places.indexOf(place));
    place.row = el("li", { class: kind },
      el("button", { type: "button", class: "place", "aria-label": `go to ${of.clock}, ${text}`, on: go }, of.clock),
      el("div", {}, bar, el("span", {}, text), " ", el("b", {}, bold)));
    this.places.push(place);
    return place.row;
  }

  // strip draws the same along the time of the take. What happens at one frame
  // stands side by side.
  strip(r) {
    const beside = new Map();
    const tick = (place) => {
      const f = place.of.f, k = beside.get(place.kind + f) || 0;
      beside.set(place.kind + f, k + 1);
      const e = el("button", { type: "button", title: place.say, "aria-label": place.say, tabindex: "-1", on: () => this.choose(this.places.indexOf(place)) });
      e.style.left = this.part(f);
      e.style.marginLeft = (f > 0.9 * this.shot.frames ? -8 : 8) * k + "px";
      place.tick = e;
      return e;
    };
    const breaks = this.places.filter((p) => p.kind === "breaks"), cues = this.places.filter((p) => p.kind === "cue");
    $("breaks").replaceChildren(...breaks.map((p) => {
      const w = p.of, e = tick(p), span = el("i", { class: "span" });
      // From where it shows early to where it shows late.
      span.style.left = this.part(w.a);
      span.style.width = this.part(w.z + 1 - w.a);
      e.append(...shareParts(w, r.breaks.most, "height"));
      return [e, span];
    }).flat());
    $("breaks").hidden = !breaks.length;
    $("spares").hidden = !cues.length;
    if (!cues.length) return;
    const zero = el("i", { class: "zero" }), [from, to] = r.cues.scale;
    const up = (v) => 100 * (v - from) / (to - from);
    zero.style.bottom = up(0) + "%";
    const mark = (v) => {
      const e = el("span", { class: "mark", "aria-hidden": "true" }, String(v));
      e.style.bottom = up(v) + "%";
      return e;
    };
    $("spares").replaceChildren(zero, mark(0), mark(to), ...cues.map((p) => {
      const e = tick(p);
      e.append(...spareParts(p.of, r.cues.scale, "bottom", "height"));
      return e;
    }));
  }

  choose(i) {
    const p = this.places[i];
    if (!p) return;
    this.at = i;
    this.go(p.of.f, p.say);
    this.places.forEach((x, k) => {
      x.row.classList.toggle("chosen", k === i);
      x.tick.classList.toggle("chosen", k === i);
    });
    p.row.scrollIntoView({ block: "nearest", behavior: "auto" });
  }

  // next is the weak place after a frame, or the one before it, all around.
  next(n, frame) {
    const count = this.places.length;
    if (!count) return false;
    let k = this.at;
    if (k >= 0 && this.places[k].of.f === frame) k = (k + n + count) % count;
    else {
      k = n > 0 ? this.places.findIndex((p) => p.of.f > frame) : this.places.findLastIndex((p) => p.of.f < frame);
      if (k < 0) k = n > 0 ? 0 : count - 1;
    }
    this.choose(k);
    return true;
  }

  // show marks what is at a frame.
  show(frame, rate) {
    for (const p of this.places) {
      const [a, z] = p.kind === "breaks" ? [p.of.a, p.of.z] : [p.of.f, p.of.f + rate];
      const on = frame >= a && frame <= z;
      if (on !== p.on) {
        p.on = on;
        p.row.classList.toggle("now", on);
        p.tick.classList.toggle("now", on);
      }
    }
  }
}

const per = (v) => v.toFixed(2) + "%";

// shareParts are a bar for how often something breaks, and within it for how often
// it does first.
function shareParts(w, most, size) {
  return [["all", w.all], ["first", w.first]].filter(([, v]) => v > 0).map(([name, v]) => {
    const e = el("i", { class: name });
    e.style[size] = per(100 * v / most);
    return e;
  });
}

function shareBar(w, most) {
  return el("span", { class: "bar", "aria-hidden": "true" }, ...shareParts(w, most, "width"));
}

// spareParts are a bar from 5 to 95 %, apart where it crosses 0, with a stroke at
// 50 %; what goes beyond the scale is open there.
function spareParts(c, [from, to], side, size) {
  const on = (v) => 100 * (Math.max(from, Math.min(to, v)) - from) / (to - from);
  const [low, mid, high] = c.bar.map((v) => v ?? Infinity), out = [];
  const part = (name, a, z) => {
    const e = el("i", { class: name + (z > to ? " beyond" : "") });
    e.style[side] = per(on(a));
    e.style[size] = per(on(z) - on(a));
    out.push(e);
  };
  if (low > to) return [el("i", { class: "off" })];
  if (high > 0) part("over", Math.max(low, 0), high);
  if (low < 0) part("under", low, Math.min(high, 0));
  if (mid <= to) {
    const e = el("i", { class: "mid" });
    e.style[side] = per(on(mid));
    out.push(e);
  }
  return out;
}

function spareBar(c, scale) {
  const zero = el("i", { class: "zero" });
  zero.style.left = per(100 * -scale[0] / (scale[1] - scale[0]));
  return el("span", { class: "bar", "aria-hidden": "true" }, zero, ...spareParts(c, scale, "left", "width"));
}
