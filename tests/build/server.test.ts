// tests: the server gives the files of one folder, to loopback names only.

import { mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { type IncomingHttpHeaders, request, type Server } from "node:http";
import { connect } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { policies } from "../../src/build/policy.ts";
import { createFileServer, listen } from "../../src/build/server.ts";

const files = {
  "index.html": "<!doctype html>",
  "workbook.html": "<!doctype html>",
  "functions.js": "1",
  "functions.json": "{}",
  "manifest.xml": "<a/>",
  "page.css": "a{}",
  "icons/icon-16.png": "p",
  "vendor/font.woff2": "f",
  "vendor/LICENSE.txt": "l",
};

interface Answer {
  status: number;
  headers: IncomingHttpHeaders;
  body: string;
}

let outer: string;
let server: Server;
let port: number;

beforeAll(async () => {
  outer = mkdtempSync(join(tmpdir(), "server-"));
  for (const [name, text] of Object.entries(files)) {
    mkdirSync(join(outer, "dist", name, ".."), { recursive: true });
    writeFileSync(join(outer, "dist", name), text);
  }
  writeFileSync(join(outer, "secret.txt"), "secret");
  mkdirSync(join(outer, "dist-other"));
  writeFileSync(join(outer, "dist-other", "secret.txt"), "secret");
  server = createFileServer(join(outer, "dist"));
  port = await listen(server, 0);
});
afterAll(() => {
  server?.close();
  rmSync(outer, { recursive: true, force: true });
});

/** A request with the path as written, which `fetch` would tidy up. */
function ask(path: string, { method = "GET", host = `127.0.0.1:${port}` } = {}): Promise<Answer> {
  return new Promise((resolve, reject) => {
    const asked = request({ host: "127.0.0.1", port, path, method, headers: { host } }, (response) => {
      let body = "";
      response.setEncoding("utf8");
      response.on("data", (part) => {
        body += part;
      });
      response.on("end", () =>
        resolve({ status: response.statusCode ?? 0, headers: response.headers, body }),
      );
    });
    asked.on("error", reject);
    asked.end();
  });
}

test("listens on the loopback address only", () => {
  expect(server.address()).toMatchObject({ address: "127.0.0.1" });
});

test.each([
  ["/index.html", "text/html"],
  ["/functions.js", "text/javascript"],
  ["/functions.json", "application/json"],
  ["/manifest.xml", "text/xml|application/xml"],
  ["/page.css", "text/css"],
  ["/icons/icon-16.png", "image/png"],
  ["/vendor/font.woff2", "font/woff2"],
  ["/vendor/LICENSE.txt", "text/plain"],
])("gives %s as %s, and no other type is to be guessed", async (path, type) => {
  const { status, headers } = await ask(path);
  expect(status).toBe(200);
  expect(headers["content-type"]).toMatch(new RegExp(`^(${type})`));
  expect(headers["x-content-type-options"]).toBe("nosniff");
});

test.each([
  ["/", "index.html"],
  ["/index.html", "index.html"],
  ["/workbook.html", "workbook.html"],
  ["/workbook", "workbook.html"],
  ["/workbook.html/", "workbook.html"],
  ["/workbook.html?a=b", "workbook.html"],
])("sends the policy of the page with %s", async (path, page) => {
  const { status, headers } = await ask(path);
  expect(status).toBe(200);
  // Excel frames its page; the browser workbook is framed by nobody.
  const frames = page === "workbook.html" ? "; frame-ancestors 'none'" : "";
  expect(headers["content-security-policy"]).toBe(policies[page] + frames);
});

test("follows no link that leads out of the folder", async () => {
  const outside = mkdtempSync(join(tmpdir(), "outside-"));
  writeFileSync(join(outside, "secret.txt"), "secret");
  symlinkSync(join(outside, "secret.txt"), join(outer, "dist", "link.txt"));
  symlinkSync(outside, join(outer, "dist", "linked"));
  symlinkSync(join(outer, "dist", "page.css"), join(outer, "dist", "same.css"));
  try {
    expect((await ask("/link.txt")).status).toBe(404);
    expect((await ask("/linked/secret.txt")).status).toBe(404);
    expect((await ask("/same.css")).status).toBe(200);
  } finally {
    rmSync(outside, { recursive: true });
    for (const name of ["link.txt", "linked", "same.css"]) rmSync(join(outer, "dist", name));
  }
});

test("lets functions.json be read from another origin, and nothing else", async () => {
  expect((await ask("/functions.json")).headers["access-control-allow-origin"]).toBe("*");
  expect((await ask("/functions.js")).headers["access-control-allow-origin"]).toBeUndefined();
});

test("answers HEAD without a body", async () => {
  expect(await ask("/functions.js", { method: "HEAD" })).toMatchObject({ status: 200, body: "" });
});

describe("refuses", () => {
  test.each([
    "/../secret.txt",
    "/%2e%2e/secret.txt",
    "/..%2fsecret.txt",
    "/%2e%2e%2fsecret.txt",
    "/icons/../../secret.txt",
    "/..\\secret.txt",
    "/../dist-other/secret.txt",
    "/%00",
    "/index.html%00.png",
    "/%",
    "//etc/passwd",
    "/__proto__",
    "/%252e%252e/secret.txt",
    "/..%5csecret.txt",
    "/%2e%2e%5csecret.txt",
    "/icons/%2e%2e/%2e%2e/secret.txt",
    "/....//secret.txt",
    "/.%00./secret.txt",
    "/%c0%ae%c0%ae/secret.txt",
    "/%ef%bc%8e%ef%bc%8e/secret.txt",
    "/..;/secret.txt",
  ])("the path %s", async (path) => {
    const { status, body } = await ask(path);
    expect(status).toBe(404);
    expect(body).not.toContain("secret");
  });

  test.each(["/icons", "/icons/", "/vendor"])("to list the folder %s", async (path) => {
    expect((await ask(path)).status).toBe(404);
  });

  test.each([
    "rebound.example",
    "rebound.example:80",
    "127.0.0.1.example",
    "localhost.example",
    "192.168.1.5",
    "localhost.",
    "localhost.localdomain",
    "127.0.0.1.",
    "user@127.0.0.1",
    "127.0.0.1:4180@rebound.example",
    "127.0.0.1:port",
    "127.0.0.1:999999",
    "127.0.0.1, rebound.example",
    "127.0.0.1 rebound.example",
    "127.1",
    "0.0.0.0",
    "2130706433",
    "[::]",
    "[::ffff:127.0.0.1]",
    "::1",
    "[::1",
  ])("the host %s", async (host) => {
    const { status, body } = await ask("/index.html", { host });
    expect(status).toBe(403);
    expect(body).not.toContain("doctype");
  });

  test.each(["POST", "PUT", "DELETE", "OPTIONS"])("%s", async (method) => {
    const { status, headers } = await ask("/index.html", { method });
    expect(status).toBe(405);
    expect(headers.allow).toBe("GET, HEAD");
  });
});

test.each(["localhost", "LOCALHOST:4180", "127.0.0.1", "[::1]:4180"])("takes the host %s", async (host) => {
  expect((await ask("/index.html", { host })).status).toBe(200);
});

describe("as bytes on the wire", () => {
  /** What comes back for the lines of a request, which `request` would put in order. */
  const send = (lines: readonly string[]) =>
    new Promise<string>((resolve, reject) => {
      let answer = "";
      const socket = connect(port, "127.0.0.1", () => socket.end(`${lines.join("\r\n")}\r\n\r\n`));
      socket.setEncoding("latin1");
      socket.on("data", (part) => {
        answer += part;
      });
      socket.on("error", reject);
      socket.on("close", () => resolve(answer));
    });

  test("a request without a host is refused, in either version", async () => {
    expect(await send(["GET /index.html HTTP/1.1"])).toMatch(/^HTTP\/1\.1 400 /);
    expect(await send(["GET /index.html HTTP/1.0"])).toMatch(/^HTTP\/1\.1 403 /);
    expect(await send(["GET /index.html HTTP/1.1", "Host:", "Connection: close"])).toMatch(
      /^HTTP\/1\.1 40[03] /,
    );
  });

  test.each(["http://rebound.example/index.html", "http://rebound.example", "*", "../secret.txt"])(
    "the target %s gives no file",
    async (target) => {
      const answer = await send([`GET ${target} HTTP/1.1`, "Host: 127.0.0.1", "Connection: close"]);
      expect(answer).toMatch(/^HTTP\/1\.1 40[04] /);
      expect(answer).not.toMatch(/doctype|secret/);
    },
  );

  test("a null byte in the path or the host gives no file", async () => {
    for (const lines of [
      ["GET /index.html\0 HTTP/1.1", "Host: 127.0.0.1"],
      ["GET /index.html HTTP/1.1", "Host: 127.0.0.1\0.rebound.example"],
    ])
      expect(await send([...lines, "Connection: close"])).toMatch(/^HTTP\/1\.1 400 /);
  });
});

test("a taken port moves on to the next free one", async () => {
  const second = createFileServer(join(outer, "dist"));
  const third = createFileServer(join(outer, "dist"));
  try {
    const secondPort = await listen(second, port);
    expect(secondPort).toBeGreaterThan(port);
    expect(await listen(third, port)).toBeGreaterThan(secondPort);
  } finally {
    second.close();
    third.close();
  }
});

test("a file that is built anew is given anew", async () => {
  writeFileSync(join(outer, "dist", "page.css"), "a{color:red}");
  expect((await ask("/page.css")).body).toBe("a{color:red}");
});
