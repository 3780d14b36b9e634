// workbook: parts that nothing leads to any more are left out of a file, and what names them in its lists with them.

import { mapTags } from "./map-elements.ts";
import { CONTENT_TYPES, over, type PackageParts } from "./package.ts";
import { relationsOf, relationsPart } from "./workbook-parts.ts";
import { attribute } from "./xml-text.ts";

/** Parts that are other without some, and the names of those, in small letters. */
export interface LeftOut {
  readonly parts: ReadonlyMap<string, string>;
  readonly gone: ReadonlySet<string>;
}

/** The file without some relations of a part, by their numbers, and without what nothing else leads to then. */
export function leaveOut(file: PackageParts, part: string, isLeftOut: (link: string) => boolean): LeftOut {
  const list = relationsPart(part);
  const rest = mapTags(file.read(list), "Relationship", (tag) =>
    isLeftOut(attribute(tag, "Id") ?? "") ? undefined : tag,
  );
  const left = reached(over(file, new Map([[list, rest]])));
  const gone = new Set<string>();
  for (const name of reached(file)) {
    if (left.has(name)) continue;
    gone.add(name);
    gone.add(relationsPart(name));
  }
  const types = mapTags(file.read(CONTENT_TYPES), "Override", (tag) =>
    gone.has((attribute(tag, "PartName") ?? "").replace(/^\//, "").toLowerCase()) ? undefined : tag,
  );
  return {
    parts: new Map([
      [list, rest],
      [CONTENT_TYPES, types],
    ]),
    gone,
  };
}

/** The file without a part that another leads to, and without what nothing else leads to then. */
export function leaveOutPart(file: PackageParts, part: string, target: string): LeftOut {
  const links = relationsOf(file, part).flatMap(({ id, part: own }) => (own === target ? id : []));
  return leaveOut(file, part, (link) => links.includes(link));
}

/** The parts that relations lead to, in small letters. */
function reached(file: PackageParts): Set<string> {
  const found = new Set<string>();
  const open = [""];
  for (let part = open.pop(); part !== undefined; part = open.pop())
    for (const { part: target } of relationsOf(file, part)) {
      if (!file.has(target) || found.has(target.toLowerCase())) continue;
      found.add(target.toLowerCase());
      open.push(target);
    }
  return found;
}
