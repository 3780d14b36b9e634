// workbook: the adapter for Excel. Ranges are loaded before they are read, and written in a run of their own.

import { onChangeInSight } from "./excel-events.ts";
import { copySheetAsValues } from "./excel-freeze.ts";
import { addCharts, addImages, type DrawsPng } from "./excel-pictures.ts";
import { areaOf, PLACE, readRange, SLICE } from "./excel-read.ts";
import { inExcel } from "./excel-run.ts";
import { addColumns, freeSheetName } from "./excel-sheet.ts";
import { pngText } from "./png.ts";
import {
  type Area,
  type Cells,
  type Change,
  type Content,
  cutTo,
  heldCell,
  heldSentence,
  type NewSheet,
  Refusal,
  type Workbook,
} from "./workbook.ts";

export class ExcelWorkbook implements Workbook {
  constructor(private readonly draw: DrawsPng = pngText) {}

  selected(): Promise<readonly Cells[]> {
    return inExcel(async (context) => {
      const areas = await selectedAreas(context);
      const { sheet } = areas[0];
      const used = context.workbook.worksheets.getItem(sheet).getUsedRangeOrNullObject(false);
      used.load(PLACE);
      await context.sync();
      if (used.isNullObject) return [];
      const bounds = areaOf(sheet, used);
      const cells: Cells[] = [];
      for (const area of areas) {
        const part = cutTo(area, bounds);
        if (part) cells.push(await readShown(context, part));
      }
      return cells;
    });
  }

  places(): Promise<readonly Area[]> {
    return inExcel(selectedAreas);
  }

  active(): Promise<Area> {
    return inExcel(async (context) => {
      const cell = context.workbook.getActiveCell();
      cell.load(PLACE);
      cell.worksheet.load("name");
      await context.sync();
      return areaOf(cell.worksheet.name, cell);
    });
  }

  read(area: Area, toWrite = false): Promise<Cells> {
    return inExcel(async (context) => {
      const range = rangeAt(context, area);
      range.load(PLACE);
      await context.sync();
      return readRange(context, area.sheet, range, toWrite);
    });
  }

  sheets(): Promise<readonly string[]> {
    return inExcel(async (context) => {
      const { worksheets } = context.workbook;
      worksheets.load("items/name");
      await context.sync();
      return worksheets.items.map(({ name }) => name);
    });
  }

  tableAt(area: Area): Promise<string | undefined> {
    return inExcel(async (context) => {
      const tables = rangeAt(context, area).getTables(false);
      tables.load("items/name");
      await context.sync();
      return tables.items[0]?.name;
    });
  }

  show(area: Area): Promise<void> {
    return inExcel(async (context) => {
      rangeAt(context, area).select();
      await context.sync();
    });
  }

  used(sheet: string): Promise<Area | undefined> {
    return inExcel(async (context) => {
      const range = context.workbook.worksheets.getItem(sheet).getUsedRangeOrNullObject(false);
      range.load(PLACE);
      await context.sync();
      return range.isNullObject ? undefined : areaOf(sheet, range);
    });
  }

  async write(changes: readonly Change[]): Promise<void> {
    await inExcel((context) => refuseHeld(context, changes));
    await inExcel(async (context) => {
      let waiting = 0;
      for (const run of changes.flatMap(runsOf)) {
        if (waiting > 0 && waiting + run.contents.length > SLICE) {
          await context.sync();
          waiting = 0;
        }
        rangeAt(context, run.area).formulas = run.contents.map((content) => [content]);
        waiting += run.contents.length;
      }
      await context.sync();
    });
  }

  addSheet(sheet: NewSheet): Promise<string> {
    return inExcel(async (context) => {
      const name = await freeSheetName(context, sheet.name);
      const added = context.workbook.worksheets.add(name);
      addColumns(added, { ...sheet, name });
      addCharts(added, sheet.pictures ?? []);
      added.activate();
      await context.sync();
      await addImages(context, added, sheet.pictures ?? [], this.draw);
      return name;
    });
  }

  async openNew(file: Uint8Array): Promise<boolean> {
    let binary = "";
    for (const byte of file) binary += String.fromCharCode(byte);
    await Excel.createWorkbook(btoa(binary));
    return true;
  }

  copyAsValues(
    sheet: string,
    replace: (formula: string) => boolean,
  ): Promise<{ name: string; replaced: number }> {
    return inExcel((context) => copySheetAsValues(context, sheet, replace));
  }

