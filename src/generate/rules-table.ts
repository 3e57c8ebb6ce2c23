import { writeFile } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import { rulesTable } from '../checks/rules-table.ts';

/** Writes the table of rules that the documentation shows. */
await writeFile(fileURLToPath(new URL('../checks/RULES.md', import.meta.url)), rulesTable());
