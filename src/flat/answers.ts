import type { Polarity } from '../kinds/facets/meaning.ts';
import type { Finding, Reason, RegionState, Statement, Symptom } from '../model/statement.ts';
import type { TableName } from '../terminology/built-in.ts';
import type { Catalogue } from '../terminology/catalogue.ts';
import type { FlatRow, FlatState } from './flat-row.ts';

/** What the columns of one row say of the answer. */
export type Answer = Partial<FlatRow> & { readonly state: FlatState };

/**
 * The answers of a statement: one, or for a sensation one for each modality, in the order of its
 * sayings. What a kind has no columns of its own for is told by whether it states or denies.
 */
export function answersOf(
  statement: Statement,
  polarities: readonly Polarity[],
  catalogue: Catalogue,
): readonly Answer[] {
  switch (statement.kind) {
    case 'finding':
      return [findingAnswer(statement)];
    case 'region-state':
      return [
        { state: regionStates[statement.state], answer: statement.state, ...limitOf(statement) },
      ];
    case 'sensation':
      return statement.results.map(({ modality, result, reason }, at) => ({
        part: modality,
        state: resultState(polarities[at]),
        ...coded(catalogue, 'sensationResults', result),
        ...reasonOf(reason),
      }));
    case 'sensation-comparison':
      return [
        {
          part: statement.modality,
          state: resultState(polarities[0]),
          answer: statement.result,
          ...reasonOf(statement.reason),
        },
      ];
    case 'movement':
      return [
        {
          state: resultState(polarities[0]),
          ...coded(catalogue, 'testResults', statement.grade),
          ...reasonOf(statement.reason),
          ...(statement.synkinesis !== undefined && {
            attributes: `synkinesis=${statement.synkinesis}`,
          }),
        },
      ];
    case 'function-test':
      return [
        {
          state: resultState(polarities[0]),
          ...coded(catalogue, 'testResults', statement.result),
          ...reasonOf(statement.reason),
        },
      ];
    case 'measurement':
      return [measuredAnswer(statement)];
    case 'scale-score':
      return [scoreAnswer(statement, catalogue)];
    case 'symptom':
      return [{ state: symptomStates[statement.answer], answer: statement.answer }];
    case 'note':
      return [{ state: 'kept', note: statement.text }];
    case 'image':
      return [{ state: 'kept', answer: statement.contentType }];
  }
}

function findingAnswer({ presence, certainty, attributes = [], tracking }: Finding): Answer {
  const suspected = presence === 'present' && certainty === 'suspected';
  return {
    state: suspected ? 'suspected' : presence === 'indeterminate' ? 'undecided' : presence,
    answer: presence,
    attributes: listed(
      attributes.map(({ attribute, value }) =>
        typeof value === 'object'
          ? `${attribute}=${value.comparator ?? ''}${value.value} ${value.unit}`
          : `${attribute}=${value}`,
      ),
    ),
    tracking: tracking ?? '',
  };
}

const regionStates: Readonly<Record<RegionState['state'], FlatState>> = {
  normal: 'normal',
  abnormal: 'abnormal',
  partial: 'partly-examined',
  'not-examined': 'not-examined',
  'not-applicable': 'not-applicable',
};

const symptomStates: Readonly<Record<Symptom['answer'], FlatState>> = {
  yes: 'present',
  no: 'absent',
  unsure: 'undecided',
  declined: 'unknown',
  'not-asked': 'not-asked',
};

function limitOf(state: RegionState): Partial<FlatRow> {
  if (state.state === 'partial') return reasonOf(state.limit);
  return 'reason' in state ? reasonOf(state.reason) : {};
}

function resultState(polarity: Polarity | undefined): FlatState {
  if (polarity === 'states') return 'abnormal';
  if (polarity === 'denies') return 'normal';
  return polarity === 'open' ? 'undecided' : 'not-examined';
}

function measuredAnswer(measured: Extract<Statement, { kind: 'measurement' }>): Answer {
  const {
    value,
    unit,
    comparator,
    readings = [],
    conditions = [],
    estimated,
    convention,
  } = measured;
  return {
    state: value === undefined ? 'no-value' : 'value',
    value: value ?? '',
    comparator: comparator ?? '',
    unit,
    readings: listed(readings),
    ...reasonOf(measured.unusable),
    attributes: listed([
      ...(convention === undefined ? [] : [`convention=${convention}`]),
      ...(estimated === undefined ? [] : [`estimated=${estimated}`]),
      ...conditions.map((condition) => `condition=${condition}`),
    ]),
  };
}

function scoreAnswer(
  { scale, version, score, items = [] }: Extract<Statement, { kind: 'scale-score' }>,
  catalogue: Catalogue,
): Answer {
  const grade = catalogue.scales.get(scale)?.grades?.find(({ code }) => code === score);
  return {
    state: 'value',
    ...(typeof score === 'number' ? { value: String(score) } : { answer: score }),
    ...(grade !== undefined && { answer_display: grade.display }),
    attributes: listed([
      `version=${version}`,
      ...items.map(({ item, value }) => `${item}=${value}`),
    ]),
  };
}

function reasonOf(reason: Reason | undefined): Partial<FlatRow> {
  return reason === undefined ? {} : { reason: reason.code, reason_text: reason.text ?? '' };
}

function coded(catalogue: Catalogue, table: TableName, code: string): Partial<FlatRow> {
  return { answer: code, answer_display: catalogue[table].get(code)?.display ?? '' };
}

/** Several values in one column. */
export function listed(values: readonly string[]): string {
  return values.join('; ');
}
