// The floor that a lens sees: what is as high as the lens cuts it off. It is
// worked out here, frame by frame, from the same solids that the checks look past.

// blockers are the edges that stand at a height, around a place.
function blockers(doc, shot, camera, look, f) {
  const out = [];
  const add = (ring) => {
    if (inside(ring, look.x, look.y)) return;
    for (let i = 0; i < ring.length; i++) {
      const a = ring[i], b = ring[(i + 1) % ring.length];
      out.push([a[0] - look.x, a[1] - look.y, b[0] - look.x, b[1] - look.y]);
    }
  };
  for (const p of doc.pieces) {
    if (p.g || p.z[0] >= look.z || p.z[1] <= look.z || !stood(shot, p.s, f)) continue;
    add(p.ring);
  }
  shot.bodies.forEach((b, i) => {
    if (b.k !== "hole" || owns(camera, i, f)) return;
    const p = poseOf(b, f);
    if (p && p.z < look.z && p.z + p.height > look.z) add(footprint(b, p));
  });
  return out;
}

const owns = (camera, body, f) => camera.own.some(([b, from, to]) => b === body && f >= from && f <= to);

function inside(ring, x, y) {
  let odd = false;
  for (let i = 0, j = ring.length - 1; i < ring.length; j = i++) {
    const [ax, ay] = ring[i], [bx, by] = ring[j];
    if ((ay > y) !== (by > y) && x < (bx - ax) * (y - ay) / (by - ay) + ax) odd = !odd;
  }
  return odd;
}

// seenFloor is the outline of the floor within a lens's angle, out to a distance:
// a list of points that begins at the lens.
function seenFloor(edges, look, across, reach) {
  const half = across / 2, ahead = look.pan, hair = 1e-5;
  const turn = (x, y) => {
    let a = Math.atan2(y, x) - ahead;
    a -= 2 * Math.PI * Math.round(a / (2 * Math.PI));
    return a;
  };
  const near = [];
  const angles = [-half, half];
  for (let a = -half + 0.05; a < half; a += 0.05) angles.push(a); // the far edge is an arc
  for (const e of edges) {
    const a = turn(e[0], e[1]), b = turn(e[2], e[3]);
    // An edge takes part where it reaches into the angle, ahead of the lens or
    // round behind it.
    if (Math.max(a, b) < -half - hair && Math.abs(a - b) < Math.PI) continue;
    if (Math.min(a, b) > half + hair && Math.abs(a - b) < Math.PI) continue;
    near.push(e);
    for (const t of [a, b]) {
      if (t > -half && t < half) angles.push(t - hair, t, t + hair);
    }
  }
  angles.sort((p, q) => p - q);
  const out = [[look.x, look.y]];
  let last = NaN;
  for (const t of angles) {
    if (t === last || t < -half || t > half) continue;
    last = t;
    const dx = Math.cos(ahead + t), dy = Math.sin(ahead + t);
    let best = reach;
    for (const [ax, ay, bx, by] of near) {
      const ex = bx - ax, ey = by - ay, d = dx * ey - dy * ex;
      if (d === 0) continue;
      const r = (ax * ey - ay * ex) / d, u = (ax * dy - ay * dx) / d;
      if (r > 1e-9 && r < best && u >= -1e-9 && u <= 1 + 1e-9) best = r;
    }
    out.push([look.x + dx * best, look.y + dy * best]);
  }
  return out;
}
