// workbook: saves the browser workbook as an .xlsx file: styles, validation, conditional formats, charts and tables as
// the grid's library exports them; cells, formulas and defined names as a spreadsheet program stores them.

import type { Model } from "@odoo/o-spreadsheet";
import { strToU8, type Zippable, zipSync } from "fflate";
import { printSetupNow } from "../grid-print.ts";
import type { PrintSetup } from "../workbook.ts";
import type { MadeSheet, MadeSheets } from "../xlsx/add-sheets.ts";
import { boxName, cellName } from "../xlsx/addresses.ts";
import type { OtherPackage } from "../xlsx/adopt-parts.ts";
import { functionsIn } from "../xlsx/formula-tokens.ts";
import { pageSetupXml, printNamesXml, type SaidSetup, USUAL_SETUP_XML } from "../xlsx/page-setup.ts";
import type { CellValue } from "../xlsx/read-sheet.ts";
import { namespace, type StoredNames } from "../xlsx/stored-names.ts";
import { relationsPart } from "../xlsx/workbook-parts.ts";
import { elements, escapeXml } from "../xlsx/xml-text.ts";
import { fileError } from "./error-codes.ts";
import { ExportedTables, tablesLeftOut } from "./exported-tables.ts";
import { fileFormula, fillsOneCell, isForOthers } from "./grid-formulas.ts";
import { DAYS_TO_1904 } from "./imported-cells.ts";
import type { GridLibrary } from "./library.ts";
import { contentKey, type OpenedWorkbook } from "./open-file.ts";
import { type SavedCell, withSavedCells } from "./save-cells.ts";
import { spreadBox } from "./spread-box.ts";
import { isTextFormat, textOfCell } from "./text-cells.ts";
import { isUncomputed } from "./uncomputed.ts";

export interface SaveOptions {
  /** Values in place of formulas with functions of ours, and of what they fill. */
  readonly valuesOnly?: boolean;
  /** The file that the workbook was opened from. */
  readonly opened?: Pick<OpenedWorkbook, "valuesInFile">;
  /** Whether the file is to count dates from 1904. */
  readonly from1904?: boolean;
}

export interface SavedFile {
  readonly bytes: Uint8Array<ArrayBuffer>;
  readonly formulas: number;
  /** Formulas with functions that no other program has, and those that make no sense, saved as values. */
  readonly asValues: number;
}

export async function saveWorkbook(
  model: Model,
  library: GridLibrary,
  names: StoredNames,
  options: SaveOptions = {},
): Promise<SavedFile> {
  const files = await exportedFiles(model);
  const tables = new ExportedTables(model);
  const contents = new Map(files.map(({ path, content }) => [path, content]));
  const cells = new SavedCells(model, library, names, tables, options);
  const sheetIds = model.getters.getSheetIds();
  const packed: Zippable = {};
  let arrays = 0;
  const texts = new Map<string, string>();
  for (const { path, content, imageSrc } of files) {
    if (imageSrc !== undefined) packed[path] = bytesOfImage(imageSrc);
    if (content === undefined || tables.isLeftOut(path)) continue;
    const sheet = /^xl\/worksheets\/sheet(\d+)\.xml$/.exec(path);
    if (!sheet) {
      texts.set(path, path === "xl/styles.xml" ? valid(content) : tables.part(path, content));
      continue;
    }
    const relations = contents.get(relationsPart(path));
    const saved = withSavedCells(tables.sheet(content, relations), cells.on(sheetIds[Number(sheet[1])]));
    arrays += saved.arrays;
    const setup = printSetupNow(model, sheetIds[Number(sheet[1])]);
    texts.set(path, withPageSetup(valid(inOrder(saved.text)), setup));
  }
  const workbook = texts.get("xl/workbook.xml");
  if (workbook !== undefined) texts.set("xl/workbook.xml", withNames(workbook, model));
  if (arrays === 0) withoutMetadata(texts);
  for (const [path, text] of texts) packed[path] = strToU8(text);
  return { bytes: zipSync(packed), formulas: cells.formulas, asValues: cells.asValues };
}

const exportedFiles = async (model: Model) =>
  ((await model.exportXLSX()) as unknown as { files: readonly ExportedFile[] }).files;

interface ExportedFile {
  readonly path: string;
  readonly content?: string;
  readonly imageSrc?: string;
}

