import { describe, expect, it } from 'vitest';
import type { Statement } from '../../../src/index.ts';
import { toHtml } from '../../../src/report/index.ts';
import { emptyExam } from '../empty-exam.ts';
import { parsePage } from './parsed-page.ts';

/** Places written `region/side`, each said to be normal by palpation; the line that tells all of them. */
function told(...places: string[]): readonly string[] {
  const statements = places.map((place, at) => {
    const [region = '', side, except] = place.split('/');
    return {
      key: `s${at}`,
      kind: 'region-state',
      state: 'normal',
      region,
      ...(side && { side }),
      methods: ['palpation'],
      ...(except && { except: [{ region: except }] }),
    } as Statement; // a normal region
  });
  const page = parsePage(toHtml({ ...emptyExam('full'), statements }));
  return page.sections.get('normal')?.lines ?? [];
}

describe('many places of which one thing is said', () => {
  it.each([
    { what: 'one place', places: ['temple/right'], line: ': Temple, right' },
    { what: 'a place without a side', places: ['ln-ia'], line: ': Node level IA' },
    {
      what: 'right and left of one place, said apart',
      places: ['temple/left', 'temple/right'],
      line: ': Temple, right and left',
    },
    {
      what: 'several on each side, the side before its places',
      places: ['chin/right', 'temple/left', 'forehead/left', 'neck'],
      line: ': Neck – right: Chin – left: Temple; Forehead',
    },
    {
      what: 'both sides apart from one',
      places: ['temple/right', 'temple/left', 'forehead/both', 'chin/right'],
      line: ' – right and left: Temple; Forehead – right: Chin',
    },
    {
      what: 'the midline of what also has sides',
      places: ['forehead/midline', 'forehead/right', 'forehead/left'],
      line: ' – right and left: Forehead – midline: Forehead',
    },
    {
      what: 'three levels of nodes that follow one another',
      places: ['ln-iib/right', 'ln-ib/right', 'ln-iia/right'],
      line: ' – right: Node levels IB to IIB',
    },
    {
      what: 'levels before other places',
      places: ['temple/right', 'ln-iii/right', 'ln-va/right', 'ln-iv/right'],
      line: ' – right: Node levels III to VA; Temple',
    },
    {
      what: 'levels that do not follow one another',
      places: ['ln-ib/right', 'ln-iia/right', 'ln-iv/right'],
      line: ' – right: Node level IB; Node level IIA; Node level IV',
    },
    {
      what: 'a place but for a part of it',
      places: ['neck//thyroid', 'temple/left'],
      line: ': Neck (except Thyroid) – left: Temple',
    },
  ])('$what', ({ places, line }) => {
    expect(told(...places)).toEqual([`No abnormality found${line} [Palpation]`]);
  });
});
