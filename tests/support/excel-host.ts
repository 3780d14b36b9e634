// tests: the host behind Microsoft's own office.js objects. The adapter talks to the real Excel.run, whose batches come
// here as messages; they are carried out on sheets in memory, recorded, and refused where a test wants it.

import { readFileSync } from "node:fs";
import { join } from "node:path";
import vm from "node:vm";
import { projectFolder } from "../../src/build/paths.ts";
import {
  type Box,
  HostError,
  type HostObject,
  type HostState,
  hostWorkbook,
  type SheetDouble,
} from "./excel-model.ts";

export type { Box, SheetDouble } from "./excel-model.ts";

const file = join(
  projectFolder,
  "node_modules",
  "@microsoft",
  "office-js",
  "dist",
  "excel-win32-16.01.debug.js",
);
/** The page with office.js, loaded once: it takes longer than a test. */
let page: any;

function loadOffice(): any {
  const made: any = {
    location: { href: "https://localhost/" },
    navigator: { userAgent: "" },
    // A test may put a clock of its own in the place of these.
    setTimeout: (...given: Parameters<typeof setTimeout>) => setTimeout(...given),
    clearTimeout: (timer: ReturnType<typeof setTimeout>) => clearTimeout(timer),
    console,
  };
  made.window = made;
  made.document = { getElementsByTagName: () => [], addEventListener() {} };
  vm.runInContext(readFileSync(file, "utf8"), vm.createContext(made), { filename: file });
  return made;
}

interface Action {
  readonly Id: number;
  readonly ActionType: number;
  readonly Name: string;
  readonly ObjectPathId: number;
  readonly ArgumentInfo?: ArgumentInfo;
  readonly QueryInfo?: { readonly Select?: readonly string[] };
}
interface ArgumentInfo {
  readonly Arguments?: readonly unknown[];
  readonly ReferencedObjectPathIds?: readonly number[];
}
interface ObjectPath {
  readonly ObjectPathType: number;
  readonly Name: string;
  readonly ParentObjectPathId?: number;
  readonly ArgumentInfo?: ArgumentInfo;
}
interface Body {
  readonly Actions: readonly Action[];
  readonly ObjectPaths: Readonly<Record<string, ObjectPath>>;
}

const [INSTANTIATE, QUERY, CALL, SET] = [1, 2, 3, 4];
const [GLOBAL, METHOD, PROPERTY, INDEXER, REFERENCE] = [1, 3, 4, 5, 6];

/** A member of office.js that is refused, "Range.Formulas", with the code that Excel gives. */
export interface Refused {
  readonly member: string;
  readonly code: string;
  /** How often it was done before it is refused. */
  readonly after?: number;
  /** How often it is refused; from then on where it is left out. */
  readonly times?: number;
}

/** A message of more than 5 MB is refused, as Excel on the web does. */
const MOST_SIGNS = 5_000_000;

export interface GivenExcel {
  readonly sheets: SheetDouble[];
  readonly asked: HostState["asked"] & {
    /** Messages to Excel, in their order: the members of each. */
    readonly syncs: string[][];
    /** Options of each Excel.run. */
    readonly runs: unknown[];
  };
}