/** A sheet that is to be written whole into the file that was opened. */
export interface WantedSheet {
  readonly id: string;
  /** The place of the sheet of the file that it is, and how it is printed; undefined for a sheet that is new. */
  readonly instead?: { readonly place: number; readonly setup: SaidSetup };
}

/** Some sheets as they are to stand in a file, with the package of the grid's exporter that they come from. */
export async function exportedSheets(
  model: Model,
  library: GridLibrary,
  names: StoredNames,
  wanted: readonly WantedSheet[],
  opened: Pick<OpenedWorkbook, "valuesInFile" | "parts">,
): Promise<MadeSheets & { readonly losses: readonly string[] }> {
  const files = new Map((await exportedFiles(model)).map((file) => [file.path, file]));
  const tables = new ExportedTables(
    model,
    wanted.map(({ id }) => id),
  );
  const from: OtherPackage = {
    names: [...files.keys()],
    has: (name) => files.has(name),
    read: (name) => tables.part(name, valid(files.get(name)!.content!)),
    picture(name) {
      const source = files.get(name)!.imageSrc;
      return source === undefined ? undefined : bytesOfImage(source);
    },
  };
  const cells = new SavedCells(model, library, names, tables, { opened, from1904: opened.parts.from1904 });
  const sheets = wanted.map(({ id, instead }): MadeSheet => {
    const part = `xl/worksheets/sheet${model.getters.getSheetIds().indexOf(id as never)}.xml`;
    const relations = files.get(relationsPart(part))?.content;
    const { text } = withSavedCells(tables.sheet(files.get(part)!.content!, relations), cells.on(id));
    const sound = valid(inOrder(text));
    const name = model.getters.getSheetName(id as never);
    if (instead) {
      const { place, setup } = instead;
      return { name, part, text: withSetup(sound, setup.xml, setup.isFitted), instead: place };
    }
    const setup = printSetupNow(model, id);
    return {
      name,
      part,
      text: withPageSetup(sound, setup),
      ...(setup ? { printNames: (at: number) => printNamesXml(name, at, setup) } : {}),
    };
  });
  return { sheets, styles: from.read("xl/styles.xml"), from, losses: tablesLeftOut(tables.leftOut) };
}

class SavedCells {
  formulas = 0;
  asValues = 0;

  constructor(
    private readonly model: Model,
    private readonly library: GridLibrary,
    private readonly names: StoredNames,
    private readonly tables: ExportedTables,
    private readonly options: SaveOptions,
  ) {}

  on(sheetId: string): (row: number, column: number) => SavedCell | undefined {
    return (row, col) => this.at({ sheetId, row, col });
  }

  private at(position: { sheetId: string; row: number; col: number }): SavedCell | undefined {
    const { getters } = this.model;
    const cell = getters.getCell(position);
    const header = this.tables.header(position);
    if (header !== undefined) return { value: header };
    if (cell?.isFormula) return this.formula(position, this.value(position));
    if (cell && cell.content !== "") return { value: this.value(position) };
    const from = getters.getArrayFormulaSpreadingOn(position);
    if (!from) return { value: null };
    return { value: this.value(position) };
  }

  private formula(position: { sheetId: string; row: number; col: number }, value: CellValue): SavedCell {
    const { getters } = this.model;
    const written = getters.getCellText(position, { showFormula: true });
    const called = functionsIn(written);
    const isOurs = called.some((name) => name.startsWith(`${namespace}.`));
    if (this.options.valuesOnly && isOurs) return { value };
    if (!isForOthers(written, this.library)) {
      this.asValues++;
      return { value };
    }
    this.formulas++;
    const formula = fileFormula(written.slice(1), this.names);
    if (called.some(isUncomputed)) {
      const key = contentKey(position.sheetId, cellName(position.row, position.col), written);
      const inFile = this.options.opened?.valuesInFile.get(key);
      return { formula, value: inFile, ...(fillsOneCell(formula) ? {} : { array: this.ownCell(position) }) };
    }
    const box = spreadBox(this.model, position);
    const fills = box.right > box.left || box.bottom > box.top;
    if (!fills && fillsOneCell(formula)) return { formula, value: value ?? 0 };
    return { formula, value: value ?? 0, array: fills ? boxName(box) : this.ownCell(position) };
  }

  private ownCell({ row, col }: { row: number; col: number }): string {
    return cellName(row, col);
  }

