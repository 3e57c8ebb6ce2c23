import type { Saved } from './saved.ts';

const place = 'face-neck-capture/draft';

/** What became of a try to keep, read or delete the draft of this browser. */
export type Kept =
  | { readonly state: 'none' }
  | { readonly state: 'kept'; readonly saved: Saved }
  | { readonly state: 'failed'; readonly why: string };

export function readDraft(): Kept {
  try {
    const text = localStorage.getItem(place);
    if (text === null) return { state: 'none' };
    const data: unknown = JSON.parse(text);
    if (isSaved(data)) return { state: 'kept', saved: data };
    return { state: 'failed', why: 'it is of another version of this page' };
  } catch (error) {
    return { state: 'failed', why: reasonOf(error) };
  }
}

export function keepDraft(saved: Saved): Kept {
  try {
    localStorage.setItem(place, JSON.stringify(saved));
    return { state: 'kept', saved };
  } catch (error) {
    return { state: 'failed', why: reasonOf(error) };
  }
}

export function deleteDraft(): void {
  localStorage.removeItem(place);
}

/** Tells when another window of this browser has written or deleted the draft. */
export function hearOtherWindows(heard: () => void): void {
  addEventListener('storage', ({ key }) => {
    if (key === place || key === null) heard();
  });
}

/** A browser can refuse storage, or have no room left. */
function reasonOf(error: unknown): string {
  return error instanceof Error ? error.name : 'unknown reason';
}

/** Written by this page alone, so its members are looked at and not each answer in it. */
function isSaved(data: unknown): data is Saved {
  if (typeof data !== 'object' || data === null) return false;
  const members = new Map<string, unknown>(Object.entries(data));
  const isObject = (name: string): boolean => {
    const value = members.get(name);
    return typeof value === 'object' && value !== null;
  };
  return (
    members.get('format') === 'face-neck-capture/1' &&
    ['head', 'answers', 'rounds', 'ruleSets', 'dismissals'].every(isObject) &&
    typeof members.get('page') === 'string'
  );
}
