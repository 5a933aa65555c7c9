// People in a frame: the same stand-in that the printed frames draw, rounded limbs
// about the joints of a posture, fitted to the upright cylinder that the checks
// reckon with.

const AROUND = Array.from({ length: 10 }, (_, i) => [Math.cos(2 * Math.PI * i / 10), Math.sin(2 * Math.PI * i / 10)]);
const ROUND = round(1, 48);

// standIn is a person in parts of the frame's width, farthest limb first: each with
// its outline and the lines on it. Null where they are too near to be drawn whole.
// What is below a height, inside what they stand in, is left out.
function standIn(doc, l, body, p, f, floor) {
  const want = boxOf(l, ROUND.map(([x, y]) => [p.x + x * body.r, p.y + y * body.r]), p.z, p.z + p.height);
  if (!want) return null;
  const fig = doc.figures[postureOf(body, f)] || doc.figures[0];
  const unit = p.height / fig.tall, s = Math.sin(p.heading), k = Math.cos(p.heading);
  const world = (x, y, z) => [p.x + (x * k - y * s) * unit, p.y + (x * s + y * k) * unit, p.z + z * unit];
  const show = (w) => {
    const q = see(l, w[0], w[1], Math.max(w[2], floor));
    q[2] = Math.max(q[2], NEAR);
    return put(l, q);
  };
  const parts = [];
  let have = [Infinity, Infinity, -Infinity, -Infinity];
  fig.limbs.forEach((rings, i) => {
    const points = [];
    let depth = 0, top = -Infinity;
    for (let n = 0; n < rings.length; n += 5) {
      const [x, y, z, rx, ry] = rings.slice(n, n + 5);
      for (const [ck, sk] of AROUND) points.push(world(x + rx * ck, y + ry * sk, z));
      const w = world(x, y, z);
      top = Math.max(top, w[2]);
      const q = see(l, w[0], w[1], w[2]);
      depth += Math.hypot(q[0], q[1], q[2]) * 5 / rings.length;
    }
    for (const w of points) {
      const q = see(l, w[0], w[1], w[2]);
      const [u, v] = put(l, [q[0], q[1], Math.max(q[2], NEAR)]);
      have = [Math.min(have[0], u), Math.min(have[1], v), Math.max(have[2], u), Math.max(have[3], v)];
    }
    parts.push({ ring: hull(points.map(show)), depth, lines: [], hidden: top < floor });
  });
  for (const t of fig.traits) {
    const on = parts[t[0] ? fig.head : fig.trunk];
    let run = [];
    for (let n = 1; n < t.length; n += 6) {
      const w = world(t[n], t[n + 1], t[n + 2]);
      const nx = t[n + 3] * k - t[n + 4] * s, ny = t[n + 3] * s + t[n + 4] * k, nz = t[n + 5];
      const to = [l.eye[0] - w[0], l.eye[1] - w[1], l.eye[2] - w[2]];
      if (w[2] < floor || nx * to[0] + ny * to[1] + nz * to[2] < 0.12 * Math.hypot(to[0], to[1], to[2])) {
        if (run.length > 1) on.lines.push(run);
        run = [];
      } else run.push(show(w));
    }
    if (run.length > 1) on.lines.push(run);
  }
  const kx = (want[2] - want[0]) / (have[2] - have[0]), ky = (want[3] - want[1]) / (have[3] - have[1]);
  const fit = ([x, y]) => [want[0] + (x - have[0]) * kx, want[1] + (y - have[1]) * ky];
  for (const part of parts) {
    part.ring = part.ring.map(fit);
    part.lines = part.lines.map((line) => line.map(fit));
  }
  return parts.filter((part) => !part.hidden).sort((a, b) => b.depth - a.depth);
}
