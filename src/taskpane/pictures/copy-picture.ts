// taskpane: copies a picture to the clipboard. Some hosts block that; then the answer is false.

/** Sharp enough for print at twice the size on screen. */
const SCALE = 3;

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

async function pngOf(svg: string, { width, height }: { width: number; height: number }): Promise<Blob> {
  const image = new Image();
  image.src = `data:image/svg+xml;charset=utf-8,${encodeURIComponent(svg)}`;
  await image.decode();
  const canvas = document.createElement("canvas");
  canvas.width = width * SCALE;
  canvas.height = height * SCALE;
  canvas.getContext("2d")!.drawImage(image, 0, 0, canvas.width, canvas.height);
  return new Promise((resolve, reject) => {
    canvas.toBlob((blob) => (blob ? resolve(blob) : reject(new Error("no picture"))), "image/png");
  });
}
