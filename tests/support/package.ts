// tests: small .xlsx files, part by part, so that a test says exactly what is in them.

import { strToU8, unzipSync, zipSync } from "fflate";

const main = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
const relations = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
const packageRelations = "http://schemas.openxmlformats.org/package/2006/relationships";
const head = '<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n';

export interface SmallWorkbook {
  /** What stands inside sheetData, by the name of the sheet. */
  readonly sheets: Readonly<Record<string, string>>;
  readonly sharedStrings?: readonly string[];
  /** `<definedName>` elements. */
  readonly definedNames?: string;
  readonly workbookPr?: string;
  /** `<table>` elements for the first sheet. */
  readonly tables?: readonly string[];
  readonly more?: Readonly<Record<string, string>>;
}

const relation = (id: string, type: string, target: string) =>
  `<Relationship Id="${id}" Type="${relations}/${type}" Target="${target}"/>`;
const relationsPart = (inside: string) =>
  `${head}<Relationships xmlns="${packageRelations}">${inside}</Relationships>`;

/** The parts of the file in their order. */
export function partsOf({
  sheets,
  sharedStrings,
  definedNames = "",
  workbookPr = "",
  tables = [],
  more = {},
}: SmallWorkbook): Record<string, string> {
  const names = Object.keys(sheets);
  const parts: Record<string, string> = {
    "[Content_Types].xml": `${head}<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types"><Default Extension="xml" ContentType="application/xml"/><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/><Override PartName="/xl/workbook.xml" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.sheet.main+xml"/>${names.map((_, i) => `<Override PartName="/xl/worksheets/sheet${i + 1}.xml" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.worksheet+xml"/>`).join("")}</Types>`,
    "_rels/.rels": relationsPart(relation("rId1", "officeDocument", "xl/workbook.xml")),
    "xl/workbook.xml": `${head}<workbook xmlns="${main}" xmlns:r="${relations}">${workbookPr}<sheets>${names.map((name, i) => `<sheet name="${name}" sheetId="${i + 1}" r:id="rId${i + 1}"/>`).join("")}</sheets>${definedNames && `<definedNames>${definedNames}</definedNames>`}</workbook>`,
    "xl/_rels/workbook.xml.rels": relationsPart(
      names.map((_, i) => relation(`rId${i + 1}`, "worksheet", `worksheets/sheet${i + 1}.xml`)).join("") +
        (sharedStrings ? relation("rIdS", "sharedStrings", "sharedStrings.xml") : ""),
    ),
  };
  names.forEach((name, i) => {
    parts[`xl/worksheets/sheet${i + 1}.xml`] =
      `${head}<worksheet xmlns="${main}" xmlns:r="${relations}"><sheetData>${sheets[name]}</sheetData></worksheet>`;
  });
  if (sharedStrings)
    parts["xl/sharedStrings.xml"] =
      `${head}<sst xmlns="${main}">${sharedStrings.map((text) => `<si><t>${text}</t></si>`).join("")}</sst>`;
  tables.forEach((table, i) => {
    parts[`xl/tables/table${i + 1}.xml`] = head + table;
  });
  if (tables.length > 0)
    parts["xl/worksheets/_rels/sheet1.xml.rels"] = relationsPart(
      tables.map((_, i) => relation(`rId${i + 1}`, "table", `../tables/table${i + 1}.xml`)).join(""),
    );
  return { ...parts, ...more };
}

export const zipped = (parts: Readonly<Record<string, string>>): Uint8Array =>
  zipSync(Object.fromEntries(Object.entries(parts).map(([name, text]) => [name, strToU8(text)])), {
    level: 1,
  });

export const smallWorkbook = (workbook: SmallWorkbook): Uint8Array => zipped(partsOf(workbook));

/** Parts that one of two files has otherwise than the other, or alone. */
export function partsThatDiffer(before: Uint8Array, after: Uint8Array): string[] {
  const [was, now] = [textsIn(before), textsIn(after)];
  return Object.keys({ ...was, ...now })
    .filter((name) => was[name] !== now[name])
    .sort();
}

/** A file from its pieces. */
export const joined = (pieces: readonly Uint8Array[]): Uint8Array => new Uint8Array(Buffer.concat(pieces));

/** The bytes of every part, as another reader unpacks them. */
export const unzipped = (file: Uint8Array): Record<string, Uint8Array> => unzipSync(file);

export const textsIn = (file: Uint8Array): Record<string, string> =>
  Object.fromEntries(
    Object.entries(unzipSync(file)).map(([name, bytes]) => [name, new TextDecoder().decode(bytes)]),
  );

/** The bytes of each entry of an archive as they are packed, local header included, by name and in their order. */
export function packedEntries(file: Uint8Array): [name: string, bytes: Uint8Array][] {
  const view = new DataView(file.buffer, file.byteOffset, file.byteLength);
  let end = file.length - 22;
  while (view.getUint32(end, true) !== 0x06054b50) end--;
  const entries: { name: string; start: number }[] = [];
  const directory = view.getUint32(end + 16, true);
  for (let at = directory; view.getUint32(at, true) === 0x02014b50; ) {
    const size = view.getUint16(at + 28, true);
    const name = new TextDecoder().decode(file.subarray(at + 46, at + 46 + size));
    entries.push({ name, start: view.getUint32(at + 42, true) });
    at += 46 + size + view.getUint16(at + 30, true) + view.getUint16(at + 32, true);
  }
  entries.sort((a, b) => a.start - b.start);
  return entries.map(({ name, start }, i) => [
    name,
    file.subarray(start, entries[i + 1]?.start ?? directory),
  ]);
}
