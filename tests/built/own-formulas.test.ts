// tests: a filled copy that computes without our functions: what each formula becomes, and what the report says of it.

import { describe, expect, test } from "vitest";
import { fillWorkbook } from "../../src/fill/fill-workbook.ts";
import { loadFunctions } from "../../src/fill/load-functions.ts";
import { workbookLines } from "../../src/fill/report.ts";
import { joined, type SmallWorkbook, smallWorkbook, textsIn } from "../support/package.ts";

const functions = loadFunctions();

const number = (cell: string, value: number) => `<c r="${cell}"><v>${value}</v></c>`;
const formula = (cell: string, text: string, attributes = "") =>
  `<c r="${cell}"><f${attributes}>${text}</f><v>0</v></c>`;
const row = (at: number, ...cells: string[]) => `<row r="${at}">${cells.join("")}</row>`;

function copyOf(rows: string, more: Partial<SmallWorkbook> = {}) {
  const { pieces, report } = fillWorkbook(
    smallWorkbook({ sheets: { Quote: rows }, ...more }),
    functions,
    () => {},
    true,
  );
  const texts = textsIn(joined(pieces!));
  const sheet = texts["xl/worksheets/sheet1.xml"];
  const cell = (name: string) => {
    const inside = new RegExp(`<c r="${name}"[^>]*>(.*?)</c>`).exec(sheet)?.[1] ?? "";
    const part = (tag: string) => new RegExp(`<${tag}[^>]*>([^<]*)</${tag}>`).exec(inside)?.[1];
    return { formula: part("f"), value: part("v") };
  };
  return { texts, sheet, cell, report: report.own!, lines: workbookLines(report) };
}

// 1000·15/(π·10) and 1000·20/(π·12)
const RPM = [477.464829275686, 530.516476972984];

