/** A small form on the builder: exams are made, exported and validated in the page. */
import {
  added,
  builtInCatalogue,
  conclude,
  type ExamDraft,
  finishExam,
  issueText,
  type Side,
  startExam,
  state,
  toBundle,
  toJson,
} from '../../src/index.ts';
import { validateBundle } from '../../src/validate/versions/r4.ts';

let draft = startExam({
  id: `note-${crypto.randomUUID()}`,
  subject: { name: { text: 'Invented Picker' } },
  examiners: [{ key: 'nurse', role: 'nurse of the vineyard station' }],
  performed: { start: new Date().toISOString() },
  recorded: new Date().toISOString(),
  protocol: { id: 'skin-lesion', version: '1.0.0' },
});

/** The element with that id; the page is ours, so a missing one is a mistake of this file. */
function byId<E extends HTMLElement>(id: string, type: new () => E): E {
  const found = document.getElementById(id);
  if (!(found instanceof type)) throw new TypeError(`no such element: ${id}`);
  return found;
}

const region = byId('region', HTMLSelectElement);
const side = byId('side', HTMLSelectElement);
const finding = byId('finding', HTMLSelectElement);
const note = byId('note', HTMLTextAreaElement);
const said = byId('said', HTMLOListElement);
const issues = byId('issues', HTMLUListElement);
const status = byId('state', HTMLParagraphElement);

function fill(select: HTMLSelectElement, options: Iterable<readonly [string, string]>): void {
  select.replaceChildren(...[...options].map(([value, text]) => new Option(text, value)));
}

fill(
  region,
  [...builtInCatalogue.regions.values()]
    .filter((row) => !row.group && row.section === 'skin')
    .map((row) => [row.code, row.display]),
);
fill(
  finding,
  [...builtInCatalogue.findings.values()]
    .filter((row) => row.attributes === 'lesion')
    .map((row) => [row.code, row.display]),
);

/** Sides that the chosen region can have; the rules of the exam say whether one must be chosen. */
function fillSides(): void {
  const paired = builtInCatalogue.regions.get(region.value)?.laterality === 'paired';
  const sides: Side[] = paired
    ? ['right', 'left', 'both']
    : ['midline', 'right', 'left', 'both', 'right-of-midline', 'left-of-midline'];
  const choice: [string, string] = ['', 'Choose the side of the patient'];
  fill(side, [choice, ...sides.map((value): [string, string] => [value, value])]);
}
region.addEventListener('change', fillSides);
fillSides();

byId('form', HTMLFormElement).addEventListener('submit', (event) => {
  event.preventDefault();
  const chosen = document.querySelector<HTMLInputElement>('input[name=presence]:checked');
  draft = withFinding(draft, chosen?.value ?? '');
  const item = document.createElement('li');
  item.textContent = [finding, region, side]
    .map((select) => select.selectedOptions[0]?.textContent ?? '')
    .concat(chosen?.value ?? '')
    .join(', ');
  said.append(item);
});

function withFinding(before: ExamDraft, presence: string): ExamDraft {
  if (presence !== 'present' && presence !== 'absent' && presence !== 'indeterminate') {
    return before;
  }
  return state(before, {
    kind: 'finding',
    finding: added(finding.value),
    presence,
    region: added(region.value),
    ...(isSide(side.value) && { side: side.value }),
    methods: ['inspection'],
    ...(note.value.trim() !== '' && { note: note.value }),
  });
}

function isSide(value: string): value is Side {
  return value !== '' && [...side.options].some((option) => option.value === value);
}

byId('export', HTMLButtonElement).addEventListener('click', () => {
  const words = byId('conclusion', HTMLTextAreaElement).value;
  const whole = words.trim() === '' ? draft : conclude(draft, { text: words, concern: 'none' });
  const exam = finishExam(whole, 'preliminary');
  const bundle = exam.value === undefined ? undefined : toBundle(exam.value);
  const checked = bundle?.value === undefined ? undefined : validateBundle(bundle.value);
  const found = [...exam.issues, ...(bundle?.issues ?? []), ...(checked?.issues ?? [])];
  issues.replaceChildren(
    ...found.map((one) => {
      const item = document.createElement('li');
      item.textContent = issueText(one);
      return item;
    }),
  );
  status.textContent = checked?.valid
    ? `Valid FHIR R4: ${bundle?.value?.entry?.length ?? 0} resources`
    : 'Not exported: see the issues';
  byId('bundle', HTMLTextAreaElement).value =
    bundle?.value === undefined ? '' : toJson(bundle.value, { pretty: true });
});
