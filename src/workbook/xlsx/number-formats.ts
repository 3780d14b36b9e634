// workbook: styles of cells with other number formats: copies behind those that a file has, which keep their numbers.

import { attribute, elements, escapeXml, unescapeXml } from "./xml-text.ts";

const FIRST_OWN_FORMAT = 164;
const MAIN = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";

export interface Restyled {
  readonly text: string;
  /** The style that is like the given one but for its number format. */
  style(like: string, format: string): string;
}

/** Undefined if the styles are written in a way that is not followed here. */
export function withNumberFormats(
  styles: string,
  wanted: readonly { readonly like: string; readonly format: string }[],
): Restyled | undefined {
  const [root] = elements(styles, "styleSheet");
  const [list] = elements(styles, "cellXfs");
  if (!root?.tag.startsWith("<styleSheet") || !root.tag.includes(`"${MAIN}"`) || !list) return undefined;
  const own = [...elements(list.inside, "xf")].map(({ start, end }) => list.inside.slice(start, end));
  const [formats] = elements(styles, "numFmts");
  const numbers = new Map<string, number>([
    ["General", 0],
    ["@", 49],
  ]);
  let highest = FIRST_OWN_FORMAT - 1;
  for (const { tag } of formats ? elements(formats.inside, "numFmt") : []) {
    const number = Number(attribute(tag, "numFmtId"));
    numbers.set(unescapeXml(attribute(tag, "formatCode") ?? ""), number);
    highest = Math.max(highest, number);
  }
  const added = { formats: "", styles: "" };
  const known = new Map<string, string>();
  let count = own.length;
  for (const { like, format } of wanted) {
    const key = `${like} ${format}`;
    const xf = own[Number(like)];
    if (known.has(key)) continue;
    if (xf === undefined) return undefined;
    let number = numbers.get(format);
    if (number === undefined) {
      number = ++highest;
      numbers.set(format, number);
      added.formats += `<numFmt numFmtId="${number}" formatCode="${escapeXml(format)}"/>`;
    }
    added.styles += withFormat(xf, number);
    known.set(key, String(count++));
  }
  // From the end of the text on, so that places before stay.
  let text = replaced(styles, list, "cellXfs", own.length + known.size, list.inside + added.styles);
  if (added.formats !== "") {
    const before = formats?.inside ?? "";
    const items = [...elements(before + added.formats, "numFmt")].length;
    if (formats) text = replaced(text, formats, "numFmts", items, before + added.formats);
    else {
      const at = root.start + root.tag.length;
      text = `${text.slice(0, at)}<numFmts count="${items}">${added.formats}</numFmts>${text.slice(at)}`;
    }
  }
  return { text, style: (like, format) => known.get(`${like} ${format}`) ?? like };
}

function withFormat(xf: string, number: number): string {
  const end = xf.indexOf(">");
  const tag = xf
    .slice(0, end)
    .replace(/\s(?:numFmtId|applyNumberFormat)\s*=\s*(?:"[^"]*"|'[^']*')/g, "")
    .replace(/^<xf/, `<xf numFmtId="${number}" applyNumberFormat="1"`);
  return tag + xf.slice(end);
}

function replaced(
  text: string,
  { start, end, tag }: { readonly start: number; readonly end: number; readonly tag: string },
  name: string,
  count: number,
  inside: string,
): string {
  const bare = tag.replace(/\scount\s*=\s*(?:"[^"]*"|'[^']*')/, "").replace(/\s*\/?>$/, "");
  return `${text.slice(0, start)}${bare} count="${count}">${inside}</${name}>${text.slice(end)}`;
}
