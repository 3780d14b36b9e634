// build: runs the built functions.js the way the poorest host would: in an engine of its own that has a global
// CustomFunctions and nothing else, and where making code from text is off.

import vm from "node:vm";

export type BuiltFunction = (...args: any[]) => any[][];

export interface BuiltError {
  readonly code: string;
  readonly message?: string;
}

/** The functions that the script registers, by id. */
export function runFunctionsScript(script: string): Map<string, BuiltFunction> {
  const functions = new Map<string, BuiltFunction>();
  const ErrorCode = { invalidValue: "#VALUE!", notAvailable: "#N/A" };
  class BuiltFunctionError implements BuiltError {
    constructor(
      readonly code: string,
      readonly message?: string,
    ) {}
  }
  const associate = (id: string, call: BuiltFunction) => {
    if (functions.has(id)) throw new Error(`functions.js registers ${id} twice`);
    // An error that is all of a result is thrown to the host, which shows it in the cell.
    functions.set(id, (...args) => {
      try {
        return call(...args);
      } catch (thrown) {
        if (thrown instanceof BuiltFunctionError) return [[thrown]];
        throw thrown;
      }
    });
  };
  const host = { CustomFunctions: { Error: BuiltFunctionError, ErrorCode, associate } };
  const context = vm.createContext(host, { codeGeneration: { strings: false, wasm: false } });
  new vm.Script(script, { filename: "functions.js" }).runInContext(context);
  return functions;
}
