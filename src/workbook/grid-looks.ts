// workbook: how the cells of a new sheet look in the browser workbook, as commands of its grid.

import type { Step } from "./grid-steps.ts";
import type { Look, NewSheet } from "./workbook.ts";
import { readBox } from "./xlsx/addresses.ts";

/** Colors of labels and notes, which say nothing without a figure beside them. */
export const QUIET_COLORS: readonly string[] = ["#33414f", "#566473"];
const [LABEL, NOTE] = QUIET_COLORS;

const looks: Readonly<Record<Look, object>> = {
  title: { bold: true, fontSize: 14 },
  heading: { bold: true, fontSize: 10, textColor: "#12303f" },
  header: { bold: true, fontSize: 9, fillColor: "#e6e6e6", wrapping: "wrap", verticalAlign: "middle" },
  label: { textColor: LABEL, fontSize: 9 },
  note: { italic: true, fontSize: 9, textColor: NOTE },
  input: { textColor: "#0b4fa0", fillColor: "#fff8e1" },
  total: { bold: true, fillColor: "#e4f2e7" },
  strong: { bold: true },
  big: { bold: true, fontSize: 16 },
  shaded: { fillColor: "#e6e6e6" },
  wrapped: { wrapping: "wrap", verticalAlign: "top" },
  line: {},
  frame: { wrapping: "wrap", verticalAlign: "top" },
  page: { fontSize: 9 },
};

const LINE_PIXELS = 17;

const borders: Partial<Record<Look, string>> = {
  line: "bottom",
  frame: "all",
  heading: "bottom",
  header: "bottom",
};

export function paintSteps({ painted = [], merges = [], heights = [] }: NewSheet, sheetId: string): Step[] {
  return [
    ...heights.map(([row, lines]) => ({
      type: "RESIZE_COLUMNS_ROWS",
      sheetId,
      dimension: "ROW",
      elements: [row],
      size: Math.round(lines * LINE_PIXELS),
    })),
    ...merges.map((area) => ({ type: "ADD_MERGE", sheetId, target: [zoneOf(area)] })),
    ...painted.flatMap(({ area, look, format, align }): Step[] => {
      const target = [zoneOf(area)];
      const position = look && borders[look];
      return [
        {
          type: "SET_FORMATTING",
          sheetId,
          target,
          style: { ...(look ? looks[look] : {}), ...(align ? { align } : {}) },
          ...(format ? { format } : {}),
        },
        ...(position
          ? [
              {
                type: "SET_ZONE_BORDERS",
                sheetId,
                target,
                border: { position, color: "#6b7785", style: "thin" },
              },
            ]
          : []),
      ];
    }),
  ];
}

function zoneOf(area: string) {
  const { top, left, bottom, right } = readBox(area)!;
  return { top, left, bottom, right };
}
