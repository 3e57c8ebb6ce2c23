import { joined, words } from '../../report/html.ts';
import { methodText, separated } from '../../report/page.ts';
import type { ListSection } from '../../report/sections.ts';
import type { Catalogue } from '../../terminology/catalogue.ts';
import type { KindPage } from '../facets/page.ts';
import type { Finding } from './statement.ts';

/** Signs: present first, then suspected and undecided, then those looked for and not found. */
export const findingPage: KindPage<Finding> = {
  tell: (finding, page) => {
    const { teller, catalogue } = page;
    const attributes = (finding.attributes ?? []).map(teller.attribute);
    return {
      section: sectionOf(finding, catalogue),
      line: joined(
        `${teller.subject(finding)} – ${teller.placeOf(finding)}`,
        separated(
          [
            '',
            finding.place && joined(' (', words(finding.place), ')'),
            attributes.length > 0 && `. ${attributes.join('; ')}`,
            methodText(page, finding),
          ],
          '',
        ),
      ),
    };
  },
  mark: (finding, catalogue) =>
    finding.presence === 'present' && !isUsual(finding, catalogue) ? 'sign' : 'said',
};

function sectionOf(finding: Finding, catalogue: Catalogue): ListSection {
  if (finding.presence === 'absent') return 'negatives';
  if (finding.presence === 'indeterminate') return 'undecided';
  if (finding.certainty === 'suspected') return 'suspected';
  return isUsual(finding, catalogue) ? 'usual' : 'positives';
}

function isUsual({ finding }: Finding, catalogue: Catalogue): boolean {
  return catalogue.findings.get(finding)?.usual === true;
}
