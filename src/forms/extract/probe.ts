import { createContext, type ExportContext, exportSettings } from '../../export/context.ts';
import { assessmentObservations, circumstanceObservations } from '../../export/resources/items.ts';
import { diagnosticReport } from '../../export/resources/report.ts';
import { toObservation } from '../../kinds/registries/to-observation.ts';
import type { Conclusion } from '../../model/conclusion.ts';
import type { Exam } from '../../model/exam.ts';
import type { Statement } from '../../model/statement.ts';
import { builtInCatalogue } from '../../terminology/catalogue.ts';
import { german } from '../../terminology/languages/de.ts';
import { english } from '../../terminology/languages/language.ts';
import type { FormDescription } from '../form.ts';
import type { FormOptions } from '../options.ts';
import type { Template } from './annotation.ts';

/**
 * Asks the export what it makes of an answer, so that a template says what the export says and nothing
 * of it is written a second time. What an exam knows and a form does not is taken away.
 */
export interface Probe {
  readonly context: ExportContext;
  /** The observation of a statement as its answers give it. */
  readonly statement: (members: Template) => Template;
  readonly protocol: () => Template;
  readonly concern: (concern: string) => Template;
  readonly report: () => Template;
}

export function exportProbe(form: FormDescription, options: FormOptions): Probe {
  const { catalogue = builtInCatalogue, canonicalBase } = options;
  const settings = exportSettings({
    catalogue,
    ...(canonicalBase !== undefined && { canonicalBase }),
    language: form.language === 'de' ? german : english,
    narrative: false,
  });
  const contextWith = (conclusion?: Conclusion): ExportContext =>
    createContext(examOf(form, conclusion), settings);
  const context = contextWith();
  return {
    context,
    statement: (members) =>
      // Put together from the form, whose items name members of statements.
      shared(toObservation(context, { key: 'asked', ...members } as unknown as Statement)),
    protocol: () => shared(circumstanceObservations(context)[0]),
    concern: (concern) =>
      // The form offers these alone.
      shared(
        assessmentObservations(
          contextWith({ text: '', concern: concern as Conclusion['concern'] }),
        )[0],
      ),
    report: () => shared(diagnosticReport(context, [])),
  };
}

function examOf({ protocol }: FormDescription, conclusion: Conclusion | undefined): Exam {
  const at = '2025-01-01T00:00:00Z';
  return {
    format: 'face-neck-exam/1',
    id: 'asked',
    status: 'final',
    subject: {},
    examiners: [{ key: 'examiner' }],
    performed: { start: at },
    recorded: at,
    protocol,
    statements: [],
    ...(conclusion && { conclusion }),
  };
}

const ofExam: ReadonlySet<string> = new Set([
  'id',
  'identifier',
  'status',
  'subject',
  'effectiveDateTime',
  'issued',
  'performer',
]);

function shared(resource: object | undefined): Template {
  const members = Object.entries(resource ?? {}).filter(([name]) => !ofExam.has(name));
  return Object.fromEntries(members);
}
