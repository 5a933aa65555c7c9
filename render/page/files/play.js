// The player: where in which shot it is, and everything that shows it.

const SPEEDS = [1, 2, 0.5], SPEEDNAMES = ["\u00d71", "\u00d72", "\u00d7\u00bd"];

class Player {
  constructor() {
    this.overhead = new Overhead($("overhead"));
    this.order = new Order();
    this.light = new Light();
    this.rehearsal = new Rehearsal();
    this.calm = matchMedia("(prefers-reduced-motion: reduce)");
    this.f = 0;
    this.playing = false;
    this.speed = 0;
    this.loop = false;
    this.dep = "";
    this.shotIndex = 0;
    this.found = -1;
    this.wire();
  }

  get rate() { return rateOf(this.doc); }
  get frame() { return Math.floor(this.f + 1e-6); }

  // load takes what the page knows; told again, it stays at its moment and view.
  load(doc) {
    this.doc = doc;
    doc.departments = doc.departments || [];
    doc.general = doc.general || [];
    for (const p of doc.pieces) {
      p.ring = pairs(p.p);
      p.convex = p.c ? p.c.map(pairs) : [p.ring];
      p.l = p.l || [];
    }
    doc.shots.forEach(openShot);
    document.title = doc.title;
    $("title").textContent = doc.title;
    $("about").textContent = [doc.scene && "scene " + doc.scene, doc.set, doc.revision && doc.revision + " revision", doc.file].filter(Boolean).join(" \u00b7 ");
    $("safety").textContent = doc.safety;
    const fill = (select, options, value) => {
      select.replaceChildren(...options.map(([v, t]) => el("option", { value: v }, t)));
      select.value = value;
      if (select.selectedIndex < 0) select.selectedIndex = 0;
      return select.value;
    };
    this.shotIndex = Number(fill($("shot"), doc.shots.map((s, i) => [i, i ? `pickup: ${s.title}` : "the take"]), this.shotIndex));
    $("shotlabel").hidden = doc.shots.length < 2;
    this.dep = fill($("department"), [["", "everybody"], ...doc.departments.map((d) => [d.id, d.title])], this.dep);
    this.open();
  }

  open() {
    this.shot = this.doc.shots[this.shotIndex];
    const s = this.shot, keep = this.overhead.view;
    const select = $("view");
    const group = (label, list) => el("optgroup", { label }, ...list.map((n) => el("option", { value: "of:" + n }, n)));
    select.replaceChildren(
      el("option", { value: "beat" }, "this beat"), el("option", { value: "set" }, "the whole set"),
      group("follow", [...s.bodies.filter((b) => b.h !== undefined || b.k === "vehicle" && b.of === b.n).map((b) => b.n), ...s.cameras.map((c) => c.n)]));
    select.value = keep;
    if (select.selectedIndex < 0) select.selectedIndex = 0;
    this.overhead.view = select.value;
    this.overhead.load(this.doc, s);
    this.findings = listFindings(this.doc, s, (i) => this.goFinding(i));
    this.order.load(this.doc, s, this.dep, (f) => this.go(f));
    this.light.load(s);
    loadStrip(s, this.findings, (f) => this.go(f), (i) => this.goFinding(i));
    this.rehearsal.load(this.doc, s, (f, text) => this.goWeak(f, text));
    listKeys(this);
    $("never").disabled = !s.never;
    this.frames();
    this.f = Math.max(0, Math.min(this.f, s.frames - 1));
    this.changed();
  }

