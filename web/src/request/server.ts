/** Questions to the server. Every path, body and answer has the type that the server's own models give it. */

import type { Asks, Me, Reads } from "./types";

export class Refusal extends Error {
  constructor(
    readonly status: number,
    readonly faults: string[],
  ) {
    super(faults.join("; "));
  }
}

let token = "";

async function answer<T>(response: Response): Promise<T> {
  const content: unknown = await response.json();
  if (!response.ok)
    throw new Refusal(response.status, (content as { errors?: string[] }).errors ?? ["no reason was given"]);
  return content as T;
}

/** Read a path; `ids` fill its braces in their order. */
export async function get<P extends keyof Reads>(
  path: P,
  ids: string[] = [],
  signal?: AbortSignal,
): Promise<Reads[P]["answer"]> {
  let at = 0;
  const filled = path.replace(/\{\w+\}/g, () => encodeURIComponent(ids[at++] ?? ""));
  // eslint-disable-next-line no-restricted-globals -- the one place
  return answer(await fetch(filled, { headers: { Accept: "application/json" }, signal: signal ?? null }));
}

export async function post<P extends keyof Asks>(
  path: P,
  body: Asks[P]["body"],
  signal?: AbortSignal,
): Promise<Asks[P]["answer"]> {
  const headers = { "Content-Type": "application/json", "X-Colure-Token": token };
  // eslint-disable-next-line no-restricted-globals -- the one place
  return answer(await fetch(path, { method: "POST", headers, body: JSON.stringify(body), signal: signal ?? null }));
}

export async function me(): Promise<Me> {
  const found = await get("/api/me");
  token = found.token;
  return found;
}
