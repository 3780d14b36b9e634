// workbook: the adapter for Excel. Ranges are loaded before they are read and written in one batch at the end.

import { areaOf, PLACE, readRange } from "./excel-read.ts";
import { inExcel } from "./excel-run.ts";
import { addColumns, freeSheetName } from "./excel-sheet.ts";
import {
  type Area,
  type Cells,
  type Change,
  type Content,
  heldCell,
  heldSentence,
  type NewSheet,
  Refusal,
  type Workbook,
} from "./workbook.ts";

export class ExcelWorkbook implements Workbook {
  selected(): Promise<readonly Cells[]> {
    return inExcel(async (context) => {
      const areas = context.workbook.getSelectedRanges().areas;
      areas.load("items/address");
      await context.sync();
      const parts = areas.items.map((range) => {
        const sheet = range.worksheet;
        sheet.load("name");
        const used = sheet.getUsedRangeOrNullObject(false);
        const part = range.getIntersectionOrNullObject(used);
        part.load(PLACE);
        used.load("address");
        return { sheet, used, part };
      });
      await context.sync();
      const cells: Cells[] = [];
      for (const { sheet, used, part } of parts)
        if (!used.isNullObject && !part.isNullObject) cells.push(await readRange(context, sheet.name, part));
      return cells;
    });
  }

  places(): Promise<readonly Area[]> {
    return inExcel(async (context) => {
      const { areas } = context.workbook.getSelectedRanges();
      areas.load("items/rowIndex,items/columnIndex,items/rowCount,items/columnCount");
      await context.sync();
      const [first] = areas.items;
      first.worksheet.load("name");
      await context.sync();
      return areas.items.map((range) => areaOf(first.worksheet.name, range));
    });
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

  read(area: Area): Promise<Cells> {
    return inExcel(async (context) => {
      const range = rangeAt(context, area);
      range.load(PLACE);
      await context.sync();
      return readRange(context, area.sheet, range);
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

  write(changes: readonly Change[]): Promise<void> {
    return inExcel(async (context) => {
      for (const name of new Set(changes.map(({ sheet }) => sheet))) {
        const { protection } = context.workbook.worksheets.getItem(name);
        protection.load("protected");
        await context.sync();
        if (protection.protected)
          throw new Refusal(`The sheet "${name}" is protected: unprotect it first. Nothing was changed.`);
      }
      for (const change of changes) {
        const area = areaOfChange(change);
        const range = rangeAt(context, area);
        range.load(PLACE);
        await context.sync();
        const held = heldCell(await readRange(context, area.sheet, range), change.formulas);
        if (held) throw new Refusal(heldSentence(held.address, held.hold));
      }
      for (const change of changes) writeRuns(context, change);
      await context.sync();
    });
  }

  addSheet(sheet: NewSheet): Promise<string> {
    return inExcel(async (context) => {
      const name = await freeSheetName(context, sheet.name);
      const added = context.workbook.worksheets.add(name);
      addColumns(added, { ...sheet, name });
      added.activate();
      await context.sync();
      return name;
    });
  }

  copyAsValues(
    sheet: string,
    replace: (formula: string) => boolean,
  ): Promise<{ name: string; replaced: number }> {
    return inExcel(async (context) => {
      const original = context.workbook.worksheets.getItem(sheet);
      const used = original.getUsedRangeOrNullObject(false);
      used.load(`${PLACE},formulas,values`);
      await context.sync();
      const name = await freeSheetName(context, `${sheet} (values)`);
      const copy = original.copy("After", original);
      copy.name = name;
      let replaced = 0;
      // Values are those of the original: in the copy the functions have yet to be computed.
      for (const [row, contents] of used.isNullObject ? [] : used.formulas.entries()) {
        for (const [column, content] of contents.entries()) {
          if (typeof content !== "string" || !content.startsWith("=") || !replace(content)) continue;
          const at = { row: used.rowIndex + row, column: used.columnIndex + column };
          const spill = original.getCell(at.row, at.column).getSpillingToRangeOrNullObject();
          spill.load(`${PLACE},values`);
          await context.sync();
          const values = spill.isNullObject ? [[used.values[row][column]]] : spill.values;
          copy.getRangeByIndexes(at.row, at.column, values.length, values[0].length).values = values;
          replaced += values.length * values[0].length;
        }
      }
      copy.activate();
      await context.sync();
      return { name, replaced };
    });
  }

  onChange(listener: () => void): () => void {
    const handlers = inExcel(async (context) => {
      const added = [
        context.workbook.onSelectionChanged.add(async () => listener()),
        context.workbook.worksheets.onChanged.add(async () => listener()),
      ];
      await context.sync();
      return added;
    });
    return () => {
      void handlers.then((added) =>
        Promise.all(
          added.map((handler) =>
            inExcel(async (context) => {
              handler.remove();
              await context.sync();
            }, handler.context as Excel.RequestContext),
          ),
        ),
      );
    };
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

/** Writes runs of neighbouring cells in a column, so that a cell left as it is is not touched. */
function writeRuns(context: Excel.RequestContext, change: Change): void {
  const sheet = context.workbook.worksheets.getItem(change.sheet);
  const { columns } = areaOfChange(change);
  for (let column = 0; column < columns; column++) {
    let run: Content[][] = [];
    for (let row = 0; row <= change.formulas.length; row++) {
      const content = change.formulas[row]?.[column];
      if (content !== undefined) {
        run.push([content]);
      } else if (run.length > 0) {
        const first = change.row + row - run.length;
        sheet.getRangeByIndexes(first, change.column + column, run.length, 1).formulas = run;
        run = [];
      }
    }
  }
}
