// workbook: opens an .xlsx file in the browser workbook: cells and formulas are read here, in every form that a file may
// have them in; styles, validation, conditional formats, charts and tables by the importer of the grid's library.

import type { Model } from "@odoo/o-spreadsheet";
import type { PrintSetups } from "../grid-print.ts";
import { Refusal } from "../workbook.ts";
import { functionsIn } from "../xlsx/formula-tokens.ts";
import { openPackage, type Package } from "../xlsx/package.ts";
import { readPageSetup, readPrintName } from "../xlsx/page-setup.ts";
import { type CellValue, formulaRoom } from "../xlsx/read-sheet.ts";
import { namespace, type StoredNames } from "../xlsx/stored-names.ts";
import { readSharedStrings, readWorkbookParts, type WorkbookParts } from "../xlsx/workbook-parts.ts";
import { elements } from "../xlsx/xml-text.ts";
import type { ZipLimits } from "../xlsx/zip-directory.ts";
import { contentsOf, literalsOf, type NumberAsText } from "./cell-contents.ts";
import { firstThatShows, imported, plain } from "./grid-data.ts";
import { countFrom1900, textCellsOf, writeTableFormulas } from "./imported-cells.ts";
import { bareSheet, importerFiles, trimmedSheet } from "./importer-files.ts";
import type { GridLibrary } from "./library.ts";
import { type Found, lossesOf } from "./losses.ts";
import { type ReadCell, type ReadSheet, readCells } from "./read-cells.ts";
import { standInFor } from "./uncomputed.ts";
import { withinSheet } from "./within-sheet.ts";

export interface OpenedWorkbook {
  /** The workbook in the grid, which the page shows and changes. */
  readonly model: Model;
  /** The file itself, into which changes are saved. */
  readonly file: Package;
  readonly bytes: Uint8Array;
  readonly parts: WorkbookParts;
  /** Which sheet of the file each sheet of the grid is. */
  readonly places: readonly number[];
  /** What saving will not carry, a sentence each. */
  readonly losses: readonly string[];
  /** The values that the file has beside its formulas, and numbers that the grid has as texts, by `contentKey`. */
  readonly valuesInFile: ReadonlyMap<string, CellValue>;
  /** How its sheets are printed, by the ids that the grid has for them. */
  readonly prints: PrintSetups;
  readonly sheets: number;
  readonly formulas: number;
  /** Formulas with functions of ours. */
  readonly ours: number;
}

const browserLimits: ZipLimits = {
  unpacked: 192 * 2 ** 20,
  entries: 5_000,
  ratio: 300,
  ratioFrom: 2 ** 20,
};
/** Characters of all formulas, shared ones written out. */
const MOST_SIGNS = 64 * 2 ** 20;
export const LARGEST_FILE = 48 * 2 ** 20;
/** The importer's time grows with the square of the rows. */
const MOST_ROWS = 20_000;
const MOST_COLUMNS = 2_000;
/** Cells of the rectangle that holds all contents of a sheet. */
const MOST_AREA = 1_000_000;

/** What is typed in a cell: what has moved or changed since has no value of the file any more. */
export const contentKey = (sheetId: string, address: string, content: string): string =>
  `${sheetId}!${address} ${content.replaceAll(" ", "")}`;

