// tests: a PDF read back: its pages, each with the texts on it.

import { getDocument } from "pdfjs-dist/legacy/build/pdf.mjs";

export interface PdfPage {
  readonly width: number;
  readonly height: number;
  readonly text: string;
}

export async function pagesOf(bytes: Uint8Array): Promise<PdfPage[]> {
  const document = await getDocument({ data: new Uint8Array(bytes), useSystemFonts: true, verbosity: 0 })
    .promise;
  const pages: PdfPage[] = [];
  for (let number = 1; number <= document.numPages; number++) {
    const page = await document.getPage(number);
    const { items } = await page.getTextContent();
    const { width, height } = page.getViewport({ scale: 1 });
    pages.push({
      width,
      height,
      text: items
        .map((item) => ("str" in item ? item.str : ""))
        .join(" ")
        .replace(/\s+/g, " "),
    });
  }
  await document.destroy();
  return pages;
}
