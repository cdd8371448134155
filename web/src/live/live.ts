/** The scan as the server tells it over the page's one socket. */

import type { Grid, LiveMessage, Status as Told } from "../request/types";

/** Everything but the picture; before a scan was started most of it is not there. */
export type Status = Pick<Told, "type" | "state" | "running"> & Partial<Told> & { sequence: number; lease: string };

/** The axes may move: by a scan, or by hand. */
export function moving(s: Status): boolean {
  return s.moves === true || Boolean(s.hand);
}

/** A scan's process is there, though it may only seal its record, or axes move by hand: nothing else begins. */
export function busy(s: Status): boolean {
  return s.running || Boolean(s.hand);
}

type Watcher = {
  status?: (s: Status) => void;
  /** The cells of the running or last scan; null when the server knows of none (it began anew). */
  grid?: (g: Grid | null) => void;
  frame?: (f: Float32Array) => void;
  linked?: (up: boolean) => void;
};

/** Nothing was heard for so long: nobody is there, though the line may look open. The server says something every 2 s. */
const SILENT_MS = 7000;

/** It comes back by itself; every watcher gets the newest status, grid and picture first, the list of events with them. */
export class Live {
  status: Status = { type: "status", state: "idle", running: false, sequence: 0, lease: "" };
  grid: Grid | null = null;
  frame: Float32Array | null = null;
  up = false;
  private watchers = new Set<Watcher>();
  private wait = 250;
  private heard = 0;
  /** There was a link before. */
  private known = false;

  open(): void {
    const socket = new WebSocket(`${location.protocol === "https:" ? "wss" : "ws"}://${location.host}/api/live`);
    socket.binaryType = "arraybuffer";
    this.heard = Date.now();
    const watch = window.setInterval(() => {
      if (Date.now() - this.heard > SILENT_MS) lost();
    }, 1000);
    // A line to nobody closes only when the system gives it up, which may take minutes: it is left at once.
    const lost = () => {
      window.clearInterval(watch);
      socket.onclose = socket.onmessage = socket.onopen = null;
      socket.close();
      this.up = false;
      this.tell((w) => w.linked?.(false));
      window.setTimeout(() => this.open(), this.wait);
      this.wait = Math.min(4000, this.wait * 2);
    };
    socket.onopen = () => {
      this.heard = Date.now();
    };
    socket.onmessage = (event) => {
      this.heard = Date.now();
      if (!this.up) {
        // Only who speaks is there: an open line alone proves nothing.
        this.wait = 250;
        this.up = this.known = true;
        this.tell((w) => w.linked?.(true));
      }
      if (typeof event.data === "string") this.hear(JSON.parse(event.data) as LiveMessage);
      else {
        const frame = (this.frame = new Float32Array(event.data as ArrayBuffer));
        this.tell((w) => w.frame?.(frame));
        // The next picture is asked for when this one is drawn; a hidden page draws none and asks all the same.
        const next = () => {
          if (socket.readyState === WebSocket.OPEN) socket.send("taken");
        };
        if (document.hidden) window.setTimeout(next, 250);
        else requestAnimationFrame(next);
      }
    };
    socket.onclose = lost;
  }

  watch(watcher: Watcher): () => void {
    this.watchers.add(watcher);
    watcher.status?.(this.status);
    if (this.grid) watcher.grid?.(this.grid);
    if (this.frame) watcher.frame?.(this.frame);
    watcher.linked?.(this.up || !this.known);
    return () => this.watchers.delete(watcher);
  }

  private hear(line: LiveMessage): void {
    if (line.type === "alive") return;
    if (line.type === "grid") {
      this.grid = line;
      this.frame = null;
      this.tell((w) => w.grid?.(line));
    } else {
      const status: Status = (this.status = { sequence: 0, lease: "", ...line });
      // A server that began anew has no scan: the last one's picture is nobody's any more.
      if (!status.run && this.grid) {
        this.grid = this.frame = null;
        this.tell((w) => w.grid?.(null));
      }
      this.tell((w) => w.status?.(status));
    }
  }

  private tell(action: (watcher: Watcher) => void): void {
    // One watcher that stumbles keeps nothing from the others: stop is among them.
    for (const watcher of [...this.watchers])
      try {
        action(watcher);
      } catch (error) {
        console.error(error);
      }
  }
}

export const live = new Live();