/** @throws Refusal with why the file cannot be opened */
export function openWorkbook(bytes: Uint8Array, library: GridLibrary, names: StoredNames): OpenedWorkbook {
  if (bytes.length > LARGEST_FILE)
    throw new Refusal("the file is too large for a browser: fill it with npm run fill instead");
  const file = openPackage(bytes, browserLimits);
  const parts = readWorkbookParts(file);
  const strings = parts.sharedStrings ? readSharedStrings(file.read(parts.sharedStrings)) : [];
  const room = formulaRoom(MOST_SIGNS);
  const read = parts.sheets.flatMap(({ name, part }, place) => {
    const source = file.read(part);
    const sheet = readCells(source, room, names, (place) => strings[place], literalsOf(library));
    if (!sheet.shape.isWorksheet) return [];
    const area = (sheet.lastRow + 1) * (sheet.lastColumn + 1);
    if (sheet.lastRow >= MOST_ROWS || sheet.lastColumn >= MOST_COLUMNS || area > MOST_AREA)
      throw new Refusal(
        `the sheet "${name}" is larger than the browser workbook opens (${MOST_ROWS.toLocaleString("en-US")} rows, ${MOST_COLUMNS.toLocaleString("en-US")} columns, ${MOST_AREA.toLocaleString("en-US")} cells): fill it with npm run fill instead`,
      );
    return { sheet, name, part, place, trimmed: trimmedSheet(source, sheet.lastRow, sheet.lastColumn) };
  });
  if (read.length === 0) throw new Refusal("the workbook has no sheet of cells");
  standInFor(new Set(read.flatMap(({ sheet }) => [...sheet.cells.values()].flatMap(calledBy))), library);
  const setups = new Map(
    read.flatMap(({ part, place }) => {
      const own = parts.names.filter(({ sheet }) => sheet === place);
      const setup = readPageSetup(file.read(part), own);
      return setup ? [[place, setup] as const] : [];
    }),
  );
  const { namedRanges, dropped } = namesOf(parts, names, new Set(setups.keys()));
  const filesOf = (isBare: boolean) => {
    const sheets = read.map(
      ({ part, trimmed }) => [part.toLowerCase(), isBare ? bareSheet(trimmed) : trimmed] as const,
    );
    return importerFiles(file, bytes, browserLimits, parts, new Map(sheets));
  };
  const { model, data, warnings, unread, numbers } = firstThatShows(
    library,
    [
      () => imported(filesOf(false), library),
      () => imported(filesOf(true), library),
      () =>
        plain(
          read.map(({ name, sheet }) => ({ name, rows: sheet.lastRow + 1, columns: sheet.lastColumn + 1 })),
        ),
    ],
    (made) => {
      for (const { name, sheet } of read) {
        if (made.model) writeTableFormulas(made.model, name, sheet, names);
        if (made.model && parts.from1904) countFrom1900(made.model, name, sheet, library);
      }
      let unread = 0;
      const numbers: NumberAsText[] = [];
      const sheets = read.map(({ name, sheet }) => {
        const own = made.data.sheets.find((one: any) => one.name === name);
        if (!own || own.rowNumber * own.colNumber > 4 * MOST_AREA) throw new Error(`no room for ${name}`);
        const contents = contentsOf(own, sheet, library, textCellsOf(made.model, name));
        unread += contents.unread + sheet.unread;
        for (const address of contents.numbers)
          numbers.push({ sheetId: own.id, address, content: contents.cells[address] });
        return { ...withinSheet(own), cells: contents.cells };
      });
      return { data: { ...made.data, sheets, namedRanges }, warnings: made.warnings, unread, numbers };
    },
  );
  const sheets = read.map(({ sheet }) => sheet);
  const places = read.map(({ place }) => place);
  const prints = places.flatMap((place, at) => {
    const setup = setups.get(place);
    return setup ? [[String((data as any).sheets[at].id), setup] as const] : [];
  });
  return summary(
    file,
    bytes,
    parts,
    places,
    { model, data, warnings, dropped, unread, prints, numbers },
    sheets,
  );
}

const calledBy = ({ kind, content }: ReadCell): string[] => (kind === "formula" ? functionsIn(content) : []);

/**
 * Names of the whole workbook that stand for a range, as the grid has them, and those that it cannot have.
 * @param printed sheets whose way to be printed is known, with the names for it
 */
