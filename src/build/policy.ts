// build: what each page may load. The same text goes into the page itself and into the header that `npm start` sends.

const strict = {
  "default-src": "'none'",
  "script-src": "'self'",
  "style-src": "'self'",
  "img-src": "'self' data:",
  "font-src": "'self'",
  "connect-src": "'self'",
  "base-uri": "'none'",
  "form-action": "'none'",
};

const write = (directives: Record<string, string>) =>
  Object.entries(directives)
    .map(([name, value]) => `${name} ${value}`)
    .join("; ");

/** The policy of every page of the reference, which loads nothing but its style, its search and the icon. */
export const referencePolicy = write({
  "default-src": "'none'",
  "script-src": "'self'",
  "style-src": "'self'",
  "img-src": "'self'",
  "base-uri": "'none'",
  "form-action": "'none'",
});

/** Content-Security-Policy by page. */
export const policies: Readonly<Record<string, string>> = {
  /** The page that Excel loads: our own files, and office.js from where Excel requires it. */
  "index.html": write({ ...strict, "script-src": "'self' https://appsforoffice.microsoft.com" }),
  /** The browser workbook: its grid compiles templates and formulas, and sets style attributes. */
  "workbook.html": write({
    ...strict,
    "script-src": "'self' 'unsafe-eval'",
    "style-src-attr": "'unsafe-inline'",
    "img-src": "'self' data: blob:",
  }),
};
