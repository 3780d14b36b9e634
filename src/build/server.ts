// build: serves dist/ on the loopback address, and to nobody else.

import { existsSync, realpathSync } from "node:fs";
import { createServer, type IncomingMessage, type RequestListener, type ServerResponse } from "node:http";
import { createServer as createSecureServer } from "node:https";
import type { AddressInfo } from "node:net";
import { join, sep } from "node:path";
import sirv from "sirv";
import { policies, referencePolicy } from "./policy.ts";

const loopback = "127.0.0.1";
const tries = 20;

/** A page elsewhere can point its own name at 127.0.0.1; such a request carries that name as its host. */
const loopbackHost = /^(127\.0\.0\.1|localhost|\[::1\])(:\d{1,5})?$/i;

function setHeaders(response: ServerResponse, path: string): void {
  response.setHeader("X-Content-Type-Options", "nosniff");
  response.setHeader("Referrer-Policy", "no-referrer");
  response.setHeader("Cache-Control", "no-cache");
  // The ending may be left out of a page's address, and "/" is index.html.
  const page = `${path.replace(/^\/|\/$|\.html\/?$/g, "") || "index"}.html`;
  if (path.startsWith("/reference/")) response.setHeader("Content-Security-Policy", referencePolicy);
  else if (Object.hasOwn(policies, page))
    // Excel frames its own page; nobody frames the browser workbook. A page cannot say so itself.
    response.setHeader(
      "Content-Security-Policy",
      policies[page] + (page === "workbook.html" ? "; frame-ancestors 'none'" : ""),
    );
  if (path === "/functions.json") response.setHeader("Access-Control-Allow-Origin", "*");
}

function refuse(response: ServerResponse, status: number, text: string): void {
  response.writeHead(status, {
    "Content-Type": "text/plain; charset=utf-8",
    "X-Content-Type-Options": "nosniff",
    ...(status === 405 ? { Allow: "GET, HEAD" } : {}),
  });
  response.end(`${text}\n`);
}

export interface Certificate {
  readonly cert: Buffer;
  readonly key: Buffer;
}

/** A server of the files in `folder`: no other path, no listing, no writing; over https with a certificate. */
export function createFileServer(folder: string, certificate?: Certificate) {
  const answer = answerFrom(folder);
  return certificate ? createSecureServer(certificate, answer) : createServer(answer);
}

export type FileServer = ReturnType<typeof createFileServer>;

function answerFrom(folder: string): RequestListener {
  // "dev" looks each file up when it is asked for, so that a new build is served at once.
  const serve = sirv(folder, { dev: true, etag: true, extensions: ["html"], setHeaders });
  return (request: IncomingMessage, response: ServerResponse) => {
    if (!loopbackHost.test(request.headers.host ?? ""))
      return refuse(response, 403, "This server answers to loopback names only.");
    if (request.method !== "GET" && request.method !== "HEAD")
      return refuse(response, 405, "Only GET and HEAD.");
    const missing = () => refuse(response, 404, "There is no such file.");
    if (leadsOutside(folder, request.url ?? "/")) missing();
    else serve(request, response, missing);
  };
}

/** Whether a link in the folder leads to what lies outside it. */
function leadsOutside(folder: string, url: string): boolean {
  try {
    const root = realpathSync(folder);
    const path = decodeURIComponent(url.split(/[?#]/)[0]);
    const found = ["", ".html", "/index.html"]
      .map((ending) => join(root, path + ending))
      .find((file) => existsSync(file));
    if (!found?.startsWith(root)) return false;
    return !`${realpathSync(found)}${sep}`.startsWith(root + sep);
  } catch {
    return false;
  }
}

/** Listens on `port`, or on the first free one after it; gives the port that it has. Port 0 takes any. */
export async function listen(server: FileServer, port: number): Promise<number> {
  for (let tried = port; tried < port + tries && tried <= 65535; tried++) {
    if (await listens(server, tried)) return (server.address() as AddressInfo).port;
  }
  throw new Error(
    `No port from ${port} to ${Math.min(port + tries - 1, 65535)} is free: set PORT to another.`,
  );
}

/** Ends the server, and so the program, at Ctrl+C or when the system asks. */
export function stopOnSignal(server: FileServer): void {
  const stop = () => {
    server.close();
    server.closeAllConnections();
  };
  process.once("SIGINT", stop);
  process.once("SIGTERM", stop);
}

function listens(server: FileServer, port: number): Promise<boolean> {
  return new Promise((resolve, reject) => {
    const failed = (error: NodeJS.ErrnoException) => {
      server.off("listening", succeeded);
      if (error.code === "EADDRINUSE" || error.code === "EACCES") resolve(false);
      else reject(error);
    };
    const succeeded = () => {
      server.off("error", failed);
      resolve(true);
    };
    server.once("error", failed);
    server.once("listening", succeeded);
    server.listen(port, loopback);
  });
}