  // frames makes room for what each camera sees.
  frames() {
    const box = $("frames");
    this.views = this.shot.cameras.filter((c) => c.rolls.length).map((c) => {
      const canvas = el("canvas", { role: "img", "aria-label": `what ${c.n} sees` });
      canvas.style.aspectRatio = `${c.gate[0]} / ${c.gate[1]}`;
      const waits = el("p", { class: "waits" }), lens = el("span", {}), used = el("b", { class: "used" }, "in the edit");
      const who = el("ul", { class: "who", "aria-label": `in ${c.n}'s frame` }), wrong = el("ul", { class: "wrong" });
      const i = this.shot.cameras.indexOf(c);
      const figure = el("figure", { class: "view c" + (i % 4), "data-camera": c.n },
        el("div", { class: "gate" }, canvas, waits),
        el("figcaption", {}, el("p", {}, el("b", { class: "camera" }, c.n), " ", lens, " ", used), who, wrong));
      return { c, i, canvas, waits, lens, used, who, wrong, figure };
    });
    box.replaceChildren(...this.views.map((v) => v.figure));
    
  }

  changed() {
    if (this.asked) return;
    this.asked = true;
    requestAnimationFrame((now) => {
      this.asked = false;
      this.tick(now);
    });
  }

  tick(now) {
    if (!this.shot) return;
    if (this.playing) {
      const dt = Math.min(0.25, (now - this.last) / 1000);
      this.last = now;
      let f = this.f + dt * this.rate * SPEEDS[this.speed];
      const beat = this.beatAt(this.frame);
      if (this.loop && beat && f >= beat.to + 1) f = beat.f;
      if (f >= this.shot.frames - 1) {
        f = this.shot.frames - 1;
        this.stop();
      }
      this.f = f;
    }
    this.draw();
    if (this.playing) this.changed();
  }

  draw() {
    const frame = this.frame, t = this.f / this.rate;
    const f = this.playing && !this.calm.matches ? this.f : frame;
    const active = this.findings.filter((x) => x.frames && within(x.frames, frame));
    const bad = active.filter((x) => x.sev !== "note");
    this.overhead.draw(f, new Set(bad.map((x) => x.who).filter(Boolean)));
    const rolling = this.views.filter((v) => within(v.c.rolls, frame)).length;
    for (const v of this.views) {
      v.figure.classList.toggle("shared", rolling > 1 && within(v.c.rolls, frame));
      this.drawView(v, f, frame, active);
    }
    const i = showStrip(this.shot, frame), beat = this.shot.beats[i];
    const text = `${clockOf(frame / this.rate)} \u00b7 frame ${frame}`;
    if ($("clock").textContent !== text) $("clock").textContent = text;
    const name = beat ? `${i + 1}. ${beat.n}` : "";
    if ($("beat").textContent !== name) $("beat").textContent = name;
    this.order.show(t, true);
    this.light.show(t);
    this.showFindings(frame);
    this.rehearsal.show(frame, this.rate);
    document.body.dataset.frame = frame;
  }

  showFindings(frame) {
    [...$("findinglist").children].forEach((e, i) => {
      const f = this.findings[i];
      e.classList.toggle("now", Boolean(f.frames && within(f.frames, frame)));
    });
  }

  drawView(v, f, frame, active) {
    const c = v.c, on = within(c.rolls, frame);
    v.figure.classList.toggle("idle", !on);
    const cut = this.shot.cuts.findLast(([a]) => a <= frame);
    v.used.hidden = !(this.shot.cuts.length && (cut ? cut[1] === v.i : v.i === 0));
    if (!on) {
      const next = c.rolls.find(([a]) => a > frame);
      const text = next ? `${c.n} rolls in ${((next[0] - frame) / this.rate).toFixed(1)} s` : `${c.n} does not roll any more`;
      if (v.waits.textContent !== text) v.waits.textContent = text;
      v.who.replaceChildren();
      v.wrong.replaceChildren();
      v.lens.textContent = "";
      return;
    }
    const dots = Math.min(window.devicePixelRatio || 1, 2), width = v.canvas.clientWidth || 400;
    const high = Math.round(width * c.gate[1] / c.gate[0] * dots);
    if (v.canvas.width !== Math.round(width * dots) || v.canvas.height !== high) {
      v.canvas.width = Math.round(width * dots);
      v.canvas.height = high;
    }
    const mine = active.filter((x) => x.cam === c.n);
    const bad = new Map(mine.filter((x) => x.sev !== "note" && x.who).map((x) => [x.who, x.code]));
    const g = v.canvas.getContext("2d");
    g.setTransform(dots, 0, 0, dots, 0, 0);
    const { seen, look } = paintFrame(g, this.doc, this.shot, c, f, width, this.ink(), bad);
    const feet = this.doc.feet, far = (m) => m > 999 ? "infinity" : feet ? (m / 0.3048).toFixed(1) + "'" : m.toFixed(2) + " m";
    v.lens.textContent = [held(c.held, frame), held(c.lens, frame), look.focal.toFixed(0) + " mm", "focus " + far(look.focus)].filter(Boolean).join(" \u00b7 ");
    const people = seen.filter((s) => s.kind === "performer" || s.kind === "crew" || bad.has(s.of));
    const key = people.map((s) => s.name + s.far.toFixed(1)).join();
    if (key !== v.key || !this.playing) {
      v.key = key;
      v.who.replaceChildren(...people.map((s) => el("li", { class: s.kind, "data-name": s.name, "data-box": s.box.map((n) => n.toFixed(4)).join(" ") }, `${s.name} ${far(s.far)}`)));
      v.wrong.replaceChildren(...mine.map((x) => el("li", { class: x.sev }, `${SIGN[x.sev]} ${x.code}: ${x.msg}`)));
    }
  }

