import { issue } from '../../issues/issue.ts';
import type { Consent, Exam, ExamCondition, Indication, ProtocolUse } from '../../model/exam.ts';
import type { OptionalPart } from '../../model/optional-parts.ts';
import {
  claimEqual,
  dateTimeOf,
  innerOf,
  innersOf,
  lookAt,
  textOf,
  wholeOf,
} from '../bundle/element.ts';
import type { Entry } from '../bundle/entries.ts';
import { innerValue, ownCode, ownTable, ownValue } from '../observation/concept.ts';
import { claimCommon, type Observed, observe, ownTime } from '../observation/observation.ts';
import { sideOf } from '../observation/site.ts';
import { filled } from '../observation/values.ts';
import type { ExamReading } from '../reading.ts';
import { claimFirstPerformer } from './instruments.ts';

/** An observation about the exam as a whole; `at` counts those of the same item. */
export interface ItemEntry {
  readonly item: string;
  readonly at: number;
  readonly entry: Entry;
}

/** The items of a kind in their order, each read whole or not at all. */
export function readItems<T>(
  reading: ExamReading,
  items: readonly ItemEntry[],
  item: string,
  read: (observed: Observed) => T | undefined,
): T[] {
  return items
    .filter((found) => found.item === item)
    .sort((a, b) => a.at - b.at)
    .flatMap(({ entry, at }) => {
      const value = entry.resource.claims.attempt(() => {
        const observed = observe(reading, entry);
        claimCommon(observed, `${item}|${at}`, { category: 'survey' });
        claimFirstPerformer(reading, entry);
        return read(observed);
      });
      return value === undefined ? [] : [value];
    });
}

/** Claims the code where it is the item itself. */
export function claimItemCode({ reading, element }: Observed): void {
  ownCode(reading, innerOf(element, 'code'), 'items');
}

export type Circumstances = Partial<Pick<Exam, 'indication' | 'consents' | 'conditions'>> & {
  readonly protocol: ProtocolUse | undefined;
};

/** What was said before the exam: protocol, reason, consents and conditions. */
export function readCircumstances(
  reading: ExamReading,
  all: readonly ItemEntry[],
  kept: (part: OptionalPart) => boolean,
): Circumstances {
  const items = (part: OptionalPart): readonly ItemEntry[] => (kept(part) ? all : []);
  const [protocol] = readItems(reading, all, 'protocol', readProtocol);
  for (const count of readItems(reading, all, 'left-out', readLeftOut)) {
    const severity = 'warning';
    reading.issues.push(
      issue('not-exported', ['entry'], { reason: 'detail', count }, { severity }),
    );
  }
  const [indication] = readItems(reading, items('indication'), 'indication', readIndication);
  const consents = filled(readItems(reading, items('consents'), 'consent', readConsent));
  const conditions = filled(readItems(reading, items('conditions'), 'condition', readCondition));
  return {
    protocol,
    ...(indication && { indication }),
    ...(consents && { consents }),
    ...(conditions && { conditions }),
  };
}

function readProtocol(observed: Observed): ProtocolUse | undefined {
  const { reading, element } = observed;
  claimItemCode(observed);
  ownTime(observed);
  const concept = innerOf(element, 'valueCodeableConcept');
  const id = concept && ownTable(reading, concept, ['protocols'])?.code;
  const [coding] = concept === undefined ? [] : innersOf(concept, 'coding');
  const version = coding && textOf(coding, 'version');
  if (concept === undefined || id === undefined || version === undefined) return undefined;
  ownCode(reading, concept, 'protocols');
  const display = reading.catalogue.protocols.get(id)?.display ?? id;
  claimEqual(concept, 'text', `${display}, ${reading.language.texts.version} ${version}`);
  return { id, version };
}

/** How many statements of the exam the bundle does not hold. */
function readLeftOut(observed: Observed): number | undefined {
  claimItemCode(observed);
  ownTime(observed);
  return wholeOf(observed.element, 'valueInteger');
}

const visits = ['first', 'follow-up', 'surveillance', 'screening'] as const;
const urgencies = ['routine', 'urgent', 'emergency'] as const;

function readIndication(observed: Observed): Indication | undefined {
  const { element, components } = observed;
  claimItemCode(observed);
  ownTime(observed);
  const text = textOf(element, 'valueString');
  if (text === undefined) return undefined;
  const kind = components.value('visit');
  const visit = visits.find((known) => known === kind);
  const haste = components.value('urgency');
  const urgency = urgencies.find((known) => known === haste);
  const question = components.text('question');
  const background = components.text('background');
  return {
    text,
    ...(visit !== undefined && { visit }),
    ...(urgency !== undefined && { urgency }),
    ...(question !== undefined && { question }),
    ...(background !== undefined && { background }),
  };
}

const purposes = ['examine', 'touch', 'photograph', 'share'] as const;
const answers = ['given', 'refused', 'withdrawn', 'not-asked'] as const;
const consenters = ['patient', 'guardian', 'other'] as const;

function readConsent(observed: Observed): Consent | undefined {
  const { reading, element, components } = observed;
  claimItemCode(observed);
  const stated = ownValue(reading, innerOf(element, 'valueCodeableConcept'), 'consent');
  const answer = answers.find((known) => known === stated);
  const asked = components.value('consent-to');
  const to = purposes.find((known) => known === asked);
  if (answer === undefined || to === undefined) return undefined;
  const consenter = components.value('consent-by');
  const by = consenters.find((known) => known === consenter);
  const at = statedTime(observed);
  const purpose = components.text('purpose');
  return {
    to,
    answer,
    ...(by !== undefined && { by }),
    ...(at !== undefined && { at }),
    ...(purpose !== undefined && { purpose }),
    ...noteOf(observed),
  };
}

/** The time of what is timed only where its time was told, be it that of the exam or not. */
export function statedTime({ element }: Observed): string | undefined {
  return dateTimeOf(element, 'effectiveDateTime');
}

function readCondition(observed: Observed): ExamCondition | undefined {
  const { reading, element, components } = observed;
  ownTime(observed);
  const code = ownCode(reading, innerOf(element, 'code'), 'conditions')?.code;
  if (code === undefined) return undefined;
  const stated = lookAt(element, 'valueCodeableConcept');
  const value = innerValue(reading, innerOf(element, 'valueCodeableConcept'), {
    table: 'conditions',
    code,
    values: reading.catalogue.conditions.get(code)?.values,
  });
  if (value === undefined && ownValue(reading, stated, 'presence') !== 'present') return undefined;
  const regions = filled(components.codes('condition-regions', 'regions'));
  return {
    condition: code,
    ...(value && { value: value.code }),
    ...(regions && { regions }),
    ...sideOf(components),
    ...noteOf(observed),
  };
}

function noteOf({ element }: Observed): { readonly note?: string } {
  const [note] = innersOf(element, 'note');
  const text = note && textOf(note, 'text');
  return text === undefined ? {} : { note: text };
}
