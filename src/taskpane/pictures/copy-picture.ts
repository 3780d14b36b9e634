// taskpane: copies a picture to the clipboard. Some hosts block that; then the answer is false.

import { pngOf } from "../../workbook/png.ts";

export async function copyText(text: string): Promise<boolean> {
  try {
    await navigator.clipboard.writeText(text);
    return true;
  } catch {
    return false;
  }
}

export async function copyPng(svg: string, size: { width: number; height: number }): Promise<boolean> {
  try {
    const picture = pngOf(svg, size);
    await navigator.clipboard.write([new ClipboardItem({ "image/png": picture })]);
    return true;
  } catch {
    return false;
  }
}
