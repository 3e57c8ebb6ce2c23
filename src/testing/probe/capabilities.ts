import { fhirVersionNumber } from '../../fhir/version.ts';
import type { ProbeContext } from './context.ts';
import type { ProbeCapability } from './report/report.ts';

type Found = Pick<ProbeContext, 'declared' | 'stored' | 'changes' | 'measured' | 'settings'>;

/** What the server can do, from what it declared and from what it did, and what to set for it. */
export function capabilitiesOf(found: Found): readonly ProbeCapability[] {
  return [
    version,
    formats,
    ids,
    size,
    precision,
    conditionalCreate,
    overwriting,
    validate,
    site,
  ].map((row) => row(found));
}

const unknown = 'not found out';

function yesOrNo(value: boolean | undefined): string {
  return value === undefined ? unknown : value ? 'yes' : 'no';
}

function version({ declared }: Found): ProbeCapability {
  const number = declared?.fhirVersion;
  const [ours] = Object.entries(fhirVersionNumber).find(([, one]) => one === number) ?? [];
  const shown = number !== undefined && /^[\d.a-z-]{1,20}$/.test(number) ? number : unknown;
  return {
    id: 'version',
    title: 'version of FHIR',
    found: shown,
    ...(ours !== undefined && { set: `fhirVersion: '${ours}'` }),
  };
}

function formats({ declared }: Found): ProbeCapability {
  const known = (declared?.formats ?? []).filter((one) => /^[\w.+/-]{1,40}$/.test(one));
  return { id: 'formats', title: 'formats', found: known.join(', ') || unknown };
}

function ids({ declared, stored }: Found): ProbeCapability {
  const title = 'who gives the ids';
  if (declared === undefined || stored === undefined) return { id: 'ids', title, found: unknown };
  return declared.serverIds.size > 0
    ? { id: 'ids', title, found: 'the server', set: "transaction: 'conditional'" }
    : { id: 'ids', title, found: 'the client may', set: "transaction: 'put'" };
}

function size({ measured: { taken, refused } }: Found): ProbeCapability {
  const title = 'entries of one transaction';
  if (taken === undefined) {
    const less = refused === undefined ? unknown : `fewer than ${refused}`;
    return { id: 'size', title, found: less };
  }
  if (refused === undefined) return { id: 'size', title, found: `${taken}, and perhaps more` };
  return { id: 'size', title, found: `${taken}, not ${refused}`, set: `most: ${taken}` };
}

function precision({ changes, stored }: Found): ProbeCapability {
  const lost = changes.some(
    ({ what, element }) => what === 'changed-content' && /\.value$/.test(element),
  );
  return {
    id: 'precision',
    title: 'digits of figures are kept',
    found: yesOrNo(stored === undefined ? undefined : !lost),
  };
}

function conditionalCreate({ measured: { conditionalCreate: value } }: Found): ProbeCapability {
  return {
    id: 'conditional-create',
    title: 'what is there is matched (conditional creation)',
    found: yesOrNo(value),
    ...(value === true && { set: "masterData: 'match'" }),
    ...(value === false && { set: "masterData: 'reference'" }),
  };
}

function overwriting({ measured }: Found): ProbeCapability {
  const value = measured.overwrites;
  return {
    id: 'overwriting',
    title: 'what is matched is written over',
    found: yesOrNo(value),
    ...(value === true && { set: "masterData: 'reference'" }),
  };
}

function validate({ measured }: Found): ProbeCapability {
  return { id: 'validate', title: '$validate', found: yesOrNo(measured.validates) };
}

function site({ declared }: Found): ProbeCapability {
  const names = declared?.searches.get('Observation');
  const has = names && [...names].some((name) => /^body-?site$/i.test(name));
  return { id: 'search-by-site', title: 'search by body site', found: yesOrNo(has) };
}
