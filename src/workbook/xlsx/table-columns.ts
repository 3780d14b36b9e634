// workbook: the columns of a table where columns of its sheet are inserted or taken out.

import type { Box } from "./addresses.ts";
import type { LineShift } from "./line-shift.ts";
import { mapInside, mapTags, NotCertain } from "./map-elements.ts";
import { withAttribute } from "./write-sheet.ts";
import { attribute, type Element, elements, escapeXml } from "./xml-text.ts";

export interface ShiftedColumns {
  readonly text: string;
  /** Headers that came in, by the columns of the sheet that they stand in. */
  readonly headers: ReadonlyMap<number, string>;
  /** Headers of columns that are gone. */
  readonly lost: readonly string[];
}

/**
 * @param box the cells of the table before, and now
 * @throws NotCertain
 */
export function shiftedColumns(text: string, box: Box, now: Box, shift: LineShift): ShiftedColumns {
  if (/\bqueryTableFieldId\s*=/.test(text)) throw new NotCertain("query");
  const headers = new Map<number, string>();
  const lost: string[] = [];
  const changed = mapInside(text, "tableColumns", (inside) => {
    const columns = [...elements(inside, "tableColumn")];
    const nameOf = ({ tag }: Element) => attribute(tag, "name") ?? "";
    const taken = new Set(columns.map((column) => nameOf(column).toUpperCase()));
    let number = Math.max(0, ...columns.map(({ tag }) => Number(attribute(tag, "id"))));
    const at = new Map<number, string>();
    columns.forEach((column, i) => {
      const place = shift.line(box.left + i);
      if (place === undefined) lost.push(nameOf(column));
      else at.set(place, inside.slice(column.start, column.end));
    });
    const prefix = /^<((?:[\w.-]+:)?)/.exec(columns[0].tag)![1];
    const all: string[] = [];
    for (let place = now.left; place <= now.right; place++) {
      const there = at.get(place);
      if (there !== undefined) {
        all.push(there);
        continue;
      }
      // As Excel names a column of a table that has no header yet.
      let name = 1;
      while (taken.has(`COLUMN${name}`)) name++;
      const header = `Column${name}`;
      taken.add(header.toUpperCase());
      headers.set(place, header);
      all.push(`<${prefix}tableColumn id="${++number}" name="${escapeXml(header)}"/>`);
    }
    return all.join("");
  });
  const count = String(now.right - now.left + 1);
  return {
    text: mapTags(changed, "tableColumns", (tag) => withAttribute(tag, "count", count)),
    headers,
    lost,
  };
}
