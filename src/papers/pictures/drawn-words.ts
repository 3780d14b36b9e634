// papers: a picture from the words of the cell that it covers. The words stay in the sheet: they are what a screen
// reader and a program that draws nothing have, and they follow the sheet's own figures.

import { costBars } from "./cost-bars.ts";
import { holeProfile } from "./hole-profile.ts";
import { holeSection } from "./hole-section.ts";
import type { Scene } from "./scene.ts";

/** Undefined for a text that tells no picture. */
export const drawnWords = (text: string): Scene | undefined =>
  costBars(text) ?? holeSection(text) ?? holeProfile(text);
