import type { Conclusion } from '../../../src/index.ts';

export const conclusion: Conclusion = {
  text:
    'Fit for the cranes. Sun-worn skin with one lentigo of the left cheek, unchanged since 2024. ' +
    'Wax hides half of the left eardrum. Old bend of the septum to the right & a painless click ' +
    'of the left jaw joint, both long known. One small soft node below the right jaw, as before.',
  concern: 'low',
  worries: ['Left eardrum only half seen', 'Hours in the sun without a hat'],
  basedOn: ['lentigo-cheek', 'naevus-temple', 'wax-left', 'septum', 'click-left', 'node-ib'],
  plan: [
    {
      key: 'wax',
      kind: 'treatment',
      text: 'Softening drops for the left ear, five evenings',
      reasons: ['wax-left'],
    },
    {
      key: 'ear-again',
      kind: 'review',
      text: 'Look at the left eardrum again & repeat the whispered voice',
      urgency: 'routine',
      due: '2025-04-08',
      to: 'Nurse of the health station',
      reasons: ['wax-left'],
    },
    { key: 'sun', kind: 'advice', text: 'Hat with a neck flap, sun cream, lip balm with filter' },
    {
      key: 'next-year',
      kind: 'review',
      text: 'Next yearly check, with pictures of temple and cheek for comparison',
      urgency: 'routine',
      due: '2026-03',
      reasons: ['lentigo-cheek', 'naevus-temple', 'node-ib'],
    },
  ],
  safetyNet: {
    text: 'Come back before that if anything on the skin changes or a lump grows.',
    returnIf: [
      'The spot on the cheek or the mole grows, changes colour or bleeds',
      'The lump below the jaw gets bigger, hard or sore',
      'Pain, discharge or loss of hearing in the left ear',
    ],
    reviewBy: '2026-03',
    owner: 'Occupational physician of the health station',
  },
  told: [
    {
      who: 'Patient',
      what: 'Everything above, in plain words; leaflet on sun & skin given',
      at: '2025-03-11T09:50:00+01:00',
    },
    { who: 'Employer', what: '"Fit", nothing else <consent to share refused>' },
  ],
};
