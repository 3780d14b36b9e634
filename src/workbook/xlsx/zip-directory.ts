// workbook: the table of contents of a zip archive, and all that can be told from it before anything is unpacked.

import { Refusal } from "../workbook.ts";

export interface ZipEntry {
  readonly name: string;
  readonly method: number;
  readonly flags: number;
  readonly crc: number;
  readonly packedSize: number;
  readonly size: number;
  /** Its record in the table of contents. */
  readonly record: { readonly start: number; readonly end: number };
  /** Its local header, and its packed bytes. */
  readonly start: number;
  readonly dataStart: number;
}

export interface ZipDirectory {
  readonly entries: readonly ZipEntry[];
  /** The table of contents, and the record that ends the archive. */
  readonly start: number;
  readonly end: number;
  readonly endRecord: number;
}

export interface ZipLimits {
  /** Of all entries together, in bytes. */
  readonly unpacked: number;
  readonly entries: number;
  /** Unpacked over packed, of an entry over `ratioFrom` bytes. XML of a sheet packs to a tenth, rarely to a fiftieth. */
  readonly ratio: number;
  readonly ratioFrom: number;
}

export const zipLimits: ZipLimits = {
  unpacked: 512 * 2 ** 20,
  entries: 10_000,
  ratio: 300,
  ratioFrom: 2 ** 20,
};

const END = 0x06054b50;
const ENTRY = 0x02014b50;
const LOCAL = 0x04034b50;
const END_SIZE = 22;
const ENTRY_SIZE = 46;
const LOCAL_SIZE = 30;
const ENCRYPTED = 1;
/** Sizes follow the data instead of standing before it. */
export const SIZES_FOLLOW = 8;

const damaged = (what: string): never => {
  throw new Refusal(`the file is damaged or cut off: ${what}`);
};

const megabytes = (bytes: number) => `${Math.ceil(bytes / 2 ** 20).toLocaleString("en-US")} MiB`;

export function readDirectory(bytes: Uint8Array, limits: ZipLimits = zipLimits): ZipDirectory {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const endRecord = findEnd(view);
  const count = view.getUint16(endRecord + 10, true);
  const size = view.getUint32(endRecord + 12, true);
  const start = view.getUint32(endRecord + 16, true);
  if (count === 0xffff || size === 0xffffffff || start === 0xffffffff)
    throw new Refusal("the file is larger than a workbook can be (a zip64 archive)");
  if (view.getUint16(endRecord + 4, true) !== 0 || view.getUint16(endRecord + 8, true) !== count)
    damaged("it is one piece of an archive in several");
  if (count > limits.entries)
    throw new Refusal(`the file holds ${count} parts, and no workbook needs more than ${limits.entries}`);
  const end = start + size;
  if (end > endRecord) damaged("its table of contents does not fit into it");

  const entries: ZipEntry[] = [];
  for (let at = start; entries.length < count; ) {
    const entry = readEntry(view, bytes, at, end, start);
    entries.push(entry);
    at = entry.record.end;
  }
  check(entries, start, limits);
  return { entries, start, end, endRecord };
}

function findEnd(view: DataView): number {
  // The record is followed by a comment of at most 65,535 bytes.
  const first = Math.max(0, view.byteLength - END_SIZE - 0xffff);
  for (let at = view.byteLength - END_SIZE; at >= first; at--)
    if (view.getUint32(at, true) === END && at + END_SIZE + view.getUint16(at + 20, true) === view.byteLength)
      return at;
  return damaged("its table of contents is missing");
}

function readEntry(view: DataView, bytes: Uint8Array, at: number, end: number, directory: number): ZipEntry {
  if (at + ENTRY_SIZE > end || view.getUint32(at, true) !== ENTRY)
    damaged("its table of contents breaks off");
  const nameEnd = at + ENTRY_SIZE + view.getUint16(at + 28, true);
  const extraEnd = nameEnd + view.getUint16(at + 30, true);
  const recordEnd = extraEnd + view.getUint16(at + 32, true);
  if (recordEnd > end) damaged("its table of contents breaks off");
  const name = nameIn(bytes.subarray(at + ENTRY_SIZE, nameEnd));
  const start = view.getUint32(at + 42, true);
  if (start + LOCAL_SIZE > directory || view.getUint32(start, true) !== LOCAL)
    damaged(`${shortened(name)} is not where it should be`);
  const localName = bytes.subarray(start + LOCAL_SIZE, start + LOCAL_SIZE + view.getUint16(start + 26, true));
  if (nameIn(localName) !== name) damaged(`${shortened(name)} has another name where it lies`);
  return {
    name,
    method: view.getUint16(at + 10, true),
    flags: view.getUint16(at + 8, true),
    crc: view.getUint32(at + 16, true),
    packedSize: view.getUint32(at + 20, true),
    size: view.getUint32(at + 24, true),
    record: { start: at, end: recordEnd },
    start,
    dataStart: start + LOCAL_SIZE + view.getUint16(start + 26, true) + view.getUint16(start + 28, true),
  };
}

/** Some writers have backslashes between the folders. */
const nameIn = (bytes: Uint8Array): string => new TextDecoder().decode(bytes).replaceAll("\\", "/");

export const shortened = (name: string): string =>
  JSON.stringify(name.length > 60 ? `${name.slice(0, 60)}…` : name);

function check(entries: readonly ZipEntry[], directory: number, limits: ZipLimits): void {
  const names = new Set<string>();
  let total = 0;
  for (const { name, flags, size, packedSize, method } of entries) {
    if (/^\/|^[A-Za-z]:|\0/.test(name) || name.split("/").includes(".."))
      throw new Refusal(`the file holds a part that points outside it, ${shortened(name)}`);
    const folded = name.toLowerCase();
    if (names.has(folded)) throw new Refusal(`the file holds the part ${shortened(name)} twice`);
    names.add(folded);
    if (flags & ENCRYPTED) throw new Refusal("the file is encrypted: save it without a password");
    if (size > limits.ratioFrom && size > limits.ratio * packedSize)
      throw new Refusal(
        `the file is packed like no workbook: ${shortened(name)} would unpack to ${megabytes(size)} from ${megabytes(packedSize)}`,
      );
    if (method === 0 && size !== packedSize) damaged(`the sizes of ${shortened(name)} contradict`);
    total += size;
  }
  if (total > limits.unpacked)
    throw new Refusal(
      `the file would unpack to ${megabytes(total)}, and at most ${megabytes(limits.unpacked)} are read`,
    );
  // Two entries over the same bytes are how a small file is made to unpack to a large one.
  let free = 0;
  for (const entry of [...entries].sort((a, b) => a.start - b.start)) {
    if (entry.start < free) damaged(`${shortened(entry.name)} lies over another part`);
    free = entry.dataStart + entry.packedSize;
    if (free > directory) damaged(`${shortened(entry.name)} is cut off`);
  }
}
