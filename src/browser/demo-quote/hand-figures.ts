// browser: hand figures checked by the functions. All figures are of the invented shop.

import { numberFormats, type SheetData, styles } from "../sheet.ts";

type Row = readonly (string | number | undefined)[];
type StyleName = keyof typeof styles;

/** A sheet written row by row; `paint` gives styles and formats to ranges. */
function storySheet(name: string, widths: readonly number[], rows: readonly Row[], shop: string): SheetData {
  const sheet: SheetData = {
    id: name.toLowerCase().replaceAll(" ", "-"),
    name,
    colNumber: widths.length + 2,
    rowNumber: rows.length + 20,
    cells: {},
    styles: { A1: styles.title, A2: styles.note },
    formats: {},
    borders: {},
    merges: [],
    cols: Object.fromEntries(widths.map((size, column) => [column, { size }])),
    rows: { 0: { size: 30 }, 1: { size: 20 } },
    panes: { xSplit: 0, ySplit: 2 },
  };
  rows.forEach((row, at) => {
    row.forEach((cell, column) => {
      if (cell !== undefined) sheet.cells[`${String.fromCharCode(65 + column)}${at + 1}`] = String(cell);
    });
  });
  sheet.cells.A2 = `${sheet.cells.A2} ${shop}.`;
  return sheet;
}

function paint(sheet: SheetData, style: StyleName, ...ranges: string[]): void {
  for (const range of ranges) sheet.styles[range] = styles[style];
}

function format(sheet: SheetData, name: keyof typeof numberFormats, ...ranges: string[]): void {
  for (const range of ranges) sheet.formats[range] = numberFormats[name];
}

const handFigures: readonly (readonly [what: string, hand: number, formula: string])[] = [
  ["Rev/min: 50 ft/min, 0.5 in", 381.97, '=REAM.RPM(50,0.5,,"in")'],
  ["Rev/min: 50 ft/min, 0.5 in", 1200, '=REAM.RPM(50,0.5,,"in")'],
  ["Rev/min: 50 ft/min, 0.5 in", 400, '=REAM.RPM(50,0.5,,"in")'],
  ["Rev/min: 50 ft/min, 0.5 in", 31.83, '=REAM.RPM(50,0.5,,"in")'],
  ["Rev/min: 15 m/min, 12.7 mm", 9549.3, "=REAM.RPM(15,12.7)"],
  ["Feed per rev: 0.002 in, 6 flutes", 0.002, "=REAM.FEEDFROMTOOTH(0.002,6)"],
  ["Time: 1.225 in at 4.584 in/min", 0.2673, '=REAM.HOLETIME(1.225,4.584,,,"rapid","in")'],
  ["Runout from 0, 3, 8, 5 µm", 4.12, "=1000*INDEX(REAM.RUNOUT(0,0.003,0.008,0.005),1,1)"],
  ["Stock under 12 mm", 0.125, "=REAM.STOCK(12)"],
  ["Edge: 120, 3 regrinds at 25", 48.8, "=REAM.EDGECOST(120,1,3,25)"],
];

/** Figures worked by hand against the functions, with the mistake named. */
export function handFiguresSheet(shop: string): SheetData {
  const first = 5;
  const last = first + handFigures.length - 1;
  const sheet = storySheet(
    "Hand figures",
    [220, 90, 100, 700],
    [
      ["Hand figures checked"],
      [
        "Each figure is checked by its function. One that differs by more than 1 % is named, with the mistake if it is a known one. Invented figures of",
      ],
      [],
      ["What was worked out", "By hand", "By function", "What the check says"],
      ...handFigures.map(
        ([what, hand, formula], at): Row => [
          what,
          hand,
          formula,
          at === 0 ? `=REAM.CHECK(B${first}:B${last},C${first}:C${last})` : undefined,
        ],
      ),
      [],
      ["How a figure comes about"],
      ['=REAM.STEPS("RPM",50,0.5,,"in")'],
    ],
    shop,
  );
  paint(sheet, "header", "A4:D4");
  paint(sheet, "inputText", `A${first}:A${last}`);
  paint(sheet, "input", `B${first}:B${last}`);
  paint(sheet, "group", `A${last + 2}:D${last + 2}`);
  format(sheet, "mm", `B${first}:C${last}`);
  return sheet;
}
