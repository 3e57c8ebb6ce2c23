import { receivedText } from '../../data/schema-words.ts';
import type { Issue, IssueDetails } from '../../issues/issue.ts';
import { type Path, pathPointer } from '../../issues/path.ts';
import type { BundleIndex } from '../bundles/bundle-index.ts';
import type { Definitions, Property } from '../elements/definitions.ts';
import { issue, type ValidationCode, type ValidationFacts } from '../issue.ts';
import type { Profile } from '../profiles/compile.ts';
import type { CoreProfiles } from '../profiles/core.ts';
import type { ExpressionEngine } from '../thorough/engine.ts';
import type { JsonObject } from './json.ts';

/** What can be wrong with the name of a code system. */
export type SystemFault = 'coding-system' | 'value-set-as-system' | 'other-uri-of-system';

/** Where the walk over a bundle stands, and what it has found. */
export interface Scope {
  readonly definitions: Definitions;
  /** Names of all resources of the version. */
  readonly resourceTypes: ReadonlySet<string>;
  readonly includeValues: boolean;
  readonly issues: Issue[];
  /** Places, as JSON pointers, at which the schema stage has told a fault. */
  readonly told: ReadonlySet<string>;
  /** Steps from the root to the value that is looked at; changed in place. */
  readonly path: (string | number)[];
  /** Properties that led here; the last is that of the value that is looked at. */
  readonly trail: Property[];
  /** The resource that is looked at, and the one that it is contained in (or itself). */
  resource: JsonObject;
  root: JsonObject;
  /** Length of `path` where `resource` stands. */
  depth: number;
  /** The nearest bundle around, and the number of the entry in it. */
  index: BundleIndex | undefined;
  entry: number;
  /** Ids of elements in `resource`, as far as met. */
  elementIds: Set<string> | undefined;
  /** Contained resources of `root` by id, and all ids in it, once they have been needed. */
  contained: ReadonlyMap<string, JsonObject> | undefined;
  idsInRoot: ReadonlySet<string> | undefined;
  /** Verdicts on values that come again and again. */
  readonly units: Map<string, boolean>;
  readonly dates: Map<string, boolean>;
  /** What is wrong with the name of a system, if anything is. */
  readonly systems: Map<string, SystemFault | undefined>;
  /** Evaluates published expressions, where the caller wants that. */
  readonly engine: ExpressionEngine | undefined;
  /** Profiles that the caller gave, by canonical URL. */
  readonly profiles: ReadonlyMap<string, Profile> | undefined;
  /** Questionnaires that the caller gave, by canonical URL. */
  readonly forms: ReadonlyMap<string, JsonObject> | undefined;
  /** HL7's own profiles that apply without being claimed. */
  readonly core: CoreProfiles;
  /** Whether what references lead to fits profiles, by their canonical URL; as far as asked for. */
  readonly conforming: Map<JsonObject, Map<string, boolean>>;
  /** A resource of a type that is not held is looked at: what stands in it has no known type. */
  open: boolean;
  /** Said once for a whole bundle: extensions and profiles that are not known. */
  readonly saidOnce: Set<string>;
  /** What was asked for and could not be judged. */
  readonly unchecked: Unchecked[];
}

/** A rule that was not looked at, so that nobody takes its silence for a pass. */
export interface Unchecked {
  /** As in an issue: an invariant key, the canonical URL of a profile with the id of its element. */
  readonly rule: string;
  /** In the resource. */
  readonly path: Path;
  /** What it takes to check it. */
  readonly why: string;
  /** Of codes: the value set that a terminology server can be asked about, and how it binds. */
  readonly valueSet?: string;
  /** How the value set binds. */
  readonly strength?: 'required' | 'extensible';
}

/** Parts of an issue; `value` is put into `received` where the caller wants values. */
export interface Said extends IssueDetails {
  readonly value?: unknown;
}

/** Notes an issue with the value that is looked at, or with something below it. */
export function report<Code extends ValidationCode>(
  scope: Scope,
  code: Code,
  facts: ValidationFacts<Code>,
  { value, ...details }: Said = {},
  below: readonly (string | number)[] = [],
): void {
  const path = [...scope.path, ...below];
  // What the schema has against a value is more basic than what comes later.
  if (scope.told.size > 0 && scope.told.has(pathPointer(path))) return;
  const received =
    scope.includeValues && value !== undefined ? { received: receivedText(value) } : undefined;
  scope.issues.push(issue(code, path, facts, { ...details, ...received }));
}
