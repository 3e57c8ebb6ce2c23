export { kappa, limitsOfAgreement, type PairedAnswers } from './agreement.ts';
export { type Audit, type AuditOptions, type Auditor, createAuditor } from './audit.ts';
export { type Recall, recallsOf } from './recall.ts';
export { auditCsv, auditHtml } from './write-audit.ts';
export { recallHead, recallRow, recallTask, recallTodo } from './write-recall.ts';
