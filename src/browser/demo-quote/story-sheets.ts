// browser: the sheets after the quote: a proposal compared with the present process, a set-up, hand figures checked.
// All figures are of the invented shop.

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

/** One operation less and a dearer tool, told to the payback. */
export function proposalSheet(shop: string): SheetData {
  const sheet = storySheet(
    "Proposal",
    [190, 130, 130, 24, 190, 90, 90, 90],
    [
      ["Present and proposed process"],
      [
        "Valve block, 16 mm hole in aluminum: today drilled, bored and reamed in HSS; proposed drilled and reamed in carbide. Invented figures of",
      ],
      [],
      ["Process", undefined, undefined, undefined, "What a part costs"],
      ["", "Present", "Proposed", undefined, "=REAM.COMPARE(B7:B13,C7:C13,B21)"],
      ["Operations", "drill, bore, ream", "drill, ream"],
      ["Cycle time, s", 74, 46],
      ["Machine rate, per hour", 85, 85],
      ["Cost of an edge", "=REAM.EDGECOST(B15:C15,B16:C16,B17:C17,B18:C18)"],
      ["Parts per edge", 300, 900],
      ["Time to change an edge, s", 240, 240],
      ["Other operations, per part", 1.1, 0.35],
      ["Scrap, share of parts", 0.02, 0.01],
      ["The tool"],
      ["Price", 48, 260, undefined, "What the change brings"],
      ["Edges", 1, 1, undefined, "Saving per part", "=REAM.SAVING(F11,G11)"],
      ["Regrinds", 4, 3, undefined, "Saving per year", "=F16*B21"],
      ["Cost of a regrind", 14, 38, undefined, "Payback, months", "=REAM.PAYBACK(B22,F16,B21)"],
      [
        undefined,
        undefined,
        undefined,
        undefined,
        "Pays from this many parts",
        "=REAM.BREAKEVEN(0,F11,B22,G11)",
      ],
      ["The year", undefined, undefined, undefined, "Machine hours saved", "=REAM.HOURSSAVED(B7,C7,B21)"],
      ["Parts per year", 40000],
      ["Investment (holder, trials)", 6500],
    ],
    shop,
  );
  paint(sheet, "group", "A4:C4", "E4:H4", "A14:C14", "E15:H15", "A20:C20");
  paint(sheet, "header", "A5:C5", "E5:H5");
  paint(sheet, "inputText", "B6:C6");
  paint(sheet, "input", "B7:C8", "B10:C13", "B15:C18", "B21:B22");
  paint(sheet, "computed", "B9:C9", "E6:H14", "F16:F20");
  format(sheet, "money", "B9:C9", "F6:H11", "F14:H14", "F16:F17", "B12:C12");
  format(sheet, "tenth", "F12:H13", "F18");
  format(sheet, "whole", "F19:F20", "B21:B22");
  return sheet;
}

const readings: readonly Row[] = [
  ["Pump body, 12 H7", 0, 0.003, 0.008, 0.005],
  ["Valve block, 16 ±0.01", 0.001, 0.002, 0.001, 0],
  ["Gear case, 25 H7", 0, 0.004, 0.006, 0.002],
  ["Manifold, 10 H7", 0.002, 0.012, 0.01, 0],
  ["Rocker, 18 H9", 0, 0.009, 0.004, -0.012],
];

/** Spread as trial holes lie: invented, not drawn at random, so that the sheet is the same each time. */
const trialHoles = [9, 10, 8, 9, 11, 9, 7, 10, 9, 8, 10, 9, 12, 9, 8, 10, 9, 11, 8, 9, 10, 9, 7, 9, 10].map(
  (micrometres) => 10 + micrometres / 1000,
);

