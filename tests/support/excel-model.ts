// tests: what a host of office.js holds: sheets in memory, and the members of its objects that the adapter uses, by the
// names that go over the wire. A member that is not here is an error of the test.

import { readBox } from "../../src/workbook/xlsx/addresses.ts";
import { charts, shapes } from "./excel-pictures.ts";

export type Content = string | number | boolean;
export type Box = readonly [row: number, column: number, rows: number, columns: number];

export interface SheetDouble {
  name: string;
  readonly cells: Content[][];
  readonly values?: Content[][];
  readonly formats?: string[][];
  readonly protected?: boolean;
  readonly merged?: readonly Box[];
  /** Spilled rectangles, the first cell of each the formula's. */
  readonly spilled?: readonly Box[];
  readonly hiddenRows?: readonly number[];
  /** Cells that have a format and no content count as used too. */
  readonly formatted?: Box;
  readonly tables?: readonly {
    readonly name: string;
    readonly box: Box;
    /** Whether the last row holds totals. */
    readonly totals?: boolean;
  }[];
  /** Data validation, which this host like Excel does not hold against what is written by an add-in. */
  readonly rules?: readonly {
    readonly box: Box;
    readonly allows: (content: Content) => boolean;
    readonly style?: "Stop" | "Warning" | "Information";
    readonly showAlert?: boolean;
  }[];
  readonly pivots?: readonly { readonly name: string; readonly box: Box }[];
  /** Names of the sheet alone, with their formulas. */
  readonly names?: Readonly<Record<string, string>>;
}

export interface HostState {
  readonly sheets: SheetDouble[];
  readonly selection: { readonly sheet: string; readonly boxes: readonly Box[] } | "chart";
  /** Calculation states, one for each time it is asked for; then "Done". */
  readonly states: string[];
  readonly decimalSeparator: string;
  readonly calculationMode: string;
  /** Whether days are counted from 1904. */
  readonly from1904: boolean;
  readonly isReadOnly: boolean;
  /** What happens just before a sheet is copied. */
  readonly beforeCopy: () => void;
  /** Whether no sheet may be added. */
  readonly isStructureProtected: boolean;
  /** Names of the workbook, with their formulas. */
  readonly names: Readonly<Record<string, string>>;
  readonly asked: { readonly added: string[]; readonly activated: string[] };
}

/** Excel's own refusal. */
export class HostError extends Error {
  constructor(readonly code: string) {
    super(code);
  }
}

interface Members {
  /** Properties that can be loaded. */
  readonly values?: Readonly<Record<string, () => unknown>>;
  readonly children?: Readonly<Record<string, () => HostObject | null>>;
  readonly methods?: Readonly<Record<string, (...given: any[]) => unknown>>;
  readonly setters?: Readonly<Record<string, (value: any) => void>>;
  readonly items?: () => readonly HostObject[];
  readonly item?: (key: string) => HostObject;
}

export class HostObject {
  constructor(
    readonly type: string,
    private readonly members: Members,
    /** What an index finds it by. */
    readonly id?: string,
  ) {}

  private member<Kind>(kind: Readonly<Record<string, Kind>> | undefined, name: string): Kind {
    const found = kind?.[name];
    if (found === undefined) throw new Error(`the host has no ${this.type}.${name}`);
    return found;
  }

  value = (name: string) => this.member(this.members.values, name)();
  child = (name: string) => this.member(this.members.children, name)();
  call = (name: string, given: readonly unknown[]) => this.member(this.members.methods, name)(...given);
  set = (name: string, value: unknown) => this.member(this.members.setters, name)(value);
  item = (key: string) => this.members.item!(key);

  query(names: readonly string[], use: (object: HostObject, name: string) => void): unknown {
    const { items } = this.members;
    if (items) return { _Items: items().map((item) => item.query(names, use)) };
    return Object.fromEntries(
      names
        .filter((name) => name !== "isNullObject")
        .map((name) => {
          const wire = name.charAt(0).toUpperCase() + name.slice(1);
          use(this, wire);
          return [wire, this.member(this.members.values, wire)()];
        }),
    );
  }
}

const meets = (a: Box, b: Box) =>
  a[0] < b[0] + b[2] && b[0] < a[0] + a[2] && a[1] < b[1] + b[3] && b[1] < a[1] + a[3];

