// workbook: sheets at the end of the lists that a workbook has of them.

import { added } from "./edit-workbook.ts";
import { CONTENT_TYPES, type PackageParts } from "./package.ts";
import { relationsPart } from "./workbook-parts.ts";
import { attribute, elements, escapeAttribute } from "./xml-text.ts";

const OFFICE = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
const SHEET_TYPE = "application/vnd.openxmlformats-officedocument.spreadsheetml.worksheet+xml";

export interface SheetEntry {
  readonly name: string;
  readonly part: string;
  /** Its defined names, if it stands at this place of the workbook, from 0. */
  readonly names?: (place: number) => string;
}

/** The parts that list sheets, with these; undefined if the workbook is written in a way that is not followed here. */
export function withEntries(
  file: PackageParts,
  main: string,
  sheets: readonly SheetEntry[],
): ReadonlyMap<string, string> | undefined {
  const workbook = file.read(main);
  const [root] = elements(workbook, "workbook");
  const [list] = elements(workbook, "sheets");
  const prefix = new RegExp(`\\bxmlns:([\\w.-]+)\\s*=\\s*["']${OFFICE}["']`).exec(root?.tag ?? "")?.[1];
  if (!list || !prefix) return undefined;
  const ids = [...elements(list.inside, "sheet")].map(({ tag }) => Number(attribute(tag, "sheetId")));
  const outer = /^<((?:[\w.-]+:)?)/.exec(list.tag)![1];
  let [types, links, entries, named] = [file.read(CONTENT_TYPES), file.read(relationsPart(main)), "", ""];
  sheets.forEach(({ name, part, names }, i) => {
    const number = Math.max(0, ...ids) + i + 1;
    const id = `rIdReamwright${number}`;
    types = added(types, "Types", `<Override PartName="/${part}" ContentType="${SHEET_TYPE}"/>`);
    const link = `<Relationship Id="${id}" Type="${OFFICE}/worksheet" Target="/${part}"/>`;
    links = added(links, "Relationships", link);
    const shown = escapeAttribute(name);
    entries += `<${outer}sheet name="${shown}" sheetId="${number}" ${prefix}:id="${id}"/>`;
    named += names?.(ids.length + i) ?? "";
  });
  const end = list.start + list.tag.length + list.inside.length;
  const listed = workbook.slice(0, end) + entries + workbook.slice(end);
  return new Map([
    // A workbook whose elements have a prefix keeps its names as they are: the new sheets are printed whole.
    [main, outer === "" ? withNames(listed, named) : listed],
    [CONTENT_TYPES, types],
    [relationsPart(main), links],
  ]);
}

/** The workbook with more names, which stand behind the sheets and the references to other files. */
export function withNames(workbook: string, names: string): string {
  if (names === "") return workbook;
  const [there] = elements(workbook, "definedNames");
  if (there && !there.tag.endsWith("/>")) {
    const end = there.start + there.tag.length + there.inside.length;
    return workbook.slice(0, end) + names + workbook.slice(end);
  }
  if (there) workbook = workbook.slice(0, there.start) + workbook.slice(there.end);
  const [before] = ["externalReferences", "functionGroups", "sheets"].flatMap((name) => [
    ...elements(workbook, name),
  ]);
  return `${workbook.slice(0, before.end)}<definedNames>${names}</definedNames>${workbook.slice(before.end)}`;
}

export function freeSheetPart(file: PackageParts): string {
  for (let number = 1; ; number++) {
    const name = `xl/worksheets/sheet${number}.xml`;
    if (!file.has(name)) return name;
  }
}