/** Run-out of a reamer from four readings, and whether the trial holes hold their tolerance. */
export function setUpSheet(shop: string): SheetData {
  const first = 6;
  const last = first + readings.length - 1;
  const holesFirst = 15;
  const holesLast = holesFirst + trialHoles.length - 1;
  const holes = `B${holesFirst}:B${holesLast}`;
  const named: readonly Row[] = [
    ["Callout", "10 H7"],
    ["Cp", `=REAM.CAPABILITY(${holes},F${holesFirst})`],
    ["Share in tolerance", `=REAM.INTOLERANCE(H${holesFirst + 1},I${holesFirst + 1},F${holesFirst})`],
    ["Reamer cuts over by", `=REAM.CUTSOVER(${holes},10.006)`],
  ];
  const holeRows = trialHoles.map((hole, at): Row => {
    const left = [at + 1, hole, at === 0 ? `=REAM.INSPECT(${holes},F${holesFirst})` : undefined];
    return at < named.length ? [...left, undefined, ...named[at]] : left;
  });
  const sheet = storySheet(
    "Set-up",
    [150, 80, 80, 80, 150, 90, 90, 90, 130],
    [
      ["Setting up"],
      [
        "Readings of an indicator at four marks on the tool, plus toward the plunger; all in mm. Invented figures of",
      ],
      [],
      ["Run-out at the spindle", undefined, undefined, undefined, undefined, "What the readings mean"],
      ["Tool", "at 0°", "at 90°", "at 180°", "at 270°", "Run-out", "High side, °", "Move by", "To 0.005 mm"],
      ...readings.map(
        (row, at): Row =>
          at > 0
            ? row
            : [
                ...row,
                `=REAM.RUNOUT(B${first}:B${last},C${first}:C${last},D${first}:D${last},E${first}:E${last})`,
                undefined,
                undefined,
                `=REAM.RUNOUTCHECK(F${first}:F${last})`,
              ],
      ),
      ["The opposite readings of the last line do not add up: the surface or the indicator is not sound."],
      [],
      ["Trial holes", undefined, undefined, undefined, "What they show"],
      ["No.", "Measured", "10 H7", undefined, "", "Value or Cp", "Cpk", "Mean", "Deviation"],
      ...holeRows,
    ],
    shop,
  );
  paint(sheet, "group", "A4:I4", "A13:C13", "E13:I13");
  paint(sheet, "header", "A5:I5", "A14:C14", "E14:I14");
  paint(sheet, "inputText", `A${first}:A${last}`, `F${holesFirst}`);
  paint(sheet, "input", `B${first}:E${last}`, holes);
  paint(sheet, "note", `A${last + 1}`);
  format(sheet, "mm", `B${first}:F${last}`, `H${first}:H${last}`, holes, `H${holesFirst + 1}`);
  format(sheet, "mm", `F${holesFirst + 1}:G${holesFirst + 1}`, `F${holesFirst + 2}:G${holesFirst + 3}`);
  format(sheet, "inFine", `I${holesFirst + 1}`);
  format(sheet, "tenth", `G${first}:G${last}`);
  return sheet;
}

const handFigures: readonly (readonly [what: string, hand: number, formula: string])[] = [
  ["Rev/min: 50 ft/min, 0.5 in", 381.97, '=REAM.RPM(50,0.5,,"in")'],
  ["Rev/min: 50 ft/min, 0.5 in", 1200, '=REAM.RPM(50,0.5,,"in")'],
  ["Rev/min: 50 ft/min, 0.5 in", 400, '=REAM.RPM(50,0.5,,"in")'],
  ["Rev/min: 50 ft/min, 0.5 in", 31.83, '=REAM.RPM(50,0.5,,"in")'],
  ["Rev/min: 15 m/min, 12.7 mm", 9549.3, "=REAM.RPM(15,12.7)"],
  ["Feed per rev: 0.002 in, 6 flutes", 0.002, "=REAM.FEEDFROMTOOTH(0.002,6)"],
  ["Time: 1.225 in at 4.584 in/min", 0.2673, '=REAM.HOLETIME(1.225,4.584,,,"rapid","in")'],
  ["Run-out from 0, 3, 8, 5 µm", 4.12, "=1000*INDEX(REAM.RUNOUT(0,0.003,0.008,0.005),1,1)"],
  ["Stock under 12 mm", 0.125, "=REAM.STOCK(12)"],
  ["Edge: 120, 3 regrinds at 25", 48.8, "=REAM.EDGECOST(120,1,3,25)"],
];

/** Figures worked by hand against the functions, with the slip named. */
export function handFiguresSheet(shop: string): SheetData {
  const first = 5;
  const last = first + handFigures.length - 1;
  const sheet = storySheet(
    "Hand figures",
    [220, 90, 100, 700],
    [
      ["Hand figures checked"],
      [
        "Each figure is set against the function for it; what is off by more than 1 % is told, with the slip if it is a known one. Invented figures of",
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
