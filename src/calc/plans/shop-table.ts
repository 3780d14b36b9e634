// calc: the shop's own table: a range with a header row, its columns known by name, whatever their order. Diameters in
// the sheet's unit.

import type { Material } from "../../data/materials/materials.ts";
import type { Units } from "../lengths.ts";
import { findMaterial } from "../materials/find-material.ts";
import { lengthIn, readLengthText, readNumberText, readOwnNumberText } from "../number-text.ts";
import { CellError, none, Problem, resultOrProblem, shown, wrong } from "../problem.ts";
import { findTool, type Tool } from "../tools.ts";

/** A material as the sheet names it, and the one of ours that it is, if it is one. */
export interface NamedMaterial {
  readonly text: string;
  readonly material: Material | undefined;
}

export interface NamedTool {
  readonly text: string;
  readonly tool: Tool | undefined;
}

/** The unit that a number in the column may carry, in mm and in inches. */
const OWN_UNITS: Readonly<Record<string, readonly [mm: string, inch: string]>> = {
  speed: ["m/min", "ft/min"],
  "speed low": ["m/min", "ft/min"],
  "speed high": ["m/min", "ft/min"],
  feed: ["mm", "in"],
  "feed per tooth": ["mm/tooth", "in/tooth"],
  "max rpm": ["rev/min", "rev/min"],
};
const SIZES = new Set(["over", "up to", "stock"]);
const FEEDS = new Set(["feed", "feed per tooth"]);
/** The columns that PLAN and the ranges of sizes read as numbers. */
export const NUMBER_COLUMNS = [...SIZES, ...Object.keys(OWN_UNITS), "flutes", "max depth ratio"];

const HAIR = 1e-9;
const MOST_ROWS = 20_000;

