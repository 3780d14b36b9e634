// workbook: styles of cells that differ from others in some of their looks: copies behind the styles that a file has,
// which keep their numbers; what is not changed of them stays as it is.

import { withAttribute } from "./write-sheet.ts";
import { attribute, elements, escapeAttribute } from "./xml-text.ts";

const FIRST_OWN_FORMAT = 164;
const MAIN = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";

export const sides = ["left", "right", "top", "bottom"] as const;
export type Side = (typeof sides)[number];

/** What is other than before; null where it is gone. Colors as `#RRGGBB`. */
export interface StyleChange {
  readonly format?: string;
  readonly font?: {
    readonly bold?: boolean;
    readonly italic?: boolean;
    readonly strikethrough?: boolean;
    readonly underline?: boolean;
    /** null for that of the file's first style. */
    readonly size?: number | null;
    readonly color?: string | null;
  };
  readonly fill?: string | null;
  readonly borders?: { readonly [side in Side]?: { readonly style: string; readonly color: string } | null };
  /** Attributes of the alignment as the file has them. */
  readonly alignment?: Readonly<Record<string, string | null>>;
}

export interface WantedStyle {
  /** The number of the style that it is like. */
  readonly like: string;
  readonly change: StyleChange;
  /** The number of a style that has the number format it gets. */
  readonly formatLike?: string;
}

export interface Restyled {
  readonly text: string;
  /** The number of the style that is like the given one but for the change. */
  style(wanted: WantedStyle): string;
}

/** Undefined if the styles are written in a way that is not followed here. */
export function restyled(styles: string, wanted: readonly WantedStyle[]): Restyled | undefined {
  const [root] = elements(styles, "styleSheet");
  if (!root?.tag.startsWith("<styleSheet") || !root.tag.includes(`"${MAIN}"`)) return undefined;
  const lists = { cellXfs: listOf(styles, "cellXfs", "xf"), numFmts: listOf(styles, "numFmts", "numFmt") };
  const parts = {
    font: listOf(styles, "fonts", "font"),
    fill: listOf(styles, "fills", "fill"),
    border: listOf(styles, "borders", "border"),
  };
  const { cellXfs, numFmts } = lists;
  if (!cellXfs.isThere || Object.values(parts).some(({ isThere }) => !isThere)) return undefined;
  const formats = new FormatNumbers(numFmts);
  const known = new Map<string, string>();
  for (const one of wanted) {
    const key = keyOf(one);
    const xf = cellXfs.items[Number(one.like)];
    if (known.has(key)) continue;
    if (xf === undefined) return undefined;
    if (Object.keys(one.change).length === 0 && one.formatLike === undefined) {
      known.set(key, one.like);
      continue;
    }
    const { format, font, fill, borders, alignment } = one.change;
    let made = xf;
    const likeFormat = one.formatLike === undefined ? undefined : cellXfs.items[Number(one.formatLike)];
    if (likeFormat !== undefined)
      made = withNumber(
        made,
        "numFmtId",
        Number(attribute(likeFormat, "numFmtId") ?? 0),
        "applyNumberFormat",
      );
    if (format !== undefined)
      made = withNumber(made, "numFmtId", formats.numberOf(format), "applyNumberFormat");
    if (font)
      made = withPart(made, parts.font, "fontId", "applyFont", (own) =>
        withFont(own, font, parts.font.items[0] ?? ""),
      );
    if (fill !== undefined) made = withPart(made, parts.fill, "fillId", "applyFill", () => fillElement(fill));
    if (borders)
      made = withPart(made, parts.border, "borderId", "applyBorder", (own) => withBorders(own, borders));
    if (alignment) made = withAlignment(made, alignment);
    known.set(key, String(cellXfs.numberOf(made, true)));
  }
  // From the end of the text on, so that places before stay.
  const changed = [...Object.values(lists), ...Object.values(parts)].filter(({ isMore }) => isMore);
  let text = styles;
  for (const list of changed.sort((a, b) => b.start - a.start)) text = list.writtenInto(text, root);
  return { text, style: (one) => known.get(keyOf(one)) ?? one.like };
}

const keyOf = ({ like, change, formatLike = "" }: WantedStyle) =>
  `${like} ${formatLike} ${JSON.stringify(change)}`;

/** A list of the styles, to which items are appended. */
class List {
  readonly items: string[];
  readonly isThere: boolean;
  readonly start: number;
  private readonly before: number;

  constructor(
    private readonly name: string,
    private readonly found: { tag: string; inside: string; start: number; end: number } | undefined,
    item: string,
  ) {
    this.isThere = found !== undefined;
    this.start = found?.start ?? 0;
    const { inside = "" } = found ?? {};
    this.items = [...elements(inside, item)].map(({ start, end }) => inside.slice(start, end));
    this.before = this.items.length;
  }

  get isMore(): boolean {
    return this.items.length > this.before;
  }

  /** The number of an item, which is appended if it is not there. */
  numberOf(item: string, isNew = false): number {
    const at = this.items.indexOf(item, isNew ? this.before : 0);
    return at >= 0 ? at : this.items.push(item) - 1;
  }

  writtenInto(text: string, root: { tag: string; start: number }): string {
    const { name, found, items, before } = this;
    const added = items.slice(before).join("");
    if (!found) {
      const at = root.start + root.tag.length;
      return `${text.slice(0, at)}<${name} count="${items.length}">${added}</${name}>${text.slice(at)}`;
    }
    const tag = withAttribute(found.tag.replace(/\s*\/>$/, ">"), "count", String(items.length));
    return `${text.slice(0, found.start)}${tag}${found.inside}${added}</${name}>${text.slice(found.end)}`;
  }
}

