// workbook: what of some sheets of an .xlsx file the browser workbook cannot carry, for those that have to be written
// whole while the others stay: the list of a workbook that had these sheets alone, and the texts and styles that they use.

import { leaveOut } from "../xlsx/leave-out.ts";
import { mapElements, mapInside } from "../xlsx/map-elements.ts";
import { joined, over, type Package } from "../xlsx/package.ts";
import { listed } from "../xlsx/sheet-list.ts";
import type { StoredNames } from "../xlsx/stored-names.ts";
import { walkSheet } from "../xlsx/walk-sheet.ts";
import { relationsOf, type WorkbookParts } from "../xlsx/workbook-parts.ts";
import { attribute, elements } from "../xlsx/xml-text.ts";
import type { GridLibrary } from "./library.ts";
import { openWorkbook } from "./open-file.ts";

/** What leads to parts that the sheets of a workbook need. */
const needed = new Set(["styles", "sharedStrings", "theme", "externalLink"]);

/** @param places of the sheets in the file */
export function lossesOfSheets(
  { file, parts }: { readonly file: Package; readonly parts: WorkbookParts },
  places: ReadonlySet<number>,
  library: GridLibrary,
  names: StoredNames,
): readonly string[] {
  const { main, sheets } = parts;
  const now = new Map<string, string>();
  const gone = new Set<string>();
  const alone = over(file, now, gone);
  const leave = (part: string, isLeftOut: (kind: string, target: string) => boolean) => {
    const links = relationsOf(alone, part).filter((one) => isLeftOut(one.kind, one.part));
    const left = leaveOut(alone, part, (link) => links.some(({ id }) => id === link));
    for (const [name, text] of left.parts) now.set(name, text);
    for (const name of left.gone) gone.add(name);
  };
  const own = new Set(sheets.flatMap(({ part }, place) => (places.has(place) ? part : [])));
  leave("", (kind) => kind !== "officeDocument");
  leave(main, (kind, target) => !needed.has(kind) && !own.has(target));
  const ofTheWorkbook = [
    "definedNames",
    "customWorkbookViews",
    "workbookProtection",
    "fileSharing",
    "calcPr",
  ];
  const bare = ofTheWorkbook.reduce((text, name) => mapElements(text, name, () => ""), alone.read(main));
  now.set(
    main,
    listed(
      bare,
      [...places].sort((a, b) => a - b),
    ),
  );
  const used = { styles: new Set<number>(), texts: new Set<number>() };
  for (const part of own) use(alone.read(part), used);
  const partOf = (kind: string) => relationsOf(alone, main).find((one) => one.kind === kind)?.part;
  const [styles, strings] = [partOf("styles"), partOf("sharedStrings")];
  if (styles !== undefined && alone.has(styles)) now.set(styles, stylesIn(alone.read(styles), used.styles));
  if (strings !== undefined && alone.has(strings)) {
    let place = 0;
    const texts = mapElements(alone.read(strings), "si", ({ tag, inside }) =>
      used.texts.has(place++) ? `${tag}${inside}</${nameOf(tag)}>` : `<${nameOf(tag)}/>`,
    );
    now.set(strings, texts);
  }
  return openWorkbook(joined(file.with(now, gone)), library, names).losses;
}

const nameOf = (tag: string): string => /^<([^\s/>]+)/.exec(tag)![1];

/** Adds the numbers of the styles and of the shared texts that a sheet has. */
function use(text: string, { styles, texts }: { styles: Set<number>; texts: Set<number> }): void {
  for (const name of ["row", "col"])
    for (const { tag } of elements(text, name))
      styles.add(Number(attribute(tag, name === "row" ? "s" : "style") ?? 0));
  walkSheet(text, {
    cell({ attributes: { s = "0", t }, span }) {
      styles.add(Number(s));
      if (t !== "s") return;
      const [value] = elements(text.slice(span.start, span.end), "v");
      texts.add(Number(value?.inside));
    },
  });
}

/** The styles with those that are not used as plain as can be, and the fonts, fills and borders of those. */
function stylesIn(text: string, used: ReadonlySet<number>): string {
  const kept: Record<string, Set<number>> = {
    font: new Set([0]),
    fill: new Set([0, 1]),
    border: new Set([0]),
  };
  let hasName = false;
  const styles = mapInside(text, "cellXfs", (inside) => {
    let at = -1;
    return mapElements(inside, "xf", ({ tag, start, end }) => {
      at++;
      if (at > 0 && !used.has(at)) return '<xf numFmtId="0" fontId="0" fillId="0" borderId="0" xfId="0"/>';
      for (const name of Object.keys(kept)) kept[name].add(Number(attribute(tag, `${name}Id`) ?? 0));
      if (Number(attribute(tag, "xfId") ?? 0) > 0) hasName = true;
      return inside.slice(start, end);
    });
  });
  const plain: Record<string, string> = { font: "<font/>", fill: "<fill/>", border: "<border/>" };
  const lists = Object.keys(kept).reduce(
    (own, name) =>
      mapInside(own, `${name}s`, (inside) => {
        let at = 0;
        return mapElements(inside, name, ({ start, end }) =>
          kept[name].has(at++) ? inside.slice(start, end) : plain[name],
        );
      }),
    styles,
  );
  return hasName
    ? lists
    : mapElements(
        mapElements(lists, "cellStyles", () => ""),
        "cellStyleXfs",
        () => "",
      );
}
