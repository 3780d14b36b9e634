// build: the unified manifest, the second of the two that Excel can install. The ribbon's buttons are taken from the
// XML manifest, so that they are not written twice.

import { existsSync } from "node:fs";
import { join } from "node:path";
import { AppManifestUtils } from "@microsoft/app-manifest";
import { JSDOM } from "jsdom";
import { defaultAddress } from "./manifest.ts";

/** The manifest as it is served from `address`, with the buttons in it. The functions are in functions.json alone: what a
 * manifest can say of them is less. */
export function fillUnifiedManifest(text: string, xml: string, address: string, version: string): string {
  const manifest = JSON.parse(text.replaceAll(defaultAddress, address));
  manifest.version = version;
  manifest.validDomains = [new URL(address).host];
  const [extension] = manifest.extensions;
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
  address: string,
  folder: string,
): Promise<string[]> {
  const manifest = JSON.parse(text);
  const faults = (await AppManifestUtils.validateAgainstSchema(manifest)).map(String);
  const [extension] = manifest.extensions;
  const [runtime] = extension.runtimes;
  const { metadataUrl, functions } = runtime.customFunctions;
  if (functions !== undefined) faults.push("functions are listed beside metadataUrl");
  if (metadataUrl !== `${address}/functions.json`) faults.push("metadataUrl is not functions.json");
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
