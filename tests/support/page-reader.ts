// tests: built pages as documents.

import { JSDOM } from "jsdom";

const parser = new new JSDOM().window.DOMParser();

/** In one window for all pages: making one takes longer than reading a page. */
export const readPage = (text: string): Document => parser.parseFromString(text, "text/html");
