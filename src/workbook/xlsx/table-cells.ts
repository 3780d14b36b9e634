// workbook: what a table says of its cells where they are typed over: the headers of its columns, and its last row.

import { Refusal } from "../workbook.ts";
import { cellName } from "./addresses.ts";
import { mapElements } from "./map-elements.ts";
import type { PackageParts } from "./package.ts";
import type { CellValue } from "./read-sheet.ts";
import { partsWithFormulas, type Table, type WorkbookParts } from "./workbook-parts.ts";
import { type NewCell, placeOf, withAttribute } from "./write-sheet.ts";
import { escapeAttribute, escapeXml } from "./xml-text.ts";

export interface WithTables {
  readonly cells: ReadonlyMap<number, NewCell>;
  /** Tables that say another thing now, by their parts. */
  readonly parts: ReadonlyMap<string, string>;
}

/**
 * New cells of a sheet as its tables need them, and those tables. Undefined if a formula calls a column by a header that
 * is another now.
 * @throws Refusal for a header that no table may have
 */
export function withTables(
  file: PackageParts,
  { sheets, tables, main }: WorkbookParts,
  sheet: number,
  given: ReadonlyMap<number, NewCell>,
): WithTables | undefined {
  const cells = new Map(given);
  const parts = new Map<string, string>();
  for (const table of tables) {
    if (table.sheet !== sheet) continue;
    const { box, part } = table;
    const text = file.read(part);
    let now = text;
    if (table.headerRows === 1) {
      const headers = headersNow(table, cells, sheets[sheet].name);
      const others = table.columns.filter((name, i) => headers[i] !== name);
      if (others.some((name) => isColumnNamed(file, main, name))) return undefined;
      if (others.length > 0) now = withHeaders(now, headers);
      headers.forEach((header, i) => {
        const place = placeOf(box.top, box.left + i);
        if (cells.has(place)) cells.set(place, { ...cells.get(place)!, value: header });
      });
    }
    if (table.totalsRows > 0)
      now = mapColumns(now, (tag, i) => {
        const cell = cells.get(placeOf(box.bottom, box.left + i));
        return cell && totalNow(tag, cell);
      });
    if (now !== text) parts.set(part, now);
  }
  return { cells, parts };
}

function headersNow(table: Table, cells: ReadonlyMap<number, NewCell>, sheet: string): string[] {
  const { box, columns } = table;
  const typed = columns.map((_, i) => cells.get(placeOf(box.top, box.left + i)));
  if (typed.every((cell) => cell === undefined)) return [...columns];
  const texts = columns.map((name, i) => (typed[i] ? textOf(typed[i]) : name));
  refuseHeaders(texts, (i) => cellName(box.top, box.left + i), sheet);
  return [...texts];
}

const textOf = ({ value, formula }: NewCell): string | undefined => (formula ? undefined : headerText(value));

/** A table takes what stands over its columns as a text. */
export const headerText = (value: CellValue): string | undefined =>
  value === null || typeof value === "object"
    ? undefined
    : typeof value === "boolean"
      ? String(value).toUpperCase()
      : String(value);

/** Whether each is a text of its own. @param texts undefined for a cell that has none, or a formula */
export const areHeaders = (texts: readonly (string | undefined)[]): boolean =>
  texts.every((text) => text !== undefined && text.trim() !== "") &&
  new Set(texts.map((text) => text!.toUpperCase())).size === texts.length;

/** @throws Refusal unless each is a text of its own */
function refuseHeaders(
  texts: readonly (string | undefined)[],
  cellOf: (column: number) => string,
  sheet: string,
): asserts texts is readonly string[] {
  const seen = new Map<string, string>();
  const rule = "each column of a table needs a header of its own, a text and no formula";
  texts.forEach((text, i) => {
    const cell = cellOf(i);
    if (text === undefined || text.trim() === "") throw new Refusal(`"${sheet}" ${cell}: ${rule}`);
    const other = seen.get(text.toUpperCase());
    if (other !== undefined) throw new Refusal(`"${sheet}" ${cell} has the same text as ${other}: ${rule}`);
    seen.set(text.toUpperCase(), cell);
  });
}

/** The columns of a table with other headers. */
export const withHeaders = (table: string, headers: readonly string[]): string =>
  mapColumns(table, (tag, i) => [withAttribute(tag, "name", inAttribute(headers[i])), undefined]);

const inAttribute = (text: string): string => escapeAttribute(text).replace(/\r?\n/g, "_x000a_");

/** The start tag of a column whose last cell is another now, and what stands in it. */
function totalNow(tag: string, { value, formula }: NewCell): [tag: string, inside: string] {
  const bare = ["totalsRowFunction", "totalsRowLabel"].reduce(
    (own, name) => withAttribute(own, name, undefined),
    tag,
  );
  if (formula)
    return [
      withAttribute(bare, "totalsRowFunction", "custom"),
      `<totalsRowFormula>${escapeXml(formula.text)}</totalsRowFormula>`,
    ];
  return [typeof value === "string" ? withAttribute(bare, "totalsRowLabel", inAttribute(value)) : bare, ""];
}

/**
 * @param change the start tag of a column, and the formula of its last row if that is another; undefined leaves it
 */
function mapColumns(
  table: string,
  change: (tag: string, column: number) => [tag: string, total: string | undefined] | undefined,
): string {
  let column = -1;
  return mapElements(table, "tableColumn", (element) => {
    column++;
    const whole = table.slice(element.start, element.end);
    const now = change(element.tag, column);
    if (!now) return whole;
    const [tag, total] = now;
    if (total === undefined) return tag + whole.slice(element.tag.length);
    const inside = mapElements(element.inside, "totalsRowFormula", () => "") + total;
    const name = /^<([^\s/>]+)/.exec(tag)![1];
    const open = tag.replace(/\s*\/?>$/, "");
    return inside === "" ? `${open}/>` : `${open}>${inside}</${name}>`;
  });
}

/** Whether a formula anywhere in the file calls a column by its header. */
export function isColumnNamed(file: PackageParts, main: string, header: string): boolean {
  const forms = [header, header.replace(/['#[\]@]/g, "'$&")].map((text) => escapeXml(text).toUpperCase());
  return partsWithFormulas(file, main).some((name) => {
    const text = file.read(name).toUpperCase();
    return forms.some((form) => ["[", "@", "@["].some((mark) => text.includes(`${mark}${form}]`)));
  });
}
