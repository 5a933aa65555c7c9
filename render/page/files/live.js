// In a served page only: asks for the plan again whenever the server says that
// there is a newer one.
(() => {
  "use strict";
  const tell = (name, detail) => document.dispatchEvent(new CustomEvent(name, { detail }));
  let newest = Number(document.currentScript.dataset.version);
  const news = new EventSource("/news");
  news.addEventListener("plan", async (e) => {
    const version = Number(e.data);
    if (version <= newest) return tell("longhand-mended");
    newest = version;
    const plan = await (await fetch("/plan.json?" + version)).json();
    if (version === newest) tell("longhand-plan", plan);
  });
  news.addEventListener("broken", (e) => tell("longhand-broken", JSON.parse(e.data)));
})();
