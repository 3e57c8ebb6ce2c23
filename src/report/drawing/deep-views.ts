import type { View } from './view.ts';

/**
 * Below the skin from the left: jaw, glands, vessels and the levels of the lymph nodes. Own drawing;
 * muscles and glands after Gray H., Anatomy of the Human Body, 20th edition, 1918; borders of the
 * levels after Robbins KT et al. 2002, Arch Otolaryngol Head Neck Surg 128:751-758.
 */
export const deep: View = {
  id: 'deep',
  from: 'side',
  width: 262,
  height: 372,
  scale: 1.24,
  lines: [
    {
      d: 'M128 12 C94 12 74 30 66 60 C61 78 59 92 59 104 C59 110 63 116 64 122 C58 138 46 156 36 169 C30 178 35 184 44 186 C50 188 55 190 54 195 C54 201 49 205 47 211 C46 215 50 218 56 219 C50 222 47 228 51 233 C56 238 56 242 53 247 C47 254 48 267 56 274 C64 281 80 281 94 277 C106 276 118 288 121 304 C123 322 118 344 106 372 L262 372 L262 350 C238 340 222 318 214 288 C208 262 207 230 214 206 C226 182 236 152 234 112 C232 50 190 10 128 12 Z',
      as: 'deep',
    },
    {
      d: 'M140 138 C138 118 158 112 168 126 C176 140 170 164 158 178 C152 186 143 186 143 176 C143 166 140 154 140 138 Z',
      as: 'fine',
    },
    {
      d: 'M134 158 C130 152 122 154 121 162 L116 178 C112 176 108 170 104 168 L98 178 C104 190 106 204 100 216 C84 222 66 228 58 236 C52 246 54 262 62 270 C72 276 92 272 110 264 C128 256 140 244 142 230 C144 206 142 176 134 158 Z',
      as: 'fine',
    },
    { d: 'M62 140 C84 150 110 150 130 152', as: 'fine' },
    { d: 'M92 96 C104 70 152 62 176 92 C180 108 160 130 132 146', as: 'fine' },
    {
      d: 'M160 184 C152 232 138 302 116 352 L130 352 C150 306 170 236 174 182 C170 176 164 178 160 184 Z',
      as: 'contour',
    },
    { d: 'M214 210 C214 256 212 300 186 346', as: 'fine' },
    { d: 'M94 278 C106 280 116 290 120 304 C122 322 116 344 106 366', as: 'fine' },
    { d: 'M108 362 C150 346 200 346 250 366', as: 'contour' },
  ],
  areas: [
    { region: 'temporalis', x: 124, y: 92, rx: 22, ry: 17 },
    { region: 'temporal-artery', x: 152, y: 102, rx: 6, ry: 19, turn: -12 },
    { region: 'tmj', x: 129, y: 154, rx: 7, ry: 7 },
    { region: 'pterygoids', x: 104, y: 174, rx: 9, ry: 8 },
    { region: 'masseter', x: 112, y: 214, rx: 12, ry: 19, turn: 14 },
    { region: 'parotid', x: 139, y: 206, rx: 9, ry: 18 },
    { region: 'mastoid', x: 172, y: 192, rx: 9, ry: 8 },
    { region: 'ln-preauricular', x: 126, y: 174, rx: 6, ry: 8 },
    { region: 'ln-postauricular', x: 184, y: 166, rx: 7, ry: 9 },
    { region: 'ln-occipital', x: 206, y: 196, rx: 8, ry: 9 },
    { region: 'ln-facial', x: 82, y: 204, rx: 8, ry: 8 },
    { region: 'ln-ib', x: 92, y: 256, rx: 15, ry: 8, turn: -16 },
    { region: 'ln-iia', x: 134, y: 262, rx: 9, ry: 11 },
    { region: 'ln-iib', x: 160, y: 228, rx: 8, ry: 13, turn: 8 },
    { region: 'ln-iii', x: 144, y: 290, rx: 10, ry: 12, turn: 14 },
    { region: 'ln-iv', x: 132, y: 325, rx: 9, ry: 14, turn: 16 },
    { region: 'ln-va', x: 188, y: 252, rx: 11, ry: 22, turn: 4 },
    { region: 'ln-vb', x: 174, y: 306, rx: 13, ry: 16, turn: 14 },
    { region: 'ln-supraclav', x: 168, y: 340, rx: 20, ry: 7 },
  ],
};

/** The neck from the front, below the skin. Sources as above. */
export const neck: View = {
  id: 'neck',
  from: 'front',
  width: 300,
  height: 214,
  scale: 1.6,
  lines: [
    {
      d: 'M230 6 C226 60 232 112 250 138 C264 156 284 164 300 172 L300 214 L0 214 L0 172 C16 164 36 156 50 138 C68 112 74 60 70 6 Z',
      as: 'deep',
    },
    { d: 'M150 44 C184 44 214 28 230 2', as: 'contour', both: true },
    {
      d: 'M232 16 C216 80 190 140 160 190 L176 190 C208 144 236 84 240 22',
      as: 'fine',
      both: true,
    },
    {
      d: 'M126 74 C140 66 160 66 174 74 M130 84 L132 104 C140 112 145 114 150 118 C155 114 160 112 168 104 L170 84 C160 92 156 88 150 96 C144 88 140 92 130 84 Z',
      as: 'fine',
    },
    {
      d: 'M138 122 C146 126 154 126 162 122 M140 166 L160 166 M140 176 L160 176 M141 186 L159 186',
      as: 'fine',
    },
    {
      d: 'M160 118 C172 116 178 132 176 150 C172 164 160 160 157 148 C152 146 148 146 143 148',
      as: 'fine',
      both: true,
    },
    { d: 'M158 196 C190 186 240 184 292 196', as: 'contour', both: true },
  ],
  areas: [
    { region: 'ln-ia', x: 150, y: 34, rx: 12, ry: 8 },
    { region: 'submandibular-gland', x: 192, y: 38, rx: 14, ry: 8, turn: -18 },
    { region: 'triangle-anterior', x: 186, y: 78, rx: 11, ry: 15 },
    { region: 'scm', x: 216, y: 92, rx: 8, ry: 24, turn: 24 },
    { region: 'triangle-posterior', x: 240, y: 122, rx: 9, ry: 26, turn: -6 },
    { region: 'carotid', x: 190, y: 120, rx: 7, ry: 18, turn: 14 },
    { region: 'neck-midline', x: 150, y: 92, rx: 12, ry: 12 },
    { region: 'ln-vi', x: 150, y: 120, rx: 11, ry: 8 },
    { region: 'thyroid-lobe', x: 168, y: 142, rx: 8, ry: 17, turn: -8 },
    { region: 'thyroid-isthmus', x: 150, y: 152, rx: 8, ry: 7 },
    { region: 'ln-vii', x: 150, y: 200, rx: 13, ry: 8 },
  ],
};
