// build: the page of the papers that are made from the quoting sheet: what each is for, how it is made, what it lacks.

import { escaped } from "./page.ts";

interface Paper {
  readonly title: string;
  readonly purpose: string;
  readonly steps: readonly string[];
  readonly notes: readonly string[];
}

const papers: readonly Paper[] = [
  {
    title: "Quoting sheet",
    purpose: "One row for each hole, in mm or in: limits, reamer, drill, speed, feed, time, cost, and price.",
    steps: [
      'Open "New quote" in the tools, type the number of rows, and press "Add the sheet".',
      "Write or paste part, callout, units, material, tool, and batch into the blue columns. Depth and number of holes come from the callout where you leave them blank.",
      "Set rates, overhead, margin, and scrap in the yellow cells above. The price is the last column; the total stands at the top left.",
    ],
    notes: [
      "Sort the input columns, or move, insert, and sort whole rows. Each formula reads its own row.",
      'Add rows below the last one, then press "Add rows to this quote".',
      'A sheet made by "New shop table" is read by quotes that you add after it.',
      "Too wide for one page, it prints on several pages side by side. Part and callout are repeated.",
    ],
  },
  {
    title: "Customer quote",
    purpose: "What you offer, for how much, until when, and on what conditions.",
    steps: [
      'Show the quoting sheet, open "Papers", and press "Customer quote". The first time, the sheet "Quote data" asks for shop, number, and customer.',
      'Press it again: the quote is a sheet of values. "Customer\'s file" saves this sheet alone as an .xlsx file.',
    ],
    notes: [
      "The unit price is rounded before it is multiplied by the quantity.",
      "The file has no formula, link, name, comment, or property. Do not send the workbook itself: it holds your costs.",
      "A row without a price, or with a price typed over its formula, stops the quote. The message names the cell.",
    ],
  },
  {
    title: "Set-up card",
    purpose: "Hole, tool, data for the program, and the steps of setting, on one page for the machine.",
    steps: [
      'Select a cell in the row of the part, open "Papers", and press "Set-up card".',
      "Type what was measured onto the lines, or print the card and write.",
    ],
    notes: [
      "The final torque is a line: it comes from your own table, never from the add-in.",
      "The edge is changed after 80 % of the shortest recorded life, rounded down.",
      "The machine's manual and the tool's limits come first.",
    ],
  },
  {
    title: "Before and after",
    purpose:
      "The present process beside a proposal: cost per part, saving, payback, and what nobody has measured.",
    steps: [
      'Select a cell in the row of the part, and press "Before and after".',
      "Type both processes into the columns beside the page. Choose for each row what it rests on: measured, estimated, quoted, or shop table. Blank counts as estimated.",
      "The answer names what is still missing.",
    ],
    notes: [
      "The saving is shown from low to high tool life, with today's scrap, and with the machine hours unused.",
      "Edge change, other cost, and scrap left blank count as 0, and the page says so.",
    ],
  },
  {
    title: "Trouble sheet",
    purpose: "Measured diameters, the form of the holes, and the causes to work through in order.",
    steps: [
      'Select a cell in the row of the part, and press "Trouble sheet".',
      "Type positions from the entry and diameters in one or two directions. Three positions give the form.",
      "The form suggests the symptom. Choose another from the list if you know better.",
    ],
    notes: ["All causes of the symptom are listed, each with its check, its remedy, and its caution."],
  },
];

const list = (tag: "ol" | "ul", items: readonly string[]) =>
  `<${tag}>${items.map((item) => `<li>${escaped(item)}</li>`).join("")}</${tag}>`;

export function papersContent(): string {
  const sections = papers.map(
    ({ title, purpose, steps, notes }) =>
      `<section><h2>${escaped(title)}</h2><p>${escaped(purpose)}</p>${list("ol", steps)}${list("ul", notes)}</section>`,
  );
  return `<h1>Papers</h1>
<p>Made from the quoting sheet by the buttons of "Papers" in the tools, for A4 or Letter. The formulas of set-up card, before and after, and trouble sheet stay live.</p>
${sections.join("\n")}
<section><h2>Printing</h2>
<p>In the browser workbook press "Print": each paper is as wide as the page, rows without a figure are left out, and the pictures are drawn. A cell in error stops a paper, and the page names the cell. In Excel print as usual: the set-up card has an image, the others have charts that follow their cells.</p>
<p>An .xlsx file saved from the browser workbook holds the words of each picture in its place, not the picture. Paper, headers, footers, and printed cells are saved with it.</p></section>`;
}
