// What a lens sees, painted from back to front. Everything is upright convex
// prisms: of two that are apart, a plane between them says which is nearer, and
// from that comes an order in which nothing is painted over what hides it.

const HAIR = 1e-4;

// beforeIn says of two prisms whether the first has to be painted before the
// second: 1 if so, -1 the other way round, 0 if it doesn't matter.
function beforeIn(a, b, eye) {
  if (a.low >= b.high - HAIR) return eye[2] >= a.low ? -1 : eye[2] <= b.high ? 1 : 0;
  if (b.low >= a.high - HAIR) return eye[2] >= b.low ? 1 : eye[2] <= a.high ? -1 : 0;
  const side = apart(a, b, eye);
  if (side) return side;
  const other = apart(b, a, eye);
  if (other) return -other;
  // One stands in the other, or they reach into each other.
  if (a.person !== b.person) return a.person ? -1 : 1;
  return a.far >= b.far ? 1 : -1;
}

// apart looks for an edge of a that has all of b on its outer side.
function apart(a, b, eye) {
  const ring = a.ring, n = ring.length;
  for (let i = 0; i < n; i++) {
    const p = ring[i], q = ring[(i + 1) % n];
    const nx = q[1] - p[1], ny = p[0] - q[0];
    const slack = HAIR * (Math.abs(nx) + Math.abs(ny));
    let all = true;
    for (const r of b.ring) {
      if (nx * (r[0] - p[0]) + ny * (r[1] - p[1]) < -slack) { all = false; break; }
    }
    if (all) return nx * (eye[0] - p[0]) + ny * (eye[1] - p[1]) > 0 ? 1 : -1;
  }
  return 0;
}

// ordered is the things from back to front.
function ordered(things, eye) {
  const n = things.length, waits = new Array(n).fill(0), after = things.map(() => []);
  for (let i = 0; i < n; i++) {
    for (let j = i + 1; j < n; j++) {
      const a = things[i], b = things[j];
      if (a.box[0] > b.box[2] || b.box[0] > a.box[2] || a.box[1] > b.box[3] || b.box[1] > a.box[3]) continue;
      const o = beforeIn(a, b, eye);
      if (o > 0) { after[i].push(j); waits[j]++; }
      if (o < 0) { after[j].push(i); waits[i]++; }
    }
  }
  const out = [], done = new Array(n).fill(false);
  for (let k = 0; k < n; k++) {
    let best = -1;
    for (let i = 0; i < n; i++) {
      if (done[i]) continue;
      const free = waits[i] <= 0, bestFree = best >= 0 && waits[best] <= 0;
      if (best < 0 || free && !bestFree || free === bestFree && things[i].far > things[best].far) best = i;
    }
    done[best] = true;
    out.push(things[best]);
    for (const j of after[best]) waits[j]--;
  }
  return out;
}

// prismIn is a prism as the lens has it; null where none of it can be in frame.
function prismIn(l, ring, low, high) {
  const bottom = ring.map(([x, y]) => see(l, x, y, low)), top = ring.map(([x, y]) => see(l, x, y, high));
  let ahead = 0, left = 0, right = 0, over = 0, under = 0, behind = false, far = 0;
  const w = 0.5 / l.k, h = l.tall / 2 / l.k, n = 2 * ring.length;
  let box = [Infinity, Infinity, -Infinity, -Infinity];
  for (const p of [...bottom, ...top]) {
    if (p[2] < NEAR) { ahead++; behind = true; }
    if (p[0] > w * p[2]) right++;
    if (p[0] < -w * p[2]) left++;
    if (p[1] > h * p[2]) over++;
    if (p[1] < -h * p[2]) under++;
    far += p[2] / n;
    if (p[2] >= NEAR) {
      const [u, v] = put(l, p);
      box = [Math.min(box[0], u), Math.min(box[1], v), Math.max(box[2], u), Math.max(box[3], v)];
    }
  }
  if (ahead === n || left === n || right === n || over === n || under === n) return null;
  if (behind) box = [-Infinity, -Infinity, Infinity, Infinity];
  return { ring, low, high, bottom, top, far, box };
}

// facesOf are the faces of a prism turned to the lens, with how light they are.
function facesOf(l, t) {
  const out = [], n = t.ring.length;
  if (l.eye[2] > t.high) out.push({ points: t.top, light: 1 });
  if (l.eye[2] < t.low) out.push({ points: t.bottom, light: 0.2 });
  for (let i = 0; i < n; i++) {
    const j = (i + 1) % n, p = t.ring[i], q = t.ring[j];
    const nx = q[1] - p[1], ny = p[0] - q[0];
    if (nx * (l.eye[0] - p[0]) + ny * (l.eye[1] - p[1]) <= 0) continue;
    const len = Math.hypot(nx, ny) || 1;
    out.push({ points: [t.bottom[i], t.bottom[j], t.top[j], t.top[i]], light: 0.55 + 0.3 * (0.8 * nx + 0.6 * ny) / len });
  }
  return out;
}