  // ink is the colours of the page, for what isn't drawn by its style sheet.
  ink() {
    if (this.colours) return this.colours;
    const s = getComputedStyle(document.documentElement), get = (n) => s.getPropertyValue("--" + n).trim();
    const parse = (c) => [1, 3, 5].map((i) => parseInt(c.slice(i, i + 2), 16));
    const dark = parse(get("shade")), light = parse(get("lit"));
    const cache = new Map();
    const face = (k) => {
      const n = Math.round(Math.max(0, Math.min(1, k)) * 32);
      if (!cache.has(n)) cache.set(n, "rgb(" + dark.map((v, i) => Math.round(v + (light[i] - v) * n / 32)).join(" ") + ")");
      return cache.get(n);
    };
    return this.colours = {
      face, ink: get("ink"), paper: get("paper"), edge: get("edge"), line: get("line"), rule: get("rule"), sky: get("sky"), ground: get("ground"),
      thirds: get("thirds"), alarm: get("alarm"), alarmtint: get("alarmtint"), crewtint: get("crewtint"), letters: s.getPropertyValue("--letters"),
    };
  }

  beatAt(frame) { return this.shot.beats.findLast((b) => frame >= b.f) || this.shot.beats[0]; }

  // go shows a frame.
  go(f, keepLink) {
    this.f = Math.max(0, Math.min(Math.round(f), this.shot.frames - 1));
    if (!keepLink) this.remember();
    this.changed();
  }

  step(n) {
    this.stop();
    this.go(this.frame + n);
  }

  beat(n) {
    const i = this.shot.beats.findLastIndex((b) => this.frame >= b.f);
    const back = n < 0 && this.frame > this.shot.beats[Math.max(0, i)].f ? 0 : n;
    this.go(this.shot.beats[Math.max(0, Math.min(this.shot.beats.length - 1, i + back))].f);
  }

  goFinding(i) {
    const f = this.findings[i];
    if (!f || !f.frames) return;
    this.found = i;
    this.stop();
    this.go(f.worst);
    [...$("findinglist").children].forEach((e, k) => e.classList.toggle("chosen", k === i));
    $("findinglist").children[i].scrollIntoView({ block: "nearest", behavior: "auto" });
    this.say(`${f.sev} ${f.code}: ${f.msg}`);
  }

  finding(n) {
    const all = this.findings.map((f, i) => [f, i]).filter(([f]) => f.frames);
    if (!all.length) return this.say("nothing was found");
    all.sort((a, b) => a[0].worst - b[0].worst || a[1] - b[1]);
    let k = all.findIndex(([, i]) => i === this.found);
    if (k < 0 || this.findings[this.found].worst !== this.frame) {
      k = n > 0 ? all.findIndex(([f]) => f.worst > this.frame) : all.findLastIndex(([f]) => f.worst < this.frame);
      if (k < 0) k = n > 0 ? 0 : all.length - 1;
    } else k = (k + n + all.length) % all.length;
    this.goFinding(all[k][1]);
  }

