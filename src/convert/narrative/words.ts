import { folded } from '../../find/fold.ts';

/*
 * The words of a sentence that is read at all: a sentence with any other word is left to a person. English
 * and German, from memory; common practice, no source.
 */

function set(...lists: readonly string[]): ReadonlySet<string> {
  return new Set(lists.flatMap((list) => list.split(' ').map(folded)));
}

/** Words before what they deny. */
export const denials = set('no neither kein keine keinen keiner keinem keines keinerlei weder');

/** They deny what follows, and end what they follow. */
export const withouts = set('without ohne');

/** Words behind what they deny. */
export const denialsBehind = set(
  'absent none negative neg no fehlt fehlend nein keine keiner negativ',
);

/** "not present", "nicht vorhanden": they deny only together. */
export const nots = set('not nicht');

/** They go on with a denial: nor, noch; behind `no` also or, oder. */
export const nors = set('nor noch');
export const ors = set('or oder bzw');
export const ands = set('and und sowie');
export const buts = set('but however aber jedoch');

/** "Evidence of" says something only where it is denied. */
export const evidence = set('evidence sign signs anhalt hinweis hinweise zeichen anzeichen');

/** That something is there. */
export const affirmations = set(
  'present noted seen visible palpable evident found yes positive demonstrable',
  'vorhanden sichtbar tastbar nachweisbar erkennbar feststellbar ja positiv gesehen',
);

export const normals = set(
  'normal unremarkable clear unaffected intact nad unauffallig regelrecht frei reizfrei unauff',
);

export const fillers = set(
  'a an the of on at in with there is are has shows also side sides sided any some over to',
  'patient it he she area',
  'es besteht bestehen findet finden sich zeigt zeigen ein eine einen einem einer eines der die das',
  'des dem den am an im in auf mit auch seite seiten seits fur von',
);

/** Fillers whose meaning turns a side round: "left of", "to the right", "links von". */
export const turning = set('to of von nach zu zur zum');

export const modifiers = set(
  'mild moderate severe marked slight small large minimal subtle obvious definite single multiple',
  'several few visible palpable complete partial healed old deep superficial linear round soft firm',
  'leichte leichter leichtes leichten leicht geringe geringer geringes geringen gering massige',
  'massiger massig deutliche deutlicher deutlich ausgepragte ausgepragter diskrete diskreter',
  'kleine kleiner kleines kleinen grosse grosser grosses einzelne mehrere alte alter weiche derbe',
  'tastbare tastbarer sichtbare sichtbarer palpabler palpablen tastbaren sichtbaren',
);

export const lengths = set('mm cm');

/** Words behind which a line goes on. */
export const joiningWords: ReadonlySet<string> = new Set([
  ...[denials, withouts, nots, nors, ors, ands, buts, evidence, fillers, modifiers].flatMap(
    (one) => [...one],
  ),
  ...['right', 'left', 'both', 'rechts', 'links', 'denies', 'denied', 'not', 'nicht', 'as', 'than'],
]);

/** Parts of the body that are several regions of ours, folded. */
export const wideRegions: ReadonlyMap<string, readonly string[]> = new Map(
  (
    [
      ['cheek', 'cheeks', 'wange', 'wangen', ['cheek-malar', 'cheek-buccal']],
      ['lid', 'lids', 'eyelid', 'eyelids', 'lider', 'augenlid', ['lid-upper', 'lid-lower']],
      ['lip', 'lips', 'lippe', 'lippen', ['lip-upper', 'lip-lower']],
    ] as const
  ).flatMap((row) => {
    const codes = row[row.length - 1] as readonly string[]; // the last of each row
    return row.slice(0, -1).map((word) => [String(word), codes] as const);
  }),
);
