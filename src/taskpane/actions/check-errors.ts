// taskpane: the errors of a sheet where they begin, each with what it says.

import {
  type Area,
  type Cells,
  type Content,
  cellAddress,
  cutTo,
  partOf,
  type Workbook,
} from "../../workbook/workbook.ts";
import { errorCode } from "../functions-here.ts";
import type { Help } from "../help.ts";
import type { Odd } from "./check-columns.ts";
import { errorMessage } from "./explain-cell.ts";
import { areasRead, callsOurs } from "./formula-calls.ts";
import { someOf } from "./references.ts";

/** Errors beyond these are named without their message: each takes a calculation. */
const MOST_EXPLAINED = 60;

const isError = (value: Content | undefined): value is string => errorCode(value) !== undefined;

export async function oddErrors(workbook: Workbook, cells: Cells, help: Help): Promise<Odd[]> {
  const roots = rootsIn(cells);
  const near = askedOnce(workbook, cells);
  const found: Odd[] = [];
  const byRow = new Map<string, { odd: Odd; more: string[] }>();
  for (const [index, { down, across, code, isOurs }] of roots.entries()) {
    const place = {
      sheet: cells.sheet,
      row: cells.row + down,
      column: cells.column + across,
      rows: 1,
      columns: 1,
    };
    const said = isOurs && index < MOST_EXPLAINED ? await errorMessage(near, place, help) : undefined;
    const what = `${code}${said ? `: ${said}` : whyOf(code, isOurs)}`;
    const known = byRow.get(`${down} ${what}`);
    if (known) known.more.push(cellAddress(place.row, place.column));
    else byRow.set(`${down} ${what}`, { odd: { down, across, what }, more: [] });
  }
  for (const { odd, more } of byRow.values())
    found.push(more.length === 0 ? odd : { ...odd, what: `${odd.what} The same in ${someOf(more)}.` });
  return found;
}

/** A workbook that is asked the same once, and not at all for cells that have been read. */
function askedOnce(workbook: Workbook, cells: Cells): Workbook {
  const kept = new Map<string, Promise<unknown>>();
  const once =
    <Given extends string[], Answer>(name: string, ask: (...given: Given) => Promise<Answer>) =>
    (...given: Given): Promise<Answer> => {
      const key = [name, ...given].join("\n");
      if (!kept.has(key)) kept.set(key, ask(...given));
      return kept.get(key) as Promise<Answer>;
    };
  return Object.assign(Object.create(workbook), {
    read: async (area: Area) => (isWithin(area, cells) ? partOf(cells, area) : workbook.read(area)),
    sheets: once("sheets", () => workbook.sheets()),
    used: once("used", (sheet: string) => workbook.used(sheet)),
    meanings: once("meanings", () => workbook.meanings()),
  });
}

function whyOf(code: string, isOurs: boolean): string {
  if (code === "#NAME?" && isOurs) return ". The formula came before the add-in. Enter it again.";
  if (code === "#SPILL!") return ". Filled cells are in the way of the result.";
  if (code === "#BUSY!") return ". It is still being computed.";
  return isOurs ? ". Explain this cell says why." : ".";
}

/** Errors that come from no other error of the sheet, and that nobody has asked for with NA(). */
function rootsIn(cells: Cells): { down: number; across: number; code: string; isOurs: boolean }[] {
  return cells.values.flatMap((line, down) =>
    line.flatMap((value, across) => {
      if (!isError(value)) return [];
      const formula = String(cells.formulas[down][across]);
      if (/\bNA\(\)/i.test(formula)) return [];
      const isOurs = callsOurs(formula) || cells.fixed[down][across] === "spilled";
      const readsError = areasRead(formula, cells.sheet, () => cells).some((read) => {
        const part = read.sheet === cells.sheet ? cutTo(read, cells) : undefined;
        return (
          part &&
          part.rows * part.columns === 1 &&
          isError(cells.values[part.row - cells.row][part.column - cells.column])
        );
      });
      return readsError ? [] : [{ down, across, code: value, isOurs }];
    }),
  );
}

const isWithin = (area: Area, cells: Cells): boolean => {
  const part = area.sheet === cells.sheet ? cutTo(area, cells) : undefined;
  return part?.rows === area.rows && part.columns === area.columns;
};
