// build: whether every link of the built pages leads to a file, and to a place that is on it.

import { existsSync, readdirSync, readFileSync, statSync } from "node:fs";
import { dirname, join, relative, resolve } from "node:path";
import { type DefaultTreeAdapterTypes, parse } from "parse5";

/** Addresses elsewhere that a page may name. */
const elsewhere = new Set(["https://appsforoffice.microsoft.com/lib/1/hosted/office.js"]);

/** The pages in a folder and those below, but for what other packages brought. */
export function pagesIn(folder: string): string[] {
  return readdirSync(folder, { recursive: true, encoding: "utf8" })
    .filter((name) => name.endsWith(".html") && !name.startsWith("vendor"))
    .sort()
    .map((name) => join(folder, name));
}

interface LinkedPage {
  readonly links: readonly string[];
  readonly places: ReadonlySet<string>;
}

function readPage(text: string): LinkedPage {
  const links: string[] = [];
  const places = new Set<string>();
  const read = (node: DefaultTreeAdapterTypes.Node): void => {
    if ("attrs" in node)
      for (const { name, value } of node.attrs) {
        if (name === "href" || name === "src") links.push(value);
        if (name === "id") places.add(value);
      }
    if ("childNodes" in node) node.childNodes.forEach(read);
  };
  read(parse(text));
  return { links, places };
}

/** Each link of the pages in `folder` that leads nowhere, or out of it, as "page: link". */
export function brokenLinks(folder: string): string[] {
  const pages = new Map(pagesIn(folder).map((file) => [file, readPage(readFileSync(file, "utf8"))]));
  return [...pages].flatMap(([file, { links }]) =>
    links
      .filter((link) => !elsewhere.has(link) && !leadsSomewhere(link, file))
      .map((link) => `${relative(folder, file)}: ${link}`),
  );

  function leadsSomewhere(link: string, file: string): boolean {
    const [path, place] = link.split("#");
    const target = path === "" ? file : resolve(dirname(file), decodeURIComponent(path));
    if (relative(folder, target).startsWith("..")) return false;
    if (!existsSync(target) || !statSync(target).isFile()) return false;
    return !place || pages.get(target)?.places.has(place) === true;
  }
}

/** The functions whose help Excel would not find in `folder`, served at `address`. */
export function helpWithoutPage(
  functions: readonly { readonly id: string; readonly helpUrl?: string }[],
  address: string,
  folder: string,
): string[] {
  return functions
    .filter(({ helpUrl = "" }) => {
      const path = helpUrl.startsWith(`${address}/`) ? helpUrl.slice(address.length + 1) : "";
      return path === "" || !existsSync(join(folder, path));
    })
    .map(({ id, helpUrl }) => `the help of ${id} is at ${helpUrl}, where there is no page`);
}
