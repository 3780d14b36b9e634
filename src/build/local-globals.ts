// build: gives a script its standard globals as local names. In a sandboxed engine each look-up of a global such as
// Math runs through the host and costs more than the calculation around it.

const STANDARD = [
  ...[
    "Array",
    "BigInt",
    "Error",
    "Float64Array",
    "Infinity",
    "JSON",
    "Map",
    "Math",
    "NaN",
    "Number",
    "Object",
  ],
  ...["Promise", "Reflect", "RegExp", "Set", "String", "Symbol", "Uint8Array", "isFinite", "isNaN"],
];

export function withLocalGlobals(script: string): string {
  const used = STANDARD.filter((name) => new RegExp(`(?<![\\w$.])${name}(?![\\w$])`).test(script));
  return `(globals=>{const{${used.join()}}=globals;${script}})(globalThis);\n`;
}