export function hostWorkbook({
  sheets,
  selection,
  states,
  asked,
  decimalSeparator,
  calculationMode,
  from1904,
  names,
  isReadOnly,
  isStructureProtected,
  beforeCopy,
}: HostState): HostObject {
  const ids = new Map<SheetDouble, string>();
  const idOf = (sheet: SheetDouble) => {
    if (!ids.has(sheet)) ids.set(sheet, `{${ids.size}}`);
    return ids.get(sheet)!;
  };
  const byName = (name: string) => {
    const found = sheets.find((sheet) => sheet.name === name || idOf(sheet) === name);
    if (!found) throw new HostError("ItemNotFound");
    return found;
  };
  const list = (type: string, items: readonly HostObject[]) => new HostObject(type, { items: () => items });
  const namedItems = (given: Readonly<Record<string, string>> = {}) =>
    list(
      "NamedItemCollection",
      Object.entries(given).map(
        ([name, formula]) =>
          new HostObject("NamedItem", { values: { Name: () => name, Formula: () => formula } }),
      ),
    );
  const tableOf = (
    sheet: SheetDouble,
    { name, box, totals = false }: NonNullable<SheetDouble["tables"]>[number],
  ) =>
    new HostObject(
      "Table",
      {
        values: { Name: () => name, ShowHeaders: () => true, ShowTotals: () => totals },
        children: {
          Worksheet: () => sheetOf(sheet),
          Columns: () =>
            list(
              "TableColumnCollection",
              block([box[0], box[1], 1, box[3]], sheet.cells, "")[0].map(
                (header) => new HostObject("TableColumn", { values: { Name: () => String(header) } }),
              ),
            ),
        },
        methods: { GetRange: () => rangeOf(sheet, box) },
      },
      name,
    );
  const selected = () => {
    if (selection === "chart") throw new HostError("InvalidSelection");
    return selection;
  };

  function usedBox({ cells, formatted, spilled = [] }: SheetDouble, valuesOnly: boolean): Box | undefined {
    const filled = cells.flatMap((row, r) =>
      (row ?? []).flatMap((cell, c) => (cell === "" || cell === undefined ? [] : [[r, c] as const])),
    );
    for (const [row, column, rows, columns] of [...spilled, ...(formatted && !valuesOnly ? [formatted] : [])])
      filled.push([row, column], [row + rows - 1, column + columns - 1]);
    if (filled.length === 0) return undefined;
    const least = (a: number, b: number) => Math.min(a, b);
    const most = (a: number, b: number) => Math.max(a, b);
    const [rows, columns] = [filled.map(([r]) => r), filled.map(([, c]) => c)];
    const [top, left] = [rows.reduce(least), columns.reduce(least)];
    return [top, left, rows.reduce(most) - top + 1, columns.reduce(most) - left + 1];
  }

  function block<T>([row, column, rows, columns]: Box, from: readonly (readonly T[])[], none: T): T[][] {
    return Array.from({ length: rows }, (_, r) =>
      Array.from({ length: columns }, (_, c) => from[row + r]?.[column + c] ?? none),
    );
  }

  function rangeOf(sheet: SheetDouble, box: Box): HostObject {
    const [row, column, rows, columns] = box;
    const spill = () => (sheet.spilled ?? []).find((one) => meets(one, [row, column, 1, 1]));
    const put = (contents: Content[][]) => {
      if (sheet.protected) throw new HostError("AccessDenied");
      if (row + rows > 1_048_576 || column + columns > 16_384) throw new HostError("InvalidArgument");
      if (contents.length !== rows || contents.some((line) => line.length !== columns))
        throw new HostError("InvalidArgument");
      contents.forEach((line, r) => {
        line.forEach((content, c) => {
          for (let at = sheet.cells.length; at <= row + r; at++) sheet.cells.push([]);
          // An apostrophe keeps a text one, and is no part of it.
          sheet.cells[row + r][column + c] =
            typeof content === "string" ? content.replace(/^'/, "") : content;
        });
      });
    };
    const ignored = () => {};
    return new HostObject("Range", {
      values: {
        RowIndex: () => row,
        ColumnIndex: () => column,
        RowCount: () => rows,
        ColumnCount: () => columns,
        Left: () => 48 * column,
        Top: () => 15 * row,
        Height: () => 15 * rows,
        Formulas: () => block(box, sheet.cells, ""),
        Values: () => block(box, sheet.values ?? sheet.cells, ""),
        NumberFormat: () => block(box, sheet.formats ?? [], "General"),
        HasSpill: () => {
          const found = block(box, [], 0).flatMap((line, r) =>
            line.map((_, c) => (sheet.spilled ?? []).some((one) => meets(one, [row + r, column + c, 1, 1]))),
          );
          return found.every((one) => one === found[0]) ? found[0] : null;
        },
        RowHidden: () => sheet.hiddenRows?.includes(row) ?? false,
        ColumnHidden: () => false,
      },
      setters: {
        Formulas: (contents) => put(contents),
        Values: (contents) => put(contents),
        NumberFormat: ignored,
        ColumnHidden: ignored,
      },
      children: {
        Worksheet: () => sheetOf(sheet),
        Format: () =>
          new HostObject("RangeFormat", {
            setters: {
              ColumnWidth: ignored,
              RowHeight: ignored,
              WrapText: ignored,
              VerticalAlignment: ignored,
              HorizontalAlignment: ignored,
            },
            children: {
              Font: () =>
                new HostObject("RangeFont", {
                  setters: { Bold: ignored, Italic: ignored, Color: ignored, Size: ignored, Name: ignored },
                }),
              Fill: () => new HostObject("RangeFill", { setters: { Color: ignored } }),
              Borders: () =>
                new HostObject("RangeBorderCollection", {
                  item: () => new HostObject("RangeBorder", { setters: { Style: ignored } }),
                }),
            },
          }),
        DataValidation: () => {
          const rules = (sheet.rules ?? []).filter((rule) => meets(rule.box, box));
          const [{ style = "Stop", showAlert = true }] = [...rules, {} as Partial<(typeof rules)[number]>];
          return new HostObject("DataValidation", {
            values: {
              Type: () => (rules.length === 0 ? "None" : "Inconsistent"),
              ErrorAlert: () => ({ style, showAlert, title: "", message: "" }),
            },
            setters: { Rule: ignored, ErrorAlert: ignored },
            methods: { GetInvalidCellsOrNullObject: () => areas(invalidIn(rules)) },
          });
        },
      },
      methods: {
        GetCell: (r, c) => rangeOf(sheet, [row + r, column + c, 1, 1]),
        GetResizedRange: (more, moreColumns) =>
          rangeOf(sheet, [row, column, rows + more, columns + moreColumns]),
        // office.js writes large ranges in parts that it finds with these two.
        GetRow: (r) => rangeOf(sheet, [row + r, column, 1, columns]),
        GetBoundingRect: (other: HostObject) => {
          const end = Number(other.value("RowIndex")) + 1;
          return rangeOf(sheet, [row, column, end - row, columns]);
        },
        GetMergedAreasOrNullObject: () => areas((sheet.merged ?? []).filter((one) => meets(one, box))),
        GetSpillParentOrNullObject: () => {
          const found = spill();
          return found ? rangeOf(sheet, [found[0], found[1], 1, 1]) : null;
        },
        GetSpillingToRangeOrNullObject: () => {
          const found = spill();
          return found && found[0] === row && found[1] === column ? rangeOf(sheet, found) : null;
        },
        GetSpecialCellsOrNullObject: (kind) => {
          if (kind !== "Visible") throw new HostError("InvalidArgument");
          const seen: Box[] = [];
          for (let r = row; r < row + rows; r++)
            if (!sheet.hiddenRows?.includes(r)) seen.push([r, column, 1, columns]);
          return areas(sheet.hiddenRows ? seen : [box]);
        },
        GetTables: () =>
          list(
            "TableScopedCollection",
            (sheet.tables ?? [])
              .filter((table) => meets(table.box, box))
              .map((table) => tableOf(sheet, table)),
          ),
        GetPivotTables: () => {
          const met = (sheet.pivots ?? []).filter((pivot) => meets(pivot.box, box));
          const objects = met.map(
            (pivot) =>
              new HostObject(
                "PivotTable",
                {
                  values: { Name: () => pivot.name },
                  children: {
                    Layout: () =>
                      new HostObject("PivotLayout", {
                        methods: { GetRange: () => rangeOf(sheet, pivot.box) },
                      }),
                  },
                },
                pivot.name,
              ),
          );
          return new HostObject("PivotTableScopedCollection", {
            items: () => objects,
            item: (key) => objects.find(({ id }) => id === key)!,
          });
        },
        Select: ignored,
        Merge: ignored,
      },
    });

    function invalidIn(rules: NonNullable<SheetDouble["rules"]>): Box[] {
      const cells = box[2] * box[3] > 100_000 ? [] : block(box, sheet.cells, "" as Content);
      return cells.flatMap((line, r) =>
        line.flatMap((content, c): Box[] => {
          const at: Box = [row + r, column + c, 1, 1];
          const rule = rules.find((one) => meets(one.box, at));
          return content === "" || !rule || rule.allows(content) ? [] : [at];
        }),
      );
    }
    function areas(boxes: readonly Box[]): HostObject | null {
      return boxes.length === 0 ? null : areasOf(sheet, boxes);
    }
  }

  const areasOf = (sheet: SheetDouble, boxes: readonly Box[]) =>
    new HostObject("RangeAreas", {
      children: {
        Areas: () =>
          list(
            "RangeCollection",
            boxes.map((box) => rangeOf(sheet, box)),
          ),
      },
    });

  function sheetOf(sheet: SheetDouble): HostObject {
    const members: Members = {
      values: { Name: () => sheet.name, Id: () => idOf(sheet) },
      setters: {
        Name: (name) => {
          if (sheets.some((one) => one !== sheet && one.name === name))
            throw new HostError("InvalidArgument");
          sheet.name = name;
        },
      },
      children: {
        Protection: () =>
          new HostObject("WorksheetProtection", { values: { Protected: () => sheet.protected ?? false } }),
        FreezePanes: () =>
          new HostObject("WorksheetFreezePanes", { methods: { FreezeRows: () => {}, FreezeAt: () => {} } }),
        Names: () => namedItems(sheet.names),
        Charts: charts,
        Shapes: shapes,
        PageLayout: () => {
          const set = () => {};
          const margins = { LeftMargin: set, RightMargin: set, TopMargin: set, BottomMargin: set };
          const texts = { LeftHeader: set, RightHeader: set, LeftFooter: set, RightFooter: set };
          const all = () => new HostObject("HeaderFooter", { setters: texts });
          return new HostObject("PageLayout", {
            setters: { PaperSize: set, Orientation: set, Zoom: set, ...margins },
            methods: { SetPrintArea: set, SetPrintTitleRows: set, SetPrintTitleColumns: set },
            children: {
              HeadersFooters: () =>
                new HostObject("HeaderFooterGroup", { children: { DefaultForAllPages: all } }),
            },
          });
        },
      },
      methods: {
        GetRangeByIndexes: (...box: [number, number, number, number]) => {
          const [row, column, rows, columns] = box;
          if (rows < 1 || columns < 1 || row + rows > 1_048_576 || column + columns > 16_384)
            throw new HostError("InvalidArgument");
          return rangeOf(sheet, box);
        },
        GetCell: (row, column) => rangeOf(sheet, [row, column, 1, 1]),
        GetRange: (address) => {
          const { top, left, bottom, right } = readBox(address)!;
          return rangeOf(sheet, [top, left, bottom - top + 1, right - left + 1]);
        },
        GetUsedRangeOrNullObject: (valuesOnly) => {
          const box = usedBox(sheet, valuesOnly);
          return box ? rangeOf(sheet, box) : null;
        },
        Activate: () => {
          asked.activated.push(sheet.name);
        },
        Delete: () => {
          sheets.splice(sheets.indexOf(sheet), 1);
        },
        Copy: () => {
          beforeCopy();
          const copy = { ...sheet, name: `${sheet.name} (2)`, cells: sheet.cells.map((row) => [...row]) };
          sheets.push(copy);
          return sheetOf(copy);
        },
      },
    };
    return new HostObject("Worksheet", members, idOf(sheet));
  }

  return new HostObject("Workbook", {
    values: { ReadOnly: () => isReadOnly },
    children: {
      Protection: () =>
        new HostObject("WorkbookProtection", { values: { Protected: () => isStructureProtected } }),
      Worksheets: () =>
        new HostObject("WorksheetCollection", {
          items: () => sheets.map(sheetOf),
          item: (name) => sheetOf(byName(name)),
          methods: {
            GetActiveWorksheet: () => sheetOf(byName(selected().sheet)),
            Add: (name) => {
              asked.added.push(name);
              const sheet: SheetDouble = { name, cells: [] };
              sheets.push(sheet);
              return sheetOf(sheet);
            },
          },
        }),
      Names: () => namedItems(names),
      Tables: () => {
        const all = sheets.flatMap((sheet) => (sheet.tables ?? []).map((table) => tableOf(sheet, table)));
        return new HostObject("TableCollection", {
          items: () => all,
          item: (key) => all.find(({ id }) => id === key)!,
        });
      },
      Functions: () =>
        new HostObject("Functions", {
          methods: {
            Date: (...[year, month, day]: [number, number, number]) =>
              new HostObject("FunctionResult", {
                values: {
                  Value: () => Date.UTC(year, month - 1, day) / 86_400_000 + 25_569 - (from1904 ? 1462 : 0),
                },
              }),
          },
        }),
      Application: () =>
        new HostObject("Application", {
          values: {
            CalculationState: () => states.shift() ?? "Done",
            CalculationMode: () => calculationMode,
            DecimalSeparator: () => decimalSeparator,
          },
        }),
    },
    methods: {
      GetSelectedRanges: () => areasOf(byName(selected().sheet), selected().boxes),
      GetActiveCell: () => {
        const [[row, column]] = selected().boxes;
        return rangeOf(byName(selected().sheet), [row, column, 1, 1]);
      },
    },
  });
}
