// The set from above, in time. The signs are those of the printed overhead: a
// circle with a nose for somebody in the picture, a square for the crew, footprints
// for machines, a circle with a hood for a camera.

const SVG = "http://www.w3.org/2000/svg";
const CUT = 1.2; // height at which walls are cut open, metres

function mark(parent, tag, attributes = {}, text) {
  const e = document.createElementNS(SVG, tag);
  for (const [k, v] of Object.entries(attributes)) e.setAttribute(k, v);
  if (text !== undefined) e.textContent = text;
  if (parent) parent.append(e);
  return e;
}

const ringPath = (ring) => "M" + ring.map((p) => p[0] + " " + p[1]).join("L") + "Z";
const linePath = (line) => "M" + line.map((p) => p[0] + " " + p[1]).join("L");

class Overhead {
  constructor(svg) {
    this.svg = svg;
    this.scale = 20; // dots a metre
    this.middle = [0, 0];
    this.view = "beat";
    this.free = false; // moved by hand
    this.places = new Map();
  }

  // load draws what stands still and makes a sign for what moves.
  load(doc, shot) {
    this.doc = doc;
    this.shot = shot;
    this.svg.replaceChildren();
    const defs = mark(this.svg, "defs");
    const hatch = mark(defs, "pattern", { id: "hatch", width: 0.5, height: 0.5, patternUnits: "userSpaceOnUse", patternTransform: "rotate(45)" });
    mark(hatch, "line", { x1: 0, y1: 0, x2: 0, y2: 0.5, class: "hatchline" });
    this.world = mark(this.svg, "g", { class: "world" });
    this.never = mark(this.world, "path", { class: "never", d: this.neverPath() });
    this.views = mark(this.world, "g", { class: "views" });
    this.set = mark(this.world, "g", { class: "set" });
    this.drawSet();
    this.trails = mark(this.world, "g", { class: "trails" });
    this.prints = mark(this.world, "g", { class: "prints" });
    this.markLayer = mark(this.svg, "g", { class: "marks" });
    this.lampLayer = mark(this.svg, "g", { class: "lamps" });
    this.signs = mark(this.svg, "g", { class: "signs" });
    this.labels = mark(this.svg, "g", { class: "labels" });
    this.furniture = mark(this.svg, "g", { class: "furniture" });
    this.marks = (doc.plan.marks || []).map((m) => {
      const g = mark(this.markLayer, "g", {});
      mark(g, "path", { d: "M-4 0H4M0 -4V4", class: "mark" });
      mark(g, "text", { x: 6, y: 10, class: "markname" }, m.n);
      return { m, g };
    });
    this.lamps = [];
    shot.lights.forEach((u) => (u.at || []).forEach(([x, y]) => {
      const g = mark(this.lampLayer, "g", {});
      mark(g, "circle", { r: 3.2, class: "lamp" });
      const lit = mark(g, "circle", { r: 3.2, class: "lit" });
      this.lamps.push({ u, x, y, g, lit });
    }));
    this.movers = [];
    shot.bodies.forEach((b) => {
      if (b.k === "camera" || b.k === "hole" || b.k === "lamp") return;
      if (b.h !== undefined) {
        const g = mark(this.signs, "g", { class: "sign " + b.k, "data-name": b.n, role: "img", "aria-label": b.k + " " + b.n });
        mark(g, "circle", { r: 13, class: "halo" });
        const turn = mark(g, "g", {});
        if (b.k === "performer") {
          mark(turn, "path", { d: "M6.5 -5.5L14.5 0L6.5 5.5Z" });
          mark(g, "circle", { r: 8.5 });
        } else {
          mark(turn, "path", { d: "M6 -4L13 0L6 4Z" });
          mark(turn, "rect", { x: -7.5, y: -7.5, width: 15, height: 15 });
        }
        mark(g, "text", { class: "initial", y: 4 }, b.n.slice(0, 1).toUpperCase());
        this.movers.push({ b, g, turn, name: this.name(b.n, b.k), sign: true });
        return;
      }
      const g = mark(this.prints, "path", { class: "print " + b.k, "data-name": b.n });
      const first = b.of === b.n;
      this.movers.push({ b, g, print: true, name: first ? this.name(b.n, b.k) : null });
    });
    this.cameras = shot.cameras.map((c, i) => {
      const g = mark(this.signs, "g", { class: "sign camera c" + (i % 4), "data-name": c.n, role: "img", "aria-label": "camera " + c.n });
      mark(g, "circle", { r: 13, class: "halo" });
      const turn = mark(g, "g", {});
      mark(turn, "path", { d: "M6 -3.5L15.5 -9V9L6 3.5Z" });
      mark(g, "circle", { r: 8 });
      mark(g, "text", { class: "initial", y: 4 }, c.n.slice(0, 1).toUpperCase());
      return { c, g, turn, view: mark(this.views, "path", { class: "sight c" + (i % 4) }), name: this.name(c.n, "camera") };
    });
    this.trailsOf = null;
    this.box = this.everything();
  }