  // goWeak shows a place that the rehearsal found weak.
  goWeak(f, text) {
    this.stop();
    this.go(f);
    this.say(text);
  }

  weak(n) {
    if (!this.rehearsal.next(n, this.frame)) this.say("the rehearsal found nothing weak");
  }

  toggle() {
    if (this.playing) return this.stop();
    if (this.frame >= this.shot.frames - 1) this.f = 0;
    this.playing = true;
    this.last = performance.now();
    $("play").textContent = "stop";
    this.changed();
  }

  stop() {
    if (!this.playing) return;
    this.playing = false;
    this.f = this.frame;
    $("play").textContent = "play";
    this.remember();
    this.changed();
  }

  faster() {
    this.speed = (this.speed + 1) % SPEEDS.length;
    $("speed").textContent = SPEEDNAMES[this.speed];
  }

  loopBeat() {
    this.loop = !this.loop;
    $("loop").setAttribute("aria-pressed", this.loop);
  }

  flip(what) {
    const b = $(what);
    if (b.disabled) return;
    const on = b.getAttribute("aria-pressed") !== "true";
    b.setAttribute("aria-pressed", on);
    $("floor").classList.toggle("show-" + what, on);
    if (what === "never" && on) this.say(`nobody standing on the hatched floor is ever seen: ${this.shot.never.area} m\u00b2`);
  }

  see(view) {
    this.overhead.view = view;
    this.overhead.free = false;
    $("view").value = view;
    this.say("showing " + $("view").selectedOptions[0].textContent);
    this.changed();
  }

  nextView() {
    const all = [...$("view").options].map((o) => o.value);
    this.see(all[(all.indexOf(this.overhead.view) + 1) % all.length]);
  }

  zoom(k) { this.overhead.zoom(k); this.changed(); }
  unzoom() { this.overhead.free = false; this.changed(); }

  choose(dep) {
    this.dep = dep;
    $("department").value = dep;
    this.order.load(this.doc, this.shot, dep, (f) => this.go(f));
    this.say("running order for " + $("department").selectedOptions[0].textContent);
    this.changed();
  }

  nextDepartment() {
    const all = [...$("department").options].map((o) => o.value);
    this.choose(all[(all.indexOf(this.dep) + 1) % all.length]);
  }

  play(index) {
    this.stop();
    this.shotIndex = index;
    $("shot").value = index;
    this.f = 0;
    this.open();
    this.remember();
  }

  nextShot() { this.play((this.shotIndex + 1) % this.doc.shots.length); }

  remember() {
    const hash = `#f=${this.frame}` + (this.shotIndex ? `&shot=${this.shotIndex}` : "");
    clearTimeout(this.remembering); // browsers count how often it is done
    this.remembering = setTimeout(() => { try { history.replaceState(null, "", hash); } catch { /* a file share may not allow it */ } }, 150);
  }

  // arrive goes where the address says: #f=123, #beat=3, #find=2.
  arrive() {
    const ask = new URLSearchParams(location.hash.slice(1));
    const number = (name) => ask.has(name) && /^\d+$/.test(ask.get(name)) ? Number(ask.get(name)) : null;
    const shot = number("shot");
    if (shot !== null && shot < this.doc.shots.length && shot !== this.shotIndex) {
      this.shotIndex = shot;
      $("shot").value = shot;
      this.open();
    }
    if (number("f") !== null) this.go(number("f"), true);
    else if (number("beat") !== null && this.shot.beats[number("beat") - 1]) this.go(this.shot.beats[number("beat") - 1].f, true);
    else if (number("find") !== null) this.goFinding(number("find") - 1);
  }

