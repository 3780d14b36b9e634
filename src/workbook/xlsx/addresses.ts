// workbook: cell addresses as a file writes them, and as numbers; rows and columns count from 0.

/** A rectangle of cells on a sheet that is understood; `bottom` and `right` belong to it. */
export interface Box {
  readonly top: number;
  readonly left: number;
  readonly bottom: number;
  readonly right: number;
}

export const LAST_ROW = 1_048_575;
export const LAST_COLUMN = 16_383;

export const columnName = (column: number): string =>
  column < 26
    ? String.fromCharCode(65 + column)
    : columnName(Math.floor(column / 26) - 1) + String.fromCharCode(65 + (column % 26));

function columnNumber(letters: string): number {
  let number = 0;
  for (let i = 0; i < letters.length; i++) number = number * 26 + (letters.charCodeAt(i) & 31);
  return number - 1;
}

export const cellName = (row: number, column: number): string => `${columnName(column)}${row + 1}`;

/** `B7`, or `B7:D9` for several cells. */
export const boxName = ({ top, left, bottom, right }: Box): string =>
  top === bottom && left === right
    ? cellName(top, left)
    : `${cellName(top, left)}:${cellName(bottom, right)}`;

export const contains = (box: Box, row: number, column: number): boolean =>
  row >= box.top && row <= box.bottom && column >= box.left && column <= box.right;

/** One corner of a reference, or a whole column or row, with what its dollar signs say. */
export interface Corner {
  readonly row: number | undefined;
  readonly column: number | undefined;
  readonly fixedRow: boolean;
  readonly fixedColumn: boolean;
}

const corner = /^(\$?)([A-Za-z]{0,3})(\$?)([1-9]\d{0,6}|)$/;

/** `B7`, `$B7`, `B`, `$7`; undefined if it is none of these or lies outside a sheet. */
export function readCorner(text: string): Corner | undefined {
  const found = corner.exec(text);
  if (!found) return undefined;
  let [, first, letters, second, digits] = found;
  if (letters === "" && digits === "") return undefined;
  // `$7`: the sign before no letters belongs to the row.
  if (letters === "") {
    if (second !== "") return undefined;
    second = first;
    first = "";
  } else if (digits === "" && second !== "") return undefined;
  const column = letters === "" ? undefined : columnNumber(letters);
  const row = digits === "" ? undefined : Number(digits) - 1;
  if ((column ?? 0) > LAST_COLUMN || (row ?? 0) > LAST_ROW) return undefined;
  return { row, column, fixedRow: second === "$", fixedColumn: first === "$" };
}

/** `B7` as numbers, or undefined. */
export function readCell(text: string): { row: number; column: number } | undefined {
  const found = readCorner(text);
  return found?.row === undefined || found.column === undefined
    ? undefined
    : { row: found.row, column: found.column };
}

/** The rectangle between two corners; undefined if a whole column meets a cell. */
export function boxBetween(one: Corner, other: Corner): Box | undefined {
  if ((one.row === undefined) !== (other.row === undefined)) return undefined;
  if ((one.column === undefined) !== (other.column === undefined)) return undefined;
  const rows = [one.row ?? 0, other.row ?? LAST_ROW] as const;
  const columns = [one.column ?? 0, other.column ?? LAST_COLUMN] as const;
  return {
    top: Math.min(...rows),
    bottom: Math.max(...rows),
    left: Math.min(...columns),
    right: Math.max(...columns),
  };
}

/** `B7` or `B7:D9`, as a `ref` attribute gives it; undefined if it is neither. */
export function readBox(text: string): Box | undefined {
  const [first, second = first, ...more] = text.split(":").map(readCorner);
  if (!first || !second || more.length > 0) return undefined;
  if (first.row === undefined || first.column === undefined) return undefined;
  return boxBetween(first, second);
}
