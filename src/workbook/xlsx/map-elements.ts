// workbook: elements of a part put in others' place, wherever they stand in its text; every other character stays.

import { type Element, elements } from "./xml-text.ts";

/** What becomes of some part is not certain: it is not written. */
export class NotCertain extends Error {}

/** The text with every element of a name as `change` has it; "" takes it out. */
export function mapElements(text: string, name: string, change: (element: Element) => string): string {
  const pieces: string[] = [];
  let copied = 0;
  for (const element of elements(text, name)) {
    pieces.push(text.slice(copied, element.start), change(element));
    copied = element.end;
  }
  return pieces.join("") + text.slice(copied);
}

/** An element with another start tag. */
export const withStart = (text: string, { start, end, tag }: Element, now: string): string =>
  now + text.slice(start + tag.length, end);

/** Every element of a name with another start tag; undefined takes it out. */
export const mapTags = (text: string, name: string, change: (tag: string) => string | undefined): string =>
  mapElements(text, name, (element) => {
    const now = change(element.tag);
    return now === undefined ? "" : withStart(text, element, now);
  });

/** Every element of a name with its inside as `change` has it; undefined takes it out. */
export const mapInside = (
  text: string,
  name: string,
  change: (inside: string, tag: string) => string | undefined,
): string =>
  mapElements(text, name, (element) => {
    if (element.tag.endsWith("/>")) return text.slice(element.start, element.end);
    const now = change(element.inside, element.tag);
    const close = element.end - element.start - element.tag.length - element.inside.length;
    return now === undefined ? "" : element.tag + now + text.slice(element.end - close, element.end);
  });

/** Whether there are elements within one, and not its text alone. */
export const holdsElements = (inside: string): boolean => /<(?!!)/.test(inside);

/** The elements within the outermost one of a part. */
export function* within(text: string): Generator<{ local: string; start: number; end: number }> {
  let depth = 0;
  let start = 0;
  let local = "";
  for (const found of text.matchAll(
    /<!--[\s\S]*?-->|<\?[\s\S]*?\?>|<(\/?)((?:[\w.-]+:)?)([\w.-]+)(?:"[^"]*"|'[^']*'|[^'">])*?(\/?)>/g,
  )) {
    const [whole, close, , name, empty] = found;
    if (name === undefined) continue;
    if (close) depth--;
    else if (depth === 1) {
      start = found.index;
      local = name;
    }
    if (!close && !empty) depth++;
    const isEnd = depth === 1 && (close || empty);
    if (isEnd) yield { local, start, end: found.index + whole.length };
  }
}
