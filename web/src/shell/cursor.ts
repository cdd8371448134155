/** The one cursor of the page: a direction of the device frame that scene, map, cut and figures share. */

import { direction, thetaPhi, type Vector } from "../scene/angles";
import { put, value } from "./address";

type Watcher = (at: Vector | null, pinned: boolean) => void;

class Cursor {
  private watchers = new Set<Watcher>();
  private pinned: Vector | null = null;

  /** What was pinned by a click; hovering passes over it and comes back to it. */
  get at(): Vector | null {
    return this.pinned;
  }

  fromAddress(): void {
    const [theta, phi] = value("at").split(",").map(Number);
    this.pinned = Number.isFinite(theta) && Number.isFinite(phi) ? direction(theta, phi) : null;
    this.tell(this.pinned, true);
  }

  hover(at: Vector | null): void {
    this.tell(at ?? this.pinned, at === null);
  }

  pin(at: Vector | null): void {
    this.pinned = at;
    const [theta, phi] = at ? thetaPhi(at) : [0, 0];
    put({ at: at ? `${theta.toFixed(2)},${phi.toFixed(2)}` : "" });
    this.tell(at, true);
  }

  watch(watcher: Watcher): () => void {
    this.watchers.add(watcher);
    watcher(this.pinned, true);
    return () => this.watchers.delete(watcher);
  }

  private tell(at: Vector | null, pinned: boolean): void {
    for (const watcher of [...this.watchers]) watcher(at, pinned);
  }
}

export const cursor = new Cursor();
