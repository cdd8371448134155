import { describe, expect, it, vi } from "vitest";
import type { Coverage, Series } from "../request/types";
import { session } from "../shell/session";
import type { Explorer } from "./explore";
import { seriesVerdict, TogetherTab } from "./together";

const row = (...e_n: (number | null)[]) => ({ label: "gain", unit: "dBi", values: e_n.map(() => 1), mean: 1, spread: 0, trend: null, trend_expanded: null, e_n }); // prettier-ignore
const said = (...rows: ReturnType<typeof row>[]) => seriesVerdict({ runs: ["a", "b", "c"], golden: "a", rows });

describe("the verdict of a series", () => {
  // |E_n| <= 1: ISO 13528 (performance score of two laboratories).
  it("counts figures beyond both uncertainties", () => {
    expect(said(row(0, 0.4, -1.3), row(0, 0.2, 0.1)).words).toContain("1 of 2 figures differ");
    expect(said(row(0, 0.4, -0.9)).good).toBe(true);
  });

  it("never calls good what nobody can tell", () => {
    const none = said(row(null, null, null));
    expect(none.good).toBe(false);
    expect(none.words).toContain("Nothing can be told");
    const some = said(row(0, null, 0.2), row(0, 0.1, 0.1));
    expect(some.good).toBe(false);
    expect(some.words).toContain("Of 1 nothing can be told");
  });
});

const RUNS = ["one", "two", "three"].map((name, i) => ({
  name,
  kind: "sphere",
  record: true,
  figures: true,
  measured_at: i,
}));
const SERIES: Series = {
  runs: ["one", "two", "three"], golden: "one", frequency_hz: 24e9,
  rows: [{ label: "gain", unit: "dBi", values: [18, 18.2, 15], mean: 17.07, spread: 1.79, trend: -1.5, trend_expanded: 0.4, e_n: [0, 0.3, -4] }],
}; // prettier-ignore
const COVERAGE: Coverage = {
  frequency_hz: 24e9, percent: [20, 50, 80], unit: "dBm", expanded_db: 0.3,
  rows: [
    { state: "left", levels: [-12, -5, 1], peak: 9 },
    { state: "right", levels: [-11, -6, 2], peak: 9.1 },
    { state: "best of all", levels: [-9, -3, 4], peak: 9.1 },
  ],
}; // prettier-ignore

describe("several runs on one page", () => {
  let asked: { path: string; body: Record<string, unknown> }[] = [];
  const show = async (): Promise<HTMLElement> => {
    asked = [];
    vi.stubGlobal("ResizeObserver", class { observe() {} disconnect() {} }); // prettier-ignore
    vi.stubGlobal("fetch", (path: string, init?: { body?: string }) => {
      asked.push({ path, body: init?.body ? (JSON.parse(init.body) as Record<string, unknown>) : {} });
      const job = {
        state: {
          id: "j",
          state: "done",
          name: "coverage",
          words: "coverage",
          seconds: 1,
          by: "me",
          mine: true,
          faults: [],
        },
        result: COVERAGE,
      };
      const answers: Record<string, unknown> = {
        "/api/campaigns": [{ id: "c", folder: "c", runs: RUNS }], "/api/series": SERIES, "/api/coverage": { job: "j" }, "/api/job/j": job,
      }; // prettier-ignore
      return Promise.resolve({ ok: true, status: 200, json: () => Promise.resolve(answers[path] ?? []) });
    });
    session.campaign = "c";
    session.me = { role: "operate" } as typeof session.me;
    const looked = {
      run: "two", state: null, known: { states: ["left", "right"] }, beside: [],
      subject: () => ({ key: "two", words: "run two" }), one: () => ({ campaign: "c", run: "two", state: null }),
    }; // prettier-ignore
    const tab = new TogetherTab({ looked } as unknown as Explorer);
    document.body.replaceChildren(tab.element);
    tab.show();
    await vi.waitFor(() => expect(tab.element.textContent).toContain("golden unit"));
    return tab.element;
  };
  const button = (root: HTMLElement, text: string) =>
    [...root.querySelectorAll("button")].find((one) => one.textContent === text)!;

  it("keep the golden unit in a series and ask for two runs or more", async () => {
    const root = await show(),
      boxes = () => [...root.querySelectorAll<HTMLInputElement>("[aria-label='runs of the series'] input")];
    expect(boxes().map((one) => one.disabled)).toEqual([false, true, false]);
    for (const one of boxes().filter((b) => !b.disabled)) {
      one.checked = false;
      one.dispatchEvent(new Event("change"));
    }
    expect(button(root, "show the series").disabled).toBe(true);
    boxes()[2].checked = true;
    boxes()[2].dispatchEvent(new Event("change"));
    button(root, "show the series").click();
    await vi.waitFor(() => expect(root.querySelector("[aria-label=series] table")).not.toBeNull());
    expect(asked.find((one) => one.path === "/api/series")!.body).toMatchObject({
      runs: ["two", "three"],
      golden: "two",
    });
    const cells = [...root.querySelectorAll("[aria-label=series] tbody td")].map((one) => one.textContent);
    expect(cells).toEqual(["gain", "17.07 dBi", "1.790", "-1.500 ± 0.400", "18.00", "18.20 (0.30)", "15.00 (-4.00)"]);
    // Another choice takes the answer away.
    boxes()[2].dispatchEvent(new Event("change"));
    expect(root.querySelector("[aria-label=series]")).toBeNull();
  });

  it("draw the coverage of every state and of the best", async () => {
    const root = await show();
    button(root, "read the coverage").click();
    await vi.waitFor(
      () => expect(root.querySelector("[aria-label=coverage] table"), root.textContent).not.toBeNull(),
      4000,
    );
    const rows = [...root.querySelectorAll("[aria-label=coverage] tbody tr")].map((one) =>
      [...one.querySelectorAll("td")].map((cell) => cell.textContent),
    );
    expect(rows[2]).toEqual(["best of all", "9.10", "-9.00", "-3.00", "4.00"]);
    const chart = root.querySelector("section[aria-label=Coverage] .chart")!;
    expect(chart.querySelectorAll("path[stroke-width]").length).toBeGreaterThanOrEqual(3);
    expect(chart.textContent).toContain("level not exceeded / dBm");
    expect(root.textContent).toContain("dBm ± 0.30 dB (k = 2)");
  });
});
