// workbook: writes cells of Excel in one message where they fit into one, and puts back what was there where Excel
// refuses a part of it.

import { readArea } from "./excel-read.ts";
import { asksForPivots, asksForRules, invalidCells, refuseInvalid, refusePivots } from "./excel-rules.ts";
import { inExcel } from "./excel-run.ts";
import {
  type Area,
  areaAround,
  type Cells,
  type Change,
  type Content,
  cellAddress,
  fixedCell,
  fixedSentence,
  literal,
  partOf,
  Refusal,
} from "./workbook.ts";

/** Signs in a message: Excel on the web refuses one of over 5 MB. */
const MOST_SIGNS = 2_000_000;
/** Cells that are read together where changes lie in several places of a sheet. */
const MOST_TOGETHER = 20_000;
/** What the name of a range and the marks around a cell take. */
const SIGNS_AROUND = 12;

/** How many signs contents take in a message. */
const signsOf = (contents: readonly (readonly Content[])[]): number =>
  contents.reduce(
    (all, line) => line.reduce<number>((sum, one) => sum + String(one).length + SIGNS_AROUND, all),
    0,
  );

/** Counts contents in their order, and says when the next ones do not fit into the same message. */
function fills(): (contents: readonly (readonly Content[])[]) => boolean {
  let waiting = 0;
  return (contents) => {
    const signs = signsOf(contents);
    const isFull = waiting > 0 && waiting + signs > MOST_SIGNS;
    waiting = isFull ? signs : waiting + signs;
    return isFull;
  };
}

/** Counts what is written, and sends it before it comes to more than Excel takes at once. */
export function sendsInTime(
  context: Excel.RequestContext,
): (contents: readonly (readonly Content[])[]) => Promise<void> {
  const isFull = fills();
  return async (contents) => {
    if (isFull(contents)) await context.sync();
  };
}

/** How many messages changes take, each of them a step to undo. */
export function messagesFor(changes: readonly Change[]): number {
  const isFull = fills();
  return 1 + changes.flatMap(runsOf).filter(({ contents }) => isFull([contents])).length;
}

/** What is known before something is written. */
export interface Before {
  /** The cells of each change as they are. */
  readonly cells: readonly Cells[];
  readonly isReadOnly: boolean;
  /** Areas with data validation, and their cells that break it as they are. */
  readonly ruled: readonly Area[];
  readonly invalid: ReadonlySet<string>;
}

/** The cells of each change as they are. @throws Refusal where one of them may not be written to */
export async function readToWrite(
  context: Excel.RequestContext,
  changes: readonly Change[],
): Promise<Before> {
  const names = [...new Set(changes.map(({ sheet }) => sheet))];
  const protections = names.map((name) => context.workbook.worksheets.getItem(name).protection);
  for (const protection of protections) protection.load("protected");
  const areas = changes.map(areaOfChange);
  const rules = areas.map((area) => asksForRules(context, area));
  const pivots = asksForPivots(context, areas);
  context.workbook.load("readOnly");
  await context.sync();
  const at = protections.findIndex((protection) => protection.protected);
  if (at >= 0)
    throw new Refusal(`The sheet "${names[at]}" is protected. Unprotect it first. Nothing was changed.`);
  await refusePivots(context, changes, pivots());
  const before = await readChanged(context, changes);
  for (const [index, { formulas }] of changes.entries()) {
    const unwritable = fixedCell(before[index], formulas);
    if (unwritable) throw new Refusal(fixedSentence(unwritable.address, unwritable.fixed));
    const text = textCell(before[index], formulas);
    if (text)
      throw new Refusal(
        `${text} has the number format Text, so what is written there would stay a text. Set it to General, then try again. Nothing was changed.`,
      );
  }
  const ruled = areas.filter((_, index) => rules[index]());
  const invalid = ruled.length > 0 ? await invalidCells(context, ruled) : new Set<string>();
  return { cells: before, isReadOnly: context.workbook.readOnly, ruled, invalid };
}

