// tests: the global that a host gives to functions: errors and their codes as in Microsoft's runtime.

const errorCodes = {
  invalidValue: "#VALUE!",
  notAvailable: "#N/A",
  divisionByZero: "#DIV/0!",
  invalidNumber: "#NUM!",
  nullReference: "#NULL!",
  invalidName: "#NAME?",
  invalidReference: "#REF!",
} as const;

class HostError extends Error {
  constructor(
    readonly code: string = errorCodes.invalidValue,
    message?: string,
  ) {
    super(message);
    this.stack = undefined;
  }
}

/** What has been registered, by id. */
export const associated = new Map<string, (...args: any[]) => any[][]>();

(globalThis as any).CustomFunctions = {
  Error: HostError,
  ErrorCode: errorCodes,
  associate(id: string, call: (...args: any[]) => any[][]) {
    if (associated.has(id)) throw new Error(`${id} is registered twice`);
    associated.set(id, call);
  },
};
