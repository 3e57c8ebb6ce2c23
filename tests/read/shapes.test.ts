import { describe, expect, it } from 'vitest';
import type { Statement } from '../../src/model/statement.ts';
import { fromBundle, type ReadOutcome, type Supplied } from '../../src/read/from-bundle.ts';
import { told } from './shapes/findings.ts';
import type { Shape, Told } from './shapes/shape.ts';
import { shapes } from './shapes.ts';

const supplied: Supplied = {
  id: 'check-1',
  status: 'final',
  subject: { reference: 'Patient/3' },
  examiners: [{ key: 'reader', reference: 'Practitioner/7' }],
  performed: { start: '2024-03-01' },
  recorded: '2024-03-02T09:00:00Z',
  protocol: { id: 'full', version: '1.0.0' },
};

/** One observation that is none of ours, so that a bundle that is refused whole still makes an exam. */
const beside = {
  resourceType: 'Observation',
  id: 'beside',
  status: 'final',
  subject: { reference: 'Patient/3' },
  code: { text: 'Weather' },
  valueString: 'dry',
  effectiveDateTime: '2024-03-01',
};

function read(shape: Shape, one: Told): ReadOutcome {
  const entry = [...shape.resources(one), beside].map((resource) => ({ resource }));
  const bundle = { resourceType: 'Bundle', type: 'collection', entry };
  return fromBundle(JSON.parse(JSON.stringify(bundle)), { supplied });
}

/** How a finding came out: as it must, in words, or not at all; and whether harm was done. */
interface Came {
  readonly as: 'right' | 'note' | 'refused' | 'wrong';
  readonly sideLost: boolean;
  readonly negatedAsPresent: boolean;
  readonly silent: boolean;
}

function came(shape: Shape, one: Told): Came {
  const { value, issues } = read(shape, one);
  const statements = (value?.statements ?? []).filter(({ key }) => key !== 'Observation/beside');
  const signs = statements.filter((statement) => statement.kind === 'finding');
  const notes = statements.filter((statement) => statement.kind === 'note');
  const held = statements.some((statement) => holdsSide(statement, one.side));
  const isRight =
    signs.length === 1 && typeof shape.becomes === 'object' && isAs(signs[0], shape, one);
  return {
    as: isRight ? 'right' : signs.length > 0 ? 'wrong' : notes.length > 0 ? 'note' : 'refused',
    sideLost: shape.unsided !== true && !held && issues.length === 0,
    negatedAsPresent:
      shape.negated === true &&
      signs.some((sign) => 'presence' in sign && sign.presence === 'present'),
    silent: issues.length === 0,
  };
}

function isAs(sign: Statement | undefined, shape: Shape, one: Told): boolean {
  if (sign?.kind !== 'finding' || typeof shape.becomes !== 'object') return false;
  const { presence, certainty } = shape.becomes;
  return (
    sign.finding === one.finding &&
    sign.presence === presence &&
    sign.certainty === certainty &&
    sign.region === (shape.region ?? one.region) &&
    sign.side === one.side
  );
}

function holdsSide(statement: Statement, side: string): boolean {
  if ('side' in statement && statement.side === side) return true;
  return statement.kind === 'note' && statement.text.toLowerCase().includes(side);
}

describe(`${told.length} findings of others in ${shapes.length} published shapes`, () => {
  const table = shapes.map((shape) => ({
    shape,
    all: told.map((one) => came(shape, one)),
  }));
  if (process.env['PRINT_TABLE'] !== undefined) {
    console.table(
      table.map(({ shape, all }) => ({
        shape: shape.name,
        publication: shape.publication.slice(0, 60),
        right: all.filter(({ as }) => as === 'right').length,
        note: all.filter(({ as }) => as === 'note').length,
        refused: all.filter(({ as }) => as === 'refused').length,
        wrong: all.filter(({ as }) => as === 'wrong').length,
        sideLost: all.filter(({ sideLost }) => sideLost).length,
        negatedAsPresent: all.filter(({ negatedAsPresent }) => negatedAsPresent).length,
      })),
    );
  }

  it('are at least twenty of each, and each shape names its publication', () => {
    expect(told.length).toBeGreaterThanOrEqual(20);
    expect(shapes.length).toBeGreaterThanOrEqual(20);
    expect(new Set(shapes.map(({ name }) => name)).size).toBe(shapes.length);
    for (const { publication } of shapes) expect(publication.length).toBeGreaterThan(5);
  });

  it.each(table)('$shape.name', ({ shape, all }) => {
    const wanted = typeof shape.becomes === 'object' ? 'right' : shape.becomes;
    expect(all.map(({ as }) => as)).toEqual(told.map(() => wanted));
  });

  it('never lose a side without an issue', () => {
    expect(table.filter(({ all }) => all.some(({ sideLost }) => sideLost))).toEqual([]);
  });

  it('never turn what is denied into what is there', () => {
    expect(table.filter(({ all }) => all.some((one) => one.negatedAsPresent))).toEqual([]);
  });

  it('are never kept in words or left out in silence', () => {
    const silent = table.filter(({ all }) =>
      all.some((one) => one.silent && (one.as === 'note' || one.as === 'refused')),
    );
    expect(silent.map(({ shape }) => shape.name)).toEqual([]);
  });
});
