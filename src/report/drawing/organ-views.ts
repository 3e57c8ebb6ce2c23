import type { View } from './view.ts';

/** The left eye as the examiner sees it: its inner corner is on the left. Own drawing, after Gray 1918. */
export const eye: View = {
  id: 'eye',
  from: 'side',
  width: 220,
  height: 132,
  lines: [
    { d: 'M18 80 C40 24 150 14 204 70 C170 124 60 128 18 80 Z', as: 'skin' },
    { d: 'M30 78 C58 36 146 32 192 70 C150 106 74 108 30 78 Z', as: 'contour' },
    { d: 'M34 58 C62 20 150 14 198 52', as: 'fine' },
    { d: 'M40 98 C80 122 146 120 188 90', as: 'fine' },
    { d: 'M78 68 a34 30 0 1 0 68 0 a34 30 0 1 0 -68 0 Z', as: 'fine' },
    { d: 'M100 68 a12 12 0 1 0 24 0 a12 12 0 1 0 -24 0 Z', as: 'dark' },
    { d: 'M30 78 C36 72 42 74 44 80 C40 84 34 82 30 78 Z', as: 'fine' },
    {
      d: 'M60 48 L54 38 M84 38 L80 26 M110 35 L110 22 M136 38 L142 26 M160 47 L170 37 M70 97 L66 105 M100 102 L99 111 M130 101 L133 110 M158 92 L164 100',
      as: 'fine',
    },
  ],
  areas: [
    { region: 'lid-upper', x: 84, y: 27, rx: 30, ry: 8, turn: -6 },
    { region: 'globe', x: 152, y: 26, rx: 18, ry: 7, turn: 12 },
    { region: 'lid-margin-upper', x: 112, y: 41, rx: 30, ry: 5 },
    { region: 'lid-margin-lower', x: 112, y: 99, rx: 30, ry: 5 },
    { region: 'lid-lower', x: 112, y: 115, rx: 34, ry: 8 },
    { region: 'canthus-medial', x: 20, y: 78, rx: 10, ry: 8 },
    { region: 'punctum-lacrimal', x: 40, y: 96, rx: 10, ry: 7 },
    { region: 'canthus-lateral', x: 202, y: 72, rx: 10, ry: 8 },
    { region: 'conjunctiva', x: 62, y: 72, rx: 12, ry: 10 },
    { region: 'cornea', x: 137, y: 72, rx: 10, ry: 12 },
    { region: 'pupil', x: 112, y: 68, rx: 10, ry: 10 },
  ],
};

/** The left ear from the side, with its canal and the drum as it is seen in it. Own drawing, after Gray 1918. */
export const ear: View = {
  id: 'ear',
  from: 'side',
  width: 220,
  height: 150,
  lines: [
    {
      d: 'M22 52 C20 14 62 2 82 30 C98 56 84 98 62 124 C50 140 32 140 30 120 C30 100 24 78 22 52 Z',
      as: 'skin',
    },
    {
      d: 'M34 46 C38 24 60 20 70 38 C80 60 68 90 56 106 M38 78 C48 62 62 74 54 92 C50 102 44 106 40 104',
      as: 'fine',
    },
    { d: 'M24 70 C36 74 36 90 26 94', as: 'contour' },
    { d: 'M44 78 C80 70 104 74 130 66 M44 94 C80 92 104 96 130 92', as: 'fine' },
    { d: 'M136 78 a38 38 0 1 0 76 0 a38 38 0 1 0 -76 0 Z', as: 'contour' },
    { d: 'M162 48 L174 80 M174 80 L158 106 M174 80 L186 98', as: 'fine' },
    { d: 'M136 78 L212 78 M174 40 L174 116', as: 'fine' },
  ],
  areas: [
    { region: 'pinna', x: 70, y: 36, rx: 12, ry: 16 },
    { region: 'tragus', x: 24, y: 82, rx: 9, ry: 10 },
    { region: 'eac', x: 96, y: 83, rx: 22, ry: 8 },
    { region: 'tm', x: 174, y: 78, rx: 22, ry: 22 },
  ],
};

/** Nose and sinuses in a section from side to side. Own drawing, after Gray 1918. */
export const nose: View = {
  id: 'nose',
  from: 'front',
  width: 300,
  height: 176,
  lines: [
    {
      d: 'M150 6 C200 4 232 24 238 60 C246 104 236 140 206 160 C190 168 170 170 150 170 C130 170 110 168 94 160 C64 140 54 104 62 60 C68 24 100 4 150 6 Z',
      as: 'deep',
    },
    { d: 'M150 20 L150 138', as: 'contour' },
    { d: 'M156 14 C176 8 190 18 188 32 C178 38 162 36 156 30 Z', as: 'fine', both: true },
    {
      d: 'M196 76 C214 66 230 74 230 94 C228 116 212 128 198 120 C190 106 190 88 196 76 Z',
      as: 'fine',
      both: true,
    },
    {
      d: 'M154 44 C166 46 172 58 174 76 C186 84 188 116 178 132 C170 142 158 140 154 136 Z',
      as: 'fine',
      both: true,
    },
    { d: 'M184 96 C172 92 164 100 168 110 C174 114 178 108 184 110', as: 'contour', both: true },
    { d: 'M186 62 C178 60 172 66 176 72', as: 'fine', both: true },
    { d: 'M156 146 C166 140 178 146 178 156 C172 164 160 164 156 158 Z', as: 'fine', both: true },
  ],
  areas: [
    { region: 'sinus-frontal', x: 172, y: 23, rx: 13, ry: 9 },
    { region: 'sinus-maxillary', x: 211, y: 96, rx: 13, ry: 18 },
    { region: 'septum', x: 150, y: 84, rx: 5, ry: 30 },
    { region: 'turbinate-inf', x: 176, y: 103, rx: 9, ry: 8 },
    { region: 'nasal-airway', x: 162, y: 66, rx: 7, ry: 14 },
    { region: 'vestibule', x: 168, y: 153, rx: 10, ry: 8 },
  ],
};
