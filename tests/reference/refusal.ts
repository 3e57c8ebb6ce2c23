/** The errors of an answer that refuses, one line each; its text where it is not an OperationOutcome. */
export function refusal(text: string): string {
  const errors = errorsOf(text);
  return errors.length > 0 ? errors.join('\n') : text.slice(0, 1000);
}

function errorsOf(text: string): string[] {
  if (!text.startsWith('{')) return [];
  // What follows is read by name alone, and any part of it may be missing.
  const { issue } = JSON.parse(text) as { issue?: Partial<Record<string, unknown>>[] };
  return (issue ?? [])
    .filter(({ severity }) => severity === 'error' || severity === 'fatal')
    .map(({ diagnostics, expression }) => `${String(expression)}: ${String(diagnostics)}`);
}