describe("a copy with the spreadsheet's own formulas", () => {
  const inputs = (at: number, speed: number, size: number) =>
    number(`A${at}`, speed) + number(`B${at}`, size);

  test("computes single cells, shared formulas, and formulas of other functions", () => {
    const { cell, sheet, report } = copyOf(
      row(1, inputs(1, 15, 10), formula("C1", "_xldudf_REAM_RPM(A1,B1)", ' t="shared" ref="C1:C2" si="0"')) +
        row(2, inputs(2, 20, 12), `<c r="C2"><f t="shared" si="0"/><v>0</v></c>`) +
        row(3, formula("A3", 'IF(A1&gt;1,_xldudf_REAM_FEEDRATE(0.2,C1),"")'), formula("B3", "ROUND(C1,0)")),
    );
    expect(sheet).not.toMatch(/REAM/i);
    expect(sheet).not.toMatch(/shared/);
    for (const [at, rpm] of RPM.entries()) {
      expect(cell(`C${at + 1}`).formula).toContain(`1000*A${at + 1}/(PI()*B${at + 1})`);
      expect(Number(cell(`C${at + 1}`).value)).toBeCloseTo(rpm, 9);
    }
    expect(cell("A3").formula).toContain("0.2*C1");
    expect(Number(cell("A3").value)).toBeCloseTo(0.2 * RPM[0], 9);
    expect(cell("B3")).toEqual({ formula: "ROUND(C1,0)", value: "477" });
    expect(report).toEqual({ formulas: 3, values: [], left: 0, names: [] });
  });

  test("computes each cell of a function that gives several", () => {
    const { cell, sheet } = copyOf(
      row(
        1,
        formula("A1", "_xldudf_REAM_RUNOUT(0,0.003,0.008,0.005)", ' t="array" ref="A1:C1"'),
        number("B1", 0),
        number("C1", 0),
        formula("D1", "INDEX(_xldudf_REAM_CLEANUP(0.25,0.05),1,2)"),
      ),
    );
    expect(sheet).not.toMatch(/REAM|t="array"/i);
    // ex −0.004, ey −0.001: 2·√(ex² + ey²), 180° + atan(1/4), half the runout.
    expect(cell("A1").value).toBe("0.0082462");
    expect(Number(cell("B1").value)).toBeCloseTo(194.036243, 5);
    expect(cell("C1").value).toBe("0.0041231");
    for (const name of ["A1", "B1", "C1"]) expect(cell(name).formula).toMatch(/^IF\(OR\(ABS\(/);
    expect(cell("D1")).toEqual({ formula: "(ROUND(0.25/2+0.05,7))", value: "0.175" });
  });

  test("computes the columns of a table in the same row", () => {
    const header = (cell: string, text: string) => `<c r="${cell}" t="inlineStr"><is><t>${text}</t></is></c>`;
    const { cell, sheet, report } = copyOf(
      row(1, header("A1", "Speed"), header("B1", "Size"), header("C1", "rpm")) +
        row(
          2,
          inputs(2, 15, 10),
          formula("C2", "_xldudf_REAM_RPM(Holes[[#This Row],[Speed]],Holes[[#This Row],[Size]])"),
        ),
      {
        tables: [
          `<table xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main" id="1" name="Holes" displayName="Holes" ref="A1:C2"><tableColumns count="3"><tableColumn id="1" name="Speed"/><tableColumn id="2" name="Size"/><tableColumn id="3" name="rpm"/></tableColumns></table>`,
        ],
      },
    );
    expect(sheet).not.toMatch(/REAM/i);
    expect(cell("C2").formula).toContain("1000*Holes[[#This Row],[Speed]]/(PI()*Holes[[#This Row],[Size]])");
    expect(Number(cell("C2").value)).toBeCloseTo(RPM[0], 9);
    expect(report).toMatchObject({ formulas: 1, values: [], left: 0 });
  });

  test("holds values where there is no such formula, or it shows something else, and says why", () => {
    const text = '<c r="A3" t="inlineStr"><is><t>12,5</t></is></c>';
    const { cell, sheet, report, lines } = copyOf(
      row(1, number("B1", 12), formula("C1", "_xldudf_REAM_STOCK(B1)")) +
        row(2, formula("A2", '_xldudf_REAM_LIMITS("12 H7")', ' t="array" ref="A2:B2"'), number("B2", 0)) +
        row(3, text, number("B3", 12), formula("C3", "_xldudf_REAM_RPM(A3,B3)")) +
        row(4, formula("A4", "_xldudf_REAM_RPM(A1*2,B1)")),
    );
    expect(sheet).not.toMatch(/REAM/i);
    expect(cell("C1")).toEqual({ formula: undefined, value: "0.25" });
    expect([cell("A2"), cell("B2")].map(({ value }) => value)).toEqual(["12", "12.018"]);
    // 1000·12.5/(π·12): the spreadsheet takes 12,5 for a text.
    expect(cell("C3").formula).toBeUndefined();
    expect(Number(cell("C3").value)).toBeCloseTo(331.572798, 5);
    expect(report.formulas).toBe(0);
    expect(report.values).toEqual([
      { sheet: "Quote", why: expect.stringMatching(/^STOCK looks up/), cells: 1, first: "C1" },
      { sheet: "Quote", why: expect.stringMatching(/^LIMITS reads a callout$/), cells: 2, first: "A2" },
      {
        sheet: "Quote",
        why: expect.stringMatching(/^surfaceSpeed of RPM is neither/),
        cells: 1,
        first: "A4",
      },
      { sheet: "Quote", why: expect.stringMatching(/shows another result here$/), cells: 1, first: "C3" },
    ]);
    expect(lines).toContain("0 cells computed by the spreadsheet's own formulas");
    expect(lines).toContain("  Quote!A2: 2 cells as values: LIMITS reads a callout");
  });

  test("leaves a formula whose value is not certain, and says so", () => {
    const { cell, report, lines } = copyOf(
      row(
        1,
        formula("A1", "CUBEVALUE(1)+_xldudf_REAM_STOCK(10)"),
        formula("B1", "CUBEVALUE(1)+_xldudf_REAM_SAVING(5,3)"),
      ),
    );
    expect(cell("A1").formula).toBe("CUBEVALUE(1)+_xldudf_REAM_STOCK(10)");
    expect(cell("B1").formula).toBe("CUBEVALUE(1)+(5-3)");
    expect(report).toMatchObject({ formulas: 1, left: 1 });
    expect(lines).toContain("  1 formula with our functions left: without the add-in they show #NAME?");
  });
});
