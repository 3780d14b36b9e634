// workbook: the adapter for Excel. Ranges are loaded before they are read, and written in a run of their own.

import { onChangeInSight } from "./excel-events.ts";
import { copySheetAsValues, settledValues } from "./excel-freeze.ts";
import { readMeanings } from "./excel-meanings.ts";
import { addCharts, addImages, type DrawsPng } from "./excel-pictures.ts";
import { areaOf, PLACE, readArea, usedPart } from "./excel-read.ts";
import { asksForRules } from "./excel-rules.ts";
import { inExcel } from "./excel-run.ts";
import { addColumns, newSheetName } from "./excel-sheet.ts";
import { messagesFor, readToWrite, writeWhole } from "./excel-write.ts";
import { pngText } from "./png.ts";
import { type Area, type Cells, type Change, cutTo, type NewSheet, type Workbook } from "./workbook.ts";

export class ExcelWorkbook implements Workbook {
  constructor(private readonly draw: DrawsPng = pngText) {}

  selected(): Promise<readonly Cells[]> {
    return inExcel(async (context) => {
      const areas = await selectedAreas(context);
      const { sheet } = areas[0];
      const used = usedPart(context.workbook.worksheets.getItem(sheet));
      await context.sync();
      const bounds = used(sheet);
      const cells: Cells[] = [];
      for (const area of areas) {
        const part = bounds && cutTo(area, bounds);
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
    return inExcel((context) => readArea(context, area, toWrite));
  }

  readComputed(area: Area): Promise<Cells> {
    return inExcel(async (context) => {
      const cells = await readArea(context, area);
      return { ...cells, values: await settledValues(context, area) };
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

  homeOf(cell: Area): Promise<Area> {
    return inExcel(async (context) => {
      const parent = rangeAt(context, cell).getSpillParentOrNullObject();
      parent.load(PLACE);
      await context.sync();
      return parent.isNullObject ? cell : areaOf(cell.sheet, parent);
    });
  }

  filledFrom(cell: Area): Promise<Area> {
    return inExcel(async (context) => {
      const spill = rangeAt(context, cell).getSpillingToRangeOrNullObject();
      spill.load(PLACE);
      await context.sync();
      return spill.isNullObject ? cell : areaOf(cell.sheet, spill);
    });
  }

  meanings() {
    return inExcel(readMeanings);
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
      const part = usedPart(context.workbook.worksheets.getItem(sheet));
      await context.sync();
      return part(sheet);
    });
  }

  async write(changes: readonly Change[]): Promise<void> {
    const before = await inExcel((context) => readToWrite(context, changes));
    await writeWhole(changes, before);
  }

  async stepsToUndo(changes: readonly Change[]): Promise<number> {
    return messagesFor(changes);
  }

  hasRules(area: Area): Promise<boolean> {
    return inExcel(async (context) => {
      const has = asksForRules(context, area);
      await context.sync();
      return has();
    });
  }

  async addSheet(sheet: NewSheet): Promise<string> {
    const name = await inExcel((context) => newSheetName(context, sheet.name));
    try {
      await inExcel(async (context) => {
        const added = context.workbook.worksheets.add(name);
        await addColumns(context, added, { ...sheet, name });
        addCharts(added, sheet.pictures ?? []);
        added.activate();
        await context.sync();
        await addImages(context, added, sheet.pictures ?? [], this.draw);
      });
    } catch (thrown) {
      // Excel keeps what it did before it came to what it refuses.
      await inExcel(async (context) => {
        context.workbook.worksheets.getItem(name).delete();
        await context.sync();
      }).catch(() => {});
      throw thrown;
    }
    return name;
  }

  async openNew(file: Uint8Array): Promise<boolean> {
    let binary = "";
    for (const byte of file) binary += String.fromCharCode(byte);
    await inExcel(() => Excel.createWorkbook(btoa(binary)));
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

  dayShift(): Promise<number> {
    return inExcel(async (context) => {
      const day = context.workbook.functions.date(2000, 1, 1);
      day.load("value");
      await context.sync();
      // The number of that day where the first one is 1900-01-01.
      return day.value - 36_526;
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
  // Of a single cell, Excel would look at the whole sheet for visible ones.
  if (area.rows * area.columns === 1) {
    range.load("rowHidden,columnHidden");
    const cells = await readArea(context, area);
    return range.rowHidden || range.columnHidden ? { ...cells, hidden: [[true]] } : cells;
  }
  const visible = range.getSpecialCellsOrNullObject("Visible");
  visible.load("isNullObject");
  await context.sync();
  const cells = await readArea(context, area);
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

function rangeAt(context: Excel.RequestContext, area: Area): Excel.Range {
  const sheet = context.workbook.worksheets.getItem(area.sheet);
  return sheet.getRangeByIndexes(area.row, area.column, area.rows, area.columns);
}
