// workbook: the adapter for the browser workbook, over the model of its grid.

import type { Model } from "@odoo/o-spreadsheet";
import { areaOfBox } from "./boxes.ts";
import { oneStepPerCell } from "./cell-steps.ts";
import { gridMeanings } from "./grid-names.ts";
import { keepPrintSetup, printSetupOf } from "./grid-print.ts";
import { runWithinRules } from "./grid-rules.ts";
import { newSheetSteps } from "./grid-sheet.ts";
import { asLiteralInput, asUserInput, roomFor, runSteps, type Step } from "./grid-steps.ts";
import {
  type Area,
  type Cells,
  type Change,
  type Content,
  cutTo,
  type Fixed,
  fixedCell,
  fixedSentence,
  type NewSheet,
  Refusal,
  type Workbook,
} from "./workbook.ts";
import { fileError } from "./xlsx-grid/error-codes.ts";

interface Position {
  sheetId: string;
  col: number;
  row: number;
}

export class GridWorkbook implements Workbook {
  /** Here all is computed at once, days count from 1900, a write is one step, and no formula knows tables. */
  readonly readComputed = (area: Area) => this.read(area);
  readonly dayShift = async () => 0;
  readonly stepsToUndo = async () => 1;
  readonly tableAt = async () => undefined;
  readonly openNew = async () => false;
  readonly meanings = async () => gridMeanings(this.model);

  constructor(private readonly model: Model) {}

  private get getters() {
    return this.model.getters;
  }

  private idOf(name: string): string {
    const id = this.getters.getSheetIdByName(name);
    if (id === undefined) throw new Refusal(`There is no sheet "${name}" any more.`);
    return id;
  }

  private positionOf({ sheet, row, column }: Area): Position {
    return { sheetId: this.idOf(sheet), row, col: column };
  }

  private refuseOtherThanCells(): void {
    if (this.getters.getSelectedFigureId())
      throw new Refusal("A chart or picture is selected: select cells instead.");
  }

  async selected(): Promise<readonly Cells[]> {
    this.refuseOtherThanCells();
    const sheetId = this.getters.getActiveSheetId();
    const sheet = this.getters.getSheetName(sheetId);
    const used = await this.used(sheet);
    if (!used) return [];
    const areas = this.getters
      .getSelectedZones()
      .map((zone) => cutTo(areaOfBox(sheet, zone), used))
      .filter((area) => area !== undefined);
    return Promise.all(areas.map(async (area) => ({ ...(await this.read(area)), ...this.outOfSight(area) })));
  }

  /** The cells that a filter or a hidden row or column keeps out of sight, if there are any. */
  private outOfSight({ sheet, row, column, rows, columns }: Area): Pick<Cells, "hidden"> {
    const sheetId = this.idOf(sheet);
    const hiddenRows = Array.from({ length: rows }, (_, at) => this.getters.isRowHidden(sheetId, row + at));
    const hiddenColumns = Array.from({ length: columns }, (_, at) =>
      this.getters.isColHidden(sheetId, column + at),
    );
    if (![...hiddenRows, ...hiddenColumns].includes(true)) return {};
    return { hidden: hiddenRows.map((isOut) => hiddenColumns.map((isColumnOut) => isOut || isColumnOut)) };
  }

  async places(): Promise<readonly Area[]> {
    this.refuseOtherThanCells();
    const sheet = this.getters.getSheetName(this.getters.getActiveSheetId());
    return this.getters.getSelectedZones().map((zone) => areaOfBox(sheet, zone));
  }

  async active(): Promise<Area> {
    this.refuseOtherThanCells();
    const { sheetId, col, row } = this.getters.getActivePosition();
    return { sheet: this.getters.getSheetName(sheetId), row, column: col, rows: 1, columns: 1 };
  }

  async read(area: Area): Promise<Cells> {
    const sheetId = this.idOf(area.sheet);
    const cells = Array.from({ length: area.rows }, (_, row) =>
      Array.from({ length: area.columns }, (_, column) =>
        this.cell({ sheetId, row: area.row + row, col: area.column + column }),
      ),
    );
    return {
      ...area,
      formulas: cells.map((row) => row.map(({ formula }) => formula)),
      values: cells.map((row) => row.map(({ value }) => value)),
      formats: cells.map((row) => row.map(({ format }) => format)),
      fixed: cells.map((row) => row.map(({ fixed }) => fixed)),
    };
  }

  private cell(position: Position): { formula: Content; value: Content; format: string; fixed: Fixed } {
    const { getters } = this;
    const cell = getters.getCell(position);
    const evaluated = getters.getEvaluatedCell(position);
    const shown = (evaluated.value ?? "") as Content;
    const value = typeof shown === "string" ? (evaluated.type === "error" ? fileError(shown) : shown) : shown;
    const typed = cell && !cell.isFormula && cell.content !== "";
    return {
      formula: cell?.isFormula ? getters.getCellText(position, { showFormula: true }) : typed ? value : "",
      value,
      format: evaluated.format ?? cell?.format ?? "General",
      fixed: this.fixed(position),
    };
  }

  private fixed(position: Position): Fixed {
    if (this.getters.isInMerge(position)) return "merged";
    const origin = this.getters.getArrayFormulaSpreadingOn(position);
    const spilled = origin && (origin.col !== position.col || origin.row !== position.row);
    return spilled ? "spilled" : undefined;
  }

  async sheets(): Promise<readonly string[]> {
    return this.getters.getSheetIds().map((id) => this.getters.getSheetName(id));
  }

  async homeOf(cell: Area): Promise<Area> {
    const position = this.positionOf(cell);
    const { row, col } = this.getters.getArrayFormulaSpreadingOn(position) ?? position;
    return { ...cell, row, column: col };
  }