/** Case, spaces and a unit in brackets or behind a comma do not matter in a header: `Speed, m/min` is `speed`. */
const headerOf = (cell: unknown) =>
  typeof cell === "string"
    ? cell
        .replace(/[([,].*$/s, "")
        .replace(/[\s_]+/g, " ")
        .trim()
        .toLowerCase()
    : "";

const textOf = (cell: unknown) => (typeof cell === "string" || typeof cell === "number" ? String(cell) : "");
const isBlank = (cell: unknown) =>
  cell === null ||
  cell === undefined ||
  /^[\s\u200b]*$/.test(textOf(cell) || (typeof cell === "object" || typeof cell === "boolean" ? "x" : ""));
const isErrorCell = (cell: unknown): cell is { code: string } =>
  typeof cell === "object" && cell !== null && typeof (cell as { code?: unknown }).code === "string";
const sameText = (a: string, b: string) => a.trim().toLowerCase() === b.trim().toLowerCase();

export class ShopTable {
  readonly headers: readonly string[];
  private readonly rows: readonly (readonly unknown[])[];

  /** @throws Problem "wrong" for a range that is no such table, or one in the other unit */
  constructor(
    cells: readonly (readonly unknown[])[],
    private readonly units: Units,
  ) {
    const [head = [], ...rows] = cells;
    for (const title of head) refuseOtherUnit(title, units);
    this.headers = head.map(headerOf);
    this.rows = rows.filter((row) => !row.every(isBlank));
    if (!this.headers.includes("material"))
      wrong(`table has no column "material". Its headers are ${this.headerList()}.`);
    const twice = this.headers.find((name, at) => name !== "" && this.headers.indexOf(name) !== at);
    if (twice) wrong(`table has two columns "${twice}". Give each column its own header.`);
    if (rows.length > MOST_ROWS) wrong(`table has ${rows.length} rows. Select at most ${MOST_ROWS}.`);
  }

  has(column: string): boolean {
    return this.headers.includes(column);
  }

  headerList(): string {
    const names = this.headers.filter((name) => name !== "").slice(0, 12);
    return names.map((name) => shown(name).slice(1, -1)).join(", ") || "empty";
  }

  /** The entry of a column, blank as undefined; the middle of `speed low` and `speed high` where there is no `speed`. */
  entry(row: readonly unknown[], column: string): unknown {
    if (column === "speed" && !this.has("speed") && this.has("speed low") && this.has("speed high")) {
      const low = this.number(row, "speed low");
      const high = this.number(row, "speed high");
      return low === undefined || high === undefined ? (low ?? high) : (low + high) / 2;
    }
    const at = this.headers.indexOf(column);
    const cell = at < 0 ? undefined : row[at];
    return isBlank(cell) ? undefined : cell;
  }

  /** A number of a row, undefined where it is blank. @throws Problem "wrong" for what is no number of its kind */
  number(row: readonly unknown[], column: string): number | undefined {
    const cell = this.entry(row, column);
    if (cell === undefined) return undefined;
    if (isErrorCell(cell)) throw new CellError(cell);
    const value = typeof cell === "string" ? this.readText(cell, column) : cell;
    if (typeof value !== "number" || !(value >= 0) || !Number.isFinite(value))
      return wrong(`table column "${column}" has ${shown(cell)}. Write a number of 0 or more.`);
    if (column === "flutes" && !Number.isInteger(value))
      wrong(`table column "flutes" has ${shown(cell)}. Write a whole number, like 6.`);
    return value;
  }

  /** A number written as text, which may carry a unit. */
  private readText(text: string, column: string): number {
    const name = `table column "${column}"`;
    const { units } = this;
    if (SIZES.has(column)) return readLengthText(text, name, units);
    const own = OWN_UNITS[column]?.[units === "mm" ? 0 : 1] ?? "";
    if (!FEEDS.has(column)) return readOwnNumberText(text, name, "12.5", own);
    return lengthIn(readNumberText(text, name, "0.2", own), units);
  }

  /**
   * The first row of a material, a tool and a diameter: the same text before the same group. Undefined if there is none.
   * @throws Problem "wrong" where no diameter is given and the rows of the material and tool differ
   */
  find(
    material: NamedMaterial,
    tool: NamedTool,
    diameter: number | undefined,
    column?: string,
  ): readonly unknown[] | undefined {
    const ofTool = this.rows.filter((row) => this.isOfTool(row, tool));
    const sameName = ofTool.filter((row) => sameText(textOf(this.entry(row, "material")), material.text));
    const sameGroup = ofTool.filter((row) => !sameName.includes(row) && this.isOfGroup(row, material));
    for (const rows of [sameName, sameGroup]) {
      if (rows.length === 0) continue;
      if (diameter === undefined) {
        const entries = column === undefined ? [] : rows.map((row) => this.entry(row, column));
        if (new Set(entries).size > 1)
          wrong(`diameter is empty, and the rows of ${material.text} in table differ. Enter the diameter.`);
        return rows[0];
      }
      const found = rows.find((row) => this.covers(row, rows, diameter));
      if (found) return found;
    }
    return undefined;
  }

  private isOfTool(row: readonly unknown[], wanted: NamedTool): boolean {
    const own = this.entry(row, "tool");
    if (own === undefined) return true;
    const text = textOf(own);
    return sameText(text, wanted.text) || (wanted.tool !== undefined && namedTool(text).tool === wanted.tool);
  }

  private isOfGroup(row: readonly unknown[], { material }: NamedMaterial): boolean {
    return (
      material !== undefined &&
      namedMaterial(textOf(this.entry(row, "material"))).material?.key === material.key
    );
  }

  /** Over `over`, up to and including `up to`; the lowest of the rows includes its lower end. */
  private covers(row: readonly unknown[], all: readonly (readonly unknown[])[], diameter: number): boolean {
    const lower = (one: readonly unknown[]) => this.number(one, "over") ?? 0;
    const over = lower(row);
    const upTo = this.number(row, "up to") ?? Number.POSITIVE_INFINITY;
    const isLowest = all.every((other) => lower(other) >= over);
    return (diameter > over + HAIR || (isLowest && diameter >= over - HAIR)) && diameter <= upTo + HAIR;
  }
}

const METRIC = /^(?:mm|m\/min|mm\/(?:rev|tooth|min|z))$/i;
const INCH = /^(?:in|inch|ft\/min|sfm|ipr|ipt|ipm|in\/(?:rev|tooth|min))$/i;

/** A header may carry its unit (`Speed, m/min`); one of the other set would be read silently wrong. */
function refuseOtherUnit(title: unknown, units: Units): void {
  const unit = typeof title === "string" ? /[([,]\s*([^)\]]+)/.exec(title)?.[1].trim() : undefined;
  if (!unit || !(units === "mm" ? INCH : METRIC).test(unit)) return;
  const other = units === "mm" ? "in" : "mm";
  wrong(
    `table has the header ${shown(title)}, and units is "${units}". Set units to "${other}", or convert the table.`,
  );
}

export function namedMaterial(text: string): NamedMaterial {
  return { text: text.trim(), material: orUndefined(() => findMaterial(text)) };
}

export function namedTool(text: string): NamedTool {
  return { text: text.trim(), tool: orUndefined(() => findTool(text)) };
}

function orUndefined<Found>(find: () => Found): Found | undefined {
  const found = resultOrProblem(find);
  return found instanceof Problem ? undefined : found;
}

/** The entry of a column in the row of the shop's own table, number or text; an error cell as it is. */
export function dataFor(
  table: readonly (readonly unknown[])[],
  column: string,
  material: NamedMaterial,
  tool: NamedTool = namedTool("HSS"),
  diameter?: number,
  units: Units = "mm",
): unknown {
  const shop = new ShopTable(table, units);
  const name = headerOf(column);
  const isMiddle = name === "speed" && shop.has("speed low") && shop.has("speed high");
  if (!shop.has(name) && !isMiddle)
    wrong(`column ${shown(column)} is not in table. Its headers are ${shop.headerList()}.`);
  const row = shop.find(material, tool, diameter, name);
  if (!row) {
    const wanted = [
      shown(material.text).slice(1, -1),
      shown(tool.text).slice(1, -1),
      ...(diameter === undefined ? [] : [diameter]),
    ].join(", ");
    return none(`table has no row for ${wanted}.`);
  }
  return shop.entry(row, name) ?? "";
}
