// Prints, as JSON, the scopes that a TextMate grammar gives to each line of each
// file. Usage: node textmate.js GRAMMAR FILE...
// Needs vscode-textmate and vscode-oniguruma, the engine of editors.
"use strict";
const fs = require("fs");
const vsctm = require("vscode-textmate");
const oniguruma = require("vscode-oniguruma");

async function main([grammarPath, ...files]) {
  const wasm = fs.readFileSync(require.resolve("vscode-oniguruma/release/onig.wasm"));
  await oniguruma.loadWASM(wasm.buffer.slice(wasm.byteOffset, wasm.byteOffset + wasm.byteLength));
  const registry = new vsctm.Registry({
    onigLib: Promise.resolve({
      createOnigScanner: (sources) => new oniguruma.OnigScanner(sources),
      createOnigString: (text) => new oniguruma.OnigString(text),
    }),
    loadGrammar: async () => vsctm.parseRawGrammar(fs.readFileSync(grammarPath, "utf8"), grammarPath),
  });
  const grammar = await registry.loadGrammar("source.longhand");
  const out = files.map((file) => {
    let state = vsctm.INITIAL;
    return fs.readFileSync(file, "utf8").split("\n").map((line) => {
      const tokens = grammar.tokenizeLine(line, state);
      state = tokens.ruleStack;
      return tokens.tokens.map((t) => ({ start: t.startIndex, end: t.endIndex, scope: t.scopes[t.scopes.length - 1] }));
    });
  });
  process.stdout.write(JSON.stringify(out));
}

main(process.argv.slice(2)).catch((failed) => {
  console.error(failed);
  process.exit(1);
});
