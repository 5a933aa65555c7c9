// Everything the page does, by key. A key works wherever it isn't meant for a
// field that has the focus.

const rehearsed = (p) => Boolean(p.doc.rehearsal);

// Of each: its keys, what it does in words, the act, and whether it is there.
const KEYS = [
  [["Space", "K"], "play or stop", (p) => p.toggle()],
  [["ArrowLeft"], "frame back", (p) => p.step(-1)],
  [["ArrowRight"], "frame on", (p) => p.step(1)],
  [["Shift+ArrowLeft", "J"], "second back", (p) => p.step(-Math.round(p.rate))],
  [["Shift+ArrowRight"], "second on", (p) => p.step(Math.round(p.rate))],
  [["["], "beat before", (p) => p.beat(-1)],
  [["]"], "next beat", (p) => p.beat(1)],
  [["Home"], "start", (p) => p.go(0)],
  [["End"], "end", (p) => p.go(p.shot.frames - 1)],
  [["N"], "next finding", (p) => p.finding(1)],
  [["P"], "finding before", (p) => p.finding(-1)],
  [["R"], "next weak place of the rehearsal", (p) => p.weak(1), rehearsed],
  [["E"], "weak place before", (p) => p.weak(-1), rehearsed],
  [["L"], "play this beat over and over", (p) => p.loopBeat()],
  [["S"], "speed: one, double, half", (p) => p.faster()],
  [["F"], "show: the beat, the whole set, follow each in turn", (p) => p.nextView()],
  [["D"], "the next department's running order", (p) => p.nextDepartment()],
  [["U"], "floor where nobody standing is ever seen", (p) => p.flip("never")],
  [["W"], "ways", (p) => p.flip("ways")],
  [["+", "="], "nearer", (p) => p.zoom(1.25)],
  [["-"], "farther", (p) => p.zoom(0.8)],
  [["0"], "as it was", (p) => p.unzoom()],
  [["O"], "to the running order", () => $("order").focus()],
  [["T"], "take or pickup", (p) => p.nextShot()],
  [["C"], "copy a link to this moment", (p) => p.link()],
  [["I"], "light or dark", (p) => p.invert()],
  [["?", "H"], "this list", () => $("keys").showModal()],
];

const KEYNAME = { Space: "space", ArrowLeft: "\u2190", ArrowRight: "\u2192", "Shift+ArrowLeft": "shift \u2190", "Shift+ArrowRight": "shift \u2192" };

function listKeys(player) {
  $("keylist").replaceChildren(...KEYS.filter(([, , , there]) => !there || there(player)).flatMap(([keys, what]) => [
    el("dt", {}, ...keys.map((k) => el("kbd", {}, KEYNAME[k] || k))), el("dd", {}, what),
  ]));
}

function listenKeys(player) {
  const table = new Map(KEYS.flatMap(([keys, , act, there]) => keys.map((k) => [k.toLowerCase(), [act, there]])));
  document.addEventListener("keydown", (e) => {
    if (e.ctrlKey || e.metaKey || e.altKey || $("keys").open || !player.shot) return;
    const on = e.target, tag = on.tagName;
    if (tag === "SELECT" || tag === "TEXTAREA" || tag === "INPUT" && on.type !== "range") return;
    let key = e.key === " " ? "Space" : e.key;
    if (key === "Space" && tag === "BUTTON") return; // it presses the button
    if (tag === "INPUT" && ["Home", "End"].includes(key)) return;
    if (e.shiftKey && key.startsWith("Arrow")) key = "Shift+" + key;
    const [act, there] = table.get(key.toLowerCase()) || [];
    if (!act || there && !there(player)) return;
    e.preventDefault();
    act(player);
  });
}