  private value(position: { sheetId: string; row: number; col: number }): CellValue {
    const { value, type, format } = this.model.getters.getEvaluatedCell(position) as {
      value: number | string | boolean | null;
      type: string;
      format?: string;
    };
    const isDate = format !== undefined && this.library.helpers.isDateTimeFormat(format);
    if (this.options.from1904 && isDate && typeof value === "number") return value - DAYS_TO_1904;
    if (type === "error") return { code: fileError(String(value)) };
    if (typeof value !== "string" || !isTextFormat(format)) return value;
    const key = contentKey(position.sheetId, cellName(position.row, position.col), value);
    return this.options.opened?.valuesInFile.get(key) ?? textOfCell(value);
  }
}

function bytesOfImage(source: string): Uint8Array {
  const text = atob(source.slice(source.indexOf(",") + 1));
  return Uint8Array.from(text, (sign) => sign.charCodeAt(0));
}

/**
 * The exporter leaves a style of messages empty, which the format has no word for, colors without their alpha, and names
 * of sheets in links without quotes.
 */
const valid = (part: string): string =>
  part
    .replaceAll(' errorStyle=""', "")
    .replace(/ rgb="(?=[0-9A-Fa-f]{6}")/g, ' rgb="FF')
    .replace(/(<hyperlink\b[^>]*\blocation=")([^'"][^"]*)!A1"/g, (_, start: string, sheet: string) => {
      return `${start}'${sheet.replace(/'|&apos;/g, "''")}'!A1"`;
    });

/** The exporter writes the protection of a sheet after its merged cells; the format wants it before them. */
function inOrder(sheet: string): string {
  const protection = [...elements(sheet, "sheetProtection")].at(0);
  const data = [...elements(sheet, "sheetData")].at(0);
  if (!protection || !data || protection.start < data.end) return sheet;
  const { start, end } = protection;
  return sheet.slice(0, data.end) + sheet.slice(start, end) + sheet.slice(data.end, start) + sheet.slice(end);
}

const withPageSetup = (sheet: string, setup: PrintSetup | undefined): string =>
  withSetup(sheet, setup ? pageSetupXml(setup) : USUAL_SETUP_XML, true);

function withSetup(sheet: string, set: string, isFitted: boolean): string {
  const fit = '<pageSetUpPr fitToPage="1"/>';
  const fitted = !isFitted
    ? sheet
    : sheet.includes("</sheetPr>")
      ? sheet.replace("</sheetPr>", `${fit}</sheetPr>`)
      : sheet.replace(/<worksheet\b[^>]*>/, (root) => `${root}<sheetPr>${fit}</sheetPr>`);
  return fitted.replace(/<(?:drawing|legacyDrawing|tableParts|extLst)\b|<\/worksheet>/, (next) => set + next);
}

/** Defined names, and the wish that the program that opens the file computes it anew. */
function withNames(workbook: string, model: Model): string {
  const names = model.getters
    .getNamedRanges()
    .map(({ name, range }) => {
      const sheet = model.getters.getSheetName(range.sheetId).replaceAll("'", "''");
      const { left, top, right, bottom } = range.zone;
      const first = fixed(top, left);
      const area = left === right && top === bottom ? first : `${first}:${fixed(bottom, right)}`;
      return `<definedName name="${escapeXml(name)}">${escapeXml(`'${sheet}'!${area}`)}</definedName>`;
    })
    .join("");
  const printed = model.getters
    .getSheetIds()
    .map((sheetId, place) => {
      const setup = printSetupNow(model, sheetId);
      return setup ? printNamesXml(model.getters.getSheetName(sheetId), place, setup) : "";
    })
    .join("");
  const all = names + printed;
  const list = all && `<definedNames>${all}</definedNames>`;
  return workbook.replace("</sheets>", () => `</sheets>${list}<calcPr calcId="191029" fullCalcOnLoad="1"/>`);
}

const fixed = (row: number, column: number) => `$${cellName(row, column).replace(/(?=\d)/, "$")}`;

/** Nothing needs the part that tells of filled cells. */
function withoutMetadata(texts: Map<string, string>): void {
  texts.delete("xl/metadata.xml");
  for (const [path, tag] of [
    ["[Content_Types].xml", "Override"],
    ["xl/_rels/workbook.xml.rels", "Relationship"],
  ] as const) {
    const text = texts.get(path) ?? "";
    const found = [...elements(text, tag)].find(({ tag: start }) => start.includes("metadata.xml"));
    if (found) texts.set(path, text.slice(0, found.start) + text.slice(found.end));
  }
}
