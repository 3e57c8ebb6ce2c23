import { describe, expect, it } from 'vitest';
import { codesFromCsv } from '../../../src/convert/code-map/from-csv.ts';
import { toBundleOrThrow } from '../../../src/export/to-bundle.ts';
import type { Exam } from '../../../src/model/exam.ts';
import { fromBundle } from '../../../src/read/from-bundle.ts';
import { createCatalogue } from '../../../src/terminology/catalogue.ts';
import { bare } from './bare-exam.ts';

describe('what an export adds is known again', () => {
  const exam: Exam = {
    ...bare,
    statements: [
      {
        key: 'f',
        kind: 'finding',
        finding: 'lid-position.ptosis',
        presence: 'present',
        region: 'lid-upper',
        side: 'left',
      },
      {
        key: 'm',
        kind: 'measurement',
        measure: 'mrd1',
        region: 'lid-upper',
        side: 'left',
        value: '4.0',
        unit: 'mm',
      },
    ],
  };

  it('codes of a map of the clinic', () => {
    const rows = [
      'source,code,system,target,relation,action,unit',
      'findings,lid-position.ptosis,https://harbour.example/codes,P1,equivalent,replace,',
      'regions,lid-upper.left,https://harbour.example/codes,L9,equivalent,add,',
      'measures,mrd1,https://harbour.example/codes,M4,equivalent,add,mm',
    ];
    const { value: codes } = codesFromCsv(rows.join('\n'));
    if (codes === undefined) throw new Error('the map is sound');
    const bundle = toBundleOrThrow(exam, { codes });
    expect(JSON.stringify(bundle)).toContain('"L9"');
    const { value, remainder } = fromBundle(bundle, { codes });
    expect(value).toEqual(exam);
    expect(remainder).toEqual([]);
  });

  it('claims of our profiles', () => {
    for (const bundleType of ['collection', 'document'] as const) {
      const { value, remainder } = fromBundle(
        toBundleOrThrow(exam, { profiles: true, bundleType }),
      );
      expect(value).toEqual(exam);
      expect(remainder).toEqual([]);
    }
  });

  it('rows of an adopter', () => {
    const system = 'https://clinic.example/codes';
    const { value: catalogue } = createCatalogue({
      system,
      regions: [
        {
          code: 'chin.left-dimple',
          display: 'Dimple',
          parent: 'skin',
          section: 'skin',
          laterality: 'paired',
          methods: ['inspection'],
        },
      ],
      findings: [{ code: 'salt-crust', display: 'Crust of salt', regions: ['chin.left-dimple'] }],
    });
    if (catalogue === undefined) throw new Error('the rows are sound');
    const exam: Exam = {
      ...bare,
      statements: [
        {
          key: 'f',
          kind: 'finding',
          finding: 'salt-crust',
          presence: 'present',
          region: 'chin.left-dimple',
          side: 'left',
        },
      ],
    };
    const { value, remainder } = fromBundle(toBundleOrThrow(exam, { catalogue }), { catalogue });
    expect(value).toEqual(exam);
    expect(remainder).toEqual([]);
    // Without these rows the words are all that can be kept.
    expect(fromBundle(toBundleOrThrow(exam, { catalogue })).value?.statements).toMatchObject([
      { kind: 'note', text: 'Crust of salt (Dimple, left): Present' },
    ]);
  });
});
