// Asks the WebAssembly core for one answer and checks it.   node run.mjs answer.wasm
import {readFile} from 'node:fs/promises';

const module = await WebAssembly.compile(await readFile(process.argv[2]));

// A pure core calls nothing outside; whatever the C library still names is answered with a refusal.
const imports = {};
for (const {module: from, name} of WebAssembly.Module.imports(module)) {
  (imports[from] ??= {})[name] = () => { throw new Error(`the core called ${from}.${name}, but it must call nothing outside`); };
}
const {exports} = await WebAssembly.instantiate(module, imports);
exports._initialize();

const expected = 160;
const found = exports.fahrenheit_of(71 + 1 / 9);
if (!(Math.abs(found - expected) < 1e-9)) {
  console.error(`71.11 °C is ${found} °F here, but it must be ${expected} °F.`);
  process.exit(1);
}
console.log(`71.11 °C is ${found.toFixed(3)} °F`);