const listOf = (styles: string, name: string, item: string) =>
  new List(name, [...elements(styles, name)].at(0), item);

class FormatNumbers {
  private readonly numbers = new Map<string, number>([
    ["General", 0],
    ["@", 49],
  ]);
  private highest = FIRST_OWN_FORMAT - 1;

  constructor(private readonly list: List) {
    for (const tag of list.items) {
      const number = Number(attribute(tag, "numFmtId"));
      this.numbers.set(attribute(tag, "formatCode") ?? "", number);
      this.highest = Math.max(this.highest, number);
    }
  }

  numberOf(format: string): number {
    const known = this.numbers.get(format);
    if (known !== undefined) return known;
    const number = ++this.highest;
    this.numbers.set(format, number);
    this.list.numberOf(`<numFmt numFmtId="${number}" formatCode="${escapeAttribute(format)}"/>`);
    return number;
  }
}

/** The style with its own start tag changed. */
const withTag = (xf: string, change: (tag: string) => string): string => {
  const end = xf.indexOf(">") + 1;
  return change(xf.slice(0, end)) + xf.slice(end);
};

const withNumber = (xf: string, name: string, number: number, applied: string): string =>
  withTag(xf, (tag) => withAttribute(withAttribute(tag, name, String(number)), applied, "1"));

function withPart(
  xf: string,
  list: List,
  name: string,
  applied: string,
  change: (own: string) => string,
): string {
  const tag = xf.slice(0, xf.indexOf(">") + 1);
  const own = list.items[Number(attribute(tag, name) ?? 0)] ?? list.items[0] ?? "";
  return withNumber(xf, name, list.numberOf(change(own)), applied);
}

const rgb = (color: string): string => `rgb="FF${color.slice(1, 7).toUpperCase()}"`;

/** The elements within one, in their order. */
function childrenOf(element: string): { name: string; text: string }[] {
  const open = element.indexOf(">") + 1;
  const children: { name: string; text: string }[] = [];
  for (let at = open; ; ) {
    const found = /<([\w:.-]+)/g;
    found.lastIndex = at;
    const next = found.exec(element);
    if (!next || element.endsWith("/>", open)) return children;
    const [child] = elements(element.slice(next.index), next[1]);
    children.push({ name: next[1], text: element.slice(next.index, next.index + child.end) });
    at = next.index + child.end;
  }
}

/** The element with these in place of its own of their names, in the order that the format wants. */
function withChildren(
  element: string,
  name: string,
  order: readonly string[],
  now: ReadonlyMap<string, string>,
): string {
  const start = element === "" ? `<${name}>` : element.slice(0, element.indexOf(">") + 1);
  const kept = childrenOf(element).filter((child) => !now.has(child.name));
  const all = [...kept, ...[...now].map(([child, text]) => ({ name: child, text }))];
  const placeOf = (child: string) => (order.includes(child) ? order.indexOf(child) : order.length);
  const inside = all
    .sort((a, b) => placeOf(a.name) - placeOf(b.name))
    .map(({ text }) => text)
    .join("");
  const open = start.replace(/\s*\/>$/, ">");
  return inside === "" ? open.replace(/>$/, "/>") : `${open}${inside}</${name}>`;
}

const fontOrder = "b i strike condense extend outline shadow u vertAlign sz color name family charset scheme";

function withFont(own: string, change: NonNullable<StyleChange["font"]>, usual: string): string {
  const now = new Map<string, string>();
  const flags = { b: change.bold, i: change.italic, strike: change.strikethrough, u: change.underline };
  for (const [name, is] of Object.entries(flags)) if (is !== undefined) now.set(name, is ? `<${name}/>` : "");
  const size =
    change.size === null ? attribute([...elements(usual, "sz")].at(0)?.tag ?? "", "val") : change.size;
  if (change.size !== undefined) now.set("sz", size === undefined ? "" : `<sz val="${size}"/>`);
  if (change.color !== undefined)
    now.set("color", change.color === null ? "" : `<color ${rgb(change.color)}/>`);
  return withChildren(own, "font", fontOrder.split(" "), now);
}

const fillElement = (color: string | null): string =>
  color === null
    ? '<fill><patternFill patternType="none"/></fill>'
    : `<fill><patternFill patternType="solid"><fgColor ${rgb(color)}/><bgColor indexed="64"/></patternFill></fill>`;

function withBorders(own: string, change: NonNullable<StyleChange["borders"]>): string {
  const now = new Map<string, string>();
  for (const side of sides) {
    const line = change[side];
    if (line === undefined) continue;
    const inside = line && `<${side} style="${line.style}"><color ${rgb(line.color)}/></${side}>`;
    now.set(side, inside ?? `<${side}/>`);
  }
  const order = ["start", "end", ...sides, "diagonal", "vertical", "horizontal"];
  return withChildren(own, "border", order, now);
}

function withAlignment(xf: string, change: Readonly<Record<string, string | null>>): string {
  const [own] = elements(xf, "alignment");
  let tag = own ? own.tag : "<alignment/>";
  for (const [name, value] of Object.entries(change)) tag = withAttribute(tag, name, value ?? undefined);
  const applied = withTag(xf, (start) => withAttribute(start, "applyAlignment", "1"));
  const [there] = elements(applied, "alignment");
  if (there) return applied.slice(0, there.start) + tag + applied.slice(there.end);
  const end = applied.indexOf(">") + 1;
  const start = applied.slice(0, end);
  return start.endsWith("/>")
    ? `${start.replace(/\s*\/>$/, ">")}${tag}</xf>`
    : start + tag + applied.slice(end);
}
