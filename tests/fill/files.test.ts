// tests: a file is its old self until the new one is whole.

import {
  chmodSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  realpathSync,
  rmSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, expect, test } from "vitest";
import { besideName, changedSince, newFile, readWhole, replaceFile } from "../../src/fill/files.ts";

const folder = mkdtempSync(join(tmpdir(), "fill-files-"));
afterAll(() => rmSync(folder, { recursive: true }));
const bytes = (text: string) => new TextEncoder().encode(text);
const fresh = (name: string, text: string) => {
  const path = join(folder, name);
  writeFileSync(path, text);
  return path;
};

test("is replaced by its pieces, with its rights, and nothing is left beside it", () => {
  const path = fresh("whole", "old");
  chmodSync(path, 0o640);
  replaceFile(path, [bytes("new "), bytes("content")]);
  expect(readFileSync(path, "utf8")).toBe("new content");
  expect(statSync(path).mode & 0o777).toBe(0o640);
  expect(readdirSync(folder).filter((name) => name.startsWith("whole"))).toEqual(["whole"]);
});

test("stays if the writing breaks off at any piece, or before the last step", () => {
  const path = fresh("kept", "old");
  function* breaking(after: number) {
    for (let i = 0; ; i++) {
      if (i === after) throw new Error("power lost");
      yield bytes("new");
    }
  }
  for (const after of [0, 1, 5]) {
    expect(() => replaceFile(path, breaking(after))).toThrow("power lost");
    expect(readFileSync(path, "utf8")).toBe("old");
  }
  expect(() => replaceFile(path, [bytes("new")], () => "not now")).toThrow("not now");
  expect(readFileSync(path, "utf8")).toBe("old");
  expect(readdirSync(folder).filter((name) => name.startsWith("kept"))).toEqual(["kept"]);
});

test("the new content is whole before the old is gone", () => {
  const path = fresh("order", "old");
  let seen = "";
  replaceFile(path, [bytes("new")], () => {
    const beside = readdirSync(folder).find((name) => name.startsWith("order."));
    seen = `${readFileSync(path, "utf8")} ${readFileSync(join(folder, beside!), "utf8")}`;
    return undefined;
  });
  expect(seen).toBe("old new");
});

test("a link stays a link to the file that is replaced", () => {
  const path = fresh("target", "old");
  const link = join(folder, "link");
  symlinkSync(path, link);
  replaceFile(link, [bytes("new")]);
  expect(readFileSync(path, "utf8")).toBe("new");
  expect(readFileSync(link, "utf8")).toBe("new");
});

test("what somebody else has saved meanwhile is told", () => {
  const path = fresh("shared", "old");
  const { stamp } = readWhole(path);
  expect(changedSince(path, stamp)).toBeUndefined();
  writeFileSync(path, "saved by another");
  expect(changedSince(path, stamp)).toContain("changed by another program");
  rmSync(path);
  expect(changedSince(path, stamp)).toContain("changed by another program");
});

test("what cannot be read or written is said in a sentence", () => {
  expect(() => readWhole(join(folder, "none"))).toThrow("there is no such file");
  expect(() => readWhole(folder)).toThrow("it is a folder");
  expect(() => replaceFile(join(folder, "none", "x"), [])).toThrow("the file cannot be written");
  const inWay = join(folder, "in-way");
  mkdirSync(inWay);
  expect(() => replaceFile(inWay, [bytes("x")])).toThrow("the file cannot be written");
  expect(existsSync(inWay)).toBe(true);
});

test("a pipe or a device is neither read nor replaced", () => {
  expect(() => readWhole("/dev/null")).toThrow("no regular file");
  expect(() => newFile("/dev/null")).toThrow("no regular file");
});

test("what is written first lies beside the file that a link leads to", () => {
  const file = join(folder, "real.xlsx");
  const link = join(folder, "linked.xlsx");
  writeFileSync(file, "x");
  symlinkSync(file, link);
  expect(besideName(link)).toBe(besideName(realpathSync(file)));
});