// linesOf are the lines of the set that show from a lens, if nothing hides them.
function linesOf(l, numbers) {
  const out = [];
  for (let i = 0; i + 12 < numbers.length; i += 13) {
    const n = numbers, x = l.eye[0] - n[i], y = l.eye[1] - n[i + 1], z = l.eye[2] - n[i + 2];
    const one = n[i + 6] * x + n[i + 7] * y + n[i + 8] * z > 0, two = n[i + 9] * x + n[i + 10] * y + n[i + 11] * z > 0;
    if (!one && !two || n[i + 12] && one && two) continue;
    const s = stretch(see(l, n[i], n[i + 1], n[i + 2]), see(l, n[i + 3], n[i + 4], n[i + 5]));
    if (s) out.push(s);
  }
  return out;
}

// thingsIn is everything in frame as prisms, in no order.
function thingsIn(doc, shot, camera, l, f) {
  const out = [], frame = Math.floor(f);
  for (const p of doc.pieces) {
    if (!p.g && !stood(shot, p.s, frame)) continue;
    p.convex.forEach((ring, i) => {
      const t = prismIn(l, ring, p.z[0], p.z[1]);
      if (t) out.push(Object.assign(t, { piece: p, glass: p.g, lines: i === p.convex.length - 1 ? p.l : [] }));
    });
  }
  shot.bodies.forEach((b, i) => {
    if (owns(camera, i, frame)) return;
    const p = poseOf(b, f);
    if (!p) return;
    const t = prismIn(l, footprint(b, p), p.z, p.z + p.height);
    if (t) out.push(Object.assign(t, { body: b, index: i, pose: p, person: b.h !== undefined }));
  });
  return out.concat(mirrorsIn(doc, l));
}

// paintSolid fills the faces of a solid of the set.
function paintSolid(l, g, path, t, ink) {
  for (const face of facesOf(l, t)) {
    const points = before(face.points);
    if (points.length < 3) continue;
    path(points.map((p) => put(l, p)));
    g.closePath();
    g.fillStyle = g.strokeStyle = ink.face(face.light);
    g.lineWidth = 0.7;
    g.fill(); g.stroke();
  }
}

// paintFrame draws a camera's frame; bad tells which things spoil it. It returns who
// and what is in frame, with its bounds in parts of the frame.
function paintFrame(g, doc, shot, camera, f, width, ink, bad) {
  const look = lookOf(camera, f), height = width * camera.gate[1] / camera.gate[0];
  const l = lensAt(look, camera.gate);
  g.save();
  g.clearRect(0, 0, width, height);
  g.beginPath(); g.rect(0, 0, width, height); g.clip();
  g.fillStyle = ink.sky; g.fillRect(0, 0, width, height);
  g.lineJoin = g.lineCap = "round";
  const path = (points) => {
    g.beginPath();
    points.forEach(([x, y], i) => i ? g.lineTo(x * width, y * width) : g.moveTo(x * width, y * width));
  };
  floorOf(l, g, path, ink);
  const things = ordered(thingsIn(doc, shot, camera, l, f), l.eye);
  const seen = [], marks = [], frame = Math.floor(f);
  for (const t of things) {
    if (t.mirror) { paintMirror(doc, shot, l, g, path, t, f, bad, ink); continue; }
    if (t.body) {
      const b = t.body, spoils = bad.get(b.of);
      g.lineWidth = b.k === "performer" ? 1.6 : 1.1;
      g.strokeStyle = spoils ? ink.alarm : ink.ink;
      paintBody(doc, l, g, path, t, f, things, spoils ? ink.alarmtint : null, ink);
      const box = boxOf(l, b.r ? ROUND.map(([x, y]) => [t.pose.x + x * b.r, t.pose.y + y * b.r]) : t.ring, t.low, t.high) || t.box;
      if (b.k !== "hole" && shows(camera, t.index, frame) && box[2] > 0 && box[0] < 1 && box[3] > 0 && box[1] < l.tall) {
        seen.push({ name: b.n, of: b.of, kind: b.k, box: [box[0], box[1] / l.tall, box[2], box[3] / l.tall], far: Math.hypot(t.pose.x - look.x, t.pose.y - look.y) });
        if (spoils) marks.push({ box, name: b.of, why: spoils });
        else if (b.of === b.n && b.k !== "camera") marks.push({ box, name: b.n });
      }
      continue;
    }
    if (!t.glass) paintSolid(l, g, path, t, ink);
    g.strokeStyle = t.glass ? ink.line : ink.edge;
    g.lineWidth = 0.8;
    for (const s of linesOf(l, t.lines)) { path(s.map((p) => put(l, p))); g.stroke(); }
  }
  frameLines(g, width, height, ink);
  const named = new Set();
  for (const m of marks.reverse()) {
    const key = m.name + (m.why || "");
    if (named.has(key)) continue;
    named.add(key);
    label(g, m, width, height, ink);
  }
  g.restore();
  return { seen, look };
}

