// tests: works out a formula of an example as a sheet would, and reads what stands behind it.

import { type ExampleCall, literal, readCall, tokensOf } from "../../src/build/example-call.ts";
import { associated } from "./custom-functions.ts";
import { sheet } from "./sheet.ts";

export interface Call {
  readonly id: string;
  readonly args: readonly unknown[];
}

/** `=REAM.RPM(15, , {1;2})` as the id and the arguments, calls inside worked out, undefined where one is left out. */
export function readFormula(formula: string): Call {
  return workedOut(readCall(formula));
}

function workedOut({ id, args }: ExampleCall): Call {
  if (!associated.has(id)) throw new Error(`no function ${id}`);
  const values = args.map((arg) => {
    if (typeof arg !== "object" || Array.isArray(arg)) return arg;
    const inner = workedOut(arg);
    return sheet(inner.id, ...inner.args);
  });
  return { id, args: values };
}

/** Cells as an example writes them: a row's apart by commas, rows by semicolons. */
export function readResult(result: string): string[][] {
  const rows: string[][] = [[]];
  for (const token of tokensOf(result)) {
    if (token === ";") rows.push([]);
    else if (token !== ",") rows.at(-1)!.push(token);
  }
  return rows;
}

/** Whether a cell is what an example writes, a number to the digits written. */
export function isAsWritten(cell: unknown, written: string): boolean {
  if (written.startsWith("#")) return (cell as { code?: string }).code === written;
  if (written.startsWith('"') || written === "TRUE" || written === "FALSE") return cell === literal(written);
  const decimals = written.split(".")[1]?.length ?? 0;
  return typeof cell === "number" && Math.abs(cell - Number(written)) <= 0.5 * 10 ** -decimals * (1 + 1e-9);
}
