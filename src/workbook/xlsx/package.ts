// workbook: an .xlsx file as the parts it holds; what is no such file is refused with what it seems to be.

import { Refusal } from "../workbook.ts";
import { decodePart } from "./xml-text.ts";
import {
  readDirectory,
  type ZipDirectory,
  type ZipEntry,
  type ZipLimits,
  zipLimits,
} from "./zip-directory.ts";
import { rewrittenArchive, unpack } from "./zip-parts.ts";

/** The part that lists what kinds of parts there are. */
export const CONTENT_TYPES = "[Content_Types].xml";

/** What can be read of a package. */
export interface PackageParts {
  has(name: string): boolean;
  /** The text of a part; names are told apart without regard to case, as the format has it. */
  read(name: string): string;
  readonly names: readonly string[];
}

export interface Package extends PackageParts {
  /**
   * The file with new texts for some parts, with parts that are new, and without some; all else as it is. In pieces, one
   * after the other.
   */
  with(parts: ReadonlyMap<string, string | Uint8Array>, gone?: ReadonlySet<string>): Uint8Array[];
}

const none: ReadonlySet<string> = new Set();

/** Characters of all the texts that a package keeps once they are read: those of most files, which are read several times. */
const MOST_KEPT = 8 * 2 ** 20;

/**
 * The package with other texts for some parts, with parts that are new, and without some, by their names in small letters;
 * both may grow.
 */
export const over = (
  file: PackageParts,
  parts: ReadonlyMap<string, string>,
  gone: ReadonlySet<string> = none,
): PackageParts => ({
  get names() {
    const left = file.names.filter((name) => !gone.has(name.toLowerCase()) && !parts.has(name));
    return [...left, ...parts.keys()];
  },
  has: (name) => parts.has(name) || (file.has(name) && !gone.has(name.toLowerCase())),
  read: (name) => parts.get(name) ?? file.read(name),
});

export function joined(pieces: readonly Uint8Array[]): Uint8Array<ArrayBuffer> {
  const bytes = new Uint8Array(pieces.reduce((sum, { length }) => sum + length, 0));
  let at = 0;
  for (const piece of pieces) {
    bytes.set(piece, at);
    at += piece.length;
  }
  return bytes;
}

const startsWith = (bytes: Uint8Array, ...signs: number[]) => signs.every((sign, i) => bytes[i] === sign);

export function openPackage(given: Uint8Array, limits: ZipLimits = zipLimits): Package {
  // Of a kind whose slices are copies: those of Node's own kind are not.
  const bytes = new Uint8Array(given.buffer, given.byteOffset, given.byteLength);
  refuseOthers(bytes);
  const directory = readDirectory(bytes, limits);
  const entries = new Map(directory.entries.map((entry) => [entry.name.toLowerCase(), entry]));
  refuseOtherPackages(bytes, entries);
  const kept = new Map<ZipEntry, string>();
  let room = MOST_KEPT;
  return {
    names: directory.entries.map(({ name }) => name),
    has: (name) => entries.has(name.toLowerCase()),
    read(name) {
      const entry = entries.get(name.toLowerCase());
      if (!entry) throw new Refusal(`the workbook is damaged: it lacks its part ${name}`);
      const known = kept.get(entry);
      if (known !== undefined) return known;
      const text = decodePart(unpack(bytes, entry), name);
      if (text.length <= room) {
        kept.set(entry, text);
        room -= text.length;
      }
      return text;
    },
    with: (parts, gone = none) => rewritten(bytes, directory, entries, parts, gone),
  };
}

function rewritten(
  bytes: Uint8Array,
  directory: ZipDirectory,
  entries: ReadonlyMap<string, ZipEntry>,
  parts: ReadonlyMap<string, string | Uint8Array>,
  gone: ReadonlySet<string>,
): Uint8Array[] {
  const encoder = new TextEncoder();
  const encoded = [...parts].map(
    ([name, content]) =>
      [
        entries.get(name.toLowerCase())?.name ?? name,
        typeof content === "string" ? encoder.encode(content) : content,
      ] as const,
  );
  const written = new Map(encoded);
  const out = [...gone].flatMap((name) => entries.get(name.toLowerCase()) ?? []);
  return rewrittenArchive(bytes, directory, written, new Set(out.filter(({ name }) => !written.has(name))));
}

function refuseOthers(bytes: Uint8Array): void {
  if (bytes.length === 0) throw new Refusal("the file is empty");
  // A compound file: an old workbook, or one that a password locks.
  if (startsWith(bytes, 0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1, 0x1a, 0xe1)) {
    if (hasWideText(bytes, "EncryptedPackage"))
      throw new Refusal("the workbook is locked with a password: save it without one");
    throw new Refusal("the file is no .xlsx workbook but an older kind: save it as .xlsx");
  }
  if (!startsWith(bytes, 0x50, 0x4b))
    throw new Refusal("the file is no .xlsx workbook, whatever its name says");
}

/** Whether a name of the compound file's directory is in the bytes, two of them a letter. */
function hasWideText(bytes: Uint8Array, text: string): boolean {
  const wide = Uint8Array.from([...text].flatMap((letter) => [letter.charCodeAt(0), 0]));
  for (let at = bytes.indexOf(wide[0]); at >= 0; at = bytes.indexOf(wide[0], at + 1))
    if (wide.every((sign, i) => bytes[at + i] === sign)) return true;
  return false;
}

function refuseOtherPackages(bytes: Uint8Array, entries: ReadonlyMap<string, ZipEntry>): void {
  const mimetype = entries.get("mimetype");
  if (mimetype && mimetype.size < 200) {
    const type = decodePart(unpack(bytes, mimetype), "mimetype");
    if (type.includes("opendocument"))
      throw new Refusal("the file is an OpenDocument file: save it as .xlsx");
  }
  if (entries.has("xl/workbook.bin"))
    throw new Refusal("the workbook is of the binary kind (.xlsb): save it as .xlsx");
  if (!entries.has("[content_types].xml") || !entries.has("_rels/.rels"))
    throw new Refusal("the file is no .xlsx workbook but another archive");
}