// shows says whether enough of a body is uncovered to be named.
const shows = (camera, body, frame) => (camera.shows || []).some(([b, from, to]) => b === body && frame >= from && frame <= to);

// floorOf draws the ground: its horizon, and a line every two metres.
function floorOf(l, g, path, ink) {
  const far = 400, near = 30, e = l.eye;
  const corners = [];
  for (let i = 0; i < 24; i++) {
    const a = 2 * Math.PI * i / 24;
    corners.push(see(l, e[0] + far * Math.cos(a), e[1] + far * Math.sin(a), 0));
  }
  const ground = before(corners);
  if (ground.length > 2) {
    path(ground.map((p) => put(l, p)));
    g.closePath();
    g.fillStyle = ink.ground; g.fill();
    g.strokeStyle = ink.line; g.lineWidth = 0.6; g.stroke();
  }
  g.strokeStyle = ink.rule; g.lineWidth = 0.5;
  const x0 = 2 * Math.round((e[0] - near) / 2), y0 = 2 * Math.round((e[1] - near) / 2);
  for (let k = 0; k <= 2 * near; k += 2) {
    for (const ends of [[[x0 + k, y0], [x0 + k, y0 + 2 * near]], [[x0, y0 + k], [x0 + 2 * near, y0 + k]]]) {
      const s = stretch(...ends.map(([x, y]) => see(l, x, y, 0)));
      if (s) { path(s.map((p) => put(l, p))); g.stroke(); }
    }
  }
}

function paintBody(doc, l, g, path, t, f, things, tint, ink) {
  const b = t.body;
  if (t.person) {
    let floor = -Infinity; // of what they stand in: a van, a cart
    for (const o of things) {
      if (o !== t && o.body && !o.person && o.low < t.high && o.high > t.low && o.high < t.high && inside(o.ring, t.pose.x, t.pose.y)) floor = Math.max(floor, o.high);
    }
    const parts = standIn(doc, l, b, t.pose, f, floor);
    if (parts) {
      for (const part of parts) {
        path(part.ring);
        g.closePath();
        g.fillStyle = tint || (b.k === "crew" ? ink.crewtint : ink.paper);
        g.fill(); g.stroke();
        const w = g.lineWidth;
        g.lineWidth = w * 0.55;
        for (const line of part.lines) { path(line); g.stroke(); }
        g.lineWidth = w;
      }
      return;
    }
  }
  const stroke = g.strokeStyle;
  for (const face of facesOf(l, t)) {
    const points = before(face.points);
    if (points.length < 3) continue;
    path(points.map((p) => put(l, p)));
    g.closePath();
    g.fillStyle = tint || ink.face(face.light);
    g.strokeStyle = stroke;
    g.fill(); g.stroke();
  }
}

function frameLines(g, width, height, ink) {
  g.strokeStyle = ink.thirds; g.lineWidth = 0.7; g.setLineDash([2, 5]);
  for (const k of [1 / 3, 2 / 3]) {
    g.beginPath();
    g.moveTo(k * width, 0); g.lineTo(k * width, height);
    g.moveTo(0, k * height); g.lineTo(width, k * height);
    g.stroke();
  }
  g.setLineDash([]);
}

function label(g, m, width, height, ink) {
  const text = m.why ? m.name + ": " + m.why : m.name;
  g.font = (m.why ? "600 " : "") + "12px " + ink.letters;
  const w = g.measureText(text).width;
  const x = Math.max(4, Math.min(width - w - 4, (m.box[0] + m.box[2]) / 2 * width - w / 2));
  const y = Math.max(14, Math.min(height - 5, m.box[1] * width - 5));
  if (m.why) {
    g.strokeStyle = ink.alarm; g.lineWidth = 1.5; g.setLineDash([5, 3]);
    const x0 = Math.max(1, m.box[0] * width), y0 = Math.max(1, m.box[1] * width);
    g.strokeRect(x0, y0, Math.min(width - 1, m.box[2] * width) - x0, Math.min(height - 1, m.box[3] * width) - y0);
    g.setLineDash([]);
  }
  g.lineWidth = 3; g.strokeStyle = ink.paper; g.strokeText(text, x, y);
  g.fillStyle = m.why ? ink.alarm : ink.ink; g.fillText(text, x, y);
}
