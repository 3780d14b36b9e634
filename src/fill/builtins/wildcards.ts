// fill: texts with `*`, `?` and `~` in conditions and look-ups.

import { Unsupported } from "../formula/values.ts";

export const hasWildcards = (text: string): boolean => /[*?~]/.test(text);

/** As the source of a pattern: `*` any characters, `?` one, `~` takes what follows as it is. */
export function wildcardPattern(text: string): string {
  if (/~(?![*?~])/.test(text.replaceAll(/~[*?~]/g, "")))
    throw new Unsupported('"~" before what is no wildcard');
  return text.replace(/~([*?~])|\*+|\?|[\\^$.|+()[\]{}/-]/g, (found, escaped?: string) => {
    if (escaped) return `\\${escaped}`;
    return found[0] === "*" ? "[^]*?" : found === "?" ? "[^]" : `\\${found}`;
  });
}

/** Whether a text is what the wildcards ask for, whatever its case. */
export function wildcardTest(text: string): (value: string) => boolean {
  const pattern = new RegExp(`^${wildcardPattern(text)}$`, "i");
  return (value) => pattern.test(value);
}

/** How every text begins that the wildcards ask for, in small letters, as far as letters have no other forms. */
export const literalStart = (text: string): string => /^[\w .,:;()/+-]*/.exec(text)![0].toLowerCase();
