import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";

/** Work as the server tells it; a test changes it. */
let work: Record<string, unknown>[] = [];
const asked: { path: string; body: unknown }[] = [],
  notes: string[] = [];
let requested = 0;

/** The browser's notifications, as far as the page asks for them. */
const Note = Object.assign(
  function (_: string, more: { body: string }) {
    notes.push(more.body);
  },
  {
    permission: "default",
    requestPermission: () => {
      requested++;
      Note.permission = "granted";
      return Promise.resolve("granted");
    },
  },
);

const job = (state: string, more: object = {}) => ({ id: "j1", kind: "report", words: "report of run one", state, place: 0, for_s: 3, usual_s: 12, mine: true, faults: [], ...more }); // prettier-ignore
const refreshed = async () => {
  await vi.advanceTimersByTimeAsync(1600);
};

beforeEach(async () => {
  vi.useFakeTimers();
  vi.resetModules();
  vi.stubGlobal("Notification", Note);
  Note.permission = "default";
  requested = asked.length = notes.length = 0;
  vi.stubGlobal("fetch", (path: string, init?: { body?: string }) => {
    asked.push({ path, body: init?.body && JSON.parse(init.body) });
    return Promise.resolve({ ok: true, status: 200, json: () => Promise.resolve(path === "/api/jobs" ? work : {}) });
  });
  work = [job("at work")];
  const { jobsButton } = await import("./jobs");
  const [said, drawer] = jobsButton();
  document.body.replaceChildren(said, drawer);
  (drawer as HTMLDetailsElement).open = true;
  await refreshed();
});
afterEach(() => vi.useRealTimers());

const press = (label: string) =>
  [...document.querySelectorAll("button")].find((one) => one.textContent === label)!.click();

describe("the drawer of long work", () => {
  it("says what is at work, for how long, and how long it took before", () => {
    expect(document.querySelector("summary")!.textContent).toBe("work: 1");
    expect(document.querySelector(".job")!.textContent).toContain("report of run one: for");
    expect(document.querySelector<HTMLElement>(".job .meter i")!.style.width).toBe("25%");
  });

  it("gives up the work whose button is pressed", async () => {
    press("give up");
    await vi.advanceTimersByTimeAsync(10);
    expect(asked.find((one) => one.path === "/api/cancel")!.body).toEqual({ job: "j1" });
  });

  it("asks the browser once, and tells of the end by the title and a notification to who looks elsewhere", async () => {
    press("tell me when work ends");
    await vi.advanceTimersByTimeAsync(10);
    expect(requested).toBe(1);
    expect(document.body.textContent).not.toContain("tell me when work ends");
    vi.spyOn(document, "hidden", "get").mockReturnValue(true);
    work = [job("done")];
    await refreshed();
    expect(notes).toEqual(["report of run one: done"]);
    expect(document.title).toContain("(1) report of run one: done");
    expect(document.querySelector(".said-job")!.textContent).toBe("report of run one: done");
    await refreshed();
    expect(notes.length).toBe(1);
    vi.restoreAllMocks();
  });

  it("does not tell of what somebody else began", async () => {
    work = [job("done", { mine: false })];
    await refreshed();
    expect(document.querySelector<HTMLElement>(".said-job")!.hidden).toBe(true);
  });

  it("says the place of what waits", async () => {
    work = [job("waiting", { place: 2 })];
    await refreshed();
    expect(document.querySelector(".job")!.textContent).toContain("waits, place 2 in the line");
  });
});
