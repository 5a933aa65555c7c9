// Checks a packed extension, taken apart into a folder: all that its manifest names
// is in it and as it is in the checkout, and its client loads with nothing beside it
// but the editor's own module.
//
//   node packed.js FOLDER editors/vscode
"use strict";
const assert = require("assert");
const fs = require("fs");
const Module = require("module");
const path = require("path");

const [folder, source] = process.argv.slice(2).map((p) => path.resolve(p));
const inside = path.join(folder, "extension");
const manifest = JSON.parse(fs.readFileSync(path.join(inside, "package.json"), "utf8"));

const { languages, grammars, snippets } = manifest.contributes;
const named = [...languages.map((l) => l.configuration), ...grammars.map((g) => g.path), ...snippets.map((s) => s.path)];
assert.ok(languages.length && grammars.length && snippets.length, "a language, its grammar and its snippets");
for (const name of named) {
  const packed = fs.readFileSync(path.join(inside, name), "utf8");
  assert.strictEqual(packed, fs.readFileSync(path.join(source, name), "utf8"), `${name} is not the one of the checkout`);
  assert.ok(Object.keys(JSON.parse(packed)).length, `${name} is empty`);
}
assert.ok(fs.existsSync(path.join(inside, "readme.md")), "its readme");
assert.ok(!fs.existsSync(path.join(inside, "node_modules")), "the client is in one piece");

// Anything of the editor: it can be called, constructed, extended and looked into.
const anything = () =>
  new Proxy(class {}, {
    get: (target, key) => (key === "prototype" || typeof key === "symbol" ? target[key] : anything()),
    apply: () => anything(),
  });
const load = Module._load;
Module._load = function (request, parent, isMain) {
  if (request === "vscode") {
    return anything();
  }
  if (parent && parent.filename.startsWith(inside)) {
    assert.ok(Module.isBuiltin(request), `the client needs ${request}, which is not packed`);
  }
  return load.call(this, request, parent, isMain);
};
const client = require(path.join(inside, manifest.main));
assert.strictEqual(typeof client.activate, "function");
assert.strictEqual(typeof client.deactivate, "function");
