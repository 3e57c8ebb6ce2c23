import { register } from 'tsx/esm/api';

// A worker thread has its own module loader, which does not know TypeScript.
register();
await import('../../../src/convert/bulk/worker.ts');
