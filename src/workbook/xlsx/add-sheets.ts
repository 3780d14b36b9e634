// workbook: new sheets at the end of a workbook, in parts of their own; what is there already stays as it is.

import { added } from "./edit-workbook.ts";
import { mergedStyles } from "./merge-styles.ts";
import type { PackageParts } from "./package.ts";
import { relationsOf } from "./workbook-parts.ts";
import { attribute, elements, escapeXml } from "./xml-text.ts";

const OFFICE = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
const SHEET_TYPE = "application/vnd.openxmlformats-officedocument.spreadsheetml.worksheet+xml";
const TYPES = "[Content_Types].xml";

export interface AddedSheet {
  readonly name: string;
  /** The text of its part, with styles by their numbers in the styles that come with it. */
  readonly text: string;
  /** The names for its printed cells, if it stands at this place of the workbook, from 0. */
  readonly printNames?: (place: number) => string;
}

/** New sheets with the styles that they name. */
export interface NewSheets {
  readonly sheets: readonly AddedSheet[];
  readonly styles: string;
}

/** Parts of a workbook that are new or have changed, among them these of new sheets. */
export interface WithSheets {
  readonly parts: ReadonlyMap<string, string>;
  readonly sheets: readonly string[];
}

/** Undefined if the workbook is written in a way that is not followed here. */
export function addSheets(
  file: PackageParts,
  main: string,
  { sheets, styles }: NewSheets,
): WithSheets | undefined {
  const parts = new Map<string, string>();
  const { read } = file;
  const own = relationsOf(file, main).find(({ kind, part }) => kind === "styles" && file.has(part))?.part;
  const merged = own === undefined ? undefined : mergedStyles(read(own), styles);
  const workbook = read(main);
  const [root] = elements(workbook, "workbook");
  const [list] = elements(workbook, "sheets");
  const prefix = new RegExp(`\\bxmlns:([\\w.-]+)\\s*=\\s*["']${OFFICE}["']`).exec(root?.tag ?? "")?.[1];
  if (own === undefined || !merged || !list || !prefix) return undefined;
  const folder = main.slice(0, main.lastIndexOf("/") + 1);
  const relations = `${folder}_rels/${main.slice(folder.length)}.rels`;
  const ids = [...elements(list.inside, "sheet")].map(({ tag }) => Number(attribute(tag, "sheetId")));
  const outer = /^<((?:[\w.-]+:)?)/.exec(list.tag)![1];
  let [types, links, entries] = [read(TYPES), read(relations), ""];
  const names = sheets.map(({ name, text }, i) => {
    const part = freeName(file, parts);
    const id = `rIdReamwright${Math.max(0, ...ids) + i + 1}`;
    parts.set(part, restyled(text, merged));
    types = added(types, "Types", `<Override PartName="/${part}" ContentType="${SHEET_TYPE}"/>`);
    const relation = `<Relationship Id="${id}" Type="${OFFICE}/worksheet" Target="/${part}"/>`;
    links = added(links, "Relationships", relation);
    entries += `<${outer}sheet name="${escapeXml(name)}" sheetId="${Math.max(0, ...ids) + i + 1}" ${prefix}:id="${id}"/>`;
    return part;
  });
  const end = list.start + list.tag.length + list.inside.length;
  const named = sheets.map(({ printNames }, i) => printNames?.(ids.length + i) ?? "").join("");
  const listed = workbook.slice(0, end) + entries + workbook.slice(end);
  // A workbook whose elements have a prefix keeps its names as they are: the new sheets are printed whole.
  parts.set(main, outer === "" ? withNames(listed, named) : listed);
  parts.set(own, merged.text);
  parts.set(TYPES, types);
  parts.set(relations, links);
  return { parts, sheets: names };
}

/** The workbook with more names, which stand behind the sheets and the references to other files. */
function withNames(workbook: string, names: string): string {
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

function freeName(file: PackageParts, parts: ReadonlyMap<string, string>): string {
  for (let number = 1; ; number++) {
    const name = `xl/worksheets/sheet${number}.xml`;
    if (!file.has(name) && !parts.has(name)) return name;
  }
}

/** The sheet with the numbers that its styles have now. */
function restyled(text: string, { cells, conditional }: { cells: number; conditional: number }): string {
  const plus = (tag: string, name: string, offset: number) =>
    tag.replace(new RegExp(`(\\s${name}=")(\\d+)"`), (_, start: string, number: string) => {
      return `${start}${Number(number) + offset}"`;
    });
  return text
    .replace(/<(?:c|row)\s[^>]*>/g, (tag) => plus(tag, "s", cells))
    .replace(/<col\s[^>]*>/g, (tag) => plus(tag, "style", cells))
    .replace(/<cfRule\s[^>]*>/g, (tag) => plus(tag, "dxfId", conditional));
}
