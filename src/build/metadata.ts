// build: functions.json, what Excel reads before it loads any code. Microsoft's generator writes it; what the
// generator lets pass is checked here.

import { generateCustomFunctionsMetadata } from "custom-functions-metadata";
import { declarationFaults } from "./check-declarations.ts";
import { argumentName, type Declaration, functionFiles, readDeclarations } from "./declarations.ts";
import { addressSetting } from "./manifest.ts";
import { functionsFolder, projectFolder } from "./paths.ts";

export interface MetadataParameter {
  name: string;
  description?: string;
  type?: string;
  dimensionality?: string;
  optional?: boolean;
  repeating?: boolean;
}

export interface MetadataFunction {
  id: string;
  name: string;
  description?: string;
  helpUrl?: string;
  parameters: MetadataParameter[];
  result: { type?: string; dimensionality?: string };
}

export interface Metadata {
  /** One error cell in a column must not spoil the call: errors come in as values. */
  allowErrorForDataTypeAny: true;
  functions: MetadataFunction[];
}

/**
 * The metadata of every declared function, in alphabetical order, with its help at `address`; throws with all
 * faults, a line each.
 */
export async function buildMetadata(folder = functionsFolder, address = addressSetting()): Promise<Metadata> {
  const declarations = readDeclarations(folder);
  const faults = declarationFaults(declarations);
  const functions: MetadataFunction[] = [];
  for (const file of functionFiles(folder)) {
    // One call per file: the generator skips what follows a faulty file and names none.
    const generated = await generateCustomFunctionsMetadata(file);
    faults.push(...generated.errors.map((error) => `${shortPath(file)}: ${error}`));
    if (generated.metadataJson) functions.push(...JSON.parse(generated.metadataJson).functions);
  }
  const missing = declarations.filter(({ id }) => !functions.some((made) => made.id === id));
  faults.push(...missing.map(({ file, id }) => `${file}: ${id}: left out by the generator`));
  if (declarations.length === 0) faults.push("no function is declared");
  if (faults.length > 0) throw new Error([...new Set(faults)].join("\n"));

  const byId = new Map(declarations.map((declaration) => [declaration.id, declaration]));
  return {
    allowErrorForDataTypeAny: true,
    functions: functions
      .map((made) => ({
        ...made,
        description: fullDescription(byId.get(made.id)!),
        helpUrl: `${address}/reference/${made.id}.html`,
        parameters: made.parameters.map((one) => ({ ...one, name: argumentName(one.name) })),
      }))
      .sort((a, b) => (a.id < b.id ? -1 : 1)),
  };
}

/** What Excel shows beside the name. Of a row function also what its cells are, and how to take one in a table. */
function fullDescription(declaration: Declaration): string {
  const { id, description, parameters, row } = declaration;
  if (row.length === 0) return description;
  const required = parameters.filter(
    ({ optional, repeating }, index) => index === 0 || !(optional || repeating),
  );
  const columns = required.map(({ name }) => `[@${capitalised(name)}]`).join(",");
  return `${description} Cells: ${row.join(", ")}. Inside a table: INDEX(REAM.${id}(${columns}),1,2).`;
}

const capitalised = (name: string) => name.charAt(0).toUpperCase() + name.slice(1);

const shortPath = (path: string) => path.replace(projectFolder, "");
