// build: how to add the add-in to each kind of Excel, and what to do where it does not work: a page for the person who
// hosts it, a page for the person who uses it, and lines for the terminal.

import { escaped } from "./reference/page.ts";

interface Section {
  readonly title: string;
  readonly steps: readonly string[];
}

/** Which Excel runs it: what the requirement sets in the manifest come down to. */
export const whichExcel = [
  "Microsoft 365 on Windows, version 2102 or later; Excel 2021 and 2024, version 2311 or later; LTSC 2024.",
  "LTSC 2021: expected to work, and not tried. Microsoft's own pages disagree on it.",
  "Excel on a Mac, version 16.50 or later; Excel on the web.",
  "Not: Excel 2016 and 2019, Excel on an iPad.",
];

/** Steps for the person who uses it; `folder` is where the manifest lies. */
export function waysToAdd(address: string, folder: string): readonly Section[] {
  const manifest = `${folder}manifest.xml`;
  return [
    {
      title: "Excel on the web",
      steps: [
        "Open a workbook. Choose Home > Add-ins > More Settings > Upload My Add-in.",
        `Choose ${manifest}.`,
        `Chrome and Edge ask whether the page may reach your local network if ${address} is on your own machine. Choose Allow: after Block the pane stays empty.`,
      ],
    },
    {
      title: "Excel on Windows",
      steps: [
        `Put ${manifest} into a folder that you share, such as \\\\yourcomputer\\addins.`,
        "Choose File > Options > Trust Center > Trust Center Settings > Trusted Add-in Catalogs. Add the folder's network path, tick Show in Menu, and restart Excel.",
        "Choose Home > Add-ins > Advanced > Shared Folder > Reamwright > Add.",
      ],
    },
    {
      title: "Excel on a Mac",
      steps: [
        `Copy ${manifest} into ~/Library/Containers/com.microsoft.Excel/Data/Documents/wef. Make the folder if it is missing.`,
        "Restart Excel and choose Home > Add-ins > Reamwright.",
      ],
    },
    {
      title: "All people of an organization",
      steps: [
        "An administrator uploads manifest.xml in the Microsoft 365 admin center under Integrated apps. Do not sideload it as well: the two together show an error when functions load.",
      ],
    },
  ];
}

export const ifItDoesNotWork: readonly Section[] = [
  {
    title: "A cell shows #NAME?",
    steps: [
      "The formula was entered or opened before the add-in was loaded. Open the pane, choose Check this sheet, and press Enter all REAM formulas again.",
    ],
  },
  {
    title: "A cell shows #BUSY!",
    steps: ["The add-in is starting. Wait some seconds. If it stays, close Excel and open it again."],
  },
  {
    title: "Typing =REAM. lists no functions",
    steps: [
      "After adding the add-in, restart Excel once. Sideloaded functions may be missing until then.",
      "In a new workbook, open the pane once: from a shared folder, functions come with the pane.",
      "Choose Formulas > Calculation Options > Automatic, and press F9.",
    ],
  },
  {
    title: "An old version is shown",
    steps: [
      "Excel keeps the list of functions up to a day. A new version of the manifest brings a new list.",
      "On the web, remove the add-in and upload it again. On Windows, close Excel and empty %LOCALAPPDATA%\\Microsoft\\Office\\16.0\\Wef. On a Mac, close Excel and empty ~/Library/Containers/com.microsoft.Excel/Data/Documents/wef, then copy the manifest again.",
    ],
  },
  {
    title: "Excel does not take the formula",
    steps: [
      "Where Windows writes a decimal comma, semicolons separate the arguments: =REAM.RPM(15; 10).",
      'Put a word in quotes: "H7". Without them H7 is a cell.',
    ],
  },
  {
    title: "The pane is empty",
    steps: [
      "Open the address of the add-in in a browser on the same machine. If the browser warns of the certificate, trust it first.",
      "In Chrome and Edge, press the sign left of the address and allow local network access. Refused once, it stays refused.",
      "Excel needs to reach appsforoffice.microsoft.com when the add-in starts.",
    ],
  },
];

const list = (kind: "ol" | "ul", steps: readonly string[]) =>
  `<${kind}>\n${steps.map((step) => `<li>${escaped(step)}</li>`).join("\n")}\n</${kind}>`;
const section = (level: 2 | 3, { title, steps }: Section) =>
  `<h${level}>${escaped(title)}</h${level}>\n${list("ol", steps)}`;

function page(title: string, body: string): string {
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'">
<title>${escaped(title)}</title>
</head>
<body>
<main>
<h1>${escaped(title)}</h1>
${body}
</main>
</body>
</html>
`;
}

/** For the person who uses it; it lies beside the manifest on the host. */
export function userPage(address: string): string {
  return page(
    "Add Reamwright to Excel",
    `<p>Menus move between versions of Excel. These steps are from Microsoft's documentation; the developers had no Excel to try them in.</p>
<h2>Which Excel</h2>
${list("ul", whichExcel)}
${waysToAdd(address, "")
  .map((way) => section(2, way))
  .join("\n")}
<h2>Then</h2>
<p>Type <code>=REAM.RPM(15, 10)</code> into a cell. It shows 477.4648.</p>
<h2>If it does not work</h2>
${ifItDoesNotWork.map((one) => section(3, one)).join("\n")}
<h2>Files</h2>
<ul>
<li><a href="manifest.xml" download>manifest.xml</a></li>
<li><a href="workbook.html">The browser workbook, to try the functions without Excel</a></li>
<li><a href="reference/">All functions</a></li>
</ul>`,
  );
}

/** For the person who puts it on a host. */
export function hostPage(address: string): string {
  return page(
    "Put Reamwright on a host",
    `<ol>
<li>Put everything in <code>site/</code> at <code>${escaped(address)}</code>, under the same names. Any static https host will do.</li>
<li>Send <code>Access-Control-Allow-Origin: *</code> with <code>functions.json</code>, and let caches keep files some minutes only.</li>
<li>Do not forbid framing of <code>index.html</code>: Excel on the web frames it from excel.cloud.microsoft, *.officeapps.live.com, and *.sharepoint.com.</li>
<li>Open <a href="${escaped(address)}/workbook.html">${escaped(address)}/workbook.html</a>: the browser workbook computes the demo quote.</li>
<li>Give people the address <a href="${escaped(address)}/add-to-excel.html">${escaped(address)}/add-to-excel.html</a>, or upload <code>manifest.xml</code> in the Microsoft 365 admin center.</li>
</ol>
<p><code>reamwright.zip</code> holds the unified manifest, for Microsoft 365 on the web, on Windows from version 2501, and on a Mac from 16.103. Use one of the two manifests, not both.</p>
<p>A new version: put the new files in the place of the old ones and upload the new manifest. Its version number makes Excel read the functions again.</p>`,
  );
}