function namesOf({ names, sheets }: WorkbookParts, stored: StoredNames, printed: ReadonlySet<number>) {
  const namedRanges: Record<string, string> = {};
  const dropped: string[] = [];
  const range = /^(?:'(?:[^'[]|'')+'|[\p{L}_][\p{L}\p{N}_.]*)!\$?[A-Z]{1,3}\$?\d+(?::\$?[A-Z]{1,3}\$?\d+)?$/u;
  for (const { name, sheet, formula } of names) {
    if (/^_xlnm\._FilterDatabase$/i.test(name)) continue;
    if (sheet !== undefined && printed.has(sheet) && readPrintName({ name, formula })) continue;
    const isCarried =
      sheet === undefined && range.test(stored.decode(formula)) && /^[\p{L}_][\p{L}\p{N}_]*$/u.test(name);
    if (isCarried) namedRanges[name] = formula.replaceAll("$", "");
    else
      dropped.push(
        shownName(name) + (sheet === undefined ? "" : ` (on ${sheets[sheet]?.name ?? "a sheet"})`),
      );
  }
  return { namedRanges, dropped };
}

const shownName = (name: string): string =>
  name.replace(/^_xlnm\.Print_Area$/i, "print area").replace(/^_xlnm\.Print_Titles$/i, "print titles");

function summary(
  file: Package,
  bytes: Uint8Array,
  parts: WorkbookParts,
  places: readonly number[],
  {
    model,
    data,
    warnings,
    dropped,
    unread,
    prints,
    numbers,
  }: {
    model: Model;
    data: any;
    warnings: readonly string[];
    dropped: string[];
    unread: number;
    prints: PrintSetups;
    numbers: readonly NumberAsText[];
  },
  sheets: readonly ReadSheet[],
): OpenedWorkbook {
  const valuesInFile = new Map<string, CellValue>();
  let [formulas, ours, tableNames] = [0, 0, 0];
  sheets.forEach(({ cells }, i) => {
    for (const [address, { kind, content, value, hasTableName }] of cells) {
      if (kind !== "formula") {
        // The grid has a text where the cell has the format of texts.
        if (typeof value === "number")
          valuesInFile.set(contentKey(data.sheets[i].id, address, content), value);
        continue;
      }
      const called = functionsIn(content);
      formulas++;
      if (called.some((name) => name.startsWith(`${namespace}.`))) ours++;
      if (hasTableName) tableNames++;
      valuesInFile.set(contentKey(data.sheets[i].id, address, content), value);
    }
  });
  for (const { sheetId, address, content } of numbers)
    valuesInFile.set(contentKey(sheetId, address, content), Number(content));
  const sum = (count: (sheet: ReadSheet) => number) => sumOf(sheets, count);
  const found: Found = {
    warnings,
    links: sum(({ links }) => links),
    whatIfTables: sum(({ whatIfTables }) => whatIfTables),
    tableNames,
    unread,
    droppedNames: dropped,
    conditionalFormats: {
      inFile: rulesIn(file, parts, places, "cfRule"),
      inGrid: sumOf<any>(data.sheets, ({ conditionalFormats = [] }) => conditionalFormats.length),
    },
    tables: {
      inFile: parts.tables.filter(({ sheet }) => places.includes(sheet)).length,
      inGrid: sumOf<any>(data.sheets, ({ tables = [] }) => tables.length),
    },
    validations: {
      inFile: rulesIn(file, parts, places, "dataValidation"),
      inGrid: sumOf<any>(data.sheets, ({ dataValidationRules = [] }) => dataValidationRules.length),
    },
  };
  return {
    model,
    file,
    bytes,
    parts,
    places,
    losses: lossesOf(file, parts, found),
    valuesInFile,
    prints,
    sheets: sheets.length,
    formulas,
    ours,
  };
}

const sumOf = <T>(all: readonly T[], count: (one: T) => number): number =>
  all.reduce((total, one) => total + count(one), 0);

/** Elements of the sheets, but those of the newer form, which are told apart. */
const rulesIn = (file: Package, { sheets }: WorkbookParts, places: readonly number[], name: string): number =>
  sumOf(places, (place) => {
    const text = file.read(sheets[place].part);
    return [...elements(text, name)].filter(({ tag }) => !tag.startsWith("<x14:")).length;
  });
