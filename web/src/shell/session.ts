/** Who this is and what it may do; faults in words that say what to do. */

import { Refusal } from "../request/server";
import type { Me } from "../request/types";

export const session: { me: Me | null; campaign: string } = { me: null, campaign: "" };

export function may(role: "view" | "operate" | "configure"): boolean {
  const order = ["nobody", "view", "operate", "configure"];
  return session.me !== null && order.indexOf(session.me.role) >= order.indexOf(role);
}

export function words(error: unknown): string {
  if (error instanceof Refusal) return error.faults.join("\n");
  if (error instanceof TypeError) return "The server does not answer. Is colure serve still running?";
  return error instanceof Error ? error.message : String(error);
}

/** True for a question that was overtaken by a later one: nobody waits for its answer. */
export function overtaken(error: unknown): boolean {
  return error instanceof DOMException && error.name === "AbortError";
}
