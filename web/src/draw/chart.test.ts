import { beforeEach, describe, expect, it, vi } from "vitest";
import { Chart } from "./chart";

vi.stubGlobal("ResizeObserver", class { observe() {} disconnect() {} }); // prettier-ignore

let chart: Chart;
const x = Array.from({ length: 37 }, (_, i) => -180 + 10 * i);

beforeEach(() => {
  chart = new Chart("a cut");
  document.body.replaceChildren(chart.element);
  chart.draw({ x, lines: [{ name: "co", values: x.map((v) => -Math.abs(v) / 9), colour: "#000" }], xName: "angle / deg", yName: "level / dB", yWhole: [-20, 5], peakOf: 0 }); // prettier-ignore
});

const press = (label: string) =>
  [...chart.element.querySelectorAll("button")].find((one) => one.textContent === label)!.click();
const width = () => chart.view.x[1] - chart.view.x[0];
const middle = () => (chart.view.x[0] + chart.view.x[1]) / 2;

describe("the tools under a chart", () => {
  it("begin with the whole", () => {
    expect(chart.view).toEqual({ x: [-180, 180], y: [-20, 5] });
  });

  it("go closer and farther, not beyond the whole", () => {
    press("+");
    expect(width()).toBeCloseTo(180, 9);
    press("+");
    expect(width()).toBeCloseTo(90, 9);
    press("−");
    expect(width()).toBeCloseTo(180, 9);
    press("−");
    press("−");
    expect(chart.view.x).toEqual([-180, 180]);
  });

  it("go left and right, not beyond the ends", () => {
    press("+");
    press("+");
    press("▸");
    expect(middle()).toBeCloseTo(22.5, 9);
    press("◂");
    expect(middle()).toBeCloseTo(0, 9);
    for (let i = 0; i < 20; i++) press("◂");
    expect(chart.view.x[0]).toBeCloseTo(-180, 9);
    expect(width()).toBeCloseTo(90, 9);
  });

  it("lead back to the whole", () => {
    press("+");
    press("▸");
    press("whole");
    expect(chart.view).toEqual({ x: [-180, 180], y: [-20, 5] });
  });

  it("keep the view while values of the same axes come, and leave it for others", () => {
    press("+");
    const lines = [{ name: "co", values: x.map(() => -3), colour: "#000" }];
    chart.draw({ x, lines, xName: "angle / deg", yName: "level / dB", yWhole: [-20, 5] });
    expect(width()).toBeCloseTo(180, 9);
    chart.draw({ x, lines, xName: "time / s", yName: "level / dB", yWhole: [-20, 5] });
    expect(width()).toBeCloseTo(360, 9);
  });

  it("name the peak where it is", () => {
    const words = [...chart.element.querySelectorAll("svg text")].map((one) => one.textContent);
    expect(words).toContain("0.00 at 0.00");
  });

  it("save what is drawn", async () => {
    const kept: Blob[] = [];
    vi.stubGlobal("URL", Object.assign(URL, { createObjectURL: (one: Blob) => (kept.push(one), "blob:"), revokeObjectURL: () => undefined })); // prettier-ignore
    press("CSV");
    press("SVG");
    const [values, picture] = await Promise.all(kept.map((one) => one.text()));
    const rows = values.trim().split(/\r?\n/);
    expect(rows.length).toBe(38);
    expect(rows[0]).toContain("angle / deg");
    expect(rows[1].split(",").map(Number)).toEqual([-180, -20]);
    expect(picture).toContain("<svg");
    expect(picture).toContain("co");
  });
});
