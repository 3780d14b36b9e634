// workbook: what of an .xlsx file the browser workbook cannot carry, as sentences for the person who is about to save.

import type { Package } from "../xlsx/package.ts";
import { pageSetupXml, readPageSetup, USUAL_SETUP_XML } from "../xlsx/page-setup.ts";
import { relationsOf, type WorkbookParts } from "../xlsx/workbook-parts.ts";
import { elements } from "../xlsx/xml-text.ts";

export const PAGE_SETUP = "Page set-up for printing, headers and footers";

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
  [/<(?:\w+:)?(?:headerFooter|pageSetup|printOptions|rowBreaks|colBreaks)\b/, PAGE_SETUP],
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
  [/<(?:\w+:)?sheetView\b[^>]*\brightToLeft="(?:1|true)"/, "Sheets that run from right to left"],
  [/<(?:\w+:)?pane\b(?![^>]*\bstate="frozen)/, "Windows split in two"],
  [/<(?:\w+:)?picture\b/, "Pictures behind the cells"],
  [/<(?:\w+:)?hyperlink\b[^>]*\btooltip=/, "Tips of links"],
  [/<(?:\w+:)?cfRule\b[^>]*\bstopIfTrue="(?:1|true)"/, "Conditional formats: that one stops the others"],
  [/<(?:\w+:)?legacyDrawingHF\b/, "Pictures in headers and footers"],
];

const byRows: readonly (readonly [RegExp, string])[] = [
  [/<(?:\w+:)?row\s[^>]*\bs="[1-9]/, "Formats of whole rows, where their cells are empty"],
  [/<(?:\w+:)?c\s[^>]*\bvm="/, "Pictures and records in cells: they keep their texts"],
  [/<(?:\w+:)?f\s[^>]*\bt="array"/, "Array formulas: they take the cells that they need"],
];

const byStyles: readonly (readonly [RegExp, string])[] = [
  [
    /<(?:\w+:)?alignment\b[^>]*\b(?:(?:indent|readingOrder)="[1-9]|(?:shrinkToFit|justifyLastLine)="(?:1|true)")/,
    "Alignments of rare kinds",
  ],
  [
    /<(?:\w+:)?protection\b[^>]*\b(?:locked="(?:0|false)"|hidden="(?:1|true)")/,
    "Which cells stay open or hide their formulas on protected sheets",
  ],
  [/<(?:\w+:)?gradientFill\b/, "Patterns of cells: only plain fills stay"],
  [/<(?:\w+:)?vertAlign\b/, "Raised and lowered text"],
  [/<(?:\w+:)?u\s[^>]*\bval="(?:double|\w+Accounting)"/, "Underlines of rare kinds"],
];

const byWorkbook: readonly (readonly [RegExp, string])[] = [
  [
    /<(?:\w+:)?sheet\b[^>]*\bstate="veryHidden"/,
    "Sheets hidden from the menu: they are hidden as others are",
  ],
  [/<(?:\w+:)?(?:workbookProtection|fileSharing)\s+\w/, "Protection of the workbook"],
  [/<(?:\w+:)?customWorkbookViews\b/, "Views of the workbook"],
  [
    /<(?:\w+:)?calcPr\b[^>]*\b(?:iterate="(?:1|true)"|calcMode="(?:manual|autoNoTable)"|fullPrecision="(?:0|false)")/,
    "Settings of calculation",
  ],
];

const byTable: readonly (readonly [RegExp, string])[] = [
  [/\btotalsRowFunction="(?!none")/, "Functions in the last rows of tables: their formulas stay"],
  [/<(?:\w+:)?calculatedColumnFormula\b/, "Formulas that tables fill down by themselves"],
  [/<(?:\w+:)?(?:filterColumn\b[^>]*[^>/]>|sortState\b)/, "Filters and orders that are set in tables"],
  [/\bdisplayName="(?!Table\d+")/, "Names of tables"],
];

/** What a sheet may have around its cells: carried, or in the lists above. */
const knownAround =
  /^(?:sheetPr|dimension|sheetViews|sheetFormatPr|cols|sheetCalcPr|sheetProtection|protectedRanges|scenarios|autoFilter|mergeCells|phoneticPr|conditionalFormatting|dataValidations|hyperlinks|printOptions|pageMargins|pageSetup|headerFooter|rowBreaks|colBreaks|drawing|legacyDrawing|legacyDrawingHF|picture|tableParts|controls|oleObjects|extLst|AlternateContent)$/;

/** Parts that are carried, made anew, or in the lists above. */
const knownParts =
  /^(?:\[content_types\]\.xml|(?:.*\/)?_rels\/[^/]*\.rels|docprops\/.*|customxml\/.*|_xmlsignatures\/.*|xl\/(?:workbook|styles|sharedstrings|calcchain|metadata|comments\d*|connections|vbaproject|vbadata)\.(?:xml|bin)|xl\/(?:worksheets|chartsheets|dialogsheets|macrosheets|theme|drawings|charts|tables|media|printersettings|externallinks|pivottables|pivotcache|comments|threadedcomments|persons|slicers|slicercaches|timelines|timelinecaches|querytables|activex|ctrlprops|embeddings|diagrams)\/.*)$/i;

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
  /** Rules that the file has and those that the grid has of them. */
  readonly conditionalFormats: Counts;
  readonly validations: Counts;
  readonly tables: Counts;
}

export interface Counts {
  readonly inFile: number;
  readonly inGrid: number;
}

const cells = (count: number) => (count === 1 ? "1 cell" : `${count.toLocaleString("en-US")} cells`);

export function lossesOf(
  file: Package,
  { main, sheets, sharedStrings }: WorkbookParts,
  found: Found,
): string[] {
  const losses = new Set<string>();
  const look = (patterns: readonly (readonly [RegExp, string])[], text: string) => {
    for (const [pattern, loss] of patterns) if (pattern.test(text)) losses.add(loss);
  };
  for (const [pattern, loss] of byPart) if (file.names.some((name) => pattern.test(name))) losses.add(loss);
  const unknown = new Set<string>();
  for (const { part } of sheets) {
    const [around, cells] = aroundCells(file.read(part));
    look(bySheet, withoutOwnSetup(around));
    look(byRows, cells);
    for (const name of outermost(around)) if (!knownAround.test(name)) unknown.add(name);
    for (const table of relationsOf(file, part).filter(({ kind }) => kind === "table"))
      if (file.has(table.part)) look(byTable, file.read(table.part));
  }
  for (const name of file.names)
    if (!knownParts.test(name) && name !== main && !name.endsWith("/")) unknown.add(name.split("/").at(-1)!);
  look(byWorkbook, file.read(main));
  const styles = relationsOf(file, main).find(({ kind, part }) => kind === "styles" && file.has(part));
  if (styles) {
    const text = file.read(styles.part);
    look(byStyles, text);
    const within = (list: string) => [...elements(text, list)].map(({ inside }) => inside).join("");
    if (/<(?:\w+:)?(?:numFmt|border|alignment|protection|sz|name)\b/.test(within("dxfs")))
      losses.add("Conditional formats: borders, fonts, and number formats in them");
    if (/\bxfId="[1-9]/.test(within("cellStyles"))) losses.add("Named styles of cells");
  }
  const isLess = ({ inFile, inGrid }: Counts, told = 0) => inGrid + told < inFile;
  const toldOf = found.warnings.filter((warning) => /data validation|^Not equal date/i.test(warning)).length;
  if (isLess(found.conditionalFormats)) losses.add("Conditional formats of rare kinds");
  if (isLess(found.validations, toldOf)) losses.add("Validation of rare kinds");
  if (isLess(found.tables)) losses.add("Tables: their cells stay");
  if (unknown.size > 0)
    losses.add(`Details that the browser workbook does not know: ${[...unknown].slice(0, 8).join(", ")}`);
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

/** A sheet's part without its cells, tables' filters being in parts of their own, and its cells. */
function aroundCells(text: string): readonly [around: string, cells: string] {
  const [data] = elements(text, "sheetData");
  return data ? [text.slice(0, data.start) + text.slice(data.end), data.inside] : [text, ""];
}

/** The names of the elements within a part's outermost one. */
function outermost(part: string): Set<string> {
  const names = new Set<string>();
  let depth = 0;
  for (const [, close, name, empty] of part.matchAll(
    /<(\/?)(?:[\w.-]+:)?([\w.-]+)(?:"[^"]*"|'[^']*'|[^'">])*?(\/?)>/g,
  )) {
    if (close) depth--;
    else if (depth === 1) names.add(name);
    if (!close && !empty) depth++;
  }
  return names;
}
