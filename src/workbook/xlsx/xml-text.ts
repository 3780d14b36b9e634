// workbook: texts inside the parts of an .xlsx file, in and out of their escapes. Only what the format needs is read:
// a document type or an entity of its own is refused, for nothing that writes workbooks makes any.

import { Refusal } from "../workbook.ts";

const entities: ReadonlyMap<string, string> = new Map([
  ["amp", "&"],
  ["lt", "<"],
  ["gt", ">"],
  ["quot", '"'],
  ["apos", "'"],
]);

/** The text of a part. */
export function decodePart(bytes: Uint8Array, name: string): string {
  if ((bytes[0] === 0xff && bytes[1] === 0xfe) || (bytes[0] === 0xfe && bytes[1] === 0xff))
    throw new Refusal(`${name} inside the workbook is not in UTF-8`);
  let text: string;
  try {
    text = new TextDecoder("utf-8", { fatal: true, ignoreBOM: true }).decode(bytes);
  } catch {
    throw new Refusal(`${name} inside the workbook is damaged: it is not text in UTF-8`);
  }
  // A declaration stands before the first element; looking no further keeps this quick in a large part.
  if (/<!(?:DOCTYPE|ENTITY)/i.test(text.slice(0, firstElement(text))))
    throw new Refusal(`${name} inside the workbook declares a document type, which no workbook needs`);
  return text;
}

function firstElement(text: string): number {
  for (let at = 0; ; ) {
    at = text.indexOf("<", at);
    if (at < 0) return text.length;
    if (text.startsWith("<!--", at)) at = closing(text, "-->", at);
    else if (text.startsWith("<?", at)) at = closing(text, "?>", at);
    else if (text[at + 1] === "!") return text.length;
    else return at;
  }
}

const closing = (text: string, mark: string, from: number) => {
  const end = text.indexOf(mark, from);
  return end < 0 ? text.length : end + mark.length;
};

/** Character data or the value of an attribute without its escapes. */
export function unescapeXml(text: string): string {
  if (text.includes("<![CDATA["))
    return text
      .split(/(<!\[CDATA\[[\s\S]*?\]\]>)/)
      .map((piece) => (piece.startsWith("<![CDATA[") ? piece.slice(9, -3) : unescapeXml(piece)))
      .join("");
  if (!text.includes("&")) return text;
  return text.replace(/&([^;&]{0,12}(;?))/g, (whole, name: string, end: string) => {
    const entity = name.slice(0, -1);
    if (end === "") throw new Refusal(`the workbook is damaged: "${whole}" is no escape`);
    const plain = entities.get(entity);
    if (plain !== undefined) return plain;
    const hexadecimal = /^#x([0-9a-f]{1,6})$/i.exec(entity);
    const decimal = /^#(\d{1,7})$/.exec(entity);
    const code = hexadecimal ? Number.parseInt(hexadecimal[1], 16) : Number(decimal?.[1] ?? Number.NaN);
    if (!(code <= 0x10ffff))
      throw new Refusal(`the workbook uses an entity of its own, "${whole}", which no workbook needs`);
    return String.fromCodePoint(code);
  });
}

/** Character data; ">" too, as Excel writes it. */
export function escapeXml(text: string): string {
  return text.replace(/[&<>]/g, (sign) => (sign === "&" ? "&amp;" : sign === "<" ? "&lt;" : "&gt;"));
}

/** The value of an attribute, to stand in double quotes. */
export const escapeAttribute = (text: string): string => escapeXml(text).replaceAll('"', "&quot;");

/** The text of a cell: beside XML's escapes the format has `_x000D_` for what XML cannot hold. */
export const readCellText = (text: string): string => withoutFormatEscapes(unescapeXml(text));

export function withoutFormatEscapes(plain: string): string {
  if (!plain.includes("_x")) return plain;
  return plain.replace(/_x([0-9A-Fa-f]{4})_/g, (_, digits) =>
    String.fromCharCode(Number.parseInt(digits, 16)),
  );
}

export function writeCellText(text: string): string {
  return escapeXml(
    text
      .replace(/_(?=x[0-9A-Fa-f]{4}_)/g, "_x005F_")
      .replace(
        /[\u0000-\u0008\u000b-\u001f\ufffe\uffff]/g,
        (sign) => `_x${sign.charCodeAt(0).toString(16).toUpperCase().padStart(4, "0")}_`,
      ),
  );
}

const attributes = /([\w:.-]+)\s*=\s*(?:"([^"]*)"|'([^']*)')/g;

/** The value of an attribute in the text of a start tag, or undefined. `name` with its prefix. */
export function attribute(tag: string, name: string): string | undefined {
  attributes.lastIndex = 0;
  for (let found = attributes.exec(tag); found; found = attributes.exec(tag))
    if (found[1] === name) return unescapeXml(found[2] ?? found[3]);
  return undefined;
}

/** The value of the first attribute of that local name, whatever its prefix: `id` of `r:id`. */
export function prefixedAttribute(tag: string, local: string): string | undefined {
  attributes.lastIndex = 0;
  for (let found = attributes.exec(tag); found; found = attributes.exec(tag))
    if (found[1].endsWith(`:${local}`)) return unescapeXml(found[2] ?? found[3]);
  return undefined;
}

const restOfTag = /[^"'>]*(?:(?:"[^"]*"|'[^']*')[^"'>]*)*>/y;

/** The place after the ">" of the tag that starts at `start`; one inside quotes is none. */
function tagEnd(text: string, start: number): number {
  restOfTag.lastIndex = start;
  if (!restOfTag.test(text)) throw new Refusal("the workbook is damaged: a tag does not end");
  return restOfTag.lastIndex;
}

/** Where the end tag of that name starts, its prefix included. */
function endTag(text: string, name: string, from: number): number {
  for (let at = text.indexOf(`</${name}`, from); at >= 0; at = text.indexOf(`</${name}`, at + 1))
    if (/[\s>]/.test(text[at + 2 + name.length] ?? "")) return at;
  throw new Refusal(`the workbook is damaged: ${name} does not end`);
}

/** An element of a part: its start tag, and what stands between it and its end tag ("" if nothing can). */
export interface Element {
  readonly tag: string;
  readonly inside: string;
  readonly start: number;
  readonly end: number;
}

/** The elements of that local name, whatever their prefix; comments are skipped, and what lies inside one. */
export function* elements(text: string, name: string): Generator<Element> {
  const starts = new RegExp(`<!--|<((?:[\\w.-]+:)?)${name}(?=[\\s/>])`, "g");
  for (let found = starts.exec(text); found; found = starts.exec(text)) {
    if (found[0] === "<!--") {
      starts.lastIndex = closing(text, "-->", found.index);
      continue;
    }
    const start = found.index;
    const open = tagEnd(text, start);
    const tag = text.slice(start, open);
    if (tag.endsWith("/>")) {
      starts.lastIndex = open;
      yield { tag, inside: "", start, end: open };
      continue;
    }
    const close = endTag(text, found[1] + name, open);
    const end = tagEnd(text, close);
    starts.lastIndex = end;
    yield { tag, inside: text.slice(open, close), start, end };
  }
}
