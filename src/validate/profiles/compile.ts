import { append } from '../../data/append.ts';
import { plainDataIssues } from '../../data/plain-data.ts';
import { type BudgetOption, spend, within } from '../../issues/budget.ts';
import type { Issue } from '../../issues/issue.ts';
import { issue } from '../../issues/issue.ts';
import { endedIssue } from '../../issues/issue-list.ts';
import type { Codes, Definitions, Members } from '../elements/definitions.ts';
import type { ExtensionRow } from '../elements/table-types.ts';
import { isObject, type JsonObject, textOf } from '../walk/json.ts';
import { extensionRow } from './extension-row.ts';
import { type CompiledConstraint, isHeldElsewhere } from './rules/compiled-constraint.ts';
import { ruleOf as compileRule, type Rule } from './rules/rule.ts';
import { type FindStructure, mostBases, snapshotOf } from './snapshot.ts';
import { readStructure, type Slicing, type SnapshotElement, type Structure } from './structure.ts';
import { structureIssues, unusable } from './unusable.ts';
import { readCodeSystem, readValueSet } from './value-sets.ts';

/** One element of a profile, with the elements and slices below it. */
export interface ProfileNode extends Omit<SnapshotElement, 'slicing' | 'constraints'> {
  readonly constraints: readonly CompiledConstraint[];
  slicing: Slicing | undefined;
  /** `component`, or `value` of `value[x]`. */
  readonly name: string;
  readonly isChoice: boolean;
  readonly children: ProfileNode[];
  readonly slices: ProfileNode[];
}

export interface Profile {
  readonly url: string;
  /** Its business version, where it states one. */
  readonly version: string | undefined;
  /** Type of resource or data type that it narrows. */
  readonly type: string;
  readonly root: ProfileNode;
  /** Definitions that it is built on and that were not given. */
  readonly missing: readonly string[];
}

/** Profiles of an adopter, ready for validation, together with what the version itself defines. */
export interface Profiles {
  /** By canonical URL. */
  readonly byUrl: ReadonlyMap<string, Profile>;
  /** Definitions of FHIR and of the profiles together. */
  readonly definitions: Definitions;
  /** Questionnaires that answers are held to, by canonical URL. */
  readonly forms: ReadonlyMap<string, JsonObject>;
  /** What was given and cannot be used. */
  readonly issues: readonly Issue[];
}

export interface CompileOptions {
  /** What the call may take; default `budgets.profiles`. */
  readonly budget?: BudgetOption;
}

/**
 * Profiles, extensions, value sets and code systems that are given as FHIR resources, put together
 * once for any number of validations. A StructureDefinition without snapshot gets one made.
 */
export function compileAll(
  resources: readonly unknown[],
  base: Definitions,
  { budget }: CompileOptions = {},
): Profiles {
  const none = { byUrl: new Map(), definitions: base, forms: new Map() };
  return within(
    'profiles',
    budget,
    () => {
      if (!Array.isArray(resources)) {
        return { ...none, issues: [issue('wrong-type', [], { reason: 'not-a-list' })] };
      }
      const unfit = plainDataIssues(resources).filter(({ code }) => code !== 'invalid-unicode');
      return unfit.length > 0 ? { ...none, issues: unfit } : compiled(resources, base);
    },
    (why) => ({ ...none, issues: [endedIssue(why)] }),
  );
}

function compiled(resources: readonly unknown[], base: Definitions): Profiles {
  const byUrl = new Map<string, Profile>();
  const extensions = new Map<string, ExtensionRow>(base.extensions);
  const codeSystems = new Map<string, Codes>(base.codeSystems);
  const valueSets = new Map<string, JsonObject>();
  const forms = new Map<string, JsonObject>();
  const issues: Issue[] = [];
  const find = structuresByUrl(resources);
  const ruleOf = rulesOnce();
  const addStructure = (resource: JsonObject, at: number): void => {
    const { elements, missing } = snapshotOf(resource, find, base);
    const structure = readStructure(resource, elements);
    if (structure === undefined) {
      issues.push(unusable(resource, at));
      return;
    }
    const version = isObject(resource) ? textOf(resource['version']) : undefined;
    append(issues, structureIssues(structure, at, base.fhirVersion, byUrl));
    byUrl.set(structure.url, { ...compileOne(structure, ruleOf), missing, version });
    if (structure.type === 'Extension') extensions.set(structure.url, extensionRow(structure));
  };
  resources.forEach((resource, at) => {
    spend(1);
    const url = isObject(resource) ? textOf(resource['url']) : undefined;
    const type = isObject(resource) ? resource['resourceType'] : undefined;
    if (!isObject(resource) || url === undefined) issues.push(unusable(resource, at));
    else if (type === 'StructureDefinition') addStructure(resource, at);
    else if (type === 'ValueSet') valueSets.set(url, resource);
    else if (type === 'CodeSystem') addCodeSystem(codeSystems, url, resource);
    else if (type === 'Questionnaire') forms.set(url, resource);
    else issues.push(unusable(resource, at));
  });
  const definitions: Definitions = {
    ...base,
    extensions,
    codeSystems,
    valueSets: allValueSets(valueSets, base.valueSets, codeSystems),
  };
  return { byUrl, definitions, forms, issues };
}

