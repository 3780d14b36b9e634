// workbook: an SVG file as a PNG, drawn by the page.

/** Sharp enough for print at twice the size on screen. */
const SCALE = 3;

export async function pngOf(
  svg: string,
  { width, height }: { readonly width: number; readonly height: number },
): Promise<Blob> {
  const canvas = await drawnOn(svg, width, height);
  return new Promise((resolve, reject) => {
    canvas.toBlob((blob) => (blob ? resolve(blob) : reject(new Error("no picture"))), "image/png");
  });
}

/** The file in base64. */
export async function pngText(
  svg: string,
  { width, height }: { readonly width: number; readonly height: number },
): Promise<string> {
  const address = (await drawnOn(svg, width, height)).toDataURL("image/png");
  return address.slice(address.indexOf(",") + 1);
}

async function drawnOn(svg: string, width: number, height: number): Promise<HTMLCanvasElement> {
  const image = new Image();
  image.src = `data:image/svg+xml;charset=utf-8,${encodeURIComponent(svg)}`;
  await image.decode();
  const canvas = document.createElement("canvas");
  canvas.width = width * SCALE;
  canvas.height = height * SCALE;
  canvas.getContext("2d")!.drawImage(image, 0, 0, canvas.width, canvas.height);
  return canvas;
}
