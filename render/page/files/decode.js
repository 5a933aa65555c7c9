// Reading what the page was given: every changing quantity is a first value and
// second differences, in whole steps (channels.go says how they are written).

const DIGITS = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/";
const DIGIT = new Map([...DIGITS].map((c, i) => [c, i]));

// channel gives the values of a quantity: one for what never changes, else one
// a frame.
function channel([step, first, rest], frames) {
  if (rest === undefined) return new Float64Array([first * step]);
  const out = new Float64Array(frames);
  let at = 0;
  const number = () => {
    let n = 0, shift = 1;
    for (;;) {
      const d = DIGIT.get(rest[at++]);
      n += (d & 31) * shift;
      if (d < 32) return n;
      shift *= 32;
    }
  };
  let value = first, pace = 0, i = 0;
  out[i++] = value * step;
  const put = (d) => {
    pace += d;
    value += pace;
    out[i++] = value * step;
  };
  while (i < frames && at < rest.length) {
    if (rest[at] === ".") {
      at++;
      for (let n = number(); n > 0; n--) put(0);
    } else {
      const n = number();
      put(n % 2 ? -(n - 1) / 2 : n / 2);
    }
  }
  return out;
}

// open makes a shot ready to be asked.
function openShot(shot) {
  const list = shot.channels.map((c) => channel(c, shot.frames));
  for (const b of shot.bodies) {
    [b.x, b.y, b.z, b.heading, b.height] = b.t.map((i) => list[i]);
    b.of = b.of || b.n;
    b.ring = b.p ? pairs(b.p) : round(b.r, 12);
  }
  for (const c of shot.cameras) {
    [c.x, c.y, c.z, c.pan, c.tilt, c.focal, c.focus] = c.t.map((i) => list[i]);
    c.lean = c.roll < 0 ? null : list[c.roll];
    c.own = c.own || [];
    c.rolls = c.rolls || [];
  }
  for (const key of ["beats", "lines", "cuts", "lights", "findings"]) shot[key] = shot[key] || [];
  return shot;
}

// at is a quantity at a frame; between frames, between their values. What isn't
// there at the frame before or after must not be asked between them.
function at(values, f) {
  if (values.length === 1) return values[0];
  const i = Math.min(Math.floor(f), values.length - 1), k = f - i;
  return k > 0 && i + 1 < values.length ? values[i] + (values[i + 1] - values[i]) * k : values[i];
}

const pairs = (n) => {
  const out = [];
  for (let i = 0; i + 1 < n.length; i += 2) out.push([n[i], n[i + 1]]);
  return out;
};

const round = (r, n) => Array.from({ length: n }, (_, i) => {
  const a = 2 * Math.PI * i / n;
  return [r * Math.cos(a), r * Math.sin(a)];
});

// within says whether a frame lies in one of some runs.
const within = (runs, f) => runs.some(([a, b]) => f >= a && f <= b);

// stood says whether a solid of the set is there at a frame: doors open.
function stood(shot, solid, f) {
  const shut = shot.shut[solid];
  return !shut || within(shut, f);
}

// held is the last of some words to have begun.
function held(list, f) {
  let out = "";
  for (const s of list || []) if (s.f <= f || out === "") out = s.t;
  return out;
}

// poseOf is where a body is at a frame; null where it isn't there.
function poseOf(b, f) {
  const h = b.height.length === 1 ? b.height[0] : b.height[Math.floor(f)];
  if (!(h > 0)) return null;
  return { x: at(b.x, f), y: at(b.y, f), z: at(b.z, f), heading: at(b.heading, f), height: Math.max(h > 0 ? 1e-3 : 0, at(b.height, f)) };
}

// lookOf is a camera's lens at a frame.
function lookOf(c, f) {
  return { x: at(c.x, f), y: at(c.y, f), z: at(c.z, f), pan: at(c.pan, f), tilt: at(c.tilt, f), lean: c.lean ? at(c.lean, f) : 0, focal: at(c.focal, f), focus: at(c.focus, f) };
}

// footprint is a body's outline on the floor at a pose.
function footprint(b, p) {
  const s = Math.sin(p.heading), k = Math.cos(p.heading);
  return b.ring.map(([x, y]) => [p.x + x * k - y * s, p.y + x * s + y * k]);
}

function postureOf(b, f) {
  let out = 0;
  for (const [from, p] of b.b || []) if (from <= f) out = p;
  return out;
}
