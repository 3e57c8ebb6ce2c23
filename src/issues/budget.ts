/**
 * What one call may take. Every function that takes data or text from outside has a budget, told or
 * not: where it is spent the call ends with an issue, and with no part of a result.
 */
export interface Budget {
  /** Length of a text, in UTF-16 units. */
  readonly characters: number;
  /** Values of plain data or elements of XML, counted over the whole input. */
  readonly values: number;
  /** Levels of objects and lists, or of elements; the outermost is 1. */
  readonly depth: number;
  /** Issues that are listed; the rest is counted by one more. */
  readonly issues: number;
  /** Steps: a value looked at, a token read, a statement held to a rule, a resource written or read. */
  readonly work: number;
  /**
   * Ends the call once `aborted` is true; looked at every thousand steps. An AbortSignal does that for
   * what runs before the call. Within one, nothing else runs, so that only an object that looks at a
   * clock can change: `{ get aborted() { return performance.now() > end } }`.
   */
  readonly signal?: { readonly aborted: boolean } | undefined;
}

/** What a caller may say of a budget; the rest is the default of the entry. */
export type BudgetOption = Partial<Budget>;

/** In every entry that does not say otherwise. */
const usual: Budget = {
  characters: 268_435_456,
  values: 10_000_000,
  depth: 200,
  issues: 1000,
  work: 1_000_000_000,
};

/** The defaults by what is looked at, all of them here. */
export const budgets = {
  /** A text that is read as JSON. */
  json: usual,
  /** Elements take some 300 bytes each in memory. */
  xml: { ...usual, characters: 100_000_000, values: 5_000_000 },
  /** A full exam has some ten thousand values, six levels deep. */
  exam: { ...usual, depth: 32, values: 1_000_000 },
  /** Nesting in FHIR is bounded only by extensions; the values fit some 100,000 entries. */
  resource: { ...usual, depth: 100 },
  /** A protocol of every region, test and point has some thousand values. */
  settings: { ...usual, depth: 20, values: 500_000 },
  /** A mapping of every region and test has some ten thousand values, six levels deep. */
  mapping: { ...usual, depth: 20, values: 500_000 },
  codeMap: { ...usual, depth: 20, values: 1_000_000 },
  catalogue: { ...usual, depth: 20, values: 1_000_000 },
  /** What this library writes has some ten levels; what others write is read as far as it goes. */
  bundle: { ...usual, depth: 64 },
  /** A guide with its snapshots. */
  profiles: { ...usual, depth: 100 },
  /** A legacy export. */
  legacy: usual,
} as const satisfies Readonly<Record<string, Budget>>;

export type BudgetName = keyof typeof budgets;

/** Why a call was ended. */
export type Ended =
  | { readonly reason: 'work'; readonly maximum: number }
  | { readonly reason: 'aborted' };

class Spent extends Error {
  readonly ended: Ended;

  constructor(ended: Ended) {
    super(ended.reason);
    this.ended = ended;
  }
}

interface Meter {
  readonly work: number;
  readonly signal: Budget['signal'];
  left: number;
  /** Steps since the signal was looked at. */
  unseen: number;
}

/**
 * The budget of the call that runs. One variable is enough, and no function has to hand it on, since
 * nothing that is metered waits: another call begins only inside this one or after it.
 */
let running: Meter | undefined;
let boundsNow: Budget = usual;
const nothingTold: BudgetOption = {};
/** What the callers of the calls that run have said of their budgets. */
let toldNow: BudgetOption = nothingTold;

/** The bounds that hold for what is looked at now. */
export function bounds(): Budget {
  return boundsNow;
}

/**
 * Runs a call within its budget; `ended` makes the result of one that was ended. A call within a call
 * has the bounds of its name where nothing else was said, and draws on the work and the signal of the
 * outer one, which is ended with it.
 * @throws TypeError for a budget with anything but numbers from 0 on
 */
export function within<Result>(
  name: BudgetName,
  given: BudgetOption | undefined,
  call: () => Result,
  ended: (why: Ended) => Result,
): Result {
  const [outer, boundsBefore, toldBefore] = [running, boundsNow, toldNow];
  const told = given === undefined ? toldNow : { ...toldNow, ...definedOf(given) };
  const own = told === nothingTold ? budgets[name] : withDefaults(name, told);
  [boundsNow, toldNow] = [own, told];
  const { work, signal } = own;
  const meter = outer ?? { work, signal, left: work, unseen: stepsUnseen };
  running = meter;
  try {
    spend(0);
    return call();
  } catch (thrown) {
    if (outer === undefined && thrown instanceof Spent) return ended(thrown.ended);
    throw thrown;
  } finally {
    [running, boundsNow, toldNow] = [outer, boundsBefore, toldBefore];
  }
}

function withDefaults(name: BudgetName, given: BudgetOption): Budget {
  const budget: Budget = { ...budgets[name], ...given };
  for (const part of ['characters', 'values', 'depth', 'issues', 'work'] as const) {
    const most: unknown = budget[part];
    if (typeof most !== 'number' || !(most >= 0)) {
      throw new TypeError(`cannot set a budget: expected a number of ${part}, 0 or more`);
    }
  }
  return budget;
}

function definedOf(given: BudgetOption): BudgetOption {
  return Object.fromEntries(Object.entries(given).filter(([, part]) => part !== undefined));
}

/** Steps between two looks at the signal. */
const stepsUnseen = 1000;

/** Takes steps from the budget of the call that runs; ends it where they are spent or it was aborted. */
export function spend(steps: number): void {
  if (running === undefined) return;
  running.left -= steps;
  running.unseen += steps;
  if (running.left < 0) throw new Spent({ reason: 'work', maximum: running.work });
  if (running.unseen < stepsUnseen) return;
  running.unseen = 0;
  if (running.signal?.aborted === true) throw new Spent({ reason: 'aborted' });
}
