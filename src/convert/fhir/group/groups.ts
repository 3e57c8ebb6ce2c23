import { append } from '../../../data/append.ts';
import { type Links, linksOf, type Room } from './links.ts';
import type { Piece } from './piece.ts';

/** What becomes one exam, or is set aside together; its first piece says where it stands in the input. */
export type Group = readonly Piece[];

/** Resources that are results: they go where a report or panel leads to them, and nowhere by chance. */
const results: ReadonlySet<string> = new Set(['DiagnosticReport', 'Observation', 'Condition']);

/** Exams that a resource which names their results goes with; one of more is about none of them. */
const MOST_HOMES = 20;

/** How often the text of an export may be copied: what is shared stands in the group of each exam. */
const MOST_COPIES = 50;
/** Characters that may be copied whatever the size of the export. */
const FREE_COPIES = 1_000_000;

/** Takes a piece into a set; false where it is there already or no room is left. */
function take(piece: Piece, set: Set<Piece>, room: Room): boolean {
  if (set.has(piece) || room.left < 0) return false;
  room.left -= piece.text.length;
  set.add(piece);
  return true;
}

/** A group that is being put together. */
interface Open {
  readonly core: Piece[];
  readonly persons: Set<string>;
  readonly members: Set<Piece>;
}

/**
 * Brings together what belongs to one exam: each report with the results that it leads to; results without
 * a report by person, visit and day; and with them the people, places, visits and other resources that they
 * name or that name them. What names nobody is never put together with anything. Every piece is in at least
 * one group; what no exam needs stands together by person, so that whoever reads it tells that it holds no
 * exam. Undefined where so much is shared that the groups together would be far larger than the export.
 */
export function groupsOf(pieces: readonly Piece[]): readonly Group[] | undefined {
  const size = pieces.reduce((sum, { text }) => sum + text.length, 0);
  const room: Room = { left: MOST_COPIES * size + FREE_COPIES };
  const links = linksOf(pieces, room);
  const taken = new Set<Piece>();
  const open = reportGroups(pieces, links, room).map((core) => opened(core, links));
  for (const { core } of open) for (const piece of core) taken.add(piece);
  joinConditions(pieces, open, taken, links);
  for (const core of unreported(pieces, taken, links)) open.push(opened(core, links));
  for (const { core } of open) for (const piece of core) taken.add(piece);
  joinOthers(pieces, open, taken, links);
  for (const one of open) followReferences(one, taken, links, room);
  if (room.left < 0) return undefined;
  const left = pieces.filter((piece) => !taken.has(piece));
  const groups = open.map(({ members }) => [...members]);
  return [...groups, ...byKey(left, (piece) => links.personOf(piece))];
}

function opened(core: readonly Piece[], links: Links): Open {
  const persons = core.flatMap((piece) => links.personOf(piece) ?? []);
  return { core: [...core], persons: new Set(persons), members: new Set(core) };
}

/** Each report, what it leads to in its order, and what its own identifier says belongs to it. */
function reportGroups(pieces: readonly Piece[], links: Links, room: Room): Piece[][] {
  const byExam = new Map<string, Piece[]>();
  for (const piece of pieces) {
    if (piece.ownExam === undefined || piece.type === 'DiagnosticReport') continue;
    file(byExam, piece.ownExam, piece);
  }
  return pieces
    .filter(({ type }) => type === 'DiagnosticReport')
    .map((report) => {
      const own = report.ownExam === undefined ? [] : (byExam.get(report.ownExam) ?? []);
      const core = reached(report, links, room);
      for (const piece of own) take(piece, core, room);
      return [...core];
    });
}

/** A report and the observations below it, each once and in their order. */
function reached(report: Piece, links: Links, room: Room): Set<Piece> {
  const found = new Set<Piece>();
  const waiting = [report];
  for (let piece = waiting.pop(); piece !== undefined; piece = waiting.pop()) {
    if (!take(piece, found, room)) continue;
    const property = piece === report ? 'result' : 'hasMember';
    const below = piece.references
      .filter((one) => one.property === property)
      .flatMap(({ to }) => links.targets(piece, to))
      .filter((one) => one.type === 'Observation' && !found.has(one));
    // The last one waiting is taken first.
    append(waiting, below.reverse());
  }
  return found;
}

/** A condition of a visit belongs to the one report of that visit and person. */
function joinConditions(
  pieces: readonly Piece[],
  open: readonly Open[],
  taken: Set<Piece>,
  links: Links,
): void {
  const byVisit = new Map<string, Open[]>();
  for (const one of open) {
    const [report] = one.core;
    const key = report && visitKey(report, links);
    if (key !== undefined) file(byVisit, key, one);
  }
  for (const piece of pieces) {
    if (piece.type !== 'Condition' || taken.has(piece)) continue;
    const key = visitKey(piece, links);
    const [only, other] = key === undefined ? [] : (byVisit.get(key) ?? []);
    if (only === undefined || other !== undefined) continue;
    only.core.push(piece);
    only.members.add(piece);
    taken.add(piece);
  }
}

function visitKey(piece: Piece, links: Links): string | undefined {
  const [person, visit] = [links.personOf(piece), links.visitOf(piece)];
  return person === undefined || visit === undefined ? undefined : JSON.stringify([person, visit]);
}