  hasDecimalComma(): Promise<boolean> {
    return inExcel(async (context) => {
      const { application } = context.workbook;
      application.load("decimalSeparator");
      await context.sync();
      return application.decimalSeparator === ",";
    });
  }

  onChange(listener: () => void): () => void {
    return onChangeInSight(listener);
  }
}

async function selectedAreas(context: Excel.RequestContext): Promise<Area[]> {
  const { areas } = context.workbook.getSelectedRanges();
  const sheet = context.workbook.worksheets.getActiveWorksheet();
  areas.load("items/rowIndex,items/columnIndex,items/rowCount,items/columnCount");
  sheet.load("name");
  await context.sync();
  return areas.items.map((range) => areaOf(sheet.name, range));
}

/** The cells of an area, and which of them a filter or a hidden row or column keeps out of sight. */
async function readShown(context: Excel.RequestContext, area: Area): Promise<Cells> {
  const range = rangeAt(context, area);
  range.load(PLACE);
  // Of a single cell, Excel would look at the whole sheet.
  if (area.rows * area.columns === 1) {
    await context.sync();
    return readRange(context, area.sheet, range);
  }
  const visible = range.getSpecialCellsOrNullObject("Visible");
  visible.load("isNullObject");
  await context.sync();
  const cells = await readRange(context, area.sheet, range);
  if (visible.isNullObject) return { ...cells, hidden: cells.values.map((row) => row.map(() => true)) };
  visible.areas.load("items/rowIndex,items/columnIndex,items/rowCount,items/columnCount");
  await context.sync();
  const shown = visible.areas.items.map((part) => areaOf(area.sheet, part));
  if (
    shown.some((part) => cutTo(area, part)?.rows === area.rows && cutTo(area, part)?.columns === area.columns)
  )
    return cells;
  const hidden = cells.values.map((row) => row.map(() => true));
  for (const part of shown) {
    const seen = cutTo(part, area);
    if (!seen) continue;
    for (let row = seen.row; row < seen.row + seen.rows; row++)
      hidden[row - area.row].fill(false, seen.column - area.column, seen.column - area.column + seen.columns);
  }
  return { ...cells, hidden };
}

async function refuseHeld(context: Excel.RequestContext, changes: readonly Change[]): Promise<void> {
  const names = [...new Set(changes.map(({ sheet }) => sheet))];
  const protections = names.map((name) => context.workbook.worksheets.getItem(name).protection);
  for (const protection of protections) protection.load("protected");
  const ranges = changes.map((change) => {
    const range = rangeAt(context, areaOfChange(change));
    range.load(PLACE);
    return range;
  });
  await context.sync();
  const at = protections.findIndex((protection) => protection.protected);
  if (at >= 0)
    throw new Refusal(`The sheet "${names[at]}" is protected. Unprotect it first. Nothing was changed.`);
  for (const [index, { sheet, formulas }] of changes.entries()) {
    const held = heldCell(await readRange(context, sheet, ranges[index], true), formulas);
    if (held) throw new Refusal(heldSentence(held.address, held.hold));
  }
}

function rangeAt(context: Excel.RequestContext, area: Area): Excel.Range {
  const sheet = context.workbook.worksheets.getItem(area.sheet);
  return sheet.getRangeByIndexes(area.row, area.column, area.rows, area.columns);
}

function areaOfChange({ sheet, row, column, formulas }: Change): Area {
  return {
    sheet,
    row,
    column,
    rows: formulas.length,
    columns: Math.max(...formulas.map((one) => one.length)),
  };
}

interface Run {
  readonly area: Area;
  readonly contents: readonly Content[];
}

/** Runs of neighboring cells in a column, so that a cell left as it is is not touched. */
function runsOf(change: Change): Run[] {
  const { sheet, columns } = areaOfChange(change);
  const runs: Run[] = [];
  for (let column = 0; column < columns; column++) {
    let contents: Content[] = [];
    for (let row = 0; row <= change.formulas.length; row++) {
      const content = change.formulas[row]?.[column];
      if (content !== undefined) contents.push(content);
      if (contents.length > 0 && (content === undefined || contents.length === SLICE)) {
        const end = row + (content === undefined ? 0 : 1);
        const first = change.row + end - contents.length;
        const area = { sheet, row: first, column: change.column + column, rows: contents.length, columns: 1 };
        runs.push({ area, contents });
        contents = [];
      }
    }
  }
  return runs;
}
