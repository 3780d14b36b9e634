// taskpane: which formulas of ours read some cells, by themselves or through other formulas, and in which unit they take
// them. A figure that is converted under a units cell which still says the old unit would be computed wrong, silently.

import { type Area, areaAround, type Cells, cutTo, Refusal, type Workbook } from "../../workbook/workbook.ts";
import { areasRead, type FormulaCall, namesIn, ourCalls } from "./formula-calls.ts";
import { unitNamed } from "./header-units.ts";
import { readReference, referenceTo, someOf } from "./references.ts";

export interface ReadingFormula {
  /** Where it stands, as another sheet would write it. */
  readonly address: string;
  /** The unit that it takes plain numbers in, and the cell that says so. */
  readonly units: string;
  readonly unitsCell: string | undefined;
}

/** What reads some cells, as far as it can be told. */
export interface Readers {
  /** Formulas of ours. */
  readonly ours: readonly ReadingFormula[];
  /** How many formulas of other kinds do. */
  readonly others: number;
  /** Formulas of ours that may do, through a name or a table. */
  readonly byName: readonly { readonly address: string; readonly name: string }[];
  /** Sheets that are too large to look through. */
  readonly unread: readonly string[];
}

interface Formula {
  readonly text: string;
  /** Those of our functions. */
  readonly calls: readonly FormulaCall[];
  readonly place: Area;
  /** The place with the cells that the result spills into. */
  readonly fills: Area;
  readonly reads: readonly Area[];
}

/** What in the workbook reads any of these cells. */
export async function formulasReading(workbook: Workbook, areas: readonly Area[]): Promise<Readers> {
  const { formulas, unread, valueAt } = await formulasOf(workbook);
  const reached = readingFrom(formulas, areas);
  const [home] = areas;
  const ours: ReadingFormula[] = [];
  const byName: { address: string; name: string }[] = [];
  let others = 0;
  for (const formula of formulas) {
    const { text, calls, place } = formula;
    if (!reached.has(formula)) {
      const [name] = calls.length > 0 && home ? namesIn(text) : [];
      if (name !== undefined) byName.push({ address: referenceTo(place, home.sheet), name });
    } else if (calls.length === 0) others++;
    else {
      const address = referenceTo(place, home.sheet);
      ours.push({ address, ...unitsOf(calls, place.sheet, home.sheet, valueAt) });
    }
  }
  return { ours, others, byName, unread };
}

type ValueAt = (area: Area) => unknown;

/** All formulas of the workbook with what they read. */
async function formulasOf(workbook: Workbook) {
  const used = new Map<string, Area | undefined>();
  for (const sheet of await workbook.sheets()) used.set(sheet, await workbook.used(sheet));
  const read = new Map<string, Cells>();
  const formulas: Formula[] = [];
  const unread: string[] = [];
  for (const [sheet, area] of used) {
    if (!area) continue;
    try {
      read.set(sheet, await workbook.read(area));
    } catch (thrown) {
      if (!(thrown instanceof Refusal)) throw thrown;
      unread.push(sheet);
      continue;
    }
    const cells = read.get(sheet)!;
    cells.formulas.forEach((contents, row) => {
      contents.forEach((content, column) => {
        if (typeof content !== "string" || !content.startsWith("=")) return;
        const place = { sheet, row: area.row + row, column: area.column + column, rows: 1, columns: 1 };
        formulas.push({
          text: content,
          calls: ourCalls(content),
          place,
          fills: spread(place, cells),
          reads: areasRead(content, sheet, (name) => used.get(name)),
        });
      });
    });
  }
  const valueAt: ValueAt = ({ sheet, row, column }) => {
    const cells = read.get(sheet);
    return cells?.values[row - cells.row]?.[column - cells.column];
  };
  return { formulas, unread, valueAt };
}

function spread(place: Area, { row, column, fixed }: Cells): Area {
  const [down, across] = [place.row - row, place.column - column];
  let [rows, columns] = [1, 1];
  while (fixed[down + rows]?.[across] === "spilled") rows++;
  while (fixed[down]?.[across + columns] === "spilled") columns++;
  return { ...place, rows, columns };
}