/** Results that no report leads to: panels with what they hold, by exam of ours or by person, visit and day. */
function unreported(
  pieces: readonly Piece[],
  taken: ReadonlySet<Piece>,
  links: Links,
): readonly Piece[][] {
  const left = pieces.filter((piece) => results.has(piece.type) && !taken.has(piece));
  const { joints, below } = panelsIn(left, taken, links);
  const keys = new Map<Piece, string | Piece>();
  for (const piece of left) {
    if (keys.has(piece)) continue;
    const together = connected(piece, joints);
    const tops = together.filter((one) => !below.has(one));
    const [key = piece] = (tops.length > 0 ? tops : together)
      .flatMap((one) => resultKey(one, links) ?? [])
      .sort();
    for (const one of together) keys.set(one, key);
  }
  return byKey(left, (piece) => keys.get(piece)).map((group) => group.sort(byName));
}

/** Lines of an export have no order; the first gives the exam its id, which must not hang on them. */
function byName({ name: a = '' }: Piece, { name: b = '' }: Piece): number {
  return a < b ? -1 : Number(a > b);
}

interface Panels {
  /** Panels and members, each with the other. */
  readonly joints: ReadonlyMap<Piece, readonly Piece[]>;
  /** All that a panel holds. */
  readonly below: ReadonlySet<Piece>;
}

function panelsIn(left: readonly Piece[], taken: ReadonlySet<Piece>, links: Links): Panels {
  const joints = new Map<Piece, Piece[]>();
  const below = new Set<Piece>();
  for (const panel of left) {
    const members = panel.references
      .filter(({ property }) => property === 'hasMember')
      .flatMap(({ to }) => links.targets(panel, to))
      .filter((member) => results.has(member.type) && !taken.has(member));
    for (const member of members) {
      below.add(member);
      file(joints, panel, member);
      file(joints, member, panel);
    }
  }
  return { joints, below };
}

/** What is joined to a piece, itself among it. */
function connected(piece: Piece, joints: ReadonlyMap<Piece, readonly Piece[]>): Piece[] {
  const found = new Set([piece]);
  // A set is walked as it grows.
  for (const one of found) for (const next of joints.get(one) ?? []) found.add(next);
  return [...found];
}

function resultKey(piece: Piece, links: Links): string | undefined {
  if (piece.ownExam !== undefined) return JSON.stringify([piece.ownExam]);
  const person = links.personOf(piece);
  const visit = links.visitOf(piece);
  if (person === undefined) return undefined;
  return JSON.stringify([person, visit ?? '', piece.day ?? '']);
}

function file<Key, Value>(lists: Map<Key, Value[]>, key: Key, value: Value): void {
  const list = lists.get(key);
  if (list === undefined) lists.set(key, [value]);
  else list.push(value);
}

/** Pieces of one key together, in their order; one without a key alone. */
function byKey(
  pieces: readonly Piece[],
  keyOf: (piece: Piece) => string | Piece | undefined,
): Piece[][] {
  const groups = new Map<string | Piece, Piece[]>();
  for (const piece of pieces) file(groups, keyOf(piece) ?? piece, piece);
  return [...groups.values()];
}

/** Other resources that name a result, such as who signed it, go with it, unless they are of another person. */
function joinOthers(
  pieces: readonly Piece[],
  open: readonly Open[],
  taken: Set<Piece>,
  links: Links,
): void {
  const homes = new Map<Piece, Open[]>();
  for (const one of open) {
    for (const piece of one.core) file(homes, piece, one);
  }
  for (const piece of pieces) {
    if (results.has(piece.type) || piece.type === 'Patient') continue;
    const person = links.personOf(piece);
    const homesOf = someHomes(piece, homes, links);
    if (homesOf.size > MOST_HOMES) continue;
    for (const { persons, members } of homesOf) {
      if (person !== undefined && persons.size > 0 && !persons.has(person)) continue;
      members.add(piece);
      taken.add(piece);
    }
  }
}

/** The groups whose results a piece names, or one more than it can go with. */
function someHomes(
  piece: Piece,
  homes: ReadonlyMap<Piece, readonly Open[]>,
  links: Links,
): ReadonlySet<Open> {
  const found = new Set<Open>();
  for (const { to } of piece.references) {
    for (const target of links.targets(piece, to)) {
      for (const one of homes.get(target) ?? []) {
        found.add(one);
        if (found.size > MOST_HOMES) return found;
      }
    }
  }
  return found;
}

/** People, places, visits and the like that a group names; of patients only its own. */
function followReferences(
  { members, persons }: Open,
  taken: Set<Piece>,
  links: Links,
  room: Room,
): void {
  const isOurs = (target: Piece): boolean => {
    const person = links.personOf(target);
    return !results.has(target.type) && (person === undefined || persons.has(person));
  };
  const waiting = [...members];
  for (let piece = waiting.pop(); piece !== undefined; piece = waiting.pop()) {
    for (const { to } of piece.references) {
      for (const target of links.targets(piece, to)) {
        if (!isOurs(target) || !take(target, members, room)) continue;
        taken.add(target);
        waiting.push(target);
      }
    }
  }
}
