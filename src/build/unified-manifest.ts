// build: the unified manifest, the second of the two that Excel can install. The ribbon's buttons are taken from the
// XML manifest and the functions from functions.json, so that neither is written twice.

import { existsSync } from "node:fs";
import { join } from "node:path";
import { AppManifestUtils } from "@microsoft/app-manifest";
import { JSDOM } from "jsdom";
import { defaultAddress } from "./manifest.ts";
import type { Metadata } from "./metadata.ts";

/** The manifest as it is served from `address`, with the functions and the buttons in it. */
export function fillUnifiedManifest(
  text: string,
  xml: string,
  metadata: Metadata,
  address: string,
  version: string,
): string {
  const manifest = JSON.parse(text.replaceAll(defaultAddress, address));
  manifest.version = version;
  manifest.validDomains = [new URL(address).host];
  const [extension] = manifest.extensions;
  extension.runtimes[0].customFunctions.functions = metadata.functions;
  extension.ribbons[0].tabs[0].groups[0].controls = buttons(xml, address);
  return `${JSON.stringify(manifest, null, 2)}\n`;
}

/** The buttons of the XML manifest: id, label, tip and icons by their resources. */
function buttons(xml: string, address: string) {
  const { document } = new JSDOM(xml, { contentType: "text/xml" }).window;
  const said = (element: Element | null | undefined) =>
    document
      .getElementById(element?.getAttribute("resid") ?? "")
      ?.getAttribute("DefaultValue")
      ?.replaceAll(defaultAddress, address) ?? "";
  return [...document.querySelectorAll("Control")].map((control) => ({
    id: control.id,
    type: "button",
    label: said(control.querySelector("Label")),
    icons: [...control.querySelectorAll("Icon > *")].map((image) => ({
      size: Number(image.getAttribute("size")),
      url: said(image),
    })),
    supertip: {
      title: said(control.querySelector("Supertip > Title")),
      description: said(control.querySelector("Supertip > Description")),
    },
    actionId: control.querySelector("Action > FunctionName")?.textContent ?? "",
  }));
}

/** Everything wrong with a unified manifest whose files lie in `folder`, one line each. */
export async function unifiedManifestFaults(
  text: string,
  metadata: Metadata,
  address: string,
  folder: string,
): Promise<string[]> {
  const manifest = JSON.parse(text);
  const faults = (await AppManifestUtils.validateAgainstSchema(manifest)).map(String);
  const [extension] = manifest.extensions;
  const [runtime] = extension.runtimes;
  const listed = new Set(runtime.customFunctions.functions.map(({ id }: { id: string }) => id));
  for (const { id } of metadata.functions) if (!listed.has(id)) faults.push(`function ${id} is missing`);
  if (listed.size !== metadata.functions.length)
    faults.push("a function is listed that functions.json has not");
  const actions = new Set(runtime.actions.map(({ id }: { id: string }) => id));
  const controls = extension.ribbons[0].tabs[0].groups[0].controls;
  if (controls.length === 0) faults.push("the ribbon has no buttons");
  for (const { id, actionId } of controls)
    if (!actions.has(actionId))
      faults.push(`button ${id} names the action "${actionId}", which is not there`);
  for (const url of new Set(text.match(/https:\/\/[^"]+/g))) {
    if (url.startsWith("https://developer.microsoft.com/")) continue;
    const path = url.slice(address.length).replace(/[?#].*$/, "");
    if (!url.startsWith(`${address}/`)) faults.push(`${url} does not lie at ${address}`);
    else if (!existsSync(join(folder, path))) faults.push(`${url}: there is no such file`);
  }
  for (const icon of Object.values(manifest.icons) as string[])
    if (!existsSync(join(folder, "icons", icon))) faults.push(`icons/${icon}: there is no such file`);
  return faults.map((fault) => `manifest.json: ${fault}`);
}
