import type { Evidence } from '../terminology/types.ts';

/** A published set of advice that prompts are taken from. The caller chooses; none is a default. */
export interface RuleSet {
  readonly id: string;
  readonly title: string;
  readonly publisher: string;
  /** Where the advice applies; `none` for signs described in the literature. */
  readonly jurisdiction: string;
  /** Year or edition as read. */
  readonly version: string;
  /** What of the advice its prompts do not speak of, because an exam of face and neck cannot answer it. */
  readonly leavesOut: string;
  /** Publication that its prompts are taken from. */
  readonly source: string;
  readonly evidence: Evidence;
}

/** In the order they are offered. */
export type RuleSetId =
  | 'red-flags'
  | 'ng12-england'
  | 'suspected-cancer-scotland'
  | 'neck-mass-us'
  | 'hearing-loss-england'
  | 'giant-cell-arteritis-uk'
  | 'zoster-eye-uk'
  | 'horner-signs'
  | 'facial-weakness-signs';

/** Every rule set that a caller can choose, with its publisher, source and limits. */
export const ruleSets: readonly (RuleSet & { readonly id: RuleSetId })[] = [
  {
    id: 'red-flags',
    title: 'Warning signs of face and neck',
    publisher: 'this library, in its own words, from published guidance that each line names',
    jurisdiction: 'none',
    version: '2026',
    leavesOut:
      'the mouth cavity, throat and larynx as seen, eye movements and the back of the eye, vital signs, blood tests, everything below the neck, burns and bites, and every picture that it has no line for: no prompt does not mean no danger',
    source:
      'the source of each line, in the table of rules; to be read over by clinicians before use',
    evidence: 'read',
  },
  {
    id: 'ng12-england',
    title: 'Suspected cancer: recognition and referral (NG12)',
    publisher: 'NICE',
    jurisdiction: 'England',
    version: '2015, updated; read in copies of 2020 and later',
    leavesOut:
      'ulcers and patches of the mouth, generalised lymph nodes of a child (blood count), spleen and pain on alcohol beside a node, and cancers of other places',
    source:
      'NICE NG12, read in copies (readkong.com transcription of 2020, GPnotebook, Macmillan rapid referral guidelines); its terms on nice.org.uk',
    evidence: 'second-hand',
  },
  {
    id: 'suspected-cancer-scotland',
    title: 'Scottish Referral Guidelines for Suspected Cancer',
    publisher: 'NHS Scotland',
    jurisdiction: 'Scotland',
    version: 'web edition without a printed date, read 2025',
    leavesOut:
      'signs inside the mouth, nails, biopsy results, recurrent basal cell carcinoma, and cancers of other places',
    source:
      'rightdecisions.scot.nhs.uk, Scottish Referral Guidelines for Suspected Cancer, head and neck and thyroid; quick reference guide of 2019 for skin',
    evidence: 'read',
  },
  {
    id: 'neck-mass-us',
    title: 'Clinical practice guideline: evaluation of the neck mass in adults',
    publisher: 'AAO-HNS',
    jurisdiction: 'United States',
    version: '2017',
    leavesOut:
      'signs and history beyond the five features: throat, mouth, voice, earlier cancer and its treatment',
    source:
      'Pynnonen MA et al. 2017, Otolaryngol Head Neck Surg 157(2 suppl):S1-S30, key statements at guidelinecentral.com',
    evidence: 'read',
  },
  {
    id: 'hearing-loss-england',
    title: 'Hearing loss in adults (NG98) and quality standard QS185',
    publisher: 'NICE',
    jurisdiction: 'England',
    version: 'NG98 2018, updated 2023; QS185 2019',
    leavesOut:
      'effusion behind the drum, hearing that varies, and the criteria for diagnostic investigation',
    source: 'nice.org.uk, NG98 recommendations 1.1.2 and 1.1.3 and QS185 quality statement 2',
    evidence: 'read',
  },
  {
    id: 'giant-cell-arteritis-uk',
    title: 'Diagnosis and treatment of giant cell arteritis',
    publisher: 'British Society for Rheumatology',
    jurisdiction: 'United Kingdom',
    version: '2020',
    leavesOut:
      'blood tests, pain and stiffness of shoulders and hips, and symptoms of the body as a whole',
    source:
      'British Society for Rheumatology guideline, Rheumatology 2020;59:e1-e23, read second-hand; NHS Lanarkshire and NHS Highland pathways',
    evidence: 'second-hand',
  },
  {
    id: 'zoster-eye-uk',
    title: 'Herpes zoster ophthalmicus, clinical management guideline',
    publisher: 'College of Optometrists',
    jurisdiction: 'United Kingdom',
    version: 'as read in copies; BMJ 2019;364:k5095 and k5234',
    leavesOut: 'signs inside the eye, treatment, and zoster of the eye without a rash of the nose',
    source:
      'College of Optometrists clinical management guideline (copy); BMJ 2019;364:k5095, k5234',
    evidence: 'second-hand',
  },
  {
    id: 'horner-signs',
    title: 'Signs of oculosympathetic palsy with pain',
    publisher: 'published cases and teaching texts',
    jurisdiction: 'none',
    version: '2011',
    leavesOut: 'sweating, colour of the iris, and tests with eye drops',
    source:
      'PLoS Medicine 2005, doi 10.1371/journal.pmed.0020019 (no loss of sweating needed); American Academy of Ophthalmology subspecialty day 2011 (ptosis of 1 to 2 mm)',
    evidence: 'read',
  },
  {
    id: 'facial-weakness-signs',
    title: 'Pattern of facial weakness',
    publisher: 'teaching texts',
    jurisdiction: 'none',
    version: 'as read',
    leavesOut:
      'speech, limbs and every other sign of a stroke, which the warning signs hold; a whole side that is weak',
    source: 'GPnotebook and University of Aberdeen teaching pages on facial nerve palsy',
    evidence: 'second-hand',
  },
];

const byId: ReadonlyMap<string, RuleSet & { readonly id: RuleSetId }> = /*@__PURE__*/ new Map(
  ruleSets.map((set) => [set.id, set]),
);

/** The rule set of that id; undefined when there is none. */
export function ruleSet(id: string): (RuleSet & { readonly id: RuleSetId }) | undefined {
  return byId.get(id);
}
