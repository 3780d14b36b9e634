// workbook: what of an .xlsx file the browser workbook cannot carry, as sentences for the person who is about to save.

import type { Package } from "../xlsx/package.ts";
import { pageSetupXml, readPageSetup, USUAL_SETUP_XML } from "../xlsx/page-setup.ts";
import type { WorkbookParts } from "../xlsx/workbook-parts.ts";
import { elements } from "../xlsx/xml-text.ts";

const byPart: readonly (readonly [RegExp, string])[] = [
  [/^xl\/vbaProject/i, "Macros"],
  [/^xl\/pivotTables\//i, "Pivot tables: their cells stay as plain values"],
  [/^xl\/(?:comments|threadedComments)/i, "Comments and notes"],
  [/^xl\/(?:slicers|timelines)\//i, "Slicers and timelines"],
  [/^xl\/(?:connections\.xml|queryTables\/)/i, "Connections to outside data"],
  [/^xl\/(?:activeX|ctrlProps)\//i, "Buttons and other form controls"],
  [/^xl\/embeddings\//i, "Embedded documents"],
  [/^xl\/diagrams\//i, "Diagrams"],
  [/^xl\/(?:chartsheets|dialogsheets|macrosheets)\//i, "Sheets that are no grids of cells"],
  [/^xl\/charts\//i, "Charts: kind and data stay, their formatting is simplified or goes"],
  [/^xl\/media\/(?!image[^/]*\.(?:png|jpe?g|gif|webp)$)[^/]+$/i, "Pictures in vector and other rare formats"],
  [/^customXml\//i, "Custom XML data"],
  [/^_xmlsignatures\//i, "The digital signature"],
  [/^docProps\//i, "Author, title and other properties of the file"],
];

const bySheet: readonly (readonly [RegExp, string])[] = [
  [
    /<(?:\w+:)?(?:headerFooter|pageSetup|printOptions|rowBreaks|colBreaks)\b/,
    "Page set-up for printing, headers and footers",
  ],
  [/<(?:\w+:)?sparklineGroup\b/, "Sparklines"],
  [/<x14:(?:dataValidation|conditionalFormatting|cfRule)\b/, "Validation and formatting in the newer form"],
  [/<(?:\w+:)?sheetProtection\b[^>]*\b(?:password|hashValue)=/, "Passwords of protected sheets"],
  [/<(?:\w+:)?protectedRange\b/, "Ranges that stay open on protected sheets"],
  [/<(?:\w+:)?autoFilter\b/, "Filters outside tables"],
  [/<(?:\w+:)?scenarios\b/, "Scenarios"],
  [
    /<(?:\w+:)?dataValidation\b[^>]*\b(?:prompt|promptTitle|error|errorTitle)="[^"]/,
    "Messages of validation",
  ],
  [/<(?:\w+:)?sheetView\b[^>]*\bzoomScale=/, "Zoom of the sheets"],
];

/** What the importer warns of, by the words it uses, as a sentence; `$1` is what it quotes. */
const byWarning: readonly (readonly [RegExp, string])[] = [
  [/^Font "(.+?)"/, "Typefaces: all text is saved in one ($1 and others go)"],
  [/^Fill Style/, "Patterns of cells: only plain fills stay"],
  [/^(?:Border style|Diagonal Borders)/, "Borders of rare kinds"],
  [/^(?:Horizontal|Vertical) Alignment/, "Alignments of rare kinds"],
  [/^Number format/, "Number formats of rare kinds"],
  [/^Whole number data validation/, "Validation for whole numbers"],
  [/^Text length data validation/, "Validation by the length of a text"],
  [/^Time data validation/, "Validation by time"],
  [/^Not equal date/, "Validation for any date but one"],
  [/^Multiple rules/, "Conditional formats: only the first of several rules on the same cells"],
  [/onditional format|IconSets/, "Conditional formats of rare kinds"],
  [/hyperlink/, "Links that lead nowhere"],
  [
    /^Error when parsing an element <(?:NAMESPACE\w*NAMESPACE)?([\w.-]+)>/,
    "Details that could not be read ($1)",
  ],
];

export interface Found {
  readonly warnings: readonly string[];
  readonly links: number;
  readonly whatIfTables: number;
  readonly tableNames: number;
  /** Formulas that the grid makes no sense of. */
  readonly unread: number;
  readonly droppedNames: readonly string[];
}

const cells = (count: number) => (count === 1 ? "1 cell" : `${count.toLocaleString("en-US")} cells`);

export function lossesOf(file: Package, { sheets, sharedStrings }: WorkbookParts, found: Found): string[] {
  const losses = new Set<string>();
  for (const [pattern, loss] of byPart) if (file.names.some((name) => pattern.test(name))) losses.add(loss);
  for (const { part } of sheets) {
    const text = withoutOwnSetup(aroundCells(file.read(part)));
    for (const [pattern, loss] of bySheet) if (pattern.test(text)) losses.add(loss);
  }
  if (file.names.some((name) => /^xl\/drawings\/[^/]+\.xml$/i.test(name) && hasShape(file.read(name))))
    losses.add("Shapes and text boxes");
  for (const warning of found.warnings) {
    // Nothing is lost where the importer takes the usual for what a file leaves unsaid.
    if (warning.startsWith("Missing required")) continue;
    const known = byWarning.find(([pattern]) => pattern.test(warning));
    const quoted = known?.[0].exec(warning)?.[1] ?? "";
    if (known && ![...losses].some((loss) => loss.startsWith(known[1].split("$1")[0])))
      losses.add(known[1].replace("$1", () => quoted));
    if (!known) losses.add("Details that could not be read");
  }
  if (sharedStrings && /<(?:\w+:)?rPr\b/.test(file.read(sharedStrings)))
    losses.add("Several formats within one cell");
  if (found.links > 0)
    losses.add(`Formulas that read other workbooks: ${cells(found.links)} keep their values`);
  if (found.unread > 0)
    losses.add(`Formulas that the browser workbook cannot read: ${cells(found.unread)} keep their values`);
  if (found.whatIfTables > 0) losses.add("What-if tables: their cells keep their values");
  if (found.tableNames > 0)
    losses.add(`Names of table columns in formulas: ${cells(found.tableNames)} name the cells instead`);
  if (found.droppedNames.length > 0)
    losses.add(`Defined names that are not a range: ${found.droppedNames.slice(0, 8).join(", ")}`);
  return [...losses];
}

const hasShape = (drawing: string) => /<(?:\w+:)?(?:sp|cxnSp|grpSp)\b/.test(drawing);

/** How a sheet is printed is no loss where it is as it is written here. */
function withoutOwnSetup(text: string): string {
  const setup = readPageSetup(text, []);
  return text.replace(setup ? pageSetupXml(setup) : USUAL_SETUP_XML, "");
}

/** A sheet's part without its cells, tables' filters being in parts of their own. */
function aroundCells(text: string): string {
  const [data] = elements(text, "sheetData");
  return data ? text.slice(0, data.start) + text.slice(data.end) : text;
}
