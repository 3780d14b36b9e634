// workbook: how a sheet is printed, as the parts of a file say it, written and read back.

import { columnLetters, type PrintSetup } from "../workbook.ts";
import { readBox } from "./addresses.ts";
import { attribute, elements, escapeXml, unescapeXml } from "./xml-text.ts";

const PAPERS = { A4: "9", Letter: "1" } as const;
const AREA = "_xlnm.Print_Area";
const TITLES = "_xlnm.Print_Titles";

/** A sheet of which nothing else is said lies on its side, and is as wide as the page. */
export const USUAL_SETUP_XML = '<pageSetup orientation="landscape" fitToWidth="1" fitToHeight="0"/>';

/** Everything from the margins to header and footer, in the order that the format wants. */
export function pageSetupXml({ paper, landscape, pagesWide = 1, header, footer }: PrintSetup): string {
  const marked = (text = "") => escapeXml(text.replaceAll("&", "&&"));
  const margins = ["left", "right", "top", "bottom"].map((side) => `${side}="0.5"`).join(" ");
  return [
    `<pageMargins ${margins} header="0.25" footer="0.25"/>`,
    `<pageSetup paperSize="${PAPERS[paper]}" orientation="${landscape ? "landscape" : "portrait"}" fitToWidth="${pagesWide}" fitToHeight="0"/>`,
    `<headerFooter><oddHeader>&amp;L${marked(header?.left)}&amp;R${marked(header?.right)}</oddHeader>`,
    `<oddFooter>&amp;L${marked(footer)}&amp;RPage &amp;P of &amp;N</oddFooter></headerFooter>`,
  ].join("");
}

/** What a file says of how a sheet is printed, as it says it, but for the settings of one printer. */
export interface SaidSetup {
  readonly xml: string;
  readonly isFitted: boolean;
}

const SETUP = ["printOptions", "pageMargins", "pageSetup", "headerFooter", "rowBreaks", "colBreaks"];

export function saidSetup(sheet: string): SaidSetup {
  const xml = SETUP.flatMap((name) => {
    const found = [...elements(sheet, name)].at(0);
    return found ? sheet.slice(found.start, found.end) : [];
  }).join("");
  const [properties] = elements(sheet, "pageSetUpPr");
  return {
    xml: xml.replace(/(<\/?)[\w.-]+:(?=\w)/g, "$1").replace(/(<pageSetup\b[^>]*?)\s[\w.-]+:id="[^"]*"/, "$1"),
    isFitted: /\bfitToPage="(?:1|true)"/.test(properties?.tag ?? ""),
  };
}

const quoted = (name: string) => `'${name.replaceAll("'", "''")}'`;

/** The names that hold printed cells and repeated rows and columns. @param place of the sheet in the workbook, from 0 */
export function printNamesXml(
  sheet: string,
  place: number,
  { area, repeated, repeatedColumns }: PrintSetup,
): string {
  const own = quoted(sheet);
  const titles = [
    ...(repeatedColumns ? [`${own}!$A:$${columnLetters(repeatedColumns - 1)}`] : []),
    ...(repeated ? [`${own}!$${repeated[0] + 1}:$${repeated[1] + 1}`] : []),
  ].join(",");
  const name = (title: string, formula: string) =>
    `<definedName name="${title}" localSheetId="${place}">${escapeXml(formula)}</definedName>`;
  return [
    area ? name(AREA, `${own}!${area.replace(/([A-Z]+)(\d+)/g, "$$$1$$$2")}`) : "",
    titles ? name(TITLES, titles) : "",
  ].join("");
}

export interface PrintName {
  readonly name: string;
  readonly formula: string;
}

/** What a name for printing says, or undefined where it says more than is carried here. */
export function readPrintName({
  name,
  formula,
}: PrintName): Pick<PrintSetup, "area" | "repeated" | "repeatedColumns"> | undefined {
  const parts = formula
    .split(/,(?=(?:[^']*'[^']*')*[^']*$)/)
    .map((part) => part.slice(part.lastIndexOf("!") + 1));
  if (name.toLowerCase() === AREA.toLowerCase()) {
    const area = parts[0].replaceAll("$", "");
    return parts.length === 1 && /^[A-Z]{1,3}\d{1,7}(?::[A-Z]{1,3}\d{1,7})?$/.test(area) && readBox(area)
      ? { area }
      : undefined;
  }
  if (name.toLowerCase() !== TITLES.toLowerCase() || parts.length > 2) return undefined;
  const said: { repeated?: [number, number]; repeatedColumns?: number } = {};
  for (const part of parts) {
    const rows = /^\$(\d{1,7}):\$(\d{1,7})$/.exec(part);
    const columns = /^\$A:\$([A-Z]{1,2})$/.exec(part);
    if (rows) said.repeated = [Number(rows[1]) - 1, Number(rows[2]) - 1];
    else if (columns) said.repeatedColumns = readBox(`${columns[1]}1`)!.left + 1;
    else return undefined;
  }
  return said;
}

/** How a sheet is printed; undefined where its file says nothing, or a paper that is not printed on here. */
export function readPageSetup(sheet: string, names: readonly PrintName[]): PrintSetup | undefined {
  const tag = [...elements(sheet, "pageSetup")].at(0)?.tag;
  const size = tag === undefined ? undefined : attribute(tag, "paperSize");
  const paper = Object.entries(PAPERS).find(([, code]) => code === size)?.[0] as
    | PrintSetup["paper"]
    | undefined;
  if (tag === undefined || !paper) return undefined;
  const wide = Number(attribute(tag, "fitToWidth") ?? 1);
  const text = (name: string) => {
    const found = [...elements(sheet, name)].at(0);
    return found ? unescapeXml(found.inside) : "";
  };
  const [header, footer] = [partsOf(text("oddHeader")), partsOf(text("oddFooter"))];
  return {
    paper,
    ...(attribute(tag, "orientation") === "landscape" ? { landscape: true } : {}),
    ...(wide > 1 && wide < 20 ? { pagesWide: wide } : {}),
    ...(header.L || header.R ? { header: { left: header.L, right: header.R } } : {}),
    ...(footer.L ? { footer: footer.L } : {}),
    ...Object.assign({}, ...names.map(readPrintName)),
  };
}

/** Left and right part of a header; a part with fields or formats is left out. */
function partsOf(text: string): { L?: string; R?: string } {
  const parts: Record<string, string> = {};
  // The two-character "&&" stands for a "&" of the text.
  const marked = text.replaceAll("&&", "\u0001");
  for (const [, side, words] of marked.matchAll(/&([LCR])((?:(?!&[LCR]).)*)/gs)) parts[side] = words;
  const plain = (words?: string) =>
    words && !words.includes("&") ? words.replaceAll("\u0001", "&") : undefined;
  const [L, R] = [plain(parts.L), plain(parts.R)];
  return { ...(L ? { L } : {}), ...(R ? { R } : {}) };
}
