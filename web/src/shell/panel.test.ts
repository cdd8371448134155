import { describe, expect, it } from "vitest";
import { Refusal } from "../request/server";
import { h } from "../draw/dom";
import { agrees, Panel } from "./panel";

const later = <T>(value: T, ms: number) => new Promise<T>((good) => setTimeout(() => good(value), ms));
const subject = (run: string) => ({ key: run, words: `run ${run}` });
const drawn = (text: string) => [h("p", {}, text)];

describe("a panel", () => {
  it("shows the later answer although the earlier one comes last", async () => {
    const panel = new Panel("figures");
    const slow = panel.ask(subject("one"), () => later("of one", 40), drawn);
    const quick = panel.ask(subject("two"), () => later("of two", 5), drawn);
    await Promise.all([slow, quick]);
    expect(panel.body.textContent).toBe("of two");
    expect(panel.subject.textContent).toBe("run two");
  });

  it("takes another run's content away at once", async () => {
    const panel = new Panel("figures");
    await panel.ask(subject("one"), () => later("of one", 1), drawn);
    const waiting = panel.ask(subject("two"), () => later("of two", 30), drawn, { keep: true });
    expect(panel.body.textContent).toBe("");
    await waiting;
  });

  it("keeps a fault until its own cause changes", async () => {
    const panel = new Panel("plan");
    await panel.ask(subject("12"), () => Promise.reject(new Refusal(422, ["step = 12: too large"])), drawn);
    expect(panel.faults.textContent).toContain("step = 12");
    const overtaken = panel.ask(subject("1"), () => later("of 1", 30), drawn);
    await panel.ask(subject("12"), () => Promise.reject(new Refusal(422, ["step = 12: too large"])), drawn);
    await overtaken;
    expect(panel.faults.textContent).toContain("step = 12");
    expect(panel.body.textContent).toBe("");
  });

  it("refuses an answer about something else", async () => {
    const panel = new Panel("cut");
    const other = { run: "two", state: null, frequency_hz: null };
    await panel.ask(
      subject("one"),
      () => Promise.resolve(other),
      () => drawn("wrong"),
      { of: (a) => a, expect: { ...other, run: "one" } },
    );
    expect(panel.body.textContent).toBe("");
    expect(panel.faults.textContent).toContain("not about what was asked");
  });

  it("compares run, state and frequency", () => {
    const one = { run: "a", state: "beam-1", frequency_hz: 24e9 };
    expect(agrees(one, { ...one })).toBe(true);
    expect(agrees(one, { ...one, state: null })).toBe(false);
    expect(agrees(one, { ...one, frequency_hz: 24.1e9 })).toBe(false);
    expect(agrees(one, { ...one, frequency_hz: null })).toBe(true);
  });
});
