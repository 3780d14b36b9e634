// workbook: one step of a restructuring: rows or columns of a sheet, its name, or the sheet itself, and all that names its
// cells, in this sheet and everywhere else.

import { chainNow } from "./edit-workbook.ts";
import { drawnNow, formulasAround } from "./follow-around.ts";
import { follow, type SheetChange } from "./follow-formula.ts";
import { tokensOf } from "./formula-tokens.ts";
import { leaveOutPart } from "./leave-out.ts";
import { insertion, type LineShift, removal } from "./line-shift.ts";
import { mapInside, mapTags, NotCertain, within } from "./map-elements.ts";
import { over, type PackageParts } from "./package.ts";
import { followedRelations, removableRelations, shiftedParts, unknownParts } from "./restructured-parts.ts";
import { listed } from "./sheet-list.ts";
import { followed, shiftedAround } from "./shift-around.ts";
import { shiftedCells } from "./shift-cells.ts";
import { shiftedPivot, shiftedTable } from "./shift-parts.ts";
import { isColumnNamed } from "./table-cells.ts";
import { relationsOf, type WorkbookParts } from "./workbook-parts.ts";
import { cellAt, type NewCell, placeOf, withAttribute, writeCells } from "./write-sheet.ts";
import { attribute, elements, escapeAttribute, escapeXml, unescapeXml } from "./xml-text.ts";

/** A change of the sheet that was at a place of the workbook before the first change. */
export type Restructuring = { readonly sheet: number } & (
  | { readonly kind: "insert"; readonly axis: LineShift["axis"]; readonly at: number; readonly count: number }
  | { readonly kind: "remove"; readonly axis: LineShift["axis"]; readonly at: readonly number[] }
  | { readonly kind: "rename"; readonly name: string }
  | { readonly kind: "removeSheet" }
  /** To the end of the workbook. */
  | { readonly kind: "copy"; readonly name: string }
);

const unmoved = { isResized: false, base: undefined, cells: new Map<number, NewCell>(), lost: [] };

export class Step {
  readonly parts = new Map<string, string>();
  gone: ReadonlySet<string> = new Set();
  private readonly change: SheetChange;
  private readonly lines: LineShift | undefined;
  private readonly names: readonly string[];
  /** Names and tables that have more or fewer cells now, in capitals. */
  private readonly resized = new Set<string>();
  /** New columns of tables have headers. */
  private readonly headers = new Map<number, NewCell>();
  /** Tables that go with their sheet, in capitals. */
  private readonly lost: ReadonlySet<string>;

  constructor(
    private readonly file: PackageParts,
    private readonly workbook: WorkbookParts,
    private readonly step: Restructuring,
  ) {
    const sheet = workbook.sheets[step.sheet].name;
    this.names = workbook.sheets.map(({ name }) => name);
    if (step.kind === "insert") this.lines = insertion(step.axis, step.at, step.count);
    else if (step.kind === "remove") this.lines = removal(step.axis, step.at);
    this.change = {
      sheet,
      ...(this.lines ? { lines: this.lines } : {}),
      ...(step.kind === "rename" ? { name: step.name } : {}),
    };
    this.lost = new Set(
      workbook.tables.flatMap(({ name, sheet: own }) =>
        step.kind === "removeSheet" && own === step.sheet ? name.toUpperCase() : [],
      ),
    );
  }

  private read(name: string): string {
    return this.parts.get(name) ?? this.file.read(name);
  }

  private put(name: string, text: string): void {
    if (text !== this.read(name)) this.parts.set(name, text);
  }

  private follow(formula: string, home: string | undefined, base?: Parameters<typeof follow>[4]) {
    if (this.lost.size > 0 && tokensOf(formula).some(({ text }) => this.lost.has(text.toUpperCase())))
      throw new NotCertain(formula);
    return follow(formula, home, this.change, this.names, base);
  }

