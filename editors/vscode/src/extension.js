// Starts `longhand lsp` for plans, and says so when the program is not there.
"use strict";

const vscode = require("vscode");
const { LanguageClient, TransportKind } = require("vscode-languageclient/node");
const { spawnSync } = require("child_process");

let client;

/** The program of the settings, or why it cannot be run. */
function program() {
  const path = vscode.workspace.getConfiguration("longhand").get("path") || "longhand";
  const tried = spawnSync(path, ["--version"], { timeout: 10000 });
  return { path, missing: tried.error ? tried.error.code || tried.error.message : undefined };
}

async function start() {
  const { path, missing } = program();
  if (missing) {
    const settings = "Open Settings";
    const chosen = await vscode.window.showWarningMessage(
      `Longhand: the program "${path}" cannot be run (${missing}). Plans are coloured, but not checked. ` +
        "Build it with: go build -o longhand ./cmd/longhand, then put it on the path or set longhand.path.",
      settings
    );
    if (chosen === settings) {
      await vscode.commands.executeCommand("workbench.action.openSettings", "longhand.path");
    }
    return;
  }
  client = new LanguageClient(
    "longhand",
    "Longhand",
    { command: path, args: ["lsp"], transport: TransportKind.stdio },
    {
      documentSelector: [
        { scheme: "file", language: "longhand" },
        { scheme: "untitled", language: "longhand" },
      ],
      synchronize: { fileEvents: vscode.workspace.createFileSystemWatcher("**/*.take") },
    }
  );
  await client.start();
}

async function stop() {
  const running = client;
  client = undefined;
  if (running) {
    await running.stop();
  }
}

async function restart() {
  await stop();
  await start();
}

function activate(context) {
  context.subscriptions.push(
    vscode.commands.registerCommand("longhand.restart", restart),
    vscode.workspace.onDidChangeConfiguration((change) => {
      if (change.affectsConfiguration("longhand.path")) {
        return restart();
      }
    })
  );
  // The message about a missing program waits for an answer; starting does not.
  start().catch((failed) => vscode.window.showErrorMessage(`Longhand: ${failed.message}`));
}

module.exports = { activate, deactivate: stop };
