// What mirrors show: everything before their glass, turned over across it, painted
// within the glass as through a window.

// SHEET is how thick the glass is painted: less than it hangs clear of its wall.
const SHEET = 8e-4;

// glassOf measures a mirror's face: how far before it a place is, and where it shows
// what stands there.
function glassOf(m) {
  const dx = m.b[0] - m.a[0], dy = m.b[1] - m.a[1], len = Math.hypot(dx, dy) || 1;
  const nx = -dy / len, ny = dx / len;
  const before = (x, y) => (x - m.a[0]) * nx + (y - m.a[1]) * ny;
  const image = (x, y) => { const d = 2 * before(x, y); return [x - d * nx, y - d * ny]; };
  return { before, image, nx, ny, turn: 2 * Math.atan2(dy, dx) };
}

// mirrorsIn are the faces that the lens is before, as thin prisms.
function mirrorsIn(doc, l) {
  const out = [];
  for (const m of doc.plan.mirrors || []) {
    const glass = glassOf(m);
    if (glass.before(l.eye[0], l.eye[1]) < 1e-3) continue;
    const back = ([x, y]) => [x - SHEET * glass.nx, y - SHEET * glass.ny];
    const t = prismIn(l, [m.b, m.a, back(m.a), back(m.b)], m.z[0], m.z[1]);
    if (t) out.push(Object.assign(t, { mirror: m, glass }));
  }
  return out;
}

// cutTo is the part of a convex ring that stands clear before the glass.
function cutTo(glass, ring) {
  const clear = 0.01, out = [];
  ring.forEach(([x, y], i) => {
    const [u, v] = ring[(i + 1) % ring.length];
    const da = glass.before(x, y) - clear, db = glass.before(u, v) - clear;
    if (da >= 0) out.push([x, y]);
    if (da * db < 0) { const k = da / (da - db); out.push([x + (u - x) * k, y + (v - y) * k]); }
  });
  return out;
}

// imagesIn is everything that a mirror shows, as prisms. Nothing is left out as the
// camera's own: that is what a mirror gives away.
function imagesIn(doc, shot, l, glass, f) {
  const out = [], frame = Math.floor(f), turned = (ring) => ring.map(([x, y]) => glass.image(x, y)).reverse();
  for (const p of doc.pieces) {
    if (p.g || !stood(shot, p.s, frame)) continue;
    for (const ring of p.convex) {
      const part = cutTo(glass, ring);
      const t = part.length > 2 && prismIn(l, turned(part), p.z[0], p.z[1]);
      if (t) out.push(Object.assign(t, { piece: p }));
    }
  }
  shot.bodies.forEach((b, i) => {
    const p = poseOf(b, f);
    if (!p || glass.before(p.x, p.y) <= 0) return;
    const [x, y] = glass.image(p.x, p.y);
    const t = prismIn(l, turned(footprint(b, p)), p.z, p.z + p.height);
    if (t) out.push(Object.assign(t, { body: b, index: i, pose: { ...p, x, y, heading: glass.turn - p.heading }, person: b.h !== undefined }));
  });
  return out;
}

// paintMirror paints a mirror with what it shows.
function paintMirror(doc, shot, l, g, path, t, f, bad, ink) {
  const points = before([t.bottom[0], t.bottom[1], t.top[1], t.top[0]]);
  if (points.length < 3) return;
  const outline = () => { path(points.map((p) => put(l, p))); g.closePath(); };
  g.save();
  outline();
  g.fillStyle = ink.paper;
  g.fill();
  g.clip();
  const images = ordered(imagesIn(doc, shot, l, t.glass, f), l.eye);
  for (const o of images) {
    if (!o.body) { paintSolid(l, g, path, o, ink); continue; }
    const spoils = bad.get(o.body.of);
    g.lineWidth = o.body.k === "performer" ? 1.6 : 1.1;
    g.strokeStyle = spoils ? ink.alarm : ink.ink;
    paintBody(doc, l, g, path, o, f, images, spoils ? ink.alarmtint : null, ink);
  }
  g.restore();
  outline();
  g.strokeStyle = ink.edge; g.lineWidth = 1; g.setLineDash([6, 2, 1, 2]);
  g.stroke();
  g.setLineDash([]);
}
