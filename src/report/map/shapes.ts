/**
 * A place on the drawing, an ellipse in a field of 400 by 520. `across` is its distance from the
 * midline, which lies at 200: a place across the midline stands on both sides, at 0 in the middle.
 */
export interface Shape {
  readonly region: string;
  readonly across: number;
  readonly y: number;
  readonly rx: number;
  readonly ry: number;
}

/** Places that can be seen from the front. The rest stands in the table beside the drawing. */
export const shapes: readonly Shape[] = [
  { region: 'scalp-margin', across: 0, y: 52, rx: 18, ry: 10 },
  { region: 'scalp-margin', across: 58, y: 64, rx: 18, ry: 10 },
  { region: 'forehead', across: 0, y: 88, rx: 20, ry: 16 },
  { region: 'forehead', across: 50, y: 98, rx: 22, ry: 15 },
  { region: 'glabella', across: 0, y: 126, rx: 11, ry: 12 },
  { region: 'temple', across: 94, y: 136, rx: 13, ry: 20 },
  { region: 'eyebrow', across: 47, y: 130, rx: 24, ry: 8 },
  { region: 'lid-upper', across: 47, y: 150, rx: 22, ry: 8 },
  { region: 'lid-lower', across: 47, y: 172, rx: 22, ry: 8 },
  { region: 'nose-root', across: 0, y: 152, rx: 9, ry: 9 },
  { region: 'nose-dorsum', across: 0, y: 178, rx: 8, ry: 13 },
  { region: 'nose-sidewall', across: 17, y: 186, rx: 7, ry: 12 },
  { region: 'nose-tip', across: 0, y: 207, rx: 10, ry: 9 },
  { region: 'nose-ala', across: 20, y: 211, rx: 8, ry: 8 },
  { region: 'columella', across: 0, y: 224, rx: 6, ry: 6 },
  { region: 'cheek-malar', across: 60, y: 202, rx: 22, ry: 16 },
  { region: 'preauricular', across: 98, y: 196, rx: 10, ry: 18 },
  { region: 'pinna', across: 122, y: 186, rx: 11, ry: 28 },
  { region: 'nasolabial', across: 38, y: 232, rx: 9, ry: 14 },
  { region: 'cheek-buccal', across: 66, y: 240, rx: 17, ry: 15 },
  { region: 'parotid-skin', across: 94, y: 238, rx: 11, ry: 17 },
  { region: 'lip-upper', across: 0, y: 243, rx: 11, ry: 8 },
  { region: 'lip-upper', across: 21, y: 246, rx: 8, ry: 7 },
  { region: 'commissure', across: 37, y: 259, rx: 7, ry: 7 },
  { region: 'lip-lower', across: 0, y: 273, rx: 11, ry: 8 },
  { region: 'lip-lower', across: 21, y: 272, rx: 8, ry: 7 },
  { region: 'chin', across: 0, y: 298, rx: 14, ry: 11 },
  { region: 'chin', across: 30, y: 296, rx: 12, ry: 11 },
  { region: 'jawline', across: 60, y: 282, rx: 15, ry: 11 },
  { region: 'jaw-angle', across: 88, y: 273, rx: 11, ry: 12 },
  { region: 'ln-ia', across: 0, y: 322, rx: 10, ry: 8 },
  { region: 'ln-ib', across: 34, y: 324, rx: 14, ry: 9 },
  { region: 'ln-iia', across: 68, y: 326, rx: 11, ry: 11 },
  { region: 'neck-ant-skin', across: 0, y: 346, rx: 15, ry: 12 },
  { region: 'neck-ant-skin', across: 32, y: 350, rx: 12, ry: 12 },
  { region: 'neck-lat-skin', across: 84, y: 358, rx: 11, ry: 18 },
  { region: 'ln-iii', across: 60, y: 358, rx: 11, ry: 14 },
  { region: 'neck-midline', across: 0, y: 374, rx: 12, ry: 12 },
  { region: 'thyroid-lobe', across: 24, y: 396, rx: 11, ry: 16 },
  { region: 'thyroid-isthmus', across: 0, y: 402, rx: 10, ry: 9 },
  { region: 'ln-iv', across: 54, y: 398, rx: 12, ry: 14 },
  { region: 'ln-vb', across: 88, y: 406, rx: 13, ry: 13 },
  { region: 'supraclav-skin', across: 110, y: 440, rx: 24, ry: 12 },
  { region: 'ln-supraclav', across: 62, y: 440, rx: 18, ry: 11 },
];

/** Outline of head, ears, neck and shoulders: our own drawing. */
export const outline: readonly string[] = [
  'M200 26 C268 26 312 78 310 150 C309 214 296 262 268 294 C246 320 222 330 200 330 C178 330 154 320 132 294 C104 262 91 214 90 150 C88 78 132 26 200 26 Z',
  'M90 152 C72 150 68 176 72 196 C76 216 88 222 96 216',
  'M310 152 C328 150 332 176 328 196 C324 216 312 222 304 216',
  'M126 288 C124 340 116 392 100 416 C84 432 44 444 20 460',
  'M274 288 C276 340 284 392 300 416 C316 432 356 444 380 460',
  'M176 262 C190 254 210 254 224 262 C210 272 190 272 176 262 Z',
  'M131 161 C142 152 164 152 175 161 C164 170 142 170 131 161 Z',
  'M225 161 C236 152 258 152 269 161 C258 170 236 170 225 161 Z',
];