  name(text, kind) { return mark(this.labels, "text", { class: "name " + kind }, text); }

  neverPath() {
    const n = this.shot.never;
    if (!n) return "";
    let d = "";
    for (let i = 0; i < n.runs.length; i += 3) {
      const [row, col, many] = n.runs.slice(i, i + 3);
      d += `M${(n.x + col * n.cell).toFixed(2)} ${(n.y + row * n.cell).toFixed(2)}h${(many * n.cell).toFixed(2)}v${n.cell}h-${(many * n.cell).toFixed(2)}z`;
    }
    return d;
  }

  drawSet() {
    const { doc } = this;
    for (const ring of doc.plan.grids || []) mark(this.set, "path", { class: "grid", d: ringPath(pairs(ring)) });
    const order = { platform: 0, stairs: 1, block: 2, pillar: 2, wall: 4 };
    const pieces = doc.pieces.filter((p) => p.k !== "door").sort((a, b) => (order[a.k] ?? 3) - (order[b.k] ?? 3));
    for (const p of pieces) {
      const high = p.z[0] >= CUT, low = p.z[1] <= CUT;
      const e = mark(this.set, "path", { class: ["piece", p.g ? "glass" : p.k, high ? "over" : low ? "low" : "cut"].join(" "), d: ringPath(p.ring) });
      if (p.n) mark(e, "title", {}, p.k + " " + p.n);
    }
    for (const h of doc.plan.hung || []) {
      const e = mark(this.set, "path", { class: "hung " + h.k, d: linePath([h.a, h.b]) });
      mark(e, "title", {}, h.k + " " + h.n);
    }
    this.doors = (doc.plan.doors || []).map((door) => {
      const g = mark(this.set, "g", { class: "door" });
      mark(g, "title", {}, "door " + door.n);
      const [ax, ay] = door.a, dx = door.b[0] - ax, dy = door.b[1] - ay, w = Math.hypot(dx, dy);
      const open = [ax - dy, ay + dx];
      mark(g, "path", { class: "swing", d: `M${door.b[0]} ${door.b[1]}A${w} ${w} 0 0 1 ${open[0]} ${open[1]}` });
      return { door, open, leaf: mark(g, "path", { class: "leaf" }), was: null };
    });
  }

  // everything is the bounds of the set and of all that moves in it.
  everything() {
    const box = bounds();
    for (const p of this.doc.pieces) p.ring.forEach((q) => box.add(q[0], q[1]));
    this.alive(0, this.shot.frames - 1, box);
    return box.grown(1.5);
  }

  // alive adds where whoever and whatever matters goes in some frames.
  alive(from, to, box) {
    const step = Math.max(1, Math.floor((to - from) / 60));
    for (let f = from; f <= to; f += step) {
      for (const b of this.shot.bodies) {
        if (b.k !== "performer") continue;
        const p = poseOf(b, f);
        if (p) box.add(p.x, p.y);
      }
      for (const c of this.shot.cameras) {
        if (!within(c.rolls, f)) continue;
        const v = lookOf(c, f);
        box.add(v.x, v.y);
      }
    }
  }

  // extent is what the chosen view shows at a frame.
  extent(f) {
    if (this.view === "set") return this.box;
    const beat = this.shot.beats.findLast((b) => f >= b.f) || { f: 0, to: this.shot.frames - 1 };
    if (!this.beatBoxes || this.beatBoxes.shot !== this.shot) this.beatBoxes = { shot: this.shot, of: new Map() };
    let box = this.beatBoxes.of.get(beat);
    if (!box) {
      box = bounds();
      this.alive(beat.f, beat.to, box);
      box = box.empty ? this.box : box.grown(1.8);
      this.beatBoxes.of.set(beat, box);
    }
    return box;
  }

  followed(f) {
    if (!this.view.startsWith("of:")) return null;
    const name = this.view.slice(3);
    const c = this.shot.cameras.find((x) => x.n === name);
    if (c) { const v = lookOf(c, f); return [v.x, v.y]; }
    const b = this.shot.bodies.find((x) => x.n === name);
    const p = b && poseOf(b, f);
    return p ? [p.x, p.y] : null;
  }

