// taskpane: a new sheet to quote reamed holes on: inputs on the left, each computed column one formula that spills.

import { materials } from "../../data/materials/materials.ts";
import { type NewColumn, type NewSheet, Refusal } from "../../workbook/workbook.ts";

export type Units = "mm" | "in";

const TOOLS = ["HSS", "carbide"];
/** Over the table: title, what to do, three rows of settings, an empty row. */
const FIRST_DATA_ROW = 8;
const MOST_ROWS = 1000;

/** Invented figures of the first row and the settings, to be written over. */
const EXAMPLE = {
  mm: { callout: "12 H7", depth: 30, size: "0.000", fine: "0.000", rate: "0.0" },
  in: { callout: ".5000 +.0005/-.0000", depth: 1.25, size: "0.0000", fine: "0.00000", rate: "0.00" },
};

/** @param rows parts that the table has room for @throws Refusal */
export function quotingSheet(units: Units, rows: number): NewSheet {
  if (!Number.isInteger(rows) || rows < 1 || rows > MOST_ROWS)
    throw new Refusal(`The number of rows must be a whole number from 1 to ${MOST_ROWS}.`);
  const last = FIRST_DATA_ROW + rows - 1;
  const column = (letter: string) => `${letter}${FIRST_DATA_ROW}:${letter}${last}`;
  const { callout, depth, size, fine, rate } = EXAMPLE[units];
  const length = units;
  const speed = units === "mm" ? "m/min" : "ft/min";
  const unitsCell = "$C$3";
  const [maxRpm, moveTime, toolChange, loadTime] = ["$C$4", "$F$3", "$F$4", "$F$5"];
  const [machineRate, setupTime, setupRate, margin] = ["$C$5", "$I$3", "$I$4", "$I$5"];
  const columns: NewColumn[] = [
    { header: "Part", width: 18, first: "Example part" },
    { header: "Callout", width: 24, first: callout },
    {
      header: "Material",
      width: 22,
      first: "medium-carbon steel",
      choices: materials.map(({ key }) => key),
    },
    { header: "Tool", width: 10, first: "HSS", choices: TOOLS },
    { header: `Depth, ${length}`, width: 10, first: depth, format: size },
    { header: "Holes per part", width: 10, first: 2, format: "0" },
    { header: "Batch", width: 10, first: 250, format: "0" },
    {
      header: `Nominal, ${length}`,
      width: 11,
      format: size,
      first: `=REAM.CALLOUT(${column("B")},"nominal",${unitsCell})`,
    },
    {
      header: `Lower limit, ${length}`,
      width: 11,
      format: size,
      first: `=REAM.LIMITS(${column("B")},${unitsCell})`,
    },
    { header: `Upper limit, ${length}`, width: 11, format: size },
    {
      header: `Reamer least, ${length}`,
      width: 11,
      format: fine,
      first: `=REAM.REAMERLIMITS(${column("B")},,${unitsCell})`,
    },
    { header: `Reamer greatest, ${length}`, width: 11, format: fine },
    {
      header: "Drill",
      width: 9,
      first: `=REAM.DRILLFOR(${column("H")},${column("C")},,${unitsCell})`,
    },
    { header: `Drill diameter, ${length}`, width: 11, format: size },
    { header: `Stock, ${length}`, width: 10, format: size },
    {
      header: `Surface speed, ${speed}`,
      width: 11,
      format: "0.0",
      first: `=REAM.CUTTINGDATA(${column("C")},${column("H")},${column("D")},,${maxRpm},${unitsCell})`,
    },
    { header: "Speed, rev/min", width: 10, format: "0" },
    { header: `Feed, ${length}/rev`, width: 10, format: fine },
    { header: `Feed rate, ${length}/min`, width: 10, format: rate },
    {
      header: "Per hole, s",
      width: 10,
      format: "0.0",
      first: `=REAM.HOLETIME(${column("E")},${column("S")},,,,${unitsCell})`,
    },
    {
      header: "Per part, s",
      width: 10,
      format: "0.0",
      first: `=REAM.CYCLETIME(${column("T")},${column("F")},${moveTime},${toolChange},${loadTime})`,
    },
    {
      header: "Cost per part",
      width: 10,
      format: "0.00",
      first: `=REAM.PARTCOST(${column("U")},${machineRate})`,
    },
    {
      header: "Price per part",
      width: 10,
      format: "0.00",
      first: `=REAM.PRICE(${column("V")},${setupTime},${setupRate},${column("G")},,${margin})`,
    },
  ];
  return {
    name: "Quote of holes",
    top: [
      ["Quote of reamed holes"],
      [
        "Write over the example in the first row and over the settings. Speeds and feeds are starting values: read the cautions.",
      ],
      ["", "Units", units, "Move between holes, s", "", 3, "Set-up, min", "", 45],
      ["", "Spindle limit, rev/min", 6000, "Tool change, s", "", 6, "Set-up rate, per hour", "", 60],
      ["", "Machine rate, per hour", 60, "Load and unload, s", "", 40, "Margin on the price", "", 0.2],
      [],
    ],
    columns,
    rows,
  };
}
