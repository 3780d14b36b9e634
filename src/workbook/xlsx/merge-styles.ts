// workbook: appends the styles of one workbook to those of another, which stay as they are and keep their numbers.

import { attribute, elements } from "./xml-text.ts";

const MAIN = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
/** Number formats below this are the same in all workbooks. */
const FIRST_OWN_FORMAT = 164;

export interface MergedStyles {
  readonly text: string;
  /** What is added to the number of a cell's style, and of a style that a condition gives. */
  readonly cells: number;
  readonly conditional: number;
}

/** Undefined if the styles are written in a way that is not followed here. */
export function mergedStyles(own: string, more: string): MergedStyles | undefined {
  const [root] = elements(own, "styleSheet");
  if (!root?.tag.startsWith("<styleSheet") || !root.tag.includes(`"${MAIN}"`)) return undefined;
  if (!["fonts", "fills", "borders", "cellXfs"].every((list) => [...elements(own, list)].length === 1))
    return undefined;
  const formats = itemsOf(own, "numFmts", "numFmt").map((tag) => Number(attribute(tag, "numFmtId")));
  const shift = Math.max(FIRST_OWN_FORMAT - 1, ...formats) + 1 - FIRST_OWN_FORMAT;
  const offsets = {
    fontId: itemsOf(own, "fonts", "font").length,
    fillId: itemsOf(own, "fills", "fill").length,
    borderId: itemsOf(own, "borders", "border").length,
  };
  const shifted = (text: string) =>
    text.replace(/\b(numFmtId|fontId|fillId|borderId|xfId)="(\d+)"/g, (_, name: string, number: string) => {
      if (name === "xfId") return 'xfId="0"';
      if (name !== "numFmtId") return `${name}="${Number(number) + offsets[name as keyof typeof offsets]}"`;
      return `numFmtId="${Number(number) + (Number(number) < FIRST_OWN_FORMAT ? 0 : shift)}"`;
    });
  const cells = itemsOf(own, "cellXfs", "xf").length;
  const conditional = itemsOf(own, "dxfs", "dxf").length;
  let text = own;
  for (const [list, item] of lists) {
    const [given] = elements(more, list);
    const count = given ? itemsOf(more, list, item).length : 0;
    if (count > 0)
      text = appended(text, list, itemsOf(text, list, item).length + count, shifted(given.inside));
  }
  return { text, cells, conditional };
}

const lists = [
  ["numFmts", "numFmt"],
  ["fonts", "font"],
  ["fills", "fill"],
  ["borders", "border"],
  ["cellXfs", "xf"],
  ["dxfs", "dxf"],
] as const;

function itemsOf(text: string, list: string, item: string): string[] {
  const [found] = elements(text, list);
  return found ? [...elements(found.inside, item)].map(({ tag }) => tag) : [];
}

function appended(text: string, list: string, count: number, items: string): string {
  const [found] = elements(text, list);
  if (found) {
    const tag = found.tag.replace(/\scount\s*=\s*(?:"\d*"|'\d*')/, "").replace(/\s*\/?>$/, "");
    const whole = `${tag} count="${count}">${found.inside}${items}</${list}>`;
    return text.slice(0, found.start) + whole + text.slice(found.end);
  }
  const made = `<${list} count="${count}">${items}</${list}>`;
  const [root] = elements(text, "styleSheet");
  if (list === "numFmts") {
    const at = root.start + root.tag.length;
    return text.slice(0, at) + made + text.slice(at);
  }
  const [before] = [...elements(text, "cellStyles"), ...elements(text, "cellXfs")];
  return text.slice(0, before.end) + made + text.slice(before.end);
}
