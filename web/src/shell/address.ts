/** Where one stands, in the address: page, campaign, run, tab, frequency, plane, cursor. Reload, back and a shared link find it again. */

export type Place = { page: string; values: Record<string, string> };

export function read(hash: string): Place {
  const [page = "", query = ""] = hash.replace(/^#/, "").split("?");
  return { page, values: Object.fromEntries(new URLSearchParams(query)) };
}

export function written(place: Place): string {
  const query = new URLSearchParams(Object.entries(place.values).filter(([, v]) => v !== "")).toString();
  return `#${place.page}${query ? `?${query}` : ""}`;
}

/** Change values of the address; an empty one is left out. `step`: the way back leads to the former ones. */
export function put(values: Record<string, string>, step = false): void {
  const now = read(location.hash);
  const next = written({ page: now.page, values: { ...now.values, ...values } });
  if (next === location.hash) return;
  if (step) history.pushState(null, "", next);
  else history.replaceState(null, "", next);
}

export function value(name: string): string {
  return read(location.hash).values[name] ?? "";
}

export function numberOf(name: string): number | null {
  const text = value(name),
    found = Number(text);
  return text !== "" && Number.isFinite(found) ? found : null;
}
