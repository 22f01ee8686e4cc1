import type { DocumentIssue, ReadOutcome } from '../documents/schema-parts.ts';

/** Something the caller wrote that cannot be used; its lines are printed and the exit code is 2. */
export class BadInput extends Error {}

/** The value of a read document, or a BadInput with every issue on a line of its own. */
export function accept<T>(outcome: ReadOutcome<T>, from: string): T {
  if (outcome.ok) return outcome.value;
  throw new BadInput(outcome.issues.map((issue) => `${from}: ${line(issue)}`).join('\n'));
}

function line(issue: DocumentIssue): string {
  return issue.path === '' ? issue.message : `${issue.path}: ${issue.message}`;
}