  size() {
    const r = this.svg.getBoundingClientRect();
    this.width = r.width || 600;
    this.height = r.height || 400;
  }

  aim(f) {
    const who = this.followed(f);
    if (who) {
      if (!this.free) this.scale = Math.max(8, Math.min(this.width, this.height) / 14);
      this.middle = who;
      return;
    }
    if (this.free) return;
    const b = this.extent(f);
    this.scale = Math.min(this.width / (b.x1 - b.x0), (this.height - 30) / (b.y1 - b.y0), 90);
    this.middle = [(b.x0 + b.x1) / 2, (b.y0 + b.y1) / 2];
  }

  px(x, y) {
    return [(x - this.middle[0]) * this.scale + this.width / 2, this.height / 2 - (y - this.middle[1]) * this.scale];
  }

  draw(f, spoilt) {
    this.aim(f);
    const s = this.scale, [ox, oy] = this.px(0, 0);
    this.world.setAttribute("transform", `matrix(${s} 0 0 ${-s} ${ox} ${oy})`);
    const frame = Math.floor(f);
    for (const d of this.doors) {
      const shut = stood(this.shot, d.door.s, frame);
      if (shut !== d.was) d.leaf.setAttribute("d", linePath([d.door.a, shut ? d.door.b : d.open]));
      d.was = shut;
    }
    const move = (g, x, y) => g.setAttribute("transform", `translate(${x.toFixed(2)} ${y.toFixed(2)})`);
    for (const { m, g } of this.marks) move(g, ...this.px(m.x, m.y));
    this.markLayer.classList.toggle("far", s < 14);
    for (const l of this.lamps) {
      move(l.g, ...this.px(l.x, l.y));
      l.lit.style.opacity = levelAt(l.u, frame / rateOf(this.doc)) / 100;
    }
    this.drawTrails(frame);
    const names = [];
    for (const m of this.movers) {
      const p = poseOf(m.b, f);
      m.g.style.display = p ? "" : "none";
      if (m.name) m.name.style.display = "none";
      if (!p) continue;
      const at = this.px(p.x, p.y);
      m.g.classList.toggle("spoils", spoilt.has(m.b.of));
      if (m.sign) {
        move(m.g, ...at);
        m.turn.setAttribute("transform", `rotate(${(-p.heading * 180 / Math.PI).toFixed(2)})`);
        names.push({ e: m.name, at, r: 15, first: m.b.k === "performer" ? 0 : 1 });
      } else {
        m.g.setAttribute("d", ringPath(footprint(m.b, p).map(([x, y]) => [x.toFixed(4), y.toFixed(4)])));
        if (m.name) names.push({ e: m.name, at, r: 6 + m.b.ring.reduce((a, q) => Math.max(a, Math.abs(q[1])), 0) * s, first: 2 });
      }
    }
    for (const c of this.cameras) {
      const v = lookOf(c.c, f), on = within(c.c.rolls, frame), at = this.px(v.x, v.y);
      move(c.g, ...at);
      c.turn.setAttribute("transform", `rotate(${(-v.pan * 180 / Math.PI).toFixed(2)})`);
      c.g.classList.toggle("idle", !on);
      c.view.style.display = on ? "" : "none";
      if (on && v.focal > 0) {
        const edges = blockers(this.doc, this.shot, c.c, v, frame);
        const ring = seenFloor(edges, v, 2 * Math.atan(c.c.gate[0] / 2 / v.focal), 60);
        c.view.setAttribute("d", ringPath(ring.map(([x, y]) => [x.toFixed(3), y.toFixed(3)])));
      }
      names.push({ e: c.name, at, r: 17, first: on ? 0 : 2 });
    }
    this.placeNames(names);
    this.scaleBar();
  }

  // drawTrails shows where everybody goes in the beat.
  drawTrails(frame) {
    const beat = this.shot.beats.findLast((b) => frame >= b.f) || this.shot.beats[0];
    if (!beat || this.trailsOf === beat) return;
    this.trailsOf = beat;
    this.trails.replaceChildren();
    const trail = (kind, at) => {
      const points = [];
      for (let f = beat.f; f <= beat.to; f += 2) {
        const p = at(f);
        const last = points[points.length - 1];
        if (p && (!last || Math.hypot(p.x - last[0], p.y - last[1]) > 0.05)) points.push([+p.x.toFixed(3), +p.y.toFixed(3)]);
      }
      if (points.length > 2) mark(this.trails, "path", { class: "trail " + kind, d: linePath(points) });
    };
    for (const b of this.shot.bodies) if (b.h !== undefined || b.k === "vehicle" && b.of === b.n) trail(b.k, (f) => poseOf(b, f));
    for (const c of this.shot.cameras) if (c.rolls.some(([a, z]) => a <= beat.to && z >= beat.f)) trail("camera", (f) => lookOf(c, f));
  }