  async link() {
    const url = location.href.replace(/#.*/, "") + `#f=${this.frame}` + (this.shotIndex ? `&shot=${this.shotIndex}` : "");
    try {
      await navigator.clipboard.writeText(url);
      this.say("link copied: " + url);
    } catch {
      this.say(url);
    }
  }

  invert() {
    const root = document.documentElement, dark = matchMedia("(prefers-color-scheme: dark)").matches;
    root.dataset.look = (root.dataset.look || (dark ? "dark" : "light")) === "dark" ? "light" : "dark";
    this.repaint();
  }

  repaint() {
    this.colours = null;
    this.changed();
  }

  say(text) { $("said").textContent = text; }

  wire() {
    const click = (id, act) => $(id).addEventListener("click", act);
    click("play", () => this.toggle());
    click("back", () => this.step(-1));
    click("on", () => this.step(1));
    click("beatback", () => this.beat(-1));
    click("beaton", () => this.beat(1));
    click("speed", () => this.faster());
    click("loop", () => this.loopBeat());
    click("link", () => this.link());
    click("help", () => $("keys").showModal());
    click("nearer", () => this.zoom(1.25));
    click("farther", () => this.zoom(0.8));
    click("never", () => this.flip("never"));
    click("ways", () => this.flip("ways"));
    $("scrub").addEventListener("input", (e) => this.go(e.target.valueAsNumber));
    $("view").addEventListener("change", (e) => this.see(e.target.value));
    $("department").addEventListener("change", (e) => this.choose(e.target.value));
    $("shot").addEventListener("change", (e) => this.play(Number(e.target.value)));
    addEventListener("hashchange", () => this.doc && this.arrive());
    matchMedia("(prefers-color-scheme: dark)").addEventListener("change", () => this.repaint());
    const resized = new ResizeObserver(() => {
      this.overhead.size();
      this.changed();
    });
    resized.observe($("overhead"));
    resized.observe($("frames"));
    this.overhead.size();
    this.grab($("overhead"));
    listenKeys(this);
  }

  // grab lets the overhead be dragged, and zoomed by wheel or two fingers.
  grab(svg) {
    const down = new Map();
    let spread = 0;
    svg.addEventListener("pointerdown", (e) => {
      down.set(e.pointerId, e);
      svg.setPointerCapture(e.pointerId);
    });
    svg.addEventListener("pointermove", (e) => {
      const was = down.get(e.pointerId);
      if (!was) return;
      down.set(e.pointerId, e);
      if (down.size === 1) this.overhead.drag(e.clientX - was.clientX, e.clientY - was.clientY);
      else {
        const [a, b] = [...down.values()], now = Math.hypot(a.clientX - b.clientX, a.clientY - b.clientY), r = svg.getBoundingClientRect();
        if (spread > 0) this.overhead.zoom(now / spread, (a.clientX + b.clientX) / 2 - r.left, (a.clientY + b.clientY) / 2 - r.top);
        spread = now;
      }
      this.changed();
    });
    for (const kind of ["pointerup", "pointercancel"]) svg.addEventListener(kind, (e) => { down.delete(e.pointerId); spread = 0; });
    svg.addEventListener("wheel", (e) => {
      e.preventDefault();
      const r = svg.getBoundingClientRect();
      this.overhead.zoom(Math.exp(-e.deltaY / 400), e.clientX - r.left, e.clientY - r.top);
      this.changed();
    }, { passive: false });
    svg.addEventListener("dblclick", () => this.unzoom());
  }
}

const player = new Player();
const given = JSON.parse($("take").textContent);
if (given) {
  player.load(given);
  player.arrive();
}
// A served page is told of a newer plan, or of mistakes in it, without being
// loaded again.
document.addEventListener("longhand-plan", (e) => {
  const first = !player.doc;
  player.load(e.detail);
  if (first) player.arrive();
  $("broken").hidden = true;
});
document.addEventListener("longhand-mended", () => { $("broken").hidden = true; });
document.addEventListener("longhand-broken", (e) => {
  $("broken").querySelector("pre").textContent = e.detail;
  $("broken").hidden = false;
});
