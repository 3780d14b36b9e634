// papers: the form of the holes on a trouble sheet: means of the two directions, their profile, taper and bell-mouth.

import { DEPTH, FINE, type HoleRow, LENGTH } from "./hole-row.ts";
import { cell, type Layout, type PaperCell } from "./layout.ts";
import { holeProfileFormula } from "./pictures/hole-profile.ts";

const NOT_AVAILABLE = "not available";
export const HOLES = 4;
export const POSITIONS = 5;
/** A size with its sign; zero too. */
const signed = (format: string) => `"+"${format};"−"${format};${format}`;
const LETTERS = "ABCDEFGHIJKL";

export interface Measured {
  /** The cells of all readings. */
  readonly readings: string;
  readonly positionRow: number;
  /** The row of each hole. */
  readonly rows: readonly number[];
}

export interface Forms {
  readonly names: string;
  readonly verdicts: string;
  readonly smallVerdicts: string;
  readonly differences: string;
}

export interface Hole {
  readonly callout: string;
  readonly lower: string;
  readonly upper: string;
}

/** The cells of the means, by hole and position. */
type Means = readonly (readonly string[])[];

export function formTable(layout: Layout, row: HoleRow, hole: Hole, measured: Measured): Forms {
  const { units } = row;
  const { rows, readings } = measured;
  const ifMeasured = (text: string) => `=IF(COUNT(${readings})=0,"","${text}")`;
  layout.heading(ifMeasured("Form"));
  const { positions, means } = meanTable(layout, units, measured);
  profile(layout, units, hole, positions, means);
  layout.row(
    [
      cell("", 1, "header"),
      ...["Taper", "Bell-mouth", "Barrel"].map((name) =>
        cell(ifMeasured(name), 1, "header", undefined, "center"),
      ),
      cell(ifMeasured("Form"), 2, "header"),
      cell(ifMeasured("Largest"), 1, "header", undefined, "center"),
      cell("", 2, "header"),
      cell(ifMeasured("Smallest"), 1, "header", undefined, "center"),
      cell("", 1, "header"),
      cell(ifMeasured("0° − 90°"), 1, "header", undefined, "center"),
    ],
    2,
  );
  const first = layout.next;
  rows.forEach((reading, at) => {
    layout.row(formRow(layout.next, units, hole.callout, at + 1, reading, measured.positionRow, means[at]));
  });
  const down = (letter: string) => `$${letter}$${first}:$${letter}$${first + HOLES - 1}`;
  layout.sentence(
    `=IF(COUNTIF(${down("E")},"${NOT_AVAILABLE}")=0,"","Form not available: three positions needed.")`,
    "wrapped",
    1,
  );
  return { names: down("E"), verdicts: down("H"), smallVerdicts: down("K"), differences: down("L") };
}

function meanTable(
  layout: Layout,
  units: HoleRow["units"],
  { rows, positionRow }: Measured,
): { positions: string[]; means: Means } {
  const positions = Array.from({ length: POSITIONS }, (_, at) => `$${LETTERS[2 + 2 * at]}$${positionRow}`);
  layout.row(
    [
      cell(`=IF(COUNT(${positions.join(",")})=0,"","Mean of the two directions")`, 2, "header"),
      ...positions.map((position) =>
        cell(`=IF(${position}="","",${position})`, 2, "header", DEPTH[units], "center"),
      ),
    ],
    2,
  );
  const means = rows.map((reading, hole) => {
    const twos = positions.map(
      (_, pair) => `$${LETTERS[2 + 2 * pair]}$${reading}:$${LETTERS[3 + 2 * pair]}$${reading}`,
    );
    const [, ...cells] = layout.row([
      cell(`=IF(COUNT($C$${reading}:$L$${reading})=0,"","Hole ${hole + 1}")`, 2, "label"),
      ...twos.map((two) =>
        cell(`=IF(COUNT(${two})=0,"",AVERAGE(${two}))`, 2, undefined, FINE[units], "center"),
      ),
    ]);
    return cells.map((address) => address.replace(/^([A-Z]+)(\d+)$/, "$$$1$$$2"));
  });
  return { positions, means };
}

/** Lines of text that the profile takes the place of. */
const PROFILE_LINES = 9;

function profile(
  layout: Layout,
  units: HoleRow["units"],
  { lower, upper }: Hole,
  positions: readonly string[],
  means: Means,
): void {
  const at = layout.next;
  layout.row([], PROFILE_LINES);
  layout.picture(
    {
      area: `A${at}:L${at}`,
      title: "Profile of the holes",
      lines: {
        at: `N${at}`,
        x: positions,
        series: [
          ...means.map((cells, hole) => [`Hole ${hole + 1}`, cells] as const),
          ["Lower limit", positions.map(() => lower)] as const,
          ["Upper limit", positions.map(() => upper)] as const,
        ],
      },
    },
    holeProfileFormula(units, { lower, upper, positions, holes: means }),
  );
}

function formRow(
  at: number,
  units: HoleRow["units"],
  callout: string,
  number: number,
  reading: number,
  positionRow: number,
  means: readonly string[],
): PaperCell[] {
  const decimals = units === "mm" ? 3 : 4;
  const own = `$C$${reading}:$L$${reading}`;
  const mean = `${means[0]}:${means[means.length - 1].replace(/^\$K/, "$L")}`;
  const places = `$C$${positionRow}:$L$${positionRow}`;
  const form = (part: number) => `INDEX(REAM.HOLEFORM(${mean},${places},"${units}"),1,${part})`;
  const ifForm = (formula: string) => `=IF(COUNT(${mean})<3,"",${formula})`;
  const ifRead = (formula: string) => `=IF(COUNT(${own})=0,"",${formula})`;
  const inspect = (size: string) => ifRead(`REAM.INSPECT(${size},${callout},"${units}")`);
  const pairs = Array.from({ length: POSITIONS }, (_, pair) =>
    [2, 3].map((side) => `$${LETTERS[side + 2 * pair]}$${reading}`),
  );
  const differences = pairs.map(([one, other]) => `IF(COUNT(${one},${other})=2,ABS(${one}-${other}),0)`);
  const second = pairs.map(([, other]) => other).join(",");
  return [
    cell(ifRead(`"${number}"`), 1, "label"),
    ...[1, 2, 3].map((part) =>
      cell(ifForm(`ROUND(${form(part)},${decimals})`), 1, undefined, signed(LENGTH[units]), "center"),
    ),
    cell(ifRead(`IF(COUNT(${mean})<3,"${NOT_AVAILABLE}",${form(4)})`), 2, "strong"),
    cell(ifRead(`MAX(${own})`), 1, undefined, LENGTH[units], "center"),
    cell(inspect(`$G$${at}`), 2),
    cell(ifRead(`MIN(${own})`), 1, undefined, LENGTH[units], "center"),
    cell(inspect(`$J$${at}`), 1),
    cell(
      ifRead(`IF(COUNT(${second})=0,"one direction",MAX(${differences.join(",")}))`),
      1,
      undefined,
      LENGTH[units],
      "center",
    ),
  ];
}
