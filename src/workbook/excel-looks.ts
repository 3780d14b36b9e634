// workbook: how the cells of a new sheet look in Excel, and how it is printed.

import { columnLetters, type Look, type NewSheet, type PrintSetup } from "./workbook.ts";

const MARGIN_POINTS = 34;
const LINE_POINTS = 12.5;

type Dress = (format: Excel.RangeFormat) => void;

const border = (format: Excel.RangeFormat, ...edges: Excel.BorderIndex[]): void => {
  for (const edge of edges) format.borders.getItem(edge).style = "Continuous";
};
const bold =
  (size?: number): Dress =>
  (format) => {
    format.font.bold = true;
    if (size) format.font.size = size;
  };

const looks: Readonly<Record<Look, Dress>> = {
  title: bold(14),
  heading: (format) => {
    bold(10)(format);
    border(format, "EdgeBottom" as Excel.BorderIndex);
  },
  header: (format) => {
    bold()(format);
    format.wrapText = true;
    format.fill.color = "#e6e6e6";
    border(format, "EdgeBottom" as Excel.BorderIndex);
  },
  label: (format) => {
    format.font.color = "#33414f";
  },
  note: (format) => {
    format.font.italic = true;
    format.font.color = "#566473";
  },
  input: (format) => {
    format.font.color = "#0b4fa0";
    format.fill.color = "#fff8e1";
  },
  total: (format) => {
    format.font.bold = true;
    format.fill.color = "#e4f2e7";
  },
  strong: bold(),
  big: bold(16),
  shaded: (format) => {
    format.fill.color = "#e6e6e6";
  },
  wrapped: (format) => {
    format.wrapText = true;
    format.verticalAlignment = "Top";
  },
  line: (format) => border(format, "EdgeBottom" as Excel.BorderIndex),
  frame: (format) => {
    format.wrapText = true;
    format.verticalAlignment = "Top";
    border(
      format,
      ...(["EdgeTop", "EdgeBottom", "EdgeLeft", "EdgeRight", "InsideHorizontal"] as Excel.BorderIndex[]),
    );
  },
  page: (format) => {
    format.font.size = 9;
    format.font.name = "Arial";
  },
};

export function dress(
  sheet: Excel.Worksheet,
  { painted = [], merges = [], heights = [], print }: NewSheet,
): void {
  for (const [row, lines] of heights)
    sheet.getRangeByIndexes(row, 0, 1, 1).format.rowHeight = lines * LINE_POINTS;
  for (const area of merges) sheet.getRange(area).merge();
  for (const { area, look, format, align } of painted) {
    const range = sheet.getRange(area);
    if (look) looks[look](range.format);
    // One text for all cells of the range.
    if (format) range.numberFormat = format as never;
    if (align)
      range.format.horizontalAlignment = ({ left: "Left", center: "Center", right: "Right" } as const)[align];
  }
  if (print) setUpPrint(sheet.pageLayout, print);
}

function setUpPrint(
  layout: Excel.PageLayout,
  { paper, landscape, area, repeated, pagesWide = 1, repeatedColumns, header, footer }: PrintSetup,
): void {
  if (area) layout.setPrintArea(area);
  layout.paperSize = (paper === "A4" ? "A4" : "Letter") as Excel.PaperType;
  layout.orientation = (landscape ? "Landscape" : "Portrait") as Excel.PageOrientation;
  layout.zoom = { horizontalFitToPages: pagesWide };
  layout.leftMargin = layout.rightMargin = layout.topMargin = layout.bottomMargin = MARGIN_POINTS;
  if (repeated) layout.setPrintTitleRows(`$${repeated[0] + 1}:$${repeated[1] + 1}`);
  if (repeatedColumns) layout.setPrintTitleColumns(`$A:$${columnLetters(repeatedColumns - 1)}`);
  const all = layout.headersFooters.defaultForAllPages;
  all.leftHeader = marked(header?.left);
  all.rightHeader = marked(header?.right);
  all.leftFooter = marked(footer);
  all.rightFooter = "Page &P of &N";
}

/** A text in which & is no command. */
const marked = (text = ""): string => text.replaceAll("&", "&&");