  // placeNames puts each name on the side of its sign where it is in nobody's way;
  // it stays on its side as long as it can.
  placeNames(names) {
    const taken = names.filter((n) => n.first < 2).map((n) => [n.at[0] - 10, n.at[1] - 10, n.at[0] + 10, n.at[1] + 10]);
    names.sort((a, b) => a.first - b.first);
    for (const n of names) {
      const [x, y] = n.at;
      if (x < -20 || y < -20 || x > this.width + 20 || y > this.height + 20) continue;
      const w = n.e.textContent.length * 7 + 4, h = 14;
      const sides = [[x + n.r, y - h / 2], [x - n.r - w, y - h / 2], [x - w / 2, y - n.r - h], [x - w / 2, y + n.r], [x + n.r * 0.7, y - n.r - h / 2], [x + n.r * 0.7, y + n.r - h / 2], [x - n.r * 0.7 - w, y - n.r - h / 2], [x - n.r * 0.7 - w, y + n.r - h / 2]];
      const clear = ([a, b]) => a > 0 && b > 0 && a + w < this.width && b + h < this.height && !taken.some((t) => a < t[2] && a + w > t[0] && b < t[3] && b + h > t[1]);
      const was = this.places.get(n.e) ?? 0;
      let k = clear(sides[was]) ? was : sides.findIndex(clear);
      if (k < 0) {
        if (n.first > 1) continue;
        k = was;
      }
      this.places.set(n.e, k);
      const [a, b] = sides[k];
      taken.push([a, b, a + w, b + h]);
      n.e.style.display = "";
      n.e.setAttribute("x", (a + 2).toFixed(1));
      n.e.setAttribute("y", (b + 11).toFixed(1));
    }
  }

  scaleBar() {
    const feet = this.doc.feet, unit = feet ? 0.3048 : 1;
    const many = [1, 2, 5, 10, 20, 50, 100].find((n) => n * unit * this.scale > 60) || 100;
    const key = many + "/" + this.scale.toFixed(3) + "/" + this.height + "/" + this.width;
    if (this.barOf === key && this.furniture.childNodes.length) return;
    this.barOf = key;
    const w = many * unit * this.scale, y = this.height - 14;
    this.furniture.replaceChildren();
    mark(this.furniture, "path", { class: "bar", d: `M14 ${y - 5}V${y}H${14 + w}V${y - 5}M${14 + w / 2} ${y - 3}V${y}` });
    mark(this.furniture, "text", { x: 20 + w, y: y + 1, class: "barname" }, feet ? many + "'" : many + " m");
  }

  zoom(k, x = this.width / 2, y = this.height / 2) {
    const wx = (x - this.width / 2) / this.scale + this.middle[0], wy = (this.height / 2 - y) / this.scale + this.middle[1];
    this.scale = Math.max(2, Math.min(400, this.scale * k));
    this.middle = [wx - (x - this.width / 2) / this.scale, wy - (this.height / 2 - y) / this.scale];
    this.free = true;
  }

  drag(dx, dy) {
    if (this.view.startsWith("of:")) return;
    this.middle = [this.middle[0] - dx / this.scale, this.middle[1] + dy / this.scale];
    this.free = true;
  }
}

function bounds() {
  return {
    x0: Infinity, y0: Infinity, x1: -Infinity, y1: -Infinity, empty: true,
    add(x, y) {
      this.x0 = Math.min(this.x0, x); this.x1 = Math.max(this.x1, x);
      this.y0 = Math.min(this.y0, y); this.y1 = Math.max(this.y1, y);
      this.empty = false;
    },
    grown(by) {
      const w = Math.max(0, 7 - (this.x1 - this.x0)) / 2, h = Math.max(0, 5 - (this.y1 - this.y0)) / 2;
      return { x0: this.x0 - by - w, y0: this.y0 - by - h, x1: this.x1 + by + w, y1: this.y1 + by + h };
    },
  };
}

const rateOf = (doc) => doc.rate[0] / doc.rate[1];

// levelAt is the level of a light at a time: straight between its knots.
function levelAt(u, t) {
  let out = u.knots[0][1];
  for (let i = 0; i + 1 < u.knots.length; i++) {
    const [a, va] = u.knots[i], [b, vb] = u.knots[i + 1];
    if (t >= a) out = t >= b || b === a ? vb : va + (vb - va) * (t - a) / (b - a);
  }
  return out;
}
