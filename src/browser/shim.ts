// browser: the global CustomFunctions for a page that is not inside Excel. It fills in only what office.js left out,
// so that the same page works in Excel, without Excel and without a network.

const errorCodes = {
  invalidValue: "#VALUE!",
  notAvailable: "#N/A",
  divisionByZero: "#DIV/0!",
  invalidNumber: "#NUM!",
  nullReference: "#NULL!",
  invalidName: "#NAME?",
  invalidReference: "#REF!",
};

class WorksheetError extends Error {
  constructor(
    readonly code: string = errorCodes.invalidValue,
    message?: string,
  ) {
    super(message);
  }
}

type Call = (...args: any[]) => any;

const page = globalThis as { CustomFunctions?: Record<string, unknown> };
page.CustomFunctions ??= {};
const present = page.CustomFunctions;
present.ErrorCode ??= errorCodes;
present.Error ??= WorksheetError;
if (!present.associate) {
  /** The functions by id, for a page that calls them itself. */
  const associated = new Map<string, Call>();
  present.associated = associated;
  // A host shows an error that is thrown in the cell, and so does who calls these.
  present.associate = (id: string, call: Call) =>
    void associated.set(id, (...args) => {
      try {
        return call(...args);
      } catch (thrown) {
        if (thrown instanceof WorksheetError) return [[thrown]];
        throw thrown;
      }
    });
}
