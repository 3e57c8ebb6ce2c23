import type { Json } from '../places.ts';
import { base } from './canonical.ts';

/** Naming systems, sound and broken, by name. */
export const namingSystemCases: Record<string, Json> = {
  'naming-system-of-two-preferred': {
    resourceType: 'NamingSystem',
    id: 'n',
    name: 'Vines',
    status: 'active',
    kind: 'codesystem',
    date: '2026',
    uniqueId: [
      { type: 'uri', value: `${base}/a`, preferred: true },
      { type: 'uri', value: `${base}/b`, preferred: true },
    ],
  },
  'naming-system-root-with-replacement': {
    resourceType: 'NamingSystem',
    id: 'n',
    name: 'Vines',
    status: 'active',
    kind: 'root',
    date: '2026',
    uniqueId: [{ type: 'oid', value: 'banana' }],
  },
  'naming-system-sound': {
    resourceType: 'NamingSystem',
    id: 'n',
    name: 'Vines',
    status: 'active',
    kind: 'codesystem',
    date: '2026',
    uniqueId: [{ type: 'oid', value: '1.2.3' }],
  },
};
