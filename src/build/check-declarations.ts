// build: what Microsoft's generator accepts in silence and Excel does not forgive. Each fault names file and function.

import type { Declaration } from "./declarations.ts";

/** Excel's limits for texts and names, as in the schema of the unified manifest. */
const longestDescription = 1024;
const longestParameterText = 512;

/** The faults of one function by itself, without the name. */
function faultsOf(declaration: Declaration): string[] {
  const { id, parameters, examples, row } = declaration;
  const faults = [...declaration.faults];
  const ask = (holds: boolean, fault: string) => {
    if (!holds) faults.push(fault);
  };
  ask(/^[A-Z][A-Z0-9._]*$/.test(id), `id "${id}" must be capitals, digits, "_" and ".", a letter first`);
  ask(id.length >= 3 && id.length <= 64, `id "${id}" must have 3 to 64 characters`);
  ask(!isCellAddress(id), `id "${id}" reads as a cell address`);
  ask(declaration.description !== "", "no description");
  ask(
    declaration.description.length <= longestDescription,
    `description over ${longestDescription} characters`,
  );
  ask(declaration.returns !== "", "no @returns");
  ask(examples.length > 0, "no @example");
  ask(declaration.sources.length > 0, "no @see sources:");
  ask(row.length !== 1, "@row names one cell: a row function gives several");
  for (const { formula, result } of examples) {
    ask(formula.startsWith("=") && result !== "", `example "${formula}" must read =FORMULA // result`);
    ask(formula.includes(`REAM.${id}(`), `example "${formula}" does not call REAM.${id}`);
  }
  parameters.forEach((parameter, index) => {
    const { name, description, optional, repeating } = parameter;
    const before = parameters[index - 1];
    ask(description !== "", `@param ${name} has no text`);
    ask(
      description.length <= longestParameterText,
      `@param ${name} is over ${longestParameterText} characters`,
    );
    ask(optional || repeating || !before?.optional, `required parameter ${name} after an optional one`);
    ask(!repeating || index === parameters.length - 1, `repeating parameter ${name} is not the last`);
  });
  return faults;
}

/** Every fault of the declarations, each as "file: FUNCTION: fault". Empty when all is well. */
export function declarationFaults(declarations: readonly Declaration[]): string[] {
  const found = declarations.flatMap((declaration) =>
    faultsOf(declaration).map((fault) => `${declaration.file}: ${declaration.id}: ${fault}`),
  );
  const places = new Map<string, Declaration>();
  const exportNames = new Map<string, Declaration>();
  for (const declaration of declarations) {
    const stored = storedName(declaration.id);
    const other = places.get(stored);
    if (other) {
      const how = other.id === declaration.id ? "is declared twice" : `is stored in a file as ${other.id} is`;
      found.push(`${declaration.file}: ${declaration.id}: ${how}, see ${other.file}`);
    }
    places.set(stored, declaration);
    const sameExport = exportNames.get(`${declaration.file}#${declaration.exportName}`);
    if (sameExport)
      found.push(`${declaration.file}: ${declaration.id}: function name used by ${sameExport.id}`);
    exportNames.set(`${declaration.file}#${declaration.exportName}`, declaration);
  }
  return found;
}

/** The name under which Excel keeps a function in a file: dots become underscores. */
export function storedName(id: string): string {
  return id.toUpperCase().replaceAll(".", "_");
}

/** Whether Excel would take a name for a cell: A1 to XFD1048576, or R1C1 and its parts. */
export function isCellAddress(name: string): boolean {
  if (/^(R\d*)?(C\d*)?$/i.test(name)) return true;
  const match = /^([A-Z]{1,3})(\d{1,7})$/i.exec(name);
  if (!match) return false;
  const column = [...match[1].toUpperCase()].reduce((sum, letter) => sum * 26 + letter.charCodeAt(0) - 64, 0);
  const row = Number(match[2]);
  return column <= 16384 && row >= 1 && row <= 1048576;
}
