/** Long work: begun, watched, given up, announced. The page goes on meanwhile. */

import { button, duration, fill, h } from "../draw/dom";
import { live } from "../live/live";
import { get, post, Refusal } from "../request/server";
import type { Asks, JobState, Results } from "../request/types";
import { words } from "./session";

type Watcher = (jobs: JobState[]) => void;
const watchers = new Set<Watcher>();
let known: JobState[] = [],
  announced = 0,
  plainTitle = "";
/** Own work whose end was told, or that had ended before this page was opened; null until the first list is there. */
let told: Set<string> | null = null;
const over = (j: JobState) => j.state !== "waiting" && j.state !== "at work";

export function onJobs(watcher: Watcher): () => void {
  watchers.add(watcher);
  watcher(known);
  return () => watchers.delete(watcher);
}

async function refresh(): Promise<void> {
  known = await get("/api/jobs");
  const ended = known.filter(over);
  if (told) for (const job of ended) if (job.mine && !told.has(job.id)) announce(job);
  told = new Set(ended.map((j) => j.id));
  for (const watcher of [...watchers]) watcher(known);
}

/** Begin long work and wait for its end; `told` hears how it stands. */
export async function longWork<P extends keyof Results & keyof Asks>(
  path: P,
  body: Asks[P]["body"],
  told: (state: JobState) => void = () => undefined,
): Promise<Results[P]> {
  const { job } = (await post(path, body)) as { job: string };
  void refresh().catch(() => undefined);
  for (let lost = 0; ;) {
    await new Promise((go) => window.setTimeout(go, 350));
    let found;
    try {
      found = await get("/api/job/{job}", [job]);
      lost = 0;
    } catch (error) {
      // A server that is away for a moment still has the work; one that began anew has not.
      if (error instanceof Refusal || ++lost > 60) throw error;
      continue;
    }
    told(found.state);
    if (!over(found.state)) continue;
    void refresh().catch(() => undefined);
    if (found.state.state === "done") return found.result as Results[P];
    throw new Refusal(
      422,
      found.state.faults.length ? found.state.faults : [`${found.state.words}: ${found.state.state}`],
    );
  }
}

/** Ask once, at the first long work, whether the browser may tell of its end. */
export function mayAnnounce(): boolean {
  return "Notification" in window && Notification.permission === "granted";
}

const said = h("span", { class: "chip said-job", attrs: { role: "status", hidden: true } });
let hush = 0;

/** Say that own work ended: in the head of the page; to who looks elsewhere by the title and, where allowed, a notification. */
function announce(job: JobState): void {
  const text = `${job.words}: ${job.state}`;
  fill(said, text);
  said.hidden = false;
  window.clearTimeout(hush);
  hush = window.setTimeout(() => (said.hidden = true), 15_000);
  if (!document.hidden) return;
  if (!announced) plainTitle = document.title;
  announced++;
  document.title = `(${announced}) ${text}`;
  if (mayAnnounce()) new Notification("Colure", { body: text });
}

document.addEventListener("visibilitychange", () => {
  if (!document.hidden && announced) {
    announced = 0;
    document.title = plainTitle;
  }
});

/** How a piece of work stands, with a button to give it up. */
export function jobLine(job: JobState): HTMLElement {
  const stop = button(
    "give up",
    () => void post("/api/cancel", { job: job.id }).then(refresh, (error: unknown) => fill(says, words(error))),
    "tiny",
  );
  const says = h("span", {});
  const bar = h("i", {});
  if (job.state === "waiting") fill(says, `${job.words}: waits, place ${job.place} in the line`);
  else if (job.state === "at work") {
    fill(
      says,
      `${job.words}: for ${duration(job.for_s)}${job.usual_s ? `, the last one took ${duration(job.usual_s)}` : ""}`,
    );
    // Without an earlier one to go by nobody knows how far it is: the bar says that it moves, not how far.
    if (job.usual_s) bar.style.width = `${Math.min(95, (100 * job.for_s) / job.usual_s)}%`;
    else bar.className = "unknown";
  } else fill(says, `${job.words}: ${job.state}${job.faults.length ? `: ${job.faults.join("; ")}` : ""}`);
  return h(
    "div",
    { class: "job" },
    h("div", { class: "row" }, says, h("span", { class: "spring" }), !over(job) && stop),
    !over(job) && h("div", { class: "meter" }, bar),
  );
}

/** The drawer of long work, for the head of the page, and the place where its end is said. */
export function jobsButton(): [HTMLElement, HTMLElement] {
  const list = h("div", { class: "job-list", attrs: { "aria-live": "polite" } }),
    count = h("summary", {}, "work"),
    drawer = h("details", { class: "jobs" }, count, list);
  const ask = h("p", { class: "small" });
  const allow = () => {
    if (!("Notification" in window) || Notification.permission !== "default") return;
    fill(
      ask,
      button("tell me when work ends", () => void Notification.requestPermission().then(() => fill(ask)), "tiny"),
    );
  };
  onJobs((jobs) => {
    const open = jobs.filter((j) => !over(j));
    drawer.hidden = jobs.length === 0;
    fill(count, open.length ? `work: ${open.length}` : "work");
    fill(list, ask, ...jobs.slice(0, 8).map(jobLine));
    allow();
  });
  window.setInterval(() => {
    if (known.some((j) => !over(j)) || drawer.open) void refresh().catch(() => undefined);
  }, 1500);
  // The link tells how much is open: work that was begun before a reload, or by somebody else, is found again and its end is told.
  let open = -1;
  live.watch({
    status: (s) => {
      if (s.jobs === undefined || s.jobs === open) return;
      open = s.jobs;
      void refresh().catch(() => undefined);
    },
  });
  return [said, drawer];
}
