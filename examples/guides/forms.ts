import { fromQuestionnaireResponse, toQuestionnaire } from '../../src/forms/index.ts';
import { finishExamOrThrow, issueText, orThrow } from '../../src/index.ts';

// The form of a protocol, for any renderer of FHIR forms. No answer is chosen beforehand.
const form = orThrow('make the form', toQuestionnaire('jaw-pain', { language: 'de' }));
console.log(form.title, form.item?.length);

// What a renderer gives back. Here the examiner said first that the joint clicks, and then that the
// side was not examined: the sign was hidden, but this renderer kept it.
const coded = (code: string) => [{ valueCoding: { code } }];
const joint = 'region-state/tmj/left';
const response = {
  resourceType: 'QuestionnaireResponse',
  status: 'completed',
  questionnaire: `${form.url}|${form.version}`,
  item: [
    {
      linkId: 'region/tmj',
      item: [
        {
          linkId: 'region/tmj/left',
          item: [
            { linkId: joint, answer: coded('state.not-examined') },
            { linkId: `${joint}:reason`, answer: coded('unable-pain') },
            {
              linkId: `${joint}:signs`,
              item: [{ linkId: 'finding/tmj-click/tmj/left', answer: coded('presence.present') }],
            },
          ],
        },
      ],
    },
  ],
};
const outcome = fromQuestionnaireResponse(response, {
  protocol: 'jaw-pain',
  language: 'de',
  exam: {
    id: 'quay-2025-31',
    subject: { reference: 'Patient/417' },
    examiners: [{ key: 'nurse', role: 'harbour nurse' }],
    performed: { start: '2025-05-06T09:00:00+02:00' },
    recorded: '2025-05-06T09:20:00+02:00',
  },
});
for (const issue of outcome.issues) {
  if (issue.code === 'not-in-exam') console.log(issueText(issue));
}
const exam = finishExamOrThrow(orThrow('read the answers', outcome), 'preliminary');
console.log(exam.statements.map(({ key }) => key).join());
