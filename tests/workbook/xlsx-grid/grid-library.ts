// tests: the grid's library in Node, with two functions of ours whose results are plain to see.

import { JSDOM } from "jsdom";
import { registerFunctions } from "../../../src/browser/register-functions.ts";
import type { Metadata, MetadataFunction } from "../../../src/build/metadata.ts";
import type { GridLibrary } from "../../../src/workbook/xlsx-grid/library.ts";
import { library } from "../../support/grid.ts";

const { window } = new JSDOM("");
// Each document that is read adds listeners to its window, ever more slowly; nobody clicks here.
window.addEventListener = () => {};
Object.assign(globalThis, { DOMParser: window.DOMParser, XMLSerializer: window.XMLSerializer });

class WorksheetError {
  constructor(
    readonly code: string,
    readonly message?: string,
  ) {}
}

const parameter = (name: string) => ({ name, description: `${name}, mm` });
const described = (id: string, name: string, ...names: string[]) =>
  ({ id, name, description: "Gives.", parameters: names.map(parameter), result: {} }) as MetadataFunction;

const each = (cells: any[][], call: (cell: any) => any) => cells.map((row) => row.map(call));

/** REAM.DOUBLE gives twice each cell, blanks as "", texts as an error; REAM.SAY.TEXT the texts in brackets. */
registerFunctions(
  {
    functions: [described("DOUBLE", "DOUBLE", "number"), described("SAYTEXT", "SAY.TEXT", "text")],
  } as unknown as Metadata,
  new Map([
    [
      "DOUBLE",
      (cells: any[][]) =>
        each(cells, (cell) => {
          if (cell === null || cell === "") return "";
          return typeof cell === "number"
            ? 2 * cell
            : new WorksheetError("#VALUE!", `"${cell}" is no number.`);
        }),
    ],
    ["SAYTEXT", (cells: any[][]) => each(cells, (cell) => `[${cell}]`)],
  ]),
  library.registries as any,
  WorksheetError,
);

export const functionNames = ["DOUBLE", "SAY.TEXT"];
export const gridLibrary: GridLibrary = library;