  /** The formulas that are others now, those of before where they are now among them. */
  run(changedBefore: readonly ReadonlySet<number>[]): Set<number>[] {
    const { workbook, step } = this;
    const isRemoval = step.kind === "removeSheet";
    if ((this.lines || isRemoval) && this.file.names.some((name) => unknownParts.test(name)))
      throw new NotCertain("parts");
    if (isRemoval) this.remove();
    this.main();
    this.tables();
    const changed = workbook.sheets.map((_, i) =>
      isRemoval && i === step.sheet ? new Set<number>() : this.sheet(i),
    );
    if (this.lines) this.around(workbook.sheets[step.sheet].part);
    const drawn = drawnNow(
      over(this.file, this.parts, this.gone),
      workbook.sheets,
      step.kind === "rename",
      (one, home) => this.follow(one, home),
    );
    for (const [name, text] of drawn) this.put(name, text);
    this.chain();
    return changed.map((own, i) => {
      for (const place of changedBefore[i]) {
        const now = i === step.sheet ? this.placeNow(place) : place;
        if (now !== undefined) own.add(now);
      }
      return own;
    });
  }

  private placeNow(place: number): number | undefined {
    if (!this.lines) return place;
    const { row, column } = cellAt(place);
    const line = this.lines.line(this.lines.axis === "row" ? row : column);
    if (line === undefined) return undefined;
    return this.lines.axis === "row" ? placeOf(line, column) : placeOf(row, line);
  }

  /** Takes out the sheet and what hangs on it alone. */
  private remove(): void {
    const { main, sheets } = this.workbook;
    const { part } = sheets[this.step.sheet];
    for (const { kind } of relationsOf(this.file, part))
      if (!removableRelations.has(kind)) throw new NotCertain(kind);
    const { parts, gone } = leaveOutPart(this.file, main, part);
    this.gone = gone;
    for (const [name, text] of parts) this.put(name, text);
  }

  /** The names of sheets and of ranges. */
  private main(): void {
    const { workbook, step } = this;
    const { main, sheets } = workbook;
    let text = this.read(main);
    if (step.kind === "rename") {
      let at = -1;
      text = mapInside(text, "sheets", (inside) =>
        mapTags(inside, "sheet", (tag) => {
          at++;
          return at === step.sheet ? withAttribute(tag, "name", escapeAttribute(step.name)) : tag;
        }),
      );
    }
    text = mapInside(text, "definedNames", (inside) =>
      mapInside(inside, "definedName", (formula, tag) => {
        const local = attribute(tag, "localSheetId");
        const home = local === undefined ? undefined : sheets[Number(local)]?.name;
        // What is printed and filtered is where it says, with dollar signs or without.
        const isFixed = !this.lines || (attribute(tag, "name") ?? "").startsWith("_xlnm.");
        const now = this.follow(unescapeXml(formula), home, isFixed ? undefined : null);
        if (!now) throw new NotCertain(formula);
        if (now.isOther) this.resized.add((attribute(tag, "name") ?? "").toUpperCase());
        return now.text === unescapeXml(formula) ? formula : escapeXml(now.text);
      }),
    );
    if (step.kind === "removeSheet")
      text = listed(
        text,
        sheets.flatMap((_, i) => (i === step.sheet ? [] : i)),
      );
    this.put(main, text);
    // Names that stand for others that have other cells now.
    for (let count = -1; count !== this.resized.size; ) {
      count = this.resized.size;
      for (const { name, formula } of workbook.names)
        if (count > 0 && tokensOf(formula).some((token) => this.resized.has(token.text.toUpperCase())))
          this.resized.add(name.toUpperCase());
    }
    for (const { kind, part } of relationsOf(this.file, main)) {
      if (!this.file.has(part)) continue;
      if (kind === "pivotCacheDefinition") this.put(part, shiftedPivot.source(this.read(part), this.change));
      // A query may be asked for what stands in a cell.
      if (kind === "connections" && /<(?:[\w.-]+:)?parameter\s[^>]*\scell\s*=/.test(this.read(part)))
        throw new NotCertain("query");
    }
  }

