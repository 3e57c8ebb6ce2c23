import type { Attachment } from 'fhir/r4.js';
import type { Exam } from '../../model/exam.ts';

/** The whole report in a form that people read: a page of HTML as text, a PDF as bytes. */
export interface PresentedForm {
  /** `text/html`, `application/pdf`. */
  readonly contentType: string;
  readonly content: string | Uint8Array;
  readonly title?: string;
  /** BCP 47. */
  readonly language?: string;
}

/** Makes the forms of an exam, such as `htmlForm()` of the entry `report`. */
export type FormMaker = (exam: Exam) => readonly PresentedForm[];

export function presentedForms(exam: Exam, make: FormMaker | undefined): Attachment[] {
  return (make?.(exam) ?? []).map(({ contentType, content, title, language }) => ({
    contentType,
    ...(language !== undefined && { language }),
    data: base64(typeof content === 'string' ? new TextEncoder().encode(content) : content),
    ...(title !== undefined && { title }),
  }));
}

function base64(bytes: Uint8Array): string {
  let characters = '';
  for (const byte of bytes) characters += String.fromCharCode(byte);
  return btoa(characters);
}
