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

// Air at 25 °C and 80 %: 21.309397163661785 °C is printed in the source comments of PsychroLib, the open library of
// Meyer and Thevenard (JOSS 4(33), 1137, 2019), which solves the same ASHRAE equations. Tolerance 1e-6 K: both
// iterate, and the figure must not depend on how far.
const expected = 21.309397163661785;
const found = exports.dew_point_c(25, 80);
if (!(Math.abs(found - expected) < 1e-6)) {
  console.error(`The dew point of air at 25 °C and 80 % is ${found} °C here, but it must be ${expected} °C.`);
  process.exit(1);
}
console.log(`Dew point at 25 °C and 80 %: ${found.toFixed(3)} °C`);
