/** Values that were typed and are not in the files yet: kept over pages, theme and reload, and warned of. */

import type { Form } from "../request/types";

export type Edits = NonNullable<Form["edits"]>;

const all = new Map<string, Edits>();
const told = new Set<() => void>();

export function draftOf(campaign: string): Edits {
  let found = all.get(campaign);
  if (!found) {
    try {
      found = (JSON.parse(sessionStorage.getItem(`draft-${campaign}`) ?? "{}") ?? {}) as Edits;
    } catch {
      found = {};
    }
    all.set(campaign, found);
  }
  return found;
}

export function setDraft(campaign: string, key: string, value: Edits[string] | undefined): void {
  const edits = draftOf(campaign);
  if (value === undefined) delete edits[key];
  else edits[key] = value;
  keepDraft(campaign);
}

export function clearDraft(campaign: string): void {
  all.set(campaign, {});
  keepDraft(campaign);
}

export function unsaved(campaign: string): number {
  return Object.keys(draftOf(campaign)).length;
}

export function onDrafts(action: () => void): () => void {
  told.add(action);
  return () => told.delete(action);
}

function keepDraft(campaign: string): void {
  try {
    sessionStorage.setItem(`draft-${campaign}`, JSON.stringify(draftOf(campaign)));
  } catch {
    // Then it holds until the window closes.
  }
  for (const action of told) action();
}

window.addEventListener("beforeunload", (event) => {
  if ([...all.values()].some((edits) => Object.keys(edits).length)) event.preventDefault();
});
