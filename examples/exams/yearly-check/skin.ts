import {
  abnormal,
  absent,
  type ExamDraft,
  measured,
  normal,
  noted,
  pictured,
  present,
  scored,
} from '../../../src/index.ts';
import { picture } from '../clinic.ts';
import { bothSides, leftSkin, rightSkin } from '../zones.ts';

/** The face at rest. */
export function atRest(draft: ExamDraft): ExamDraft {
  const place = { region: 'general', methods: ['inspection'] } as const;
  let exam = normal(draft, [place]);
  for (const sign of [
    'symmetry-rest.symmetric',
    'colour-usual',
    'head-posture.straight',
    'voice.clear',
    'speech.clear',
  ] as const) {
    exam = present(exam, sign, place);
  }
  for (const sign of [
    'facial-swelling',
    'pallor',
    'cyanosis',
    'jaundice',
    'facial-twitching',
    'ill-looking',
  ] as const) {
    exam = absent(exam, sign, place);
  }
  return noted(exam, 'Walks in unaided; talks, laughs & frowns freely.', { region: 'general' });
}

/** The skin, zone by zone, with the marks that are followed from year to year. */
export function skin(draft: ExamDraft): ExamDraft {
  const seen = { instruments: ['loupe'] };
  let exam = normal(draft, rightSkin(['temple', 'eyebrow', 'vermilion']), seen);
  exam = normal(exam, leftSkin(['cheek-malar', 'neck-lat-skin', 'vermilion']), seen);
  exam = normal(
    exam,
    [{ region: 'glabella', methods: ['inspection', 'inspection-magnified', 'palpation'] }],
    seen,
  );

  const zone = { methods: ['inspection', 'inspection-magnified', 'palpation'] } as const;
  exam = abnormal(exam, { region: 'temple', side: 'right', ...zone }, seen);
  exam = present(
    exam,
    'naevus',
    { region: 'temple', side: 'right', ...zone, place: '14 mm behind the outer end of the brow' },
    {
      key: 'naevus-temple',
      tracking: 'P-10482/naevus-temple-right',
      instruments: ['dermatoscope'],
      attributes: {
        'lesion-type': 'papule',
        'lesion-border': 'well-defined',
        'lesion-colour': 'brown',
        'lesion-surface': 'smooth',
        'lesion-tender': false,
        'lesion-fixed': 'mobile',
        'lesion-symptom': 'none',
      },
    },
  );
  const naevus = { about: 'naevus-temple', instruments: ['ruler'] };
  exam = measured(exam, 'lesion-max', { region: 'temple', side: 'right' }, '4.5', 'mm', naevus);
  exam = measured(exam, 'lesion-perp', { region: 'temple', side: 'right' }, '4.0', 'mm', naevus);
  exam = scored(exam, '7pcl', 'weighted-2013', 0, {
    region: 'temple',
    side: 'right',
    about: 'naevus-temple',
  });

  exam = abnormal(exam, { region: 'eyebrow', side: 'right', ...zone }, seen);
  exam = present(
    exam,
    'scar',
    { region: 'eyebrow', side: 'right', ...zone, place: 'Across the outer third' },
    { attributes: { 'lesion-type': 'scar', 'lesion-colour': 'white', 'lesion-tender': false } },
  );

  exam = abnormal(exam, { region: 'cheek-malar', side: 'left', ...zone }, seen);
  exam = present(
    exam,
    'solar-lentigo',
    { region: 'cheek-malar', side: 'left', ...zone, place: '22 mm below the outer canthus' },
    {
      key: 'lentigo-cheek',
      tracking: 'P-10482/lentigo-cheek-left',
      instruments: ['dermatoscope', 'loupe'],
      attributes: {
        'lesion-type': 'macule',
        'lesion-border': 'well-defined',
        'lesion-colour': 'brown',
        'lesion-surface': 'smooth',
        'lesion-tender': false,
      },
    },
  );
  const lentigo = { about: 'lentigo-cheek', instruments: ['ruler'] };
  exam = measured(
    exam,
    'lesion-max',
    { region: 'cheek-malar', side: 'left' },
    '6.0',
    'mm',
    lentigo,
  );
  exam = measured(exam, 'lesion-perp', { region: 'cheek-malar', side: 'left' }, '5.0', 'mm', {
    ...lentigo,
  });
  exam = scored(exam, 'abcde', '2004', 0, {
    region: 'cheek-malar',
    side: 'left',
    about: 'lentigo-cheek',
    items: [
      { item: 'abcde-a', value: false },
      { item: 'abcde-b', value: false },
      { item: 'abcde-c', value: false },
      { item: 'abcde-d', value: false },
      { item: 'abcde-e', value: false },
    ],
    note: 'Same size as in the picture of 2024',
  });
  exam = pictured(exam, {
    region: 'cheek-malar',
    side: 'left',
    title: 'Left cheek with scale bar',
    contentType: 'image/jpeg',
    url: picture('RHS-2025-0311-07-1.jpg'),
    scaleBar: true,
    consent: 'given',
    purpose: 'Comparison at the next yearly check',
    about: ['lentigo-cheek'],
    instruments: ['camera'],
  });

  exam = abnormal(exam, { region: 'neck-lat-skin', side: 'left', ...zone }, seen);
  exam = present(exam, 'skin-tag', { region: 'neck-lat-skin', side: 'left', ...zone });
  for (const side of bothSides) {
    exam = abnormal(exam, { region: 'vermilion', side, ...zone }, seen);
    exam = present(exam, 'skin-moisture.dry', {
      region: 'vermilion',
      side,
      methods: ['palpation'],
    });
    exam = present(exam, 'skin-moisture.usual', {
      region: 'forehead',
      side,
      methods: ['palpation'],
    });
    exam = present(exam, 'sweating.usual', { region: 'forehead', side, methods: ['palpation'] });
    exam = present(exam, 'skin-temperature.usual', {
      region: 'cheek-buccal',
      side,
      methods: ['palpation'],
    });
    exam = absent(exam, 'skin-tender', { region: 'skin', side, methods: ['palpation'] });
    exam = absent(exam, 'lump-felt', { region: 'skin', side, methods: ['palpation'] });
    exam = absent(exam, 'suspicious-pigmented-lesion', {
      region: 'skin',
      side,
      methods: ['inspection', 'inspection-magnified'],
    });
    exam = absent(exam, 'non-healing-ulcer', { region: 'skin', side, methods: ['inspection'] });
    exam = absent(exam, 'vesicles', { region: 'skin', side, methods: ['inspection'] });
    exam = absent(exam, 'spreading-erythema', { region: 'skin', side, methods: ['inspection'] });
  }
  exam = scored(exam, 'fitz', '1988', 'fitz-3');
  return noted(
    exam,
    'Sun-worn forehead & nape, as in 2024. Lentigo unchanged: 6 × 5 mm both years.',
    {
      region: 'skin',
    },
  );
}
