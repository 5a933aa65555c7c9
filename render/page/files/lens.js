// A lens: straight lines stay straight (pinhole). Its own coordinates are metres,
// right, up and along the axis; pictures are in parts of the frame's width.

const NEAR = 0.05;

// lensAt looks through a camera; k turns right over depth into parts of the
// frame's width.
function lensAt(look, gate) {
  const sp = Math.sin(look.pan), cp = Math.cos(look.pan), st = Math.sin(look.tilt), ct = Math.cos(look.tilt);
  const sr = Math.sin(look.lean), cr = Math.cos(look.lean);
  const right = [sp, -cp, 0], up = [-cp * st, -sp * st, ct];
  const lens = {
    eye: [look.x, look.y, look.z],
    ahead: [cp * ct, sp * ct, st],
    right: right.map((v, i) => v * cr - up[i] * sr),
    up: up.map((v, i) => v * cr + right[i] * sr),
    k: look.focal / gate[0],
    tall: gate[1] / gate[0],
  };
  return lens;
}

// see gives a point of the world in the lens's own coordinates.
function see(l, x, y, z) {
  const dx = x - l.eye[0], dy = y - l.eye[1], dz = z - l.eye[2];
  return [
    dx * l.right[0] + dy * l.right[1] + dz * l.right[2],
    dx * l.up[0] + dy * l.up[1] + dz * l.up[2],
    dx * l.ahead[0] + dy * l.ahead[1] + dz * l.ahead[2],
  ];
}

// put gives a point before the lens as parts of the frame's width from the upper
// left corner.
const put = (l, p) => [0.5 + l.k * p[0] / p[2], l.tall / 2 - l.k * p[1] / p[2]];

// before cuts a polygon to what lies before the lens.
function before(points) {
  const out = [];
  for (let i = 0; i < points.length; i++) {
    const a = points[i], b = points[(i + 1) % points.length];
    if (a[2] >= NEAR) out.push(a);
    if ((a[2] >= NEAR) !== (b[2] >= NEAR)) {
      const t = (NEAR - a[2]) / (b[2] - a[2]);
      out.push([a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t, NEAR]);
    }
  }
  return out;
}

// stretch cuts a line likewise; null where none of it is before the lens.
function stretch(a, b) {
  if (a[2] < NEAR && b[2] < NEAR) return null;
  const cut = (p, q) => {
    const t = (NEAR - p[2]) / (q[2] - p[2]);
    return [p[0] + (q[0] - p[0]) * t, p[1] + (q[1] - p[1]) * t, NEAR];
  };
  if (a[2] < NEAR) return [cut(a, b), b];
  if (b[2] < NEAR) return [a, cut(b, a)];
  return [a, b];
}

// boxOf is the bounds of an upright prism in the frame, in parts of its width;
// null where some of it isn't before the lens.
function boxOf(l, ring, low, high) {
  let x0 = Infinity, y0 = Infinity, x1 = -Infinity, y1 = -Infinity;
  for (const [x, y] of ring) {
    for (const z of [low, high]) {
      const p = see(l, x, y, z);
      if (p[2] < NEAR) return null;
      const [u, v] = put(l, p);
      x0 = Math.min(x0, u); x1 = Math.max(x1, u);
      y0 = Math.min(y0, v); y1 = Math.max(y1, v);
    }
  }
  return [x0, y0, x1, y1];
}

function hull(points) {
  const ps = points.slice().sort((a, b) => a[0] - b[0] || a[1] - b[1]);
  const half = (list) => {
    const out = [];
    for (const p of list) {
      while (out.length > 1) {
        const a = out[out.length - 2], b = out[out.length - 1];
        if ((b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0]) > 0) break;
        out.pop();
      }
      out.push(p);
    }
    out.pop();
    return out;
  };
  return half(ps).concat(half(ps.reverse()));
}
