// workbook: errors as the browser workbook's grid writes them and as a file does. The one table.

const fileCodes: ReadonlyMap<string, string> = new Map([
  ["#REF", "#REF!"],
  ["#ERROR", "#VALUE!"],
  ["#BAD_EXPR", "#NAME?"],
  ["#CYCLE", "#REF!"],
]);
const known = new Set(["#N/A", "#VALUE!", "#DIV/0!", "#NUM!", "#NULL!", "#NAME?", "#SPILL!", "#REF!"]);

/** The error in a file, of one in the grid. */
export const fileError = (code: string): string =>
  fileCodes.get(code) ?? (known.has(code) ? code : "#VALUE!");

/** The error in the grid, of one in a file. */
export const gridError = (code: string): string => (code === "#REF!" ? "#REF" : code);
