// Runs the extension with stand-ins for the editor and the client library, and
// fails when it does not do what it is there for.
"use strict";
const assert = require("assert");
const Module = require("module");
const path = require("path");

const seen = { warnings: [], errors: [], started: [], stopped: 0, commands: {}, run: [] };
let setting = process.execPath;
let onChange;
let answer;

const stubs = {
  vscode: {
    workspace: {
      getConfiguration: (section) => ({ get: (name) => (section === "longhand" && name === "path" ? setting : undefined) }),
      createFileSystemWatcher: (glob) => ({ glob }),
      onDidChangeConfiguration: (listener) => ((onChange = listener), { dispose() {} }),
    },
    window: {
      showWarningMessage: async (message) => (seen.warnings.push(message), answer),
      showErrorMessage: async (message) => seen.errors.push(message),
    },
    commands: {
      registerCommand: (name, run) => ((seen.commands[name] = run), { dispose() {} }),
      executeCommand: async (...what) => seen.run.push(what),
    },
  },
  "vscode-languageclient/node": {
    TransportKind: { stdio: 0 },
    LanguageClient: class {
      constructor(id, name, server, client) {
        Object.assign(this, { id, server, client });
      }
      async start() {
        seen.started.push(this);
      }
      async stop() {
        seen.stopped++;
      }
    },
  },
};
const load = Module._load;
Module._load = (name, ...rest) => stubs[name] || load(name, ...rest);

async function main() {
  const extension = require(path.resolve(process.argv[2]));
  const manifest = require(path.resolve(process.argv[2], "../../package.json"));
  const context = { subscriptions: [] };
  const settled = () => new Promise((done) => setTimeout(done, 20));

  extension.activate(context);
  await settled();
  assert.deepStrictEqual(seen.warnings, []);
  assert.strictEqual(seen.started.length, 1);
  assert.deepStrictEqual(seen.started[0].server, { command: setting, args: ["lsp"], transport: 0 });
  assert(seen.started[0].client.documentSelector.every((one) => one.language === manifest.contributes.languages[0].id));
  assert.deepStrictEqual(Object.keys(seen.commands), manifest.contributes.commands.map((one) => one.command));

  setting = "/no/such/program";
  answer = "Open Settings";
  await onChange({ affectsConfiguration: (name) => name === "longhand.path" });
  assert.strictEqual(seen.stopped, 1);
  assert.strictEqual(seen.started.length, 1);
  assert.match(seen.warnings[0], /no\/such\/program.*ENOENT.*not checked.*longhand\.path/s);
  assert.deepStrictEqual(seen.run, [["workbench.action.openSettings", "longhand.path"]]);
  assert("longhand.path" in manifest.contributes.configuration.properties);

  setting = process.execPath;
  await seen.commands["longhand.restart"]();
  assert.strictEqual(seen.started.length, 2);
  await extension.deactivate();
  assert.strictEqual(seen.stopped, 2);
  assert.deepStrictEqual(seen.errors, []);
}

main().catch((failed) => {
  console.error(failed);
  process.exit(1);
});
