/** What this browser remembers of the page for next time. A browser that keeps nothing is no fault. */

/* eslint-disable no-restricted-globals -- the one place */
export function kept(name: string): string | null {
  try {
    return localStorage.getItem(name);
  } catch {
    return null;
  }
}

export function keep(name: string, value: string): void {
  try {
    localStorage.setItem(name, value);
  } catch {
    // Private windows refuse; then it holds for this page only.
  }
}
