// Makes visibility_rooms.json: what an independent program (npm
// visibility-polygon 1.1.0) sees of seeded random rooms with pillars. Run with
// node and NODE_PATH set to the modules; prints to standard output.
const vp = require('visibility-polygon');
let seed = 20260820;
const random = () => { // a linear congruential generator, so that the file repeats
  seed = (Math.imul(seed, 1664525) + 1013904223) >>> 0;
  return seed / 4294967296;
};
const round = (v) => Math.round(v * 1000) / 1000;
const VP = vp.VisibilityPolygon || vp.default || vp;
const area = (p) => Math.abs(p.reduce((a, v, i) => { const w = p[(i + 1) % p.length]; return a + v[0] * w[1] - w[0] * v[1]; }, 0)) / 2;
const inside = (p, poly) => { let c = false; for (let i = 0, j = poly.length - 1; i < poly.length; j = i++) { const a = poly[i], b = poly[j]; if ((a[1] > p[1]) !== (b[1] > p[1]) && p[0] < (b[0] - a[0]) * (p[1] - a[1]) / (b[1] - a[1]) + a[0]) c = !c; } return c; };
const rooms = [];
while (rooms.length < 60) {
  const w = round(6 + 14 * random()), h = round(6 + 10 * random());
  const room = [[0, 0], [w, 0], [w, h], [0, h]];
  const pillars = [];
  for (let i = 0; i < 1 + Math.floor(random() * 5); i++) {
    const c = [1.5 + (w - 3) * random(), 1.5 + (h - 3) * random()], r = 0.2 + 0.5 * random(), n = 3 + Math.floor(random() * 4), turn = random();
    const p = [];
    for (let k = 0; k < n; k++) p.push([round(c[0] + r * Math.cos(2 * Math.PI * (k / n + turn))), round(c[1] + r * Math.sin(2 * Math.PI * (k / n + turn)))]);
    if (pillars.every((q) => Math.hypot(q.c[0] - c[0], q.c[1] - c[1]) > q.r + r + 0.05)) pillars.push({ c, r, p });
  }
  const eye = [round(0.3 + (w - 0.6) * random()), round(0.3 + (h - 0.6) * random())];
  if (pillars.some((q) => Math.hypot(q.c[0] - eye[0], q.c[1] - eye[1]) < q.r + 0.05)) continue;
  const polys = pillars.map((q) => q.p);
  let segments = VP.convertToSegments([room, ...polys]);
  segments = VP.breakIntersections(segments);
  rooms.push({ room, pillars: polys, eye, area: Math.round(area(VP.compute(eye, segments)) * 1e6) / 1e6 });
}
console.log('[\n' + rooms.map((r) => JSON.stringify(r)).join(',\n') + '\n]');
