// functions: the name of the function that is being called, for a message that writes the call out.

let name = "";

/** The id of the function that the host called, or that STEPS and CHECKOF called within it. */
export const calledFunction = (): string => name;

/** The function, known by its id while it runs. */
export function calledAs<Call extends (...args: any[]) => unknown>(id: string, call: Call): Call {
  const named = (...args: any[]) => {
    const before = name;
    name = id;
    try {
      return call(...args);
    } finally {
      name = before;
    }
  };
  // STEPS and CHECKOF hand over as many ranges as the function has parameters.
  return Object.defineProperty(named, "length", { value: call.length }) as Call;
}
