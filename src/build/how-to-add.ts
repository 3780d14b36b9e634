// build: how to add the add-in to each kind of Excel, as a page for the package and as lines for the terminal.

import { escaped } from "./reference/page.ts";

interface Way {
  readonly where: string;
  readonly steps: readonly string[];
}

export function waysToAdd(address: string): readonly Way[] {
  return [
    {
      where: "Excel on the web",
      steps: [
        "Open a workbook, then Home > Add-ins > More Add-ins > My Add-ins > Upload My Add-in.",
        `Choose manifest.xml. The browser must trust ${address}: open ${address}/index.html in it once.`,
      ],
    },
    {
      where: "Excel on Windows",
      steps: [
        "For a trial: put manifest.xml into a shared folder of your own; File > Options > Trust Center > Trust Center Settings > Trusted Add-in Catalogs: add the folder's network path, tick Show in Menu, restart Excel.",
        "Home > Add-ins > More Add-ins > SHARED FOLDER > Reamwright > Add.",
        "Or from the project, with a network: npx office-addin-debugging start manifest.xml desktop",
      ],
    },
    {
      where: "Excel on a Mac",
      steps: [
        "Copy manifest.xml into ~/Library/Containers/com.microsoft.Excel/Data/Documents/wef (make the folder if it is missing), restart Excel.",
        "Home > Add-ins (or Insert > My Add-ins) > Reamwright.",
      ],
    },
    {
      where: "An organisation",
      steps: [
        "An administrator uploads manifest.xml, or reamwright.zip with the unified manifest, in the Microsoft 365 admin center under Integrated apps.",
      ],
    },
  ];
}

export function howToAdd(address: string): string {
  const sections = waysToAdd(address).map(
    ({ where, steps }) =>
      `<h2>${escaped(where)}</h2>\n<ol>\n${steps.map((step) => `<li>${escaped(step)}</li>`).join("\n")}\n</ol>`,
  );
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'">
<title>Adding Reamwright to Excel</title>
</head>
<body>
<h1>Adding Reamwright to Excel</h1>
<p>First put everything in <code>site/</code> at <code>${escaped(address)}</code>, on any static https host, under the same names, with <code>Access-Control-Allow-Origin: *</code> on <code>functions.json</code> and a short cache. Menus move between versions of Excel: where a step does not fit, search Excel's help for "sideload an add-in". These steps are taken from Microsoft's documentation and were not tried in Excel by the developers.</p>
${sections.join("\n")}
<h2>Then</h2>
<p>Type <code>=REAM.RPM(15, 10)</code> into a cell: it shows 477.4648. Functions are read again after a new version, within a day.</p>
</body>
</html>
`;
}