  async filledFrom(cell: Area): Promise<Area> {
    const zone = this.getters.getSpreadZone(this.positionOf(cell));
    return zone ? areaOfBox(cell.sheet, zone) : cell;
  }

  async show({ sheet, row, column, rows, columns }: Area): Promise<void> {
    this.activate(this.idOf(sheet));
    const zone = { left: column, right: column + columns - 1, top: row, bottom: row + rows - 1 };
    this.model.selection.selectZone({ cell: { col: column, row }, zone });
  }

  async used(sheet: string): Promise<Area | undefined> {
    const positions = this.getters
      .getEvaluatedCellsPositions(this.idOf(sheet))
      .filter((position) => this.getters.getEvaluatedCell(position).type !== "empty");
    if (positions.length === 0) return undefined;
    const zone = { left: Infinity, right: 0, top: Infinity, bottom: 0 };
    for (const { col, row } of positions) {
      zone.left = Math.min(zone.left, col);
      zone.right = Math.max(zone.right, col);
      zone.top = Math.min(zone.top, row);
      zone.bottom = Math.max(zone.bottom, row);
    }
    return areaOfBox(sheet, zone);
  }

  async write(changes: readonly Change[]): Promise<void> {
    const steps: Step[] = [];
    const size = new Map<string, { rows: number; columns: number }>();
    for (const change of changes) {
      const sheetId = this.idOf(change.sheet);
      if (this.getters.isSheetLocked(sheetId))
        throw new Refusal(`The sheet "${change.sheet}" is locked: unlock it first. Nothing was changed.`);
      const columns = Math.max(0, ...change.formulas.map((row) => row.length));
      const unwritable = fixedCell(
        await this.read({ ...change, rows: change.formulas.length, columns }),
        change.formulas,
      );
      if (unwritable) throw new Refusal(fixedSentence(unwritable.address, unwritable.fixed));
      const needed = size.get(sheetId) ?? { rows: 0, columns: 0 };
      needed.rows = Math.max(needed.rows, change.row + change.formulas.length);
      needed.columns = Math.max(needed.columns, change.column + columns);
      size.set(sheetId, needed);
      change.formulas.forEach((row, down) => {
        row.forEach((content, across) => {
          if (content === undefined) return;
          const position = { sheetId, row: change.row + down, col: change.column + across };
          steps.push({ type: "UPDATE_CELL", ...position, content: asUserInput(content) });
        });
      });
    }
    const room = [...size].flatMap(([sheetId, { rows, columns }]) =>
      roomFor(this.model, sheetId, rows, columns),
    );
    runWithinRules(this.model, [...room, ...steps]);
  }

  async hasRules(area: Area): Promise<boolean> {
    const sheetId = this.idOf(area.sheet);
    return [...this.positions(sheetId, area)].some((cell) => this.getters.getValidationRuleForCell(cell));
  }

  async addSheet(sheet: NewSheet): Promise<string> {
    const name = this.freeName(sheet.name);
    const sheetId = this.freeId();
    const position = this.getters.getSheetIds().length;
    runSteps(this.model, oneStepPerCell(newSheetSteps(sheet, { sheetId, name, position })));
    keepPrintSetup(this.model, sheetId, sheet.print);
    this.activate(sheetId);
    return name;
  }

  async copyAsValues(
    sheet: string,
    replace: (formula: string) => boolean,
  ): Promise<{ name: string; replaced: number }> {
    const sheetId = this.idOf(sheet);
    const name = this.freeName(`${sheet} (values)`);
    const copyId = this.freeId();
    const used = await this.used(sheet);
    const values: Step[] = [];
    for (const position of used ? this.positions(sheetId, used) : []) {
      const origin = this.getters.getArrayFormulaSpreadingOn(position) ?? position;
      if (!this.getters.getCell(origin)?.isFormula) continue;
      if (!replace(this.getters.getCellText(origin, { showFormula: true }))) continue;
      const { value, format } = this.cell(position);
      values.push({
        type: "UPDATE_CELL",
        ...position,
        sheetId: copyId,
        content: asLiteralInput(value),
        ...(format === "General" ? {} : { format }),
      });
    }
    runSteps(this.model, [
      { type: "DUPLICATE_SHEET", sheetId, sheetIdTo: copyId, sheetNameTo: name },
      ...values,
    ]);
    keepPrintSetup(this.model, copyId, printSetupOf(this.model, sheetId));
    this.activate(copyId);
    return { name, replaced: values.length };
  }

  private *positions(sheetId: string, area: Area): Generator<Position> {
    for (let row = area.row; row < area.row + area.rows; row++)
      for (let col = area.column; col < area.column + area.columns; col++) yield { sheetId, row, col };
  }

  private activate(sheetId: string): void {
    this.model.dispatch("ACTIVATE_SHEET", {
      sheetIdFrom: this.getters.getActiveSheetId(),
      sheetIdTo: sheetId,
    });
  }

  private freeName(wanted: string): string {
    let name = wanted;
    for (let number = 2; this.getters.getSheetIdByName(name) !== undefined; number++)
      name = `${wanted} ${number}`;
    return name;
  }

  private freeId(): string {
    let number = 1;
    while (this.getters.getSheetIds().includes(`reamwright-${number}`)) number++;
    return `reamwright-${number}`;
  }

  async hasDecimalComma(): Promise<boolean> {
    return this.model.getters.getLocale().decimalSeparator === ",";
  }

  onChange(listener: () => void): () => void {
    const owner = {};
    this.model.on("update", owner, listener);
    return () => this.model.off("update", owner);
  }
}
