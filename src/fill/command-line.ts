// fill: what a user asks for on the command line.

import { parseArgs } from "node:util";
import { Refusal } from "../workbook/workbook.ts";

export const usage = `Fills in the results of worksheet functions without a spreadsheet program.

  npm run fill -- IN.xlsx [OUT.xlsx]        a workbook; without OUT.xlsx the file itself
  npm run fill -- FOLDER [OUTFOLDER]        every .xlsx and .xlsm file in a folder
  npm run fill -- IN.csv [OUT.csv] --formula "rpm=REAM.RPM(speed,diameter)"
                                            adds a column; names are those of the header row, in [ ] if they
                                            are no plain words; several columns: "lower,upper=REAM.LIMITS(callout)"

  --own-formulas   makes a copy that computes without the functions: each becomes the spreadsheet's own formula, or a
                   value where there is none; OUT must be another file
  --formula TEXT   may be given several times, later ones may use the columns of earlier ones
  --units in       "mm" or "in" for functions in CSV formulas that are not told
  --json           writes the report for machines on the standard output
  --help           this page

Ends with 0 if all is well, with 1 if cells are in error or could not be computed, with 2 if nothing was read or written.`;

export interface Order {
  readonly input: string;
  readonly output: string | undefined;
  readonly formulas: readonly string[];
  readonly units: "mm" | "in" | undefined;
  readonly json: boolean;
  readonly ownFormulas: boolean;
}

export function readOrder(args: readonly string[]): Order | "help" {
  let parsed: ReturnType<typeof parse>;
  try {
    parsed = parse(args);
  } catch (error) {
    throw new Refusal(`${(error as Error).message.split(". ")[0]}; --help tells how the command is used`);
  }
  const { values, positionals } = parsed;
  if (values.help) return "help";
  const [input, output, ...more] = positionals;
  if (input === undefined || more.length > 0)
    throw new Refusal(
      `${input === undefined ? "no file is named" : `"${more[0]}" is one file too many`}; --help tells how the command is used`,
    );
  const { units } = values;
  if (units !== undefined && units !== "mm" && units !== "in")
    throw new Refusal(`--units is "${units}": give mm or in`);
  return {
    input,
    output,
    formulas: values.formula ?? [],
    units,
    json: values.json ?? false,
    ownFormulas: values["own-formulas"] ?? false,
  };
}

function parse(args: readonly string[]) {
  return parseArgs({
    args: [...args],
    allowPositionals: true,
    options: {
      formula: { type: "string", multiple: true },
      units: { type: "string" },
      json: { type: "boolean" },
      "own-formulas": { type: "boolean" },
      help: { type: "boolean", short: "h" },
    },
  });
}