type RuleOf = (expression: string) => Rule | undefined;

/** Snapshots repeat the rules of their bases at many elements. */
function rulesOnce(): RuleOf {
  const made = new Map<string, Rule | undefined>();
  return (expression) => {
    if (!made.has(expression)) made.set(expression, compileRule(expression));
    return made.get(expression);
  };
}

function structuresByUrl(resources: readonly unknown[]): FindStructure {
  const found = new Map<string, JsonObject>();
  for (const resource of resources) {
    if (!isObject(resource) || resource['resourceType'] !== 'StructureDefinition') continue;
    const url = textOf(resource['url']);
    if (url !== undefined) found.set(url, resource);
  }
  return (url) => found.get(url);
}

function addCodeSystem(into: Map<string, Codes>, url: string, resource: JsonObject): void {
  const codes = readCodeSystem(resource);
  if (codes !== undefined) into.set(url, codes);
}

function allValueSets(
  given: ReadonlyMap<string, JsonObject>,
  held: Definitions['valueSets'],
  codeSystems: Definitions['codeSystems'],
): Map<string, Members> {
  const found = new Map<string, Members>(held);
  const open = new Set<string>();
  const find = (url: string): Members | undefined => {
    const resource = given.get(url);
    // A value set that includes itself cannot be worked out.
    if (resource === undefined || open.has(url))
      return resource && open.has(url) ? undefined : found.get(url);
    if (open.size === mostBases) return undefined;
    open.add(url);
    const members = readValueSet(resource, codeSystems, find);
    open.delete(url);
    if (members !== undefined) found.set(url, members);
    return members;
  };
  for (const url of given.keys()) find(url);
  return found;
}

/** The tree of a snapshot: elements below their parents, slices beside what they slice. */
function compileOne(
  { url, type, elements: [first, ...elements] }: Structure,
  ruleOf: RuleOf,
): Omit<Profile, 'missing' | 'version'> {
  const root = nodeOf(first, ruleOf);
  const nodes = new Map<string, ProfileNode>([[first.id, root]]);
  for (const element of elements) {
    const node = nodeOf(element, ruleOf);
    nodes.set(element.id, node);
    const last = element.id.slice(element.id.lastIndexOf('.') + 1);
    const parent = nodes.get(element.id.slice(0, element.id.lastIndexOf('.')));
    const slice = last.indexOf(':');
    if (slice === -1) parent?.children.push(node);
    else nodes.get(slicedId(element.id))?.slices.push(node);
  }
  for (const node of nodes.values()) {
    // What stands in itself, such as a section in a section, asks for the same within.
    const same = node.sameAs?.startsWith('#') ? nodes.get(node.sameAs.slice(1)) : undefined;
    if (same !== undefined) append(node.children, same.children);
  }
  for (const node of nodes.values()) sliceUnsaid(node);
  return { url, type, root };
}

/** By what slices are told apart where a differential left it to be known. */
function sliceUnsaid(node: ProfileNode): void {
  if (node.slices.length === 0 || node.slicing !== undefined) return;
  const discriminator = node.isChoice
    ? { type: 'type', path: '$this' }
    : /^(?:modifierE|e)xtension$/.test(node.name)
      ? { type: 'value', path: 'url' }
      : undefined;
  if (discriminator === undefined) return;
  node.slicing = { rules: 'open', ordered: false, discriminators: [discriminator] };
}

/** What a slice is a slice of: of `a.b:c/d` the slice `a.b:c`, of `a.b:c` the element `a.b`. */
function slicedId(id: string): string {
  const reslice = id.lastIndexOf('/');
  const colon = id.lastIndexOf(':');
  return id.slice(0, Math.max(reslice, colon));
}

function nodeOf(element: SnapshotElement, ruleOf: RuleOf): ProfileNode {
  const name = element.path.slice(element.path.lastIndexOf('.') + 1);
  const isChoice = name.endsWith('[x]');
  return {
    ...element,
    name: isChoice ? name.slice(0, -3) : name,
    isChoice,
    constraints: element.constraints
      .filter((each) => !isHeldElsewhere(each))
      .map((each) => ({
        ...each,
        rule: (each.expression && ruleOf(each.expression)) || undefined,
      })),
    children: [],
    slices: [],
  };
}
