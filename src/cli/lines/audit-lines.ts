import { createAuditor } from '../../audit/audit.ts';
import { addSums } from '../../audit/sums/add-sums.ts';
import { parseAuditSums } from '../../audit/sums/parse-sums.ts';
import { type AuditSums, noSums } from '../../audit/sums/sums.ts';
import type { CheckOptions } from '../../checks/settings/check-settings.ts';
import { isPlainObject } from '../../data/plain-data.ts';
import { fromJson } from '../../fhir/json/from-json.ts';
import { hasErrors, issue, issuesBelow } from '../../issues/issue.ts';
import { type ParseOptions, parseExam } from '../../model/parse-exam.ts';
import type { Call } from '../command.ts';
import { exitCode } from '../exit-code.ts';
import { eachDocument } from '../input/each-document.ts';
import { type Answer, answerLines, checkLinesCall } from './answer-lines.ts';

interface Settings {
  readonly checks: CheckOptions;
  readonly parse: ParseOptions;
}

/** The sums of one exam a line, or of a list of exams: two of one person are compared within a line. */
export function auditByLine(call: Call, settings: Settings): Promise<number> {
  checkLinesCall(call, ['out', 'to', 'merge']);
  return answerLines(call, (text) => sumsOfText(text, settings));
}

function sumsOfText(text: string, { checks, parse }: Settings): Answer {
  const json = fromJson(text);
  if (hasErrors(json.issues)) return { issues: json.issues };
  const isList = Array.isArray(json.value);
  const list: readonly unknown[] = Array.isArray(json.value) ? json.value : [json.value];
  if (list.length === 0) {
    return { issues: [issue('wrong-type', [], { reason: 'not-an-object' })] };
  }
  const read = list.map((value) => parseExam(value, parse));
  const issues = [
    ...json.issues,
    ...read.flatMap((one, at) => (isList ? issuesBelow([at], one.issues) : one.issues)),
  ];
  const auditor = createAuditor({ checks });
  for (const { value } of read) {
    // A list of which a part cannot be read is kept back whole: its pairs would be missing.
    if (value === undefined) return { issues };
    auditor.add(value);
  }
  return { issues, result: auditor.sums() };
}

export interface Merged {
  readonly sums: AuditSums;
  readonly code: number;
}

/** Adds up sums, bare or as answers to lines; each record that was kept back is told by the exit code. */
export async function mergedSums(call: Call): Promise<Merged> {
  let sums = noSums;
  let keptBack = false;
  const code = await eachDocument(call, {
    run: async (value) => {
      if (isPlainObject(value) && 'quarantine' in value) {
        keptBack = true;
        return { issues: [] };
      }
      const given = isPlainObject(value) && 'result' in value ? value['result'] : value;
      const read = parseAuditSums(given);
      if (read.ok) sums = addSums(sums, read.value);
      return { issues: read.issues };
    },
  });
  return { sums, code: code === exitCode.clean && keptBack ? exitCode.keptBack : code };
}
