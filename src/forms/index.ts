export { toFormDescription } from './describe.ts';
export type {
  FormDescription,
  FormItem,
  FormLanguage,
  FormOption,
  FormTarget,
  StatementBeginning,
} from './form.ts';
export { fromQuestionnaireResponse, type ResponseOptions } from './from-response.ts';
export type { FormOptions } from './options.ts';
export { type StartingOptions, startingResponse } from './starting-response.ts';
export {
  type AnyQuestionnaire,
  type QuestionnaireOptions,
  toQuestionnaire,
} from './to-questionnaire.ts';
