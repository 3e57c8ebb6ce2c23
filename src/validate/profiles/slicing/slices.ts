import type { ProfileNode } from '../compile.ts';
import { type Look, say, sayUnchecked } from '../look.ts';
import type { Member } from '../members.ts';
import { isInSlice } from './slicing.ts';

/** What a value of an element must be, by the node of the element or of a slice of it. */
export type CheckMember = (member: Member, node: ProfileNode, look: Look) => void;

interface Sorted {
  readonly member: Member;
  readonly slices: readonly ProfileNode[];
  /** Slices of which it cannot be told whether the value is in them. */
  readonly open: readonly ProfileNode[];
}

/** Of an element with slices: values are put into them, and held to what each asks for. */
export function checkSlices(
  members: readonly Member[],
  node: ProfileNode,
  look: Look,
  checkMember: CheckMember,
): void {
  const sorted = members.map((member) => sort(member, node, look));
  for (const { member, slices, open } of sorted) {
    for (const slice of slices) checkMember(member, slice, look);
    for (const slice of open) {
      sayUnchecked(look, slice, { reason: 'slices' }, member.path);
    }
    if (slices.length === 0 && open.length === 0) checkUnsliced(member, node, look);
  }
  for (const slice of node.slices) {
    const inSlice = sorted.filter(({ slices }) => slices.includes(slice));
    const maybe = sorted.filter(({ open }) => open.includes(slice)).length;
    // Those that may be in it can make up for what it lacks, and are no more than it takes.
    const lacking = Math.max(0, slice.min - inSlice.length);
    checkCount(inSlice.length + Math.min(lacking, maybe), slice, look);
    if (slice.slices.length > 0) {
      const again = inSlice.map(({ member }) => member);
      checkSlices(again, slicedLike(slice, node), look, checkMember);
    }
  }
  checkOrder(sorted, node, look);
}

/** A slice that is sliced again without saying by what is so by what told it apart itself. */
function slicedLike(slice: ProfileNode, node: ProfileNode): ProfileNode {
  return slice.slicing === undefined ? { ...slice, slicing: node.slicing } : slice;
}

/** @see https://hl7.org/fhir/R4/profiling.html#default-slice */
const rest = '@default';

function sort(member: Member, node: ProfileNode, look: Look): Sorted {
  const slices: ProfileNode[] = [];
  const open: ProfileNode[] = [];
  let others: ProfileNode | undefined;
  for (const slice of node.slices) {
    if (slice.sliceName === rest) {
      others = slice;
      continue;
    }
    const fits = isInSlice(member, slice, node, look);
    if (fits === true) slices.push(slice);
    else if (fits === undefined) open.push(slice);
  }
  if (others !== undefined && slices.length === 0) (open.length === 0 ? slices : open).push(others);
  return { member, slices, open };
}

function checkUnsliced({ path }: Member, node: ProfileNode, look: Look): void {
  if (node.slicing?.rules !== 'closed') return;
  const codes = node.slices.map(({ sliceName = '' }) => sliceName);
  say(look, node, 'unknown-property', { reason: 'slice', codes }, {}, path);
}

/** Slices that must stand in their order, or before what is in none. */
function checkOrder(sorted: readonly Sorted[], node: ProfileNode, look: Look): void {
  const { slicing, slices } = node;
  if (slicing === undefined || (!slicing.ordered && slicing.rules !== 'openAtEnd')) return;
  let last = 0;
  let outside = false;
  for (const each of sorted) {
    const [slice] = each.slices;
    if (slice === undefined) {
      outside ||= each.open.length === 0;
      continue;
    }
    const place = slices.indexOf(slice);
    const early = slicing.ordered && place < last;
    if (early || (outside && slicing.rules === 'openAtEnd')) {
      const codes = slices.map(({ sliceName = '' }) => sliceName);
      say(look, node, 'invalid-value', { reason: 'slice-order', codes }, {}, each.member.path);
      return;
    }
    last = Math.max(last, place);
  }
}

/** How many values of an element, or of a slice of it, there must and can be. */
export function checkCount(count: number, node: ProfileNode, look: Look): void {
  const slice = { code: node.sliceName };
  const below = [node.name];
  if (count < node.min) {
    const facts = { reason: 'profile', minimum: node.min, ...slice } as const;
    say(look, node, 'missing-property', facts, {}, below);
  } else if (count > node.max) {
    const facts = { reason: 'profile', maximum: node.max, ...slice } as const;
    say(look, node, 'too-many', facts, {}, below);
  }
}
