// The strip: beats side by side, the handle that scrubs, and a tick for each
// finding.

function loadStrip(shot, findings, go, goFinding) {
  const part = (f) => (100 * f / Math.max(1, shot.frames)).toFixed(3) + "%";
  $("scrub").max = shot.frames - 1;
  $("beats").replaceChildren(...shot.beats.map((b, i) => {
    const e = el("button", { type: "button", title: b.n, "aria-label": `beat ${i + 1}, ${b.n}`, on: () => go(b.f) }, el("span", {}, String(i + 1)), " " + b.n);
    e.style.left = part(b.f);
    e.style.width = part(b.to + 1 - b.f);
    return e;
  }));
  const ticks = [];
  findings.forEach((f, i) => (f.frames || []).forEach(([a, z]) => {
    const e = el("button", { type: "button", class: f.sev, title: `${f.code}: ${f.msg}`, "aria-label": `${f.sev} ${f.code}`, tabindex: "-1", on: () => goFinding(i) });
    e.style.left = part(a);
    e.style.width = `max(${part(z + 1 - a)}, 5px)`;
    ticks.push(e);
  }));
  for (const [f] of shot.cuts) {
    const e = el("i", { class: "cutmark", title: "the edit cuts here" });
    e.style.left = part(f);
    ticks.push(e);
  }
  $("ticks").replaceChildren(...ticks);
}

function showStrip(shot, frame) {
  const scrub = $("scrub");
  if (scrub.valueAsNumber !== frame) scrub.value = frame;
  const i = shot.beats.findLastIndex((b) => frame >= b.f);
  [...$("beats").children].forEach((e, k) => e.classList.toggle("now", k === i));
  const b = shot.beats[i];
  scrub.setAttribute("aria-valuetext", `frame ${frame}${b ? ", " + b.n : ""}`);
  return i;
}