/** Sets Excel and Office for the test. */
export function giveExcel(
  sheets: SheetDouble[],
  selection: { sheet: string; boxes: Box[] } | "chart",
  {
    refused,
    ...given
  }: { refused?: Refused } & Partial<Omit<HostState, "sheets" | "selection" | "asked">> = {},
): GivenExcel {
  const asked = {
    syncs: [] as string[][],
    runs: [] as unknown[],
    added: [] as string[],
    activated: [] as string[],
  };
  const root = hostWorkbook({
    sheets,
    selection,
    asked,
    states: [],
    decimalSeparator: ".",
    calculationMode: "Automatic",
    from1904: false,
    names: {},
    isReadOnly: false,
    beforeCopy: () => {},
    isStructureProtected: false,
    ...given,
  });
  /** Objects that outlive their batch, by the number that stands for them. */
  const kept = new Map<string, HostObject>();

  let done = 0;

  const tooLarge = (what: unknown) => JSON.stringify(what).length > MOST_SIGNS;
  const refusal = (code: string, index = 0) => ({
    Results: [],
    Error: { Code: code, Message: `Excel says ${code}.`, ActionIndex: index, Location: "" },
  });
  function execute(body: Body) {
    if (tooLarge(body)) return refusal("RequestPayloadSizeLimitExceeded");
    const answer = carriedOut(body);
    return tooLarge(answer) ? refusal("ResponsePayloadSizeLimitExceeded") : answer;
  }

  function carriedOut({ Actions, ObjectPaths }: Body) {
    const known = new Map<number, HostObject | null>();
    const members: string[] = [];
    asked.syncs.push(members);
    const use = (object: HostObject, name: string) => {
      const member = `${object.type}.${name}`;
      members.push(member);
      if (refused?.member !== member) return;
      const { after = 0, times = Infinity, code } = refused;
      if (done++ >= after && done <= after + times) throw new HostError(code);
    };
    const argumentsOf = ({ Arguments = [], ReferencedObjectPathIds: paths = [] }: ArgumentInfo = {}) =>
      Arguments.map((value, at) => {
        if (!paths[at]) return value;
        const object = objectAt(paths[at]);
        if (!object) throw new HostError("InvalidArgument");
        return object;
      });
    function objectAt(id: number): HostObject | null {
      const present = known.get(id);
      if (present !== undefined) return present;
      const made = objectOf(ObjectPaths[id]);
      known.set(id, made);
      return made;
    }
    function objectOf({ ObjectPathType, Name, ParentObjectPathId = 0, ArgumentInfo }: ObjectPath) {
      if (ObjectPathType === GLOBAL) return root;
      if (ObjectPathType === REFERENCE) return kept.get(Name)!;
      const parent = objectAt(ParentObjectPathId);
      if (!parent) return null;
      if (ObjectPathType === INDEXER) return parent.item(String(ArgumentInfo!.Arguments![0]));
      use(parent, Name);
      if (ObjectPathType === METHOD) return parent.call(Name, argumentsOf(ArgumentInfo)) as HostObject | null;
      if (ObjectPathType === PROPERTY) return parent.child(Name);
      throw new Error(`object path ${ObjectPathType}`);
    }

    const Results: { ActionId: number; Value: unknown }[] = [];
    for (const [index, action] of Actions.entries()) {
      try {
        Results.push({ ActionId: action.Id, Value: answerTo(action) });
      } catch (thrown) {
        if (!(thrown instanceof HostError)) throw thrown;
        return { ...refusal(thrown.code, index), Results };
      }
    }
    return { Results };

    function answerTo({ ActionType, Name, ObjectPathId, ArgumentInfo, QueryInfo }: Action): unknown {
      if (ObjectPathId === 0 || Name.startsWith("_")) return {};
      const object = objectAt(ObjectPathId);
      if (ActionType === INSTANTIATE) {
        if (!object) return { _IsNull: true };
        if (!/^Range(Areas)?$/.test(object.type)) return { _Id: object.id };
        const reference = `reference ${kept.size}`;
        kept.set(reference, object);
        return { _ReferenceId: reference };
      }
      if (!object) {
        if (ActionType === QUERY) return null;
        throw new HostError("InvalidObjectPath");
      }
      if (ActionType === QUERY) {
        const names = (QueryInfo?.Select ?? []).map((name) => name.replace(/^items\//, ""));
        return object.query(names, (of, name) => use(of, name));
      }
      use(object, Name);
      if (ActionType === SET) object.set(Name, argumentsOf(ArgumentInfo)[0]);
      else if (ActionType === CALL) return object.call(Name, argumentsOf(ArgumentInfo)) ?? {};
      return {};
    }
  }

  page ??= loadOffice();
  const host = {
    _resolveRequestUrlAndHeaderInfo: async () => ({ url: "excel://test", headers: {} }),
    _createRequestExecutorOrNull: () => ({
      executeAsync: async (_data: unknown, _flags: unknown, { Body }: { Body: Body }) => ({
        HttpStatusCode: 200,
        Headers: {},
        Body: execute(JSON.parse(JSON.stringify(Body))),
      }),
    }),
  };
  page.OfficeExtension.SessionBase._overrideSession = host;
  const requirements = { isSetSupported: () => true };
  const { Excel, Office } = page;
  Object.assign(globalThis, {
    Excel: {
      ...Excel,
      run: (...given: unknown[]) => {
        asked.runs.push(given.length > 1 ? given[0] : undefined);
        return Excel.run(...given);
      },
    },
    Office: new Proxy({}, { get: (_, name) => (name === "context" ? { requirements } : Office[name]) }),
  });
  return { sheets, asked };
}

export function takeExcelAway(): void {
  Reflect.deleteProperty(globalThis, "Excel");
  Reflect.deleteProperty(globalThis, "Office");
}
