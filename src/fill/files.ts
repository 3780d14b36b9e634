// fill: reading and writing files so that a user's workbook is whole at every moment.

import {
  closeSync,
  fsyncSync,
  openSync,
  readFileSync,
  realpathSync,
  renameSync,
  rmSync,
  type Stats,
  statSync,
  writeSync,
} from "node:fs";
import { dirname } from "node:path";
import { Refusal } from "../workbook/workbook.ts";

/** Larger files are no workbooks that a program could open. */
const LARGEST_FILE = 512 * 2 ** 20;

/** By which a change of the file by someone else is noticed. */
export interface Stamp {
  readonly size: number;
  readonly time: number;
}

export function readWhole(path: string): { bytes: Uint8Array; stamp: Stamp } {
  try {
    const stats = statSync(path);
    refuseOthers(stats);
    if (stats.size > LARGEST_FILE) throw new Refusal("the file is larger than a workbook can be");
    return { bytes: readFileSync(path), stamp: { size: stats.size, time: stats.mtimeMs } };
  } catch (error) {
    throw fileRefusal(error, "read");
  }
}

/** Only a file can be put in the place of a file: a pipe or a device would be gone, or never end. */
function refuseOthers(stats: Stats): void {
  if (stats.isDirectory()) throw new Refusal("it is a folder");
  if (!stats.isFile()) throw new Refusal("it is no regular file");
}

const reasons: Readonly<Record<string, string>> = {
  ENOENT: "there is no such file",
  EACCES: "permission is denied",
  EPERM: "permission is denied",
  EROFS: "the disk is read-only",
  ENOSPC: "the disk is full",
  EISDIR: "it is a folder",
  ENOTDIR: "a part of the path is no folder",
  EBUSY: "another program has the file open",
};

/** An error of the file system in one sentence; anything else as it is. */
export function fileRefusal(error: unknown, what: "read" | "written"): unknown {
  const code = (error as { code?: unknown })?.code;
  if (typeof code !== "string" || !/^E[A-Z]+$/.test(code)) return error;
  return new Refusal(`the file cannot be ${what}: ${reasons[code] ?? code}`);
}

/** The name beside `path` under which its next content is written. */
export const besideName = (path: string): string => `${realPath(path)}.${process.pid}.tmp`;

export interface NewFile {
  write(piece: Uint8Array): void;
  /** Puts the file in its place, which until then is as it was. */
  finish(): void;
  /** Leaves everything as it was. */
  giveUp(): void;
}

/** A file that takes the place of `path` once it is whole. `unless` says in one sentence why it may not. */
export function newFile(path: string, unless: () => string | undefined = () => undefined): NewFile {
  const target = realPath(path);
  const stats = statSync(target, { throwIfNoEntry: false });
  if (stats && !stats.isDirectory()) refuseOthers(stats);
  const beside = besideName(path);
  let file: number | undefined;
  const attempt = <T>(run: () => T): T => {
    try {
      return run();
    } catch (error) {
      throw fileRefusal(error, "written");
    }
  };
  file = attempt(() => openSync(beside, "wx", modeOf(target)));
  const close = () => {
    if (file !== undefined) closeSync(file);
    file = undefined;
  };
  return {
    write: (piece) =>
      attempt(() => {
        for (let at = 0; at < piece.length; ) at += writeSync(file!, piece, at);
      }),
    finish: () =>
      attempt(() => {
        fsyncSync(file!);
        close();
        const reason = unless();
        if (reason) throw new Refusal(reason);
        renameSync(beside, target);
        syncFolder(dirname(target));
      }),
    giveUp() {
      close();
      rmSync(beside, { force: true });
    },
  };
}

/** Writes the pieces as the whole content of `path`, or leaves it as it was. */
export function replaceFile(
  path: string,
  pieces: Iterable<Uint8Array>,
  unless?: () => string | undefined,
): void {
  const file = newFile(path, unless);
  try {
    for (const piece of pieces) file.write(piece);
    file.finish();
  } catch (error) {
    file.giveUp();
    throw error;
  }
}

/** Why a file that was read is not replaced: somebody has saved it since. */
export function changedSince(path: string, { size, time }: Stamp): string | undefined {
  const now = statSync(path, { throwIfNoEntry: false });
  if (now?.size === size && now.mtimeMs === time) return undefined;
  return "the file was changed by another program meanwhile, and is left as it is";
}

/** The file itself, where the path is a link to it. */
export function realPath(path: string): string {
  try {
    return realpathSync(path);
  } catch {
    return path;
  }
}

const modeOf = (path: string): number => (statSync(path, { throwIfNoEntry: false })?.mode ?? 0o666) & 0o777;

/** So that the new name outlasts a loss of power; not every system can. */
function syncFolder(path: string): void {
  try {
    const folder = openSync(path, "r");
    fsyncSync(folder);
    closeSync(folder);
  } catch {
    // The file itself is on the disk.
  }
}
