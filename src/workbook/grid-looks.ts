// workbook: how the cells of a new sheet look in the browser workbook, as commands of its grid.

import type { Step } from "./grid-steps.ts";
import type { Look, NewSheet } from "./workbook.ts";
import { readBox } from "./xlsx/addresses.ts";

const looks: Readonly<Record<Look, object>> = {
  title: { bold: true, fontSize: 14 },
  heading: { bold: true, fontSize: 10, textColor: "#12303f" },
  header: { bold: true, fontSize: 9, fillColor: "#e6e6e6", wrapping: "wrap", verticalAlign: "middle" },
  label: { textColor: "#33414f", fontSize: 9 },
  note: { italic: true, fontSize: 9, textColor: "#566473" },
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

const LINE_PIXELS = 15;

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
      size: Math.round(lines * LINE_PIXELS) + 1,
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
