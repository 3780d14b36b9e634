// build: the XML manifest that Excel installs. Microsoft's own validator asks the network, so it is checked here.

import { existsSync } from "node:fs";
import { join } from "node:path";
import { JSDOM } from "jsdom";

/** The address that stands in manifest/manifest.xml. */
export const defaultAddress = "https://localhost:4180";

/** The one setting: where dist/ will be served from. */
export function addressSetting(environment = process.env): string {
  const address = (environment.REAMWRIGHT_ADDRESS || defaultAddress).replace(/\/+$/, "");
  if (!URL.canParse(address) || new URL(address).protocol !== "https:" || /[\s"<>&]/.test(address)) {
    throw new Error(
      `REAMWRIGHT_ADDRESS "${address}" must be an https address: Excel loads add-ins from no other.`,
    );
  }
  return address;
}

/** The manifest as it is served from `address`; its version is that of package.json with a fourth part. */
export function fillManifest(text: string, address: string, version: string): string {
  return text
    .replaceAll(defaultAddress, address)
    .replace(/<Version>[^<]*<\/Version>/, `<Version>${version}.0</Version>`);
}

const longest = { resid: 32, shortString: 125, longString: 250 };

/** What Microsoft's schemas demand of the parts of each element: their order, and which must be there. */
const ORDER: Readonly<
  Record<string, { readonly parts: readonly string[]; readonly required: readonly string[] }>
> = {
  OfficeApp: {
    parts: [
      ...[
        "Id",
        "AlternateId",
        "Version",
        "ProviderName",
        "DefaultLocale",
        "DisplayName",
        "Description",
        "IconUrl",
      ],
      ...["HighResolutionIconUrl", "SupportUrl", "AppDomains", "Hosts", "Requirements", "DefaultSettings"],
      ...["Permissions", "VersionOverrides"],
    ],
    required: [
      ...[
        "Id",
        "Version",
        "ProviderName",
        "DefaultLocale",
        "DisplayName",
        "Description",
        "IconUrl",
        "SupportUrl",
      ],
      ...["Hosts", "DefaultSettings", "Permissions"],
    ],
  },
  VersionOverrides: {
    parts: ["Description", "Requirements", "Hosts", "Resources"],
    required: ["Hosts", "Resources"],
  },
  DesktopFormFactor: { parts: ["GetStarted", "FunctionFile", "ExtensionPoint"], required: ["FunctionFile"] },
  GetStarted: {
    parts: ["Title", "Description", "LearnMoreUrl"],
    required: ["Title", "Description", "LearnMoreUrl"],
  },
  Group: { parts: ["Label", "Icon", "Control"], required: ["Label", "Icon", "Control"] },
  Control: {
    parts: ["Label", "ToolTip", "Supertip", "Icon", "Action", "Enabled"],
    required: ["Label", "Supertip", "Icon", "Action"],
  },
  Supertip: { parts: ["Title", "Description"], required: ["Title", "Description"] },
  Resources: { parts: ["Images", "Urls", "ShortStrings", "LongStrings"], required: ["Urls", "ShortStrings"] },
};

/** Everything wrong with a manifest whose files lie in `folder`, one line each. */
export function manifestFaults(text: string, address: string, folder: string): string[] {
  const { document } = new JSDOM(text, { contentType: "text/xml" }).window;
  const faults: string[] = [];
  const ask = (holds: boolean, fault: string) => {
    if (!holds) faults.push(`manifest.xml: ${fault}`);
  };
  const all = (name: string) => [...document.getElementsByTagNameNS("*", name)];
  const value = (element: Element) => element.getAttribute("DefaultValue") ?? "";
  const under = (name: string, child: string) =>
    all(name).flatMap((element) => [...element.children].filter(({ localName }) => localName === child));

  const resources = under("Images", "Image").concat(
    under("Urls", "Url"),
    under("ShortStrings", "String"),
    under("LongStrings", "String"),
  );
  const ids = resources.map((element) => element.id);
  ask(new Set(ids).size === ids.length, "two resources have one id");
  const used = new Set<string>();
  for (const element of document.querySelectorAll("[resid]")) {
    const resid = element.getAttribute("resid")!;
    used.add(resid);
    ask(ids.includes(resid), `${element.localName} names the resource ${resid}, which is not there`);
  }
  for (const id of ids) {
    ask(used.has(id), `resource ${id} is not used`);
    ask(id.length <= longest.resid, `resource id ${id} is over ${longest.resid} characters`);
  }
  for (const text of under("ShortStrings", "String")) {
    ask(value(text).length <= longest.shortString, `${text.id} is over ${longest.shortString} characters`);
  }
  for (const text of under("LongStrings", "String")) {
    ask(value(text).length <= longest.longString, `${text.id} is over ${longest.longString} characters`);
  }

  for (const element of document.querySelectorAll("[DefaultValue^='http']")) {
    const url = value(element);
    ask(url.startsWith(`${address}/`), `${url} does not lie at ${address}`);
    ask(existsSync(join(folder, url.slice(address.length))), `${url}: there is no such file`);
  }

  const runtimes = all("Runtime");
  ask(
    runtimes.length === 1 && runtimes[0].getAttribute("lifetime") === "long",
    "one Runtime with lifetime long",
  );
  const page = runtimes[0]?.getAttribute("resid");
  for (const element of [
    ...under("Page", "SourceLocation"),
    ...all("FunctionFile"),
    ...under("Action", "SourceLocation"),
  ]) {
    ask(
      element.getAttribute("resid") === page,
      `${element.parentElement?.localName} must share the resid of the runtime`,
    );
  }
  for (const host of all("VersionOverrides").flatMap((element) => [
    ...element.getElementsByTagNameNS("*", "Host"),
  ])) {
    const order = [...host.children].map(({ localName }) => localName);
    ask(
      order[0] === "Runtimes" && order[1] === "AllFormFactors",
      "Runtimes must stand before AllFormFactors",
    );
  }
  ask(all("TaskpaneId").length === 0, "no TaskpaneId with a long runtime");
  ask(
    all("CustomTab").every(({ lastElementChild }) => lastElementChild?.localName === "Label"),
    "in a CustomTab the Label stands last",
  );
  for (const group of document.querySelectorAll("Group, Control")) {
    const sizes = [...group.children].find(({ localName }) => localName === "Icon")?.children ?? [];
    const given = [...sizes].map((image) => image.getAttribute("size")).join();
    ask(given === "16,32,80", `${group.id} must have icons of 16, 32 and 80`);
  }
  for (const [name, { parts, required }] of Object.entries(ORDER)) {
    for (const element of all(name)) {
      const given = [...element.children].map(({ localName }) => localName);
      const places = given.map((part) => parts.indexOf(part));
      for (const [at, place] of places.entries())
        ask(
          place >= 0 && place >= Math.max(0, ...places.slice(0, at)),
          `in ${name}, ${given[at]} is out of its order`,
        );
      for (const part of required) ask(given.includes(part), `${name} has no ${part}`);
    }
  }
  for (const [name, most] of [
    ["DisplayName", longest.shortString],
    ["Description", longest.longString],
    ["ProviderName", longest.shortString],
  ] as const) {
    const [element] = all("OfficeApp").flatMap((app) =>
      [...app.children].filter((one) => one.localName === name),
    );
    const text = element?.getAttribute("DefaultValue") ?? element?.textContent ?? "";
    ask(text.length > 0 && text.length <= most, `${name} must have 1 to ${most} characters`);
  }
  ask(/^\d+(\.\d+){3}$/.test(all("Version")[0]?.textContent ?? ""), "Version must have four numbers");
  ask(
    /^[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}$/.test(all("Id")[0]?.textContent ?? ""),
    "Id must be a GUID",
  );
  return faults;
}