const meets = (one: Area, other: Area) => one.sheet === other.sheet && cutTo(one, other) !== undefined;

/** The formulas that read areas, and those that read what these give, and so on; what ours give is no such figure. */
function readingFrom(formulas: readonly Formula[], areas: readonly Area[]): ReadonlySet<Formula> {
  const reached = new Set<Formula>();
  let from: readonly Area[] = areas;
  while (from.length > 0) {
    const bounds = boundsOf(from);
    const found = formulas.filter(
      (formula) =>
        !reached.has(formula) &&
        formula.reads.some((read) => {
          const bound = bounds.get(read.sheet);
          return bound && meets(read, bound) && from.some((area) => meets(read, area));
        }),
    );
    for (const formula of found) reached.add(formula);
    from = joined(found.filter(({ calls }) => calls.length === 0).map(({ fills }) => fills));
  }
  return reached;
}

/** Places below one another become one. */
function joined(places: readonly Area[]): Area[] {
  const inOrder = [...places].sort(
    (a, b) => a.sheet.localeCompare(b.sheet) || a.column - b.column || a.row - b.row,
  );
  const areas: Area[] = [];
  for (const place of inOrder) {
    const last = areas[areas.length - 1];
    const isNext =
      last?.sheet === place.sheet &&
      last.column === place.column &&
      last.columns === place.columns &&
      last.row + last.rows === place.row;
    if (isNext) areas[areas.length - 1] = { ...last, rows: last.rows + place.rows };
    else areas.push(place);
  }
  return areas;
}

/** A rectangle around the areas of each sheet, so that most formulas are told by one look. */
function boundsOf(areas: readonly Area[]): ReadonlyMap<string, Area> {
  const bounds = new Map<string, Area>();
  for (const area of areas) {
    const known = bounds.get(area.sheet);
    bounds.set(area.sheet, known ? areaAround(known, area) : area);
  }
  return bounds;
}

/** The unit that the calls of a formula take plain numbers in: the first one that is said, "mm" where none is. */
function unitsOf(calls: readonly FormulaCall[], sheet: string, home: string, valueAt: ValueAt) {
  for (const { args } of calls)
    for (const written of [...args].reverse()) {
      const quoted = /^"(.*)"$/.exec(written)?.[1].replaceAll('""', '"');
      const named = quoted === undefined ? undefined : unitNamed(quoted);
      if (named) return { units: named, unitsCell: undefined };
      const area = readReference(written, sheet)?.area;
      if (!area || area.rows * area.columns > 1) continue;
      const said = unitNamed(String(valueAt(area) ?? ""));
      if (said) return { units: said, unitsCell: referenceTo(area, home) };
    }
  return { units: "mm", unitsCell: undefined };
}

/** What to say before figures are converted that formulas read, or nothing. */
export function warningsOf({ ours, others, byName, unread }: Readers, to: "mm" | "in"): string[] {
  const groups = new Map<string, ReadingFormula[]>();
  for (const formula of ours) {
    if (formula.units === to) continue;
    const key = `${formula.units} ${formula.unitsCell ?? ""}`;
    groups.set(key, [...(groups.get(key) ?? []), formula]);
  }
  const told = [...groups.values()].map((group) => {
    const [{ units, unitsCell }] = group;
    const who = someOf(group.map(({ address }) => address));
    const what =
      group.length === 1
        ? `The formula in ${who} reads these figures and takes`
        : `The formulas in ${who} read these figures and take`;
    const instead = unitsCell
      ? `Set ${unitsCell} to "${to}" once all its figures are converted. Until then the results do not fit.`
      : `Give them "${to}" as their units. Until then the results do not fit.`;
    return `${what} them in ${units}. ${instead}`;
  });
  if (byName.length > 0) {
    const who = someOf(byName.map(({ address, name }) => `${address} (${name})`));
    told.push(`Formulas that use a name or a table may read these figures too: ${who}. Look at their units.`);
  }
  if (others > 0)
    told.push(
      others === 1
        ? "1 other formula reads these figures, and its result changes with them."
        : `${others} other formulas read these figures, and their results change with them.`,
    );
  if (unread.length > 0)
    told.push(`${unread.join(", ")} could not be looked through for formulas that read these figures.`);
  return told;
}