  private tables(): void {
    const { workbook, step, lines } = this;
    workbook.sheets.forEach(({ part, name }, i) => {
      for (const relation of relationsOf(this.file, part)) {
        if (relation.kind !== "table" || !this.file.has(relation.part)) continue;
        if (this.gone.has(relation.part.toLowerCase())) continue;
        const text = this.read(relation.part);
        const [table] = elements(text, "table");
        const moved = lines && i === step.sheet ? shiftedTable(text, lines) : { ...unmoved, text };
        if (moved.lost.some((header) => isColumnNamed(this.file, workbook.main, header)))
          throw new NotCertain(relation.part);
        for (const [place, cell] of moved.cells) this.headers.set(place, cell);
        if (moved.isResized) {
          this.resized.add((attribute(table.tag, "displayName") ?? "").toUpperCase());
          this.resized.add((attribute(table.tag, "name") ?? "").toUpperCase());
        }
        const base = lines ? (moved.base ?? null) : undefined;
        const formulas = ["calculatedColumnFormula", "totalsRowFormula"].reduce(
          (own, element) =>
            mapInside(own, element, (inside) => followed(inside, (one) => this.follow(one, name, base))),
          moved.text,
        );
        this.put(relation.part, formulas);
      }
    });
  }

  private sheet(place: number): Set<number> {
    const { workbook, step, lines } = this;
    const { part, name } = workbook.sheets[place];
    const text = this.read(part);
    const isOwn = place === step.sheet;
    const isAffected = (formula: string) =>
      this.resized.size > 0 && tokensOf(formula).some((token) => this.isResized(token.text, isOwn));
    const found = shiftedCells(
      text,
      (formula) => this.follow(formula, name),
      isOwn ? lines : undefined,
      isAffected,
    );
    if (!found) throw new NotCertain(name);
    this.put(
      part,
      isOwn && lines
        ? this.movedAround(writeCells(found.text, this.headers), name, lines)
        : formulasAround(found.text, {
            alone: (formula) => this.follow(formula, name),
            shared: (formula) => this.follow(formula, name, lines ? null : undefined),
            isMoved: lines !== undefined,
          }),
    );
    return new Set(found.changed);
  }

  /** In a table, its columns are named without its name. */
  private isResized(word: string, isOwn: boolean): boolean {
    return this.resized.has(word.toUpperCase()) || (isOwn && word.startsWith("["));
  }

  /** What the sheet has around its cells. */
  private movedAround(text: string, name: string, lines: LineShift): string {
    const pieces: string[] = [];
    let copied = 0;
    for (const { local, start, end } of within(text)) {
      if (local === "sheetData") continue;
      const whole = text.slice(start, end);
      pieces.push(
        text.slice(copied, start),
        shiftedAround(local, whole, lines, (formula, base) => this.follow(formula, name, base)),
      );
      copied = end;
    }
    return pieces.join("") + text.slice(copied);
  }

  /** The parts that hang on the sheet whose cells move. */
  private around(part: string): void {
    const lines = this.lines!;
    for (const { kind, part: name } of relationsOf(this.file, part)) {
      if (!followedRelations.has(kind)) throw new NotCertain(kind);
      const shifted = shiftedParts.get(kind);
      if (shifted && this.file.has(name)) this.put(name, shifted(this.read(name), lines));
    }
  }

  /** The list of formulas in the order of their calculation. */
  private chain(): void {
    const { calculationChain, sheets } = this.workbook;
    const { kind, sheet } = this.step;
    if (!calculationChain || kind === "rename") return;
    const placeNow = (place: number) => (kind === "removeSheet" ? undefined : this.placeNow(place));
    this.put(calculationChain, chainNow(this.read(calculationChain), sheets[sheet].id, placeNow));
  }
}
