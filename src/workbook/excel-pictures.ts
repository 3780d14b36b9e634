// workbook: the pictures of a new sheet in Excel: images as they are, charts that follow the cells.

import type { Picture } from "./workbook.ts";
import { readBox } from "./xlsx/addresses.ts";

/** Present light with an outline, proposed dark: told apart without color. */
const FILLS = ["#eef2f5", "#566473"];
const INK = "#1d2733";

/** Charts, which Excel places by their cells. */
export function addCharts(sheet: Excel.Worksheet, pictures: readonly Picture[]): void {
  for (const picture of pictures) {
    if (picture.bars) addBars(sheet, picture, picture.bars);
    if (picture.lines) addLines(sheet, picture, picture.lines);
  }
}

/** An SVG file as a PNG in base64. */
export type DrawsPng = (svg: string, size: { width: number; height: number }) => Promise<string>;

/** Images, which want their place in points: it is asked for first. */
export async function addImages(
  context: Excel.RequestContext,
  sheet: Excel.Worksheet,
  pictures: readonly Picture[],
  draw: DrawsPng,
): Promise<void> {
  const images = pictures.flatMap(({ svg, area, title }) =>
    svg === undefined ? [] : [{ svg, title, range: sheet.getRange(area) }],
  );
  if (images.length === 0) return;
  for (const { range } of images) range.load("left,top,height");
  const drawn = await Promise.all(images.map(({ svg }) => draw(svg.text, svg)));
  await context.sync();
  images.forEach(({ title, range }, at) => {
    const shape = sheet.shapes.addImage(drawn[at]);
    shape.lockAspectRatio = true;
    shape.left = range.left;
    shape.top = range.top;
    shape.height = range.height;
    shape.altTextTitle = title;
    shape.altTextDescription = `${title}: the cells under the picture tell it in words.`;
  });
  await context.sync();
}

function placed(chart: Excel.Chart, { area, title }: Picture): void {
  const [first, last = first] = area.split(":");
  chart.setPosition(first, last);
  chart.title.text = title;
  chart.title.format.font.size = 9;
  chart.legend.position = "Bottom";
}

function addBars(
  sheet: Excel.Worksheet,
  picture: Picture,
  { names, series }: NonNullable<Picture["bars"]>,
): void {
  const chart = sheet.charts.add("BarClustered" as Excel.ChartType, sheet.getRange(series[0][1]));
  placed(chart, picture);
  series.forEach(([name, values], at) => {
    const one = at === 0 ? chart.series.getItemAt(0) : chart.series.add(name);
    one.name = name;
    one.setValues(sheet.getRange(values));
    one.setXAxisValues(sheet.getRange(names));
    one.format.fill.setSolidColor(FILLS[at]);
    one.format.line.color = INK;
    one.hasDataLabels = true;
    one.dataLabels.numberFormat = "0.00";
  });
  // Excel counts bars from below.
  chart.axes.categoryAxis.reversePlotOrder = true;
  chart.axes.valueAxis.minimum = 0;
}

function addLines(
  sheet: Excel.Worksheet,
  picture: Picture,
  { at, x, series }: NonNullable<Picture["lines"]>,
): void {
  const { top, left } = readBox(at)!;
  const point = (cell: string) => `=IF(ISNUMBER(${cell}),${cell},NA())`;
  const rows = [
    ["For the chart", ...series.map(([name]) => name)],
    ...x.map((cell, row) => [point(cell), ...series.map(([, cells]) => point(cells[row]))]),
  ];
  const cells = sheet.getRangeByIndexes(top, left, rows.length, rows[0].length);
  cells.formulas = rows;
  cells.format.font.color = "#808080";
  const column = (number: number) => sheet.getRangeByIndexes(top + 1, left + number, x.length, 1);
  const chart = sheet.charts.add("XYScatterLines" as Excel.ChartType, column(1));
  placed(chart, picture);
  series.forEach(([name], number) => {
    const one = number === 0 ? chart.series.getItemAt(0) : chart.series.add(name);
    one.name = name;
    one.setValues(column(number + 1));
    one.setXAxisValues(column(0));
  });
}
