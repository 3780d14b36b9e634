// workbook: tables as the grid's library exports them, with headers that are texts, each of its own, as spreadsheet
// programs want them: in the cells and in the table the same. Other tables are left out.

import type { Model } from "@odoo/o-spreadsheet";
import { type Box, boxName, readBox } from "../xlsx/addresses.ts";
import { mapElements, mapTags } from "../xlsx/map-elements.ts";
import { CONTENT_TYPES } from "../xlsx/package.ts";
import { areHeaders, headerText, withHeaders } from "../xlsx/table-cells.ts";
import { placeOf, withAttribute } from "../xlsx/write-sheet.ts";
import { attribute, elements } from "../xlsx/xml-text.ts";

interface Position {
  readonly sheetId: string;
  readonly row: number;
  readonly col: number;
}

export class ExportedTables {
  /** Tables that no file can have, `Jobs A1:C5`. */
  readonly leftOut: string[] = [];
  /** Headers by the ids of sheets and the places of cells. */
  private readonly headers = new Map<string, Map<number, string>>();
  /** Of each table in the order of the exporter's numbers; null for one that is left out. */
  private readonly byNumber: (readonly string[] | null)[] = [];

  /** @param sheetIds the sheets that are written; all of them if it is left out */
  constructor(
    private readonly model: Model,
    sheetIds: readonly string[] = model.getters.getSheetIds(),
  ) {
    const { getters } = model as any;
    for (const sheetId of getters.getSheetIds() as string[])
      for (const { range, config } of getters.getCoreTables(sheetId)) {
        const box = range.zone as Box;
        // The exporter leaves out a table of a single row.
        if (box.bottom === box.top) continue;
        const hasHeaders = config.numberOfHeaders === 1;
        const texts = hasHeaders ? this.textsOver(sheetId, box) : [];
        const isSound = areHeaders(texts) && config.numberOfHeaders <= 1;
        this.byNumber.push(isSound ? (texts as string[]) : null);
        if (!sheetIds.includes(sheetId)) continue;
        if (isSound) this.keep(sheetId, box, texts as string[]);
        else this.leftOut.push(`${getters.getSheetName(sheetId)} ${boxName(box)}`);
      }
  }

  private textsOver(sheetId: string, { top, left, right }: Box): (string | undefined)[] {
    return Array.from({ length: right - left + 1 }, (_, i) => {
      const position = { sheetId, row: top, col: left + i };
      const { value, type } = (this.model as any).getters.getEvaluatedCell(position);
      const isFormula = (this.model as any).getters.getCell(position)?.isFormula === true;
      return isFormula || type === "error" ? undefined : headerText(value);
    });
  }

  private keep(sheetId: string, { top, left }: Box, texts: readonly string[]): void {
    const own = this.headers.get(sheetId) ?? new Map<number, string>();
    this.headers.set(sheetId, own);
    texts.forEach((text, i) => {
      own.set(placeOf(top, left + i), text);
    });
  }

  /** What stands over a column of a table; undefined for any other cell. */
  header({ sheetId, row, col }: Position): string | undefined {
    return this.headers.get(sheetId)?.get(placeOf(row, col));
  }

  private tableIn(name: string): readonly string[] | null | undefined {
    const number = /tables\/table(\d+)\.xml$/.exec(name)?.[1];
    return number === undefined ? undefined : this.byNumber[Number(number) - 1];
  }

  isLeftOut(name: string): boolean {
    return this.tableIn(name) === null;
  }

  /** A part of the package with the headers that cells have, and without the tables that are left out. */
  part(name: string, text: string): string {
    if (name === CONTENT_TYPES)
      return mapTags(text, "Override", (tag) =>
        this.isLeftOut(attribute(tag, "PartName") ?? "") ? undefined : tag,
      );
    if (name.endsWith(".rels"))
      return mapTags(text, "Relationship", (tag) =>
        this.isLeftOut(attribute(tag, "Target") ?? "") ? undefined : tag,
      );
    const headers = this.tableIn(name);
    const box = headers && readBox(attribute([...elements(text, "table")][0].tag, "ref") ?? "");
    return box && headers.length === box.right - box.left + 1 ? withHeaders(text, headers) : text;
  }

  /** A sheet without the tables that are left out. */
  sheet(text: string, relations: string | undefined): string {
    const gone = [...elements(relations ?? "", "Relationship")].flatMap(({ tag }) =>
      this.isLeftOut(attribute(tag, "Target") ?? "") ? (attribute(tag, "Id") ?? "") : [],
    );
    if (gone.length === 0) return text;
    return mapElements(text, "tableParts", ({ tag, inside }) => {
      const left = mapTags(inside, "tablePart", (part) =>
        gone.includes(attribute(part, "r:id") ?? "") ? undefined : part,
      );
      const count = [...elements(left, "tablePart")].length;
      return count === 0 ? "" : `${withAttribute(tag, "count", String(count))}${left}</tableParts>`;
    });
  }
}

/** For the person who is about to save. */
export const tablesLeftOut = (tables: readonly string[]): string[] =>
  tables.length === 0
    ? []
    : [
        `Tables without a text of its own over each column (${tables.slice(0, 8).join(", ")}): their cells stay`,
      ];
