import type { Code } from '../../model/primitive.ts';

/** What a heading says of the text below it. */
export interface HeadingMeaning {
  /** Where all of the text is about one region. */
  readonly region?: Code;
  /** The text is no examination of today: history, plan, another part of the body. */
  readonly other?: true;
}

/** Headings of an examination as a whole, or of parts that are no region of ours; of these only their text is kept. */
const examinations = [
  // HL7 C-CDA 4.0, names of its sections on examinations
  ...['physical exam', 'physical examination', 'physical findings', 'general status', 'objective'],
  ...['hospital discharge physical'],
  // Common practice, no source
  ...[
    'exam',
    'examination',
    'on examination',
    'examination findings',
    'findings',
    'clinical findings',
  ],
  ...[
    'heent',
    'ent',
    'head',
    'mouth',
    'throat',
    'oral cavity',
    'oropharynx',
    'inspection',
    'palpation',
  ],
  ...['lymph nodes', 'lymph', 'nodes', 'lymphatics', 'head eyes ears nose throat'],
  ...[
    'befund',
    'befunde',
    'untersuchungsbefund',
    'korperlicher befund',
    'lokalbefund',
    'untersuchung',
  ],
  ...['korperliche untersuchung', 'klinischer befund', 'klinische untersuchung', 'status', 'hno'],
  ...['status prasens', 'hno befund', 'kopf', 'mund', 'rachen', 'mundhohle', 'inspektion'],
  ...['palpation', 'lymphknoten', 'lymphknotenstatus', 'lk'],
];

/** Headings of what is no examination of face and neck today. */
const others = [
  // HL7 C-CDA 4.0, names of its other sections
  ...[
    'allergies',
    'allergies and intolerances',
    'medications',
    'assessment',
    'assessment and plan',
  ],
  ...['plan', 'plan of treatment', 'family history', 'social history', 'history of past illness'],
  ...['past medical history', 'history of present illness', 'chief complaint', 'reason for visit'],
  ...[
    'reason for referral',
    'review of systems',
    'vital signs',
    'results',
    'procedures',
    'problems',
  ],
  ...['immunizations', 'instructions', 'hospital course', 'discharge diagnosis', 'subjective'],
  // Common practice, no source
  ...[
    'history',
    'hpi',
    'pmh',
    'ros',
    'impression',
    'diagnosis',
    'diagnoses',
    'differential',
    'summary',
  ],
  ...[
    'recommendation',
    'recommendations',
    'follow up',
    'treatment',
    'surgical history',
    'conclusion',
  ],
  ...[
    'heart',
    'lungs',
    'chest',
    'abdomen',
    'extremities',
    'back',
    'neuro',
    'neurological',
    'psych',
  ],
  ...[
    'cardiovascular',
    'cv',
    'respiratory',
    'gi',
    'gu',
    'musculoskeletal',
    'vitals',
    'imaging',
    'lab',
  ],
  ...[
    'anamnese',
    'eigenanamnese',
    'familienanamnese',
    'sozialanamnese',
    'vorgeschichte',
    'diagnose',
  ],
  ...[
    'diagnosen',
    'therapie',
    'procedere',
    'prozedere',
    'beurteilung',
    'zusammenfassung',
    'empfehlung',
  ],
  ...[
    'medikation',
    'medikamente',
    'allergien',
    'verlauf',
    'vorerkrankungen',
    'beschwerden',
    'labor',
  ],
  ...[
    'herz',
    'lunge',
    'thorax',
    'extremitaten',
    'wirbelsaule',
    'neurologie',
    'vitalzeichen',
    'epikrise',
  ],
];

/** Words of the plural or of a part by which a region of ours is usually headed (common practice, no source). */
const regions: readonly (readonly [heading: string, region: Code])[] = [
  ...[
    'eyes',
    'lids',
    'eyelids',
    'eyelid',
    'lid',
    'augenlid',
    'lider',
    'augenlider',
    'periocular',
    'adnexa',
  ].map((word) => [word, 'eyes'] as const),
  ['ears', 'ears'],
  ['ohren', 'ears'],
  ['hals', 'neck'],
  ['nase', 'nose'],
  ['haut', 'skin'],
  ['skin', 'skin'],
  ['gesicht', 'face-neck'],
];

/** Meanings of headings by their folded words. */
export const knownHeadings: ReadonlyMap<string, HeadingMeaning> = new Map<string, HeadingMeaning>([
  ...examinations.map((heading) => [heading, {}] as const),
  ...others.map((heading) => [heading, { other: true }] as const),
  ...regions.map(([heading, region]) => [heading, { region }] as const),
]);

/** Words at the end of a heading that say no more than that something was looked at, folded. */
export const emptyEndings: ReadonlySet<string> = new Set([
  ...['exam', 'examination', 'findings', 'finding', 'inspection', 'palpation', 'status'],
  ...['befund', 'befunde', 'untersuchung', 'inspektion', 'region', 'area'],
]);
