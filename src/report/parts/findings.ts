import type { Finding, RegionState } from '../../model/statement.ts';
import { type Content, joined, list, section, words } from '../html.ts';
import { type Page, remarks, separated } from '../page.ts';
import { ofKind } from '../teller.ts';

/** Signs: present first, then suspected and undecided, then those looked for and not found. */
export function findingParts(page: Page): Content[] {
  const { exam, labels, catalogue } = page;
  const findings = ofKind(exam, 'finding');
  const usual = (one: Finding): boolean => catalogue.findings.get(one.finding)?.usual === true;
  const present = findings.filter((one) => one.presence === 'present');
  const certain = present.filter((one) => one.certainty !== 'suspected');
  const part = (id: string, heading: string, chosen: readonly Finding[]): Content =>
    section(id, heading, list(chosen.map((one) => findingText(page, one))));
  return [
    part(
      'positives',
      labels.positives,
      certain.filter((one) => !usual(one)),
    ),
    part(
      'suspected',
      labels.suspected,
      present.filter((one) => one.certainty === 'suspected'),
    ),
    part(
      'undecided',
      labels.undecided,
      findings.filter((one) => one.presence === 'indeterminate'),
    ),
    part(
      'negatives',
      labels.negatives,
      findings.filter((one) => one.presence === 'absent'),
    ),
    part('usual', labels.usual, certain.filter(usual)),
  ];
}

function findingText(page: Page, finding: Finding): Content {
  const { teller } = page;
  return joined(
    `${teller.subject(finding)} – ${teller.place(finding.region, finding.side)}`,
    separated(
      [
        '',
        finding.place && joined(' (', words(finding.place), ')'),
        (finding.attributes ?? []).length > 0 &&
          `. ${(finding.attributes ?? []).map(teller.attribute).join('; ')}`,
        methodText(page, finding),
      ],
      '',
    ),
    remarks(page, finding),
  );
}

/** What became of the regions as a whole: abnormal, normal, in part, not examined, not there. */
export function stateParts(page: Page): Content[] {
  const { labels, exam } = page;
  const states = ofKind(exam, 'region-state');
  const part = (id: string, heading: string, names: readonly RegionState['state'][]): Content =>
    section(
      id,
      heading,
      list(states.filter(({ state }) => names.includes(state)).map((one) => stateText(page, one))),
    );
  return [
    part('abnormal', labels.abnormal, ['abnormal']),
    part('normal', labels.normal, ['normal']),
    part('partial', labels.partial, ['partial']),
    part('not-examined', labels.notExamined, ['not-examined', 'not-applicable']),
  ];
}

function stateText(page: Page, state: RegionState): Content {
  const { teller } = page;
  const why =
    state.state === 'partial' ? state.limit : 'reason' in state ? state.reason : undefined;
  return joined(
    teller.place(state.region, state.side),
    why && joined(': ', words(teller.reason(why))),
    methodText(page, state),
    remarks(page, state),
  );
}

function methodText({ teller }: Page, { methods }: Finding | RegionState): Content {
  if (methods === undefined) return undefined;
  return ` [${methods.map((code) => teller.display('methods', code)).join(', ')}]`;
}
