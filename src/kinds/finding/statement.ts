import type { FormWord } from '../../issues/forms.ts';
import type { Path } from '../../issues/path.ts';
import type { Code, Key, Quantity } from '../../model/primitive.ts';
import type { RuleContext } from '../../model/rules/rule.ts';
import type { Catalogue } from '../../terminology/catalogue.ts';
import type { AttributeConcept, Lean } from '../../terminology/types.ts';
import type { Count, Examined, WithExceptions } from '../facets/base.ts';
import type { Form } from '../facets/form.ts';
import { atRegion, type Meaning } from '../facets/meaning.ts';

/** A sign that was looked for: found, not found (a pertinent negative), or not to be decided. */
export interface Finding extends Examined, WithExceptions {
  readonly kind: 'finding';
  /** Code of terminology/findings.json. */
  readonly finding: Code;
  readonly presence: Presence;
  /**
   * How sure the examiner is of a finding that is present. Unsaid means as stated.
   * A suspected disease is exported as suspected, never as present.
   */
  readonly certainty?: 'suspected' | 'confirmed';
  /**
   * Attributes of a finding that is present.
   * @minItems 1
   */
  readonly attributes?: readonly Attribute[];
  /** Identity of the lesion, node or lump over exams: the same value next year means the same thing. */
  readonly tracking?: Key;
}

export type Presence = 'present' | 'absent' | 'indeterminate';

export interface Attribute {
  /** Code of terminology/attributes.json. */
  readonly attribute: Code;
  /** A code of the attribute's own list, yes or no, a count, or a quantity, as the attribute asks. */
  readonly value: Code | boolean | Count | Quantity;
}

export const findingMeaning: Meaning<Finding> = {
  subject: ({ finding }) => ({ table: 'findings', code: finding }),
  standing: atRegion,
  said: ({ finding, presence, certainty, methods, except }, catalogue) => [
    {
      polarity:
        presence === 'absent'
          ? 'denies'
          : presence === 'indeterminate' || certainty === 'suspected'
            ? 'open'
            : 'states',
      of: { table: 'findings', code: finding },
      usual: catalogue.findings.get(finding)?.usual === true,
      methods,
      except,
    },
  ],
};

export const findingForm: Form<Finding> = {
  codes: ({ finding, attributes = [] }) => [
    { table: 'findings', code: finding, path: ['finding'] },
    ...attributes.map(({ attribute }, i) => ({
      table: 'attributes' as const,
      code: attribute,
      path: ['attributes', i, 'attribute'],
    })),
  ],
  answers: checkAttributes,
  expected: ({ finding }, catalogue) => catalogue.findings.get(finding)?.regions ?? [],
};

function checkAttributes(
  finding: Finding,
  path: Path,
  { catalogue, nearest, report }: RuleContext,
): void {
  if (finding.attributes !== undefined && finding.presence !== 'present') {
    report('contradiction', [...path, 'attributes'], { reason: 'attributes' });
  }
  if (finding.certainty !== undefined && finding.presence !== 'present') {
    report('contradiction', [...path, 'certainty'], { reason: 'certainty' });
  }
  if (finding.except !== undefined && finding.presence !== 'absent') {
    report('contradiction', [...path, 'except'], { reason: 'exceptions' });
  }
  const sign = catalogue.findings.get(finding.finding);
  if (sign === undefined) return;
  const family = sign.attributes;
  finding.attributes?.forEach((attribute, i) => {
    const row = catalogue.attributes.get(attribute.attribute);
    if (row === undefined) return;
    if (row.family !== family) {
      report(
        'unknown-code',
        [...path, 'attributes', i, 'attribute'],
        {
          reason: 'attribute',
          code: family,
          near: nearest(attribute.attribute, attributesOf(family, catalogue)),
        },
        { value: attribute.attribute },
      );
    } else if (!attributeFits(row, attribute.value)) {
      report(
        'wrong-type',
        [...path, 'attributes', i, 'value'],
        { reason: 'attribute-value', ...attributeForm(row, attribute.value, nearest) },
        { value: attribute.value },
      );
    }
  });
}

function attributeFits(row: Lean<AttributeConcept>, value: Attribute['value']): boolean {
  switch (row.type) {
    case 'boolean':
      return typeof value === 'boolean';
    case 'count':
      return typeof value === 'number';
    case 'quantity':
      return typeof value === 'object' && value.unit === row.unit;
    case 'code':
      return typeof value === 'string' && (row.values ?? []).some(({ code }) => code === value);
  }
}

function attributesOf(family: string | undefined, { attributes }: Catalogue): readonly string[] {
  return [...attributes.values()].filter((row) => row.family === family).map(({ code }) => code);
}

function attributeForm(
  row: Lean<AttributeConcept>,
  value: unknown,
  nearest: RuleContext['nearest'],
): {
  readonly codes?: readonly string[];
  readonly near?: string | undefined;
  readonly unit?: string;
  readonly form?: FormWord;
} {
  if (row.type === 'code') {
    const codes = (row.values ?? []).map(({ code }) => code);
    return { codes, ...(typeof value === 'string' && { near: nearest(value, codes) }) };
  }
  if (row.type === 'quantity') return { unit: row.unit ?? '1' };
  return { form: row.type === 'boolean' ? 'boolean' : 'whole-number' };
}