/** The cells of each change; those of a sheet in one go where they are not far apart. */
async function readChanged(context: Excel.RequestContext, changes: readonly Change[]): Promise<Cells[]> {
  const areas = changes.map(areaOfChange);
  const together = new Map<string, Cells>();
  for (const sheet of new Set(areas.map((area) => area.sheet))) {
    const box = areas.filter((area) => area.sheet === sheet).reduce(areaAround);
    if (box.rows * box.columns <= MOST_TOGETHER) together.set(sheet, await readArea(context, box, true));
  }
  const read: Cells[] = [];
  for (const area of areas) {
    const cells = together.get(area.sheet);
    read.push(cells ? partOf(cells, area) : await readArea(context, area, true));
  }
  return read;
}

/** The first cell whose format would make a text of the formula or number that is to be written. */
function textCell(cells: Cells, formulas: Change["formulas"]): string | undefined {
  for (const [row, contents] of formulas.entries())
    for (const [column, content] of contents.entries()) {
      const staysText = typeof content === "string" && !content.startsWith("=");
      if (content === undefined || staysText || cells.formats[row][column] !== "@") continue;
      return cellAddress(cells.row + row, cells.column + column);
    }
  return undefined;
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
  const { sheet, row: top, column: left, formulas } = change;
  const { columns } = areaOfChange(change);
  const runs: Run[] = [];
  for (let across = 0; across < columns; across++) {
    let contents: Content[] = [];
    let signs = 0;
    for (let down = 0; down <= formulas.length; down++) {
      const content = formulas[down]?.[across];
      const isFull = signs > MOST_SIGNS / 4;
      if (contents.length > 0 && (content === undefined || isFull)) {
        const area = {
          sheet,
          row: top + down - contents.length,
          column: left + across,
          rows: contents.length,
          columns: 1,
        };
        runs.push({ area, contents });
        contents = [];
        signs = 0;
      }
      if (content === undefined) continue;
      contents.push(content);
      signs += String(content).length + SIGNS_AROUND;
    }
  }
  return runs;
}

/** Puts contents into cells that are free to be written to; what fits into one message waits for the next sync. */
export async function putChanges(
  context: Excel.RequestContext,
  changes: readonly Change[],
  as: "formulas" | "values" = "formulas",
  on?: Excel.Worksheet,
): Promise<void> {
  const inTime = sendsInTime(context);
  for (const { area, contents } of changes.flatMap(runsOf)) {
    const { sheet, row, column, rows, columns } = area;
    const lines = contents.map((content) => [content]);
    await inTime(lines);
    const worksheet = on ?? context.workbook.worksheets.getItem(sheet);
    worksheet.getRangeByIndexes(row, column, rows, columns)[as] = lines;
  }
}

async function put(changes: readonly Change[]): Promise<void> {
  await inExcel(async (context) => {
    await putChanges(context, changes);
    await context.sync();
  });
}

const READ_ONLY =
  "The workbook is open for reading only. Save a copy, or choose Editing where Excel shows Viewing, then try again.";

/** Writes all or nothing. Excel keeps what it did before it came to what it refuses, so that this is taken back. */
export async function writeWhole(changes: readonly Change[], before: Before): Promise<void> {
  const { cells, isReadOnly, ruled, invalid } = before;
  let isPut = false;
  try {
    await put(changes);
    isPut = true;
    if (ruled.length > 0) await inExcel((context) => refuseInvalid(context, changes, ruled, invalid));
  } catch (thrown) {
    const message = isReadOnly && !isPut ? READ_ONLY : (thrown as Refusal).message;
    const back = changes.map((change, at) => ({ ...change, formulas: formerly(change, cells[at]) }));
    const isOnePart = back.length === 1 && runsOf(back[0]).length === 1;
    const isBack = await put(back).then(
      () => true,
      () => isOnePart && !isPut,
    );
    throw new Refusal(
      `${message} ${isBack ? "Nothing was changed." : "Look at the cells first: a part may have been changed."}`,
    );
  }
}

/** What stood in the cells of a change, as one types it. */
const formerly = ({ formulas }: Change, former: Cells): Change["formulas"] =>
  formulas.map((line, down) =>
    line.map((content, across) =>
      content === undefined ? undefined : literal(former.formulas[down][across]),
    ),
  );
