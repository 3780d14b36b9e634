// tests: what the browser is shown is what the sources make now.

import { buildIfStale } from "../../src/build/stale.ts";

export default function setup(): void {
  buildIfStale();
}
