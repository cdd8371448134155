/** Questions to the server, and its voice while a scan runs. */

export type Me = { name: string; role: "view" | "operate" | "configure"; token: string; lease: string | null; mine: boolean; sequence: number; campaigns: { id: string; folder: string }[] };

export class Refusal extends Error {
  constructor(readonly status: number, readonly faults: string[]) { super(faults.join("; ")); }
}

let token = "";

async function answer<T>(response: Response): Promise<T> {
  const content = await response.json();
  if (!response.ok) throw new Refusal(response.status, (content as { errors: string[] }).errors ?? ["no reason was given"]);
  return content as T;
}

export async function get<T>(path: string): Promise<T> {
  return answer<T>(await fetch(path, { headers: { Accept: "application/json" } }));
}

export async function post<T>(path: string, body: unknown = {}): Promise<T> {
  return answer<T>(await fetch(path, { method: "POST", headers: { "Content-Type": "application/json", "X-Colure-Token": token }, body: JSON.stringify(body) }));
}

export async function me(): Promise<Me> {
  const found = await get<Me>("/api/me");
  token = found.token;
  return found;
}

/** Wait for slow work that a question began. */
export async function finished<T>(path: string, body: unknown): Promise<T> {
  const { job } = await post<{ job: string }>(path, body);
  for (;;) {
    await new Promise((go) => window.setTimeout(go, 300));
    const found = await get<{ done: boolean; result: T }>(`/api/job/${job}`);
    if (found.done) return found.result;
  }
}

export type Word = { at: number; kind: string; text: string };
export type Status = {
  type: "status"; campaign?: string; run?: string; kind?: string; state: string; text?: string; running: boolean; measured?: number; total?: number;
  left_s?: number; predicted_s?: number; axes?: string[]; position_deg?: number[]; angles_deg?: number[]; level_db?: number | null; strongest_db?: number | null; noise_db?: number; ties?: [number, number, number][];
  words?: Word[]; sequence: number; lease: string;
};
export type Grid = { type: "grid"; rows: number[]; columns: number[]; row_name: string; column_name: string; directions: number[] };
type Watcher = { status?: (s: Status) => void; grid?: (g: Grid) => void; frame?: (f: Float32Array) => void; linked?: (up: boolean) => void };

/** The one socket of the page; it comes back by itself and every watcher gets the newest picture first. */
export class Live {
  status: Status = { type: "status", state: "idle", running: false, sequence: 0, lease: "" };
  grid: Grid | null = null;
  frame: Float32Array | null = null;
  private watchers = new Set<Watcher>();
  private wait = 250;

  open(): void {
    const socket = new WebSocket(`${location.protocol === "https:" ? "wss" : "ws"}://${location.host}/api/live`);
    socket.binaryType = "arraybuffer";
    socket.onopen = () => { this.wait = 250; this.tell((w) => w.linked?.(true)); };
    socket.onmessage = (event) => {
      if (typeof event.data === "string") this.hear(JSON.parse(event.data) as Status | Grid);
      else {
        this.frame = new Float32Array(event.data as ArrayBuffer);
        const frame = this.frame;
        this.tell((w) => w.frame?.(frame));
        // The next picture is asked for once this one is drawn.
        requestAnimationFrame(() => { if (socket.readyState === WebSocket.OPEN) socket.send("taken"); });
      }
    };
    socket.onclose = () => {
      this.tell((w) => w.linked?.(false));
      window.setTimeout(() => this.open(), this.wait);
      this.wait = Math.min(5000, this.wait * 2);
    };
  }

  watch(watcher: Watcher): () => void {
    this.watchers.add(watcher);
    watcher.status?.(this.status);
    if (this.grid) watcher.grid?.(this.grid);
    if (this.frame) watcher.frame?.(this.frame);
    return () => this.watchers.delete(watcher);
  }

  private hear(line: Status | Grid): void {
    if (line.type === "grid") { this.grid = line; this.frame = null; this.tell((w) => w.grid?.(line)); }
    else { this.status = line; this.tell((w) => w.status?.(line)); }
  }

  private tell(action: (watcher: Watcher) => void): void {
    // One watcher that stumbles keeps nothing from the others: stop is among them.
    for (const watcher of [...this.watchers]) try { action(watcher); } catch (error) { console.error(error); }
  }
}

export const live = new Live();
